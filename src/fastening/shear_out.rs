//! A bolt that shears out towards the edge: of a skin, of a plate, or of the end of a backing.

use crate::units::{Force, Length, Pressure};

/// Load of a bolt towards an edge at which it shears out.
///
/// ```text
///   V = 2 (e − d/2) t τ
/// ```
///
/// | symbol | meaning                                                  | argument       |
/// |--------|----------------------------------------------------------|----------------|
/// | *e*    | distance of the middle of the hole from the edge         | `end_distance` |
/// | *d*    | diameter of the hole; zero: the planes count from its middle | `hole`     |
/// | *t*    | thickness of what shears: a skin, or the depth of the bolt in a backing | `thickness` |
/// | *τ*    | its shear strength in that plane                         | `strength`     |
///
/// # Validity
///
/// Load straight towards the edge; even shear on both planes. None when the hole breaks through the edge.
///
/// # Source
///
/// [`SHIGLEY_9`](crate::source::SHIGLEY_9), example 8–6, edge shearing (read), with planes from the middle of the hole;
/// from its edge, as here, is the safe side.
///
/// # Examples
///
/// *e* = 23 mm, *d* = 6 mm, *t* = 2 mm, 60 MPa: 2 × 20 × 2 × 60 = 4800 N.
///
/// ```
/// use skinspan::{fastening::shear_out_capacity, units::{Length, Pressure}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let v = |e: f64| shear_out_capacity(mm(e), mm(6.0), mm(2.0), Pressure::new::<megapascal>(60.0)).get::<newton>();
/// assert!((v(23.0) - 4800.0).abs() < 1e-9 && v(2.0) == 0.0);
/// ```
#[must_use]
pub fn shear_out_capacity(end_distance: Length, hole: Length, thickness: Length, strength: Pressure) -> Force {
    let plane = (end_distance - hole / 2.0).max(Length::default());
    2.0 * plane * thickness * strength
}
