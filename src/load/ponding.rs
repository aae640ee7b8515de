//! Water that stands on the top.

use crate::{
    load::weight::gravity,
    units::{Length, MassDensity, Pressure},
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
/// use skinspan::load::ponding::layer_pressure;
/// use uom::si::{f64::{Length, MassDensity}, length::meter, mass_density::kilogram_per_cubic_meter, pressure::pascal};
/// let water = MassDensity::new::<kilogram_per_cubic_meter>(1000.0);
/// let p = layer_pressure(water, Length::new::<meter>(0.02)).get::<pascal>();
/// assert!((p - 196.133).abs() < 1e-9);
/// ```
#[must_use]
pub fn layer_pressure(density: MassDensity, depth: Length) -> Pressure {
    density * gravity() * depth
}
