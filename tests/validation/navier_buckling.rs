//! Buckling of a simply supported sandwich plate: the closed form against the zero of the determinant of the Navier
//! equations for deflection and two rotations, and against the two values that textbooks give for a long plate, 4/(1
//! + r)² and 1/r.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use nalgebra::Matrix3;
use skinspan::{
    closed_form::{
        columns::{engesser, euler},
        plate::{Plate, PlateBuckling, PlateStiffness},
    },
    units::{Force, Length, Ratio, per_width},
};
use uom::si::{force::newton, length::meter};

/// The determinant is linear in the load, but its terms cancel by up to five digits.
const LINEAR: f64 = 1e-9;

const NU: f64 = 0.3;

fn plate_buckling(d: f64, s: f64, a: f64, b: f64) -> PlateBuckling {
    let m = Length::new::<meter>(1.0);
    let (d, s) = (per_width(Force::new::<newton>(d) * m), per_width(Force::new::<newton>(s) / m));
    let stiffness = PlateStiffness::isotropic(d, Ratio::from(NU), s);
    Plate::new(a * m, b * m, stiffness).expect("a sound plate").buckling_along_x()
}

/// Load at which one wave shape has a vanishing determinant.
fn eigenvalue(d: f64, s: f64, al: f64, be: f64) -> f64 {
    let det = |n: f64| {
        let d66 = d * (1.0 - NU) / 2.0;
        let coupling = (d * NU + d66) * al * be;
        Matrix3::new(
            s * (al * al + be * be) - n * al * al,
            s * al,
            s * be,
            s * al,
            d * al * al + d66 * be * be + s,
            coupling,
            s * be,
            coupling,
            d66 * al * al + d * be * be + s,
        )
        .determinant()
    };
    det(0.0) / (det(0.0) - det(1.0))
}

#[test]
fn plate_buckling_is_the_least_navier_eigenvalue() {
    for (d, s, a, b) in [
        (3000.0, 620e3, 1.0, 1.0),
        (3000.0, 620e3, 3.3, 1.0),
        (3000.0, 60e3, 2.0, 1.2),
        (3000.0, 40e3, 0.5, 1.2),
        (3000.0, 21e3, 1.7, 1.2),
    ] {
        let least = (1..200).map(|m| eigenvalue(d, s, f64::from(m) * PI / a, PI / b)).fold(f64::INFINITY, f64::min);
        let buckling = plate_buckling(d, s, a, b);
        assert_relative_eq!(buckling.load.value, least, max_relative = LINEAR);
    }
}

#[test]
fn plate_buckling_long_plate_closed_form() {
    // Length a whole number of the best half waves, r = π²D/(b²S)
    for r in [0.01f64, 0.2, 0.5, 0.9] {
        let s = PI * PI / r;
        let best = ((1.0 - r) / (1.0 + r)).sqrt();
        let buckling = plate_buckling(1.0, s, 3.0 * best, 1.0);
        assert_relative_eq!(buckling.load.value, 4.0 * PI * PI / (1.0 + r).powi(2), max_relative = 1e-13);
        assert_eq!(buckling.half_waves, Some(3));
    }
}

#[test]
fn plate_buckling_weak_core_crimps() {
    for r in [1.0, 2.0, 10.0] {
        let buckling = plate_buckling(1.0, PI * PI / r, 2.0, 1.0);
        assert_relative_eq!(buckling.load.value, PI * PI / r);
        assert_eq!(buckling.half_waves, None);
    }
}

#[test]
fn plate_buckling_wide_plate_is_a_column() {
    let m = Length::new::<meter>(1.0);
    let column =
        engesser(euler(per_width(Force::new::<newton>(3000.0) * m), m), per_width(Force::new::<newton>(620e3) / m));
    assert_relative_eq!(plate_buckling(3000.0, 620e3, 1.0, 1e6).load.value, column.value, max_relative = 1e-10);
}
