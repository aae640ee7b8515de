//! A skin that tears across its holes.

use crate::units::{Force, Length, Pressure, Ratio};

/// Tension at which a skin tears across a row of holes.
///
/// ```text
///   N = (w − Σd) t f_t/K
/// ```
///
/// | symbol | meaning                                                        | argument        |
/// |--------|----------------------------------------------------------------|-----------------|
/// | *w*    | width that goes with the row: the pitch for one bolt of many   | `width`         |
/// | Σ*d*   | sum of the holes on that width                                 | `holes`         |
/// | *t*    | thickness                                                      | `thickness`     |
/// | `f_t`  | tensile strength                                               | `strength`      |
/// | *K*    | how much the rim of the hole is stressed above the mean at failure; 1 for a metal that yields | `concentration` |
///
/// # Validity
///
/// Straight row across the load. None when the holes leave nothing.
///
/// # Source
///
/// [`SHIGLEY_9`](crate::source::SHIGLEY_9), example 8–6, tensile yielding across bolt holes (read), with *K* = 1.
///
/// # Examples
///
/// *w* = 30 mm, one hole of 6 mm, *t* = 2 mm, 150 MPa, *K* = 2: 24 × 2 × 75 = 3600 N.
///
/// ```
/// use skinspan::{fastening::net_section_capacity, units::{Length, Pressure, Ratio}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mm, k) = (Length::new::<millimeter>, Ratio::from(2.0));
/// let n = net_section_capacity(mm(30.0), mm(6.0), mm(2.0), Pressure::new::<megapascal>(150.0), k);
/// assert!((n.get::<newton>() - 3600.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn net_section_capacity(
    width: Length,
    holes: Length,
    thickness: Length,
    strength: Pressure,
    concentration: Ratio,
) -> Force {
    (width - holes).max(Length::default()) * thickness * strength / concentration
}
