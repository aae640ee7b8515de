//! Shear across the fixing itself.

use std::marker::PhantomData;

use crate::units::{Area, Force, Pressure, Ratio};

/// Shear strength over ultimate tensile stress, 0.6: any shank, and the thread of classes 4.6, 5.6 and 8.8.
///
/// Source: [`EN_1993_1_8`](crate::source::EN_1993_1_8), Table 3.4, `α_v` (quoted at second hand). For stainless bolts
/// EN 1993-1-4 takes it too (from memory).
pub const SHEAR_FACTOR: Ratio = exactly(0.6);

/// The same for the thread of classes 4.8, 5.8, 6.8 and 10.9, which are less ductile: 0.5.
///
/// Source: as [`SHEAR_FACTOR`].
pub const SHEAR_FACTOR_HARD_THREAD: Ratio = exactly(0.5);

/// Yield stress in shear over that in tension, 1/√3 = 0.577.
///
/// Source: [`DERIVED`](crate::source::DERIVED) from distortion energy; [`SHIGLEY_9`](crate::source::SHIGLEY_9),
/// example 8-6, takes 0.577 of the proof stress (quoted at second hand).
pub const SHEAR_FACTOR_YIELD: Ratio = exactly(0.577_350_269_189_625_8);

const fn exactly(value: f64) -> Ratio {
    Ratio { dimension: PhantomData, units: PhantomData, value }
}

/// Force across its axis that a bolt or screw bears in one plane.
///
/// ```text
///   V = α_v f A
/// ```
///
/// | symbol | meaning                                                                   | argument       |
/// |--------|---------------------------------------------------------------------------|----------------|
/// | *f*    | ultimate stress; proof stress with [`SHEAR_FACTOR_YIELD`]                 | `strength`     |
/// | *A*    | area in the plane: the stress area in the thread, else the shank          | `area`         |
/// | `α_v`  | [`SHEAR_FACTOR`], [`SHEAR_FACTOR_HARD_THREAD`] or [`SHEAR_FACTOR_YIELD`]  | `shear_factor` |
///
/// # Validity
///
/// Parts held together without a gap; a gap, a gasket or a soft skin bends the bolt first:
/// [`bolt_bending_stress`](super::bolt_bending_stress). Friction is left out.
///
/// # Source
///
/// [`EN_1993_1_8`](crate::source::EN_1993_1_8), Table 3.4, before its partial factor of 1.25 (quoted at second hand).
///
/// # Examples
///
/// M6 of class 8.8 in its thread: 0.6 × 800 × 20.1 = 9.648 kN.
///
/// ```
/// use skinspan::{fastening::{SHEAR_FACTOR, shear_capacity}, units::{Area, Pressure}};
/// use uom::si::{area::square_millimeter, force::kilonewton, pressure::megapascal};
/// let (f, a) = (Pressure::new::<megapascal>(800.0), Area::new::<square_millimeter>(20.1));
/// assert!((shear_capacity(f, a, SHEAR_FACTOR).get::<kilonewton>() - 9.648).abs() < 1e-9);
/// ```
#[must_use]
pub fn shear_capacity(strength: Pressure, area: Area, shear_factor: Ratio) -> Force {
    shear_factor * strength * area
}

#[cfg(test)]
mod tests {
    #[test]
    fn yield_factor_is_what_it_claims_to_be() {
        approx::assert_relative_eq!(super::SHEAR_FACTOR_YIELD.value, 1.0 / 3f64.sqrt(), max_relative = 1e-15);
    }
}
