//! Loads on gear against sums by hand and motions taken apart.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::{
    load::{
        gear::{Whip, grab_moment, in_turn, roll_acceleration},
        wind::{gear_drag, velocity_pressure},
    },
    units::{Angle, Area, Force, Mass, MassDensity, Time, Velocity},
};
use uom::si::{
    angle::radian,
    area::square_meter,
    force::newton,
    mass::kilogram,
    mass_density::kilogram_per_cubic_meter,
    pressure::pascal,
    time::second,
    torque::newton_meter,
    velocity::{knot, mile_per_hour},
};

use crate::kit::{m, pressure, share, within};

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

/// A whip of 2.44 m and 22 mm at 70 mph (31.293 m/s, 599.8 Pa): 38.64 N, 47.14 N·m; the moment is the sum over its
/// length of force times height.
#[test]
fn whip_is_the_sum_of_its_pieces() {
    let whip = Whip { length: m(2.44), diameter: m(0.022), mass: Mass::new::<kilogram>(1.4) };
    let air = MassDensity::new::<kilogram_per_cubic_meter>(1.225);
    let wind = whip.wind(velocity_pressure(Velocity::new::<mile_per_hour>(70.0), air), share(1.2));
    within(wind.force.get::<newton>(), 38.64, FOUR_DIGITS);
    within(wind.moment.get::<newton_meter>(), 47.14, FOUR_DIGITS);

    let (q, pieces) = (pressure(1000.0), 100_u32);
    let piece = whip.length / f64::from(pieces);
    let moment: f64 = (0..pieces)
        .map(|i| {
            let height = piece * (f64::from(i) + 0.5);
            (gear_drag(q, share(1.2), whip.diameter * piece) * height).value
        })
        .sum();
    within(whip.wind(q, share(1.2)).moment.get::<newton_meter>(), moment, EXACT);
    // 1.4 kg at 1.5 g, twice for its swing: 41.19 N at 1.22 m.
    let inertia = whip.inertia(share(1.5), share(2.0));
    within(inertia.force.get::<newton>(), 1.4 * 1.5 * 2.0 * 9.80665, EXACT);
    within(inertia.moment.get::<newton_meter>(), inertia.force.get::<newton>() * 1.22, EXACT);
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

/// No direction of the force turns the footing harder, and one does as hard.
#[test]
fn grab_is_the_worst_direction() {
    let (force, height, outward) = (1500.0_f64, 0.4, 0.3);
    let greatest = (0..360)
        .map(|i| {
            let (sin, cos) = f64::from(i).to_radians().sin_cos();
            (height * force * cos - outward * force * sin).abs()
        })
        .fold(0.0, f64::max);
    let found = grab_moment(Force::new::<newton>(force), m(height), m(outward)).get::<newton_meter>();
    assert!(greatest <= found * (1.0 + EXACT));
    // Steps of one degree miss the worst by half of one: 1 − cos ½°.
    within(found, greatest, 4e-5);
}

#[test]
fn each_peak_leads_in_turn() {
    let turns = in_turn([share(1.0), share(2.0), share(5.0)], share(0.4));
    let values = turns.map(|turn| turn.map(|n| n.value));
    assert_eq!(values, [[1.0, 0.8, 2.0], [0.4, 2.0, 2.0], [0.4, 0.8, 5.0]]);
}
