//! The foot and the part of it that presses on its bed.

use super::{
    disc, rectangle,
    sums::{Plane, Sums},
};
use crate::{geometry::Point, units::Length};

/// The outline of a foot, its middle at the origin, its sides along *x* and *y*.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Foot {
    /// A rectangle.
    Rectangle {
        /// Along *x*.
        length: Length,
        /// Along *y*.
        width: Length,
    },
    /// A full circle.
    Disc {
        /// Across it.
        diameter: Length,
    },
}

/// What the bed gives under a foot that stands at a [`Plane`] above it.
#[derive(Clone, Copy, Default)]
pub(super) struct Bed {
    /// Integrals over the part where *w* < 0.
    pub sums: Sums,
    /// The greatest depth of the foot in the bed, −*w*.
    pub depth: f64,
}

impl Foot {
    /// Its sides.
    pub(super) const fn sizes(&self) -> [Length; 2] {
        match self {
            Self::Rectangle { length, width } => [*length, *width],
            Self::Disc { diameter } => [*diameter, *diameter],
        }
    }

    /// Distance of its farthest point from the origin, m: what coordinates are counted in.
    pub(super) fn reach(&self) -> f64 {
        match self {
            Self::Rectangle { length, width } => 0.5 * length.hypot(*width).value,
            Self::Disc { diameter } => 0.5 * diameter.value,
        }
    }

    /// Whether a place lies within the outline, not on it.
    pub(super) fn holds(&self, place: Point) -> bool {
        match self {
            Self::Rectangle { length, width } => 2.0 * place.x.abs() < *length && 2.0 * place.y.abs() < *width,
            Self::Disc { diameter } => 2.0 * place.x.hypot(place.y) < *diameter,
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
