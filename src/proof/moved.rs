//! How supports moved in a test, by the gauges on them, and where that takes the rest of the top.

use nalgebra::{Matrix2, SymmetricEigen, Vector2};
use uom::si::length::meter;

use super::GaugeAt;
use crate::{
    geometry::Point,
    units::{Length, Ratio},
};

/// How many times the error of a gauge a slope may carry to a gauge on the top: beyond that it is not taken. Our choice; over two
/// supports it reaches nine tenths of their distance beyond them.
const CARRIED: f64 = 2.0;

/// Gauges that lie apart one way by less than this share of what they do the other way stand in a line. Our choice.
const ACROSS: f64 = 0.1;

/// How much of what bends the top counts at a tip, over what counts between supports: on three supports whose middle one goes
/// down a tip that hangs over by two thirds of a span moves by twice what the plane leaves there.
const AT_A_TIP: f64 = 2.0;

/// What supports moved beyond their own expected readings, as a top that stays straight follows them.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// The middle of the gauges on supports.
    pub about: Point,
    /// Down, there: the mean of those gauges.
    pub mean: Length,
    /// Down for each length along *x* and *y*.
    pub slope: [Ratio; 2],
    /// The most by which a support moved otherwise. That bends the top.
    pub bends: Length,
}

impl Moved {
    /// The plane through what gauges on supports read more than expected, for gauges at some places; none without a gauge on a
    /// support.
    ///
    /// ```text
    /// m(p) = m̄ + s · (p − p̄),  Σ (m_i − m(p_i))² = least
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | *m*, `m_i` | down, at a place *p* and as gauge *i* on a support has it |
    /// | *s* | slope; along a line where the supports' gauges stand in one |
    /// | *m̄*, *p̄* | means over these gauges |
    ///
    /// # Validity
    ///
    /// A top on two supports follows them so exactly. On more it bends where they do not move as a plane does: what the plane
    /// leaves is [`Moved::bends`]. Across a direction in which the gauges on supports hardly lie apart there is no slope.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): least squares.
    pub(super) fn by(on_supports: &[(Point, Length)], places: &[Point]) -> Option<Self> {
        let number = super::heaps::count(on_supports.len());
        let mean_of = |of: &dyn Fn(&(Point, Length)) -> Length| on_supports.iter().map(of).sum::<Length>() / number;
        if on_supports.is_empty() {
            return None;
        }
        let about = Point { x: mean_of(&|(at, _)| at.x), y: mean_of(&|(at, _)| at.y) };
        let mean = mean_of(&|(_, down)| *down);
        let from = |at: Point| Vector2::new((at.x - about.x).get::<meter>(), (at.y - about.y).get::<meter>());
        let spread: Matrix2<f64> = on_supports.iter().map(|(at, _)| from(*at) * from(*at).transpose()).sum();
        let product: Vector2<f64> =
            on_supports.iter().map(|(at, down)| from(*at) * (*down - mean).get::<meter>()).sum();
        let directions = SymmetricEigen::new(spread);
        let least = directions.eigenvalues.max() * ACROSS * ACROSS;
        let mut slope = Vector2::zeros();
        for (square, way) in directions.eigenvalues.iter().zip(directions.eigenvectors.column_iter()) {
            let farthest = places.iter().map(|at| way.dot(&from(*at)).abs()).fold(0.0, f64::max);
            if *square > least && farthest <= CARRIED * square.sqrt() {
                slope += way * (way.dot(&product) / square);
            }
        }
        let plane = Self { about, mean, slope: [slope.x, slope.y].map(Ratio::from), bends: Length::default() };
        let left = on_supports.iter().map(|(at, down)| (*down - plane.at(*at)).abs());
        Some(Self { bends: left.fold(Length::default(), Length::max), ..plane })
    }

    /// How far down a place of the top is taken.
    #[must_use]
    pub fn at(&self, place: Point) -> Length {
        self.mean + self.slope[0] * (place.x - self.about.x) + self.slope[1] * (place.y - self.about.y)
    }

    /// What the bending of the top by its supports may make of the reading of a gauge, where it is more than the error of one.
    pub(super) fn may_bend(&self, on: GaugeAt, noise: Length) -> Length {
        let times = if on == GaugeAt::Tip { AT_A_TIP } else { 1.0 };
        if self.bends > noise { self.bends * times } else { Length::default() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn m(length: f64) -> Length {
        Length::new::<meter>(length)
    }

    fn at(x: f64, y: f64) -> Point {
        Point { x: m(x), y: m(y) }
    }

    /// Exact but for rounding, in metres.
    const ROUNDING: f64 = 1e-15;

    #[test]
    fn a_plane_is_found_again() {
        let plane = |place: Point| m(0.001) + place.x * 0.002 - place.y * 0.003;
        let supports = [at(0.1, 0.3), at(1.9, 0.2), at(1.0, 1.7)].map(|place| (place, plane(place)));
        let place = at(2.4, 0.3);
        let moved = Moved::by(&supports, &[place]).expect("gauges on supports");
        assert!((moved.at(place) - plane(place)).abs() < m(ROUNDING) && moved.bends < m(ROUNDING), "{moved:?}");
    }

    #[test]
    fn along_a_line_there_is_no_slope_across_it() {
        // 2 mm lower at the far end of 1.8 m.
        let supports = [(at(0.1, 0.5), m(0.0)), (at(1.9, 0.5), m(0.002))];
        let moved = Moved::by(&supports, &[at(2.4, 0.5)]).expect("gauges on supports");
        assert!((moved.at(at(2.8, 0.1)) - m(0.003)).abs() < m(ROUNDING), "{moved:?}");
        assert!(moved.slope[1].value.abs() < ROUNDING, "{moved:?}");
        // So little off the line that it says nothing, a third one says nothing of a slope across it.
        let row = [(at(0.0, 0.500), m(0.0)), (at(1.0, 0.501), m(0.003)), (at(2.0, 0.499), m(0.0))];
        let moved = Moved::by(&row, &[at(0.5, 0.5)]).expect("gauges on supports");
        assert!(moved.slope[1].value.abs() < 1e-5 && (moved.bends - m(0.002)).abs() < m(1e-5), "{moved:?}");
    }

    #[test]
    fn what_a_plane_leaves_bends_the_top_and_what_lies_too_far_off_has_no_slope() {
        // Of three in a row the middle one goes down by 3 mm: the mean is 1 mm, and leaves it 2 mm.
        let row = [(at(0.0, 0.0), m(0.0)), (at(1.0, 0.0), m(0.003)), (at(2.0, 0.0), m(0.0))];
        let moved = Moved::by(&row, &[at(0.5, 0.0)]).expect("gauges on supports");
        assert!((moved.bends - m(0.002)).abs() < m(ROUNDING) && (moved.mean - m(0.001)).abs() < m(ROUNDING));
        assert!((moved.may_bend(GaugeAt::Tip, m(0.0001)) - m(0.004)).abs() < m(ROUNDING));
        assert_eq!(moved.may_bend(GaugeAt::MidSpan, m(0.0021)), m(0.0));
        // Two that stand 0.1 m apart say little of a place 1 m off.
        let close = [(at(0.0, 0.0), m(0.0)), (at(0.1, 0.0), m(0.002))];
        let moved = Moved::by(&close, &[at(1.0, 0.0)]).expect("gauges on supports");
        assert_eq!((moved.slope[0].value, moved.bends), (0.0, m(0.001)));
        assert_eq!(Moved::by(&[], &[]), None);
    }
}
