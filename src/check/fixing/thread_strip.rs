//! A machine screw stripped out of the thread that is cut in its backing.

use super::{Held, each, thread_hold::Engaged};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    source::{CHAPMAN_1996, Citation, Mark},
    top::Hold,
};

pub(in crate::check) struct ThreadStrip;

impl Check for ThreadStrip {
    fn id(&self) -> &'static str {
        "thread-strip"
    }

    fn title(&self) -> &'static str {
        "tapped thread"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a machine screw strips the thread that is tapped into its backing"
    }

    fn formula(&self) -> &'static str {
        "T q · factor ≤ k t_u π d L S,  S = 1/2 + (d − d_1)/(2 √3 p),  L = min(h − l − e, c d);  in metal ≤ k times the less \
         of t_n A_n (thread of the hole) and t_b A_b (thread of the screw)"
    }

    fn limits(&self) -> &'static str {
        "thread cut to its full depth, and deeper than the screw goes; h is the depth in the backing alone: thread in the \
         skins is not counted; a hole that was tapped through with a worn tap, or stripped once, holds less"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: CHAPMAN_1996,
            locator: "pull-out of screws from rigid foam; in metal FED-STD-H28, areas of thread in shear",
            mark: Mark::Memory,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            if matches!(held.fixing().hold, Hold::TappedScrew { .. }) {
                pulled_out(held, outcomes);
            }
        });
    }
}

/// Compares the pull of a thread with what it bears in its backing.
pub(super) fn pulled_out(held: Held<'_>, outcomes: &mut Outcomes<'_>) {
    let Some(engaged) = Engaged::of(&held) else { return };
    let known = engaged.and_then(|engaged| Ok((engaged, engaged.hold(&held)?)));
    let (engaged, hold) = match known {
        Ok(known) => known,
        Err(reason) => return outcomes.cannot(None, held.place().part, reason),
    };
    let (demand, factor) = (held.pull(), hold.factor(&held));
    outcomes.compare(Some(held.case), demand / hold.bearable * factor, || {
        let finding = held.pulled(Finding::compare(demand, hold.bearable, factor, hold.basis));
        (held.place(), hold.terms(finding, &engaged, &held))
    });
}
