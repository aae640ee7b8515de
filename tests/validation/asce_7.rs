//! ASCE 7, *Minimum Design Loads for Buildings and Other Structures*: wind and rain.

use approx::assert_relative_eq;
use skinspan::load::{ponding::layer_pressure, wind::velocity_pressure};
use uom::si::{
    f64::{Length, MassDensity, Velocity},
    length::meter,
    mass_density::kilogram_per_cubic_meter,
    pressure::pascal,
    velocity::meter_per_second,
};

/// One pound-force per square foot, exactly.
const PSF: f64 = 0.45359237 * 9.80665 / (0.3048 * 0.3048);
/// One mile an hour, exactly.
const MPH: f64 = 0.44704;
/// One pound per cubic foot, exactly.
const PCF: f64 = 0.45359237 / (0.3048 * 0.3048 * 0.3048);

/// The factor of the velocity pressure is printed with three digits.
const THREE_DIGITS: f64 = 0.002;
/// Arithmetic only.
const EXACT: f64 = 1e-12;

#[test]
fn velocity_pressure_asce_7_factor_0_00256() {
    // 0.00256 psf per (mph)², for air of 0.0765 lb/ft³ (59 °F at sea level).
    let air = MassDensity::new::<kilogram_per_cubic_meter>(0.0765 * PCF);
    let q = velocity_pressure(Velocity::new::<meter_per_second>(MPH), air).get::<pascal>() / PSF;
    assert_relative_eq!(q, 0.00256, max_relative = THREE_DIGITS);
}

#[test]
fn velocity_pressure_grows_with_the_square() {
    let air = MassDensity::new::<kilogram_per_cubic_meter>(1.225);
    let q = |v: f64| velocity_pressure(Velocity::new::<meter_per_second>(v), air).get::<pascal>();
    assert_relative_eq!(q(60.0), 4.0 * q(30.0), max_relative = EXACT);
}

#[test]
fn water_asce_7_section_8_3_one_inch() {
    // 5.2 psf per inch of rain water (62.4 lb/ft³ / 12), printed with two digits.
    let water = MassDensity::new::<kilogram_per_cubic_meter>(1000.0);
    let inch = layer_pressure(water, Length::new::<meter>(0.0254)).get::<pascal>() / PSF;
    assert_relative_eq!(inch, 5.2, max_relative = THREE_DIGITS);
}
