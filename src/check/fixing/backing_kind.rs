//! What a board is, as far as a fixing feels it.

use super::Held;
use crate::{
    material::{Basis, Board},
    top::{Backing, Hold},
    units::Ratio,
};

/// Kinds of board that hold a thread each in its own way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum BackingKind {
    /// Polyurethane, polyethylene and whatever else has no grain and is soft beside the screw.
    Soft,
    Wood,
    Laminate,
    Metal,
}

impl BackingKind {
    pub(super) fn of(board: &Board) -> Self {
        match board.family.as_str() {
            "plywood" | "wood" | "balsa" => Self::Wood,
            "laminate" => Self::Laminate,
            "aluminium" | "steel" | "stainless steel" => Self::Metal,
            _ => Self::Soft,
        }
    }

    /// What is left of a strength of it: heat, water and time do not soften metal, and laminate as they do the skins.
    pub(super) fn left(self, held: &Held<'_>, basis: Basis) -> Ratio {
        match self {
            Self::Soft | Self::Wood => held.knockdowns.board_strength(basis).product(),
            Self::Laminate => held.knockdowns.skin_strength(held.mount.near, basis).product(),
            Self::Metal => held.top.criteria.basis_share(basis).value,
        }
    }
}

/// The backing that a fixing stands in.
pub(super) fn backing<'a>(held: &Held<'a>) -> Option<&'a Backing> {
    let around = held.around().backing?;
    around.holds(held.top).then(|| &held.top.backings[around.backing])
}

/// Why nothing can be said of a fixing that holds in backing and has none round it.
pub(super) fn no_backing(held: &Held<'_>) -> String {
    let way_out = match held.fixing().hold {
        Hold::BlindInsert { .. } => "lay backing under it, or take a potted insert or a through-bolt",
        _ => "lay backing under it, or take a through-bolt",
    };
    format!("{}: what holds in backing has none where it stands: {way_out}", held.fixing().name)
}
