//! Lifting the bare top: forces in the slings, and where to take hold of it.

use std::{f64::consts::SQRT_2, num::NonZeroU32};

use crate::{
    load::weight::inertia_force,
    units::{Angle, Force, Length, Mass, Ratio},
};

/// Forces of one sling on the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sling {
    /// Tension along the sling.
    pub tension: Force,
    /// Upward part at its lifting point.
    pub upward: Force,
    /// Inward part at its lifting point, a compression in the plane of the top.
    pub inward: Force,
}

/// Forces of slings that meet in one hook.
///
/// ```text
///   V = k m g / n        T = V / cos θ        H = V tan θ
/// ```
///
/// | symbol        | meaning                                                     | argument   |
/// |---------------|-------------------------------------------------------------|------------|
/// | *m*           | mass of the top                                             | `mass`     |
/// | *k*           | factor for the jerk of the lift                             | `dynamic`  |
/// | *n*           | slings that carry; a stiff top on four hangs on two of them | `carrying` |
/// | *θ*           | angle of the sling from the vertical                        | `angle`    |
/// | *T*, *V*, *H* | tension, upward part, inward part                           | [`Sling`]  |
///
/// # Validity
///
/// Equal share of the slings that carry; *θ* below 60°.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equilibrium.
///
/// # Examples
///
/// ```
/// use skinspan::load::lifting::sling;
/// use std::num::NonZeroU32;
/// use uom::si::{angle::degree, f64::{Angle, Mass, Ratio}, force::newton, mass::kilogram, ratio::ratio};
/// let two = NonZeroU32::new(2).ok_or("not zero")?;
/// let s = sling(Mass::new::<kilogram>(60.0), Ratio::new::<ratio>(1.5), two, Angle::new::<degree>(45.0));
/// assert!((s.upward.get::<newton>() - 441.299).abs() < 1e-3); // 1.5 × 60 × 9.80665 / 2
/// assert!((s.inward - s.upward).get::<newton>().abs() < 1e-9); // at 45° both parts are equal
/// # Ok::<(), &str>(())
/// ```
#[must_use]
pub fn sling(mass: Mass, dynamic: Ratio, carrying: NonZeroU32, angle: Angle) -> Sling {
    let upward = inertia_force(mass, dynamic) / f64::from(carrying.get());
    Sling { tension: upward / angle.cos(), upward, inward: upward * angle.tan() }
}

/// Distance from each end at which two rows of slings bend a uniform top least.
///
/// ```text
///   a = L (√2 − 1) / 2        there  M = w L² (3 − 2√2) / 8 = 0.02145 w L²
/// ```
///
/// | symbol | meaning                                                | argument |
/// |--------|--------------------------------------------------------|----------|
/// | *L*    | length of the top                                      | `length` |
/// | *w*    | weight per length                                      |          |
/// | *M*    | moment over the slings and, equal to it, at mid-length |          |
///
/// # Validity
///
/// Uniform weight along the length, vertical slings.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): moment over the slings *w a*²/2 set equal to the one at mid-length,
/// *w L*²/8 − *w L a*/2.
///
/// # Examples
///
/// ```
/// use skinspan::load::lifting::sling_inset;
/// use uom::si::{f64::Length, length::meter};
/// let a = sling_inset(Length::new::<meter>(3.0)).get::<meter>();
/// assert!((a - 0.6213).abs() < 1e-4); // 3 × 0.20711
/// ```
#[must_use]
pub fn sling_inset(length: Length) -> Length {
    length * ((SQRT_2 - 1.0) / 2.0)
}
