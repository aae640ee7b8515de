//! People on the top: what one weighs, what he stands on, where two stand.

use std::f64::consts::FRAC_PI_4;

use crate::{
    load::weight::inertia_force,
    units::{Area, Force, Length, Mass, Pressure, Ratio},
};

/// What of a person touches the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Footprint {
    /// A shoe or a heel, taken as a square.
    Square {
        /// Side of the square.
        side: Length,
    },
    /// A knee or an elbow, taken as a disc.
    Disc {
        /// Diameter of the disc.
        diameter: Length,
    },
}

impl Footprint {
    /// Area of contact.
    ///
    /// ```text
    ///   square  A = s²        disc  A = π d² / 4
    /// ```
    ///
    /// | symbol | meaning  | field      |
    /// |--------|----------|------------|
    /// | *s*    | side     | `side`     |
    /// | *d*    | diameter | `diameter` |
    ///
    /// # Validity
    ///
    /// Exact for the figure; the figure stands in for a shoe or a knee.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): geometry.
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::load::people::Footprint;
    /// use uom::si::{area::square_meter, f64::Length, length::meter};
    /// let shoe = Footprint::Square { side: Length::new::<meter>(0.1) };
    /// assert!((shoe.area().get::<square_meter>() - 0.01).abs() < 1e-15);
    /// ```
    #[must_use]
    pub fn area(&self) -> Area {
        match *self {
            Self::Square { side } => side * side,
            Self::Disc { diameter } => FRAC_PI_4 * diameter * diameter,
        }
    }

    /// Mean pressure under a force.
    ///
    /// ```text
    ///   p = F / A
    /// ```
    ///
    /// | symbol | meaning                | argument |
    /// |--------|------------------------|----------|
    /// | *F*    | force on the footprint | `force`  |
    /// | *A*    | area of contact        | `self`   |
    ///
    /// # Validity
    ///
    /// Soft sole on a stiff skin; below the skin the load spreads further.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): definition of pressure.
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::load::people::Footprint;
    /// use uom::si::{f64::{Force, Length}, force::newton, length::meter, pressure::pascal};
    /// let heel = Footprint::Square { side: Length::new::<meter>(0.065) };
    /// // 823 N on 65 mm × 65 mm: 0.195 MPa
    /// let p = heel.pressure(Force::new::<newton>(823.0)).get::<pascal>();
    /// assert!((p - 194_793.0).abs() < 1.0);
    /// ```
    #[must_use]
    pub fn pressure(&self, force: Force) -> Pressure {
        force / self.area()
    }
}

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

/// Places of people side by side on a line, measured from the middle of the group.
///
/// ```text
///   x_i = (i − (n − 1)/2) s        i = 0 … n − 1
/// ```
///
/// | symbol | meaning                       | argument  |
/// |--------|-------------------------------|-----------|
/// | *n*    | number of people              | `people`  |
/// | *s*    | distance from one to the next | `spacing` |
///
/// # Validity
///
/// The middle of the group is the centre of its load.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): geometry.
///
/// # Examples
///
/// ```
/// use skinspan::load::people::side_by_side;
/// use uom::si::{f64::Length, length::meter};
/// let m = |x| Length::new::<meter>(x);
/// assert_eq!(side_by_side(2, m(0.5)), [m(-0.25), m(0.25)]);
/// ```
#[must_use]
pub fn side_by_side(people: u32, spacing: Length) -> Vec<Length> {
    let middle = (f64::from(people) - 1.0) / 2.0;
    (0..people).map(|i| (f64::from(i) - middle) * spacing).collect()
}
