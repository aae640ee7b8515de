//! Backing in a bay and under its pipes, found from where it lies in plan.

use uom::si::{area::square_meter, length::meter};

use crate::{
    analysis::line::Region,
    geometry::{Axis, Point, Polyline},
    top::{Backing, Support, Top},
    units::{Area, Length},
};

/// What a straight piece of a band covers of a rectangle in plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cover {
    /// Area in the rectangle.
    pub area: Area,
    /// Its centre.
    pub centre: Point,
    /// Sides along the length and across of what stands for it: a band square to the rectangle as it is; of one at an
    /// angle a square as wide as the band, which puts the same weight on less room.
    pub sides: [Length; 2],
}

/// A rectangle in plan: its corner with the smallest coordinates, and its sides.
pub(super) type Rectangle = (Point, [Length; 2]);

/// What a band about a polyline covers of a rectangle, piece by piece.
pub(super) fn covers(along: &Polyline, width: Length, rectangle: Rectangle) -> Vec<Cover> {
    along.points().windows(2).filter_map(|pair| cover([pair[0], pair[1]], width, rectangle)).collect()
}

fn cover([p, q]: [Point; 2], width: Length, (from, sides): Rectangle) -> Option<Cover> {
    let (dx, dy) = ((q.x - p.x).value, (q.y - p.y).value);
    let half = width.value / 2.0 / dx.hypot(dy);
    // Corners of the band, from the rectangle's own corner.
    let (x, y) = ([p.x - from.x, q.x - from.x], [p.y - from.y, q.y - from.y]);
    let corner = |i: usize, side: f64| [x[i].value - side * half * dy, y[i].value + side * half * dx];
    let mut corners = vec![corner(0, 1.0), corner(1, 1.0), corner(1, -1.0), corner(0, -1.0)];
    for (i, side) in sides.iter().enumerate() {
        corners = cut(&corners, i, |at| at);
        corners = cut(&corners, i, |at| side.value - at);
    }
    let (twice, moment) =
        corners.iter().zip(corners.iter().cycle().skip(1)).fold((0.0, [0.0; 2]), |(twice, [mx, my]), (a, b)| {
            let cross = a[0] * b[1] - b[0] * a[1];
            (twice + cross, [mx + (a[0] + b[0]) * cross, my + (a[1] + b[1]) * cross])
        });
    let area = twice.abs() / 2.0;
    // A hair's breadth along an edge of the rectangle is not in it.
    if area <= 1e-9 * sides[0].value * sides[1].value {
        return None;
    }
    let metre = Length::new::<meter>;
    let box_side = |i: usize| {
        let (low, high) = corners
            .iter()
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at[i]), high.max(at[i])));
        high - low
    };
    let own = [box_side(0), box_side(1)];
    let square = area > 0.999 * own[0] * own[1];
    Some(Cover {
        area: Area::new::<square_meter>(area),
        centre: Point { x: from.x + metre(moment[0] / (3.0 * twice)), y: from.y + metre(moment[1] / (3.0 * twice)) },
        sides: if square { own.map(metre) } else { sides.map(|side| width.min(side)) },
    })
}

/// The part of a polygon where a distance, counted from the coordinate `i` of a corner, is not negative.
fn cut(corners: &[[f64; 2]], i: usize, distance: impl Fn(f64) -> f64) -> Vec<[f64; 2]> {
    let mut kept = Vec::with_capacity(corners.len() + 1);
    for (a, b) in corners.iter().zip(corners.iter().cycle().skip(1)) {
        let (from, to) = (distance(a[i]), distance(b[i]));
        if from >= 0.0 {
            kept.push(*a);
        }
        if from * to < 0.0 {
            let share = from / (from - to);
            kept.push([a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]);
        }
    }
    kept
}

/// What may lie between the skins under a straight pipe: the backing that covers its seat from end to end, or else core
/// and every backing that reaches under it.
pub fn under_pipe(top: &Top, pipe: usize) -> Vec<Region> {
    let pipe = &top.supports[pipe];
    if let Some(whole) = top.backings.iter().position(|backing| covers_seat(backing, pipe)) {
        return vec![Region::Backing(whole)];
    }
    let axis = pipe.along.main_axis();
    let half: Length = pipe.seat / 2.0;
    let beside = |of: Axis| if of == axis { Length::default() } else { half };
    let side = |of: Axis| pipe.along.extent(of).1 - pipe.along.extent(of).0 + beside(of) * 2.0;
    let low = |of: Axis| pipe.along.extent(of).0 - beside(of);
    let seat = (Point { x: low(Axis::X), y: low(Axis::Y) }, Axis::BOTH.map(side));
    let reaching = (0..top.backings.len())
        .filter(|&index| !covers(&top.backings[index].along, top.backings[index].width, seat).is_empty());
    std::iter::once(Region::Field).chain(reaching.map(Region::Backing)).collect()
}

/// Whether a backing that runs straight along a pipe lies under all of its seat.
fn covers_seat(backing: &Backing, pipe: &Support) -> bool {
    let axis = pipe.along.main_axis();
    let ((from, to), (low, high)) = (backing.along.extent(axis), pipe.along.extent(axis));
    let ((left, right), (near, far)) = (backing.along.extent(axis.other()), pipe.along.extent(axis.other()));
    let hair = Length::new::<uom::si::length::micrometer>(1.0);
    let half: Length = (backing.width - pipe.seat) / 2.0 + hair;
    right - left < hair && from <= low + hair && to >= high - hair && near >= left - half && far <= right + half
}

#[cfg(test)]
mod tests {
    use super::*;

    fn m(x: f64) -> Length {
        Length::new::<meter>(x)
    }

    fn point(x: f64, y: f64) -> Point {
        Point { x: m(x), y: m(y) }
    }

    fn line(points: &[(f64, f64)]) -> Polyline {
        Polyline::new(points.iter().map(|&(x, y)| point(x, y)).collect()).expect("distinct points")
    }

    const BAY: [f64; 4] = [1.0, 2.0, 0.8, 0.6];

    fn found(points: &[(f64, f64)], width: f64) -> Vec<Cover> {
        covers(&line(points), m(width), (point(BAY[0], BAY[1]), [m(BAY[2]), m(BAY[3])]))
    }

    fn close(a: f64, b: f64) {
        assert!((a - b).abs() < 1e-12, "{a} against {b}");
    }

    #[test]
    fn a_band_along_the_edge_of_a_bay_lies_in_it_with_half_its_width() {
        let found = found(&[(0.5, 2.0), (2.5, 2.0)], 0.1);
        assert_eq!(found.len(), 1);
        close(found[0].area.value, 0.8 * 0.05);
        close(found[0].centre.x.value, 1.4);
        close(found[0].centre.y.value, 2.025);
        close(found[0].sides[0].value, 0.8);
        close(found[0].sides[1].value, 0.05);
    }

    #[test]
    fn a_band_at_45_degrees_over_the_corner_is_a_triangle_less_a_triangle() {
        // Its edges cut x + y at 0.3 ± 0.1·√2/2 from the corner.
        let found = found(&[(0.9, 2.4), (1.4, 1.9)], 0.1);
        let (far, near) = (0.3 + 0.05 * 2.0_f64.sqrt(), 0.3 - 0.05 * 2.0_f64.sqrt());
        close(found[0].area.value, (far * far - near * near) / 2.0);
        let centre = (far.powi(3) - near.powi(3)) / (3.0 * (far * far - near * near));
        close(found[0].centre.x.value, 1.0 + centre);
        close(found[0].centre.y.value, 2.0 + centre);
        close(found[0].sides[0].value, 0.1);
    }

    #[test]
    fn a_line_about_a_bay_is_not_in_it_though_the_bay_is_in_its_extent() {
        assert!(found(&[(0.9, 1.9), (2.0, 1.9), (2.0, 2.8)], 0.1).is_empty());
        assert!(found(&[(0.0, 1.95), (3.0, 1.95)], 0.1).is_empty(), "it touches the edge from outside");
    }

    #[test]
    fn a_bent_band_is_found_piece_by_piece() {
        let found = found(&[(1.2, 1.0), (1.2, 2.3), (3.0, 2.3)], 0.04);
        assert_eq!(found.len(), 2);
        close(found[0].area.value, 0.04 * 0.3);
        close(found[1].area.value, 0.04 * 0.6);
    }
}
