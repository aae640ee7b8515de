//! Moduli of a whole laminate, as a coupon would show them.

use super::{Laminate, inverse};
use crate::units::{Pressure, Ratio};

/// In-plane moduli of a laminate that is kept flat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InPlaneConstants {
    /// Modulus along `x`.
    pub ex: Pressure,
    /// Modulus along `y`.
    pub ey: Pressure,
    /// Shear modulus.
    pub gxy: Pressure,
    /// Contraction along `y` under stress along `x`.
    pub nuxy: Ratio,
}

/// Flexural moduli of a laminate: those of a homogeneous plate of the same thickness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlexuralConstants {
    /// A narrow strip along `x`, free to curl across.
    pub ex: Pressure,
    /// A narrow strip along `y`.
    pub ey: Pressure,
    /// A wide plate bent along `x` to a cylinder.
    pub plate_x: Pressure,
    /// A wide plate bent along `y`.
    pub plate_y: Pressure,
}

impl Laminate {
    /// In-plane moduli.
    #[must_use]
    pub fn in_plane_constants(&self) -> InPlaneConstants {
        let a = inverse(&self.stiffness().a);
        let t = self.thickness().value;
        InPlaneConstants {
            ex: pascal(1.0 / (a[(0, 0)] * t)),
            ey: pascal(1.0 / (a[(1, 1)] * t)),
            gxy: pascal(1.0 / (a[(2, 2)] * t)),
            nuxy: Ratio::from(-a[(0, 1)] / a[(0, 0)]),
        }
    }

    /// Flexural moduli.
    #[must_use]
    pub fn flexural_constants(&self) -> FlexuralConstants {
        let d = self.stiffness().reduced();
        let compliance = inverse(&d);
        let t = self.thickness().value;
        let modulus = |rigidity: f64| pascal(12.0 * rigidity / (t * t * t));
        FlexuralConstants {
            ex: modulus(1.0 / compliance[(0, 0)]),
            ey: modulus(1.0 / compliance[(1, 1)]),
            plate_x: modulus(d[(0, 0)]),
            plate_y: modulus(d[(1, 1)]),
        }
    }
}

fn pascal(value: f64) -> Pressure {
    Pressure::new::<uom::si::pressure::pascal>(value)
}
