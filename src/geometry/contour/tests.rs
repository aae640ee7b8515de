use uom::si::{area::square_meter, length::meter, ratio::ratio};

use super::*;

fn m(x: f64) -> Length {
    Length::new::<meter>(x)
}

fn point(x: f64, y: f64) -> Point {
    Point { x: m(x), y: m(y) }
}

fn ring(vertices: &[(f64, f64, f64)]) -> Result<Contour, InvalidContour> {
    let vertex = |&(x, y, bulge): &(f64, f64, f64)| Vertex { at: point(x, y), bulge: Ratio::new::<ratio>(bulge) };
    Contour::new(vertices.iter().map(vertex).collect())
}

fn is(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-12, "{found} is not {expected}");
}

#[test]
fn distance_to_sides_and_corners_from_both_sides() {
    let rectangle = Contour::rectangle(m(3.0), m(2.0), [m(0.5); 4]).expect("corners that fit");
    for (x, y, within) in [
        (1.5, 1.0, 1.0),
        (1.5, 0.2, 0.2),
        (2.9, 1.0, 0.1),
        (1.5, 2.3, -0.3),
        (0.5, 0.5, 0.5),
        // 0.5 from the middle of the arc, which lies at (2.5, 1.5): 3-4-5.
        (2.8, 1.9, 0.0),
        (3.1, 2.3, -0.5),
        // On the chord of a corner, and on the lines of chords and sides drawn out.
        (0.25, 0.25, 0.5 - 0.25 * 2.0_f64.sqrt()),
        (0.5, 1.0, 0.5),
        (2.5, 0.1, 0.1),
        (3.5, 1.5, -0.5),
        (-0.5, 0.5, -0.5),
    ] {
        is(rectangle.within_by(point(x, y)).get::<meter>().abs(), f64::abs(within));
        assert_eq!(rectangle.holds(point(x, y)), within >= 0.0, "({x}, {y})");
    }
}

#[test]
fn a_half_disc_has_its_known_centres() {
    use std::f64::consts::PI;
    // Radius 1 over the x axis, given clockwise.
    for half in [ring(&[(1.0, 0.0, 1.0), (-1.0, 0.0, 0.0)]), ring(&[(-1.0, 0.0, -1.0), (1.0, 0.0, 0.0)])] {
        let half = half.expect("a half disc");
        is(half.area().get::<square_meter>(), PI / 2.0);
        is(half.centre().y.get::<meter>(), 4.0 / (3.0 * PI));
        is(half.centre().x.get::<meter>(), 0.0);
        // The arc of length π has its centre at 2/π, the diameter of 2 at 0.
        is(half.line_centre().y.get::<meter>(), 2.0 / (PI + 2.0));
        let [low, high] = half.bounds();
        is(high.y.get::<meter>(), 1.0);
        is(low.x.get::<meter>(), -1.0);
    }
}

#[test]
fn more_than_half_a_circle_and_a_bay_cut_into_a_side() {
    use std::f64::consts::PI;
    // Three quarters of a circle of radius 1 round (1, 1), closed by two radii.
    let three = ring(&[(2.0, 1.0, (3.0 * PI / 8.0).tan()), (1.0, 0.0, 0.0), (1.0, 1.0, 0.0)]).expect("three quarters");
    is(three.area().get::<square_meter>(), 0.75 * PI);
    is(three.perimeter().get::<meter>(), 1.5 * PI + 2.0);
    is(three.bounds()[0].x.get::<meter>(), 0.0);
    is(three.bounds()[1].y.get::<meter>(), 2.0);
    is(three.within_by(point(0.5, 0.5)).get::<meter>(), 1.0 - 0.5_f64.sqrt());
    is(three.within_by(point(1.5, 0.9)).get::<meter>(), -0.1);
    // A square of 2 m with half a disc of 0.5 m cut out of its lower side.
    let bay = [(0.0, 0.0, 0.0), (0.5, 0.0, -1.0), (1.5, 0.0, 0.0), (2.0, 0.0, 0.0), (2.0, 2.0, 0.0), (0.0, 2.0, 0.0)];
    let bay = ring(&bay).expect("a square with a bay");
    is(bay.area().get::<square_meter>(), 4.0 - PI / 8.0);
    is(bay.within_by(point(1.0, 0.25)).get::<meter>(), -0.25);
    is(bay.within_by(point(1.0, 0.75)).get::<meter>(), 0.25);
    // A line along the lower side leaves it in the bay, and one above the bay does not.
    let line = |y: f64| Polyline::new(vec![point(0.1, y), point(1.9, y)]).expect("two points");
    assert!(bay.left_by(&line(0.1)).is_some_and(|place| (place.x - m(1.0)).abs() < m(1e-5)));
    assert_eq!(bay.left_by(&line(0.6)), None);
}

#[test]
fn closed_forms_and_their_series_agree_where_they_meet() {
    let at = |bulge: f64| {
        let ring = ring(&[(0.0, 0.0, bulge), (1.0, 0.0, 0.0), (1.0, 1.0, 0.0), (0.0, 1.0, 0.0)]).expect("a ring");
        [ring.area().value, ring.centre().y.value, ring.line_centre().y.value, ring.perimeter().value]
    };
    let [below, above, beyond] = [at(0.009_999), at(0.010_001), at(0.010_003)];
    for index in 0..4 {
        // The step over the border is the step after it.
        let (over, after) = (above[index] - below[index], beyond[index] - above[index]);
        assert!((over - after).abs() < 3e-4 * after.abs(), "{index}: {over} {after}");
    }
}

#[test]
fn rings_that_meet_themselves_are_refused_at_the_place() {
    let bow_tie = ring(&[(0.0, 0.0, 0.0), (2.0, 2.0, 0.0), (2.0, 0.0, 0.0), (0.0, 2.0, 0.0)]);
    assert_eq!(bow_tie, Err(InvalidContour::Crosses { at: point(1.0, 1.0) }));
    // A spike out and back.
    let spike = ring(&[(0.0, 0.0, 0.0), (2.0, 0.0, 0.0), (3.0, 0.0, 0.0), (2.0, 0.0, 0.0), (1.0, 1.0, 0.0)]);
    assert!(matches!(spike, Err(InvalidContour::Crosses { at }) if at.y == m(0.0)), "{spike:?}");
    // An arc that bulges through the opposite side.
    let through = ring(&[(0.0, 0.0, -1.0), (2.0, 0.0, 0.0), (2.0, 0.5, 0.0), (0.0, 0.5, 0.0)]);
    assert!(matches!(through, Err(InvalidContour::Crosses { .. })), "{through:?}");
    // Two corners that touch.
    let touch = [(0.0, 0.0), (1.0, 1.0), (2.0, 0.0), (2.0, 2.0), (1.0, 1.0), (0.0, 2.0)].map(|(x, y)| (x, y, 0.0));
    assert_eq!(ring(&touch), Err(InvalidContour::Crosses { at: point(1.0, 1.0) }));
}

#[test]
fn nothing_and_nowhere_are_no_rings() {
    for nothing in [&[][..], &[(0.0, 0.0, 0.0)], &[(0.0, 0.0, 0.0), (1.0, 0.0, 0.0)], &[(1.0, 1.0, 1.0); 3]] {
        assert_eq!(ring(nothing), Err(InvalidContour::Nothing));
    }
    for nowhere in [f64::NAN, f64::INFINITY, 1e300] {
        assert_eq!(ring(&[(0.0, 0.0, 0.0), (nowhere, 0.0, 0.0), (1.0, 1.0, 0.0)]), Err(InvalidContour::OutOfReach));
    }
    assert_eq!(ring(&[(0.0, 0.0, f64::NAN), (1.0, 0.0, 1.0)]), Err(InvalidContour::OutOfReach));
}

#[test]
fn a_radius_fits_as_far_as_its_neighbours_leave_room() {
    let radii = |radii: [f64; 4]| Contour::rectangle(m(3.0), m(2.0), radii.map(m));
    assert!(radii([1.0; 4]).is_ok(), "half a circle at both ends");
    let Err(InvalidContour::RadiusDoesNotFit { corner: 1, most }) = radii([0.5, 1.8, 0.5, 0.0]) else {
        panic!("it does not fit");
    };
    is(most.get::<meter>(), 1.5);
    let corner = |x: f64, y: f64| Corner { at: point(x, y), radius: m(0.0) };
    let twice = Contour::polygon(&[corner(0.0, 0.0), corner(1.0, 0.0), corner(1.0, 0.0), corner(0.0, 1.0)]);
    assert_eq!(twice, Err(InvalidContour::Repeated { corner: 2 }));
    assert_eq!(Contour::polygon(&[]), Err(InvalidContour::Nothing));
}

#[test]
fn two_rings_meet_or_do_not() {
    let disc = |x: f64, d: f64| Contour::circle(point(x, 0.0), m(d)).expect("a circle");
    is(disc(0.0, 2.0).area().get::<square_meter>(), std::f64::consts::PI);
    assert!(disc(0.0, 2.0).meets(&disc(1.0, 2.0)).is_some());
    assert_eq!(disc(0.0, 2.0).meets(&disc(0.0, 1.0)), None);
    assert_eq!(disc(0.0, 2.0).meets(&disc(3.0, 2.0)), None);
    let line = Polyline::new(vec![point(-3.0, 0.2), point(3.0, 0.2)]).expect("two points");
    assert!(disc(0.0, 2.0).entered_by(&line).is_some_and(|place| disc(0.0, 2.0).holds(place)));
    let tangent = Polyline::new(vec![point(-3.0, 1.0), point(3.0, 1.0)]).expect("two points");
    assert_eq!(disc(0.0, 2.0).entered_by(&tangent), None);
}
