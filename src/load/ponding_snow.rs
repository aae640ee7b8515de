//! Water that stands and snow that lies on the top.

use crate::{
    load::weight::gravity,
    units::{Length, MassDensity, Pressure, Ratio},
};

/// Pressure of a layer of water, ice or snow.
///
/// ```text
///   p = ρ g h
/// ```
///
/// | symbol | meaning                                            | argument  |
/// |--------|----------------------------------------------------|-----------|
/// | *ρ*    | density; fresh water 1000, sea 1025, ice 917 kg/m³ | `density` |
/// | *h*    | depth                                              | `depth`   |
///
/// # Validity
///
/// A level layer at rest. A soft top sags under water and gathers more of it; that growth is not in the value.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): hydrostatics.
///
/// # Examples
///
/// ```
/// use skinspan::load::ponding_snow::layer_pressure;
/// use uom::si::{f64::{Length, MassDensity}, length::meter, mass_density::kilogram_per_cubic_meter, pressure::pascal};
/// let water = MassDensity::new::<kilogram_per_cubic_meter>(1000.0);
/// let p = layer_pressure(water, Length::new::<meter>(0.02)).get::<pascal>();
/// assert!((p - 196.133).abs() < 1e-9);
/// ```
#[must_use]
pub fn layer_pressure(density: MassDensity, depth: Length) -> Pressure {
    density * gravity() * depth
}

/// Factors between snow on the ground and snow on a flat roof.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SnowFactors {
    /// Roof over ground, 0.7.
    pub roof: Ratio,
    /// Exposure *`C_e`*: below 1 where wind blows the roof clear.
    pub exposure: Ratio,
    /// Thermal factor *`C_t`*: 1.2 for unheated structures and open air below.
    pub thermal: Ratio,
    /// Importance *I*.
    pub importance: Ratio,
}

/// Snow on a flat roof from snow on the ground.
///
/// ```text
///   p_f = 0.7 C_e C_t I p_g
/// ```
///
/// | symbol                     | meaning                       | argument  |
/// |----------------------------|-------------------------------|-----------|
/// | *`p_g`*                    | ground snow load of the place | `ground`  |
/// | 0.7, *`C_e`*, *`C_t`*, *I* | see [`SnowFactors`]           | `factors` |
///
/// # Validity
///
/// Flat or nearly flat tops without drifts from something taller beside them.
///
/// # Source
///
/// [`ASCE_7`](crate::source::ASCE_7), flat roof snow load, §7.3 (read).
///
/// # Examples
///
/// ```
/// use skinspan::load::ponding_snow::{SnowFactors, roof_snow};
/// use uom::si::{f64::{Pressure, Ratio}, pressure::pascal, ratio::ratio};
/// let r = |x| Ratio::new::<ratio>(x);
/// let factors = SnowFactors { roof: r(0.7), exposure: r(1.0), thermal: r(1.2), importance: r(1.0) };
/// let p = roof_snow(Pressure::new::<pascal>(1000.0), factors).get::<pascal>();
/// assert!((p - 840.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn roof_snow(ground: Pressure, factors: SnowFactors) -> Pressure {
    ground * factors.roof * factors.exposure * factors.thermal * factors.importance
}
