//! A skin, or a solid laminate: checked plies with their stiffness.

use std::fmt;

use nalgebra::Matrix3;
use uom::ConstZero;

use super::{
    InvalidPly, Ply, PlyStress, Stiffness, Surface,
    stiffness::{Deformation, Resultants},
};
use crate::units::{Length, TemperatureInterval};

/// Plies from the outside to the inside, with their stiffness about the mid-plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Laminate {
    layers: Vec<Layer>,
    thickness: Length,
    stiffness: Stiffness,
}

/// A ply with what is needed of it again and again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Layer {
    pub(crate) ply: Ply,
    pub(crate) q_bar: Matrix3<f64>,
    /// Outer side, m from the outer surface of the laminate.
    pub(crate) z0: f64,
}

impl Layer {
    pub(crate) fn z1(&self) -> f64 {
        self.z0 + self.ply.thickness.value
    }
}

/// Why plies do not make a laminate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InvalidLaminate {
    /// There is no ply.
    Empty,
    /// A ply cannot exist.
    Ply {
        /// Its place, counted from 0 at the outside.
        index: usize,
        /// What is wrong with it.
        cause: InvalidPly,
    },
}

impl fmt::Display for InvalidLaminate {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("a laminate needs at least one ply"),
            Self::Ply { index, cause } => write!(f, "ply {} from the outside: {cause}", index + 1),
        }
    }
}

impl std::error::Error for InvalidLaminate {}

impl Laminate {
    /// Stacks plies from the outside to the inside.
    ///
    /// # Errors
    /// [`InvalidLaminate`] if there is no ply, or one that cannot exist.
    ///
    /// # Examples
    /// ```
    /// use skinspan::laminate::{InvalidLaminate, Laminate};
    /// assert_eq!(Laminate::new(&[]), Err(InvalidLaminate::Empty));
    /// ```
    pub fn new(plies: &[Ply]) -> Result<Self, InvalidLaminate> {
        if plies.is_empty() {
            return Err(InvalidLaminate::Empty);
        }
        for (index, ply) in plies.iter().enumerate() {
            ply.checked().map_err(|cause| InvalidLaminate::Ply { index, cause })?;
        }
        let thickness = plies.iter().fold(Length::ZERO, |sum, ply| sum + ply.thickness);
        let middle = thickness.value / 2.0;
        let mut z0 = 0.0;
        let mut stiffness = Stiffness::ZERO;
        let layers = plies
            .iter()
            .map(|&ply| {
                let layer = Layer { ply, q_bar: ply.q_bar(), z0 };
                z0 = layer.z1();
                stiffness = stiffness + Stiffness::of_layer(&layer.q_bar, layer.z0 - middle, z0 - middle);
                layer
            })
            .collect();
        Ok(Self { layers, thickness, stiffness })
    }

    /// The plies, outside first.
    #[must_use]
    pub fn plies(&self) -> impl ExactSizeIterator<Item = &Ply> + DoubleEndedIterator {
        self.layers.iter().map(|layer| &layer.ply)
    }

    /// Sum of the ply thicknesses.
    #[must_use]
    pub fn thickness(&self) -> Length {
        self.thickness
    }

    /// Stiffness about the mid-plane.
    #[must_use]
    pub fn stiffness(&self) -> &Stiffness {
        &self.stiffness
    }

    /// Deformation under loads; nothing is held. See [`Stiffness::deformation`].
    #[must_use]
    pub fn deformation(&self, under: &Resultants) -> Deformation {
        self.stiffness.deformation(under)
    }

    /// Stress of each ply on both its sides, outside first.
    ///
    /// ```text
    /// sigma12 = Q (T (eps0 + z kappa) − alpha12 dT)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `eps0`, `kappa` | strain of the mid-plane, curvature |
    /// | `z` | from the mid-plane, positive towards the inside |
    /// | `T` | turns strain into the axes of the ply |
    /// | `Q`, `alpha12` | stiffness and thermal expansion of the ply |
    /// | `dT` | `rise`, temperature above the stress-free one, the same in all plies |
    ///
    /// # Validity
    /// Linear; no free edge, hole or fastener near by.
    ///
    /// # Source
    /// [`JONES_1999`](crate::source::JONES_1999), ch. 4; from memory, derived.
    ///
    /// # Examples
    /// A plate of 6 mm and 10 GPa without Poisson's ratio, bent to 2 m radius: 10 GPa · 3 mm / 2 m = 15 MPa.
    /// ```
    /// # use skinspan::{laminate::*, units::*};
    /// # use uom::{ConstZero, si::{angle::degree, length::millimeter, pressure::{gigapascal, megapascal}, ratio::ratio}};
    /// # let gpa = |x: f64| Pressure::new::<gigapascal>(x);
    /// # let mm = |x: f64| Length::new::<millimeter>(x);
    /// # let elastic = Elastic::isotropic(gpa(10.0), Ratio::ZERO, TemperatureCoefficient::ZERO);
    /// # let ply = Ply { elastic, strength: None, thickness: mm(6.0), angle: Angle::ZERO };
    /// let plate = Laminate::new(&[ply])?;
    /// let mut bent = Deformation::default();
    /// bent.curvature.x.value = 0.5;
    /// let stress: Vec<f64> =
    ///     plate.ply_stresses(bent, TemperatureInterval::ZERO).map(|(_, _, s)| s.s1.get::<megapascal>()).collect();
    /// assert!((stress[0] + 15.0).abs() < 1e-12 && (stress[1] - 15.0).abs() < 1e-12);
    /// # Ok::<(), InvalidLaminate>(())
    /// ```
    pub fn ply_stresses(
        &self,
        deformation: Deformation,
        rise: TemperatureInterval,
    ) -> impl Iterator<Item = (usize, Surface, PlyStress)> {
        let middle = self.thickness.value / 2.0;
        self.layers.iter().enumerate().flat_map(move |(index, layer)| {
            Surface::BOTH.map(|surface| {
                let z = match surface {
                    Surface::Outer => layer.z0,
                    Surface::Inner => layer.z1(),
                } - middle;
                (index, surface, PlyStress::at(&layer.ply, &deformation, z, rise))
            })
        })
    }

    pub(crate) fn layers(&self) -> &[Layer] {
        &self.layers
    }
}
