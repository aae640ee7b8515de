//! Patterns that are even about an axis: what one side does to a fixing, the opposite side does to the one across.

use uom::si::length::nanometer;

use crate::{
    geometry::Point,
    units::{Force, Length},
};

/// The fixing across each axis of the footing from each fixing; none across an axis that the pattern is not even about.
pub(super) struct Mirrors([Option<Vec<usize>>; 2]);

impl Mirrors {
    pub(super) fn of(at: &[Point]) -> Self {
        let across = |image: fn(Point) -> Point| {
            let near = |place: &Point, other: &Point| place.distance(*other) < Length::new::<nanometer>(1.0);
            at.iter().map(|place| at.iter().position(|other| near(&image(*place), other))).collect()
        };
        Self([across(|at| Point { x: -at.x, ..at }), across(|at| Point { y: -at.y, ..at })])
    }

    /// Whether the pattern is even about both axes, so that its middle is that of the footing.
    pub(super) fn even(&self) -> bool {
        self.0.iter().all(Option::is_some)
    }

    /// Whether a direction has to be looked at: of those that are each other's images one is enough.
    pub(super) fn need(&self, direction: [f64; 2]) -> bool {
        self.0.iter().zip(direction).all(|(across, along)| across.is_none() || along >= -1e-9)
    }

    /// Gives each fixing what the directions that were left out do to it.
    pub(super) fn spread(&self, largest: &mut [Force]) {
        for across in self.0.iter().flatten() {
            for (fixing, &other) in across.iter().enumerate() {
                let both = largest[fixing].max(largest[other]);
                largest[fixing] = both;
                largest[other] = both;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::{force::newton, length::millimeter};

    fn point(x: f64, y: f64) -> Point {
        Point { x: Length::new::<millimeter>(x), y: Length::new::<millimeter>(y) }
    }

    #[test]
    fn an_even_pattern_needs_a_quarter_of_the_directions_and_an_odd_one_all() {
        let square = Mirrors::of(&[point(1.0, 1.0), point(-1.0, 1.0), point(-1.0, -1.0), point(1.0, -1.0)]);
        assert!(square.need([0.7, 0.7]) && square.need([0.0, 1.0]));
        assert!(!square.need([-0.7, 0.7]) && !square.need([0.7, -0.7]));
        let kite = Mirrors::of(&[point(2.0, 0.0), point(-1.0, 1.0), point(-1.0, -1.0)]);
        assert!(kite.need([-0.7, 0.7]) && !kite.need([-0.7, -0.7]));
        let odd = Mirrors::of(&[point(2.0, 0.5), point(-1.0, 1.0)]);
        assert!(odd.need([-0.7, -0.7]));
    }

    #[test]
    fn what_one_side_does_is_done_across() {
        let newtons = Force::new::<newton>;
        let square = Mirrors::of(&[point(1.0, 1.0), point(-1.0, 1.0), point(-1.0, -1.0), point(1.0, -1.0)]);
        let mut largest = [newtons(4.0), newtons(1.0), newtons(2.0), newtons(3.0)];
        square.spread(&mut largest);
        assert_eq!(largest, [newtons(4.0); 4]);
        let kite = Mirrors::of(&[point(2.0, 0.0), point(-1.0, 1.0), point(-1.0, -1.0)]);
        let mut largest = [newtons(4.0), newtons(1.0), newtons(2.0)];
        kite.spread(&mut largest);
        assert_eq!(largest, [newtons(4.0), newtons(2.0), newtons(2.0)]);
    }
}
