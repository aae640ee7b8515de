//! Dowels under a steel plate. EN 1995-1-1, 8.2.3 (from memory), by hand; and the least load of all mechanisms, searched
//! by brute force: a rigid pin that turns about any point of its depth, or one that bends at any depth.

use skinspan::{
    fastening::{Dowel, DowelMode, HingeRule, PlateGrip, backing_bearing, plastic_moment},
    units::{Force, Torque},
};
use uom::si::{force::newton, torque::newton_meter};

use crate::kit::{m, pressure, share, within};

/// 0.4 in the code, √2 − 1 by equilibrium.
const ROUNDED_COEFFICIENT: f64 = 0.036;
/// 2.3 in the code, 2 × 1.15 here.
const SAME_FORM: f64 = 1e-12;
/// Steps of 1/20 000 of the depth, at a minimum.
const BRUTE_FORCE: f64 = 1e-6;
/// Arithmetic by hand.
const FOUR_DIGITS: f64 = 1e-4;

const EQUILIBRIUM: f64 = 1.0;
const CODE: f64 = 1.15;

fn rule(factor: f64, rope: f64, limit: f64) -> HingeRule {
    HingeRule { factor: share(factor), rope: Force::new::<newton>(rope), rope_limit: share(limit) }
}

fn dowel(diameter: f64, depth: f64, embedding: f64, moment: f64) -> Dowel {
    Dowel {
        diameter: m(diameter),
        depth: m(depth),
        embedding: pressure(embedding),
        plastic_moment: Torque::new::<newton_meter>(moment),
    }
}

#[test]
fn dowels_en_1995_1_1_8_2_3_by_hand() {
    // d = 6 mm, f_h = 12 MPa, M_y = 16 N·m: f_h d = 72 N/mm.
    let (short, long) = (dowel(0.006, 0.020, 12e6, 16.0), dowel(0.006, 0.100, 12e6, 16.0));
    let thin = backing_bearing(&short, PlateGrip::Thin, rule(CODE, 0.0, 0.0));
    within(thin.force.value, 0.4 * 12.0 * 20.0 * 6.0, ROUNDED_COEFFICIENT);
    assert_eq!(thin.mode, DowelMode::Turned);
    let thin = backing_bearing(&long, PlateGrip::Thin, rule(CODE, 100.0, 0.25));
    within(thin.force.value, 1.15 * (2.0f64 * 16e3 * 72.0).sqrt() + 100.0, SAME_FORM);
    assert_eq!(thin.mode, DowelMode::Bent);
    // Withdrawal adds no more than its limit.
    let thin = backing_bearing(&long, PlateGrip::Thin, rule(CODE, 1000.0, 0.25));
    within(thin.force.value, 1.25 * 1.15 * (2.0f64 * 16e3 * 72.0).sqrt(), SAME_FORM);

    let thick = |t: f64, r| backing_bearing(&dowel(0.006, t, 12e6, 16.0), PlateGrip::Thick, r);
    let pushed = thick(0.020, rule(CODE, 0.0, 0.0));
    within(pushed.force.value, 72.0 * 20.0, SAME_FORM);
    assert_eq!(pushed.mode, DowelMode::Pushed);
    let turned = thick(0.035, rule(CODE, 0.0, 0.0));
    // 72 × 35 [√(2 + 4 × 16 000/(72 × 35²)) − 1] = 2520 × 0.650946
    within(turned.force.value, 2520.0 * 0.650_946, FOUR_DIGITS);
    assert_eq!(turned.mode, DowelMode::TurnedAndBent);
    let turned = thick(0.035, rule(CODE, 50.0, 1.0));
    within(turned.force.value, 2520.0 * 0.650_946 + 50.0, FOUR_DIGITS);
    let twice = thick(0.100, rule(CODE, 0.0, 0.0));
    within(twice.force.value, 2.3 * (16e3f64 * 72.0).sqrt(), SAME_FORM);
    assert_eq!(twice.mode, DowelMode::BentTwice);
    let twice = thick(0.100, rule(CODE, 200.0, 1.0));
    within(twice.force.value, 2.3 * (16e3f64 * 72.0).sqrt() + 200.0, SAME_FORM);
}

/// Work of bearing and hinges over the travel of the plate, least over where the pin turns or bends.
fn least_mechanism(line: f64, depth: f64, moment: f64, grip: PlateGrip) -> f64 {
    const STEPS: u32 = 20_000;
    let at_plate = if grip == PlateGrip::Thick { moment } else { 0.0 };
    let pushed = if grip == PlateGrip::Thick { line * depth } else { f64::INFINITY };
    (1..=STEPS)
        .map(|i| depth * f64::from(i) / f64::from(STEPS))
        .map(|x| {
            let turned = line * (x * x + (depth - x).powi(2)) / (2.0 * x) + at_plate / x;
            let bent = line * x / 2.0 + (moment + at_plate) / x;
            turned.min(bent)
        })
        .fold(pushed, f64::min)
}

#[test]
fn dowels_are_the_least_mechanism() {
    for grip in [PlateGrip::Thin, PlateGrip::Thick] {
        for depth in [0.010, 0.020, 0.030, 0.035, 0.050, 0.100] {
            for moment in [4.0, 16.0, 40.0] {
                let force =
                    backing_bearing(&dowel(0.006, depth, 12e6, moment), grip, rule(EQUILIBRIUM, 0.0, 0.0)).force;
                within(force.value, least_mechanism(72e3, depth, moment, grip), BRUTE_FORCE);
            }
        }
    }
}

#[test]
fn plastic_moment_is_the_first_moment_of_the_circle() {
    // ∫ |y| dA in slices
    const SLICES: u32 = 20_000;
    let radius = 0.0024f64;
    let step = 2.0 * radius / f64::from(SLICES);
    let moment: f64 = (0..SLICES)
        .map(|i| -radius + step * (f64::from(i) + 0.5))
        .map(|y| y.abs() * 2.0 * (radius * radius - y * y).sqrt() * step)
        .sum();
    within(plastic_moment(pressure(450e6), m(2.0 * radius)).value, 450e6 * moment, BRUTE_FORCE);
}
