//! A closed line of straight pieces that is cut along straight lines, and set in.

use uom::si::ratio::ratio;

use super::{Contour, Point, Polyline};
use crate::units::{Area, Length, Ratio};

/// Chords of arcs that a ring is made of lie so near to them, in millimetres.
const CHORDS_WITHIN: f64 = 0.01;

/// Sine of the angle below which two sides run in one line.
const IN_LINE: f64 = 1e-9;

/// A straight line; what lies to its left is kept.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// A place on it.
    pub from: Point,
    /// Another, ahead of the first.
    pub to: Point,
}

impl Cut {
    /// How far a place lies to the left of the line.
    #[must_use]
    pub fn left(&self, place: Point) -> Length {
        let (x, y) = (self.to.x - self.from.x, self.to.y - self.from.y);
        (x * (place.y - self.from.y) - y * (place.x - self.from.x)) / x.hypot(y)
    }

    /// The same line, the other side kept.
    #[must_use]
    pub const fn turned(self) -> Self {
        Self { from: self.to, to: self.from }
    }
}

/// A polygon, anticlockwise where it stands for what lies in it.
///
/// ```
/// use skinspan::{geometry::{Cut, Point, Ring}, units::Length};
/// use uom::si::{area::square_meter, length::meter};
/// let point = |x: f64, y: f64| Point { x: Length::new::<meter>(x), y: Length::new::<meter>(y) };
/// // 3 m by 2 m, cut in two from (1, 0) to (2, 2): 3 m² on either side.
/// let ring = Ring::new([(0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (0.0, 2.0)].map(|(x, y)| point(x, y)).to_vec());
/// let left = ring.cut(Cut { from: point(1.0, 0.0), to: point(2.0, 2.0) });
/// assert!((left.area().get::<square_meter>() - 3.0).abs() < 1e-12);
/// ```
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): plane geometry. A ring that is cut in parts stays one, joined along the cut by sides
/// that enclose nothing.
#[derive(Clone, Debug, PartialEq)]
pub struct Ring(Vec<Point>);

impl Ring {
    /// A ring through places, the last joined to the first.
    #[must_use]
    pub const fn new(places: Vec<Point>) -> Self {
        Self(places)
    }

    /// A contour, its arcs as chords within a hundredth of a millimetre.
    #[must_use]
    pub fn of(contour: &Contour) -> Self {
        Self(contour.flattened(Length::new::<uom::si::length::millimeter>(CHORDS_WITHIN)))
    }

    /// Its places.
    #[must_use]
    pub fn places(&self) -> &[Point] {
        &self.0
    }

    fn sides(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        self.0.iter().zip(self.0.iter().cycle().skip(1)).map(|(from, to)| (*from, *to))
    }

    /// The area it encloses, above zero where it runs anticlockwise.
    #[must_use]
    pub fn area(&self) -> Area {
        let Some(&origin) = self.0.first() else { return Area::default() };
        let twice = |(from, to): (Point, Point)| -> Area {
            (from.x - origin.x) * (to.y - origin.y) - (to.x - origin.x) * (from.y - origin.y)
        };
        self.sides().map(twice).sum::<Area>() * 0.5
    }

    /// The smallest and the largest coordinates; none where nothing is left of it.
    #[must_use]
    pub fn bounds(&self) -> Option<[Point; 2]> {
        self.0.iter().fold(None, |known: Option<[Point; 2]>, place| {
            let [low, high] = known.unwrap_or([*place; 2]);
            let (low, high) = ([low.x.min(place.x), low.y.min(place.y)], [high.x.max(place.x), high.y.max(place.y)]);
            Some([low, high].map(|[x, y]| Point { x, y }))
        })
    }

    /// What lies to the left of a line.
    #[must_use]
    pub fn cut(&self, line: Cut) -> Self {
        let mut places = Vec::with_capacity(self.0.len() + 2);
        for (from, to) in self.sides() {
            let (here, there) = (line.left(from), line.left(to));
            let (none, kept) = (Length::default(), here >= Length::default());
            if kept {
                places.push(from);
            }
            if kept != (there >= none) {
                let share: Ratio = here / (here - there);
                places.push(Point { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share });
            }
        }
        Self(places)
    }

    /// What lies in a convex ring.
    #[must_use]
    pub fn within(&self, convex: &Self) -> Self {
        convex.sides().fold(self.clone(), |left, (from, to)| left.cut(Cut { from, to }))
    }

    /// What lies outside a convex ring, in parts.
    #[must_use]
    pub fn without(&self, convex: &Self) -> Vec<Self> {
        let (mut parts, mut left) = (Vec::new(), self.clone());
        for (from, to) in convex.sides() {
            let line = Cut { from, to };
            let out = left.cut(line.turned());
            if out.area() > Area::default() {
                parts.push(out);
            }
            left = left.cut(line);
        }
        parts
    }

    /// The ring with all its sides set in by a distance, corners left sharp; set out where it is below zero. Sides that are
    /// then nothing fall away.
    ///
    /// # Validity
    ///
    /// Where it does not fall into parts: the caller asks whether each place of it lies as far within as it should.
    #[must_use]
    pub fn set_in(&self, by: Length) -> Self {
        let inward = |(from, to): (Point, Point)| {
            let (x, y) = (to.x - from.x, to.y - from.y);
            let length = x.hypot(y);
            let off = |place: Point| Point { x: place.x - by * (y / length), y: place.y + by * (x / length) };
            (off(from), off(to))
        };
        let mut sides: Vec<(Point, Point)> =
            self.sides().filter(|(from, to)| from.distance(*to) > Length::default()).map(inward).collect();
        loop {
            let count = sides.len();
            if count < 3 {
                return Self(Vec::new());
            }
            let corners: Vec<Point> =
                (0..count).map(|side| meet(sides[(side + count - 1) % count], sides[side])).collect();
            let forward = |side: usize| -> Area {
                let ((from, to), begins, ends) = (sides[side], corners[side], corners[(side + 1) % count]);
                (ends.x - begins.x) * (to.x - from.x) + (ends.y - begins.y) * (to.y - from.y)
            };
            let back = (0..count).map(|side| (side, forward(side))).min_by(|a, b| a.1.value.total_cmp(&b.1.value));
            match back.filter(|(_, forward)| *forward < Area::default()) {
                Some((side, _)) => {
                    sides.remove(side);
                }
                None => return Self(corners),
            }
        }
    }
}

/// Where two sides meet, drawn out; the end of the first where they run in one line.
fn meet(one: (Point, Point), other: (Point, Point)) -> Point {
    let (x, y) = (one.1.x - one.0.x, one.1.y - one.0.y);
    let (u, v) = (other.1.x - other.0.x, other.1.y - other.0.y);
    let cross: Area = x * v - y * u;
    let sine: Ratio = cross / (x.hypot(y) * u.hypot(v));
    if sine.get::<ratio>().abs() < IN_LINE {
        return one.1;
    }
    let share: Ratio = ((other.0.x - one.0.x) * v - (other.0.y - one.0.y) * u) / cross;
    Point { x: one.0.x + x * share, y: one.0.y + y * share }
}

impl Polyline {
    /// A band about the line as rectangles, one for each of its pieces; a bend is left open on its outer side.
    #[must_use]
    pub fn rectangles(&self, width: Length) -> Vec<Ring> {
        let one = |pair: &[Point]| {
            let (from, to) = (pair[0], pair[1]);
            let share: Ratio = 0.5 * width / from.distance(to);
            let (x, y) = ((to.x - from.x) * share, (to.y - from.y) * share);
            let beside = |place: Point, side: f64| Point { x: place.x - y * side, y: place.y + x * side };
            Ring::new(vec![beside(from, -1.0), beside(to, -1.0), beside(to, 1.0), beside(from, 1.0)])
        };
        self.points().windows(2).map(one).collect()
    }
}

#[cfg(test)]
mod tests {
    use uom::si::{area::square_millimeter, length::millimeter};

    use super::*;
    use crate::geometry::Corner;

    fn mm(x: f64) -> Length {
        Length::new::<millimeter>(x)
    }

    fn rectangle(x: [f64; 2], y: [f64; 2]) -> Ring {
        Ring::new(
            [(x[0], y[0]), (x[1], y[0]), (x[1], y[1]), (x[0], y[1])]
                .map(|(x, y)| Point { x: mm(x), y: mm(y) })
                .to_vec(),
        )
    }

    fn is(area: Area, expected: f64) {
        let found = area.get::<square_millimeter>();
        assert!((found - expected).abs() < 1e-6 * expected, "{found} is not {expected}");
    }

    #[test]
    fn a_rectangle_set_in_and_out() {
        is(rectangle([0.0, 300.0], [0.0, 200.0]).set_in(mm(20.0)).area(), 260.0 * 160.0);
        is(rectangle([0.0, 300.0], [0.0, 200.0]).set_in(mm(-20.0)).area(), 340.0 * 240.0);
        assert_eq!(rectangle([0.0, 300.0], [0.0, 200.0]).set_in(mm(120.0)).bounds(), None);
    }

    #[test]
    fn roundings_smaller_than_the_set_in_fall_away() {
        let contour =
            Contour::rectangle(mm(300.0), mm(200.0), [mm(10.0), mm(50.0), mm(10.0), mm(10.0)]).expect("corners");
        let area = Ring::of(&contour).set_in(mm(20.0)).area().get::<square_millimeter>();
        // Of the one that is left, with a radius of 30 mm: (1 − π/4) r².
        let expected = 260.0 * 160.0 - (1.0 - std::f64::consts::FRAC_PI_4) * 900.0;
        assert!((area - expected).abs() < 1.0, "{area} is not {expected}");
    }

    #[test]
    fn an_angle_keeps_its_inner_corner() {
        let corner = |x: f64, y: f64| Corner { at: Point { x: mm(x), y: mm(y) }, radius: mm(0.0) };
        let ell = [(0.0, 0.0), (300.0, 0.0), (300.0, 100.0), (100.0, 100.0), (100.0, 250.0), (0.0, 250.0)];
        let contour = Contour::polygon(&ell.map(|(x, y)| corner(x, y))).expect("an angle");
        is(Ring::of(&contour).set_in(mm(10.0)).area(), 280.0 * 80.0 + 80.0 * 150.0);
    }

    #[test]
    fn what_is_within_and_without_is_all() {
        let contour = Contour::rectangle(mm(300.0), mm(200.0), [mm(60.0); 4]).expect("corners");
        let (ring, band) = (Ring::of(&contour), rectangle([-20.0, 120.0], [30.0, 90.0]));
        let without: Area = ring.without(&band).iter().map(Ring::area).sum();
        is(ring.within(&band).area() + without, ring.area().get::<square_millimeter>());
        assert!(without < ring.area() - Area::new::<square_millimeter>(120.0 * 50.0));
    }
}
