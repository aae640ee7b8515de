//! ISO 898-1, tables of proof and ultimate tensile loads of class 8.8, coarse threads M5 to M12, from the rows of the
//! threads and of the grade. The numbers of M5 to M10 are quoted at second hand, those of M12 are remembered.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::material::{MaterialTable, Thread};
use uom::si::{length::millimeter, pressure::megapascal};

use super::kit::within;

/// Areas are printed with three digits; loads are cut, not rounded, to three digits: 11.67 is printed as 11.6.
const DIGITS_AREA: f64 = 0.0025;
const DIGITS_LOAD: f64 = 0.0065;
/// Arithmetic only.
const EXACT: f64 = 1e-12;

/// Thread; stress area, mm²; ultimate and proof load of class 8.8, kN.
const LOADS: [(&str, f64, f64, f64); 5] = [
    ("m5", 14.2, 11.35, 8.23),
    ("m6", 20.1, 16.1, 11.6),
    ("m8", 36.6, 29.2, 21.2),
    ("m10", 58.0, 46.4, 33.7),
    ("m12", 84.3, 67.4, 48.9),
];

/// `A_s = π/4·((d₂ + d₃)/2)²`, `d₂ = d − 0.6495·p`, `d₃ = d − 1.2269·p`, in mm².
fn stress_area(thread: &Thread) -> f64 {
    let (d, p) = (thread.major.value.get::<millimeter>(), thread.pitch.value.get::<millimeter>());
    std::f64::consts::FRAC_PI_4 * (f64::midpoint(d - 0.6495 * p, d - 1.2269 * p)).powi(2)
}

#[test]
fn stress_areas_and_loads_of_class_8_8_iso_898_1() {
    let table = MaterialTable::built_in().unwrap();
    let grade = table.fastener("steel-8-8").unwrap();
    let (proof, ultimate) =
        (grade.proof_stress.value.get::<megapascal>(), grade.ultimate_stress.value.get::<megapascal>());
    for (id, area, ultimate_load, proof_load) in LOADS {
        let computed = stress_area(table.thread(id).unwrap());
        within(computed, area, DIGITS_AREA);
        within(computed * ultimate / 1e3, ultimate_load, DIGITS_LOAD);
        within(computed * proof / 1e3, proof_load, DIGITS_LOAD);
    }
}

/// The same area from the height of the sharp triangle: `d₂ = d − 3/4·H`, `d₃ = d − 17/12·H`, `H = √3/2·p`.
#[test]
fn stress_area_from_the_sharp_triangle() {
    let table = MaterialTable::built_in().unwrap();
    for (id, ..) in LOADS {
        let thread = table.thread(id).unwrap();
        let (d, p) = (thread.major.value.get::<millimeter>(), thread.pitch.value.get::<millimeter>());
        let h = 0.75_f64.sqrt() * p;
        let exact = std::f64::consts::FRAC_PI_4 * (d - f64::midpoint(3.0 / 4.0, 17.0 / 12.0) * h).powi(2);
        // The coefficients of the standard have four digits.
        within(stress_area(thread), exact, 2e-5);
        within((d - 13.0 / 12.0 * h).powi(2) * std::f64::consts::FRAC_PI_4, exact, EXACT);
    }
}
