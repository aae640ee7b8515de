//! A hole drilled into a conduit.

use super::{Held, each_in_place};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    material::Basis,
    source::{ASSUMPTION, Citation, Mark},
    units::{Length, Ratio},
};

pub(in crate::check) struct FixingNearConduit;

impl Check for FixingNearConduit {
    fn id(&self) -> &'static str {
        "fixing-near-conduit"
    }

    fn title(&self) -> &'static str {
        "fixing near conduit"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "the hole of a fixing is drilled into a conduit and its cables, or so near that nothing holds between them"
    }

    fn formula(&self) -> &'static str {
        "D/2 + h/2 + n h ≤ s,  s from the hole of width h to the middle of a conduit of width D"
    }

    fn limits(&self) -> &'static str {
        "in plan: a short fixing that ends above the conduit is counted as if it reached it"
    }

    fn citation(&self) -> Citation {
        Citation { work: ASSUMPTION, locator: "room for a drill that wanders, in diameters", mark: Mark::Assumed }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each_in_place(analysis, |held| {
            if let (Some(hole), Some(conduit)) = (held.fixing().hole(), held.around().conduit) {
                compare(held, hole, conduit, outcomes);
            }
        });
    }
}

fn compare(held: Held<'_>, hole: Length, (conduit, distance): (usize, Length), outcomes: &mut Outcomes<'_>) {
    let (width, clear) = (held.top.conduits[conduit].diameter, held.top.criteria.conduit_clearance.value);
    let demand: Length = width / 2.0 + hole / 2.0 + hole * clear;
    outcomes.compare(None, demand / distance, || {
        let finding = Finding::compare(demand, distance, Ratio::from(1.0), Basis::Typical);
        (held.place(), finding.term("D", width).term("h", hole).term("n", clear).term("s", distance))
    });
}
