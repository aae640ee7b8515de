//! Bow of a top that is hotter on one side.

use crate::units::{Curvature, Length};

/// Rise of the middle of a span over its ends.
///
/// ```text
///   w = κ L²/8
/// ```
///
/// | symbol | meaning                                | argument    |
/// |--------|----------------------------------------|-------------|
/// | *κ*    | curvature of the free top              | `curvature` |
/// | *L*    | span                                   | `span`      |
///
/// # Validity
///
/// Small slope; ends free to turn and to lift. Between corners of a rectangle add the two directions.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): flat arc.
///
/// # Examples
///
/// 0.0338 /m over 1.2 m: 0.0338 × 1.44/8 = 6.1 mm.
///
/// ```
/// use skinspan::{strength::free_bow, units::{Curvature, Length, Ratio}};
/// use uom::si::length::{meter, millimeter};
/// let kappa: Curvature = Ratio::from(0.0338) / Length::new::<meter>(1.0);
/// let bow = free_bow(kappa, Length::new::<meter>(1.2));
/// assert!((bow.get::<millimeter>() - 6.1).abs() < 0.03);
/// ```
#[must_use]
pub fn free_bow(curvature: Curvature, span: Length) -> Length {
    curvature * span * span / 8.0
}
