//! Density across thickness: what a family of cores makes of the skins that a top has.

use rayon::prelude::*;

use super::{both::Both, found::used_by_hand, space::Space};
use crate::{
    top::{CoreSheet, Top},
    units::{Length, MassDensity, Ratio},
};

/// One core with the skins of the file.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cell {
    /// How far it is used; infinite where a check could not be made.
    pub utilisation: Ratio,
    /// What governs, as its place in [`CHECKS`](crate::check::CHECKS).
    pub governs: usize,
    /// Whether both methods judged it; else the hand method alone.
    pub by_both: bool,
}

impl Cell {
    fn holds(&self) -> bool {
        self.utilisation <= Ratio::from(1.0)
    }
}

/// A family of cores over its densities and thicknesses.
#[derive(Clone, Debug, PartialEq)]
pub struct Grid {
    /// The family's id.
    pub family: String,
    /// Down the side.
    pub densities: Vec<MassDensity>,
    /// Across the top.
    pub thicknesses: Vec<Length>,
    /// Row by row; none where something does not go in, or nothing could be checked.
    pub cells: Vec<Vec<Option<Cell>>>,
}

impl Grid {
    /// Of all families; none where somebody stopped it.
    pub(super) fn all(top: &Top, both: &Both<'_>) -> Option<Vec<Self>> {
        let cell = |core: &CoreSheet| {
            let (utilisation, governs) = used_by_hand(&Top { core: core.clone(), ..top.clone() }, both.aside)?;
            Some(Cell { utilisation, governs, by_both: false })
        };
        let going_on = |core: &CoreSheet| (!both.watch.stops()).then(|| cell(core));
        let space = both.space;
        let cells = space.cores.par_iter().map(going_on).collect::<Option<Vec<Option<Cell>>>>()?;
        let mut families: Vec<&str> = space.cores.iter().map(|core| core.family.id.as_str()).collect();
        families.dedup();
        Some(families.into_iter().map(|family| Self::of(family, &space.cores, &cells)).collect())
    }

    /// Cells that hold by the hand method alone and lie beside one that does not, row by row.
    pub(super) fn border(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        let at = |row: usize, column: usize| self.cells.get(row)?.get(column)?.as_ref();
        let fails = move |row: usize, column: usize| at(row, column).is_some_and(|cell| !cell.holds());
        let all =
            (0..self.densities.len()).flat_map(|row| (0..self.thicknesses.len()).map(move |column| (row, column)));
        all.filter(move |&(row, column)| {
            let by_hand = at(row, column).is_some_and(|cell| cell.holds() && !cell.by_both);
            // Before the first there is none.
            let beside =
                [(row.wrapping_sub(1), column), (row + 1, column), (row, column.wrapping_sub(1)), (row, column + 1)];
            by_hand && beside.into_iter().any(|(row, column)| fails(row, column))
        })
    }

    /// The core of a cell.
    pub(super) fn core<'s>(&self, space: &'s Space, row: usize, column: usize) -> Option<&'s CoreSheet> {
        let (density, thickness) = (self.densities[row], self.thicknesses[column]);
        let own = |core: &&CoreSheet| {
            core.family.id == self.family && core.material.density == density && core.thickness == thickness
        };
        space.cores.iter().find(own)
    }

    /// Sets down what both methods say of a cell.
    pub(super) fn is_judged(&mut self, row: usize, column: usize, judged: Option<(Ratio, usize)>) {
        self.cells[row][column] = judged.map(|(utilisation, governs)| Cell { utilisation, governs, by_both: true });
    }

    fn of(family: &str, cores: &[CoreSheet], cells: &[Option<Cell>]) -> Self {
        let own = || cores.iter().zip(cells).filter(|(core, _)| core.family.id == family);
        let mut densities: Vec<MassDensity> = own().map(|(core, _)| core.material.density).collect();
        let mut thicknesses: Vec<Length> = own().map(|(core, _)| core.thickness).collect();
        densities.sort_by(|a, b| a.value.total_cmp(&b.value));
        densities.dedup();
        thicknesses.sort_by(|a, b| a.value.total_cmp(&b.value));
        thicknesses.dedup();
        let cell = |density: MassDensity, thickness: Length| {
            let at = own().find(|(core, _)| core.material.density == density && core.thickness == thickness);
            at.and_then(|(_, cell)| *cell)
        };
        let row = |density: &MassDensity| thicknesses.iter().map(|thickness| cell(*density, *thickness)).collect();
        let cells = densities.iter().map(row).collect();
        Self { family: family.to_owned(), densities, thicknesses, cells }
    }
}
