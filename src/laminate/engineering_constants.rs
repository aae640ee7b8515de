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
    ///
    /// ```text
    /// Ex = 1/(a11 t),   Ey = 1/(a22 t),   Gxy = 1/(a66 t),   nuxy = −a12/a11,   a = A⁻¹
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `A` | membrane stiffness |
    /// | `t` | thickness |
    ///
    /// # Validity
    /// The laminate is kept flat, as a skin is by the other skin: coupling with bending is left out on purpose.
    ///
    /// # Source
    /// [`JONES_1999`](crate::source::JONES_1999), ch. 4, and [`REDDY_2004`](crate::source::REDDY_2004), ch. 3; from memory, derived.
    ///
    /// # Examples
    /// ```
    /// # use skinspan::{laminate::*, units::*};
    /// # use uom::{ConstZero, si::{angle::degree, length::millimeter, pressure::{gigapascal, megapascal}, ratio::ratio}};
    /// # let gpa = |x: f64| Pressure::new::<gigapascal>(x);
    /// # let mm = |x: f64| Length::new::<millimeter>(x);
    /// let elastic = Elastic {
    ///     e1: gpa(40.0), e2: gpa(10.0), g12: gpa(4.0), nu12: Ratio::ZERO,
    ///     alpha1: TemperatureCoefficient::ZERO, alpha2: TemperatureCoefficient::ZERO,
    /// };
    /// let ply = |angle: f64| Ply { elastic, strength: None, thickness: mm(0.5), angle: Angle::new::<degree>(angle) };
    /// let biaxial = Laminate::new(&[ply(0.0), ply(90.0)])?.in_plane_constants();
    /// assert!((biaxial.ex.get::<gigapascal>() - 25.0).abs() < 1e-12); // (40 + 10)/2
    /// assert!((biaxial.gxy.get::<gigapascal>() - 4.0).abs() < 1e-12);
    /// # Ok::<(), InvalidLaminate>(())
    /// ```
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
    ///
    /// ```text
    /// narrow: E = 12/(d11 t³), d = D*⁻¹      wide: E = 12 D*11/t³
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `D*` | bending stiffness with the membrane free, [`Stiffness::bending_free`](super::Stiffness::bending_free) |
    /// | `t` | thickness |
    /// | `11` | or `22` along `y` |
    ///
    /// # Validity
    /// Thin against its span: no transverse shear.
    ///
    /// # Source
    /// [`REDDY_2004`](crate::source::REDDY_2004), ch. 3; from memory, derived.
    ///
    /// # Examples
    /// An isotropic plate: `E` for a strip, `E/(1 − nu²)` for a plate.
    /// ```
    /// # use skinspan::{laminate::*, units::*};
    /// # use uom::{ConstZero, si::{angle::degree, length::millimeter, pressure::{gigapascal, megapascal}, ratio::ratio}};
    /// # let gpa = |x: f64| Pressure::new::<gigapascal>(x);
    /// # let mm = |x: f64| Length::new::<millimeter>(x);
    /// let elastic = Elastic::isotropic(gpa(9.1), Ratio::new::<ratio>(0.3), TemperatureCoefficient::ZERO);
    /// let ply = Ply { elastic, strength: None, thickness: mm(2.0), angle: Angle::ZERO };
    /// let flexural = Laminate::new(&[ply])?.flexural_constants();
    /// assert!((flexural.ex.get::<gigapascal>() - 9.1).abs() < 1e-12);
    /// assert!((flexural.plate_x.get::<gigapascal>() - 10.0).abs() < 1e-12); // 9.1/0.91
    /// # Ok::<(), InvalidLaminate>(())
    /// ```
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
