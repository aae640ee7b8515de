//! How far a hole must stay from an end, from a side and from its neighbour, so that bearing governs.

use crate::units::Length;

/// End distance over diameter.
const END: f64 = 4.0;
/// Side distance over diameter.
const SIDE: f64 = 2.5;

/// Distance of a hole from the edge towards which it is loaded.
///
/// ```text
///   e ≥ 4 d
/// ```
///
/// | symbol | meaning              | argument   |
/// |--------|----------------------|------------|
/// | *d*    | diameter of the bolt | `diameter` |
///
/// # Validity
///
/// Glass fabric and polyester, 1/8 and 1/4 in thick, loaded along, across and at 45° to the warp, dry and wet.
///
/// # Source
///
/// [`FPL_1824`](crate::source::FPL_1824), summary (read): with it none of about 400 tests failed towards the end.
///
/// # Examples
///
/// M6: 24 mm.
///
/// ```
/// use skinspan::{fastening::end_distance_needed, units::Length};
/// use uom::si::length::millimeter;
/// let e = end_distance_needed(Length::new::<millimeter>(6.0));
/// assert!((e.get::<millimeter>() - 24.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn end_distance_needed(diameter: Length) -> Length {
    END * diameter
}

/// Distance of a hole from an edge along which it is loaded.
///
/// ```text
///   e ≥ 2.5 d
/// ```
///
/// | symbol | meaning              | argument   |
/// |--------|----------------------|------------|
/// | *d*    | diameter of the bolt | `diameter` |
///
/// # Validity
///
/// As [`end_distance_needed`].
///
/// # Source
///
/// [`FPL_1824`](crate::source::FPL_1824), summary (read).
///
/// # Examples
///
/// M6: 15 mm.
///
/// ```
/// use skinspan::{fastening::side_distance_needed, units::Length};
/// use uom::si::length::millimeter;
/// let e = side_distance_needed(Length::new::<millimeter>(6.0));
/// assert!((e.get::<millimeter>() - 15.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn side_distance_needed(diameter: Length) -> Length {
    SIDE * diameter
}

/// Pitch of a row of bolts across the load.
///
/// ```text
///   s ≥ 5 d
/// ```
///
/// | symbol | meaning              | argument   |
/// |--------|----------------------|------------|
/// | *d*    | diameter of the bolt | `diameter` |
///
/// # Validity
///
/// As [`end_distance_needed`].
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED) from [`side_distance_needed`]: the line midway between two bolts is a side of
/// each.
///
/// # Examples
///
/// M6: 30 mm.
///
/// ```
/// use skinspan::{fastening::pitch_needed, units::Length};
/// use uom::si::length::millimeter;
/// let s = pitch_needed(Length::new::<millimeter>(6.0));
/// assert!((s.get::<millimeter>() - 30.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn pitch_needed(diameter: Length) -> Length {
    2.0 * side_distance_needed(diameter)
}
