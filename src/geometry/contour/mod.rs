//! A closed line of straight pieces and arcs of circles: an outline, the rim of a hole.

mod crossing;
mod near;
mod offset;
mod piece;
mod shape;
#[cfg(test)]
mod tests;

pub use shape::Corner;

use uom::si::{
    length::{kilometer, micrometer},
    ratio::ratio,
};

use self::piece::Piece;
use super::{Axis, Point, Polyline};
use crate::units::{Area, Length, Ratio, Volume};

/// Chords that tell whether a ring crosses itself, over its size.
const CHORDS_WITHIN: f64 = 1e-6;

/// A corner of a [`Contour`] with the piece that begins there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vertex {
    /// Where the piece begins.
    pub at: Point,
    /// Tangent of a quarter of the angle of its arc, anticlockwise positive; zero for a straight piece, one for half a
    /// circle.
    pub bulge: Ratio,
}

/// Why vertices are no contour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum InvalidContour {
    /// It encloses nothing.
    Nothing,
    /// A coordinate or a bulge is no number, or farther off than [`Contour::REACH`].
    OutOfReach,
    /// It crosses or touches itself, or runs back on itself.
    Crosses {
        /// Where.
        at: Point,
    },
    /// Two corners in succession stand in one place.
    Repeated {
        /// The second of them, from zero.
        corner: usize,
    },
    /// The rounding of a corner meets that of a neighbour.
    RadiusDoesNotFit {
        /// Which, from zero.
        corner: usize,
        /// The largest that would fit beside its neighbours.
        most: Length,
    },
}

/// A closed ring of straight pieces and arcs of circles that does not meet itself, anticlockwise.
///
/// ```
/// use skinspan::{geometry::{Contour, Point}, units::Length};
/// use uom::si::{area::square_meter, length::meter};
/// let m = Length::new::<meter>;
/// // A rectangle of 3 m by 2 m with quarter circles of 0.5 m for corners.
/// let contour = Contour::rectangle(m(3.0), m(2.0), [m(0.5); 4]).expect("corners that fit");
/// // 6 − (4 − π) · 0.25 = 5.7854 m²; 10 − (8 − 2 π) · 0.5 = 9.1416 m.
/// assert!((contour.area().get::<square_meter>() - 5.7854).abs() < 1e-4);
/// assert!((contour.perimeter().get::<meter>() - 9.1416).abs() < 1e-4);
/// // From the middle of the corner's arc, at (0.5, 0.5): 0.5 − 0.3 √2.
/// let within = contour.within_by(Point { x: m(0.2), y: m(0.2) });
/// assert!((within.get::<meter>() - 0.075736).abs() < 1e-6);
/// ```
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): plane geometry of the chord and the arc over it.
#[derive(Clone, Debug, PartialEq)]
pub struct Contour(Vec<Vertex>);

impl Contour {
    /// How far from the origin a place may lie, in kilometres: beyond it a micrometre is below the digits of a number.
    pub const REACH: f64 = 1000.0;

    /// A ring through vertices, the last joined to the first, whichever way round they go.
    ///
    /// Pieces shorter than a micrometre are left out.
    ///
    /// # Errors
    ///
    /// Every reason of [`InvalidContour`] but those of corners and their radii.
    pub fn new(mut vertices: Vec<Vertex>) -> Result<Self, InvalidContour> {
        let reach = Length::new::<kilometer>(Self::REACH);
        let near = |vertex: &Vertex| {
            // A comparison with what is no number is false.
            vertex.at.x.abs() <= reach && vertex.at.y.abs() <= reach && vertex.bulge.is_finite()
        };
        if !vertices.iter().all(near) {
            return Err(InvalidContour::OutOfReach);
        }
        let first = vertices.first().map(|vertex| vertex.at);
        let following: Vec<Point> = vertices.iter().skip(1).map(|vertex| vertex.at).chain(first).collect();
        let mut following = following.into_iter();
        let shortest = Length::new::<micrometer>(1.0);
        vertices.retain(|vertex| following.next().is_some_and(|next| vertex.at.distance(next) >= shortest));
        let ring = Self(vertices);
        if ring.0.len() < 2 || ring.0.len() == 2 && ring.pieces().all(Piece::is_straight) {
            return Err(InvalidContour::Nothing);
        }
        let [low, high] = ring.bounds();
        if let Some(at) = crossing::of_itself(&ring.flattened(low.distance(high) * CHORDS_WITHIN)) {
            return Err(InvalidContour::Crosses { at });
        }
        Ok(if ring.area() < Area::default() { ring.reversed() } else { ring })
    }

    fn reversed(&self) -> Self {
        let bulges = self.0.iter().rev().skip(1).chain(self.0.last()).map(|vertex| -vertex.bulge);
        Self(self.0.iter().rev().zip(bulges).map(|(vertex, bulge)| Vertex { at: vertex.at, bulge }).collect())
    }

    /// Its corners, each with the piece that begins there.
    #[must_use]
    pub fn vertices(&self) -> &[Vertex] {
        &self.0
    }

    fn pieces(&self) -> impl Iterator<Item = Piece> + '_ {
        self.0.iter().zip(self.0.iter().cycle().skip(1)).map(|(vertex, next)| Piece {
            from: vertex.at,
            to: next.at,
            bulge: vertex.bulge.get::<ratio>(),
        })
    }

    /// Points on it, so close that no chord is farther from its arc than a tolerance; the first stands once.
    ///
    /// A tolerance below a billionth of the length of an arc counts as that.
    #[must_use]
    pub fn flattened(&self, tolerance: Length) -> Vec<Point> {
        let mut points = Vec::with_capacity(self.0.len());
        for piece in self.pieces() {
            piece.flatten(tolerance, &mut points);
        }
        points
    }

    /// The area it encloses.
    ///
    /// ```text
    /// A = Σ (x_i y_{i+1} − x_{i+1} y_i)/2 + Σ c² [(1 + b²)² atan b − b (1 − b²)] / (8 b²)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | *x*, *y* | places of the vertices |
    /// | *c*, *b* | chord and bulge of an arc; a straight piece adds nothing |
    #[must_use]
    pub fn area(&self) -> Area {
        let origin = self.0[0].at;
        self.pieces().map(|piece| 0.5 * doubled(origin, piece) + piece.segment_area()).sum()
    }

    /// The centre of that area.
    #[must_use]
    pub fn centre(&self) -> Point {
        let (origin, mut sums) = (self.0[0].at, [Volume::default(); 2]);
        for piece in self.pieces() {
            let third = doubled(origin, piece) / 6.0;
            let [x, y] = piece.segment_moments();
            sums[0] += third * (origin.x + piece.from.x + piece.to.x) + x;
            sums[1] += third * (origin.y + piece.from.y + piece.to.y) + y;
        }
        let area = self.area();
        Point { x: sums[0] / area, y: sums[1] / area }
    }

    /// The length round it.
    #[must_use]
    pub fn perimeter(&self) -> Length {
        self.pieces().map(Piece::length).sum()
    }

    /// The centre of the line itself, as of a wire of even weight.
    #[must_use]
    pub fn line_centre(&self) -> Point {
        let sums =
            self.pieces().map(Piece::line_moments).fold([Area::default(); 2], |[x, y], one| [x + one[0], y + one[1]]);
        let length = self.perimeter();
        Point { x: sums[0] / length, y: sums[1] / length }
    }

    /// The corners of the rectangle round it that has the smallest and that has the largest coordinates.
    #[must_use]
    pub fn bounds(&self) -> [Point; 2] {
        let ends = |axis: Axis| {
            self.pieces().fold((self.0[0].at.along(axis), self.0[0].at.along(axis)), |(low, high), piece| {
                let (from, to) = piece.extent(axis);
                (low.min(from), high.max(to))
            })
        };
        let ((left, right), (below, above)) = (ends(Axis::X), ends(Axis::Y));
        [Point { x: left, y: below }, Point { x: right, y: above }]
    }

    /// How far a place lies within it, to the nearest point of it; below zero outside.
    #[must_use]
    pub fn within_by(&self, place: Point) -> Length {
        let mut inside = false;
        let mut nearest = Length::new::<kilometer>(f64::INFINITY);
        for piece in self.pieces() {
            inside ^= piece.chord_crosses_ray(place) ^ piece.holds_beside_chord(place);
            nearest = nearest.min(piece.distance(place));
        }
        if inside { nearest } else { -nearest }
    }

    /// Whether a place lies in it or on it, to a micrometre: units are converted.
    #[must_use]
    pub fn holds(&self, place: Point) -> bool {
        self.within_by(place) >= -Length::new::<micrometer>(1.0)
    }

    /// The same ring at another place.
    #[must_use]
    pub fn moved(&self, by: Point) -> Self {
        let at = |at: Point| Point { x: at.x + by.x, y: at.y + by.y };
        Self(self.0.iter().map(|vertex| Vertex { at: at(vertex.at), ..*vertex }).collect())
    }

    /// A place where it crosses or touches another, arcs taken as chords within a millionth of its size.
    #[must_use]
    pub fn meets(&self, other: &Self) -> Option<Point> {
        crossing::of_two(&self.chords(), &other.chords())
    }

    fn chords(&self) -> Vec<Point> {
        let [low, high] = self.bounds();
        self.flattened(low.distance(high) * CHORDS_WITHIN)
    }

    /// A place in the first stretch of a line that lies outside it.
    #[must_use]
    pub fn left_by(&self, line: &Polyline) -> Option<Point> {
        self.stretches(line).into_iter().find(|place| !self.holds(*place))
    }

    /// A place in the first stretch of a line that lies in it.
    #[must_use]
    pub fn entered_by(&self, line: &Polyline) -> Option<Point> {
        let least = Length::new::<micrometer>(1.0);
        self.stretches(line).into_iter().find(|place| self.within_by(*place) > least)
    }

    /// The middles of the stretches into which it cuts a line.
    fn stretches(&self, line: &Polyline) -> Vec<Point> {
        let spans = crossing::spans(&self.chords());
        let mut middles = Vec::new();
        for pair in line.points().windows(2) {
            let length = pair[0].distance(pair[1]);
            let met = spans.iter().filter_map(|span| crossing::meeting((pair[0], pair[1]), *span));
            let mut cuts: Vec<Length> =
                met.map(|place| pair[0].distance(place)).chain([Length::default(), length]).collect();
            cuts.sort_by(|a, b| a.value.total_cmp(&b.value));
            middles.extend(cuts.windows(2).filter(|cut| cut[1] - cut[0] > Length::new::<micrometer>(10.0)).map(
                |cut| {
                    let share = 0.5 * (cut[0] + cut[1]) / length;
                    Point {
                        x: pair[0].x + (pair[1].x - pair[0].x) * share,
                        y: pair[0].y + (pair[1].y - pair[0].y) * share,
                    }
                },
            ));
        }
        middles
    }
}

/// Twice the area of the triangle from a point to a chord.
fn doubled(origin: Point, piece: Piece) -> Area {
    (piece.from.x - origin.x) * (piece.to.y - origin.y) - (piece.to.x - origin.x) * (piece.from.y - origin.y)
}
