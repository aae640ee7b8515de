//! ABS, *Guide for Building and Classing Yachts*, 2021, Part 3: vertical acceleration of planing yachts.

use approx::assert_relative_eq;
use skinspan::load::slam::{HeadSea, PlaningBoat, mean_acceleration};
use uom::si::{
    angle::degree,
    f64::{Angle, Length, Mass, MassDensity, Velocity},
    length::meter,
    mass::kilogram,
    mass_density::kilogram_per_cubic_meter,
    ratio::ratio,
    velocity::meter_per_second,
};

/// The guide rounds 1/0.084 = 11.905 to 12: up to 0.8 % on a term, 0.2 % on its change over the range of waves.
const ROUNDED_CONSTANT: f64 = 0.002;

/// 3-2-2/3.3: *n* = 0.0078 (12 *h*/*B* + 1) *τ* (50 − *β*) *V*² *B*² / *Δ*, in metres, degrees, knots, kilograms.
fn guide(wave: f64, beam: f64, trim: f64, deadrise: f64, knots: f64, mass: f64) -> f64 {
    0.0078 * (12.0 * wave / beam + 1.0) * trim * (50.0 - deadrise) * knots.powi(2) * beam.powi(2) / mass
}

/// The guide's extreme acceleration is the mean one of the older formula times a constant: same powers of every
/// quantity, although one is written with length and load coefficient and the other without.
#[test]
fn mean_acceleration_abs_yachts_2021_3_2_2_3_3_form() {
    // length, beam, deadrise, mass, knots, trim, wave
    let boats = [
        (7.0, 2.3, 20.0, 3_200.0, 28.0, 4.0, 0.6),
        (24.0, 6.0, 15.0, 60_000.0, 30.0, 4.0, 3.0),
        (12.0, 3.5, 24.0, 9_000.0, 35.0, 5.5, 1.0),
        (10.0, 3.2, 12.0, 7_000.0, 22.0, 3.0, 2.1),
    ];
    let quotients = boats.map(|(length, beam, deadrise, mass, knots, trim, wave)| {
        let boat = PlaningBoat {
            length: Length::new::<meter>(length),
            beam: Length::new::<meter>(beam),
            deadrise: Angle::new::<degree>(deadrise),
            displacement: Mass::new::<kilogram>(mass),
            speed: Velocity::new::<meter_per_second>(knots * 1852.0 / 3600.0),
            trim: Angle::new::<degree>(trim),
        };
        let sea = HeadSea {
            significant_height: Length::new::<meter>(wave),
            density: MassDensity::new::<kilogram_per_cubic_meter>(1025.0),
        };
        guide(wave, beam, trim, deadrise, knots, mass) / mean_acceleration(&boat, &sea).at_cg.get::<ratio>()
    });
    for quotient in quotients {
        assert_relative_eq!(quotient, quotients[0], max_relative = ROUNDED_CONSTANT);
    }
    // 0.0078 / (0.0104 × 0.084 / 120 × 1025 × 0.3048) = 3.43: between the mean of the highest tenth, 3.30, and that of the
    // highest hundredth, 5.61, which is what the guide says it gives.
    assert!((3.30..5.61).contains(&quotients[0]), "{quotients:?}");
}
