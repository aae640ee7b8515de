//! Both methods on what tables and steps say by hand alone, where it matters most and as far as one cares to wait.

use rayon::prelude::*;

use super::{aside::Aside, found::Seen, grid::Grid, search::Watch, space::Space, step::Step};
use crate::{
    check::Outcome,
    top::{CoreSheet, Top},
    units::{Mass, Ratio},
};

/// Cells on the border of tables that are judged by both methods: each takes a plate, and a reader builds what is light. Our choice.
const MOST_CELLS: usize = 2;

/// Steps that are, those that save most first. Our choice.
const MOST_STEPS: usize = 2;

/// What both methods have to know of a search.
pub(super) struct Both<'a> {
    pub(super) space: &'a Space,
    pub(super) aside: &'a Aside,
    pub(super) watch: &'a dyn Watch,
    /// Cores that both methods have judged in the skins of the file: how far each is used, and what governs.
    pub(super) known: Vec<(&'a CoreSheet, (Ratio, usize))>,
}

impl Both<'_> {
    /// How far it is used and what governs, by both methods on the usual triangles; infinite where a check could not be made.
    fn used(&self, top: &Top) -> Option<(Ratio, usize)> {
        Seen::of(top, None, None, &|| false).judged(self.aside).found.governs.map(|worst| used(&worst))
    }

    /// Cells that hold by hand and lie beside one that does not: those that are known, and of each table the lightest. Whether it was not
    /// stopped.
    pub(super) fn borders(&self, top: &Top, grids: &mut [Grid], families: &[&str]) -> bool {
        let mut wanted: Vec<(usize, usize, (usize, usize))> = Vec::new();
        for (number, grid) in grids.iter_mut().enumerate().filter(|(_, grid)| families.contains(&grid.family.as_str()))
        {
            let border: Vec<(usize, usize)> = grid.border().collect();
            for (row, column) in border {
                let core = grid.core(self.space, row, column);
                if let Some((_, judged)) = self.known.iter().find(|(known, _)| Some(*known) == core) {
                    grid.is_judged(row, column, Some(*judged));
                }
            }
            let mass = |&(row, column): &(usize, usize)| (grid.densities[row] * grid.thicknesses[column]).value;
            let mut border: Vec<(usize, usize)> = grid.border().collect();
            border.sort_by(|a, b| mass(a).total_cmp(&mass(b)));
            wanted.extend(border.into_iter().enumerate().map(|(rank, place)| (rank, number, place)));
        }
        // The lightest of each table before what comes next in one.
        wanted.sort_unstable();
        wanted.truncate(MOST_CELLS);
        if wanted.is_empty() {
            return true;
        }
        if self.watch.stops() {
            return false;
        }
        let core =
            |&(_, number, (row, column)): &(usize, usize, (usize, usize))| grids[number].core(self.space, row, column);
        let judged: Vec<Option<(Ratio, usize)>> =
            wanted.par_iter().map(|of| self.used(&Top { core: core(of)?.clone(), ..top.clone() })).collect();
        for ((_, number, (row, column)), judged) in wanted.into_iter().zip(judged) {
            grids[number].is_judged(row, column, judged);
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
