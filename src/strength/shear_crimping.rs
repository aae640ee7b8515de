//! Shear crimping: a buckle so short that the core alone resists it.

use crate::units::{ForcePerWidth, Length, Pressure, ShearStiffness, plain};

/// Compressive load per width at which the panel crimps.
///
/// ```text
///   N = S         S = G_c d²/c
/// ```
///
/// | symbol | meaning                                      | argument |
/// |--------|----------------------------------------------|----------|
/// | *S*    | shear stiffness of the sandwich per width    | `shear`  |
///
/// It is the bound that [`engesser`](crate::closed_form::columns::engesser) approaches as the column becomes short,
/// whatever the skins are.
///
/// # Validity
///
/// Thin skins: their own bending is left out, which is safe. Load along the direction of *S*.
///
/// # Source
///
/// [`ALLEN_1969`](crate::source::ALLEN_1969) (name from memory); [`DERIVED`](crate::source::DERIVED) as that bound.
///
/// # Examples
///
/// `G_c` = 27 MPa, *c* = 20 mm, *d* = 21.5 mm: *S* = 27 × 21.5²/20 = 624 N/mm.
///
/// ```
/// use skinspan::{strength::crimping_load, units::{Length, Pressure, per_width}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let (g, c, d) = (
///     Pressure::new::<megapascal>(27.0),
///     Length::new::<millimeter>(20.0),
///     Length::new::<millimeter>(21.5),
/// );
/// let s = per_width(g * d * d / c);
/// assert!((crimping_load(s).value - 624.0e3).abs() < 100.0); // N/m
/// ```
#[must_use]
pub fn crimping_load(shear: ShearStiffness) -> ForcePerWidth {
    shear
}

/// Mean compressive stress in the skins at which the panel crimps.
///
/// ```text
///   σ = S / (t₁ + t₂)
/// ```
///
/// | symbol      | meaning                                      | argument                 |
/// |-------------|----------------------------------------------|--------------------------|
/// | *S*         | shear stiffness of the sandwich per width    | `shear`                  |
/// | *t₁* + *t₂* | thickness of both skins together             | `both_skins`             |
///
/// # Validity
///
/// Load through both skins, equal strain; in skins of different modulus the stress is the mean.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): [`crimping_load`] over the area of the skins.
///
/// # Examples
///
/// *S* = 624 N/mm over skins of 1.5 mm each: 208 MPa.
///
/// ```
/// use skinspan::{strength::crimping_stress, units::{Length, Pressure, per_width}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let s = per_width(Pressure::new::<megapascal>(624.0) * Length::new::<millimeter>(1.0));
/// let stress = crimping_stress(s, Length::new::<millimeter>(3.0));
/// assert!((stress.get::<megapascal>() - 208.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn crimping_stress(shear: ShearStiffness, both_skins: Length) -> Pressure {
    plain(crimping_load(shear)) / both_skins
}
