//! The outline of the top and its edge.

use std::f64::consts::PI;

use crate::{
    geometry::{Axis, Point},
    units::{Area, Length},
};

/// A rectangle with rounded corners.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    /// Fore and aft.
    pub length: Length,
    /// Across the boat.
    pub width: Length,
    /// Radius of the corners in plan.
    pub corner_radius: Length,
}

impl Outline {
    /// The size in a direction.
    #[must_use]
    pub const fn size(&self, axis: Axis) -> Length {
        match axis {
            Axis::X => self.length,
            Axis::Y => self.width,
        }
    }

    /// Area in plan, less what the rounded corners take.
    ///
    /// ```
    /// use skinspan::{top::Outline, units::Length};
    /// use uom::si::{area::square_meter, length::meter};
    /// let m = Length::new::<meter>;
    /// let outline = Outline { length: m(3.0), width: m(2.0), corner_radius: m(0.5) };
    /// // 6 − (4 − π) · 0.25 = 5.7854 m²
    /// assert!((outline.area().get::<square_meter>() - 5.7854).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn area(&self) -> Area {
        self.length * self.width - (4.0 - PI) * self.corner_radius * self.corner_radius
    }

    /// Length round the edge.
    #[must_use]
    pub fn perimeter(&self) -> Length {
        2.0 * (self.length + self.width) - (8.0 - 2.0 * PI) * self.corner_radius
    }

    /// Whether a place lies on the rectangle. The corners count as square: the rounding takes load off, not on.
    #[must_use]
    pub fn holds(&self, place: Point) -> bool {
        [Axis::X, Axis::Y].into_iter().all(|axis| {
            let at = place.along(axis);
            at >= Length::default() && at <= self.size(axis)
        })
    }
}

/// The border where the core is cut back and filled.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// How far the core is cut back.
    pub setback: Length,
    /// What fills it.
    pub fill: crate::material::Filler,
}
