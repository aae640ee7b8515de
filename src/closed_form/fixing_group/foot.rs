//! The foot and the part of it that presses on its bed.

use super::{disc, rectangle, sums::Sums};
use crate::geometry::Foot;

/// What the bed gives under a foot that stands at *w* = *a*₀ + *a*₁ *x* + *a*₂ *y* above it, coordinates over the reach
/// of the foot.
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
    pub(super) fn whole(&self) -> Sums {
        match self {
            Self::Rectangle { .. } => rectangle::whole(self.half_sides()),
            Self::Disc { .. } => disc::whole(),
        }
    }

    /// The bed below the foot at *w* = *a*₀ + *a*₁ *x* + *a*₂ *y*, coordinates over its reach.
    pub(super) fn bed(&self, a: [f64; 3]) -> Bed {
        match self {
            Self::Rectangle { .. } => rectangle::bed(self.half_sides(), a),
            Self::Disc { .. } => disc::bed(a),
        }
    }

    fn half_sides(&self) -> [f64; 2] {
        self.sizes().map(|side| 0.5 * side.value / self.reach())
    }
}
