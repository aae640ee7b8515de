//! Quantities: what `uom` names, what it does not name, and how the trade writes them.
//!
//! Text has units and structs have quantities. Bare `f64` stands only inside matrix code, which converts once on
//! the way in and once on the way out.

mod catalog;
mod display;
mod parse;

use std::marker::PhantomData;

use uom::{
    marker,
    si::{ISQ, Quantity, SI},
    typenum::{Integer, N1, N2, P1, P2, P3, Z0},
};

pub use catalog::{Dimensioned, Entry, QUANTITIES, Step, System, Unit};
pub use display::{both, both_at_most, exact, show, show_as, show_in, usual_unit};
pub use parse::{ParseError, Sign, example, parse, parse_prefix, parse_signed};
pub use uom::si::f64::{
    Acceleration, Angle, Area, ArealMassDensity, Force, Frequency, Length, Mass, MassDensity, Pressure, Ratio,
    TemperatureCoefficient, TemperatureInterval, ThermodynamicTemperature, Time, Torque, Velocity, Volume,
};

/// Kind of quantities that are counted per unit width of a panel.
///
/// A moment per width has the dimension of a force, and a rigidity per width that of a moment. The kind keeps them
/// apart: adding a moment per width to a force does not compile.
///
/// ```compile_fail,E0308
/// use skinspan::units::{Force, MomentPerWidth};
/// fn wrong(force: Force, moment: MomentPerWidth) -> Force { force + moment }
/// ```
pub trait PerWidthKind:
    marker::Add
    + marker::AddAssign
    + marker::Sub
    + marker::SubAssign
    + marker::Mul
    + marker::MulAssign
    + marker::Div
    + marker::DivAssign
    + marker::Neg
{
}

type PerWidth<L, M, T> = Quantity<ISQ<L, M, T, Z0, Z0, Z0, Z0, dyn PerWidthKind>, SI<f64>, f64>;
type Plain<L, M, T> = Quantity<ISQ<L, M, T, Z0, Z0, Z0, Z0, dyn uom::Kind>, SI<f64>, f64>;

/// Force per unit width, N/m: shear, skin force, reaction along a pipe.
pub type ForcePerWidth = PerWidth<Z0, P1, N2>;
/// Transverse shear stiffness per unit width, N/m.
pub type ShearStiffness = ForcePerWidth;
/// Bending moment per unit width, N·m/m.
pub type MomentPerWidth = PerWidth<P1, P1, N2>;
/// Flexural rigidity per unit width, N·m²/m.
pub type FlexuralRigidity = PerWidth<P2, P1, N2>;
/// Curvature and wave numbers, 1/m.
pub type Curvature = Plain<N1, Z0, Z0>;
/// Stiffness of a spring, force per deflection, N/m.
pub type Stiffness = Plain<Z0, P1, N2>;
/// Bending rigidity of a beam, N·m².
pub type BeamRigidity = Plain<P3, P1, N2>;
/// Modulus of an elastic foundation, pressure per deflection, N/m³.
pub type FoundationModulus = Plain<N2, P1, N2>;
/// Mass per unit length, kg/m.
pub type LinearMassDensity = uom::si::f64::LinearMassDensity;

/// Takes a plain quantity as one per unit width.
///
/// ```
/// use skinspan::units::{Length, MomentPerWidth, Pressure, per_width};
/// use uom::si::{length::meter, pressure::pascal};
/// let (q, span) = (Pressure::new::<pascal>(800.0), Length::new::<meter>(1.0));
/// let moment: MomentPerWidth = per_width(q * span * span / 8.0);
/// assert_eq!(moment.value, 100.0); // N·m per m
/// ```
#[must_use]
pub fn per_width<L: Integer, M: Integer, T: Integer>(q: Plain<L, M, T>) -> PerWidth<L, M, T> {
    Quantity { dimension: PhantomData, units: PhantomData, value: q.value }
}

/// Takes a quantity per unit width as a plain one, for products whose kind `uom` cannot follow.
#[must_use]
pub fn plain<L: Integer, M: Integer, T: Integer>(q: PerWidth<L, M, T>) -> Plain<L, M, T> {
    Quantity { dimension: PhantomData, units: PhantomData, value: q.value }
}

/// A quantity from its value in SI base units: the way out of matrix code.
pub(crate) fn si<D: uom::si::Dimension + ?Sized>(value: f64) -> Quantity<D, SI<f64>, f64> {
    Quantity { dimension: PhantomData, units: PhantomData, value }
}
