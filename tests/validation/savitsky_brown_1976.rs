//! Savitsky and Brown, *Procedures for Hydrodynamic Evaluation of Planing Hulls in Smooth and Rough Water*, 1976.

use std::num::NonZeroU32;

use approx::assert_relative_eq;
use skinspan::load::slam::{HeadSea, PlaningBoat, mean_acceleration, peak_mean};
use uom::si::{
    angle::degree,
    f64::{Angle, Length, Mass, MassDensity, Ratio, Velocity},
    length::meter,
    mass::kilogram,
    mass_density::kilogram_per_cubic_meter,
    ratio::ratio,
    velocity::meter_per_second,
};

/// Arithmetic only.
const EXACT: f64 = 1e-12;
/// Our own longhand evaluation, kept to four digits.
const FOUR_DIGITS: f64 = 5e-4;
/// The multipliers are printed with two decimals.
const TWO_DECIMALS: f64 = 0.0051;

fn feet(x: f64) -> Length {
    Length::new::<meter>(0.3048 * x)
}

fn knots(x: f64) -> Velocity {
    Velocity::new::<meter_per_second>(x * 1852.0 / 3600.0)
}

/// Sea water of the paper, 64 lb/ft³.
fn sea(height_ft: f64) -> HeadSea {
    let density = MassDensity::new::<kilogram_per_cubic_meter>(64.0 * 0.45359237 / 0.3048_f64.powi(3));
    HeadSea { significant_height: feet(height_ft), density }
}

/// Patrol boat, the input of the paper's example: 80 ft, 186 007 lb, 25.41 kn. Its trim is a result there, so the
/// accelerations here are a longhand evaluation of the formula at three trims and not the paper's own: at 4°
/// 0.0104 × 0.275667 × 1.166667 × 8.0708 × 3.33333 / 0.21024 = 0.4280, and × (1 + 3.8 × 1.083333 / 2.84092) = 1.0482.
fn patrol_boat(trim: f64) -> PlaningBoat {
    PlaningBoat {
        length: feet(80.0),
        beam: feet(24.0),
        deadrise: Angle::new::<degree>(15.0),
        displacement: Mass::new::<kilogram>(186_007.0 * 0.45359237),
        speed: knots(25.41),
        trim: Angle::new::<degree>(trim),
    }
}

#[test]
fn mean_acceleration_savitsky_brown_1976_patrol_boat() {
    for (trim, at_cg, at_bow) in [(2.0, 0.2140, 0.5241), (3.0, 0.3210, 0.7862), (4.0, 0.4280, 1.0482)] {
        let slam = mean_acceleration(&patrol_boat(trim), &sea(4.6));
        assert_relative_eq!(slam.at_cg.get::<ratio>(), at_cg, max_relative = FOUR_DIGITS);
        assert_relative_eq!(slam.at_bow.get::<ratio>(), at_bow, max_relative = FOUR_DIGITS);
    }
}

#[test]
fn bounds_savitsky_brown_1976_patrol_boat_in_a_low_sea() {
    // H_s/b = 4.6/24 = 0.192 lies below 0.2, and 83 long tons / 0.8³ = 162 lies inside; trim 3° is a bound itself.
    let slam = mean_acceleration(&patrol_boat(3.0), &sea(4.6));
    assert_eq!(slam.outside.len(), 1, "{:?}", slam.outside);
    assert!(slam.outside[0].quantity.contains("H_s/b"));
    assert!(mean_acceleration(&patrol_boat(3.0), &sea(4.81)).outside.is_empty());
}

#[test]
fn mean_acceleration_savitsky_brown_1976_small_boat_extrapolated() {
    let boat = PlaningBoat {
        length: feet(23.0),
        beam: feet(7.5),
        deadrise: Angle::new::<degree>(20.0),
        displacement: Mass::new::<kilogram>(7000.0 * 0.45359237),
        speed: knots(28.0),
        trim: Angle::new::<degree>(4.0),
    };
    let slam = mean_acceleration(&boat, &sea(2.0));
    // 0.0104 × (2/7.5 + 0.084) × 1 × 1 × 28²/23 × (23/7.5) / (7000/27000)
    let longhand = 0.0104 * (2.0 / 7.5 + 0.084) * (784.0 / 23.0) * (23.0 / 7.5) / (7000.0 / 27000.0);
    assert_relative_eq!(slam.at_cg.get::<ratio>(), longhand, max_relative = EXACT);
    assert_relative_eq!(longhand, 1.47, max_relative = 2e-3); // hand calculator, three digits
    // 3.125 long tons / 0.23³ = 257 lies above 250
    let names: Vec<_> = slam.outside.iter().map(|bound| bound.quantity).collect();
    assert_eq!(names, ["displacement-length ratio Δ/(0.01 L)³"]);
}

#[test]
fn mean_acceleration_vanishes_with_speed_and_does_not_with_waves() {
    let mut boat = patrol_boat(4.0);
    let flat = mean_acceleration(&boat, &sea(0.0)).at_cg.get::<ratio>();
    let high = mean_acceleration(&boat, &sea(4.6)).at_cg.get::<ratio>();
    assert_relative_eq!(flat / high, 0.084 / (4.6 / 24.0 + 0.084), max_relative = EXACT);
    boat.speed = knots(0.0);
    assert!(mean_acceleration(&boat, &sea(4.6)).at_cg.get::<ratio>().abs() < f64::EPSILON);
}

#[test]
fn peak_mean_savitsky_brown_1976_multipliers() {
    for (one_in, multiplier) in [(3, 2.10), (10, 3.30), (100, 5.61)] {
        let n = NonZeroU32::new(one_in).map(|n| peak_mean(Ratio::new::<ratio>(1.0), n).get::<ratio>());
        assert!(n.is_some_and(|n| (n - multiplier).abs() < TWO_DECIMALS), "1/{one_in}: {n:?}");
    }
}

#[test]
fn peak_mean_of_all_peaks_is_the_mean() {
    assert_eq!(peak_mean(Ratio::new::<ratio>(1.7), NonZeroU32::MIN), Ratio::new::<ratio>(1.7));
}

#[test]
fn peak_mean_is_that_of_an_exponential_distribution() {
    // Mean of the largest tenth of 10 000 equally likely quantiles of −ln(1 − u).
    let (samples, tenth) = (100_000_u32, 10_000_u32);
    let quantile = |i: u32| -((f64::from(i) + 0.5) / f64::from(samples)).ln();
    let mean = (0..tenth).map(quantile).sum::<f64>() / f64::from(tenth);
    let n = NonZeroU32::new(10).map(|n| peak_mean(Ratio::new::<ratio>(1.0), n).get::<ratio>());
    // Midpoint rule on a logarithm: error of the order ln 2 / 2 samples.
    assert!(n.is_some_and(|n| (n - mean).abs() < 1e-4), "{n:?} against {mean}");
}
