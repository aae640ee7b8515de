//! Wrinkling of the compressed skin: short waves into and out of the core.

use std::marker::PhantomData;

use crate::units::{FlexuralRigidity, Length, Pressure, Ratio, plain};

/// Wrinkling factor of the class rules, 0.5, for skins as they are built.
///
/// Source: [`LR_SSC`](crate::source::LR_SSC), Part 8, Chapter 7, Section 3.2.2 (quoted at second hand). It stands for
/// the waviness of real skins; it does not stand for a skin that has come off its core.
pub const DESIGN_FACTOR: Ratio = exactly(0.5);

/// Wrinkling factor of a perfect skin when the disturbance of the core dies out linearly, 3/36^(1/3).
///
/// Source: [`HOFF_MAUTNER_1945`](crate::source::HOFF_MAUTNER_1945) (name from memory; the number is derived, see
/// [`hoff_mautner_wrinkle`](super::hoff_mautner_wrinkle)). For comparison, not for design.
pub const HOFF_MAUTNER_FACTOR: Ratio = exactly(0.908_560_296_416_069_8);

/// Wrinkling factor of a perfect skin when the disturbance of the core dies out exponentially, 3/48^(1/3).
///
/// Source: [`PLANTEMA_1966`](crate::source::PLANTEMA_1966) (name from memory; the number is
/// [`DERIVED`](crate::source::DERIVED)). For comparison, not for design.
pub const PLANTEMA_FACTOR: Ratio = exactly(0.825_481_812_223_657);

const fn exactly(value: f64) -> Ratio {
    Ratio { dimension: PhantomData, units: PhantomData, value }
}

/// The three moduli on which wrinkling depends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WrinklingModuli {
    /// Modulus of the skin in the direction of the compression; for a wide skin its
    /// [`bending_modulus`].
    pub skin: Pressure,
    /// Modulus of the core through its thickness.
    pub core: Pressure,
    /// Shear modulus of the core in the plane of the wave.
    pub core_shear: Pressure,
}

/// Compressive stress at which the skin wrinkles.
///
/// ```text
///   σ_w = k (E_f E_c G_c)^(1/3)
/// ```
///
/// | symbol | meaning                                    | argument            |
/// |--------|--------------------------------------------|---------------------|
/// | *k*    | wrinkling factor                           | `factor`            |
/// | `E_f`  | modulus of the skin along the compression  | `moduli.skin`       |
/// | `E_c`  | modulus of the core through its thickness  | `moduli.core`       |
/// | `G_c`  | shear modulus of the core                  | `moduli.core_shear` |
///
/// The thickness of the skin does not enter: a thicker skin carries more load at the same stress.
///
/// # Validity
///
/// Flat skin, sound bond, core thicker than twice the zone that
/// [`hoff_mautner_wrinkle`](super::hoff_mautner_wrinkle) gives. Moduli at the temperature of the core.
///
/// # Source
///
/// [`LR_SSC`](crate::source::LR_SSC), Part 8, Chapter 7, Section 3.2.2, for *k* = 0.5 (quoted at second hand); the cube
/// root is derived in [`hoff_mautner_wrinkle`](super::hoff_mautner_wrinkle).
///
/// # Examples
///
/// 12 000 × 90 × 27 = 29.16 × 10⁶ `MPa³`, whose cube root is 307.8 MPa; half of it is 153.9 MPa.
///
/// ```
/// use skinspan::{strength::{DESIGN_FACTOR, WrinklingModuli, wrinkling_stress}, units::Pressure};
/// use uom::si::pressure::megapascal;
/// let moduli = WrinklingModuli {
///     skin: Pressure::new::<megapascal>(12_000.0),
///     core: Pressure::new::<megapascal>(90.0),
///     core_shear: Pressure::new::<megapascal>(27.0),
/// };
/// assert!((wrinkling_stress(DESIGN_FACTOR, moduli).get::<megapascal>() - 153.9).abs() < 0.05);
/// ```
#[must_use]
pub fn wrinkling_stress(factor: Ratio, moduli: WrinklingModuli) -> Pressure {
    factor * (moduli.skin * moduli.core * moduli.core_shear).cbrt()
}

/// Modulus that gives a homogeneous skin the bending stiffness of a laminate.
///
/// ```text
///   E_b = 12 D₁₁ / t³
/// ```
///
/// | symbol | meaning                                                              | argument         |
/// |--------|----------------------------------------------------------------------|------------------|
/// | *D₁₁*  | bending stiffness of the skin about its own mid-plane, wave along 1  | `skin_rigidity`  |
/// | *t*    | thickness of the skin                                                | `skin_thickness` |
///
/// Waves that are long across the load bend the skin as a cylinder, which is what *D₁₁* measures: for an isotropic
/// skin this is *E*/(1 − *ν*²).
///
/// # Validity
///
/// Symmetric skin; for an unsymmetric one pass the stiffness about the plane where it is least
/// (*D* − *B*²/*A*).
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): definition of plate bending stiffness.
///
/// # Examples
///
/// *D₁₁* = 8 N·m and *t* = 2 mm give 12 × 8 / 8 × 10⁻⁹ = 12 GPa.
///
/// ```
/// use skinspan::{strength::bending_modulus, units::{Length, Pressure, per_width}};
/// use uom::si::{length::millimeter, pressure::{gigapascal, pascal}};
/// let t = Length::new::<millimeter>(2.0);
/// let m = Length::new::<uom::si::length::meter>(1.0);
/// let d11 = per_width(Pressure::new::<pascal>(8.0) * m * m * m);
/// assert!((bending_modulus(d11, t).get::<gigapascal>() - 12.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn bending_modulus(skin_rigidity: FlexuralRigidity, skin_thickness: Length) -> Pressure {
    let t = skin_thickness;
    plain(skin_rigidity) * 12.0 / (t * t * t)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn factors_are_the_minima_they_claim_to_be() {
        approx::assert_relative_eq!(HOFF_MAUTNER_FACTOR.value, 3.0 / 36f64.cbrt(), max_relative = 1e-15);
        approx::assert_relative_eq!(PLANTEMA_FACTOR.value, 3.0 / 48f64.cbrt(), max_relative = 1e-15);
    }
}
