//! What cannot be judged of any candidate, whatever is laid up: a joint of which nobody knows what it bears, a pipe whose wall is
//! not given. It must not hide that all else holds.

use rayon::prelude::*;

use super::space::{Candidate, Space, misfit};
use crate::{
    analysis::{Analysis, DIVISIONS},
    check::{Outcome, Verdict, run},
};

/// Something that could not be judged.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Open {
    /// A check.
    Check {
        /// Its place in [`CHECKS`](crate::check::CHECKS).
        check: usize,
        /// Why, the first reason that it gives.
        reason: String,
    },
    /// A load case, since a material has no value in its state.
    Case {
        /// Its name.
        id: &'static str,
        /// Its title.
        title: String,
        /// Why.
        reason: String,
    },
}

impl Open {
    /// Whether another is of the same check or load case.
    #[must_use]
    pub fn is_like(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Check { check, .. }, Self::Check { check: known, .. }) => check == known,
            (Self::Case { id, .. }, Self::Case { id: known, .. }) => id == known,
            _ => false,
        }
    }

    /// All of an analysis, each check and each load case once.
    pub(super) fn all(analysis: &Analysis<'_>, outcomes: &[Outcome]) -> Vec<Self> {
        let mut all: Vec<Self> = Vec::new();
        for outcome in outcomes {
            if let Verdict::NotEvaluated(reason) = &outcome.verdict {
                let open = Self::Check { check: outcome.check, reason: reason.clone() };
                if !all.iter().any(|known| known.is_like(&open)) {
                    all.push(open);
                }
            }
        }
        all.extend(analysis.open_cases.iter().map(|(case, reason)| Self::Case {
            id: case.id,
            title: case.title.clone(),
            reason: reason.clone(),
        }));
        all
    }
}

/// What is open for every candidate.
#[derive(Clone, Debug, Default)]
pub(super) struct Cannot(pub(super) Vec<Open>);

impl Cannot {
    /// Of what is open for the file's own: what stays open for cores and skins from one end of the space to the other, on all
    /// pipes. A rough plate knows that as well as a fine one.
    pub(super) fn of(own: &[Open], space: &Space) -> Self {
        if own.is_empty() {
            return Self::default();
        }
        let probed: Vec<Vec<Open>> = probes(space)
            .into_par_iter()
            .map(|candidate| space.top(candidate))
            .filter(|top| misfit(top, top.core.thickness, top.thickness()).is_none())
            .filter_map(|top| {
                let analysis = Analysis::new(&top, DIVISIONS).ok()?.with_rough_plate();
                Some(Open::all(&analysis, &run(&analysis)))
            })
            .collect();
        let always = |open: &&Open| probed.iter().all(|of| of.iter().any(|known| known.is_like(open)));
        Self(own.iter().filter(always).cloned().collect())
    }

    /// Whether nothing stands against a candidate but checks that cannot be made for any. A load case that cannot be looked at stands
    /// against all: nobody knows what is too light for it.
    pub(super) fn has_all(&self, open: &[Open]) -> bool {
        let is_check = |open: &Open| matches!(open, Open::Check { .. });
        open.iter().all(|open| is_check(open) && self.0.iter().any(|known| known.is_like(open)))
    }

    /// Whether an outcome could not be made, nor can it for others.
    pub(super) fn has(&self, outcome: &Outcome) -> bool {
        outcome.utilisation().is_none()
            && self.0.iter().any(|known| matches!(known, Open::Check { check, .. } if *check == outcome.check))
    }
}

/// The first and the last core of each family in the first skins and the last; the first on all pipes and backings.
fn probes(space: &Space) -> Vec<Candidate> {
    let mut probes = Vec::new();
    let mut families: Vec<&str> = space.cores.iter().map(|core| core.family.id.as_str()).collect();
    families.dedup();
    for family in families {
        let of_family = || (0..space.cores.len()).filter(|core| space.cores[*core].family.id == family);
        let first = of_family().next().map(|core| Candidate { arrangement: 0, core, outer: 0, inner: 0 });
        let [outer, inner] = [&space.outer, &space.inner].map(|skins| skins.len().saturating_sub(1));
        let last = of_family().next_back().map(|core| Candidate { arrangement: 0, core, outer, inner });
        probes.extend(first.into_iter().chain(last));
    }
    if let Some(first) = probes.first().copied() {
        probes.extend((1..space.arrangements.len()).map(|arrangement| Candidate { arrangement, ..first }));
    }
    probes
}
