//! How much of a screw holds.

use crate::units::{Length, Ratio};

/// Length of full thread that may be counted.
///
/// ```text
///   L = min(h − a − b, k d),  not below zero
/// ```
///
/// | symbol | meaning                                                              | argument   |
/// |--------|----------------------------------------------------------------------|------------|
/// | *h*    | how deep the screw goes into the material                            | `depth`    |
/// | *a*    | first turns that a chamfer or the tapping tears out                  | `lead_in`  |
/// | *b*    | tip of the screw, and end of the tap in a blind hole                 | `tip`      |
/// | *d*    | diameter of the screw                                                | `diameter` |
/// | *k*    | longest engagement that is credited, over the diameter               | `credit`   |
///
/// # Validity
///
/// The limit stands for turns that do not share the load evenly; which one to take is the caller's criterion.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): what is left. Deducting the tip is the rule for lag screws in
/// [`NDS_2018`](crate::source::NDS_2018), 12.2.1.1 (its table was read).
///
/// # Examples
///
/// 25 mm deep, 1 mm torn at the top, 2 mm of tip, M6, four diameters credited: 22 mm; 30 mm deep gives 24 mm.
///
/// ```
/// use skinspan::{fastening::effective_engagement, units::{Length, Ratio}};
/// use uom::si::length::millimeter;
/// let mm = Length::new::<millimeter>;
/// let l = |depth| effective_engagement(mm(depth), mm(1.0), mm(2.0), mm(6.0), Ratio::from(4.0)).get::<millimeter>();
/// assert!((l(25.0) - 22.0).abs() < 1e-12 && (l(30.0) - 24.0).abs() < 1e-12);
/// assert_eq!(l(2.0), 0.0);
/// ```
#[must_use]
pub fn effective_engagement(depth: Length, lead_in: Length, tip: Length, diameter: Length, credit: Ratio) -> Length {
    let (full, limit) = (depth - lead_in - tip, credit * diameter);
    let length = if full > limit { limit } else { full };
    if length.value < 0.0 { Length::default() } else { length }
}
