//! People on the top.

use crate::{
    load::weight::inertia_force,
    units::{Force, Mass, Ratio},
};

/// Force of a person who steps.
///
/// ```text
///   F = k m g
/// ```
///
/// | symbol | meaning                                        | argument  |
/// |--------|------------------------------------------------|-----------|
/// | *m*    | mass of the person                             | `mass`    |
/// | *k*    | step factor: 1 standing still, more for a step | `dynamic` |
///
/// # Validity
///
/// One foot carries all. A jump is more than a step.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): Newton's second law; the step factor is a criterion.
///
/// # Examples
///
/// ```
/// use skinspan::load::people::person_force;
/// use uom::si::{f64::{Mass, Ratio}, force::newton, mass::kilogram, ratio::ratio};
/// let f = person_force(Mass::new::<kilogram>(100.0), Ratio::new::<ratio>(1.5));
/// assert!((f.get::<newton>() - 1470.9975).abs() < 1e-9);
/// ```
#[must_use]
pub fn person_force(mass: Mass, dynamic: Ratio) -> Force {
    inertia_force(mass, dynamic)
}
