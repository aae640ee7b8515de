//! Density across thickness: what a family of cores makes of the skins that a top has.

use rayon::prelude::*;

use super::{found::used_by_hand, space::Space};
use crate::{
    top::{CoreSheet, Top},
    units::{Length, MassDensity, Ratio},
};

/// One core with the skins of the file, by the hand method.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cell {
    /// How far it is used; infinite where a check could not be made.
    pub utilisation: Ratio,
    /// What governs, as its place in [`CHECKS`](crate::check::CHECKS).
    pub governs: usize,
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
    pub(super) fn all(top: &Top, space: &Space) -> Vec<Self> {
        let cells: Vec<Option<Cell>> = space
            .cores
            .par_iter()
            .map(|core| {
                let (utilisation, governs) = used_by_hand(&Top { core: core.clone(), ..top.clone() })?;
                Some(Cell { utilisation, governs })
            })
            .collect();
        let mut families: Vec<&str> = space.cores.iter().map(|core| core.family.id.as_str()).collect();
        families.dedup();
        families.into_iter().map(|family| Self::of(family, &space.cores, &cells)).collect()
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
