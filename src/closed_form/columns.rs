//! Buckling of a strip in compression, as a wide column that is flexible in shear.

use std::f64::consts::PI;

use crate::units::{FlexuralRigidity, ForcePerWidth, Length, ShearStiffness, si};

/// Compression at which a strip without shear flexibility buckles (Euler).
///
/// ```text
/// P_E = π² D/L²
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `P_E` | force per width |
/// | `D` | flexural rigidity per width |
/// | `L` | buckling length (the span, for ends that rotate freely) |
///
/// # Validity
/// Straight, elastic, even compression.
///
/// # Source
/// [`ALLEN_1969`](crate::source::ALLEN_1969) (from memory).
///
/// # Examples
/// `D` = 1000 N·m²/m, `L` = 1 m: 9869.6 N/m.
/// ```
/// use skinspan::closed_form::columns::euler;
/// use skinspan::units::{Force, Length, per_width};
/// use uom::si::{force::newton, length::meter};
/// let m = Length::new::<meter>;
/// let load = euler(per_width(Force::new::<newton>(1000.0) * m(1.0)), m(1.0));
/// assert!((load.value - 9869.6).abs() < 0.01);
/// ```
#[must_use]
pub fn euler(d: FlexuralRigidity, length: Length) -> ForcePerWidth {
    si(PI * PI * d.value / length.value.powi(2))
}

/// Compression at which a sandwich strip buckles, Engesser's form. It is the lower of the two: use it.
///
/// ```text
/// 1/P = 1/P_E + 1/S
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `P` | force per width |
/// | `P_E` | [`euler`] |
/// | `S` | shear stiffness per width: the load of shear crimping |
///
/// # Validity
/// As [`euler`]; skins not wrinkling.
///
/// # Source
/// [`ALLEN_1969`](crate::source::ALLEN_1969) (from memory); derived.
///
/// # Examples
/// `P_E` = 1 and `S` = 4 N/m: 0.8 N/m.
/// ```
/// use skinspan::closed_form::columns::engesser;
/// use skinspan::units::{Force, ForcePerWidth, Length, per_width};
/// use uom::si::{force::newton, length::meter};
/// let f = |x: f64| -> ForcePerWidth { per_width(Force::new::<newton>(x) / Length::new::<meter>(1.0)) };
/// assert!((engesser(f(1.0), f(4.0)).value - 0.8).abs() < 1e-15);
/// ```
#[must_use]
pub fn engesser(euler: ForcePerWidth, shear: ShearStiffness) -> ForcePerWidth {
    euler / (1.0 + (euler / shear).value)
}

/// Compression at which a sandwich strip buckles, Haringx's form: right where the shear modulus was measured at small
/// strain and the skins are strained much; never below [`engesser`].
///
/// ```text
/// P = (S/2) (√(1 + 4 P_E/S) − 1)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `P` | force per width |
/// | `P_E` | [`euler`] |
/// | `S` | shear stiffness per width |
///
/// # Validity
/// As [`engesser`].
///
/// # Source
/// [`DERIVED`](crate::source::DERIVED). [`BAZANT_2003`](crate::source::BAZANT_2003) sets the
/// two forms side by side (read in an excerpt).
///
/// # Examples
/// `P_E` = `S` = 1 N/m: `(√5 − 1)/2` = 0.61803 N/m.
/// ```
/// use skinspan::closed_form::columns::haringx;
/// use skinspan::units::{Force, ForcePerWidth, Length, per_width};
/// use uom::si::{force::newton, length::meter};
/// let f = |x: f64| -> ForcePerWidth { per_width(Force::new::<newton>(x) / Length::new::<meter>(1.0)) };
/// assert!((haringx(f(1.0), f(1.0)).value - 0.618034).abs() < 1e-6);
/// ```
#[must_use]
pub fn haringx(euler: ForcePerWidth, shear: ShearStiffness) -> ForcePerWidth {
    // 2 P_E/(1 + √…) is the same without the difference of two near numbers when P_E is small against S.
    let root = (1.0 + 4.0 * (euler / shear).value).sqrt();
    si(2.0 * euler.value / (1.0 + root))
}
