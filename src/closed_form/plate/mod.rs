//! Rectangular orthotropic sandwich plates, flexible in bending and in shear (first-order shear theory).
//!
//! `x` runs along the side `a`, `y` along the side `b`, from a corner. Deflection and loads are positive down, moments
//! positive sagging; `Mx` bends strips that run along `x`.

mod clamped;
mod held;
mod navier;
mod points;
mod series;
mod stability;

pub use self::{
    clamped::{ClampedPlate, clamped_plate_uniform},
    held::{EdgeHold, HeldCutOff, HeldEdge, HeldEdges},
    navier::{PlateError, PlatePoint},
    series::{HalfWaves, PlateSeries, UnderPatch},
    stability::PlateBuckling,
};

use std::{error::Error, fmt};

use crate::units::{FlexuralRigidity, Force, Length, Pressure, Ratio, ShearStiffness};

/// Stiffnesses of a plate whose axes are its sides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateStiffness {
    /// Bending along `x`.
    pub d11: FlexuralRigidity,
    /// Coupling of the two bendings.
    pub d12: FlexuralRigidity,
    /// Bending along `y`.
    pub d22: FlexuralRigidity,
    /// Twist.
    pub d66: FlexuralRigidity,
    /// Transverse shear in planes along `x`.
    pub shear_x: ShearStiffness,
    /// Transverse shear in planes along `y`.
    pub shear_y: ShearStiffness,
}

impl PlateStiffness {
    /// Equal stiffness in all directions: `D12 = ν D`, `D66 = (1 − ν) D/2`.
    #[must_use]
    pub fn isotropic(d: FlexuralRigidity, nu: Ratio, shear: ShearStiffness) -> Self {
        let nu = nu.value;
        Self { d11: d, d12: nu * d, d22: d, d66: (1.0 - nu) / 2.0 * d, shear_x: shear, shear_y: shear }
    }
}

/// A rectangular plate, simply supported along all four edges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plate {
    a: Length,
    b: Length,
    stiffness: PlateStiffness,
}

/// What lies on a plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PlateLoad {
    /// Pressure all over it.
    Uniform(Pressure),
    /// A force spread evenly over a rectangle.
    Patch {
        /// Whole force, down positive.
        force: Force,
        /// Middle of the patch, `x` and `y`.
        centre: [Length; 2],
        /// Sides of the patch along `x` and `y`. Both positive: under an ideal point the shear deflection is infinite.
        size: [Length; 2],
    },
}

/// Why a plate cannot be computed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlateFault {
    /// A side, a direct stiffness or the mass is not a positive number, or `D12² ≥ D11 D22`.
    Stiffness,
    /// The patch is not a positive area on the plate.
    Patch,
    /// The point does not lie on the plate.
    Outside,
}

impl fmt::Display for PlateFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Stiffness => "sides, direct stiffnesses and mass of a plate must be positive, and D12² below D11·D22",
            Self::Patch => "a patch load must cover a positive area that lies on the plate",
            Self::Outside => "the point does not lie on the plate",
        })
    }
}

impl Error for PlateFault {}

impl Plate {
    /// A plate of sides `a` (along `x`) and `b` (along `y`).
    ///
    /// # Errors
    /// [`PlateFault::Stiffness`] if a side or a direct stiffness is not positive, or `D12² ≥ D11 D22`.
    pub fn new(a: Length, b: Length, stiffness: PlateStiffness) -> Result<Self, PlateFault> {
        let k = &stiffness;
        let positive = |v: f64| v.is_finite() && v > 0.0;
        let direct = [k.d11.value, k.d22.value, k.d66.value, k.shear_x.value, k.shear_y.value, a.value, b.value];
        let stable = k.d12.value.powi(2) < k.d11.value * k.d22.value;
        if direct.into_iter().all(positive) && stable {
            Ok(Self { a, b, stiffness })
        } else {
            Err(PlateFault::Stiffness)
        }
    }
}
