//! A screw drawn out of the backing that it cut its thread in.

use super::{each, thread_strip::pulled_out};
use crate::{
    analysis::Analysis,
    check::{Check, Outcomes, Subject},
    source::{Citation, Mark, WOOD_HANDBOOK},
    top::Hold,
};

pub(in crate::check) struct ScrewWithdrawal;

impl Check for ScrewWithdrawal {
    fn id(&self) -> &'static str {
        "screw-withdrawal"
    }

    fn title(&self) -> &'static str {
        "screw drawn out"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a screw that cuts its own thread is drawn out of its backing"
    }

    fn formula(&self) -> &'static str {
        "T q · factor ≤ k t_u π d L S,  S = 1/2 + (d − d_1)/(2 √3 p),  L = min(h − l − e, c d);  in plywood ≤ k w 108.25 MPa G² \
         d L, of a lag screw k w 125.4 N/mm^1.75 G^1.5 d^0.75 L"
    }

    fn limits(&self) -> &'static str {
        "pilot hole as the table has it, screw square to the skin and turned home by hand: one that is over-driven has lost \
         most of its hold; h is the depth in the backing alone; in plywood across the grain, never in its edge"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: WOOD_HANDBOOK,
            locator: "ch. 8, wood screws and lag screws; in board Chapman 1996, screws in rigid foam",
            mark: Mark::Memory,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            if matches!(held.fixing().hold, Hold::Screw { .. }) {
                pulled_out(held, outcomes);
            }
        });
    }
}
