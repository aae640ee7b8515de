//! When the plate method has settled in what governs.

use super::{CHECKS, Outcome, run};
use crate::analysis::Analysis;

/// What the plate method may be off by in what governs; above it the triangles are cut finer.
const SETTLED: f64 = 0.01;

/// An analysis by both methods whose governing demand is settled, or that has been refined as far as may be: each case once,
/// since a round takes more than twice as long as the one before. Cases that do not govern keep the usual triangles.
#[must_use]
pub fn settled(mut analysis: Analysis<'_>) -> Analysis<'_> {
    loop {
        analysis = match unsettled(&analysis) {
            Unsettled::Nothing => return analysis,
            Unsettled::Cases(cases) => analysis.with_finer_cases(&cases),
            Unsettled::Modes => analysis.with_finer_plate(),
        }
    }
}

/// What must be solved anew on finer triangles.
enum Unsettled {
    Nothing,
    /// The forces of these cases.
    Cases(Vec<usize>),
    /// How the top moves by itself: with it everything.
    Modes,
}

/// What governs, or would if the worse settled to less.
fn unsettled(analysis: &Analysis<'_>) -> Unsettled {
    let Some(Ok(plate)) = &analysis.whole else { return Unsettled::Nothing };
    let mut cases = Vec::new();
    for worst in &run(analysis) {
        let coarse = worst.case.filter(|case| !plate.is_finer(*case));
        match coarse {
            Some(case) if is_unsettled(worst) => {
                if CHECKS[worst.check].rests_on_modes() {
                    return Unsettled::Modes;
                }
                cases.push(case);
            }
            _ => break,
        }
    }
    // What moves alike costs no more: a hand that pushes up beside one that hangs on.
    let all = &analysis.cases;
    let with =
        (0..all.len()).filter(|&other| cases.iter().any(|&case| case == other || all[other].moves_as(&all[case])));
    let with: Vec<usize> = with.collect();
    if with.is_empty() { Unsettled::Nothing } else { Unsettled::Cases(with) }
}

fn is_unsettled(worst: &Outcome) -> bool {
    worst.numerical_error().is_some_and(|error| error.value > SETTLED)
}
