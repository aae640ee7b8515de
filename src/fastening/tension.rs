//! Tension in the fixing itself.

use std::marker::PhantomData;

use crate::units::{Area, Force, Pressure, Ratio};

/// Share of the ultimate load of a thread that a head bears, 0.9.
///
/// Source: [`EN_1993_1_8`](crate::source::EN_1993_1_8), Table 3.4, *k₂* (quoted at second hand).
pub const HEAD_FACTOR: Ratio = exactly(0.9);

/// The same for a countersunk head, 0.63.
///
/// Source: as [`HEAD_FACTOR`].
pub const HEAD_FACTOR_COUNTERSUNK: Ratio = exactly(0.63);

const fn exactly(value: f64) -> Ratio {
    Ratio { dimension: PhantomData, units: PhantomData, value }
}

/// Pull that a bolt or screw bears.
///
/// ```text
///   F = k₂ f A_s
/// ```
///
/// | symbol | meaning                                                          | argument        |
/// |--------|------------------------------------------------------------------|-----------------|
/// | *f*    | strength: ultimate stress, or proof stress for the proof load    | `strength`      |
/// | `A_s`  | [`ScrewThread::stress_area`](super::ScrewThread::stress_area); for a wood screw the area at its root | `stress_area` |
/// | *k₂*   | [`HEAD_FACTOR`], [`HEAD_FACTOR_COUNTERSUNK`]; 1 for the thread alone | `head_factor` |
///
/// # Validity
///
/// Pull along the axis. Bending and prying add to it: [`bolt_bending_stress`](super::bolt_bending_stress),
/// [`elastic_prying_factor`](super::elastic_prying_factor).
///
/// # Source
///
/// [`ISO_898_1`](crate::source::ISO_898_1), tables of ultimate and proof loads, with *k₂* = 1;
/// [`EN_1993_1_8`](crate::source::EN_1993_1_8), Table 3.4, before its partial factor of 1.25 (both quoted at second
/// hand).
///
/// # Examples
///
/// M6 of class 8.8, 800 MPa on 20.1 mm²: 16.08 kN; with *k₂* 14.47 kN.
///
/// ```
/// use skinspan::{fastening::{HEAD_FACTOR, tensile_capacity}, units::{Area, Pressure, Ratio}};
/// use uom::si::{area::square_millimeter, force::kilonewton, pressure::megapascal};
/// let (f, a) = (Pressure::new::<megapascal>(800.0), Area::new::<square_millimeter>(20.1));
/// assert!((tensile_capacity(f, a, Ratio::from(1.0)).get::<kilonewton>() - 16.08).abs() < 1e-9);
/// assert!((tensile_capacity(f, a, HEAD_FACTOR).get::<kilonewton>() - 14.472).abs() < 1e-9);
/// ```
#[must_use]
pub fn tensile_capacity(strength: Pressure, stress_area: Area, head_factor: Ratio) -> Force {
    head_factor * strength * stress_area
}
