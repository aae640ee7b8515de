//! A load near the end of a backing strip.

use crate::units::Length;

/// Length over which a load leaves a strip, when the strip ends beside it.
///
/// ```text
///   L = L_∞/max(m, n)                               x = 2 a/L_∞
///   m = 1 + e^(−2x) (2 + cos 2x − sin 2x)           under the load
///   n = 4 e^(−x) cos x                              at the end
/// ```
///
/// The strip rests on the panel along its sides as a beam on a bed of springs. Far from its ends the greatest load per
/// length under *P* is *Pλ*/2 = *P*/`L_∞`; at a free end it is four times that.
///
/// | symbol | meaning                                                       | argument       |
/// |--------|---------------------------------------------------------------|----------------|
/// | `L_∞`  | length over which the load leaves a long strip: the load over the greatest load per length | `length` |
/// | *a*    | distance of the load from the end of the strip                | `end_distance` |
///
/// # Validity
///
/// Panel that answers each length of strip for itself. Strip longer than `L_∞` on the other side. For *x* between 0.7
/// and 1.2 the greatest load per length lies between the load and the end, up to 3 % above this. An end one `L_∞` away
/// costs 4 %. The shear-out of a fixing towards the end is [`shear_out_capacity`](super::shear_out_capacity).
///
/// # Source
///
/// [`HETENYI_1946`](crate::source::HETENYI_1946), beam with a free end (from memory); [`DERIVED`](crate::source::DERIVED),
/// checked against a numerical solution.
///
/// # Examples
///
/// `L_∞` = 200 mm: 50 mm at the very end; at 157.08 mm, *x* = π/2: 200/(1 + e^(−π)) = 191.7 mm.
///
/// ```
/// use skinspan::{fastening::effective_length_near_end, units::Length};
/// use uom::si::length::millimeter;
/// let mm = Length::new::<millimeter>;
/// let length = |a: f64| effective_length_near_end(mm(200.0), mm(a)).get::<millimeter>();
/// assert!((length(0.0) - 50.0).abs() < 1e-9 && (length(157.0796) - 191.7).abs() < 0.02);
/// ```
#[must_use]
pub fn effective_length_near_end(length: Length, end_distance: Length) -> Length {
    let x = (2.0 * end_distance / length).value;
    let under = 1.0 + (-2.0 * x).exp() * (2.0 + (2.0 * x).cos() - (2.0 * x).sin());
    let end = 4.0 * (-x).exp() * x.cos();
    length / under.max(end)
}
