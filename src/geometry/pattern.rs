//! Patterns of points, as holes are drilled.

use std::f64::consts::TAU;

use uom::si::angle::radian;

use super::Point;
use crate::units::{Angle, Length};

/// A regular pattern of points about the origin. Angles count from *x* towards *y*.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pattern {
    /// Evenly on a circle.
    Circle {
        /// How many.
        count: u32,
        /// Across the circle, between centres.
        diameter: Length,
        /// Where the first stands.
        first: Angle,
    },
    /// In rows and columns.
    Grid {
        /// How many along *x*.
        along_x: u32,
        /// How many along *y*.
        along_y: u32,
        /// Distance of neighbours along *x*.
        pitch_x: Length,
        /// Distance of neighbours along *y*.
        pitch_y: Length,
    },
    /// In one line.
    Row {
        /// How many.
        count: u32,
        /// Distance of neighbours.
        pitch: Length,
        /// Where the line points.
        direction: Angle,
    },
}

impl Pattern {
    /// The points: along *x* first in a grid, from the negative end in a row. The middle of the pattern is the origin.
    ///
    /// ```
    /// use skinspan::{geometry::Pattern, units::Length};
    /// use uom::si::length::millimeter;
    /// let mm = Length::new::<millimeter>;
    /// let at = Pattern::Grid { along_x: 2, along_y: 2, pitch_x: mm(90.0), pitch_y: mm(60.0) }.points();
    /// let places: Vec<_> = at.iter().map(|p| (p.x.get::<millimeter>(), p.y.get::<millimeter>())).collect();
    /// assert_eq!(places, [(-45.0, -30.0), (45.0, -30.0), (-45.0, 30.0), (45.0, 30.0)]);
    /// ```
    #[must_use]
    pub fn points(&self) -> Vec<Point> {
        match *self {
            Self::Circle { count, diameter, first } => (0..count)
                .map(|i| {
                    let (sin, cos) = (first.get::<radian>() + TAU * f64::from(i) / f64::from(count)).sin_cos();
                    Point { x: 0.5 * diameter * cos, y: 0.5 * diameter * sin }
                })
                .collect(),
            Self::Grid { along_x, along_y, pitch_x, pitch_y } => (0..along_y)
                .flat_map(|j| {
                    (0..along_x).map(move |i| Point { x: pitch_x * step(i, along_x), y: pitch_y * step(j, along_y) })
                })
                .collect(),
            Self::Row { count, pitch, direction } => {
                let (sin, cos) = direction.get::<radian>().sin_cos();
                (0..count)
                    .map(|i| {
                        let along = pitch * step(i, count);
                        Point { x: along * cos, y: along * sin }
                    })
                    .collect()
            }
        }
    }
}

/// Place of one of so many in a row about its middle, in pitches.
fn step(index: u32, count: u32) -> f64 {
    f64::from(index) - 0.5 * (f64::from(count) - 1.0)
}

/// The distance of the two points that stand nearest to each other, if there are two.
#[must_use]
pub fn least_spacing(points: &[Point]) -> Option<Length> {
    points
        .iter()
        .enumerate()
        .flat_map(|(i, one)| points[i + 1..].iter().map(|other| one.distance(*other)))
        .reduce(Length::min)
}

#[cfg(test)]
mod tests {
    use uom::si::{angle::degree, length::millimeter};

    use super::*;

    fn mm(x: f64) -> Length {
        Length::new::<millimeter>(x)
    }

    fn places(pattern: Pattern) -> Vec<(f64, f64)> {
        pattern.points().iter().map(|p| (p.x.get::<millimeter>(), p.y.get::<millimeter>())).collect()
    }

    fn near(found: &[(f64, f64)], expected: &[(f64, f64)]) {
        assert_eq!(found.len(), expected.len());
        for (p, q) in found.iter().zip(expected) {
            assert!((p.0 - q.0).hypot(p.1 - q.1) < 1e-12, "{p:?} {q:?}");
        }
    }

    #[test]
    fn circle_starts_at_its_angle_and_turns_from_x_to_y() {
        let pattern = Pattern::Circle { count: 4, diameter: mm(100.0), first: Angle::new::<degree>(90.0) };
        near(&places(pattern), &[(0.0, 50.0), (-50.0, 0.0), (0.0, -50.0), (50.0, 0.0)]);
    }

    #[test]
    fn row_points_in_its_direction() {
        let pattern = Pattern::Row { count: 3, pitch: mm(50.0), direction: Angle::new::<degree>(90.0) };
        near(&places(pattern), &[(0.0, -50.0), (0.0, 0.0), (0.0, 50.0)]);
    }

    #[test]
    fn neighbours_stand_the_pitch_apart() {
        let spacing = |pattern: Pattern| least_spacing(&pattern.points()).map(|d| d.get::<millimeter>());
        let grid = Pattern::Grid { along_x: 3, along_y: 2, pitch_x: mm(70.0), pitch_y: mm(40.0) };
        assert!(spacing(grid).is_some_and(|d| (d - 40.0).abs() < 1e-12));
        // The chord of 60° is the radius.
        let circle = Pattern::Circle { count: 6, diameter: mm(100.0), first: Angle::new::<degree>(7.0) };
        assert!(spacing(circle).is_some_and(|d| (d - 50.0).abs() < 1e-12));
        assert_eq!(spacing(Pattern::Row { count: 1, pitch: mm(9.0), direction: Angle::default() }), None);
    }
}
