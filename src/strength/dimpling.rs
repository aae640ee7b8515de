//! Buckling of a skin into a void that it bridges: a conduit right under it, or the cell of a honeycomb.

use std::f64::consts::PI;

use crate::units::{Length, Pressure};

/// Stress at which a skin buckles over a long void, compressed across it.
///
/// ```text
///   σ = (π²/12) E′ (t/s)²
/// ```
///
/// | symbol | meaning                                                        | argument         |
/// |--------|----------------------------------------------------------------|------------------|
/// | *E′*   | modulus of the skin across the void, [`bending_modulus`](super::bending_modulus) | `skin_modulus` |
/// | *t*    | thickness of the skin                                          | `skin_thickness` |
/// | *s*    | width over which the skin has no core                          | `void_width`     |
///
/// # Validity
///
/// A column that is free to turn at the sides of the void, which is safe: the core beside it holds the skin. A
/// conduit with core left between it and the skin is no void.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): Euler's column of length *s*.
///
/// # Examples
///
/// *E′* = 12 GPa, *t* = 1.5 mm, *s* = 30 mm: 0.8225 × 12 000/400 = 24.7 MPa.
///
/// ```
/// use skinspan::{strength::void_stress_across, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let sigma = void_stress_across(Pressure::new::<megapascal>(12_000.0), mm(1.5), mm(30.0));
/// assert!((sigma.get::<megapascal>() - 24.7).abs() < 0.03);
/// ```
#[must_use]
pub fn void_stress_across(skin_modulus: Pressure, skin_thickness: Length, void_width: Length) -> Pressure {
    PI * PI / 12.0 * skin_modulus * slenderness_squared(skin_thickness, void_width)
}

/// Stress at which a skin buckles over a long void, compressed along it.
///
/// ```text
///   σ = 4 (π²/12) E′ (t/s)²
/// ```
///
/// | symbol | meaning                                                        | argument         |
/// |--------|----------------------------------------------------------------|------------------|
/// | *E′*   | modulus of the skin, the lower of its two directions           | `skin_modulus`   |
/// | *t*    | thickness of the skin                                          | `skin_thickness` |
/// | *s*    | width over which the skin has no core                          | `void_width`     |
///
/// # Validity
///
/// A long plate, supported along both sides of the void and free to turn there; buckles as long as the void is wide.
///
/// # Source
///
/// [`TIMOSHENKO_1959`](crate::source::TIMOSHENKO_1959) for the plate equation; *k* = 4 is
/// [`DERIVED`](crate::source::DERIVED) as the minimum of (*m* + 1/*m*)².
///
/// # Examples
///
/// Four times the stress of [`void_stress_across`]: 98.7 MPa.
///
/// ```
/// use skinspan::{strength::void_stress_along, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let sigma = void_stress_along(Pressure::new::<megapascal>(12_000.0), mm(1.5), mm(30.0));
/// assert!((sigma.get::<megapascal>() - 98.7).abs() < 0.1);
/// ```
#[must_use]
pub fn void_stress_along(skin_modulus: Pressure, skin_thickness: Length, void_width: Length) -> Pressure {
    4.0 * void_stress_across(skin_modulus, skin_thickness, void_width)
}

/// Stress at which a skin dimples into the cells of a honeycomb.
///
/// ```text
///   σ = 2 E′ (t/s)²        E′ = E/(1 − ν²)
/// ```
///
/// | symbol | meaning                                                        | argument         |
/// |--------|----------------------------------------------------------------|------------------|
/// | *E′*   | modulus of the skin, [`plate_modulus`](super::plate_modulus)   | `skin_modulus`   |
/// | *t*    | thickness of the skin                                          | `skin_thickness` |
/// | *s*    | diameter of the circle inscribed in a cell                     | `cell_size`      |
///
/// # Validity
///
/// Honeycomb core; foam and balsa have no cells of a size that matters.
///
/// # Source
///
/// [`ZENKERT_1995`](crate::source::ZENKERT_1995) and the military handbooks on sandwich construction (from memory);
/// the coefficient fits tests on skins over cells.
///
/// # Examples
///
/// *E′* = 12 GPa, *t* = 1 mm, *s* = 10 mm: 2 × 12 000/100 = 240 MPa.
///
/// ```
/// use skinspan::{strength::cell_dimpling_stress, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let sigma = cell_dimpling_stress(Pressure::new::<megapascal>(12_000.0), mm(1.0), mm(10.0));
/// assert!((sigma.get::<megapascal>() - 240.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn cell_dimpling_stress(skin_modulus: Pressure, skin_thickness: Length, cell_size: Length) -> Pressure {
    2.0 * skin_modulus * slenderness_squared(skin_thickness, cell_size)
}

fn slenderness_squared(thickness: Length, width: Length) -> f64 {
    (thickness / width).value.powi(2)
}
