//! Sag between pipes.

use super::{Check, Finding, Method, OnPlate, Outcomes, Part, Place, on_plate::limits_on_plate};
use crate::{
    analysis::{Analysis, Role},
    load_case::Duration,
    material::Basis,
    service::Walking,
    source::{Citation, LR_SSC, Mark},
    units::{Length, Ratio},
};

pub(super) struct SagBetweenPipes;

impl Check for SagBetweenPipes {
    fn id(&self) -> &'static str {
        "sag"
    }

    fn title(&self) -> &'static str {
        "sag between pipes"
    }

    fn what(&self) -> &'static str {
        "the top sinks or lifts too far between two pipes or walls"
    }

    fn formula(&self) -> &'static str {
        "w ≤ limit · L,  w from bending and shear of the strip or plate, creep of the core included; of a bay on four sides \
         w_p by the pressure all over it, and Δm what its backing weighs more than core, spread over it"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "w (1 + ε) ≤ limit · L, twice: w against the frame at rest, the pipes' own sag in it, and L the width of the largest circle that holds the place without a post of a pipe that bends or a rigid pipe in it; and w against the line between the two nearest pipes, their sag taken off, and L the way from one to the other",
            limits: limits_on_plate!(
                "pipes without wall, alloy or two posts are rigid; people stand at rest; the bow of a hot skin is in it"
            ),
            citation: Citation {
                work: LR_SSC,
                locator: "Pt 8, Ch 7, 2, limiting deflections; w by finite elements, derived",
                mark: Mark::Quoted,
            },
        })
    }

    fn limits(&self) -> &'static str {
        "pipes taken as rigid, walls as hinged, pads left out: a pipe's sag between posts comes on top; edges of a bay on four sides turn freely, and \
         --full says what clamped ones would leave; stiffness that a backing adds to such a bay is not counted, nor does the sun bow it here"
    }

    fn citation(&self) -> Citation {
        Citation { work: LR_SSC, locator: "Pt 8, Ch 7, 2, limiting deflections", mark: Mark::Quoted }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        for forces in &analysis.strips {
            let line = &analysis.lines[forces.line];
            if line.role == Role::Carried {
                // Carried by its ends the top may bend as it likes: nothing hangs on it then but its strength.
                continue;
            }
            for sag in forces.sags.iter().filter(|sag| !sag.tip) {
                let place = Place::of(Part::Bay, Some(line.place(sag.peak.at)))
                    .under(sag.peak.load_at.map(|at| line.place(at)));
                compare(analysis, outcomes, forces.case, (sag.peak.value, sag.over), place, |finding| finding);
            }
        }
        for forces in &analysis.plates {
            let bay = &analysis.bays[forces.bay];
            let over = bay.sides[0].min(bay.sides[1]);
            let place = Place::of(Part::Bay, Some(bay.middle()));
            compare(analysis, outcomes, forces.case, (forces.sag, over), place, |finding| {
                let finding = finding.term("w_p", forces.sag_by_pressure);
                if bay.backing.is_empty() { finding } else { finding.term("Δm", bay.backing_mass(analysis.top)) }
            });
        }
        outcomes.by(Method::Plate);
        for forces in analysis.fields() {
            for sag in &forces.between {
                let error = Ratio::from(1.0) + forces.error.sag;
                // A pipe sags too, between its posts.
                let on_pipe = analysis.top.supports.iter().position(|support| {
                    support.pipe().is_some_and(|pipe| support.along.distance(sag.at) < pipe.outside / 2.0)
                });
                let place = Place::of(on_pipe.map_or(Part::Bay, Part::Support), Some(sag.at)).under(sag.load_at);
                compare(analysis, outcomes, forces.case, (sag.sag.abs() * error, sag.over), place, |finding| {
                    finding.term("ε", forces.error.sag)
                });
            }
        }
    }
}

fn compare(
    analysis: &Analysis<'_>,
    outcomes: &mut Outcomes<'_>,
    case: usize,
    (sag, over): (Length, Length),
    place: Place,
    terms: impl FnOnce(Finding) -> Finding,
) {
    let criteria = &analysis.top.criteria;
    let service = &analysis.top.service;
    let limit = if analysis.cases[case].state.duration == Duration::Permanent {
        criteria.sag_sustained_limit.value
    } else if service.people > 0 || service.walking != Walking::NoWalk {
        criteria.sag_walked_limit.value
    } else {
        criteria.sag_unwalked_limit.value
    };
    let allowable = over * limit;
    outcomes.compare(Some(case), sag / allowable, || {
        let finding = Finding::compare(sag, allowable, Ratio::from(1.0), Basis::Typical)
            .term("L", over)
            .term("limit", limit)
            .term("k of the core's modulus", analysis.core_left(case));
        (place, terms(finding))
    });
}
