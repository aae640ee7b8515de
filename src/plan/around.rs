//! How far what is drawn reaches.

use uom::si::ratio::ratio;

use super::Shape;
use crate::{
    geometry::{Contour, Point, Vertex},
    units::{Length, Ratio},
};

/// Opposite corners of the rectangle round shapes; without any, both at the origin.
pub(super) fn bounds<'s>(shapes: impl Iterator<Item = &'s Shape>) -> [Point; 2] {
    let mut ends: Option<[Point; 2]> = None;
    for [low, high] in shapes.flat_map(of_shape) {
        let [least, most] = ends.unwrap_or([low, high]);
        ends = Some([
            Point { x: least.x.min(low.x), y: least.y.min(low.y) },
            Point { x: most.x.max(high.x), y: most.y.max(high.y) },
        ]);
    }
    let origin = Point { x: Length::default(), y: Length::default() };
    ends.unwrap_or([origin; 2])
}

fn of_shape(shape: &Shape) -> Vec<[Point; 2]> {
    match shape {
        Shape::Line(line) => line
            .pieces()
            .map(|(from, to, bulge)| if bulge == Ratio::default() { straight(from, to) } else { arc(from, to, bulge) })
            .collect(),
        Shape::Circle { centre, diameter } => {
            let reach: Length = *diameter / 2.0;
            let end = |out: Length| Point { x: centre.x + out, y: centre.y + out };
            vec![[end(-reach), end(reach)]]
        }
        Shape::Cross { at } => vec![[*at; 2]],
        Shape::Label(_) | Shape::Dimension(_) => Vec::new(),
    }
}

fn straight(one: Point, other: Point) -> [Point; 2] {
    [Point { x: one.x.min(other.x), y: one.y.min(other.y) }, Point { x: one.x.max(other.x), y: one.y.max(other.y) }]
}

/// Round an arc, by the ring of the arc and its chord; one that is almost straight is no ring.
fn arc(from: Point, to: Point, bulge: Ratio) -> [Point; 2] {
    let straight_back = Ratio::new::<ratio>(0.0);
    let ring = Contour::new(vec![Vertex { at: from, bulge }, Vertex { at: to, bulge: straight_back }]);
    ring.map_or_else(|_| straight(from, to), |ring| ring.bounds())
}

#[cfg(test)]
mod tests {
    use uom::si::length::meter;

    use super::*;
    use crate::plan::{Line, LineKind};

    #[test]
    fn an_arc_reaches_beyond_its_ends() {
        let m = Length::new::<meter>;
        let vertex =
            |x: f64, bulge: f64| Vertex { at: Point { x: m(x), y: m(0.0) }, bulge: Ratio::new::<ratio>(bulge) };
        let line = Line { vertices: vec![vertex(0.0, -1.0), vertex(2.0, 0.0)], closed: false, kind: LineKind::Edge };
        let [low, high] = bounds([Shape::Line(line)].iter());
        // Half a circle of radius 1 m, clockwise from left to right: above the ends.
        assert_eq!((low.x, low.y, high.x), (m(0.0), m(0.0), m(2.0)));
        assert!((high.y - m(1.0)).abs() < m(1e-12));
    }
}
