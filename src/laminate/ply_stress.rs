//! From the deformation of a laminate to the stress of a ply in its own axes.

use std::ops::{Add, Mul};

use nalgebra::Vector3;

use super::{Deformation, Ply};
use crate::units::{Pressure, TemperatureInterval};

/// Stress of a ply in its own axes.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct PlyStress {
    /// Along the fibres; tension is positive.
    pub s1: Pressure,
    /// Across the fibres.
    pub s2: Pressure,
    /// In-plane shear.
    pub s12: Pressure,
}

/// Side of a ply.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Surface {
    /// Towards the outside of the top.
    Outer,
    /// Towards its inside.
    Inner,
}

impl Surface {
    pub(crate) const BOTH: [Self; 2] = [Self::Outer, Self::Inner];
}

impl PlyStress {
    /// Stress at `z`, m inwards of the mid-plane.
    pub(crate) fn at(ply: &Ply, deformation: &Deformation, z: f64, rise: TemperatureInterval) -> Self {
        let strain = deformation.strain.vector() + deformation.curvature.vector() * z;
        let thermal = Vector3::new(ply.elastic.alpha1.value, ply.elastic.alpha2.value, 0.0) * rise.value;
        Self::from_vector(ply.elastic.q() * (ply.strain_transform() * strain - thermal))
    }

    pub(crate) fn from_vector(v: Vector3<f64>) -> Self {
        let mut new = Self::default();
        (new.s1.value, new.s2.value, new.s12.value) = (v.x, v.y, v.z);
        new
    }
}

impl Add for PlyStress {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self { s1: self.s1 + other.s1, s2: self.s2 + other.s2, s12: self.s12 + other.s12 }
    }
}

impl Mul<f64> for PlyStress {
    type Output = Self;
    fn mul(self, by: f64) -> Self {
        Self { s1: self.s1 * by, s2: self.s2 * by, s12: self.s12 * by }
    }
}
