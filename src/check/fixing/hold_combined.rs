//! What a fixing holds in, pulled and pushed sideways at once.

use super::{Held, each, insert_pull_out::InsertHold, lateral_hold::LateralHold, thread_hold::Engaged};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::Interaction,
    material::Basis,
    source::{Citation, DERIVED, Mark},
    top::Hold,
    units::{Force, Ratio},
};

pub(in crate::check) struct HoldCombined;

impl Check for HoldCombined {
    fn id(&self) -> &'static str {
        "hold-combined"
    }

    fn title(&self) -> &'static str {
        "hold combined"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a screw or a blind insert tears out of its backing under pull and side force together"
    }

    fn formula(&self) -> &'static str {
        "(T q/F_t + i V/F_v) · factor ≤ 1,  F_t as in the checks of pull, F_v as a dowel in the backing or the insert's own shear \
         load, i the factor on F_v over that on F_t"
    }

    fn limits(&self) -> &'static str {
        "straight-line rule: inside every curve that tests gave; the largest pull and the largest side force of a case are taken \
         at once; what the skin bears of the side force is left out"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "linear rule, the safest of those in use", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, |held| match Both::of(&held) {
            None => {}
            Some(Ok(both)) => compare(held, both, outcomes),
            Some(Err(reason)) => outcomes.cannot(None, held.place().part, reason),
        });
    }
}

/// What is borne of pull alone and of side force alone, each with its factor.
#[derive(Clone, Copy)]
struct Both {
    pull: (Force, Ratio),
    side: (Force, Ratio),
    basis: Basis,
}

impl Both {
    fn of(held: &Held<'_>) -> Option<Result<Self, String>> {
        if let Hold::BlindInsert { insert, .. } = &held.fixing().hold {
            return Some(InsertHold::of(held, insert).map(|hold| Self {
                pull: (hold.bearable, held.pull_out_factor(hold.basis)),
                side: (insert.shear.value, held.factor(held.top.criteria.fastener_steel_factor.value)),
                basis: hold.basis.max(insert.shear.basis),
            }));
        }
        let engaged = Engaged::of(held)?;
        Some(engaged.and_then(|engaged| {
            let (pull, side) = (engaged.hold(held)?, LateralHold::of(held, &engaged)?);
            Ok(Self {
                pull: (pull.bearable, pull.factor(held)),
                side: (side.bearable, held.pull_out_factor(side.basis)),
                basis: pull.basis.max(side.basis),
            })
        }))
    }
}

fn compare(held: Held<'_>, both: Both, outcomes: &mut Outcomes<'_>) {
    let ((pull, factor), (side, side_factor)) = (both.pull, both.side);
    let over: Ratio = side_factor / factor;
    let demand = Interaction::Linear.utilisation(held.pull() / pull, held.shear() / side * over);
    outcomes.compare(Some(held.case), demand * factor, || {
        let finding = held.pulled(Finding::compare(demand, Ratio::from(1.0), factor, both.basis));
        (held.place(), finding.term("V", held.shear()).term("F_t", pull).term("F_v", side).term("i", over))
    });
}
