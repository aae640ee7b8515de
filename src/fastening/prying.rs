//! Prying: a foot that bends levers its bolt.

use crate::units::{Length, Ratio};

/// Force in a bolt over the pull that it is there for, in an elastic foot.
///
/// ```text
///               3 m²
///   k = 1 + ------------
///           2 n (3 m + n)
/// ```
///
/// | symbol | meaning                                                        | argument       |
/// |--------|----------------------------------------------------------------|----------------|
/// | *m*    | from the bolt to the web or body that pulls                    | `bolt_to_web`  |
/// | *n*    | from the bolt to the edge of the foot, on the other side       | `bolt_to_edge` |
///
/// Upper bound for a foot of even thickness: base and bolt do not give at all. The foot is a beam that cannot turn at
/// the web, is held down at the bolt and rests on its edge. The thickness drops out: it decides by how much a real bolt
/// and base give way and so how far below this the truth lies. With *n* = 1.25 *m* the answer is 1.28.
///
/// # Validity
///
/// Cast, plastic and thin metal feet below yield, and loads that come again and again. A ductile foot at its limit
/// is [`TeeStub`](super::TeeStub). A foot on bare board or on a thick gasket pries less.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): beam theory; checked by stiffness matrices.
///
/// # Examples
///
/// *m* = 20 mm, *n* = 25 mm: 1 + 1200/(50 × 85) = 1.2824.
///
/// ```
/// use skinspan::{fastening::elastic_prying_factor, units::Length};
/// use uom::si::length::millimeter;
/// let mm = Length::new::<millimeter>;
/// assert!((elastic_prying_factor(mm(20.0), mm(25.0)).value - 1.2824).abs() < 1e-4);
/// ```
#[must_use]
pub fn elastic_prying_factor(bolt_to_web: Length, bolt_to_edge: Length) -> Ratio {
    let (m, n) = (bolt_to_web, bolt_to_edge);
    Ratio::from(1.0) + 3.0 * m * m / (2.0 * n * (3.0 * m + n))
}
