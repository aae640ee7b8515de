//! Names of storms.

use uom::si::velocity::meter_per_second;

use crate::units::Velocity;

/// Class of a hurricane by its sustained wind at 10 m, mean of one minute.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Storm {
    /// Below 39 mph.
    Below,
    /// 39 to 73 mph.
    Tropical,
    /// Hurricane category, 1 to 5.
    Hurricane(u8),
}

impl Storm {
    /// Class that a sustained wind belongs to.
    ///
    /// ```text
    ///   lower bounds, mph: tropical 39, hurricane 74, 96, 111, 130, 157
    /// ```
    ///
    /// | symbol | meaning                            | argument    |
    /// |--------|------------------------------------|-------------|
    /// | *V*    | sustained wind at 10 m, one minute | `sustained` |
    ///
    /// # Validity
    ///
    /// The class names the wind to a reader; no load is derived from it. The scale is set in whole miles an hour, so a
    /// speed between two classes is rounded to whole ones first.
    ///
    /// # Source
    ///
    /// [`SAFFIR_SIMPSON`](crate::source::SAFFIR_SIMPSON), table of categories (read).
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::load::wind::Storm;
    /// use uom::si::{f64::Velocity, velocity::meter_per_second};
    /// let mph = |v: f64| Velocity::new::<meter_per_second>(0.44704 * v);
    /// assert_eq!(Storm::of(mph(100.0)), Storm::Hurricane(2));
    /// ```
    #[must_use]
    pub fn of(sustained: Velocity) -> Self {
        let mph = (sustained.get::<meter_per_second>() / 0.44704).round();
        match mph {
            v if v >= 157.0 => Self::Hurricane(5),
            v if v >= 130.0 => Self::Hurricane(4),
            v if v >= 111.0 => Self::Hurricane(3),
            v if v >= 96.0 => Self::Hurricane(2),
            v if v >= 74.0 => Self::Hurricane(1),
            v if v >= 39.0 => Self::Tropical,
            _ => Self::Below,
        }
    }
}
