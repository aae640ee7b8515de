//! Sun on the top: temperature of its surface and of the bond under it.

use uom::si::{
    f64::{HeatFluxDensity, HeatTransfer, ThermalConductivity},
    temperature_interval::kelvin as kelvin_interval,
    thermodynamic_temperature::kelvin,
};

use crate::units::{Length, Ratio, TemperatureInterval, ThermodynamicTemperature};

/// Temperature of a surface in the sun that loses no heat through its back.
///
/// ```text
///   T_s = T_air + (α I) / h − ΔT_sky
/// ```
///
/// | symbol     | meaning                                                         | argument      |
/// |------------|-----------------------------------------------------------------|---------------|
/// | *`T_air`*  | air temperature                                                 | `air`         |
/// | *α*        | share of sunlight absorbed: white 0.25, black 0.95              | `absorptance` |
/// | *I*        | sunlight on the surface, about 1000 W/m² at noon                | `irradiance`  |
/// | *h*        | heat transfer to air and sky, 12 in calm to 25 W/(m²·K) in wind | `film`        |
/// | *`ΔT_sky`* | cooling of a level surface to the clear sky, about 4 K          | `sky_cooling` |
///
/// # Validity
///
/// Steady sun, insulated back: a foam core is that, nearly. An upper estimate for a top that moves through air.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): heat balance of the surface, known as sol-air temperature in building physics.
///
/// # Examples
///
/// ```
/// use skinspan::load::temperature::surface_in_sun;
/// use uom::si::{f64::*, heat_flux_density::watt_per_square_meter, heat_transfer::watt_per_square_meter_kelvin,
///     ratio::ratio, temperature_interval, thermodynamic_temperature::degree_celsius};
/// let black = surface_in_sun(
///     ThermodynamicTemperature::new::<degree_celsius>(32.0),
///     Ratio::new::<ratio>(0.9),
///     HeatFluxDensity::new::<watt_per_square_meter>(1000.0),
///     HeatTransfer::new::<watt_per_square_meter_kelvin>(18.0),
///     TemperatureInterval::new::<temperature_interval::kelvin>(4.0),
/// );
/// assert!((black.get::<degree_celsius>() - 78.0).abs() < 1e-9); // 32 + 900/18 − 4
/// ```
#[must_use]
pub fn surface_in_sun(
    air: ThermodynamicTemperature,
    absorptance: Ratio,
    irradiance: HeatFluxDensity,
    film: HeatTransfer,
    sky_cooling: TemperatureInterval,
) -> ThermodynamicTemperature {
    let heating: TemperatureInterval = absorptance * irradiance / film;
    air + heating - sky_cooling
}

/// A layer that heat passes through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatLayer {
    /// Thickness.
    pub thickness: Length,
    /// Conductivity for heat; glass laminate 0.2 to 0.35, foam 0.03 to 0.04 W/(m·K).
    pub conductivity: ThermalConductivity,
}

/// Temperature of the core at its bond to the outer skin.
///
/// ```text
///   T_b = T_o − (T_o − T_i) R_o / (R_o + R_c + R_i)        R = t / k
/// ```
///
/// | symbol                    | meaning                                          | argument                           |
/// |---------------------------|--------------------------------------------------|------------------------------------|
/// | *`T_o`*, *`T_i`*          | temperatures of the outer and inner surface      | `outer`, `inner`                   |
/// | *`R_o`*, *`R_c`*, *`R_i`* | heat resistances of outer skin, core, inner skin | `skin_outer`, `core`, `skin_inner` |
///
/// # Validity
///
/// Steady flow of heat. The core resists a hundred times more than a skin, so the bond is within about one degree of
/// the surface: what the sun does to the paint it does to the foam.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): layers in series.
///
/// # Examples
///
/// ```
/// use skinspan::load::temperature::{HeatLayer, outer_bond};
/// use uom::si::{f64::*, length::meter, thermal_conductivity::watt_per_meter_kelvin,
///     thermodynamic_temperature::degree_celsius};
/// let layer = |t, k| HeatLayer {
///     thickness: Length::new::<meter>(t),
///     conductivity: ThermalConductivity::new::<watt_per_meter_kelvin>(k),
/// };
/// let celsius = |t| ThermodynamicTemperature::new::<degree_celsius>(t);
/// // resistances 0.01, 0.48, 0.01: the outer skin takes 1/50 of 45 K
/// let bond = outer_bond(celsius(85.0), celsius(40.0), layer(0.002, 0.2), layer(0.0192, 0.04), layer(0.002, 0.2));
/// assert!((bond.get::<degree_celsius>() - 84.1).abs() < 1e-9);
/// ```
#[must_use]
pub fn outer_bond(
    outer: ThermodynamicTemperature,
    inner: ThermodynamicTemperature,
    skin_outer: HeatLayer,
    core: HeatLayer,
    skin_inner: HeatLayer,
) -> ThermodynamicTemperature {
    let resistance = |layer: HeatLayer| layer.thickness / layer.conductivity;
    let share: Ratio = resistance(skin_outer) / (resistance(skin_outer) + resistance(core) + resistance(skin_inner));
    outer - difference(outer, inner) * share
}

/// Difference of two temperatures.
///
/// ```text
///   ΔT = T₁ − T₂
/// ```
///
/// | symbol | meaning       | argument |
/// |--------|---------------|----------|
/// | *T₁*   | from this one | `warm`   |
/// | *T₂*   | this one      | `cold`   |
///
/// # Validity
///
/// Any; negative if the first is the colder.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): subtraction, which the temperature type itself does not offer.
///
/// # Examples
///
/// ```
/// use skinspan::load::temperature::difference;
/// use uom::si::{f64::*, temperature_interval::kelvin, thermodynamic_temperature::degree_celsius};
/// let celsius = |t| ThermodynamicTemperature::new::<degree_celsius>(t);
/// assert!((difference(celsius(85.0), celsius(40.0)).get::<kelvin>() - 45.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn difference(warm: ThermodynamicTemperature, cold: ThermodynamicTemperature) -> TemperatureInterval {
    TemperatureInterval::new::<kelvin_interval>(warm.get::<kelvin>() - cold.get::<kelvin>())
}
