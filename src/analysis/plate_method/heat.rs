//! What heat does to the whole top: a load like others, and the bow that it makes by itself.

use super::{
    FieldSag, PlateForces,
    envelope::{Lying, Solved},
    layout::Net,
    lifting::Part,
    worst::Worst,
};
use crate::{
    analysis::sections::Sections,
    finite_element::{Fields, LiftsOff, Load, Plate},
    laminate::{Forces, Moments, Resultants},
    section::Temperatures,
};

/// Heat of both skins as a load, region by region.
///
/// ```text
/// N = A e + B k − N_T,   N_T = N_h − A e_f
/// M = B e + D k − M_T,   M_T = M_h − B e_f,   e_f = A_f⁻¹ N_hf
/// ```
///
/// where bending and stretching fall apart, and nothing is known of `e`:
///
/// ```text
/// M = (D − B A⁻¹ B) k − M_T,   M_T = M_h − B A⁻¹ N_h
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `N`, `M`, `e`, `k` | forces, moments, strains and curvatures of a region, `e` beyond what the field grows by |
/// | `A`, `B`, `D` | stiffness of its section |
/// | `N_h`, `M_h` | its thermal resultants, [`Section::thermal_resultants`](crate::section::Section::thermal_resultants) |
/// | `e_f`, `A_f`, `N_hf` | what the field grows by in its plane, its stiffness and thermal forces |
///
/// # Validity
/// Pipes and walls let the top slide: the field grows in its plane as it likes, as by hand. What a backing that grows more or
/// less holds back of it is counted where bending and stretching are coupled. Elsewhere, on a flat top whose skins are so alike
/// that its neutral plane is the same everywhere, that bends nothing, and the stress that it makes in the skins is not counted. A
/// conduit is heated as the field.
///
/// # Source
/// [`DERIVED`](crate::source::DERIVED): thermal resultants of each section, less those that go with the growth of the field; by
/// itself the field is held flat by [`Section::thermal_flat`](crate::section::Section::thermal_flat), which the hand method takes.
pub(super) fn heat(net: &Net, plate: &Plate, sections: &Sections, rise: &Temperatures) -> Load {
    let field = sections.field.section.thermal_flat(rise).deformation;
    let by_region: Vec<Resultants> = net
        .regions
        .iter()
        .map(|&region| {
            let section = &sections.of(region).section;
            match plate.fields() {
                Fields::Bending => {
                    let Moments { x, y, xy } = section.thermal_flat(rise).moment;
                    Resultants { force: Forces::default(), moment: Moments { x: -x, y: -y, xy: -xy } }
                }
                Fields::BendingAndStretching => section.thermal_beyond(rise, &field),
            }
        })
        .collect();
    Load::none(plate).heated(plate, &|triangle| by_region[net.of_triangle[triangle]])
}

/// Largest bows between pipes by heat alone, against what does not move and against the pipes: weight, which would take some
/// of it back, is left out. None where no heat acts.
pub(super) fn bows(solved: &Solved<'_>, lying: &Lying) -> Result<Vec<FieldSag>, LiftsOff> {
    let Some(heat) = &lying.heat else { return Ok(Vec::new()) };
    let mut parts: Vec<Part<'_>> = vec![(heat, 1.0, 1.0)];
    if let Some(lifting) = solved.lifting {
        lifting.open(&mut parts, solved.top.supports.len())?;
    }
    let mut worst = Worst::new(solved);
    worst.take(&parts, None, None, &[]);
    Ok(worst.done(lying.case, &|_| None).between)
}

impl PlateForces {
    /// The largest bow by heat, in metres.
    pub(super) fn largest_bow(&self) -> f64 {
        self.bow.iter().map(|bow| bow.sag.value.abs()).fold(0.0, f64::max)
    }
}

#[cfg(test)]
mod tests;
