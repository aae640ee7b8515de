use super::Spread;
use crate::units::Length;

/// Width of strip for the shear at a support and for its reaction.
///
/// ```text
/// in a bay:        b = t + 0.5 σ x
/// on an overhang:  b = t + 0.6 ρ x
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | patch across the strip |
/// | `x` | distance of its middle from the support |
/// | `σ`, `ρ` | [`Spread::shear`], [`Spread::remote_moment`] |
///
/// # Validity
/// Bay: the plate's shear at the support is at most 0.9 of the strip's. Overhang that runs on over its pipe into a bay:
/// at most 0.85 of it, often half; clamped overhang: at most 1.0. Beside the patch the shear
/// is larger than here: see [`shear_beside_patch`].
///
/// # Source
/// Bay: [`DAFSTB_240`](crate::source::DAFSTB_240) (read in a reprinted table). Overhang: fitted to plate solutions (our assumption), where
/// that table has `t + 0.3 x`.
///
/// # Examples
/// 0.2 m from the pipe, patch 100 mm: 0.2 m in a bay, 0.22 m on an overhang.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, shear_at_support}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(1e5) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((shear_at_support(m(0.1), m(0.2), false, &spread).value - 0.2).abs() < 1e-12);
/// assert!((shear_at_support(m(0.1), m(0.2), true, &spread).value - 0.22).abs() < 1e-12);
/// ```
#[must_use]
pub fn shear_at_support(across: Length, x: Length, on_overhang: bool, spread: &Spread) -> Length {
    across + if on_overhang { 0.6 * spread.remote_moment } else { 0.5 * spread.shear } * x
}

/// Width of strip for the shear right beside the patch, where it is largest. Also safe everywhere else.
///
/// ```text
/// b = t + 0.3 c
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t`, `c` | patch across and along the strip |
///
/// # Validity
/// The plate's shear at the edge of the patch is at most 1.0 of the strip's, for a stiffness along the strip of up to
/// three times that across it, and twice in shear.
///
/// # Source
/// Fitted to the plate series (our assumption).
///
/// # Examples
/// Patch of 100 mm by 100 mm: 0.13 m.
/// ```
/// use skinspan::closed_form::effective_width::shear_beside_patch;
/// use skinspan::units::Length;
/// use uom::si::length::meter;
/// let side = Length::new::<meter>(0.1);
/// assert!((shear_beside_patch(side, side).value - 0.13).abs() < 1e-12);
/// ```
#[must_use]
pub fn shear_beside_patch(across: Length, along: Length) -> Length {
    across + 0.3 * along
}
