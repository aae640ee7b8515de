//! Sections as shells.

use crate::{
    analysis::sections::RegionSection,
    finite_element::ShellStiffness,
    geometry::Axis,
    top::Top,
    units::{Curvature, Ratio},
};

/// The shell of a region, with a share of the core's shear modulus left.
pub(super) fn shell(top: &Top, section: &RegionSection, core_left: Ratio) -> ShellStiffness {
    let shear = Axis::BOTH.map(|axis| section.shear_stiffness(axis, core_left));
    ShellStiffness::new(section.section.stiffness(), shear, crown(top))
}

/// A top rises to its middle across the boat: a parabola of the width, straight lengthwise. What it also rises fore and
/// aft would stiffen it further, and is not counted.
fn crown(top: &Top) -> [Curvature; 2] {
    let across = top.crown * 8.0 / (top.outline.width() * top.outline.width());
    [Curvature::default(), across]
}
