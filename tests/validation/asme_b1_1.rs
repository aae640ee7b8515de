//! ASME B1.1: stress areas of unified threads, and the limits of size of classes 2A and 2B from the formulas of their
//! tolerances. The areas are quoted at second hand, those of 1/4-28 and 1/2-13 remembered; the formulas and the limits of
//! 1/4-20 were read at second hand.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::{
    material::{MaterialTable, Thread},
    units::Length,
};
use uom::si::length::inch;

use super::kit::within;

/// Areas are printed with four decimals of a square inch.
const DIGITS: f64 = 0.0025;
/// Limits of pitch and major diameter are rounded to 0.0001 in, twice: the tolerance, and the limit.
const ROUNDING: f64 = 0.00011;
/// Minor diameters are rounded to 0.001 in; those of number sizes stand in a list and come within this.
const ROUNDING_MINOR: f64 = 0.0011;

/// Thread; threads to the inch; stress area, square inches.
const AREAS: [(&str, f64, f64); 8] = [
    ("8-32-unc", 32.0, 0.0140),
    ("10-24-unc", 24.0, 0.0175),
    ("10-32-unf", 32.0, 0.0200),
    ("1-4-20-unc", 20.0, 0.0318),
    ("1-4-28-unf", 28.0, 0.0364),
    ("5-16-18-unc", 18.0, 0.0524),
    ("3-8-16-unc", 16.0, 0.0775),
    ("1-2-13-unc", 13.0, 0.1419),
];

fn inches(length: Length) -> f64 {
    length.get::<inch>()
}

fn threads(check: impl Fn(&Thread, f64, f64)) {
    let table = MaterialTable::built_in().unwrap();
    for (id, n, area) in AREAS {
        check(table.thread(id).unwrap(), n, area);
    }
}

/// `A_t = π/4·(d − 0.9743/n)²`.
#[test]
fn stress_areas_asme_b1_1() {
    threads(|thread, n, area| {
        let d = inches(thread.major.value);
        within(std::f64::consts::FRAC_PI_4 * (d - 0.9743 / n).powi(2), area, DIGITS);
        within(inches(thread.pitch.value), 1.0 / n, 1e-12);
    });
}

/// Tolerance of the pitch diameter `T = 0.0015·(∛D + √D + 10·∛p²)` for class 2A, allowance `0.3·T`, class 2B
/// `1.3·T`; tolerance of the major diameter `0.060·∛p²`.
#[test]
fn limits_of_classes_2a_and_2b_asme_b1_1() {
    threads(|thread, n, _| {
        let (d, p) = (inches(thread.major.value), 1.0 / n);
        let basic = d - 3.0 / 8.0 * 3.0_f64.sqrt() * p;
        let tolerance = 0.0015 * (d.cbrt() + d.sqrt() + 10.0 * p.powi(2).cbrt());
        let allowance = 0.3 * tolerance;
        for (limit, expected) in [
            (&thread.pitch_diameter_max_internal, basic + 1.3 * tolerance),
            (&thread.pitch_diameter_min_external, basic - allowance - tolerance),
            (&thread.major_min_external, d - allowance - 0.060 * p.powi(2).cbrt()),
        ] {
            let limit = inches(limit.value);
            assert!((limit - expected).abs() <= ROUNDING, "{}: {limit} is not {expected}", thread.id);
        }
    });
}

/// From 1/4 in: smallest minor diameter `D − 1.0825·p`, tolerance `0.25·p − 0.4·p²`.
#[test]
fn minor_diameters_of_class_2b_asme_b1_1() {
    threads(|thread, n, _| {
        let (d, p) = (inches(thread.major.value), 1.0 / n);
        if d < 0.25 {
            return;
        }
        let expected = d - 5.0 / 8.0 * 3.0_f64.sqrt() * p + 0.25 * p - 0.4 * p * p;
        let limit = inches(thread.minor_max_internal.value);
        assert!((limit - expected).abs() <= ROUNDING_MINOR, "{}: {limit} is not {expected}", thread.id);
    });
}
