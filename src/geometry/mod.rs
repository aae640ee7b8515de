//! Points, polylines and bands about them, where a straight line across the top meets them, closed lines of straight
//! pieces and arcs, and patterns of points.

mod band;
mod contour;
mod foot;
mod pattern;
mod ring;

pub use band::{Band, Place};
pub use contour::{Contour, Corner, InvalidContour, Vertex};
pub use foot::Foot;
pub use pattern::{Pattern, least_spacing};
pub use ring::{Cut, Ring};

use uom::si::length::micrometer;

use crate::units::{Length, Ratio};

/// A direction in the plane of the top. A section that spans along `X` bends in the `x`–`z` plane.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Axis {
    /// Along the length of the top.
    X,
    /// Across the top, along its width.
    Y,
}

impl Axis {
    /// Both directions.
    pub const BOTH: [Self; 2] = [Self::X, Self::Y];

    /// The other direction.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::X => Self::Y,
            Self::Y => Self::X,
        }
    }

    /// The words used in reports.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::X => "lengthwise",
            Self::Y => "across",
        }
    }

    pub(crate) const fn index(self) -> usize {
        match self {
            Self::X => 0,
            Self::Y => 1,
        }
    }
}

/// A place on the top, from the corner where both coordinates are zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Along the length.
    pub x: Length,
    /// Along the width.
    pub y: Length,
}

impl Point {
    /// The coordinate in a direction.
    #[must_use]
    pub const fn along(self, axis: Axis) -> Length {
        match axis {
            Axis::X => self.x,
            Axis::Y => self.y,
        }
    }

    /// The distance to another place.
    #[must_use]
    pub fn distance(self, other: Self) -> Length {
        (other.x - self.x).hypot(other.y - self.y)
    }
}

/// A line of straight pieces: a pipe, a backing strip, a conduit.
#[derive(Clone, Debug, PartialEq)]
pub struct Polyline(Vec<Point>);

/// Where a straight line meets a [`Polyline`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crossing {
    /// Coordinate along the straight line.
    pub at: Length,
    /// Length that a band of unit width about the polyline cuts from the straight line: 1 / sin of the angle between
    /// them.
    pub obliqueness: Ratio,
}

impl Polyline {
    /// A polyline of two or more distinct points.
    ///
    /// # Errors
    ///
    /// Gives the points back where there are fewer than two, or two that follow each other coincide.
    pub fn new(points: Vec<Point>) -> Result<Self, Vec<Point>> {
        if points.len() < 2 || points.windows(2).any(|pair| pair[0] == pair[1]) {
            return Err(points);
        }
        Ok(Self(points))
    }

    /// Its corners, from one end to the other.
    #[must_use]
    pub fn points(&self) -> &[Point] {
        &self.0
    }

    /// Its first and its last point.
    #[must_use]
    pub fn ends(&self) -> [Point; 2] {
        // A polyline has two points or more.
        [self.0[0], self.0[self.0.len() - 1]]
    }

    /// The same line with another first and another last point, where they are given; as it is where nothing would be left of a
    /// piece.
    #[must_use]
    pub fn with_ends(&self, [first, last]: [Option<Point>; 2]) -> Self {
        let mut points = self.0.clone();
        let end = points.len() - 1;
        points[0] = first.unwrap_or(points[0]);
        points[end] = last.unwrap_or(points[end]);
        Self::new(points).unwrap_or_else(|_| self.clone())
    }

    /// Length along the line.
    #[must_use]
    pub fn length(&self) -> Length {
        self.0.windows(2).map(|pair| pair[0].distance(pair[1])).sum()
    }

    /// The place at a length along the line from its first point; on its continuation off its ends.
    ///
    /// ```
    /// use skinspan::{geometry::{Point, Polyline}, units::Length};
    /// use uom::si::length::meter;
    /// let m = Length::new::<meter>;
    /// let point = |x: f64, y: f64| Point { x: m(x), y: m(y) };
    /// let bent = Polyline::new(vec![point(0.0, 0.0), point(2.0, 0.0), point(2.0, 1.0)]).expect("three points");
    /// assert_eq!(bent.at(m(2.25)), point(2.0, 0.25));
    /// assert_eq!(bent.at(m(-0.5)), point(-0.5, 0.0));
    /// ```
    #[must_use]
    pub fn at(&self, along: Length) -> Point {
        let mut left = along;
        let mut pieces = self.0.windows(2).peekable();
        while let Some(pair) = pieces.next() {
            let length = pair[0].distance(pair[1]);
            if left <= length || pieces.peek().is_none() {
                let share = left / length;
                return Point {
                    x: pair[0].x + (pair[1].x - pair[0].x) * share,
                    y: pair[0].y + (pair[1].y - pair[0].y) * share,
                };
            }
            left -= length;
        }
        self.0[0]
    }

    /// The smallest and the largest coordinate in a direction.
    #[must_use]
    pub fn extent(&self, axis: Axis) -> (Length, Length) {
        self.0.iter().fold(
            (
                Length::new::<uom::si::length::meter>(f64::INFINITY),
                -Length::new::<uom::si::length::meter>(f64::INFINITY),
            ),
            |(low, high), point| (low.min(point.along(axis)), high.max(point.along(axis))),
        )
    }

    /// The direction in which the line runs farther.
    #[must_use]
    pub fn main_axis(&self) -> Axis {
        let ((x0, x1), (y0, y1)) = (self.extent(Axis::X), self.extent(Axis::Y));
        if x1 - x0 >= y1 - y0 { Axis::X } else { Axis::Y }
    }

    /// Every place where it meets another line, be it with an end; pieces that run side by side have no single place and
    /// give none.
    ///
    /// ```
    /// use skinspan::{geometry::{Point, Polyline}, units::Length};
    /// use uom::si::length::meter;
    /// let m = Length::new::<meter>;
    /// let line = |points: [(f64, f64); 2]| {
    ///     Polyline::new(points.map(|(x, y)| Point { x: m(x), y: m(y) }).to_vec()).expect("two points")
    /// };
    /// let rising = line([(0.0, 0.0), (2.0, 1.0)]);
    /// assert_eq!(rising.meets(&line([(0.0, 1.0), (2.0, 0.0)])), [Point { x: m(1.0), y: m(0.5) }]);
    /// assert_eq!(rising.meets(&line([(2.0, 1.0), (3.0, 0.0)])), [Point { x: m(2.0), y: m(1.0) }]);
    /// assert!(rising.meets(&line([(0.0, 0.5), (2.0, 1.5)])).is_empty());
    /// ```
    #[must_use]
    pub fn meets(&self, other: &Self) -> Vec<Point> {
        let pieces = |line: &'_ Self| line.0.windows(2).map(|pair| [pair[0], pair[1]]).collect::<Vec<_>>();
        let others = pieces(other);
        pieces(self).into_iter().flat_map(|one| others.iter().filter_map(move |&two| meeting(one, two))).collect()
    }

    /// Every place where the straight line that runs in direction `line` at `station` of the other coordinate meets this
    /// one, in the order of this one; a pipe that is bent back or closed is met more than once.
    ///
    /// Pieces that run in the direction of the line have no single crossing and give none. A corner on the line counts
    /// once.
    #[must_use]
    pub fn crossings(&self, line: Axis, station: Length) -> Vec<Crossing> {
        let mut found: Vec<Crossing> = Vec::new();
        for crossing in self.0.windows(2).filter_map(|pair| {
            let (s0, s1) = (pair[0].along(line.other()), pair[1].along(line.other()));
            let (a0, a1) = (pair[0].along(line), pair[1].along(line));
            if s0 == s1 || station < s0.min(s1) || station > s0.max(s1) {
                return None;
            }
            let share = (station - s0) / (s1 - s0);
            let piece = (s1 - s0).hypot(a1 - a0);
            Some(Crossing { at: a0 + (a1 - a0) * share, obliqueness: piece / (s1 - s0).abs() })
        }) {
            if !found.iter().any(|known| (known.at - crossing.at).abs() < Length::new::<micrometer>(1.0)) {
                found.push(crossing);
            }
        }
        found
    }
}

/// The place where two straight pieces meet.
fn meeting(one: [Point; 2], two: [Point; 2]) -> Option<Point> {
    let way = |[from, to]: [Point; 2]| [to.x - from.x, to.y - from.y];
    let ([ax, ay], [bx, by], [dx, dy]) = (way(one), way(two), way([one[0], two[0]]));
    let turned = ax * by - ay * bx;
    // Side by side the shares are no numbers, and no number lies in a range.
    let on = |share: Ratio| (0.0..=1.0).contains(&share.value);
    let (share, of_two): (Ratio, Ratio) = ((dx * by - dy * bx) / turned, (dx * ay - dy * ax) / turned);
    (on(share) && on(of_two)).then(|| Point { x: one[0].x + ax * share, y: one[0].y + ay * share })
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::{length::meter, ratio::ratio};

    fn point(x: f64, y: f64) -> Point {
        Point { x: Length::new::<meter>(x), y: Length::new::<meter>(y) }
    }

    #[test]
    fn a_line_at_45_degrees_is_met_at_its_place_and_cut_wider() {
        let pipe = Polyline::new(vec![point(0.0, 0.0), point(2.0, 2.0)]).expect("two points");
        let crossings = pipe.crossings(Axis::Y, Length::new::<meter>(0.5));
        assert_eq!(crossings.len(), 1);
        assert!((crossings[0].at.get::<meter>() - 0.5).abs() < 1e-12);
        assert!((crossings[0].obliqueness.get::<ratio>() - 2.0_f64.sqrt()).abs() < 1e-12);
        assert!(pipe.crossings(Axis::Y, Length::new::<meter>(2.5)).is_empty());
    }

    #[test]
    fn a_pipe_that_is_bent_back_is_met_twice_and_at_its_corner_once() {
        let loops = vec![point(0.0, 0.2), point(2.0, 0.2), point(2.0, 1.2), point(0.0, 1.2)];
        let hairpin = Polyline::new(loops).expect("four points");
        let at: Vec<f64> =
            hairpin.crossings(Axis::Y, Length::new::<meter>(1.0)).iter().map(|met| met.at.get::<meter>()).collect();
        assert_eq!(at, [0.2, 1.2]);
        let bent = Polyline::new(vec![point(0.0, 0.0), point(1.0, 1.0), point(2.0, 0.0)]).expect("three points");
        assert_eq!(bent.crossings(Axis::Y, Length::new::<meter>(1.0)).len(), 1);
    }

    #[test]
    fn a_single_point_is_no_line() {
        assert!(Polyline::new(vec![point(0.0, 0.0)]).is_err());
        assert!(Polyline::new(vec![point(1.0, 0.0), point(1.0, 0.0)]).is_err());
    }
}
