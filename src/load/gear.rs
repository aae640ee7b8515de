//! What rolling does to gear. The drag of a body is [`gear_drag`](super::wind::gear_drag), its inertia
//! [`inertia_force`](super::weight::inertia_force).

use std::f64::consts::PI;

use uom::si::angle::radian;

use super::weight::gravity;
use crate::units::{Acceleration, Angle, Length, Ratio, Time};

/// Acceleration across the boat at the end of a roll, over gravity.
///
/// ```text
///   n = sin θ₀ + θ₀ (2π/T)² z / g
/// ```
///
/// | symbol | meaning                                         | argument |
/// |--------|-------------------------------------------------|----------|
/// | *θ₀*   | roll to one side                                | `angle`  |
/// | *T*    | time from one side to the other and back        | `period` |
/// | *z*    | height above the axis that the boat rolls about | `height` |
///
/// # Validity
///
/// Even rolling, θ₀ sin(2π*t*/*T*), across the deck as it leans; weight and swing are greatest together, at the end of the
/// roll, to the same side above the axis. Sway and yaw are not in it.
///
/// # Errors
///
/// Gives `None` where the period is not above zero.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): harmonic motion.
///
/// # Examples
///
/// 25° in 4 s, 1 m up: 0.42262 + 0.43633 × 2.4674/9.80665 = 0.53240.
///
/// ```
/// use skinspan::{load::gear::roll_acceleration, units::{Angle, Length, Time}};
/// use uom::si::{angle::degree, length::meter, ratio::ratio, time::second};
/// let (angle, height) = (Angle::new::<degree>(25.0), Length::new::<meter>(1.0));
/// let n = roll_acceleration(angle, Time::new::<second>(4.0), height).map(|n| n.get::<ratio>());
/// assert!(n.is_some_and(|n| (n - 0.53240).abs() < 1e-5));
/// assert_eq!(roll_acceleration(angle, Time::new::<second>(0.0), height), None);
/// ```
#[must_use]
pub fn roll_acceleration(angle: Angle, period: Time, height: Length) -> Option<Ratio> {
    (period > Time::default()).then(|| {
        let swing: Acceleration = height * angle.get::<radian>() * (2.0 * PI / period) * (2.0 * PI / period);
        Ratio::from(angle.get::<radian>().sin()) + swing / gravity()
    })
}
