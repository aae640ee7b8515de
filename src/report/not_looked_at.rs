//! What an answer leaves out: fixings that the file does not give, checks that a method does not know.

use super::Report;
use crate::{
    analysis::Analysis,
    check::CHECKS,
    top::{Scope, Top},
};

/// Why such a check is open.
pub(super) const NOT_MADE: &str = "not made: the plate method alone knows it; check without --hand";

impl Report<'_> {
    /// Whether the hand method alone looked at a whole top.
    #[must_use]
    pub fn by_hand_alone(&self) -> bool {
        self.top.scope == Scope::Whole && matches!(&self.analysis, Ok(Analysis { whole: None, .. }))
    }

    /// Checks that were not made, since the plate method alone knows them, as places in [`CHECKS`].
    #[must_use]
    pub fn not_made(&self) -> Vec<usize> {
        let by_hand = self.by_hand_alone();
        (0..CHECKS.len()).filter(|check| by_hand && CHECKS[*check].plate_alone()).collect()
    }
}

/// Gear and pipes whose fixings were not checked, since the file gives none, by their names.
#[must_use]
pub fn without_fixings(top: &Top) -> Vec<&str> {
    let gear = top.gear.iter().filter(|gear| gear.fastened.is_none()).map(|gear| gear.name.as_str());
    let pipes = top
        .supports
        .iter()
        .filter(|support| support.fastened.is_none() && !support.clamps())
        .map(|support| support.name.as_str());
    gear.chain(pipes).collect()
}
