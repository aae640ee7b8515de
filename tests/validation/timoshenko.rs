//! Timoshenko and Woinowsky-Krieger, *Theory of Plates and Shells*: thin plates, ν = 0.3 (from memory).
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::closed_form::plate::{Plate, PlateLoad, PlateStiffness, clamped_plate_uniform};

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
