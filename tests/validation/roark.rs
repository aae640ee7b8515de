//! Roark's *Formulas for Stress and Strain*, table 11.4: thin simply supported rectangular plates, ν = 0.3.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::{
    closed_form::plate::{Plate, PlateLoad, PlateStiffness},
    units::Force,
};
use uom::si::force::newton;

use crate::kit::{force, m, pressure, rigidity, share, within};

/// The table prints three or four digits; its worst entry, 0.0616, is 0.5 % off the series.
const PRINTED_DEFLECTION: f64 = 5e-3;
/// Four printed digits, the last one not always right.
const PRINTED_STRESS: f64 = 1e-3;
/// Four printed digits, rounded from an older series.
const PRINTED_POINT: f64 = 2e-3;

/// `D` = 1, short side `b` = 1 along `x`, so thin that shear does not count.
fn thin(ratio: f64) -> Plate {
    Plate::new(m(1.0), m(ratio), PlateStiffness::isotropic(rigidity(1.0), share(0.3), force(1e9))).unwrap()
}

/// `w = α q b⁴/(E t³)` with `D = E t³/(12·0.91)`, and `σ = β q b²/t²` with `σ = 6 M/t²`.
#[test]
fn deflection_and_stress_roark_11_4_1a() {
    let rows = [
        (1.0, 0.0444, 0.2874),
        (1.2, 0.0616, 0.3762),
        (1.4, 0.0770, 0.4530),
        (1.6, 0.0906, 0.5172),
        (1.8, 0.1017, 0.5688),
        (2.0, 0.1110, 0.6102),
        (3.0, 0.1335, 0.7134),
        (4.0, 0.1400, 0.7410),
        (5.0, 0.1417, 0.7476),
    ];
    for (ratio, alpha, beta) in rows {
        let load = PlateLoad::Uniform(pressure(1.0));
        let p = thin(ratio).at(&load, [m(0.5), m(ratio / 2.0)], share(1e-4)).unwrap();
        within(12.0 * 0.91 * p.deflection.value, alpha, PRINTED_DEFLECTION);
        within(6.0 * p.mx.value, beta, PRINTED_STRESS);
    }
}

/// The row for an infinite plate is the strip: 0.1421 = 10.92·5/384, 0.75 = 6/8. At b/a = 20 the ends are felt no more.
#[test]
fn deflection_and_stress_roark_11_4_1a_infinite() {
    let load = PlateLoad::Uniform(pressure(1.0));
    let p = thin(20.0).at(&load, [m(0.5), m(10.0)], share(1e-5)).unwrap();
    within(p.deflection.value, 5.0 / 384.0, 1e-5);
    within(p.mx.value, 0.125, 2e-5);
}

/// `w = α W b²/(E t³)`, load on a small circle at the centre.
#[test]
fn deflection_roark_11_4_1b() {
    let rows = [(1.0, 0.1267), (1.2, 0.1478), (1.4, 0.1621), (1.6, 0.1715), (1.8, 0.1770), (2.0, 0.1805)];
    for (ratio, alpha) in rows {
        let centre = [m(0.5), m(ratio / 2.0)];
        let load = PlateLoad::Patch { force: Force::new::<newton>(1.0), centre, size: [m(0.01), m(0.01)] };
        // Only the deflection is looked at; moments under so small a patch need more terms than it does.
        let p = thin(ratio).at(&load, centre, share(0.05)).unwrap();
        assert!(p.numerical_error.deflection.value < 1e-4);
        within(12.0 * 0.91 * p.deflection.value, alpha, PRINTED_POINT);
    }
}
