//! Modulus of a plate that bends as a cylinder.

use crate::units::{Pressure, Ratio};

/// Modulus of an isotropic skin that is too wide to contract sideways.
///
/// ```text
///   E′ = E / (1 − ν²)
/// ```
///
/// | symbol | meaning                          | argument  |
/// |--------|----------------------------------|-----------|
/// | *E*    | Young's modulus of the skin      | `modulus` |
/// | *ν*    | Poisson's ratio of the skin      | `poisson` |
///
/// # Validity
///
/// Isotropic skin; for a laminate take [`bending_modulus`](super::bending_modulus).
///
/// # Source
///
/// [`TIMOSHENKO_1959`](crate::source::TIMOSHENKO_1959), chapter on bending to a cylindrical surface (from memory).
///
/// # Examples
///
/// 9.1 GPa with *ν* = 0.3: 9.1/0.91 = 10 GPa.
///
/// ```
/// use skinspan::{strength::plate_modulus, units::{Pressure, Ratio}};
/// use uom::si::pressure::gigapascal;
/// let e = plate_modulus(Pressure::new::<gigapascal>(9.1), Ratio::from(0.3));
/// assert!((e.get::<gigapascal>() - 10.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn plate_modulus(modulus: Pressure, poisson: Ratio) -> Pressure {
    modulus / (1.0 - poisson.value * poisson.value)
}
