//! Stiffness of a stack of plies: the A, B and D matrices, and the loads and strains that they connect.

use std::ops::{Add, Mul};

use nalgebra::{Matrix3, Vector3};

use super::{inverse, ply::Ply};
use crate::units::{Curvature, FlexuralRigidity, ForcePerWidth, Length, MomentPerWidth, Ratio, si};

/// Row or column of a plane-stress matrix.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Component {
    /// Along `x`.
    X,
    /// Along `y`.
    Y,
    /// Shear, or twist.
    Xy,
}

impl Component {
    const fn index(self) -> usize {
        match self {
            Self::X => 0,
            Self::Y => 1,
            Self::Xy => 2,
        }
    }
}

macro_rules! triple {
    ($(#[$doc:meta])* $name:ident of $quantity:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Default)]
        pub struct $name {
            /// Along `x`.
            pub x: $quantity,
            /// Along `y`.
            pub y: $quantity,
            /// Shear, or twist; as an engineering strain `dx/dy + dy/dx`, as a curvature twice the twist.
            pub xy: $quantity,
        }

        impl $name {
            pub(crate) fn vector(self) -> Vector3<f64> {
                Vector3::new(self.x.value, self.y.value, self.xy.value)
            }

            pub(crate) fn from_vector(v: Vector3<f64>) -> Self {
                let mut new = Self::default();
                (new.x.value, new.y.value, new.xy.value) = (v.x, v.y, v.z);
                new
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self { x: self.x + other.x, y: self.y + other.y, xy: self.xy + other.xy }
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, by: f64) -> Self {
                Self { x: self.x * by, y: self.y * by, xy: self.xy * by }
            }
        }
    };
}

triple! {
    /// Strain of a plane.
    Strains of Ratio
}
triple! {
    /// Curvature; positive stretches the inside.
    Curvatures of Curvature
}
triple! {
    /// In-plane force per width; positive is tension.
    Forces of ForcePerWidth
}
triple! {
    /// Moment per width; positive stretches the inside.
    Moments of MomentPerWidth
}

/// Strain of the mid-plane, and curvature.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Deformation {
    /// Of the mid-plane.
    pub strain: Strains,
    /// Of the whole.
    pub curvature: Curvatures,
}

/// Forces per width acting in the mid-plane, and moments per width about it.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Resultants {
    /// In-plane forces.
    pub force: Forces,
    /// Moments.
    pub moment: Moments,
}

macro_rules! linear {
    ($name:ident: $first:ident, $second:ident) => {
        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self { $first: self.$first + other.$first, $second: self.$second + other.$second }
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, by: f64) -> Self {
                Self { $first: self.$first * by, $second: self.$second * by }
            }
        }
    };
}
linear!(Deformation: strain, curvature);
linear!(Resultants: force, moment);

/// Membrane, coupling and bending stiffness of a stack about a reference plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stiffness {
    pub(crate) a: Matrix3<f64>,
    pub(crate) b: Matrix3<f64>,
    pub(crate) d: Matrix3<f64>,
}

impl Stiffness {
    pub(crate) const ZERO: Self = Self { a: ZERO, b: ZERO, d: ZERO };

    /// Stiffness of a stack about the plane `reference`, which is measured from the outer surface.
    ///
    /// ```text
    /// A = Σ Qbar (z1 − z0),   B = Σ Qbar (z1² − z0²)/2,   D = Σ Qbar (z1³ − z0³)/3
    /// Q11 = E1/(1 − nu12 nu21), Q22 = E2/(1 − nu12 nu21), Q12 = nu12 Q22, Q66 = G12, Qbar = Tᵀ Q T
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `z0`, `z1` | outer and inner side of a ply, from the reference plane, positive towards the inside |
    /// | `Q`, `Qbar` | plane-stress stiffness of the ply in its own axes and in those of the top |
    /// | `T` | turns strain from the axes of the top into those of the ply |
    ///
    /// # Validity
    /// Plies thin against the panel, perfectly bonded, linear; plane sections stay plane.
    ///
    /// # Source
    /// [`JONES_1999`](crate::source::JONES_1999), ch. 4, and [`REDDY_2004`](crate::source::REDDY_2004), ch. 3, both
    /// from memory; derived.
    ///
    /// # Examples
    /// A 6 mm plate of 10 GPa without Poisson's ratio: `A = E t`, `D = E t³/12`.
    /// ```
    /// use skinspan::laminate::{Component::X, Elastic, Ply, Stiffness};
    /// use skinspan::units::{Angle, Length, Pressure, Ratio, TemperatureCoefficient};
    /// use uom::{ConstZero, si::{length::millimeter, pressure::gigapascal}};
    /// let elastic = Elastic::isotropic(Pressure::new::<gigapascal>(10.0), Ratio::ZERO, TemperatureCoefficient::ZERO);
    /// let t = Length::new::<millimeter>(6.0);
    /// let ply = Ply { elastic, strength: None, thickness: t, angle: Angle::ZERO };
    /// let about_middle = Stiffness::of_stack([ply], t / 2.0);
    /// assert!((about_middle.a(X, X).value - 60e6).abs() < 1e-6); // N/m
    /// assert!((about_middle.d(X, X).value - 180.0).abs() < 1e-10); // N·m
    /// assert!(about_middle.b(X, X).value.abs() < 1e-10);
    /// // about the outer surface: D = E t³/3
    /// assert!((Stiffness::of_stack([ply], Length::ZERO).d(X, X).value - 720.0).abs() < 1e-10);
    /// ```
    #[must_use]
    pub fn of_stack(plies: impl IntoIterator<Item = Ply>, reference: Length) -> Self {
        let mut z = -reference.value;
        plies.into_iter().fold(Self::ZERO, |sum, ply| {
            let layer = Self::of_layer(&ply.q_bar(), z, z + ply.thickness.value);
            z += ply.thickness.value;
            sum + layer
        })
    }

    /// One layer between `z0` and `z1`, m. About its own middle first, so that thin far layers lose no digits.
    pub(crate) fn of_layer(q_bar: &Matrix3<f64>, z0: f64, z1: f64) -> Self {
        let (t, middle) = (z1 - z0, 0.5 * (z0 + z1));
        Self { a: q_bar * t, b: q_bar * (t * middle), d: q_bar * (t * (middle * middle + t * t / 12.0)) }
    }

    /// The same stack about a reference plane that lies `inwards` of the present one.
    ///
    /// ```text
    /// A' = A,   B' = B − s A,   D' = D − 2 s B + s² A
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `s` | how far the new plane lies inwards of the old one |
    ///
    /// # Validity
    /// Always.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED), `z' = z − s` put into the integrals.
    ///
    /// # Examples
    /// ```
    /// use skinspan::laminate::{Component::X, Elastic, Ply, Stiffness};
    /// use skinspan::units::{Angle, Length, Pressure, Ratio, TemperatureCoefficient};
    /// use uom::{ConstZero, si::{length::millimeter, pressure::gigapascal}};
    /// let elastic = Elastic::isotropic(Pressure::new::<gigapascal>(10.0), Ratio::ZERO, TemperatureCoefficient::ZERO);
    /// let t = Length::new::<millimeter>(6.0);
    /// let ply = Ply { elastic, strength: None, thickness: t, angle: Angle::ZERO };
    /// let outside = Stiffness::of_stack([ply], t / 2.0).shifted(-t / 2.0);
    /// assert!((outside.d(X, X).value - 720.0).abs() < 1e-10); // E t³/3
    /// ```
    #[must_use]
    pub fn shifted(&self, inwards: Length) -> Self {
        let s = inwards.value;
        Self { a: self.a, b: self.b - self.a * s, d: self.d - self.b * (2.0 * s) + self.a * (s * s) }
    }

    /// Membrane stiffness.
    #[must_use]
    pub fn a(&self, i: Component, j: Component) -> ForcePerWidth {
        si(self.a[(i.index(), j.index())])
    }

    /// Coupling of membrane and bending, N·m/m per unit of strain.
    #[must_use]
    pub fn b(&self, i: Component, j: Component) -> MomentPerWidth {
        si(self.b[(i.index(), j.index())])
    }

    /// Bending stiffness about the reference plane, the membrane held.
    #[must_use]
    pub fn d(&self, i: Component, j: Component) -> FlexuralRigidity {
        si(self.d[(i.index(), j.index())])
    }

    /// Bending stiffness with the membrane free of force; it does not depend on the reference plane.
    ///
    /// ```text
    /// D* = D − B A⁻¹ B
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `A`, `B`, `D` | stiffness matrices about any plane |
    ///
    /// # Validity
    /// The edges may slide; with edges held in their plane `D` about that plane rules.
    ///
    /// # Source
    /// [`JONES_1999`](crate::source::JONES_1999), ch. 4, "reduced bending stiffness"; from memory, derived.
    ///
    /// # Examples
    /// ```
    /// use skinspan::laminate::{Component::X, Elastic, Ply, Stiffness};
    /// use skinspan::units::{Angle, Length, Pressure, Ratio, TemperatureCoefficient};
    /// use uom::{ConstZero, si::{length::millimeter, pressure::gigapascal}};
    /// let elastic = Elastic::isotropic(Pressure::new::<gigapascal>(10.0), Ratio::ZERO, TemperatureCoefficient::ZERO);
    /// let ply = Ply { elastic, strength: None, thickness: Length::new::<millimeter>(6.0), angle: Angle::ZERO };
    /// // about the outer surface, yet E t³/12 and not E t³/3
    /// let free = Stiffness::of_stack([ply], Length::ZERO).bending_free(X, X);
    /// assert!((free.value - 180.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn bending_free(&self, i: Component, j: Component) -> FlexuralRigidity {
        si(self.reduced()[(i.index(), j.index())])
    }

    /// `A`, `B`, `D` for matrix code.
    pub(crate) const fn matrices(&self) -> [Matrix3<f64>; 3] {
        [self.a, self.b, self.d]
    }

    pub(crate) fn reduced(&self) -> Matrix3<f64> {
        self.d - self.b * inverse(&self.a) * self.b
    }

    /// Loads that hold the stack in a deformation.
    ///
    /// ```text
    /// N = A eps0 + B kappa,   M = B eps0 + D kappa
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `N`, `M` | forces and moments per width |
    /// | `eps0`, `kappa` | strain of the reference plane, curvature |
    /// | `A`, `B`, `D` | stiffness about that plane |
    ///
    /// # Validity
    /// Small strain and rotation; no thermal strain.
    ///
    /// # Source
    /// [`JONES_1999`](crate::source::JONES_1999), ch. 4; from memory, derived.
    ///
    /// # Examples
    /// ```
    /// # use skinspan::{laminate::*, units::*};
    /// # use uom::{ConstZero, si::{angle::degree, length::millimeter, pressure::{gigapascal, megapascal}, ratio::ratio}};
    /// # let gpa = |x: f64| Pressure::new::<gigapascal>(x);
    /// # let mm = |x: f64| Length::new::<millimeter>(x);
    /// # let elastic = Elastic::isotropic(gpa(10.0), Ratio::ZERO, TemperatureCoefficient::ZERO);
    /// # let ply = Ply { elastic, strength: None, thickness: mm(6.0), angle: Angle::ZERO };
    /// // 6 mm of E = 10 GPa, nu = 0, about its middle: A = 60e6 N/m, D = 180 N·m
    /// let plate = Stiffness::of_stack([ply], mm(3.0));
    /// let mut shape = Deformation::default();
    /// shape.strain.x = Ratio::new::<ratio>(0.001);
    /// shape.curvature.x.value = 0.5;
    /// let load = plate.resultants(&shape);
    /// assert!((load.force.x.value - 60e3).abs() < 1e-7);
    /// assert!((load.moment.x.value - 90.0).abs() < 1e-10);
    /// ```
    #[must_use]
    pub fn resultants(&self, of: &Deformation) -> Resultants {
        let (strain, curvature) = (of.strain.vector(), of.curvature.vector());
        Resultants {
            force: Forces::from_vector(self.a * strain + self.b * curvature),
            moment: Moments::from_vector(self.b * strain + self.d * curvature),
        }
    }

    /// Deformation under loads; nothing is held.
    ///
    /// ```text
    /// kappa = D*⁻¹ (M − B A⁻¹ N),   eps0 = A⁻¹ (N − B kappa)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `N`, `M` | forces and moments per width |
    /// | `eps0`, `kappa` | strain of the reference plane, curvature |
    ///
    /// # Validity
    /// Small strain and rotation.
    ///
    /// # Source
    /// [`JONES_1999`](crate::source::JONES_1999), ch. 4, partial inversion of the stiffness; from memory, derived.
    ///
    /// # Examples
    /// ```
    /// use skinspan::laminate::{Elastic, Ply, Resultants, Stiffness};
    /// use skinspan::units::{Angle, ForcePerWidth, Length, Pressure, Ratio, TemperatureCoefficient, per_width};
    /// use uom::{ConstZero, si::{length::millimeter, pressure::gigapascal}};
    /// let elastic = Elastic::isotropic(Pressure::new::<gigapascal>(10.0), Ratio::ZERO, TemperatureCoefficient::ZERO);
    /// let t = Length::new::<millimeter>(6.0);
    /// let ply = Ply { elastic, strength: None, thickness: t, angle: Angle::ZERO };
    /// let mut load = Resultants::default();
    /// load.moment.x.value = 90.0; // N·m per m
    /// let bent = Stiffness::of_stack([ply], t / 2.0).deformation(&load);
    /// assert!((bent.curvature.x.value - 0.5).abs() < 1e-12); // 90/180 per m
    /// ```
    #[must_use]
    pub fn deformation(&self, under: &Resultants) -> Deformation {
        self.compliance().deformation(under)
    }

    pub(crate) fn compliance(&self) -> Compliance {
        let a_inverse = inverse(&self.a);
        let ratio = a_inverse * self.b;
        Compliance { a_inverse, ratio, d: inverse(&(self.d - self.b * ratio)) }
    }
}

/// What a [`Stiffness`] has to be inverted to: `A⁻¹`, `A⁻¹B` and `D*⁻¹`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Compliance {
    pub(crate) a_inverse: Matrix3<f64>,
    pub(crate) ratio: Matrix3<f64>,
    pub(crate) d: Matrix3<f64>,
}

impl Compliance {
    pub(crate) fn deformation(&self, under: &Resultants) -> Deformation {
        let (force, moment) = (under.force.vector(), under.moment.vector());
        let curvature = self.d * (moment - self.ratio.transpose() * force);
        Deformation {
            strain: Strains::from_vector(self.a_inverse * force - self.ratio * curvature),
            curvature: Curvatures::from_vector(curvature),
        }
    }
}

impl Add for Stiffness {
    type Output = Self;
    /// Two stacks about the same reference plane.
    fn add(self, other: Self) -> Self {
        Self { a: self.a + other.a, b: self.b + other.b, d: self.d + other.d }
    }
}

const ZERO: Matrix3<f64> = Matrix3::new(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
