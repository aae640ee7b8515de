//! Places beside a line.

use super::{Point, Polyline};
use crate::units::Length;

/// Where a place lies beside a [`Polyline`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beside {
    /// Distance from the line's start, along it, of the nearest place on it; below zero or beyond the line's length
    /// where the place lies off its ends.
    pub along: Length,
    /// Distance across, from the line or from its continuation beyond an end.
    pub across: Length,
}

impl Polyline {
    /// The place at a distance from the start, along the line; off its ends on its continuation.
    #[must_use]
    pub fn at(&self, along: Length) -> Point {
        let mut left = along;
        let last = self.0.len() - 2;
        for (index, pair) in self.0.windows(2).enumerate() {
            let (dx, dy) = (pair[1].x - pair[0].x, pair[1].y - pair[0].y);
            let piece = dx.hypot(dy);
            if left <= piece || index == last {
                let share = left / piece;
                return Point { x: pair[0].x + dx * share, y: pair[0].y + dy * share };
            }
            left -= piece;
        }
        self.0[0]
    }

    /// Where a place lies beside the line.
    #[must_use]
    pub fn beside(&self, place: Point) -> Beside {
        let last = self.0.len() - 2;
        let mut start = Length::default();
        let mut nearest: Option<(Length, Beside)> = None;
        for (index, pair) in self.0.windows(2).enumerate() {
            let (dx, dy) = (pair[1].x - pair[0].x, pair[1].y - pair[0].y);
            let piece = dx.hypot(dy);
            let (px, py) = (place.x - pair[0].x, place.y - pair[0].y);
            let along: Length = (px * dx + py * dy) / piece;
            // Beyond the ends of the whole line its first and last pieces go on; between, a corner is the nearest.
            let low = if index == 0 { along.min(Length::default()) } else { Length::default() };
            let high = if index == last { along.max(piece) } else { piece };
            let held = along.max(low).min(high);
            let across = (px - dx * (held / piece)).hypot(py - dy * (held / piece));
            let distance = across.hypot((-held).max(held - piece).max(Length::default()));
            if nearest.is_none_or(|(known, _)| distance < known) {
                nearest = Some((distance, Beside { along: start + held, across }));
            }
            start += piece;
        }
        nearest.map_or(Beside { along: Length::default(), across: Length::default() }, |(_, beside)| beside)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::length::meter;

    fn point(x: f64, y: f64) -> Point {
        Point { x: Length::new::<meter>(x), y: Length::new::<meter>(y) }
    }

    fn beside(line: &Polyline, x: f64, y: f64) -> (f64, f64) {
        let found = line.beside(point(x, y));
        (found.along.get::<meter>(), found.across.get::<meter>())
    }

    #[test]
    fn a_place_is_found_beside_a_bent_line_and_off_its_ends() {
        let bent = Polyline::new(vec![point(0.0, 0.0), point(2.0, 0.0), point(2.0, 1.0)]).expect("three points");
        assert_eq!(beside(&bent, 0.5, 0.1), (0.5, 0.1));
        assert_eq!(beside(&bent, 2.3, 0.4), (2.4, 0.3 + 2.3 - 2.3));
        assert_eq!(beside(&bent, -0.25, 0.1), (-0.25, 0.1));
        assert_eq!(beside(&bent, 1.9, 1.5), (3.5, 0.1 + 1.9 - 1.9));
    }

    #[test]
    fn a_distance_along_gives_its_place() {
        let bent = Polyline::new(vec![point(0.0, 0.0), point(2.0, 0.0), point(2.0, 1.0)]).expect("three points");
        assert_eq!(bent.at(Length::new::<meter>(0.5)), point(0.5, 0.0));
        assert_eq!(bent.at(Length::new::<meter>(2.25)), point(2.0, 0.25));
        assert_eq!(bent.at(Length::new::<meter>(3.5)), point(2.0, 1.5));
    }
}
