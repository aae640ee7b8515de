//! The foot and the part of it that presses on its bed.

use super::{
    disc, rectangle,
    sums::{Plane, Sums},
};
use crate::geometry::Foot;

/// What the bed gives under a foot that stands at a [`Plane`] above it.
#[derive(Clone, Copy, Default)]
pub(super) struct Bed {
    /// Integrals over the part where *w* < 0.
    pub sums: Sums,
    /// The greatest depth of the foot in the bed, −*w*.
    pub depth: f64,
}

impl Foot {
    /// Distance of its farthest point from the origin, m: what coordinates are counted in.
    pub(super) fn reach(&self) -> f64 {
        match self {
            Self::Rectangle { length, width } => 0.5 * length.hypot(*width).value,
            Self::Disc { diameter } => 0.5 * diameter.value,
        }
    }

    /// Integrals over the whole foot, coordinates over its reach.
    pub(super) fn whole(&self, reach: f64) -> Sums {
        match self {
            Self::Rectangle { .. } => rectangle::whole(self.half_sides(reach)),
            Self::Disc { .. } => disc::whole(),
        }
    }

    /// The bed below the foot.
    pub(super) fn bed(&self, reach: f64, plane: &Plane) -> Bed {
        match self {
            Self::Rectangle { .. } => rectangle::bed(self.half_sides(reach), plane),
            Self::Disc { .. } => disc::bed(plane),
        }
    }

    fn half_sides(&self, reach: f64) -> [f64; 2] {
        self.sizes().map(|side| 0.5 * side.value / reach)
    }
}
