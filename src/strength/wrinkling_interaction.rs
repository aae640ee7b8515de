//! Wrinkling when more than one stress acts at once.

use crate::units::Ratio;

/// Utilisation of a skin that is compressed along both axes.
///
/// Each ratio is the compressive stress over the wrinkling stress of its direction, alone. The skin wrinkles when
///
/// ```text
///   (λ R₁)³ + λ R₂ = 1        R₁ ≥ R₂
/// ```
///
/// and the utilisation is 1/λ, so that it doubles when the load doubles.
///
/// | symbol      | meaning                                             | argument |
/// |-------------|-----------------------------------------------------|----------|
/// | *R₁*, *R₂*  | larger and smaller ratio of stress to allowable     | `x`, `y` |
/// | *λ*         | factor on the load at which the skin wrinkles       |          |
///
/// # Validity
///
/// Compression positive; tension counts as zero, for it does not help. Which axis is which does not matter.
///
/// # Source
///
/// [`LEY_1999`](crate::source::LEY_1999), NASA/CR-1999-208994 (from memory). The load
/// factor is [`DERIVED`](crate::source::DERIVED).
///
/// # Examples
///
/// *R₁* = *R₂* = *R*: *λR* is the root of *s*³ + *s* = 1, 0.6823, so *R* = 0.6823 is fully used.
///
/// ```
/// use skinspan::{strength::wrinkling_under_biaxial_compression, units::Ratio};
/// let r = Ratio::from(0.6823);
/// assert!((wrinkling_under_biaxial_compression(r, r).value - 1.0).abs() < 1e-4);
/// ```
#[must_use]
pub fn wrinkling_under_biaxial_compression(x: Ratio, y: Ratio) -> Ratio {
    let (x, y) = (compressive(x), compressive(y));
    let (larger, smaller) = if x < y { (y, x) } else { (x, y) };
    Ratio::from(cubic_root(larger, smaller))
}

/// Utilisation of a skin that is compressed and sheared in its plane.
///
/// ```text
///   λ R_c + (λ R_s)² = 1,    utilisation 1/λ = (R_c + √(R_c² + 4 R_s²))/2
/// ```
///
/// | symbol | meaning                                                                        | argument      |
/// |--------|--------------------------------------------------------------------------------|---------------|
/// | `R_c`  | utilisation in compression; for two axes, [`wrinkling_under_biaxial_compression`] | `compression` |
/// | `R_s`  | shear stress over the wrinkling stress under compression at 45° to the axes    | `shear`       |
/// | *λ*    | factor on the load at which the skin wrinkles                                  |               |
///
/// The allowable in shear is a wrinkling stress: pure shear *τ* is a compression *τ* at 45°, and the tension across
/// it does not help. Take the skin's [`bending_modulus`](super::bending_modulus) at 45° for it.
///
/// # Validity
///
/// Tension counts as zero; the sign of the shear does not matter.
///
/// # Source
///
/// [`LEY_1999`](crate::source::LEY_1999), NASA/CR-1999-208994 (from memory). The load
/// factor is [`DERIVED`](crate::source::DERIVED).
///
/// # Examples
///
/// `R_c` = 0.6, `R_s` = 0.4: 0.6 + 0.16 = 0.76 < 1, and the load may grow by 1/0.8: 0.75 + 0.25 = 1.
///
/// ```
/// use skinspan::{strength::wrinkling_under_compression_and_shear, units::Ratio};
/// let u = wrinkling_under_compression_and_shear(Ratio::from(0.6), Ratio::from(0.4));
/// assert!((u.value - 0.8).abs() < 1e-12);
/// ```
#[must_use]
pub fn wrinkling_under_compression_and_shear(compression: Ratio, shear: Ratio) -> Ratio {
    let (r_c, r_s) = (compressive(compression), shear.value);
    Ratio::from(f64::midpoint(r_c, r_c.hypot(2.0 * r_s)))
}

/// Drops tension but keeps a value that is not a number, which must not read as safe.
fn compressive(ratio: Ratio) -> f64 {
    if ratio.value < 0.0 { 0.0 } else { ratio.value }
}

/// Positive root *u* of *u*³ = *r₂u*² + *r₁*³, for 0 ≤ *r₂* ≤ *r₁*.
fn cubic_root(r1: f64, r2: f64) -> f64 {
    if r1 <= 0.0 {
        return 0.0;
    }
    // In units of r₁ the root lies between 1 and 1.4656. The cubic is rising and convex there, so Newton's steps from
    // above never leave it; seven double the correct digits to the last.
    let b = r2 / r1;
    let mut u = 1.5;
    for _ in 0..7 {
        u -= (u * u * (u - b) - 1.0) / (u * (3.0 * u - 2.0 * b));
    }
    u * r1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_axis_alone_is_not_changed() {
        let u = |x, y| wrinkling_under_biaxial_compression(Ratio::from(x), Ratio::from(y)).value;
        approx::assert_relative_eq!(u(0.37, 0.0), 0.37, max_relative = 1e-15);
        approx::assert_relative_eq!(u(-5.0, 0.37), 0.37, max_relative = 1e-15);
        assert!(u(0.0, -1.0).abs() < f64::MIN_POSITIVE);
        assert!(u(f64::NAN, 0.1).is_nan() && u(0.1, f64::NAN).is_nan());
    }
}
