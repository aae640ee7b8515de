//! Bow of a top that is hotter on one side.

use crate::units::{Curvature, Length, Ratio, TemperatureCoefficient, TemperatureInterval};

/// How a skin would expand if it were free.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SkinExpansion {
    /// Expansion per degree.
    pub coefficient: TemperatureCoefficient,
    /// Rise of temperature since the panel was flat.
    pub rise: TemperatureInterval,
}

impl SkinExpansion {
    fn strain(self) -> Ratio {
        self.coefficient * self.rise
    }
}

/// Curvature of a free panel whose skins expand differently; positive when the outer skin grows more.
///
/// ```text
///   κ = (α_o ΔT_o − α_i ΔT_i)/d
/// ```
///
/// | symbol | meaning                                        | argument          |
/// |--------|------------------------------------------------|-------------------|
/// | `α_o`, `ΔT_o` | expansion and heating of the outer skin | `outer`           |
/// | `α_i`, `ΔT_i` | expansion and heating of the inner skin | `inner`           |
/// | *d*    | distance between the middles of the skins      | `skin_distance`   |
///
/// # Validity
///
/// Thin skins of any stiffness, soft core; free to bow. Held flat it takes a moment *D κ* per width instead.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): geometry of two skins of different length.
///
/// # Examples
///
/// 14 × 10⁻⁶ /K, 50 K apart, *d* = 20.7 mm: 0.0007/0.0207 = 0.0338 /m.
///
/// ```
/// use skinspan::strength::{SkinExpansion, free_curvature};
/// use skinspan::units::{Length, TemperatureCoefficient, TemperatureInterval};
/// use uom::si::{length::millimeter, temperature_coefficient::per_kelvin, temperature_interval::kelvin};
/// let skin = |rise| SkinExpansion {
///     coefficient: TemperatureCoefficient::new::<per_kelvin>(14e-6),
///     rise: TemperatureInterval::new::<kelvin>(rise),
/// };
/// let kappa = free_curvature(skin(60.0), skin(10.0), Length::new::<millimeter>(20.7));
/// assert!((kappa.value - 0.0338).abs() < 1e-4);
/// ```
#[must_use]
pub fn free_curvature(outer: SkinExpansion, inner: SkinExpansion, skin_distance: Length) -> Curvature {
    (outer.strain() - inner.strain()) / skin_distance
}

/// Rise of the middle of a span over its ends.
///
/// ```text
///   w = κ L²/8
/// ```
///
/// | symbol | meaning                                | argument    |
/// |--------|----------------------------------------|-------------|
/// | *κ*    | curvature, [`free_curvature`]          | `curvature` |
/// | *L*    | span                                   | `span`      |
///
/// # Validity
///
/// Small slope; ends free to turn and to lift. Between corners of a rectangle add the two directions.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): flat arc.
///
/// # Examples
///
/// 0.0338 /m over 1.2 m: 0.0338 × 1.44/8 = 6.1 mm.
///
/// ```
/// use skinspan::{strength::free_bow, units::{Curvature, Length, Ratio}};
/// use uom::si::length::{meter, millimeter};
/// let kappa: Curvature = Ratio::from(0.0338) / Length::new::<meter>(1.0);
/// let bow = free_bow(kappa, Length::new::<meter>(1.2));
/// assert!((bow.get::<millimeter>() - 6.1).abs() < 0.03);
/// ```
#[must_use]
pub fn free_bow(curvature: Curvature, span: Length) -> Length {
    curvature * span * span / 8.0
}
