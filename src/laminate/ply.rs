//! One ply: what it is made of, how thick it is and where its fibres point.

use std::fmt;

use nalgebra::Matrix3;
use uom::ConstZero;

use crate::units::{Angle, Length, Pressure, Ratio, TemperatureCoefficient};

/// Elastic constants of a ply in plane stress; `1` is along the fibres, `2` across them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elastic {
    /// Modulus along the fibres.
    pub e1: Pressure,
    /// Modulus across the fibres.
    pub e2: Pressure,
    /// In-plane shear modulus.
    pub g12: Pressure,
    /// Contraction across the fibres under stress along them.
    pub nu12: Ratio,
    /// Thermal expansion along the fibres.
    pub alpha1: TemperatureCoefficient,
    /// Thermal expansion across the fibres.
    pub alpha2: TemperatureCoefficient,
}

/// Strengths of a ply in its own axes, all of them positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// Tension along the fibres.
    pub xt: Pressure,
    /// Compression along the fibres.
    pub xc: Pressure,
    /// Tension across the fibres.
    pub yt: Pressure,
    /// Compression across the fibres.
    pub yc: Pressure,
    /// In-plane shear.
    pub s: Pressure,
}

/// A ply as it lies in a skin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ply {
    /// Elastic constants.
    pub elastic: Elastic,
    /// Strengths, if known; a skin with an unknown ply can be stiff but not checked.
    pub strength: Option<Strength>,
    /// Cured thickness.
    pub thickness: Length,
    /// From the `x` axis of the top to the fibres.
    pub angle: Angle,
}

/// Why a ply cannot exist.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InvalidPly {
    /// A modulus is zero, negative or not a number.
    Modulus,
    /// `|nu12|` is not below `sqrt(E1/E2)`, so that some strain would set energy free.
    PoissonRatio,
    /// An expansion coefficient or an angle is not finite.
    NotFinite,
    /// The thickness is zero, negative or not a number.
    Thickness,
    /// A strength is zero, negative or not a number.
    Strength,
}

impl fmt::Display for InvalidPly {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Modulus => "each modulus must be greater than zero",
            Self::PoissonRatio => "Poisson's ratio must be smaller in size than the square root of E1/E2",
            Self::NotFinite => "expansion and angle must be finite",
            Self::Thickness => "the thickness must be greater than zero",
            Self::Strength => "each strength must be greater than zero",
        })
    }
}

impl std::error::Error for InvalidPly {}

impl Elastic {
    /// Lets through only constants of a material that stores energy under every strain.
    ///
    /// ```text
    /// E1 > 0,  E2 > 0,  G12 > 0,  nu12² < E1/E2
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `E1`, `E2` | moduli along and across the fibres |
    /// | `G12` | in-plane shear modulus |
    /// | `nu12` | Poisson's ratio, strain across under stress along |
    ///
    /// # Validity
    /// Plane stress; orthotropic, linear.
    ///
    /// # Errors
    /// [`InvalidPly`] names the first condition that fails.
    ///
    /// # Source
    /// [`JONES_1999`](crate::source::JONES_1999), restrictions on engineering constants, ch. 2; derived (the stiffness
    /// matrix is positive definite).
    ///
    /// # Examples
    /// ```
    /// use skinspan::{laminate::{Elastic, InvalidPly}, units::{Pressure, Ratio, TemperatureCoefficient}};
    /// use uom::si::{pressure::gigapascal, ratio::ratio, temperature_coefficient::per_kelvin};
    /// let glass = Elastic {
    ///     e1: Pressure::new::<gigapascal>(36.0),
    ///     e2: Pressure::new::<gigapascal>(9.0),
    ///     g12: Pressure::new::<gigapascal>(3.0),
    ///     nu12: Ratio::new::<ratio>(0.27),
    ///     alpha1: TemperatureCoefficient::new::<per_kelvin>(7e-6),
    ///     alpha2: TemperatureCoefficient::new::<per_kelvin>(30e-6),
    /// };
    /// assert!(glass.checked().is_ok());
    /// // sqrt(36/9) = 2 is the limit
    /// let wrong = Elastic { nu12: Ratio::new::<ratio>(2.0), ..glass };
    /// assert_eq!(wrong.checked(), Err(InvalidPly::PoissonRatio));
    /// ```
    pub fn checked(self) -> Result<Self, InvalidPly> {
        if ![self.e1, self.e2, self.g12].into_iter().all(positive) {
            return Err(InvalidPly::Modulus);
        }
        let limit = self.e1 / self.e2;
        if !(self.nu12.is_finite() && self.nu12 * self.nu12 < limit) {
            return Err(InvalidPly::PoissonRatio);
        }
        if !(self.alpha1.is_finite() && self.alpha2.is_finite()) {
            return Err(InvalidPly::NotFinite);
        }
        Ok(self)
    }

    /// Constants of a material that is the same in every direction of its plane.
    ///
    /// ```text
    /// E1 = E2 = E,  nu12 = nu,  G12 = E/(2(1 + nu)),  alpha1 = alpha2 = alpha
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `E` | modulus |
    /// | `nu` | Poisson's ratio |
    /// | `alpha` | thermal expansion |
    ///
    /// # Validity
    /// Chopped mat, gelcoat, metal, foam.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED), isotropic elasticity.
    ///
    /// # Examples
    /// ```
    /// use skinspan::{laminate::Elastic, units::{Pressure, Ratio, TemperatureCoefficient}};
    /// use uom::si::{pressure::gigapascal, ratio::ratio, temperature_coefficient::per_kelvin};
    /// let mat = Elastic::isotropic(
    ///     Pressure::new::<gigapascal>(7.8),
    ///     Ratio::new::<ratio>(0.3),
    ///     TemperatureCoefficient::new::<per_kelvin>(25e-6),
    /// );
    /// assert!((mat.g12.get::<gigapascal>() - 3.0).abs() < 1e-12); // 7.8/2.6
    /// ```
    #[must_use]
    pub fn isotropic(e: Pressure, nu: Ratio, alpha: TemperatureCoefficient) -> Self {
        Self { e1: e, e2: e, g12: e / (2.0 * (1.0 + nu.value)), nu12: nu, alpha1: alpha, alpha2: alpha }
    }

    /// Plane-stress stiffness in the ply's own axes, Pa.
    pub(crate) fn q(&self) -> Matrix3<f64> {
        let (e1, e2, nu12) = (self.e1.value, self.e2.value, self.nu12.value);
        let scale = 1.0 / (1.0 - nu12 * nu12 * e2 / e1);
        let q12 = nu12 * e2 * scale;
        Matrix3::new(e1 * scale, q12, 0.0, q12, e2 * scale, 0.0, 0.0, 0.0, self.g12.value)
    }
}

impl Ply {
    /// Lets through only a ply that can exist: valid constants, thickness and strengths greater than zero.
    ///
    /// # Errors
    /// [`InvalidPly`] names the first condition that fails.
    pub fn checked(self) -> Result<Self, InvalidPly> {
        self.elastic.checked()?;
        if !(self.thickness > Length::ZERO && self.thickness.is_finite()) {
            return Err(InvalidPly::Thickness);
        }
        if !self.angle.is_finite() {
            return Err(InvalidPly::NotFinite);
        }
        if let Some(Strength { xt, xc, yt, yc, s }) = self.strength
            && ![xt, xc, yt, yc, s].into_iter().all(positive)
        {
            return Err(InvalidPly::Strength);
        }
        Ok(self)
    }

    /// Takes laminate strain `(x, y, xy)` to strain in the ply's own axes; shear strain is the engineering one.
    pub(crate) fn strain_transform(&self) -> Matrix3<f64> {
        let (s, c) = self.angle.value.sin_cos();
        Matrix3::new(c * c, s * s, c * s, s * s, c * c, -c * s, -2.0 * c * s, 2.0 * c * s, c * c - s * s)
    }

    /// Plane-stress stiffness in laminate axes, Pa. Strain energy does not depend on axes, hence `Tᵀ Q T`.
    pub(crate) fn q_bar(&self) -> Matrix3<f64> {
        let t = self.strain_transform();
        t.transpose() * self.elastic.q() * t
    }
}

fn positive(p: Pressure) -> bool {
    p > Pressure::ZERO && p.is_finite()
}
