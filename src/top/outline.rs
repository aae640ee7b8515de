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

    /// How far a place lies within the outline, to the nearest point of it; below zero outside.
    ///
    /// ```
    /// use skinspan::{geometry::Point, top::Outline, units::Length};
    /// use uom::si::length::meter;
    /// let m = Length::new::<meter>;
    /// let outline = Outline { length: m(3.0), width: m(2.0), corner_radius: m(0.5) };
    /// // From the middle of the corner's arc, at (0.5, 0.5): 0.5 − 0.3 √2.
    /// let within = outline.within_by(Point { x: m(0.2), y: m(0.2) });
    /// assert!((within.get::<meter>() - 0.075736).abs() < 1e-6);
    /// ```
    #[must_use]
    pub fn within_by(&self, place: Point) -> Length {
        let nothing = Length::default();
        // Past the rectangle on which the arcs of the corners are centred: below zero within it.
        let past = Axis::BOTH.map(|axis| {
            let half = 0.5 * self.size(axis);
            (place.along(axis) - half).abs() - half + self.corner_radius
        });
        self.corner_radius - past[0].max(nothing).hypot(past[1].max(nothing)) - past[0].max(past[1]).min(nothing)
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

#[cfg(test)]
mod tests {
    use uom::si::length::meter;

    use super::*;

    #[test]
    fn distance_to_sides_and_corners_from_both_sides() {
        let m = Length::new::<meter>;
        let outline = Outline { length: m(3.0), width: m(2.0), corner_radius: m(0.5) };
        for (x, y, within) in [
            (1.5, 1.0, 1.0),
            (1.5, 0.2, 0.2),
            (2.9, 1.0, 0.1),
            (1.5, 2.3, -0.3),
            (0.5, 0.5, 0.5),
            // 0.5 from the middle of the arc, which lies at (2.5, 1.5): 3-4-5.
            (2.8, 1.9, 0.0),
            (3.1, 2.3, -0.5),
        ] {
            let found = outline.within_by(Point { x: m(x), y: m(y) }).get::<meter>();
            assert!((found - within).abs() < 1e-12, "({x}, {y}): {found}");
        }
    }
}
