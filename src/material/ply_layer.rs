//! A sub-layer of a skin, each value with its origin, or why there is none.

use std::fmt;

use super::{OutOfRange, PlyForm, Property};
use crate::{
    laminate::{Elastic, Strength},
    units::{Angle, Pressure, Ratio, TemperatureCoefficient},
};

/// One sub-layer of a fabric, laid and cured.
#[derive(Clone, Debug, PartialEq)]
pub struct PlyLayer {
    /// Its share of the fabric's mass, and of its thickness: the fibre content is the same in all sub-layers.
    pub share: Ratio,
    /// From the `x` axis of the top to its fibres.
    pub angle: Angle,
    /// Modulus along direction 1.
    pub e1: Property<Pressure>,
    /// Modulus along direction 2.
    pub e2: Property<Pressure>,
    /// In-plane shear modulus.
    pub g12: Property<Pressure>,
    /// Contraction along 2 for extension along 1.
    pub nu12: Property<Ratio>,
    /// Thermal expansion along direction 1.
    pub alpha1: Property<TemperatureCoefficient>,
    /// Thermal expansion along direction 2.
    pub alpha2: Property<TemperatureCoefficient>,
    /// Tensile strength along direction 1.
    pub tension1: Property<Pressure>,
    /// Compressive strength along direction 1.
    pub compression1: Property<Pressure>,
    /// Tensile strength along direction 2.
    pub tension2: Property<Pressure>,
    /// Compressive strength along direction 2.
    pub compression2: Property<Pressure>,
    /// In-plane shear strength.
    pub shear: Property<Pressure>,
    /// Interlaminar shear strength.
    pub interlaminar_shear: Option<Property<Pressure>>,
    /// Bearing strength against a shank, finger-tight, far from edges.
    pub bearing: Option<Property<Pressure>>,
    /// Punching shear strength through the thickness, backed.
    pub punching_shear: Option<Property<Pressure>>,
}

impl PlyLayer {
    /// The elastic constants alone, for the laminate.
    #[must_use]
    pub fn elastic(&self) -> Elastic {
        Elastic {
            e1: self.e1.value,
            e2: self.e2.value,
            g12: self.g12.value,
            nu12: self.nu12.value,
            alpha1: self.alpha1.value,
            alpha2: self.alpha2.value,
        }
    }

    /// The strengths alone, for the failure criteria.
    #[must_use]
    pub fn strength(&self) -> Strength {
        Strength {
            xt: self.tension1.value,
            xc: self.compression1.value,
            yt: self.tension2.value,
            yc: self.compression2.value,
            s: self.shear.value,
        }
    }
}

/// Why a fabric and a resin make no ply.
#[derive(Clone, Debug, PartialEq)]
pub enum NoPly {
    /// The fabric has a direction and none was given.
    NeedsAngle {
        /// Row of the fabric.
        fabric: String,
    },
    /// No row of plies has this fibre, this form and this resin.
    NoData {
        /// Row of the fibre.
        fibre: String,
        /// How the fibre lies.
        form: PlyForm,
        /// Family of the resin.
        resin: String,
    },
    /// The row of the ply lacks an elastic property and its fibre is not one that micromechanics covers.
    NotTabulated {
        /// Row of the ply.
        ply: String,
        /// What it lacks.
        property: &'static str,
    },
    /// The fibre content is outside the range of a property.
    FibreContent(OutOfRange<Ratio>),
}

impl fmt::Display for NoPly {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NeedsAngle { fabric } => {
                write!(f, "`{fabric}` has a direction: say at which angle it lies, `{fabric} @ 45 deg`")
            }
            Self::NoData { fibre, form, resin } => {
                write!(f, "the table has no ply of {} {fibre} in {resin}", form.word())
            }
            Self::NotTabulated { ply, property } => {
                write!(f, "ply `{ply}` needs `{property}`: only isotropic fibres are computed from fibre and resin")
            }
            Self::FibreContent(range) => write!(f, "{range}"),
        }
    }
}

impl std::error::Error for NoPly {}

impl From<OutOfRange<Ratio>> for NoPly {
    fn from(range: OutOfRange<Ratio>) -> Self {
        Self::FibreContent(range)
    }
}
