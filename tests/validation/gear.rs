//! Loads on gear against sums by hand and motions taken apart.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::{
    load::{
        gear::roll_acceleration,
        wind::{gear_drag, velocity_pressure},
    },
    units::{Angle, Area, MassDensity, Time, Velocity},
};
use uom::si::{
    angle::radian,
    area::square_meter,
    force::newton,
    mass_density::kilogram_per_cubic_meter,
    pressure::pascal,
    time::second,
    velocity::{knot, mile_per_hour},
};

use crate::kit::{m, share, within};

const EXACT: f64 = 1e-12;
/// Numbers of four digits.
const FOUR_DIGITS: f64 = 5e-4;
/// Second differences of a sine over a thousandth of a second lose this to rounding and to the next term.
const DIFFERENCES: f64 = 1e-6;

/// 100 kn is 51.444 m/s: ½ × 1.225 × 51.444² = 1621 Pa, 33.86 psf.
#[test]
fn pressure_of_a_hundred_knots() {
    let air = MassDensity::new::<kilogram_per_cubic_meter>(1.225);
    let q = velocity_pressure(Velocity::new::<knot>(100.0), air);
    within(q.get::<pascal>(), 1621.0, FOUR_DIGITS);
    within(gear_drag(q, share(1.0), Area::new::<square_meter>(1.0)).get::<newton>(), q.get::<pascal>(), EXACT);
}

/// A whip 2.44 m long and 22 mm thick in 70 mph: 599.9 Pa × 1.2 × 0.05368 m² = 38.64 N, at half its length 47.14 N·m;
/// the same from a hundred pieces of it.
#[test]
fn whip_is_the_sum_of_its_pieces() {
    let (length, diameter) = (m(2.44), m(0.022));
    let air = MassDensity::new::<kilogram_per_cubic_meter>(1.225);
    let q = velocity_pressure(Velocity::new::<mile_per_hour>(70.0), air);
    let drag = gear_drag(q, share(1.2), length * diameter);
    within(drag.get::<newton>(), 38.64, FOUR_DIGITS);
    within((drag * length / 2.0).value, 47.14, FOUR_DIGITS);
    let pieces = 100_u32;
    let piece = length / f64::from(pieces);
    let moment: f64 =
        (0..pieces).map(|i| (gear_drag(q, share(1.2), diameter * piece) * (piece * (f64::from(i) + 0.5))).value).sum();
    within((drag * length / 2.0).value, moment, EXACT);
}

/// The acceleration along the deck is that of the swing, by differences of the angle in time, and the weight along it.
#[test]
fn roll_taken_apart() {
    let (most, period, height): (f64, f64, f64) = (0.4363, 3.6, 2.2);
    let angle = |t: f64| most * (2.0 * std::f64::consts::PI * t / period).sin();
    let (end, dt) = (period / 4.0, 1e-3);
    let swing = -(angle(end + dt) - 2.0 * angle(end) + angle(end - dt)) / (dt * dt) * height / 9.80665;
    let found = roll_acceleration(Angle::new::<radian>(most), Time::new::<second>(period), m(height)).unwrap();
    within(found.value, most.sin() + swing, DIFFERENCES);
    // On the axis there is the lean alone.
    let still = roll_acceleration(Angle::new::<radian>(most), Time::new::<second>(period), m(0.0)).unwrap();
    within(still.value, most.sin(), EXACT);
    assert_eq!(roll_acceleration(Angle::new::<radian>(most), Time::new::<second>(-1.0), m(1.0)), None);
    assert_eq!(roll_acceleration(Angle::new::<radian>(most), Time::new::<second>(f64::NAN), m(1.0)), None);
}
