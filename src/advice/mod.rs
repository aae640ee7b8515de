//! What would pass: the smallest single change of each kind that makes a failing check, or the whole top, hold. Found
//! by trying it on the real model, in the steps that one can buy or mark.

mod change;
mod fitting;
mod fixing_change;
mod pipe_row;
mod saving;

pub use change::{Change, changed, changes};
pub use fitting::{Drill, Fitting, PullTest, drills, fittings};
pub use saving::{left_by_plate, savings};

use uom::si::ratio::ratio;

use crate::{
    analysis::{Analysis, DIVISIONS},
    check::{CHECKS, Method, Outcome, run},
    top::Top,
    units::{Mass, Ratio},
};

/// A change that makes something hold.
#[derive(Clone, Debug, PartialEq)]
pub struct Remedy {
    /// The change.
    pub change: Change,
    /// What governs then, as its place in [`CHECKS`]; for the remedy of one check, that check.
    pub governs: usize,
    /// How far it is used then.
    pub utilisation: Ratio,
    /// Mass that the change adds to the top; negative where it takes some off. Pipes are not part of the top.
    pub added: Mass,
    /// A check that held before and does not hold after the change, as its place in [`CHECKS`].
    pub breaks: Option<usize>,
}

/// Remedies for one failing check, or for all of them together.
#[derive(Clone, Debug, PartialEq)]
pub struct Advice {
    /// The check, as its place in [`CHECKS`]; none for the whole top.
    pub check: Option<usize>,
    /// One remedy of each kind that has one, the lightest first.
    pub remedies: Vec<Remedy>,
    /// Where there is no remedy: the change that comes nearest.
    pub nearest: Option<Remedy>,
}

/// What a change has to gain to be worth a word where nothing helps. Our choice: less is not seen in whole per cent.
const LEAST_GAIN: f64 = 0.005;

/// How far each check of a top is used: infinite where a check could not be made.
struct Used {
    by_check: Vec<f64>,
    mass: Mass,
}

impl Used {
    fn of(outcomes: &[Outcome], top: &Top) -> Self {
        let mut by_check = vec![0.0; CHECKS.len()];
        for outcome in outcomes {
            let used = outcome.utilisation().map_or(f64::INFINITY, |used| used.get::<ratio>());
            let known: &mut f64 = &mut by_check[outcome.check];
            *known = if used.is_nan() { f64::INFINITY } else { known.max(used) };
        }
        Self { by_check, mass: top.weight().bare }
    }

    /// The check that is used most of those that held before.
    fn broken_since(&self, before: &Self) -> Option<usize> {
        let now =
            self.by_check.iter().enumerate().filter(|(check, used)| **used > 1.0 && before.by_check[*check] <= 1.0);
        now.max_by(|a, b| a.1.total_cmp(b.1)).map(|(check, _)| check)
    }

    fn worst(&self) -> (usize, f64) {
        let worst = self.by_check.iter().copied().enumerate().max_by(|a, b| a.1.total_cmp(&b.1));
        worst.unwrap_or((0, f64::INFINITY))
    }
}

/// Looks for the smallest single change of each kind for every check that does not pass, and for the whole top. Changes
/// are tried by the hand method, in a hundredth of the time that the plate method takes; what only the latter finds fault
/// with is left to the reader.
#[must_use]
pub fn advise(top: &Top, outcomes: &[Outcome]) -> Vec<Advice> {
    let outcomes = &by_hand(outcomes)[..];
    let mut failing: Vec<usize> =
        outcomes.iter().filter(|outcome| !outcome.passes()).map(|outcome| outcome.check).collect();
    failing.dedup();
    failing.sort_unstable();
    failing.dedup();
    if failing.is_empty() {
        return Vec::new();
    }
    let before = Used::of(outcomes, top);
    let mut advice: Vec<Advice> = std::iter::once(None)
        .chain(failing.into_iter().map(Some))
        .map(|check| Advice { check, remedies: Vec::new(), nearest: None })
        .collect();
    for kind in changes(top) {
        let mut wanted: Vec<usize> = (0..advice.len()).collect();
        for change in kind {
            if wanted.is_empty() {
                break;
            }
            let Some(used) = try_change(top, &change) else { continue };
            wanted.retain(|&index| {
                let item = &mut advice[index];
                let (governs, utilisation) =
                    item.check.map_or_else(|| used.worst(), |check| (check, used.by_check[check]));
                let remedy = Remedy {
                    change: change.clone(),
                    governs,
                    utilisation: Ratio::new::<ratio>(utilisation),
                    added: used.mass - before.mass,
                    breaks: used.broken_since(&before),
                };
                if utilisation <= 1.0 {
                    item.remedies.push(remedy);
                    return false;
                }
                // What leaves it as it was is not near.
                let now = item.check.map_or_else(|| before.worst().1, |check| before.by_check[check]);
                let better = utilisation < now * (1.0 - LEAST_GAIN);
                if better && item.nearest.as_ref().is_none_or(|nearest| remedy.utilisation < nearest.utilisation) {
                    item.nearest = Some(remedy);
                }
                true
            });
        }
    }
    for item in &mut advice {
        if !item.remedies.is_empty() {
            item.nearest = None;
        }
        item.remedies.sort_by(|a, b| a.added.value.total_cmp(&b.added.value));
    }
    advice
}

fn by_hand(outcomes: &[Outcome]) -> Vec<Outcome> {
    outcomes.iter().filter(|outcome| outcome.method == Method::Hand).cloned().collect()
}

fn try_change(top: &Top, change: &Change) -> Option<Used> {
    let other = changed(top, change)?;
    let analysis = Analysis::new(&other, DIVISIONS).ok()?;
    Some(Used::of(&run(&analysis), &other))
}
