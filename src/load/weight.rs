//! Weight and inertia: mass times acceleration in units of gravity.

use uom::si::acceleration::meter_per_second_squared;

use crate::units::{Acceleration, Force, Mass, Ratio};

/// Standard acceleration of gravity, 9.806 65 m/s² by definition.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): a defined value (3rd General Conference on Weights and Measures, 1901).
///
/// # Examples
///
/// ```
/// use uom::si::acceleration::meter_per_second_squared;
/// let g = skinspan::load::weight::gravity();
/// assert_eq!(g.get::<meter_per_second_squared>(), 9.80665);
/// ```
#[must_use]
pub fn gravity() -> Acceleration {
    Acceleration::new::<meter_per_second_squared>(9.80665)
}

/// Force of a mass under an acceleration counted in units of gravity.
///
/// ```text
///   F = n m g
/// ```
///
/// | symbol | meaning                                        | argument   |
/// |--------|------------------------------------------------|------------|
/// | *n*    | acceleration over gravity; 1 is weight at rest | `multiple` |
/// | *m*    | mass                                           | `mass`     |
///
/// # Validity
///
/// A rigid body on a stiff seat. A springy one swings past this value; that needs its own factor.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): Newton's second law.
///
/// # Examples
///
/// ```
/// use skinspan::load::weight::inertia_force;
/// use uom::si::{f64::{Mass, Ratio}, force::newton, mass::kilogram, ratio::ratio};
/// // 10 kg at 3 g: 10 × 3 × 9.80665 N.
/// let force = inertia_force(Mass::new::<kilogram>(10.0), Ratio::new::<ratio>(3.0));
/// assert!((force.get::<newton>() - 294.1995).abs() < 1e-9);
/// ```
#[must_use]
pub fn inertia_force(mass: Mass, multiple: Ratio) -> Force {
    mass * gravity() * multiple
}
