//! Buckling of a skin that has come off its core.

use std::f64::consts::PI;

use crate::units::{Length, Pressure};

/// Stress at which a loose skin buckles outwards.
///
/// ```text
///   σ = (π²/3) E′ (t/a)²
/// ```
///
/// | symbol | meaning                                                      | argument         |
/// |--------|--------------------------------------------------------------|------------------|
/// | *E′*   | modulus of the skin, [`plate_modulus`](super::plate_modulus) | `skin_modulus`   |
/// | *t*    | thickness of the skin                                        | `skin_thickness` |
/// | *a*    | length of the loose part along the compression               | `size`           |
///
/// # Validity
///
/// A strip that is clamped where the bond begins; for a round blister this is below the true value, on the safe side.
/// It tells when the blister opens, not whether it grows.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): Euler's column with both ends clamped.
///
/// # Examples
///
/// *E′* = 12 GPa, *t* = 2 mm, *a* = 150 mm: 3.2899 × 12 000 × (2/150)² = 7.02 MPa.
///
/// ```
/// use skinspan::{strength::disbond_stress, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let sigma = disbond_stress(Pressure::new::<megapascal>(12_000.0), mm(2.0), mm(150.0));
/// assert!((sigma.get::<megapascal>() - 7.02).abs() < 0.01);
/// ```
#[must_use]
pub fn disbond_stress(skin_modulus: Pressure, skin_thickness: Length, size: Length) -> Pressure {
    PI * PI / 3.0 * skin_modulus * (skin_thickness / size).value.powi(2)
}

/// Length of loose skin that a compressive stress buckles.
///
/// ```text
///   a = π t √(E′/(3 σ))
/// ```
///
/// | symbol | meaning                                                      | argument         |
/// |--------|--------------------------------------------------------------|------------------|
/// | *E′*   | modulus of the skin, [`plate_modulus`](super::plate_modulus) | `skin_modulus`   |
/// | *t*    | thickness of the skin                                        | `skin_thickness` |
/// | *σ*    | compressive stress in the skin, above zero                   | `stress`         |
///
/// # Validity
///
/// As [`disbond_stress`], of which it is the inverse.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED), as [`disbond_stress`].
///
/// # Examples
///
/// 7.02 MPa in 2 mm of 12 GPa: 150 mm.
///
/// ```
/// use skinspan::{strength::disbond_size, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let mpa = Pressure::new::<megapascal>;
/// let a = disbond_size(mpa(12_000.0), Length::new::<millimeter>(2.0), mpa(7.02));
/// assert!((a.get::<millimeter>() - 150.0).abs() < 0.1);
/// ```
#[must_use]
pub fn disbond_size(skin_modulus: Pressure, skin_thickness: Length, stress: Pressure) -> Length {
    PI * skin_thickness * (skin_modulus / (3.0 * stress)).sqrt()
}
