//! A bolt whose nut comes out where the top is seated.

use super::{Held, each_in_place};
use crate::{
    analysis::{Analysis, MountOn},
    check::{Check, Finding, Outcomes, Subject},
    material::Basis,
    source::{Citation, DERIVED, Mark},
    top::{Hold, Support},
    units::{Length, Ratio},
};

/// Beyond so many times what it needs nothing is in the way.
const NEAR: f64 = 4.0;

pub(in crate::check) struct FixingOverSupport;

impl Check for FixingOverSupport {
    fn id(&self) -> &'static str {
        "fixing-over-support"
    }

    fn title(&self) -> &'static str {
        "bolt over a support"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a bolt of gear comes out below on a pipe, a wall or a pad, where its washer and nut have no room"
    }

    fn formula(&self) -> &'static str {
        "(b + w)/2 ≤ s,  b the larger of seat and diameter of the support, w the washer, s in plan from the bolt to the middle \
         of the support"
    }

    fn limits(&self) -> &'static str {
        "in plan; room for a spanner is not counted"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "washer beside seat", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each_in_place(analysis, |held| {
            if let (MountOn::Gear(_), Hold::ThroughBolt { washer, .. }) = (held.mount.on, &held.fixing().hold) {
                for support in &held.top.supports {
                    compare(held, support, washer.outside, outcomes);
                }
            }
        });
    }
}

fn compare(held: Held<'_>, support: &Support, washer: Length, outcomes: &mut Outcomes<'_>) {
    let (width, away) = (support.seat.max(support.thickness()), support.distance(held.around().at));
    let demand = (width + washer) / 2.0;
    if away > demand * NEAR {
        return;
    }
    outcomes.compare(None, demand / away, || {
        let finding = Finding::compare(demand, away, Ratio::from(1.0), Basis::Typical);
        (held.place(), finding.term("b", width).term("w", washer).term("s", away))
    });
}
