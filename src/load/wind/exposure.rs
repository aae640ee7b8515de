//! Wind grows with height above ground or water.

use uom::si::ratio::ratio;

use crate::units::{Length, Ratio};

/// Ground roughness around the boat, by the power law of the mean wind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exposure {
    /// Height above which the ground is not felt, *`z_g`*.
    pub gradient_height: Length,
    /// Exponent of the power law, *α*: the gust speed grows as *z* to the power 1/*α*.
    pub exponent: Ratio,
    /// Height below which the coefficient stays constant, 15 ft.
    pub floor: Length,
}

/// Velocity pressure at a height over that of open country at 10 m.
///
/// ```text
///   K_z = 2.01 (z / z_g)^(2/α)
/// ```
///
/// | symbol  | meaning                                      | argument          |
/// |---------|----------------------------------------------|-------------------|
/// | *z*     | height of the top, not taken below the floor | `height`          |
/// | *`z_g`* | gradient height                              | `gradient_height` |
/// | *α*     | exponent of the power law                    | `exponent`        |
///
/// # Validity
///
/// Below the gradient height. For wind speeds of building maps and of weather services, which hold at 10 m; not for a
/// speed measured at the top or for the air stream of a running boat.
///
/// # Source
///
/// [`ASCE_7`](crate::source::ASCE_7), 7-16 Table 26.10-1 note 1 (read in programs that quote it; 7-22 has other constants).
///
/// # Examples
///
/// ```
/// use skinspan::load::wind::{Exposure, exposure_coefficient};
/// use uom::si::{f64::{Length, Ratio}, length::meter, ratio::ratio};
/// let feet = |x: f64| Length::new::<meter>(0.3048 * x);
/// let water = Exposure { gradient_height: feet(700.0), exponent: Ratio::new::<ratio>(11.5), floor: feet(15.0) };
/// // 2.01 × (15/700)^(0.1739) = 2.01 × 0.5125, also for a top 8 ft above the water
/// let k = exposure_coefficient(feet(8.0), water).get::<ratio>();
/// assert!((k - 1.03).abs() < 0.005);
/// ```
#[must_use]
pub fn exposure_coefficient(height: Length, exposure: Exposure) -> Ratio {
    let relative = height.max(exposure.floor) / exposure.gradient_height;
    Ratio::new::<ratio>(2.01 * relative.get::<ratio>().powf(2.0 / exposure.exponent.get::<ratio>()))
}
