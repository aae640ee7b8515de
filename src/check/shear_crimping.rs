//! Shear crimping: the panel shears off sideways in one very short wave.

use super::{Check, Finding, Outcomes, Part, Place};
use crate::{
    analysis::{Analysis, Region},
    geometry::Axis,
    source::{ALLEN_1969, Citation, Mark},
    strength::crimping_load,
    units::ForcePerWidth,
};

pub(super) struct ShearCrimping;

impl Check for ShearCrimping {
    fn id(&self) -> &'static str {
        "shear-crimping"
    }

    fn title(&self) -> &'static str {
        "shear crimping"
    }

    fn what(&self) -> &'static str {
        "pushed in its plane, the top shears off through the core in one short wave"
    }

    fn formula(&self) -> &'static str {
        "N · factor ≤ k S,  S = G_c d²/c, less where a conduit cuts the core"
    }

    fn limits(&self) -> &'static str {
        "the push of braking on the trailer and of a hand at the edge; push from heat against a stiff frame is not in it, \
         since bolted seats slip"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: ALLEN_1969,
            locator: "limit of the column formula for long slender panels",
            mark: Mark::Memory,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let top = analysis.top;
        let modulus = &top.core.material.shear_modulus;
        let regions = (0..top.conduits.len()).map(Region::Conduit).chain([Region::Field]);
        let weakest = regions.min_by(|a, b| {
            let left = |region: &Region| analysis.sections.of(*region).core_left.value;
            left(a).total_cmp(&left(b))
        });
        let region = weakest.unwrap_or(Region::Field);
        for (number, case) in analysis.cases.iter().enumerate() {
            let push = analysis.push(number);
            if push.even + push.local == ForcePerWidth::default() {
                continue;
            }
            let left = analysis.knockdowns(case.state).core_modulus(modulus.basis).product();
            for axis in Axis::BOTH {
                let stiffness = analysis.sections.of(region).shear_stiffness(axis, left);
                let (acting, bearable) = (push.even + push.local, crimping_load(stiffness));
                let factor = top.criteria.crimping_factor.value;
                outcomes.compare(Some(number), acting / bearable * factor, || {
                    let finding = Finding::compare(acting, bearable, factor, modulus.basis)
                        .term("G_c", modulus.value)
                        .term("d", analysis.sections.field.lever(axis))
                        .term("c", top.core.thickness)
                        .term("k", left);
                    (Place::of(Part::Region(region), None), finding)
                });
            }
        }
    }
}
