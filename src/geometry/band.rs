//! Where a point lies against a line and against a band about it.

use uom::si::ratio::ratio;

use super::{Point, Polyline};
use crate::units::Length;

/// Where a point lies against a [`Polyline`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Length along the line from its first point; below zero before the first, above its length past the last.
    pub along: Length,
    /// Distance from the line, its ends drawn out straight.
    pub offset: Length,
}

/// A band of even width about a line, its ends cut square: a backing strip, a conduit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band<'a> {
    /// The line in its middle.
    pub line: &'a Polyline,
    /// Across it.
    pub width: Length,
}

impl Polyline {
    /// Where a point lies against the line: at the nearest of its pieces, of two as near the first.
    ///
    /// A closed outline is a line whose last point is its first.
    ///
    /// ```
    /// use skinspan::{geometry::{Point, Polyline}, units::Length};
    /// use uom::si::length::meter;
    /// let m = Length::new::<meter>;
    /// let point = |x: f64, y: f64| Point { x: m(x), y: m(y) };
    /// let strip = Polyline::new(vec![point(0.0, 0.0), point(2.0, 0.0)]).expect("two points");
    /// let place = strip.place(point(2.5, 0.25));
    /// assert_eq!((place.along, place.offset), (m(2.5), m(0.25)));
    /// ```
    #[must_use]
    pub fn place(&self, point: Point) -> Place {
        let last = self.0.len() - 2;
        let mut nearest: Option<(Length, Place)> = None;
        let mut before = Length::default();
        for (index, pair) in self.0.windows(2).enumerate() {
            let piece = Piece { from: pair[0], to: pair[1] };
            let length = pair[0].distance(pair[1]);
            let free = piece.along(point, length);
            let held = free.max(Length::default()).min(length);
            let distance = piece.at(held / length).distance(point);
            if nearest.is_none_or(|(least, _)| distance < least) {
                let beyond = index == 0 && free < held || index == last && free > held;
                let along = if beyond { free } else { held };
                let offset = piece.at(along / length).distance(point);
                nearest = Some((distance, Place { along: before + along, offset }));
            }
            before += length;
        }
        // A polyline has two points, so there is a nearest piece.
        nearest.map_or(Place { along: before, offset: before }, |(_, place)| place)
    }

    /// The distance of a point from the line.
    #[must_use]
    pub fn distance(&self, point: Point) -> Length {
        let Place { along, offset } = self.place(point);
        let past_end = (-along).max(along - self.length()).max(Length::default());
        offset.hypot(past_end)
    }
}

impl Band<'_> {
    /// How far a point is from the nearer side of the band; below zero outside.
    #[must_use]
    pub fn side_distance(&self, point: Point) -> Length {
        0.5 * self.width - self.line.place(point).offset
    }

    /// How far a point is from the nearer end of the band, along it; below zero past the end.
    #[must_use]
    pub fn end_distance(&self, point: Point) -> Length {
        let along = self.line.place(point).along;
        along.min(self.line.length() - along)
    }

    /// Its border: one side forth, the other back. Corners are mitred, the sharpest ones cut off.
    ///
    /// ```
    /// use skinspan::{geometry::{Band, Point, Polyline}, units::Length};
    /// use uom::si::length::meter;
    /// let m = Length::new::<meter>;
    /// let point = |x: f64, y: f64| Point { x: m(x), y: m(y) };
    /// let line = Polyline::new(vec![point(0.0, 0.0), point(2.0, 0.0), point(2.0, 2.0)]).expect("three points");
    /// let border = Band { line: &line, width: m(0.5) }.border();
    /// assert_eq!(border[..3], [point(0.0, 0.25), point(1.75, 0.25), point(1.75, 2.0)]);
    /// assert_eq!(border[3..], [point(2.25, 2.0), point(2.25, -0.25), point(0.0, -0.25)]);
    /// ```
    #[must_use]
    pub fn border(&self) -> Vec<Point> {
        let mut ring = self.side(1.0);
        ring.extend(self.side(-1.0).into_iter().rev());
        ring
    }

    /// Its sides as lines of their own: that on the left of its way, and that on the right.
    #[must_use]
    pub fn sides(&self) -> [Vec<Point>; 2] {
        [self.side(1.0), self.side(-1.0)]
    }

    fn side(&self, sign: f64) -> Vec<Point> {
        let (points, half) = (self.line.points(), self.width / 2.0);
        (0..points.len())
            .map(|k| {
                // Normals of the pieces before and after, joined where they differ.
                let normal = |a: Point, b: Point| {
                    let length = a.distance(b);
                    [((a.y - b.y) / length).get::<ratio>(), ((b.x - a.x) / length).get::<ratio>()]
                };
                let before = k.checked_sub(1).map(|j| normal(points[j], points[k]));
                let after = points.get(k + 1).map(|&next| normal(points[k], next));
                let (n, m) = (before.or(after).unwrap_or([0.0; 2]), after.or(before).unwrap_or([0.0; 2]));
                let both = [n[0] + m[0], n[1] + m[1]];
                let reach = 2.0 / (both[0] * both[0] + both[1] * both[1]).max(1.0);
                Point {
                    x: points[k].x + half * (sign * both[0] * reach),
                    y: points[k].y + half * (sign * both[1] * reach),
                }
            })
            .collect()
    }

    /// How far a point stays clear of the band; below zero on it. Round an end the band counts as round, which is half
    /// its width too long: on the safe side.
    #[must_use]
    pub fn clearance(&self, point: Point) -> Length {
        self.line.distance(point) - 0.5 * self.width
    }
}

/// One straight piece of a line.
#[derive(Clone, Copy)]
struct Piece {
    from: Point,
    to: Point,
}

impl Piece {
    /// Where the foot of the perpendicular from a point falls on the piece drawn out, from its start.
    fn along(self, point: Point, length: Length) -> Length {
        let (dx, dy) = (self.to.x - self.from.x, self.to.y - self.from.y);
        ((point.x - self.from.x) * dx + (point.y - self.from.y) * dy) / length
    }

    fn at(self, share: crate::units::Ratio) -> Point {
        let Self { from, to } = self;
        Point { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }
    }
}

#[cfg(test)]
mod tests {
    use uom::si::length::millimeter;

    use super::*;

    fn mm(x: f64) -> Length {
        Length::new::<millimeter>(x)
    }

    fn point(x: f64, y: f64) -> Point {
        Point { x: mm(x), y: mm(y) }
    }

    fn is(found: Length, expected: f64) {
        assert!((found.get::<millimeter>() - expected).abs() < 1e-9, "{} is not {expected}", found.get::<millimeter>());
    }

    /// An angle: 300 mm along x, then 400 mm along y.
    fn bent() -> Polyline {
        Polyline::new(vec![point(0.0, 0.0), point(300.0, 0.0), point(300.0, 400.0)]).expect("three points")
    }

    #[test]
    fn place_on_each_piece_and_past_each_end() {
        for (x, y, along, offset, distance) in [
            (100.0, -20.0, 100.0, 20.0, 20.0),
            (260.0, 300.0, 600.0, 40.0, 40.0),
            // Past the outside of the corner the corner itself is nearest.
            (330.0, -40.0, 300.0, 50.0, 50.0),
            (-30.0, 40.0, -30.0, 40.0, 50.0),
            (312.0, 405.0, 705.0, 12.0, 13.0),
        ] {
            let place = bent().place(point(x, y));
            is(place.along, along);
            is(place.offset, offset);
            is(bent().distance(point(x, y)), distance);
        }
    }

    #[test]
    fn band_has_sides_and_ends() {
        let line = bent();
        let band = Band { line: &line, width: mm(100.0) };
        is(band.side_distance(point(100.0, -20.0)), 30.0);
        is(band.side_distance(point(100.0, 80.0)), -30.0);
        is(band.end_distance(point(100.0, -20.0)), 100.0);
        is(band.end_distance(point(280.0, 390.0)), 10.0);
        is(band.end_distance(point(-15.0, 10.0)), -15.0);
        is(band.clearance(point(100.0, -20.0)), -30.0);
        is(band.clearance(point(-60.0, 80.0)), 50.0);
    }

    #[test]
    fn closed_outline_is_near_on_every_side() {
        let corners = [(0.0, 0.0), (200.0, 0.0), (200.0, 100.0), (0.0, 100.0), (0.0, 0.0)];
        let outline = Polyline::new(corners.map(|(x, y)| point(x, y)).to_vec()).expect("five points");
        for (x, y, distance) in [(100.0, 30.0, 30.0), (190.0, 50.0, 10.0), (50.0, 95.0, 5.0), (12.0, 50.0, 12.0)] {
            is(outline.distance(point(x, y)), distance);
        }
    }
}
