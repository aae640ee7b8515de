//! A fixing too near to the rim of the top.

use super::{Held, each_in_place};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::end_distance_needed,
    material::Basis,
    source::{Citation, FPL_1824, Mark},
    units::{Length, Ratio},
};

pub(in crate::check) struct FixingNearRim;

impl Check for FixingNearRim {
    fn id(&self) -> &'static str {
        "fixing-near-rim"
    }

    fn title(&self) -> &'static str {
        "fixing near rim"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a fixing stands so near to the rim of the top that the skin tears out, or its washer hangs over"
    }

    fn formula(&self) -> &'static str {
        "max(4 d, w/2) ≤ e,  d the diameter in the skin, w that of washer, flange or base, e to the rim"
    }

    fn limits(&self) -> &'static str {
        "glass laminate, loads from any side; what fills the border is not looked at"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: FPL_1824,
            locator: "summary: with 4 diameters no test failed towards the end",
            mark: Mark::Quoted,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each_in_place(analysis, |held| compare(held, outcomes));
    }
}

fn compare(held: Held<'_>, outcomes: &mut Outcomes<'_>) {
    let fixing = held.fixing();
    let in_skin = fixing.hole().map_or_else(Length::default, |_| fixing.diameter());
    let on_skin = fixing.footprint().unwrap_or_default();
    let demand = end_distance_needed(in_skin).max(on_skin / 2.0);
    // Outside of the top the distance is below zero: nothing is left there either.
    let rim = held.around().rim.max(Length::default());
    outcomes.compare(None, demand / rim, || {
        let finding = Finding::compare(demand, rim, Ratio::from(1.0), Basis::Typical);
        let finding = finding.term("d", in_skin).term("w", on_skin).term("e", rim);
        (held.place().in_skin(held.mount.near), finding)
    });
}
