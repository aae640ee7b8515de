//! When the plate method has settled in what governs.

use super::{Outcome, run};
use crate::analysis::Analysis;

/// What the plate method may be off by in what governs; above it the triangles are cut finer.
const SETTLED: f64 = 0.01;

/// How often they are: a round takes more than twice as long as the one before.
const ROUNDS: usize = 1;

/// An analysis by both methods whose governing demand is settled, or that has been refined as often as may be.
#[must_use]
pub fn settled(mut analysis: Analysis<'_>) -> Analysis<'_> {
    for _ in 0..ROUNDS {
        let unsettled = |worst: &Outcome| worst.numerical_error().is_some_and(|error| error.value > SETTLED);
        if !run(&analysis).first().is_some_and(unsettled) {
            break;
        }
        analysis = analysis.with_finer_plate();
    }
    analysis
}
