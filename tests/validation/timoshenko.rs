//! Timoshenko and Woinowsky-Krieger, *Theory of Plates and Shells*: thin plates, ν = 0.3 (from memory).
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::closed_form::plate::{EdgeHold, HalfWaves, Plate, PlateLoad, PlateStiffness, clamped_plate_uniform};

use crate::kit::{force, m, pressure, rigidity, share, within};

/// Three printed digits: half of the last one of 0.338, and 0.1 % of the series.
const PRINTED_SHEAR: f64 = 2.5e-3;
/// Truncation of the slow series of the edge shear.
const SERIES: f64 = 1e-3;
/// Three printed digits of 0.00126.
const PRINTED_CLAMPED: f64 = 4.3e-3;
/// Printed .0231, the series gives .022905.
const PRINTED_CENTRE: f64 = 9e-3;
/// Eight digits of a converged series; the shear left in the plate is D/(S a²) = 1e-9.
const CONVERGED: f64 = 5e-5;

/// The shear stiffness is 1e9 times the bending stiffness, so the equations lose as many digits.
const ROUNDING: f64 = 1e-7;

fn thin(ratio: f64) -> Plate {
    Plate::new(m(1.0), m(ratio), PlateStiffness::isotropic(rigidity(1.0), share(0.3), force(1e9))).unwrap()
}

/// `Qx` at the middle of the long edge, in `q a`, `a` the short side.
#[test]
fn edge_shear_timoshenko_table_8() {
    let rows = [(1.0, 0.338), (1.2, 0.380), (1.5, 0.424), (2.0, 0.465), (3.0, 0.493), (4.0, 0.498)];
    for (ratio, expected) in rows {
        let (shear, error) = thin(ratio).edge_shear(&PlateLoad::Uniform(pressure(1.0)), share(SERIES)).unwrap();
        assert!(error.value <= SERIES);
        within(shear.value, expected, PRINTED_SHEAR);
    }
}

/// Clamped, uniform pressure: `w D/(q a⁴)` at the centre and `M/(q a²)` at the middle of the long edge.
#[test]
fn clamped_timoshenko_table_35() {
    let rows = [
        (1.0, 0.00126, -0.0513, 0.0012653),
        (1.2, 0.00172, -0.0639, 0.0017249),
        (1.5, 0.00220, -0.0757, 0.0021965),
        (2.0, 0.00254, -0.0829, 0.0025330),
    ];
    for (ratio, w, edge, converged) in rows {
        let c = clamped_plate_uniform(&thin(ratio), pressure(1.0)).unwrap();
        within(c.deflection.value, w, PRINTED_CLAMPED);
        within(c.edge_x.value, edge, PRINTED_CLAMPED);
        within(c.deflection.value, converged, CONVERGED);
        assert!(c.numerical_error.value < 5e-3, "{:?}", c.numerical_error);
    }
    let square = clamped_plate_uniform(&thin(1.0), pressure(1.0)).unwrap();
    within(square.centre_x.value, 0.0231, PRINTED_CENTRE);
    within(square.centre_x.value, 0.022905, 1e-4);
    // A square has no preferred direction.
    within(square.centre_y.value, square.centre_x.value, ROUNDING);
    within(square.edge_y.value, square.edge_x.value, ROUNDING);
}

/// A clamped plate five times as long as wide is a clamped strip: `q L⁴/(384 D) + q L²/(8 S)`, `M = −q L²/12`, `q L²/24`.
#[test]
fn clamped_strip_limit() {
    let s = 30.0;
    let plate = Plate::new(m(1.0), m(5.0), PlateStiffness::isotropic(rigidity(1.0), share(0.3), force(s))).unwrap();
    let c = clamped_plate_uniform(&plate, pressure(1.0)).unwrap();
    within(c.deflection.value, 1.0 / 384.0 + 0.125 / s, 2e-3);
    within(c.edge_x.value, -1.0 / 12.0, 2e-3);
    within(c.centre_x.value, 1.0 / 24.0, 5e-3);
}

/// Two printed digits of 0.084.
const PRINTED_HELD: f64 = 6e-3;
/// Truncation of the alternating series along the edge.
const HELD_SERIES: f64 = 1e-3;

fn over_edge(plate: &Plate, hold: EdgeHold, terms: [usize; 2], load: &PlateLoad) -> [[f64; 2]; 2] {
    let series = plate.series(terms, HalfWaves::All);
    let held = series.held([hold; 2]).at(load).unwrap();
    held.map(|edge| [edge.hogging.value, edge.added_shear.value])
}

/// One edge clamped, three simply supported, square: `M/(q a²)` at the middle of the clamped edge.
#[test]
fn held_edge_timoshenko_one_edge_built_in() {
    let [[x, _], [y, _]] = over_edge(&thin(1.0), EdgeHold::Clamped, [32, 32], &PlateLoad::Uniform(pressure(1.0)));
    within(x, 0.084, PRINTED_HELD);
    within(y, x, ROUNDING);
}

/// A strip with shear, held at one end: `M = q L²/8/(1 + 3 D/(S L²))`, and the shear grows by `M/L`. With a third of
/// the length between pipe and a band of load: `P x (L − x)(2L − x)/(2 L²)` over the same.
#[test]
fn held_strip_limit() {
    for s in [12.0, 1e9] {
        let k = PlateStiffness::isotropic(rigidity(1.0), share(0.3), force(s));
        let plate = Plate::new(m(1.0), m(12.0), k).unwrap();
        let softer = 1.0 + 3.0 / s;
        let [[moment, shear], _] = over_edge(&plate, EdgeHold::Clamped, [48, 384], &PlateLoad::Uniform(pressure(1.0)));
        within(moment, 0.125 / softer, HELD_SERIES);
        within(shear, 0.125 / softer, 5.0 * HELD_SERIES);
        let band = PlateLoad::Patch {
            force: skinspan::units::Force::new::<uom::si::force::newton>(11.9),
            centre: [m(1.0 / 3.0), m(6.0)],
            size: [m(0.001), m(11.9)],
        };
        let [[moment, _], _] = over_edge(&plate, EdgeHold::Clamped, [48, 384], &band);
        let x = 1.0 / 3.0;
        within(moment, x * (1.0 - x) * (2.0 - x) / 2.0 / softer, HELD_SERIES);
    }
}

/// No overhang holds nothing, a wide one nearly clamps, and between them the moment grows with the width.
#[test]
fn held_by_overhang_limits() {
    let over = |hold| over_edge(&thin(1.3), hold, [32, 32], &PlateLoad::Uniform(pressure(1.0)))[0][0];
    let by = |width: f64| over(EdgeHold::Overhang(m(width)));
    assert!(by(0.0).abs() < ROUNDING);
    assert!(by(0.05) > 0.0 && by(0.05) < by(0.1) && by(0.1) < by(1.0));
    within(by(1e3), over(EdgeHold::Clamped), 1e-6);
    // A narrow strip holds in proportion to its width.
    within(by(2e-5), 2.0 * by(1e-5), 1e-3);
}

/// The turn is taken from the deflection a thousandth of the span from the edge.
const TURN: f64 = 1e-4;

/// With one wave along the edge the overhang and the turn of the edge are springs in series:
/// `1/M = 1/M_clamped + 1/(k θ)`, `k = 4 D66 c β² + D22 c³ β⁴/3`, `θ = w(h)/h` of the simply supported thin plate.
#[test]
fn held_by_overhang_is_a_spring_in_series() {
    let (b, h, d22, d66) = (1.3, 1e-3, 2.0, 0.1);
    let k = PlateStiffness {
        d22: rigidity(d22),
        d66: rigidity(d66),
        ..PlateStiffness::isotropic(rigidity(1.0), share(0.3), force(1e9))
    };
    let plate = Plate::new(m(1.0), m(b), k).unwrap();
    let load = PlateLoad::Uniform(pressure(1.0));
    // Two half waves at the most, and the even one left out: one.
    let series = plate.series([256, 2], HalfWaves::Odd);
    let turn = series.at(&load, [m(h), m(b / 2.0)]).unwrap().deflection.value / h;
    let over = |hold| series.held([hold; 2]).at(&load).unwrap()[0].hogging.value;
    let be = std::f64::consts::PI / b;
    // Twist alone, and mostly bending.
    for c in [0.01, 0.6] {
        let spring = 1.0 / (1.0 / over(EdgeHold::Overhang(m(c))) - 1.0 / over(EdgeHold::Clamped)) / turn;
        within(spring, 4.0 * d66 * c * be.powi(2) + d22 * f64::powi(c, 3) / 3.0 * be.powi(4), TURN);
    }
}

/// Thin or not, `Qx` in the middle of the edge of an isotropic plate is `Σ 4 q/(n π β) tanh(βa/2) sin(nπ/2)`, n odd; few
/// terms give it since the rest is taken as of a beam.
#[test]
fn edge_shear_is_exact_with_few_terms() {
    const FEW: f64 = 1e-3;
    for (b, s) in [(1.0, 1e9), (1.7, 20.0)] {
        let k = PlateStiffness::isotropic(rigidity(1.0), share(0.3), force(s));
        let series = Plate::new(m(1.0), m(b), k).unwrap().series([32, 64], HalfWaves::Odd);
        let middle = [m(0.0), m(b / 2.0)];
        let shear = series.at(&PlateLoad::Uniform(pressure(1.0)), middle).unwrap().qx.value;
        let due: f64 = (0..2000)
            .map(|i| {
                let n = f64::from(2 * i + 1) * std::f64::consts::PI;
                let sign = if i % 2 == 0 { 1.0 } else { -1.0 };
                sign * 4.0 * b / (n * n) * (n / b / 2.0).tanh()
            })
            .sum();
        within(shear, due, FEW);
    }
}
