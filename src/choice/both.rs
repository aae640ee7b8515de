//! Both methods on what tables and steps say by hand alone, where it matters most and as far as one cares to wait.

use rayon::prelude::*;

use super::{aside::Aside, found::Seen, grid::Grid, search::Watch, space::Space, step::Step};
use crate::{
    check::Outcome,
    top::Top,
    units::{Mass, Ratio},
};

/// Cells on the border of a table that are judged by both methods, all tables together: each takes a plate. Our choice.
const MOST_CELLS: usize = 6;

/// Steps that are, those that save most first. Our choice.
const MOST_STEPS: usize = 2;

/// Plates at once, so that somebody who stops does not wait long.
const AT_ONCE: usize = 2;

/// What both methods have to know of a search.
pub(super) struct Both<'a> {
    pub(super) space: &'a Space,
    pub(super) aside: &'a Aside,
    pub(super) watch: &'a dyn Watch,
}

impl Both<'_> {
    /// How far it is used and what governs, by both methods on the usual triangles; infinite where a check could not be made.
    fn used(&self, top: &Top) -> Option<(Ratio, usize)> {
        Seen::of(top, None, None, &|| false).judged(self.aside).found.governs.map(|worst| used(&worst))
    }

    /// Cells that hold by hand and lie beside one that does not: first those of the first table. Where both methods find that one does not
    /// hold, the border moves on. Whether it was not stopped.
    pub(super) fn borders(&self, top: &Top, grids: &mut [Grid], families: &[&str]) -> bool {
        let mut left = MOST_CELLS;
        for family in families {
            let Some(grid) = grids.iter_mut().find(|grid| grid.family == *family) else { continue };
            loop {
                let border: Vec<(usize, usize)> = grid.border().take(left.min(AT_ONCE)).collect();
                if border.is_empty() {
                    break;
                }
                if self.watch.stops() {
                    return false;
                }
                left -= border.len();
                let core = |&(row, column): &(usize, usize)| grid.core(self.space, row, column);
                let judged: Vec<Option<(Ratio, usize)>> = border
                    .par_iter()
                    .map(|place| self.used(&Top { core: core(place)?.clone(), ..top.clone() }))
                    .collect();
                for ((row, column), judged) in border.into_iter().zip(judged) {
                    grid.is_judged(row, column, judged);
                }
            }
        }
        true
    }

    /// Steps that hold by hand and save weight: the most first. Whether it was not stopped.
    pub(super) fn steps(&self, steps: &mut [(Step, Top)]) -> bool {
        let saves = |(step, _): &(Step, Top)| step.added < Mass::default() && step.utilisation <= Ratio::from(1.0);
        let mut places: Vec<usize> = (0..steps.len()).filter(|place| saves(&steps[*place])).collect();
        places.sort_by(|a, b| steps[*a].0.added.value.total_cmp(&steps[*b].0.added.value));
        for place in places.into_iter().take(MOST_STEPS) {
            if self.watch.stops() {
                return false;
            }
            let (step, top) = &mut steps[place];
            if let Some((utilisation, governs)) = self.used(top) {
                *step = Step { utilisation, governs, by_both: true, ..step.clone() };
            }
        }
        true
    }
}

/// How far an outcome is used, infinite where it could not be made, and its check.
pub(super) fn used(outcome: &Outcome) -> (Ratio, usize) {
    (outcome.utilisation().unwrap_or_else(|| Ratio::from(f64::INFINITY)), outcome.check)
}
