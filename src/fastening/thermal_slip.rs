//! A foot that grows otherwise than the skin on which it is fixed.

use crate::units::{Force, Length, Ratio, TemperatureCoefficient, TemperatureInterval};

/// Free movement between a foot and the skin at a fixing: the play that a hole needs there.
///
/// ```text
///   s = |Δα ΔT| L
/// ```
///
/// | symbol | meaning                                                     | argument     |
/// |--------|-------------------------------------------------------------|--------------|
/// | *Δα*   | difference of the coefficients of thermal expansion         | `difference` |
/// | *ΔT*   | change of temperature since fixing                          | `change`     |
/// | *L*    | distance of the fixing from the one that holds              | `length`     |
///
/// # Validity
///
/// Foot and skin at one temperature.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): free expansion.
///
/// # Examples
///
/// 9.6 × 10⁻⁶ over 40 K and 600 mm: 0.23 mm.
///
/// ```
/// use skinspan::{fastening::thermal_slip, units::{Length, TemperatureCoefficient, TemperatureInterval}};
/// use uom::si::{length::millimeter, temperature_coefficient::per_kelvin, temperature_interval::kelvin};
/// let difference = TemperatureCoefficient::new::<per_kelvin>(9.6e-6);
/// let s = thermal_slip(difference, TemperatureInterval::new::<kelvin>(40.0), Length::new::<millimeter>(600.0));
/// assert!((s.get::<millimeter>() - 0.2304).abs() < 1e-9);
/// ```
#[must_use]
pub fn thermal_slip(difference: TemperatureCoefficient, change: TemperatureInterval, length: Length) -> Length {
    length * strain(difference, change)
}

/// Force on the outermost fixings of a row if nothing can slip.
///
/// ```text
///   F = |Δα ΔT|/(1/B₁ + 1/B₂)
/// ```
///
/// | symbol     | meaning                                                  | argument       |
/// |------------|----------------------------------------------------------|----------------|
/// | *Δα*, *ΔT* | as in [`thermal_slip`]                                   | `difference`, `change` |
/// | *B₁*       | modulus times section of the foot                        | `foot`         |
/// | *B₂*       | modulus times section of the skin that goes with it      | `skin`         |
///
/// # Validity
///
/// Upper bound: rigid fixings. Any play, and the give of the fixings, make it less.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equal length of both between the fixings.
///
/// # Examples
///
/// 3.84 × 10⁻⁴, foot 70 GPa × 300 mm² = 21 MN, skin 14 GPa × 300 mm² = 4.2 MN: 3.84 × 10⁻⁴ × 3.5 MN = 1344 N.
///
/// ```
/// use skinspan::{fastening::thermal_force, units::{Force, TemperatureCoefficient, TemperatureInterval}};
/// use uom::si::{force::{meganewton, newton}, temperature_coefficient::per_kelvin, temperature_interval::kelvin};
/// let (difference, change) =
///     (TemperatureCoefficient::new::<per_kelvin>(9.6e-6), TemperatureInterval::new::<kelvin>(-40.0));
/// let mn = Force::new::<meganewton>;
/// assert!((thermal_force(difference, change, mn(21.0), mn(4.2)).get::<newton>() - 1344.0).abs() < 1e-6);
/// ```
#[must_use]
pub fn thermal_force(
    difference: TemperatureCoefficient,
    change: TemperatureInterval,
    foot: Force,
    skin: Force,
) -> Force {
    strain(difference, change) / (1.0 / foot + 1.0 / skin)
}

fn strain(difference: TemperatureCoefficient, change: TemperatureInterval) -> Ratio {
    let strain: Ratio = difference * change;
    strain.abs()
}
