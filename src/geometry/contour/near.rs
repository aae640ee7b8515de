//! In which directions a contour runs near a place.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use uom::si::angle::radian;

use super::Contour;
use crate::{
    geometry::Point,
    units::{Angle, Length},
};

/// Directions nearer than this, in radians, are one.
const ROUNDING: f64 = 1e-9;

impl Contour {
    /// Whether two parts of it nearer than `reach` to a place run in directions more than `turn` apart, as two sides do that
    /// meet at a corner there, or would but for its rounding; parts that run back the way the other came, as do the sides of
    /// a narrow rectangle, are none.
    ///
    /// ```
    /// use skinspan::{geometry::{Contour, Point}, units::{Angle, Length}};
    /// use uom::si::{angle::degree, length::meter};
    /// let m = Length::new::<meter>;
    /// let turns = |contour: &Contour, x: f64, y: f64| {
    ///     contour.turns_near(Point { x: m(x), y: m(y) }, m(0.3), Angle::new::<degree>(45.0))
    /// };
    /// let rectangle = Contour::rectangle(m(3.0), m(0.5), [m(0.0); 4]).expect("a rectangle");
    /// assert!(turns(&rectangle, 0.29, 0.29)); // two sides within 0.3 m, their corner at 0.41 m
    /// assert!(!turns(&rectangle, 0.31, 0.25)); // between the long sides alone
    /// // Of a circle of 0.4 m radius, 2 · 2 asin(0.3 / 0.8) = 88° lie within 0.3 m of a place on it.
    /// let circle = Contour::circle(Point { x: m(0.4), y: m(0.4) }, m(0.8)).expect("a circle");
    /// assert!(turns(&circle, 0.0, 0.4));
    /// ```
    #[must_use]
    pub fn turns_near(&self, place: Point, reach: Length, turn: Angle) -> bool {
        let (least, most) = (turn.get::<radian>() + ROUNDING, PI - ROUNDING);
        let directions: Vec<[f64; 2]> = self.pieces().flat_map(|piece| piece.directions_near(place, reach)).collect();
        let apart = |one: [f64; 2], other: [f64; 2]| {
            let (low, high) = (other[0] - one[1], other[1] - one[0]);
            // Directions come from within a turn and a half each way.
            (-3..=3).map(|turns| f64::from(turns) * TAU).any(|whole| {
                let within = |from: f64, to: f64| low < to + whole && high > from + whole;
                within(least, most) || within(-most, -least)
            })
        };
        directions.iter().enumerate().any(|(k, &one)| directions[k..].iter().any(|&other| apart(one, other)))
    }
}

impl super::Piece {
    /// From which direction to which it runs, in radians, wherever it is nearer than `reach` to a place.
    fn directions_near(self, place: Point, reach: Length) -> Vec<[f64; 2]> {
        let angle = |from: Point, to: Point| (to.y - from.y).value.atan2((to.x - from.x).value);
        if self.is_straight() {
            let direction = angle(self.from, self.to);
            return if self.distance(place) < reach { vec![[direction; 2]] } else { Vec::new() };
        }
        let (centre, radius) = (self.centre(), self.radius());
        let off = centre.distance(place);
        // Half of the angle, seen from the centre, of what a circle about the place cuts from that of the arc.
        let half = if off == Length::default() {
            if radius < reach { PI } else { 0.0 }
        } else {
            let cosine = (radius * radius + off * off - reach * reach) / (2.0 * radius * off);
            cosine.value.clamp(-1.0, 1.0).acos()
        };
        let towards = if off == Length::default() { 0.0 } else { angle(centre, place) };
        let sweep = 4.0 * self.bulge.atan();
        let from = angle(centre, if sweep > 0.0 { self.from } else { self.to });
        let ahead = FRAC_PI_2.copysign(sweep);
        (-1..=1)
            .map(|turns| f64::from(turns) * TAU)
            .map(|whole| [from.max(towards - half + whole), (from + sweep.abs()).min(towards + half + whole)])
            .filter(|[low, high]| low < high)
            .map(|both| both.map(|at| at + ahead))
            .collect()
    }
}
