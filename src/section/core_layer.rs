//! What lies between the skins: foam, a solid backing, or either with a conduit through it.

use std::fmt;

use nalgebra::Matrix3;
use uom::ConstZero;

use super::Axis;
use crate::units::{Length, Pressure, Ratio, TemperatureCoefficient};

/// Core, or a solid backing in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoreLayer {
    /// Distance between the skins.
    pub thickness: Length,
    /// In-plane modulus along `x`; may be zero.
    pub e_x: Pressure,
    /// In-plane modulus along `y`; may be zero.
    pub e_y: Pressure,
    /// In-plane Poisson's ratio, strain along `y` under stress along `x`.
    pub nu: Ratio,
    /// Shear modulus across the thickness, spanning along `x`.
    pub g_xz: Pressure,
    /// Shear modulus across the thickness, spanning along `y`.
    pub g_yz: Pressure,
    /// Thermal expansion.
    pub alpha: TemperatureCoefficient,
}

/// Why a core cannot exist.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InvalidCore {
    /// The thickness is zero, negative or not a number.
    Thickness,
    /// An in-plane modulus is negative or not a number.
    Modulus,
    /// `nu²` is not below `Ex/Ey`.
    PoissonRatio,
    /// A shear modulus is zero, negative or not a number.
    ShearModulus,
    /// The thermal expansion is not finite.
    Expansion,
}

impl fmt::Display for InvalidCore {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Thickness => "the core thickness must be greater than zero",
            Self::Modulus => "the in-plane moduli of the core must not be negative",
            Self::PoissonRatio => "Poisson's ratio of the core must be smaller in size than the square root of Ex/Ey",
            Self::ShearModulus => "the shear moduli of the core must be greater than zero",
            Self::Expansion => "the thermal expansion of the core must be finite",
        })
    }
}

impl std::error::Error for InvalidCore {}

impl CoreLayer {
    /// A core that is the same in every direction of its plane.
    ///
    /// `shear_modulus` is given apart from `modulus`, since foam is stiffer through its thickness than in its plane.
    #[must_use]
    pub fn isotropic(
        thickness: Length,
        modulus: Pressure,
        nu: Ratio,
        shear_modulus: Pressure,
        alpha: TemperatureCoefficient,
    ) -> Self {
        Self { thickness, e_x: modulus, e_y: modulus, nu, g_xz: shear_modulus, g_yz: shear_modulus, alpha }
    }

    /// Lets through only a core that can exist.
    ///
    /// ```text
    /// c > 0,  Ex >= 0,  Ey >= 0,  nu² Ey/Ex < 1,  G > 0
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `c` | thickness |
    /// | `Ex`, `Ey`, `nu` | in-plane moduli and Poisson's ratio |
    /// | `G` | each shear modulus across the thickness |
    ///
    /// # Validity
    /// Homogeneous core.
    ///
    /// # Errors
    /// [`InvalidCore`] names the first condition that fails.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED), the stiffness stores energy.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let hollow = CoreLayer { g_xz: Pressure::ZERO, ..core };
    /// assert_eq!(hollow.checked(), Err(InvalidCore::ShearModulus));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn checked(self) -> Result<Self, InvalidCore> {
        let finite = |p: Pressure| p.is_finite();
        if !(self.thickness > Length::ZERO && self.thickness.is_finite()) {
            Err(InvalidCore::Thickness)
        } else if ![self.e_x, self.e_y].into_iter().all(|e| e >= Pressure::ZERO && finite(e)) {
            Err(InvalidCore::Modulus)
        } else if !(self.nu.is_finite() && self.contraction() < 1.0) {
            Err(InvalidCore::PoissonRatio)
        } else if ![self.g_xz, self.g_yz].into_iter().all(|g| g > Pressure::ZERO && finite(g)) {
            Err(InvalidCore::ShearModulus)
        } else if !self.alpha.is_finite() {
            Err(InvalidCore::Expansion)
        } else {
            Ok(self)
        }
    }

    /// Shear modulus across the thickness for a span along `axis`.
    #[must_use]
    pub const fn shear_modulus(&self, axis: Axis) -> Pressure {
        match axis {
            Axis::X => self.g_xz,
            Axis::Y => self.g_yz,
        }
    }

    /// In-plane modulus along `axis`.
    #[must_use]
    pub const fn modulus(&self, axis: Axis) -> Pressure {
        match axis {
            Axis::X => self.e_x,
            Axis::Y => self.e_y,
        }
    }

    /// The core of a strip with a conduit or other void in it.
    ///
    /// ```text
    /// E' = r E,   G' = r G
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `r` | share of the core's area that is left in the cut considered |
    /// | `E`, `G` | each modulus of the core |
    ///
    /// # Validity
    /// An upper bound of the local stiffness: a round hole disturbs more than its area. No published source.
    ///
    /// # Source
    /// Our assumption, net area. [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// A 20 mm tube of every 80 mm width.
    /// ```
    /// use skinspan::{section::CoreLayer, units::{Length, Pressure, Ratio, TemperatureCoefficient}};
    /// use uom::{ConstZero, si::{length::millimeter, pressure::megapascal, ratio::ratio}};
    /// let core = CoreLayer::isotropic(
    ///     Length::new::<millimeter>(20.0),
    ///     Pressure::new::<megapascal>(80.0),
    ///     Ratio::new::<ratio>(0.3),
    ///     Pressure::new::<megapascal>(28.0),
    ///     TemperatureCoefficient::ZERO,
    /// );
    /// let cut = core.with_remaining(Ratio::new::<ratio>(0.75));
    /// assert!((cut.g_xz.get::<megapascal>() - 21.0).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn with_remaining(self, r: Ratio) -> Self {
        Self { e_x: self.e_x * r, e_y: self.e_y * r, g_xz: self.g_xz * r, g_yz: self.g_yz * r, ..self }
    }

    /// `nu_xy nu_yx`.
    fn contraction(&self) -> f64 {
        let product = self.nu.value * self.nu.value;
        if self.e_y == Pressure::ZERO { 0.0 } else { product * (self.e_y / self.e_x).value }
    }

    /// Plane-stress stiffness, Pa. The in-plane shear modulus, which hardly matters, is
    /// `√(Ex Ey)/(2(1 + √(nu_xy nu_yx)))`: exact for an isotropic core, our assumption for any other.
    pub(crate) fn q(&self) -> Matrix3<f64> {
        let (e_x, e_y, nu) = (self.e_x.value, self.e_y.value, self.nu.value);
        let scale = 1.0 / (1.0 - self.contraction());
        let q12 = nu * e_y * scale;
        let g = (e_x * e_y).sqrt() / (2.0 * (1.0 + self.contraction().sqrt().copysign(nu)));
        Matrix3::new(e_x * scale, q12, 0.0, q12, e_y * scale, 0.0, 0.0, 0.0, g)
    }
}
