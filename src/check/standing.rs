//! Whether a top holds, in short: for papers that are made of it whether it does or not.

use super::{Outcome, run};
use crate::{
    analysis::{Analysis, DIVISIONS},
    top::Top,
    units::Ratio,
};

/// What the checks say of a top.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// Checks that fail, as places in [`CHECKS`](super::CHECKS), the worst first, with how far they are used.
    pub fails: Vec<(usize, Ratio)>,
    /// Load cases that could not be looked at, with the reason.
    pub open_cases: Vec<(String, String)>,
    /// Whether the plate method was asked too.
    pub by_plate: bool,
}

impl Standing {
    /// That of an analysis, by the outcomes of its checks, the worst first.
    #[must_use]
    pub fn of(analysis: &Analysis<'_>, outcomes: &[Outcome]) -> Self {
        let mut fails: Vec<(usize, Ratio)> = Vec::new();
        for outcome in outcomes.iter().filter(|outcome| !outcome.passes()) {
            if let Some(used) =
                outcome.utilisation().filter(|_| !fails.iter().any(|(known, _)| *known == outcome.check))
            {
                fails.push((outcome.check, used));
            }
        }
        let open = analysis.open_cases.iter().map(|(case, reason)| (case.title.clone(), reason.clone()));
        Self { fails, open_cases: open.collect(), by_plate: analysis.whole.is_some() }
    }

    /// That of a top by the hand method alone: milliseconds.
    ///
    /// # Errors
    ///
    /// Why the top could not be analysed.
    pub fn by_hand(top: &Top) -> Result<Self, String> {
        let analysis = Analysis::new(top, DIVISIONS)?;
        let outcomes = run(&analysis);
        Ok(Self::of(&analysis, &outcomes))
    }
}
