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

    /// Deformation under loads; nothing is held.
    #[must_use]
    pub fn deformation(&self, under: &Resultants) -> Deformation {
        self.stiffness.deformation(under)
    }

    /// Stress of each ply on both its sides, outside first; `rise` is the temperature above the stress-free one.
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
