//! Beam on elastic foundation. Boresi and Schmidt, *Advanced Mechanics of Materials*, 6th ed., chapter 10, example
//! 10.1: a rail under one wheel. Inputs and results were read in a public transcription of the example.

use approx::assert_relative_eq;
use skinspan::{
    strength::{SkinOnCore, StripLoad},
    units::{Force, Length, Pressure, Ratio, per_width},
};
use uom::si::{
    force::kilonewton,
    length::{meter, millimeter},
    pressure::{gigapascal, megapascal},
};

/// 5.04 mm: three digits.
const DEFLECTION_DIGITS: f64 = 0.001;
/// 51.21 kN·m: four digits.
const MOMENT_DIGITS: f64 = 0.0001;
// 137.54 MPa: five digits, of which the last rests on a rounded distance of 99.1 mm.
const STRESS_DIGITS: f64 = 0.0001;

// The rail as a strip 1 m wide: *E* = 200 GPa, *I* = 36.9 × 10⁶ mm⁴, *k* = 14.0 N/mm per mm, *P* = 170 kN.
fn rail() -> (SkinOnCore, StripLoad) {
    let width = Length::new::<meter>(1.0);
    let mm = Length::new::<millimeter>(1.0);
    let inertia = 36.9e6 * mm * mm * mm * mm;
    let skin = SkinOnCore {
        skin_rigidity: per_width(Pressure::new::<gigapascal>(200.0) * inertia / width),
        poisson: Ratio::from(0.3),
        foundation: Pressure::new::<megapascal>(14.0) / width,
    };
    (skin, StripLoad { force: per_width(Force::new::<kilonewton>(170.0) / width), seat_width: 0.0 * width })
}

#[test]
fn dent_boresi_schmidt_2003_example_10_1() {
    let (skin, wheel) = rail();
    assert_relative_eq!(wheel.dent(&skin).get::<millimeter>(), 5.04, max_relative = DEFLECTION_DIGITS);
}

#[test]
fn skin_moment_boresi_schmidt_2003_example_10_1() {
    let (skin, wheel) = rail();
    let moment = wheel.skin_moment(&skin).value; // N·m per m
    assert_relative_eq!(moment / 1e3, 51.21, max_relative = MOMENT_DIGITS);
    // M c/I with c = 99.1 mm
    assert_relative_eq!(moment * 0.0991 / 36.9e-6 / 1e6, 137.54, max_relative = STRESS_DIGITS);
}

#[test]
fn strip_load_balances_the_pressure_it_makes() {
    // A knife edge dents the bed by w₀ e^(−λx)(cos λx + sin λx), whose area is 2 w₀/λ.
    let (skin, wheel) = rail();
    let lambda = 1.0 / (std::f64::consts::SQRT_2 * skin.spread_length().value);
    let reaction = wheel.core_pressure(&skin).value * 2.0 / lambda;
    assert_relative_eq!(reaction, wheel.force.value, max_relative = 1e-14);
}
