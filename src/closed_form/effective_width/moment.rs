use super::Spread;
use crate::units::Length;

/// Width of strip for the sagging moment under a load in a bay.
///
/// ```text
/// b = t + 2.1 ρ x (1 − x/L)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | patch across the strip |
/// | `x`, `L` | distance of its middle from a support; bay |
/// | `ρ` | [`Spread::moment`] |
///
/// # Validity
/// Simple span, patch between 0.04 and 0.3 of it: the plate's moment is between 0.5 and 1.0 of the strip's. In a
/// continuous strip the load sees a shorter span, and with the whole bay for `L` the width is up to 6 % unsafe: take
/// 0.9 of an end bay, from its outer support (measured), and 0.8 of an inner bay, from where the moment is near 0 (our
/// assumption).
///
/// # Source
/// [`IS_456_2000`](crate::source::IS_456_2000) cl. 24.3.2.1 for the form (from memory); the factor is fitted to the
/// plate series (our assumption).
///
/// # Examples
/// Middle of a 1 m bay, patch 100 mm, alike in all directions: 0.1 + 2.1·0.25 = 0.625 m.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, sagging}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(1e5) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((sagging(m(0.1), m(0.5), m(1.0), &spread).value - 0.625).abs() < 1e-12);
/// ```
#[must_use]
pub fn sagging(across: Length, x: Length, bay: Length, spread: &Spread) -> Length {
    across + 2.1 * spread.moment * x * (1.0 - (x / bay).value)
}

/// Width of strip for the hogging moment over a support from a load in the bay beside it.
///
/// ```text
/// b = t + 0.5 ρ x (2 − x/L)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | patch across the strip |
/// | `x`, `L` | distance of its middle from that support; bay |
/// | `ρ` | [`Spread::remote_moment`] |
///
/// # Validity
/// Two equal bays, patch between 0.05 and 0.3 of a bay: the plate's moment is at most 0.92 of the strip's, and often
/// half of it.
///
/// # Source
/// [`DAFSTB_240`](crate::source::DAFSTB_240), widths at a clamped end (read in a reprinted table); factor from
/// [`DERIVED`](crate::source::DERIVED).
///
/// # Examples
/// Middle of a 1 m bay, patch 100 mm, alike in all directions: 0.1 + 0.5·0.5·1.5 = 0.475 m.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, hogging}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(1e5) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((hogging(m(0.1), m(0.5), m(1.0), &spread).value - 0.475).abs() < 1e-12);
/// ```
#[must_use]
pub fn hogging(across: Length, x: Length, bay: Length, spread: &Spread) -> Length {
    across + 0.5 * spread.remote_moment * x * (2.0 - (x / bay).value)
}

/// Width of strip for the hogging moment at the root of an overhang from a load on it.
///
/// ```text
/// b = t + 1.5 ρ x
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | patch across the strip |
/// | `x` | distance of its middle from the support |
/// | `ρ` | [`Spread::remote_moment`] |
///
/// # Validity
/// Overhang that runs on over its pipe into a bay: the plate's moment is at most 0.75 of the strip's; clamped overhang:
/// at most 0.95.
///
/// # Source
/// [`DAFSTB_240`](crate::source::DAFSTB_240), cantilever (read in a reprinted table); factor from [`DERIVED`](crate::source::DERIVED).
///
/// # Examples
/// 0.4 m out, patch 100 mm, alike in all directions: 0.7 m.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, overhang}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(1e5) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((overhang(m(0.1), m(0.4), &spread).value - 0.7).abs() < 1e-12);
/// ```
#[must_use]
pub fn overhang(across: Length, x: Length, spread: &Spread) -> Length {
    across + 1.5 * spread.remote_moment * x
}
