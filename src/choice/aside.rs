//! What candidates are judged without: what cannot be judged of any, and what fails whatever is laid up.

use super::{
    always::{Always, holder},
    cannot::Cannot,
};
use crate::{
    analysis::{Analysis, MountForces},
    check::{Outcome, run_one, worst_first},
};

/// What is left aside while candidates are judged.
#[derive(Clone, Debug, Default)]
pub(super) struct Aside {
    /// What cannot be judged of any.
    pub(super) cannot: Cannot,
    /// What fails whatever is laid up.
    pub(super) always: Vec<Always>,
}

/// Outcomes of a top, parted.
pub(super) struct Parted {
    /// Those that count, the worst first.
    pub(super) rest: Vec<Outcome>,
    /// The worst of each that fails anyway.
    pub(super) fails: Vec<Outcome>,
}

impl Aside {
    /// Outcomes of a whole analysis, without those that are left aside.
    pub(super) fn parted(&self, analysis: &mut Analysis<'_>, mut outcomes: Vec<Outcome>) -> Parted {
        let mut fails = Vec::new();
        if !self.always.is_empty() {
            // A check keeps the worst of all mounts: what others make of it has to be seen by itself.
            let mut checks: Vec<usize> = self.always.iter().map(|own| own.check).collect();
            checks.dedup();
            for check in checks {
                let own = || self.always.iter().filter(move |own| own.check == check);
                outcomes.retain(|outcome| outcome.check != check);
                if own().all(|own| own.of.is_some()) {
                    let left = |name: &str| own().all(|own| own.of.as_deref() != Some(name));
                    outcomes.extend(made_of(analysis, check, &left));
                }
                for own in own() {
                    let worst = own.outcomes(analysis).into_iter().next();
                    fails.extend(worst.filter(|worst| !worst.passes()));
                }
            }
            outcomes = worst_first(outcomes);
        }
        outcomes.retain(|outcome| !self.cannot.has(outcome));
        Parted { rest: outcomes, fails }
    }
}

/// What a check makes of the mounts of some names alone.
pub(super) fn made_of(analysis: &mut Analysis<'_>, check: usize, of: &dyn Fn(&str) -> bool) -> Vec<Outcome> {
    let all = std::mem::take(&mut analysis.mount_forces);
    let named = |forces: &&MountForces| of(holder(analysis.top, analysis.mounts[forces.mount].on));
    analysis.mount_forces = all.iter().filter(named).cloned().collect();
    let outcomes = run_one(check, analysis);
    analysis.mount_forces = all;
    outcomes
}
