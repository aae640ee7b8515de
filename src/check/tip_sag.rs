//! Sag of an overhang's tip.

use super::{Check, Finding, Method, OnPlate, Outcomes, Part, Place, on_plate::limits_on_plate};
use crate::{
    analysis::{Analysis, Role},
    material::Basis,
    source::{Citation, DERIVED, Mark},
    units::{Length, Ratio},
};

pub(super) struct TipSag;

impl Check for TipSag {
    fn id(&self) -> &'static str {
        "tip-sag"
    }

    fn title(&self) -> &'static str {
        "sag at the tip"
    }

    fn what(&self) -> &'static str {
        "the tip of an overhang sinks or lifts too far"
    }

    fn formula(&self) -> &'static str {
        "w ≤ limit · c or the limit underfoot if that is more,  w at the tip of an overhang of length c, from bending and shear of the strip and the turn over \
         the pipe"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "w (1 + ε) ≤ limit · c, or the limit underfoot, twice: w against the frame at rest, the pipes' own sag in it, and c the distance to the nearest post of a pipe that bends or to a rigid pipe; and w against the nearest pipe, its sag taken off, and c the distance to that; c no less than the limit underfoot over that of a tip",
            limits: limits_on_plate!(
                "a limit of use, by common practice; pipes without wall, alloy or two posts are rigid"
            ),
            citation: Citation {
                work: DERIVED,
                locator: "finite elements; the limit is common practice",
                mark: Mark::Practice,
            },
        })
    }

    fn limits(&self) -> &'static str {
        "a limit of use, by common practice; pipes taken as rigid"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: DERIVED,
            locator: "strip by exact elements; the limit is common practice",
            mark: Mark::Practice,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let limit = analysis.top.criteria.tip_sag_limit.value;
        let least = analysis.top.criteria.underfoot_sag_limit.value;
        for forces in &analysis.strips {
            let line = &analysis.lines[forces.line];
            if line.role == Role::Carried {
                continue;
            }
            for sag in forces.sags.iter().filter(|sag| sag.tip) {
                // A short overhang is judged as a floor is: by millimetres, not by its length.
                let allowable: Length = (sag.over * limit).max(least);
                outcomes.compare(Some(forces.case), sag.peak.value / allowable, || {
                    let finding = Finding::compare(sag.peak.value, allowable, Ratio::from(1.0), Basis::Typical)
                        .term("c", sag.over)
                        .term("limit", limit)
                        .term("k of the core's modulus", analysis.core_left(forces.case));
                    let place = Place::of(Part::Tip, Some(line.place(sag.peak.at)))
                        .under(sag.peak.load_at.map(|at| line.place(at)));
                    (place, finding)
                });
            }
        }
        outcomes.by(Method::Plate);
        for forces in analysis.fields() {
            for sag in &forces.tip {
                let allowable: Length = (sag.over * limit).max(least);
                let acting: Length = sag.sag.abs() * (Ratio::from(1.0) + forces.error.sag);
                outcomes.compare(Some(forces.case), acting / allowable, || {
                    let finding = Finding::compare(acting, allowable, Ratio::from(1.0), Basis::Typical)
                        .term("c", sag.over)
                        .term("ε", forces.error.sag)
                        .term("limit", limit)
                        .term("k of the core's modulus", analysis.core_left(forces.case));
                    (Place::of(Part::Tip, Some(sag.at)).under(sag.load_at), finding)
                });
            }
        }
    }
}
