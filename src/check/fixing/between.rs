//! What lies between the skins where a fixing or a footing stands.

use super::{
    Held,
    backing_kind::{BackingKind, backing},
};
use crate::{
    analysis::Region,
    material::{Basis, Board, Core, Property},
    top::Top,
    units::{Pressure, Ratio},
};

#[derive(Clone, Copy)]
pub(super) enum Between<'a> {
    Board(&'a Board),
    Core(&'a Core),
}

impl<'a> Between<'a> {
    /// Where a fixing stands.
    pub(super) fn at(held: &Held<'a>) -> Self {
        backing(held).map_or(Self::Core(&held.top.core.material), |backing| Self::Board(&backing.board))
    }

    /// In a region of a top.
    pub(super) fn of(region: Region, top: &'a Top) -> Self {
        match region {
            Region::Backing(index) => Self::Board(&top.backings[index].board),
            Region::Field | Region::Conduit(_) => Self::Core(&top.core.material),
        }
    }

    pub(super) const fn compressive_strength(self) -> &'a Property<Pressure> {
        match self {
            Self::Board(board) => &board.compressive_strength,
            Self::Core(core) => &core.compressive_strength,
        }
    }

    /// What is left of a strength of it.
    pub(super) fn left(self, held: &Held<'_>, basis: Basis) -> Ratio {
        match self {
            Self::Board(board) => BackingKind::of(board).left(held, basis),
            Self::Core(_) => held.knockdowns.core_strength(basis).product(),
        }
    }

    /// Modulus across the panel, with what is left of it.
    pub(super) fn modulus(self, held: &Held<'_>) -> Pressure {
        match self {
            Self::Board(board) => board.compressive_modulus.value,
            Self::Core(core) => core.compressive_modulus.value * held.knockdowns.core_stiffness(),
        }
    }

    pub(super) fn poisson(self, top: &Top) -> Ratio {
        match self {
            Self::Board(_) => top.criteria.board_poisson.value,
            Self::Core(core) => core.in_plane_poisson.value,
        }
    }
}
