//! Fixings of a footing against closed forms of textbooks, limits, and sums by hand.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use std::f64::consts::PI;

use skinspan::{
    closed_form::fixing_group::{FixingGroup, FootingAction},
    geometry::{Foot, Pattern, Point},
    units::{Angle, Area, Force, Pressure, Torque},
};
use uom::si::{
    angle::degree,
    area::square_millimeter,
    force::newton,
    pressure::{megapascal, pascal},
    torque::newton_meter,
};

use crate::kit::{m, within};

/// Rounding, and the balance to 10⁻¹².
const EXACT: f64 = 1e-9;
/// A bed a million times stiffer than the fixings still yields over the root of that, a thousandth of the foot.
const STIFF_BED: f64 = 2e-3;
/// Values given with three digits.
const THREE_DIGITS: f64 = 0.005;

fn group(at: Vec<Point>, foot: Foot, stiffness: f64, bed: f64) -> FixingGroup {
    let bed = Pressure::new::<pascal>(bed) / m(1.0);
    FixingGroup::new(at, foot, Force::new::<newton>(stiffness) / m(1.0), bed).unwrap()
}

fn square(side: f64) -> Foot {
    Foot::Rectangle { length: m(side), width: m(side) }
}

fn grid(pitch: f64) -> Vec<Point> {
    Pattern::Grid { along_x: 2, along_y: 2, pitch_x: m(pitch), pitch_y: m(pitch) }.points()
}

fn about_y(moment: f64) -> FootingAction {
    let moment = [Torque::default(), Torque::new::<newton_meter>(moment)];
    FootingAction { moment, ..FootingAction::default() }
}

fn pull(force: f64) -> FootingAction {
    FootingAction { pull: Force::new::<newton>(force), ..FootingAction::default() }
}

/// Six fasteners in three rows of 3 and two columns of 4, 24 at 5 from their middle: 4.0 down and 4.0 from the twist,
/// 6.0 across, 10.0 together. Salmon and Johnson, *Steel Structures*, elastic vector method (from memory; kip and inch).
#[test]
fn shear_on_a_bracket_by_the_vector_method() {
    let at = Pattern::Grid { along_x: 2, along_y: 3, pitch_x: m(4.0), pitch_y: m(3.0) }.points();
    let group = group(at, square(10.0), 1.0, 1.0);
    let n = Force::new::<newton>;
    let action = FootingAction::of_force_at([n(0.0), n(-24.0), n(0.0)], Point { x: m(5.0), y: m(0.0) }, m(0.0));
    let greatest = group.shears(&action).unwrap().iter().map(|[x, y]| x.hypot(*y).value).fold(0.0, f64::max);
    within(greatest, 10.0, EXACT);
}

/// Three at (0, 0), (90, 0) and (0, 90) mm: the centroid is at (30, 30), Σ*r*² = 10 800 mm². 300 N along *y* at the origin
/// twists by −0.03 × 300 = −9 N·m: 833.33 N per metre of arm.
#[test]
fn shear_on_three_fixings_out_of_the_middle() {
    let at = [(0.0, 0.0), (0.09, 0.0), (0.0, 0.09)].map(|(x, y)| Point { x: m(x), y: m(y) }).to_vec();
    let action = FootingAction { side: [Force::default(), Force::new::<newton>(300.0)], ..FootingAction::default() };
    let shears = group(at, square(0.2), 1e7, 1e10).shears(&action).unwrap();
    for ([x, y], (f_x, f_y)) in shears.iter().zip([(-25.0, 125.0), (-25.0, 50.0), (50.0, 125.0)]) {
        within(x.value, f_x, EXACT);
        within(y.value, f_y, EXACT);
    }
}

/// A flange whose bolts alone pull: *T* = *P*/*n* + 4 *M*/(*n D*) on the farthest of *n* on a circle *D* (textbooks on
/// flanges; Σ*y*² = *n D*²/8).
#[test]
fn lifted_flange() {
    for count in [3_u32, 4, 8, 12] {
        let at = Pattern::Circle { count, diameter: m(0.16), first: Angle::new::<degree>(0.0) }.points();
        let flange = group(at, Foot::Disc { diameter: m(0.2) }, 1e7, 1e10);
        let forces = flange.pulls(&(pull(6000.0) + about_y(-50.0))).unwrap();
        let n = f64::from(count);
        within(forces.greatest().get::<newton>(), 6000.0 / n + 4.0 * 50.0 / (n * 0.16), EXACT);
        assert_eq!(forces.contact, Area::default());
        assert_eq!(forces.pressure, Pressure::default());
    }
}

/// Pressed all over, the foot is a section: *p* = *P*/*A* + *M c*/*I*. Fixings in the middle and at the sides do not pull.
#[test]
fn pressed_foot_is_a_section() {
    let forces = group(grid(0.09), square(0.12), 2e7, 8e9).pulls(&(pull(-9000.0) + about_y(100.0))).unwrap();
    within(forces.pressure.get::<pascal>(), 9000.0 / 0.0144 + 100.0 * 6.0 / 0.12_f64.powi(3), EXACT);
    within(forces.contact.value, 0.0144, EXACT);
    assert_eq!(forces.greatest(), Force::default());
    let round = group(grid(0.05), Foot::Disc { diameter: m(0.12) }, 2e7, 8e9);
    let forces = round.pulls(&(pull(-9000.0) + about_y(100.0))).unwrap();
    within(forces.pressure.get::<pascal>(), 9000.0 / (PI * 0.0036) + 100.0 * 32.0 / (PI * 0.12_f64.powi(3)), EXACT);
    within(forces.contact.value, PI * 0.0036, EXACT);
}

/// A foot of 120 mm, fixings of 20 kN/mm at ±45 mm, 47 N·m, against the balance of a bar on springs: the pressed length
/// *d* from *n k* (*x* − *x₀*) = *`k_b` b d*²/2, then the moment.
#[test]
fn foot_on_a_soft_and_on_a_stiff_bed() {
    // Bed in N/mm³; pull, pressed length and pressure of the first by hand, to three digits.
    for (bed, printed) in [(8.0, (277.0, 60.7, 0.152)), (50.0, (249.0, 31.3, 0.264))] {
        let forces = group(grid(0.09), square(0.12), 2e7, bed * 1e9).pulls(&about_y(-47.0)).unwrap();
        let (k, half, b, at) = (20e3, 60.0, 120.0, 45.0);
        // Fixings at −45 mm lift too where the pressed length is below 15 mm; here it is not, and d solves a quadratic:
        // k_b b d²/2 + 2 k d − 2 k (at + half) = 0.
        let q: f64 = bed * b / 2.0;
        let d = (-2.0 * k + (4.0 * k * k + 8.0 * q * k * (at + half)).sqrt()) / (2.0 * q);
        let push = 47e3 / (at + half - d / 3.0);
        within(forces.pulls[1].get::<newton>(), push / 2.0, EXACT);
        within(forces.pressure.get::<megapascal>(), 2.0 * push / (b * d), EXACT);
        within(forces.contact.get::<square_millimeter>(), b * d, EXACT);
        within(forces.pulls[1].get::<newton>(), printed.0, THREE_DIGITS);
        within(forces.contact.get::<square_millimeter>() / b, printed.1, THREE_DIGITS);
        within(forces.pressure.get::<megapascal>(), printed.2, THREE_DIGITS);
        // A yielding bed brings more on the fixings than the rule of the far edge.
        assert!(forces.greatest().get::<newton>() > far_edge(47e3, 60.0, &[(45.0, 2.0), (-45.0, 2.0)]));
    }
}

/// The textbook rule: the foot turns about its far edge, *T* = *M l*/Σ*l*², for rows at a place with a number of fixings.
fn far_edge(moment: f64, half: f64, rows: &[(f64, f64)]) -> f64 {
    let square: f64 = rows.iter().map(|(x, n)| n * (x + half).powi(2)).sum();
    let far = rows.iter().map(|(x, _)| x + half).fold(0.0, f64::max);
    moment * far / square
}

#[test]
fn stiff_bed_tends_to_the_rule_of_the_far_edge() {
    let foot = group(grid(0.09), square(0.12), 1e6, 4e6 * 1e6 / 0.0144);
    let forces = foot.pulls(&about_y(-47.0)).unwrap();
    within(forces.greatest().get::<newton>(), far_edge(47.0, 0.06, &[(0.045, 2.0), (-0.045, 2.0)]), STIFF_BED);
    // On a disc the point opposite: fixings at 45° to the moment, two and two at ±√½ 40 mm.
    let at = Pattern::Circle { count: 4, diameter: m(0.08), first: Angle::new::<degree>(45.0) }.points();
    let disc = group(at, Foot::Disc { diameter: m(0.12) }, 1e6, 4e6 * 1e6 / (PI * 0.0036));
    let place = 0.04 * 0.5_f64.sqrt();
    // The rim's point is pressed wider than an edge: its middle lies farther in.
    within(
        disc.pulls(&about_y(-47.0)).unwrap().greatest().get::<newton>(),
        far_edge(47.0, 0.06, &[(place, 2.0), (-place, 2.0)]),
        10.0 * STIFF_BED,
    );
}

/// Signs: a moment about *x* lifts the side of positive *y*, one about *y* the side of negative *x*; a force along *x* above
/// the skin lifts the side it comes from.
#[test]
fn each_moment_lifts_its_side() {
    let foot = group(grid(0.09), square(0.12), 2e7, 8e9);
    let lifted = |action: &FootingAction| -> Vec<bool> {
        foot.pulls(action).unwrap().pulls.iter().map(|pull| pull.value > 0.0).collect()
    };
    // In the order (−, −), (+, −), (−, +), (+, +).
    let about_x = FootingAction { moment: [Torque::new::<newton_meter>(20.0), Torque::default()], ..pull(0.0) };
    assert_eq!(lifted(&about_x), [false, false, true, true]);
    assert_eq!(lifted(&about_y(20.0)), [true, false, true, false]);
    let n = Force::new::<newton>;
    let middle = Point { x: m(0.0), y: m(0.0) };
    let pushed = FootingAction::of_force_at([n(100.0), n(0.0), n(0.0)], middle, m(0.3));
    assert_eq!(lifted(&pushed), [true, false, true, false]);
    let across = FootingAction::of_force_at([n(0.0), n(100.0), n(0.0)], middle, m(0.3));
    assert_eq!(lifted(&across), [true, true, false, false]);
    // Off to the side of positive x.
    let off = FootingAction::of_force_at([n(0.0), n(0.0), n(100.0)], Point { x: m(0.2), y: m(0.0) }, m(0.3));
    assert_eq!(lifted(&off), [false, true, false, true]);
    // Up, and off to the side of positive y.
    let up = FootingAction::of_force_at([n(0.0), n(0.0), n(100.0)], Point { x: m(0.0), y: m(0.2) }, m(0.3));
    assert_eq!(lifted(&up), [false, false, true, true]);
}
