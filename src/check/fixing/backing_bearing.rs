//! A screw pushed sideways in its backing.

use super::{Held, each, lateral_hold::LateralHold, thread_hold::Engaged};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    source::{Citation, EN_1995_1_1, Mark},
};

pub(in crate::check) struct BackingBearing;

impl Check for BackingBearing {
    fn id(&self) -> &'static str {
        "backing-bearing"
    }

    fn title(&self) -> &'static str {
        "bearing in backing"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "pushed sideways, a screw that ends in the backing turns over or bends in it"
    }

    fn formula(&self) -> &'static str {
        "V · factor ≤ (1 − g) V_0 + g V_1;  head free: V_0 = min[0.41 f t d, √(2 M_y f d)];  head held: V_1 = min[f t d, \
         f t d (√(2 + 4 M_y/(f d t²)) − 1), 2 √(M_y f d)];  f = k f_h"
    }

    fn limits(&self) -> &'static str {
        "as if the near skin bore nothing (bearing in skin is what counts where that passes with room); t \
         without the tip; M_y of the root of the thread; the head is held, g = 1, by a stiff foot as thick as the screw, \
         free, g = 0, below half of that or in a soft foot; what a code adds for the rope is left out"
    }

    fn citation(&self) -> Citation {
        Citation { work: EN_1995_1_1, locator: "8.2.3, steel to timber, one shear plane", mark: Mark::Memory }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            let Some(engaged) = Engaged::of(&held) else { return };
            match engaged.and_then(|engaged| LateralHold::of(&held, &engaged)) {
                Ok(hold) => compare(held, hold, outcomes),
                Err(reason) => outcomes.cannot(None, held.place().part, reason),
            }
        });
    }
}

fn compare(held: Held<'_>, hold: LateralHold, outcomes: &mut Outcomes<'_>) {
    let (demand, factor) = (held.shear(), held.pull_out_factor(hold.basis));
    outcomes.compare(Some(held.case), demand / hold.bearable * factor, || {
        let finding = held.sheared(Finding::compare(demand, hold.bearable, factor, hold.basis));
        let finding = finding.term("g", hold.grip).term("V_0", hold.borne[0]).term("V_1", hold.borne[1]);
        let finding = finding.term("f_h", hold.strength).term("k", hold.left).term("t", hold.dowel.depth);
        let finding = finding.term("d", hold.dowel.diameter).term("M_y", hold.dowel.plastic_moment);
        (held.place(), finding)
    });
}
