//! One piece of a contour: straight, or an arc of a circle.

use uom::si::length::nanometer;

use crate::{
    geometry::{Axis, Point},
    units::{Area, Length, Ratio, Volume},
};

/// Below this bulge the closed forms lose digits by cancellation, and their series, cut after four terms, lose none.
const SERIES_BELOW: f64 = 0.01;

/// A piece from one point to another. Its bulge is the tangent of a quarter of the angle of its arc, anticlockwise
/// positive; straight where it is zero.
#[derive(Clone, Copy)]
pub(super) struct Piece {
    pub(super) from: Point,
    pub(super) to: Point,
    pub(super) bulge: f64,
}

impl Piece {
    pub(super) fn chord(self) -> Length {
        self.from.distance(self.to)
    }

    /// An arc that rises less than a nanometre over its chord has a centre too far off to reckon with.
    pub(super) fn is_straight(self) -> bool {
        // By squares: this is asked for every piece of every place, and a root takes longer than all else here.
        let least = Length::new::<nanometer>(1.0);
        0.25 * self.bulge * self.bulge * self.chord_squared() < least * least
    }

    fn chord_squared(self) -> Area {
        let [dx, dy] = self.across();
        dx * dx + dy * dy
    }

    fn across(self) -> [Length; 2] {
        [self.to.x - self.from.x, self.to.y - self.from.y]
    }

    fn middle(self) -> Point {
        Point { x: 0.5 * (self.from.x + self.to.x), y: 0.5 * (self.from.y + self.to.y) }
    }

    pub(super) fn radius(self) -> Length {
        self.chord() * ((1.0 + self.bulge * self.bulge) / (4.0 * self.bulge.abs()))
    }

    pub(super) fn centre(self) -> Point {
        let ([dx, dy], middle) = (self.across(), self.middle());
        // From the middle of the chord to its left, in chords.
        let left = (1.0 - self.bulge * self.bulge) / (4.0 * self.bulge);
        Point { x: middle.x - dy * left, y: middle.y + dx * left }
    }

    pub(super) fn length(self) -> Length {
        if self.is_straight() {
            return self.chord();
        }
        let b = self.bulge.abs();
        self.chord() * ((1.0 + b * b) * b.atan() / b)
    }

    /// Twice the area of the triangle from the chord to a point: above zero where the point lies on its left.
    ///
    /// A point on the line of the chord is taken as moved a trifle along *x*, and a trifle of that along *y*: then the ray
    /// that counts crossings and the side of the chord never disagree.
    pub(super) fn side(self, point: Point) -> f64 {
        let [dx, dy] = self.across();
        let side: Area = dx * (point.y - self.from.y) - dy * (point.x - self.from.x);
        if side != Area::default() {
            side.value
        } else if dy != Length::default() {
            -dy.value
        } else {
            dx.value
        }
    }

    /// Whether the ray from a point along *x* crosses the chord.
    pub(super) fn chord_crosses_ray(self, point: Point) -> bool {
        let (from, to) = (self.from.y > point.y, self.to.y > point.y);
        from != to && (self.side(point) > 0.0) == to
    }

    /// Whether a point lies between the chord and the arc.
    pub(super) fn holds_beside_chord(self, point: Point) -> bool {
        !self.is_straight() && self.on_arc_side(point) && self.centre().distance(point) <= self.radius()
    }

    /// An arc that turns anticlockwise lies on the right of its chord.
    fn on_arc_side(self, point: Point) -> bool {
        (self.side(point) < 0.0) == (self.bulge > 0.0)
    }

    /// Whether a point is so far off that no place of the piece is nearer than a distance: half a circle over the chord, and
    /// all that is flatter, lies within a circle about the middle of the chord.
    pub(super) fn is_beyond(self, point: Point, distance: Length) -> bool {
        // Of a straight piece the distance itself is found as quickly.
        if self.is_straight() || self.bulge.abs() > 1.0 {
            return false;
        }
        let middle = self.middle();
        let (x, y) = (point.x - middle.x, point.y - middle.y);
        let reach = distance + 0.5 * self.chord_squared().sqrt();
        x * x + y * y >= reach * reach
    }

    /// The distance of a point from the nearest point of the piece.
    pub(super) fn distance(self, point: Point) -> Length {
        if self.is_straight() {
            let [dx, dy] = self.across();
            let along: Area = (point.x - self.from.x) * dx + (point.y - self.from.y) * dy;
            let share = (along / self.chord_squared()).max(Ratio::default()).min(Ratio::from(1.0));
            return Point { x: self.from.x + dx * share, y: self.from.y + dy * share }.distance(point);
        }
        let (centre, radius) = (self.centre(), self.radius());
        let out = centre.distance(point);
        let away = (out - radius).abs();
        if out == Length::default() {
            return away;
        }
        let reach = radius / out;
        let foot = Point { x: centre.x + (point.x - centre.x) * reach, y: centre.y + (point.y - centre.y) * reach };
        if self.on_arc_side(foot) { away } else { self.from.distance(point).min(self.to.distance(point)) }
    }

    /// Smallest and largest coordinate in a direction.
    pub(super) fn extent(self, axis: Axis) -> (Length, Length) {
        let (one, other) = (self.from.along(axis), self.to.along(axis));
        let (mut low, mut high) = (one.min(other), one.max(other));
        if !self.is_straight() {
            let (centre, radius) = (self.centre(), self.radius());
            for end in [-radius, radius] {
                let extreme = match axis {
                    Axis::X => Point { x: centre.x + end, ..centre },
                    Axis::Y => Point { y: centre.y + end, ..centre },
                };
                if self.on_arc_side(extreme) {
                    low = low.min(extreme.along(axis));
                    high = high.max(extreme.along(axis));
                }
            }
        }
        (low, high)
    }

    /// Its first point and points between, so close that no chord is farther from the arc than a tolerance.
    pub(super) fn flatten(self, tolerance: Length, points: &mut Vec<Point>) {
        points.push(self.from);
        if self.is_straight() {
            return;
        }
        let (centre, radius) = (self.centre(), self.radius());
        let sweep = 4.0 * self.bulge.atan();
        // Finer than a billionth of its length is finer than the digits of the places.
        let rise = tolerance.max(1e-9 * self.length());
        // t = R (1 − cos(θ/2)), by half angles: an arc that is almost straight loses no digits.
        let widest = 4.0 * (0.5 * rise / radius).value.min(1.0).sqrt().asin();
        // Half a circle in two at least, so that the flattened ring has an area.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "√(2π) / 9e-5 at most")]
        let count = (sweep.abs() / widest.min(1.6)).ceil().max(1.0) as u32;
        let (x, y) = (self.from.x - centre.x, self.from.y - centre.y);
        points.extend((1..count).map(|index| {
            let (sin, cos) = (sweep * f64::from(index) / f64::from(count)).sin_cos();
            Point { x: centre.x + x * cos - y * sin, y: centre.y + x * sin + y * cos }
        }));
    }

    /// Area between chord and arc; above zero where the arc turns anticlockwise.
    pub(super) fn segment_area(self) -> Area {
        let (b, chord) = (self.bulge, self.chord());
        if self.is_straight() {
            return Area::default();
        }
        chord * chord * segment(b)
    }

    /// First moment of that area about the middle of the chord, towards its right.
    fn segment_moment(self) -> Volume {
        let (b, chord) = (self.bulge, self.chord());
        let share = if b.abs() < SERIES_BELOW {
            let b2 = b * b;
            b2 * (1.0 / 15.0 + b2 * (2.0 / 105.0 - b2 / 315.0))
        } else {
            1.0 / 12.0 - segment(b) * (1.0 - b * b) / (4.0 * b)
        };
        chord * chord * chord * share
    }

    /// First moment of the length of the arc about the middle of the chord, towards its right.
    fn arc_moment(self) -> Area {
        let (b, chord) = (self.bulge, self.chord());
        let b2 = b * b;
        let share = if b.abs() < SERIES_BELOW {
            b * (1.0 / 3.0 - b2 * (2.0 / 15.0 - b2 * 3.0 / 35.0))
        } else {
            (1.0 - b.atan() * (1.0 - b2) / b) / (4.0 * b)
        };
        chord * chord * ((1.0 + b2) * share)
    }

    /// First moments of the area between chord and arc about the origin.
    pub(super) fn segment_moments(self) -> [Volume; 2] {
        let (area, middle) = (self.segment_area(), self.middle());
        if self.is_straight() {
            return [Volume::default(); 2];
        }
        let ([dx, dy], moment) = (self.across(), self.segment_moment() / self.chord());
        [area * middle.x + moment * dy, area * middle.y - moment * dx]
    }

    /// First moments of its length about the origin.
    pub(super) fn line_moments(self) -> [Area; 2] {
        let (length, middle) = (self.length(), self.middle());
        let [x, y] = [length * middle.x, length * middle.y];
        if self.is_straight() {
            return [x, y];
        }
        let ([dx, dy], moment) = (self.across(), self.arc_moment() / self.chord());
        [x + moment * dy, y - moment * dx]
    }
}

/// Area between chord and arc over the square of the chord.
fn segment(b: f64) -> f64 {
    let b2 = b * b;
    if b.abs() < SERIES_BELOW {
        b * (1.0 / 3.0 + b2 * (1.0 / 15.0 - b2 * (1.0 / 105.0 - b2 / 315.0)))
    } else {
        ((1.0 + b2) * (1.0 + b2) * b.atan() - b * (1.0 - b2)) / (8.0 * b2)
    }
}
