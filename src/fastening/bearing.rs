//! Bearing of a bolt against the wall of its hole, in each skin.

use crate::units::{Force, Length, Pressure, Ratio};

/// From which slenderness a bolt bears on only a part of the strength, because the thin skin buckles out beside it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlenderHole {
    /// Diameter over thickness above which the part counts.
    pub limit: Ratio,
    /// The part of the bearing strength that is left.
    pub left: Ratio,
}

/// Load of a bolt in the plane of one skin at which the wall of the hole is crushed.
///
/// ```text
///   V = κ σ_br d t        κ = 1, or the part that is left where d/t is above the limit
/// ```
///
/// | symbol | meaning                                               | argument    |
/// |--------|-------------------------------------------------------|-------------|
/// | *d*    | diameter of the bolt                                  | `diameter`  |
/// | *t*    | thickness of the skin                                 | `thickness` |
/// | `σ_br` | bearing strength of the skin                          | `strength`  |
/// | *κ*    | what a slender hole leaves of it                      | `slender`   |
///
/// # Validity
///
/// One skin: without a strip or a sleeve between them each skin carries only what comes on it. End and side distances
/// of [`end_distance_needed`](super::end_distance_needed) and
/// [`side_distance_needed`](super::side_distance_needed), or else the other modes govern. Shank in the hole; threads
/// gouge.
///
/// # Source
///
/// [`SHIGLEY_9`](crate::source::SHIGLEY_9), section 8–12 (read: bearing on the projected area *d t*); that stresses
/// fall with *d*/*t*: [`FPL_1824`](crate::source::FPL_1824), summary (read). How much is the caller's.
///
/// # Examples
///
/// 6 mm in 2 mm of 200 MPa: 2400 N. In 1 mm, slenderness 6 above a limit of 4, with 0.6 left: 720 N.
///
/// ```
/// use skinspan::{fastening::{SlenderHole, bearing_capacity}, units::{Length, Pressure, Ratio}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let slender = SlenderHole { limit: Ratio::from(4.0), left: Ratio::from(0.6) };
/// let v = |t: f64| bearing_capacity(mm(6.0), mm(t), Pressure::new::<megapascal>(200.0), slender).get::<newton>();
/// assert!((v(2.0) - 2400.0).abs() < 1e-9 && (v(1.0) - 720.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn bearing_capacity(diameter: Length, thickness: Length, strength: Pressure, slender: SlenderHole) -> Force {
    let whole = strength * (diameter * thickness);
    if diameter / thickness > slender.limit { whole * slender.left } else { whole }
}
