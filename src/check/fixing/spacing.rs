//! Fixings that stand too close to one another.

use super::{Held, each_in_place};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::pitch_needed,
    material::Basis,
    source::{Citation, FPL_1824, Mark},
    units::{Length, Ratio},
};

pub(in crate::check) struct FixingSpacing;

impl Check for FixingSpacing {
    fn id(&self) -> &'static str {
        "fixing-spacing"
    }

    fn title(&self) -> &'static str {
        "spacing of fixings"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "two fixings stand so close that the skin tears between them, or their washers meet"
    }

    fn formula(&self) -> &'static str {
        "max(5 d, w) ≤ s,  d the diameter in the skin, w that of washer, flange or base, s to the next fixing of the mount"
    }

    fn limits(&self) -> &'static str {
        "glass laminate, loads from any side; of one mount: for those of others see fixing-near-other"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: FPL_1824,
            locator: "summary: 2.5 diameters from a side, which is midway between two holes",
            mark: Mark::Quoted,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each_in_place(analysis, |held| {
            if let Some(neighbour) = held.around().neighbour {
                compare(held, neighbour, outcomes);
            }
        });
    }
}

fn compare(held: Held<'_>, neighbour: Length, outcomes: &mut Outcomes<'_>) {
    let fixing = held.fixing();
    let in_skin = fixing.hole().map_or_else(Length::default, |_| fixing.diameter());
    let on_skin = fixing.footprint().unwrap_or_default();
    let demand = pitch_needed(in_skin).max(on_skin);
    outcomes.compare(None, demand / neighbour, || {
        let finding = Finding::compare(demand, neighbour, Ratio::from(1.0), Basis::Typical);
        let finding = finding.term("d", in_skin).term("w", on_skin).term("s", neighbour);
        (held.place().in_skin(held.mount.near), finding)
    });
}
