//! Closed lines: against brute force, and wherever and whichever way round they lie.

use std::f64::consts::TAU;

use proptest::prelude::*;
use skinspan::{
    geometry::{Axis, Contour, Corner, Point, Vertex},
    units::Length,
};
use uom::si::{area::square_meter, length::meter};

use crate::kit::r;

fn m(value: f64) -> Length {
    Length::new::<meter>(value)
}

fn point(x: f64, y: f64) -> Point {
    Point { x: m(x), y: m(y) }
}

fn xy(place: Point) -> (f64, f64) {
    (place.x.get::<meter>(), place.y.get::<meter>())
}

/// Corners round the origin with arcs between them, as places and bulges.
fn vertices() -> impl Strategy<Value = Vec<(f64, f64, f64)>> {
    prop::collection::vec((0.5..1.5, prop_oneof![Just(0.0), -0.6..0.6, -0.02..0.02, 0.9..1.1]), 3..8).prop_map(
        |corners| {
            #[allow(clippy::cast_precision_loss)] // a handful
            let step = TAU / corners.len() as f64;
            let mut angle = 0.1;
            let place = |(out, bulge): (f64, f64)| {
                angle += step;
                (out * f64::cos(angle), out * f64::sin(angle), bulge)
            };
            corners.into_iter().map(place).collect()
        },
    )
}

fn contour(vertices: &[(f64, f64, f64)]) -> Option<Contour> {
    let vertex = |&(x, y, bulge): &(f64, f64, f64)| Vertex { at: point(x, y), bulge: r(bulge) };
    Contour::new(vertices.iter().map(vertex).collect()).ok()
}

/// Contours that do not cross themselves, with what they were made of.
fn contours() -> impl Strategy<Value = (Vec<(f64, f64, f64)>, Contour)> {
    vertices().prop_filter_map("it crosses itself", |vertices| {
        let contour = contour(&vertices)?;
        Some((vertices, contour))
    })
}

/// The same vertices turned about the origin, shifted, and begun at another of them.
fn moved(vertices: &[(f64, f64, f64)], angle: f64, by: (f64, f64), first: usize) -> Vec<(f64, f64, f64)> {
    let (sin, cos) = angle.sin_cos();
    let mut moved: Vec<_> =
        vertices.iter().map(|(x, y, bulge)| (x * cos - y * sin + by.0, x * sin + y * cos + by.1, *bulge)).collect();
    moved.rotate_left(first % vertices.len());
    moved
}

/// Distance to the nearest chord, and inside by how often the chords turn round the place.
fn brute(places: &[(f64, f64)], at: (f64, f64)) -> f64 {
    let (mut nearest, mut turned) = (f64::INFINITY, 0.0);
    for (index, from) in places.iter().enumerate() {
        let to = places[(index + 1) % places.len()];
        let (ax, ay, bx, by) = (from.0 - at.0, from.1 - at.1, to.0 - at.0, to.1 - at.1);
        turned += (ax * by - ay * bx).atan2(ax * bx + ay * by);
        let (dx, dy) = (bx - ax, by - ay);
        let share = (-(ax * dx + ay * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
        nearest = nearest.min((ax + share * dx).hypot(ay + share * dy));
    }
    if turned.abs() > TAU / 2.0 { nearest } else { -nearest }
}

fn shoelace(places: &[(f64, f64)]) -> f64 {
    let next = places.iter().cycle().skip(1);
    places.iter().zip(next).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>() / 2.0
}

fn length_round(places: &[(f64, f64)]) -> f64 {
    places.iter().zip(places.iter().cycle().skip(1)).map(|(a, b)| (b.0 - a.0).hypot(b.1 - a.1)).sum()
}

fn flat(contour: &Contour, tolerance: f64) -> Vec<(f64, f64)> {
    contour.flattened(m(tolerance)).into_iter().map(xy).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn chords_come_to_the_exact_area_and_length((_, contour) in contours(), digits in 2..6_i32) {
        let tolerance = 10.0_f64.powi(-digits);
        let places = flat(&contour, tolerance);
        let (area, length) = (contour.area().get::<square_meter>(), contour.perimeter().get::<meter>());
        prop_assert!(area > 0.0);
        // Between a chord and its arc lies no more than the tolerance times the arc.
        prop_assert!((shoelace(&places) - area).abs() <= tolerance * length);
        prop_assert!(length_round(&places) <= length * (1.0 + 1e-12));
        prop_assert!(length_round(&flat(&contour, 1e-7)) >= length * (1.0 - 1e-5));
        for place in places {
            prop_assert!(contour.within_by(point(place.0, place.1)).get::<meter>().abs() < 1e-9, "{place:?}");
        }
    }

    #[test]
    fn what_runs_beside_is_as_far_off_everywhere((_, contour) in contours(), by in -0.6..0.6,
                                                 places in prop::collection::vec((-2.5..2.5, -2.5..2.5), 30)) {
        let lines = contour.beside(m(by));
        for line in &lines {
            for place in flat(line, 1e-3) {
                let within = contour.within_by(point(place.0, place.1)).get::<meter>();
                prop_assert!((within + by).abs() < 1e-6, "{place:?} lies {within} within");
            }
        }
        // In an odd number of them lies all that is farther in than they are, and nothing else.
        for (x, y) in places {
            let within = contour.within_by(point(x, y)).get::<meter>();
            if (within + by).abs() > 1e-6 {
                let around = lines.iter().filter(|line| line.within_by(point(x, y)) > m(0.0)).count();
                prop_assert_eq!(around % 2 == 1, within > -by, "({}, {})", x, y);
            }
        }
    }

    #[test]
    fn centres_are_those_of_many_chords((_, contour) in contours()) {
        let places = flat(&contour, 1e-7);
        let (mut area, mut line) = ([0.0; 2], [0.0; 2]);
        for (a, b) in places.iter().zip(places.iter().cycle().skip(1)) {
            let cross = (a.0 * b.1 - b.0 * a.1) / 6.0;
            area = [area[0] + cross * (a.0 + b.0), area[1] + cross * (a.1 + b.1)];
            let half = (b.0 - a.0).hypot(b.1 - a.1) / 2.0;
            line = [line[0] + half * (a.0 + b.0), line[1] + half * (a.1 + b.1)];
        }
        let (of_area, of_line) = (xy(contour.centre()), xy(contour.line_centre()));
        let (whole, round) = (shoelace(&places), length_round(&places));
        for (found, expected) in [
            (of_area.0, area[0] / whole), (of_area.1, area[1] / whole),
            (of_line.0, line[0] / round), (of_line.1, line[1] / round),
        ] {
            prop_assert!((found - expected).abs() < 1e-5, "{found} is not {expected}");
        }
    }

    #[test]
    fn distances_are_those_of_brute_force((_, contour) in contours(), x in -2.0..2.0, y in -2.0..2.0) {
        let expected = brute(&flat(&contour, 1e-6), (x, y));
        let found = contour.within_by(point(x, y)).get::<meter>();
        prop_assert!((found - expected).abs() < 2e-6, "({x}, {y}): {found} is not {expected}");
    }

    #[test]
    fn places_in_line_with_vertices_and_chords_are_on_the_right_side((vertices, contour) in contours(), at in any::<usize>(), share in -0.5..1.5) {
        let places = flat(&contour, 1e-6);
        let (from, to) = (vertices[at % vertices.len()], vertices[(at + 1) % vertices.len()]);
        let along = |share: f64| (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share);
        // On a chord, on its line, and level with a vertex.
        for (x, y) in [along(share), along(0.5), (0.7 * share, from.1), (from.0, 0.7 * share)] {
            let expected = brute(&places, (x, y));
            let found = contour.within_by(point(x, y)).get::<meter>();
            prop_assert!((found - expected).abs() < 2e-6 || found.abs() < 2e-6 && expected.abs() < 2e-6, "({x}, {y}): {found} is not {expected}");
        }
    }

    #[test]
    fn nothing_changes_by_turning_shifting_or_going_round_the_other_way(
        (vertices, still) in contours(),
        (angle, dx, dy) in (0.0..TAU, -5.0..5.0, -5.0..5.0),
        first in 0..8_usize,
        (x, y) in (-2.0..2.0, -2.0..2.0),
    ) {
        let turned = moved(&vertices, angle, (dx, dy), first);
        let mut back: Vec<(f64, f64, f64)> = turned.iter().rev().copied().collect();
        let bulges: Vec<f64> = (0..back.len()).map(|index| -back[(index + 1) % back.len()].2).collect();
        back.iter_mut().zip(bulges).for_each(|(vertex, bulge)| vertex.2 = bulge);
        let at = |x: f64, y: f64| {
            let (x, y, _) = moved(&[(x, y, 0.0)], angle, (dx, dy), 0)[0];
            point(x, y)
        };
        for other in [contour(&turned), contour(&back)] {
            let other = other.expect("it does not cross itself there either");
            prop_assert!((other.area() - still.area()).get::<square_meter>().abs() < 1e-12);
            prop_assert!((other.perimeter() - still.perimeter()).get::<meter>().abs() < 1e-12);
            let middle = xy(still.centre());
            prop_assert!(other.centre().distance(at(middle.0, middle.1)).get::<meter>() < 1e-11);
            let change = other.within_by(at(x, y)) - still.within_by(point(x, y));
            // An arc of next to no bulge has its middle a hundred kilometres away: a millimetre's millionth is rounding.
            prop_assert!(change.get::<meter>().abs() < 1e-9);
        }
        let shifted = still.moved(point(dx, dy));
        prop_assert!((shifted.within_by(point(x + dx, y + dy)) - still.within_by(point(x, y))).get::<meter>().abs() < 1e-9);
    }

    #[test]
    fn bounds_touch_and_hold_every_place((_, contour) in contours()) {
        let [low, high] = contour.bounds();
        for axis in Axis::BOTH {
            let places = contour.flattened(m(1e-7));
            let along: Vec<f64> = places.iter().map(|place| place.along(axis).get::<meter>()).collect();
            let least = along.iter().copied().fold(f64::INFINITY, f64::min);
            let most = along.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            let (low, high) = (low.along(axis).get::<meter>(), high.along(axis).get::<meter>());
            prop_assert!(low <= least + 1e-12 && low > least - 2e-7, "{low} {least}");
            prop_assert!(high >= most - 1e-12 && high < most + 2e-7, "{high} {most}");
        }
    }

    /// A rounding is the place of a disc that rolls inside: the corner's arc stands off both sides by its radius.
    #[test]
    fn a_rounding_touches_both_sides(angle in 0.3..2.8, radius in 0.01..0.1) {
        let corner = |x: f64, y: f64, radius: f64| Corner { at: point(x, y), radius: m(radius) };
        let (sin, cos) = f64::sin_cos(angle);
        let rounded = Contour::polygon(&[corner(0.0, 0.0, radius), corner(2.0, 0.0, 0.0), corner(2.0 * cos, 2.0 * sin, 0.0)]);
        let rounded = rounded.expect("it fits");
        let out = radius / f64::tan(angle / 2.0);
        let within = rounded.within_by(point(out, radius)).get::<meter>();
        prop_assert!((within - radius).abs() < 1e-12, "{within}");
        // From the corner to the arc, on the line that halves the angle.
        let gap = -rounded.within_by(point(0.0, 0.0)).get::<meter>();
        prop_assert!((gap - radius * (1.0 / f64::sin(angle / 2.0) - 1.0)).abs() < 1e-11, "{gap}");
    }
}

#[test]
fn a_third_of_the_random_rings_or_more_are_contours() {
    // What crosses itself is thrown away above; this says that enough is left to look at.
    use proptest::{strategy::ValueTree, test_runner::TestRunner};
    let mut runner = TestRunner::deterministic();
    let good = (0..300)
        .filter(|_| vertices().new_tree(&mut runner).is_ok_and(|tree| contour(&tree.current()).is_some()))
        .count();
    assert!(good > 100, "{good}");
}
