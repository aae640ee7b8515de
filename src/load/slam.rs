//! Slamming of planing craft: vertical acceleration from the boat and the sea.

use std::num::NonZeroU32;

use uom::si::{angle::degree, length::meter, mass::kilogram, ratio::ratio, velocity::meter_per_second};

use crate::units::{Angle, Length, Mass, MassDensity, Ratio, Velocity};

/// A value that stands on a bound may leave it by the rounding of a unit conversion.
const ROUNDING: f64 = 1e-12;

/// A planing boat as the formula sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlaningBoat {
    /// Length between perpendiculars or at the waterline, *L*.
    pub length: Length,
    /// Mean beam at the chines, *b*.
    pub beam: Length,
    /// Deadrise amidships, *β*.
    pub deadrise: Angle,
    /// Displacement as run, *Δ*.
    pub displacement: Mass,
    /// Speed in the sea, *V*.
    pub speed: Velocity,
    /// Running trim, *τ*.
    pub trim: Angle,
}

/// The sea that the boat meets head on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeadSea {
    /// Mean of the highest third of the waves, crest to trough, *`H_s`*.
    pub significant_height: Length,
    /// Density of the water; sea water 1025 kg/m³.
    pub density: MassDensity,
}

/// A quantity that left the range of the tests behind the formula.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// What it is, with its symbol.
    pub quantity: &'static str,
    /// Its value; speed-length in kn/√ft, angles in degrees, slenderness in long tons per cubic foot.
    pub value: Ratio,
    /// Lower bound.
    pub low: Ratio,
    /// Upper bound.
    pub high: Ratio,
}

/// Mean peak accelerations, over gravity, and what speaks against them.
#[derive(Clone, Debug, PartialEq)]
pub struct Slam {
    /// Mean of the peaks at the centre of gravity.
    pub at_cg: Ratio,
    /// Mean of the peaks at the bow.
    pub at_bow: Ratio,
    /// Bounds that the boat or the sea lies outside of; empty inside the tests.
    pub outside: Vec<OutOfRange>,
}

/// Mean vertical acceleration of a planing boat in a head sea.
///
/// ```text
///   n_cg  = 0.0104 (H_s/b + 0.084) (τ/4) (5/3 − β/30) (V_k/√L)² (L/b) / C_Δ        C_Δ = Δ / (ρ b³)
///   n_bow = n_cg [ 1 + 3.8 (L/b − 2.25) / (V_k/√L) ]
/// ```
///
/// | symbol       | meaning                                        | field                |
/// |--------------|------------------------------------------------|----------------------|
/// | *`H_s`*      | significant wave height                        | `significant_height` |
/// | *b*, *L*     | chine beam, length                             | `beam`, `length`     |
/// | *τ*, *β*     | running trim, deadrise, both in degrees        | `trim`, `deadrise`   |
/// | *`V_k`*/√*L* | speed in knots over the root of length in feet | `speed`, `length`    |
/// | *`C_Δ`*      | load coefficient                               | `displacement`       |
///
/// # Validity
///
/// Fitted to tank tests of prismatic models in head seas: *Δ*/(0.01 *L*)³ 100 to 250 long tons per cubic foot, *L*/*b*
/// 3 to 5, *τ* 3° to 7°, *β* 10° to 30°, *`H_s`*/*b* 0.2 to 0.7, *`V_k`*/√*L* 2 to 6. What lies outside, or is not a
/// number, is listed in the result: short beamy boats at high speed, most boats with a hardtop, often are outside, and
/// then the value is an extrapolation.
///
/// # Source
///
/// [`SAVITSKY_BROWN_1976`](crate::source::SAVITSKY_BROWN_1976), formulas for impact acceleration and their range, p. 395
/// (formulas and all six bounds read in a published program that codes them with that page).
///
/// # Examples
///
/// ```
/// use skinspan::load::slam::{HeadSea, PlaningBoat, mean_acceleration};
/// use uom::si::{angle::degree, f64::*, length::meter, mass_density::kilogram_per_cubic_meter, ratio::ratio,
///     velocity::meter_per_second};
/// let feet = |x: f64| Length::new::<meter>(0.3048 * x);
/// let sea = HeadSea { significant_height: feet(4.16), density: MassDensity::new::<kilogram_per_cubic_meter>(1025.0) };
/// let boat = PlaningBoat {
///     length: feet(36.0),
///     beam: feet(10.0),
///     deadrise: Angle::new::<degree>(20.0),
///     displacement: 0.5 * sea.density * feet(10.0) * feet(10.0) * feet(10.0), // C_Δ = 0.5
///     speed: Velocity::new::<meter_per_second>(24.0 * 1852.0 / 3600.0),       // 24 kn: V_k/√L = 4
///     trim: Angle::new::<degree>(4.0),
/// };
/// let slam = mean_acceleration(&boat, &sea);
/// // 0.0104 × (0.416 + 0.084) × 1 × 1 × 16 × 3.6 / 0.5 = 0.59904; × (1 + 3.8 × 1.35 / 4) at the bow
/// assert!((slam.at_cg.get::<ratio>() - 0.59904).abs() < 1e-9);
/// assert!((slam.at_bow.get::<ratio>() - 1.3673088).abs() < 1e-9);
/// // 36 ft carries 32 000 lb here: heavier for its length than any tested boat
/// assert_eq!(slam.outside.len(), 1);
/// ```
#[must_use]
pub fn mean_acceleration(boat: &PlaningBoat, sea: &HeadSea) -> Slam {
    let length_ft = boat.length.get::<meter>() / 0.3048;
    let speed_length = boat.speed.get::<meter_per_second>() * 3600.0 / 1852.0 / length_ft.sqrt();
    let slenderness = (boat.length / boat.beam).get::<ratio>();
    let wave = (sea.significant_height / boat.beam).get::<ratio>();
    let trim = boat.trim.get::<degree>();
    let deadrise = boat.deadrise.get::<degree>();
    let load = boat.displacement / (sea.density * boat.beam * boat.beam * boat.beam);
    let long_tons = boat.displacement.get::<kilogram>() / (2240.0 * 0.45359237);

    let at_cg =
        0.0104 * (wave + 0.084) * (trim / 4.0) * (5.0 / 3.0 - deadrise / 30.0) * speed_length.powi(2) * slenderness
            / load.get::<ratio>();
    let at_bow = at_cg * (1.0 + 3.8 * (slenderness - 2.25) / speed_length);

    let ranges = [
        ("displacement-length ratio Δ/(0.01 L)³", long_tons / (0.01 * length_ft).powi(3), 100.0, 250.0),
        ("length over beam L/b", slenderness, 3.0, 5.0),
        ("running trim τ", trim, 3.0, 7.0),
        ("deadrise β", deadrise, 10.0, 30.0),
        ("wave height over beam H_s/b", wave, 0.2, 0.7),
        ("speed-length ratio V_k/√L", speed_length, 2.0, 6.0),
    ];
    let outside = ranges
        .into_iter()
        .filter(|(_, value, low, high)| !(low * (1.0 - ROUNDING)..=high * (1.0 + ROUNDING)).contains(value))
        .map(|(quantity, value, low, high)| OutOfRange {
            quantity,
            value: Ratio::new::<ratio>(value),
            low: Ratio::new::<ratio>(low),
            high: Ratio::new::<ratio>(high),
        })
        .collect();
    Slam { at_cg: Ratio::new::<ratio>(at_cg), at_bow: Ratio::new::<ratio>(at_bow), outside }
}

/// Mean of the highest 1/*N* of the peaks.
///
/// ```text
///   n_1/N = n (1 + ln N)
/// ```
///
/// | symbol | meaning                        | argument |
/// |--------|--------------------------------|----------|
/// | *n*    | mean of all peaks              | `mean`   |
/// | *N*    | 3 significant, 10, 100 extreme | `one_in` |
///
/// # Validity
///
/// Peaks that follow an exponential distribution, as those of planing boats were found to do.
///
/// # Source
///
/// [`SAVITSKY_BROWN_1976`](crate::source::SAVITSKY_BROWN_1976), statistics of impact accelerations (from memory; the
/// formula derived: the mean of an exponential variable above its 1 − 1/*N* quantile).
///
/// # Examples
///
/// ```
/// use skinspan::load::slam::peak_mean;
/// use std::num::NonZeroU32;
/// use uom::si::{f64::Ratio, ratio::ratio};
/// let ten = NonZeroU32::new(10).ok_or("not zero")?;
/// let n = peak_mean(Ratio::new::<ratio>(1.0), ten).get::<ratio>();
/// assert!((n - 3.3026).abs() < 1e-4); // 1 + 2.3026
/// # Ok::<(), &str>(())
/// ```
#[must_use]
pub fn peak_mean(mean: Ratio, one_in: NonZeroU32) -> Ratio {
    mean * (1.0 + f64::from(one_in.get()).ln())
}

/// Acceleration at a station between centre of gravity and bow.
///
/// ```text
///   n(ξ) = n_cg + ξ (n_bow − n_cg)        ξ = max(x / x_bow, 0)
/// ```
///
/// | symbol              | meaning                                         | argument          |
/// |---------------------|-------------------------------------------------|-------------------|
/// | *`n_cg`*, *`n_bow`* | accelerations at the two places, same statistic | `at_cg`, `at_bow` |
/// | *x*                 | distance ahead of the centre of gravity         | `ahead`           |
/// | *`x_bow`*           | distance of the bow ahead of it                 | `bow`             |
///
/// # Validity
///
/// A rigid boat heaving and pitching together. Behind the centre of gravity the value stays at *`n_cg`*, since stern
/// peaks come at other times.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): rigid body; the hold behind the centre of gravity is our assumption.
///
/// # Examples
///
/// ```
/// use skinspan::load::slam::at_station;
/// use uom::si::{f64::{Length, Ratio}, length::meter, ratio::ratio};
/// let (r, m) = (|x| Ratio::new::<ratio>(x), |x| Length::new::<meter>(x));
/// assert_eq!(at_station(r(3.0), r(5.0), m(1.0), m(4.0)), r(3.5));
/// ```
#[must_use]
pub fn at_station(at_cg: Ratio, at_bow: Ratio, ahead: Length, bow: Length) -> Ratio {
    let along = (ahead / bow).max(Ratio::new::<ratio>(0.0));
    at_cg + (at_bow - at_cg) * along
}

#[cfg(test)]
mod tests {
    use uom::si::mass_density::kilogram_per_cubic_meter;

    use super::*;

    /// A boat and a sea from the six quantities of the range, in the order of the source.
    fn run([long_tons, slenderness, trim, deadrise, wave, speed_length]: [f64; 6]) -> Slam {
        let length_ft = 36.0_f64;
        let foot = Length::new::<meter>(0.3048);
        let beam = foot * (length_ft / slenderness);
        let boat = PlaningBoat {
            length: foot * length_ft,
            beam,
            deadrise: Angle::new::<degree>(deadrise),
            displacement: Mass::new::<kilogram>(long_tons * (0.01 * length_ft).powi(3) * 2240.0 * 0.45359237),
            speed: Velocity::new::<meter_per_second>(speed_length * length_ft.sqrt() * 1852.0 / 3600.0),
            trim: Angle::new::<degree>(trim),
        };
        let density = MassDensity::new::<kilogram_per_cubic_meter>(1025.0);
        mean_acceleration(&boat, &HeadSea { significant_height: beam * wave, density })
    }

    const LOW: [f64; 6] = [100.0, 3.0, 3.0, 10.0, 0.2, 2.0];
    const HIGH: [f64; 6] = [250.0, 5.0, 7.0, 30.0, 0.7, 6.0];

    #[test]
    fn bounds_themselves_are_inside() {
        assert_eq!(run(LOW).outside, []);
        assert_eq!(run(HIGH).outside, []);
    }

    #[test]
    fn each_quantity_leaves_its_range_alone() {
        for place in 0..6 {
            for (edge, step) in [(LOW, 0.99), (HIGH, 1.01)] {
                let mut quantities = edge;
                quantities[place] *= step;
                let outside = run(quantities).outside;
                assert_eq!(outside.len(), 1, "{place}: {outside:?}");
                let bound = (outside[0].low.get::<ratio>(), outside[0].high.get::<ratio>());
                assert_eq!(bound, (LOW[place], HIGH[place]));
            }
        }
    }

    #[test]
    fn what_is_not_a_number_is_outside() {
        let mut quantities = LOW;
        quantities[4] = f64::NAN;
        assert_eq!(run(quantities).outside.len(), 1);
    }
}
