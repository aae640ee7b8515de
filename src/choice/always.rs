//! What fails whatever is laid up: checks of fixings and pipes, which a choice of cores and skins leaves as they are.

mod remedies;

use rayon::prelude::*;

use super::{
    aside::made_of,
    space::{Candidate, Space, misfit},
    witness::{fails_whatever_its_error, without_error},
};
use crate::{
    advice::Remedy,
    analysis::{Analysis, DIVISIONS, MountOn, mounts},
    check::{CHECKS, Method, Outcome, Subject, run_one, worst_first},
    top::Top,
};

/// Candidates that are judged on a rough plate for what only a plate finds: each takes a good part of a second. Our choice.
const MOST_PLATES: usize = 6;

/// A check of fixings or pipes that failed in all that were judged for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Always {
    /// The check, as its place in [`CHECKS`].
    pub check: usize,
    /// Name of what the fixings hold; none where the check looks at pipes.
    pub of: Option<String>,
    /// How many combinations were judged for it, the file's own among them.
    pub judged: usize,
    /// What it came to in the one of these that is used least.
    pub least: Outcome,
    /// Title of the load case of that.
    pub case: Option<String>,
    /// Changes of fixings, backing and pipes, each alone, that make it pass by the hand method in what is shown first; the lightest first.
    pub remedies: Vec<Remedy>,
    /// Where there is none: the change that comes nearest.
    pub nearest: Option<Remedy>,
}

impl Always {
    /// What the check makes of an analysis, the worst first.
    pub(super) fn outcomes(&self, analysis: &mut Analysis<'_>) -> Vec<Outcome> {
        outcomes_of(analysis, self.check, self.of.as_deref())
    }

    /// Of what fails in the file's own: what fails with cores and skins from one end of the space to the other too, on all pipes and
    /// backings; by the hand method, or where only a plate finds it on rough ones. That is no proof for those between.
    pub(super) fn all(own: &mut Analysis<'_>, outcomes: &[Outcome], space: &Space) -> Vec<Self> {
        let of_own = Self::in_own(own, outcomes);
        if of_own.is_empty() {
            return of_own;
        }
        let probes = probes(space);
        let (by_hand, by_plate): (Vec<Self>, Vec<Self>) =
            of_own.into_iter().partition(|known| known.least.method == Method::Hand);
        let mut all = in_all(by_hand, &probes, space, &|top| Analysis::new(top, DIVISIONS).ok());
        let step = probes.len().div_ceil(MOST_PLATES).max(1);
        let few: Vec<Candidate> = probes.into_iter().step_by(step).collect();
        all.extend(in_all(by_plate, &few, space, &|top| {
            let mut analysis = Analysis::unsolved(top, &|_| true).ok()?;
            analysis.mounts = mounts(top);
            Some(without_error(analysis.with_rough_plate()))
        }));
        all
    }

    /// What of fixings and pipes fails in a top.
    fn in_own(own: &mut Analysis<'_>, outcomes: &[Outcome]) -> Vec<Self> {
        let of_fixings = |check: usize| CHECKS[check].subject() == Subject::Fixings;
        let failing = outcomes.iter().filter(|worst| fails_whatever_its_error(worst)).map(|worst| worst.check);
        // Only pipes are such that no hand method looks at them.
        let mut checks: Vec<usize> =
            failing.filter(|check| of_fixings(*check) || CHECKS[*check].plate_alone()).collect();
        checks.sort_unstable();
        checks.dedup();
        let mut names: Vec<String> = own.mounts.iter().map(|mount| holder(own.top, mount.on).to_owned()).collect();
        names.dedup();
        let mut all = Vec::new();
        for check in checks {
            let holders = if of_fixings(check) { names.iter().cloned().map(Some).collect() } else { vec![None] };
            for of in holders {
                let outcomes = outcomes_of(own, check, of.as_deref());
                let Some(least) = Method::ALL.into_iter().find_map(|method| worst_failing(&outcomes, method)) else {
                    continue;
                };
                let case = least.case.map(|case| own.cases[case].title.clone());
                all.push(Self { check, of, judged: 1, least, case, remedies: Vec::new(), nearest: None });
            }
        }
        all
    }
}

/// The name of what fixings hold.
pub(super) fn holder(top: &Top, on: MountOn) -> &str {
    match on {
        MountOn::Gear(index) => &top.gear[index].name,
        MountOn::Support(index) => &top.supports[index].name,
    }
}

/// What fails, with the title of its load case.
type Failing = (Outcome, Option<String>);

/// Those that fail in all candidates that can be analysed, if there are any.
fn in_all(
    mut all: Vec<Always>,
    probes: &[Candidate],
    space: &Space,
    analysed: &(dyn for<'t> Fn(&'t Top) -> Option<Analysis<'t>> + Sync),
) -> Vec<Always> {
    if all.is_empty() {
        return all;
    }
    let judged: Vec<Vec<Option<Failing>>> = probes
        .par_iter()
        .filter_map(|probe| {
            let top = space.top(*probe);
            misfit(&top, top.core.thickness, top.thickness()).is_none().then_some(())?;
            let mut analysis = analysed(&top)?;
            let worst = |known: &Always| {
                let worst = worst_failing(&known.outcomes(&mut analysis), known.least.method)?;
                let case = worst.case.map(|case| analysis.cases[case].title.clone());
                Some((worst, case))
            };
            Some(all.iter().map(worst).collect())
        })
        .collect();
    if judged.is_empty() {
        return Vec::new();
    }
    let mut place = 0..;
    all.retain_mut(|known| {
        let place = place.next().unwrap_or_default();
        for probe in &judged {
            let Some((worst, case)) = &probe[place] else { return false };
            known.judged += 1;
            if worst.utilisation() < known.least.utilisation() {
                (known.least, known.case) = (worst.clone(), case.clone());
            }
        }
        true
    });
    all
}

/// What a check makes of an analysis, or of the fixings of one holder in it; the worst first.
fn outcomes_of(analysis: &mut Analysis<'_>, check: usize, of: Option<&str>) -> Vec<Outcome> {
    worst_first(match of {
        Some(of) => made_of(analysis, check, &|name| name == of),
        None => run_one(check, analysis),
    })
}

/// The worst that fails by a method, whatever its error.
fn worst_failing(outcomes: &[Outcome], method: Method) -> Option<Outcome> {
    outcomes.iter().find(|outcome| outcome.method == method && fails_whatever_its_error(outcome)).cloned()
}

/// Cores at the corners of each family in the first skins and the last; one on all pipes and backings.
fn probes(space: &Space) -> Vec<Candidate> {
    let mut families: Vec<&str> = space.cores.iter().map(|core| core.family.id.as_str()).collect();
    families.dedup();
    let [outer, inner] = [&space.outer, &space.inner].map(|skins| skins.len().saturating_sub(1));
    let mut probes = Vec::new();
    for family in families {
        let of_family: Vec<usize> =
            (0..space.cores.len()).filter(|core| space.cores[*core].family.id == family).collect();
        let by = |key: &dyn Fn(&crate::top::CoreSheet) -> [f64; 2]| {
            let less = |a: &&usize, b: &&usize| {
                let [a, b] = [a, b].map(|core| key(&space.cores[**core]));
                a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1]))
            };
            let (first, last) = (of_family.iter().min_by(less), of_family.iter().max_by(less));
            first.into_iter().chain(last).copied().collect::<Vec<usize>>()
        };
        let mut cores = by(&|core| [core.material.density.value, core.thickness.value]);
        cores.extend(by(&|core| [core.thickness.value, core.material.density.value]));
        cores.sort_unstable();
        cores.dedup();
        for core in cores {
            probes.push(Candidate { arrangement: 0, core, outer: 0, inner: 0 });
            probes.push(Candidate { arrangement: 0, core, outer, inner });
        }
    }
    if let Some(last) = probes.last().copied() {
        probes.extend((1..space.arrangements.len()).map(|arrangement| Candidate { arrangement, ..last }));
    }
    probes.dedup();
    probes
}
