//! Stress of a skin right beside a backing, an insert or a foot.

use crate::units::{Length, MomentPerWidth, Pressure, plain};

/// Largest stress at the surface of a skin beside a hard edge.
///
/// ```text
///   σ = |σ_m| + 6 |m|/t²
/// ```
///
/// | symbol | meaning                                                            | argument   |
/// |--------|--------------------------------------------------------------------|------------|
/// | `σ_m`  | membrane stress of the skin: of the panel's moment and of loads in its plane | `membrane` |
/// | *m*    | moment of this skin about its own middle: [`skin_moment_at_edge`] or [`skin_moment_at_round_edge`], and its share `D_f/D` of the panel's moment | `moment` |
/// | *t*    | thickness of the skin                                              | `thickness` |
///
/// [`skin_moment_at_edge`]: crate::strength::skin_moment_at_edge
/// [`skin_moment_at_round_edge`]: crate::strength::skin_moment_at_round_edge
///
/// # Validity
///
/// One homogeneous layer; for a laminate take the moment to its plies. Both signs add: one surface always has them.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): bending of a rectangular section.
///
/// # Examples
///
/// 20 MPa and 25.69 N·mm/mm in 2 mm: 20 + 38.5 = 58.5 MPa.
///
/// ```
/// use skinspan::{fastening::skin_stress_at_backing, units::{Force, Length, Pressure, per_width}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mpa = Pressure::new::<megapascal>;
/// let m = per_width(Force::new::<newton>(25.69)); // N·mm/mm
/// let sigma = skin_stress_at_backing(mpa(-20.0), m, Length::new::<millimeter>(2.0));
/// assert!((sigma.get::<megapascal>() - 58.535).abs() < 1e-3);
/// ```
#[must_use]
pub fn skin_stress_at_backing(membrane: Pressure, moment: MomentPerWidth, thickness: Length) -> Pressure {
    membrane.abs() + 6.0 * plain(moment).abs() / (thickness * thickness)
}
