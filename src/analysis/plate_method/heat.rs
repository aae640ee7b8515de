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
    finite_element::{LiftsOff, Load, Plate},
    laminate::{Forces, Moments, Resultants},
    section::Temperatures,
};

/// Heat of both skins as a load, region by region.
///
/// ```text
/// M = D* k − M_T,   D* = D − B A⁻¹ B,   M_T = M_h − B A⁻¹ N_h
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `M`, `k` | moments and curvatures of a region, its membrane free |
/// | `A`, `B`, `D` | stiffness of its section |
/// | `N_h`, `M_h` | its thermal resultants, [`Section::thermal_resultants`](crate::section::Section::thermal_resultants) |
///
/// # Validity
/// In its plane every region grows as it likes, as by hand: pipes and walls let the top slide, and what a backing that grows
/// less than the field holds back of it in its plane is not counted. It is bent by heat alone, by what would hold it flat
/// while it grows; a conduit as the field.
///
/// # Source
/// [`DERIVED`](crate::source::DERIVED): from [`Section::thermal_flat`](crate::section::Section::thermal_flat), which the hand
/// method takes too.
pub(super) fn heat(net: &Net, plate: &Plate, sections: &Sections, rise: &Temperatures) -> Load {
    let by_region: Vec<Resultants> = net
        .regions
        .iter()
        .map(|&region| {
            let Moments { x, y, xy } = sections.of(region).section.thermal_flat(rise).moment;
            Resultants { force: Forces::default(), moment: Moments { x: -x, y: -y, xy: -xy } }
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
