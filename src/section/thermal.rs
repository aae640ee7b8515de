//! A top in the sun: skins of different temperature.

use nalgebra::Vector3;

use super::{Section, Skin};
use crate::{
    laminate::{Deformation, Forces, Layer, Moments, Resultants, Strains},
    units::TemperatureInterval,
};

/// Temperature of each skin above the one at which the panel is flat and free of stress; between them it runs
/// straight through the core.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Temperatures {
    /// Of the outer skin.
    pub outer: TemperatureInterval,
    /// Of the inner skin.
    pub inner: TemperatureInterval,
}

impl Temperatures {
    pub(crate) const fn of(&self, skin: Skin) -> TemperatureInterval {
        match skin {
            Skin::Outer => self.outer,
            Skin::Inner => self.inner,
        }
    }
}

/// A panel that is kept flat while its skins differ in temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeldFlat {
    /// It has grown in its plane, without curvature.
    pub deformation: Deformation,
    /// What the edges exert on it to keep it flat.
    pub moment: Moments,
}

impl Section {
    /// Forces and moments that would undo the thermal strain, per width.
    #[must_use]
    pub fn thermal_resultants(&self, rise: &Temperatures) -> Resultants {
        let mut force = Vector3::zeros();
        let mut moment = Vector3::zeros();
        for skin in Skin::BOTH {
            let rise = rise.of(skin).value;
            let from = self.skin_middle(skin) - self.skin(skin).thickness() / 2.0;
            for layer in self.skin(skin).layers() {
                let layer_force = thermal_force(layer) * rise;
                force += layer_force;
                moment += layer_force * (from.value + 0.5 * (layer.z0 + layer.z1()));
            }
        }
        let core = self.core();
        let c = core.thickness.value;
        let middle = self.core_faces()[0].value + 0.5 * (c - self.thickness().value);
        let expansion = core.q() * Vector3::new(core.alpha.value, core.alpha.value, 0.0);
        let (outer, inner) = (rise.outer.value, rise.inner.value);
        let core_force = expansion * (0.5 * c * (outer + inner));
        force += core_force;
        moment += core_force * middle + expansion * ((inner - outer) * c * c / 12.0);
        Resultants { force: Forces::from_vector(force), moment: Moments::from_vector(moment) }
    }

    /// Deformation of a panel that nothing holds.
    #[must_use]
    pub fn thermal_free(&self, rise: &Temperatures) -> Deformation {
        self.deformation(&self.thermal_resultants(rise))
    }

    /// Deformation and edge moment of a panel that is kept flat and may grow in its plane.
    #[must_use]
    pub fn thermal_flat(&self, rise: &Temperatures) -> HeldFlat {
        let thermal = self.thermal_resultants(rise);
        let strain = self.compliance().a_inverse * thermal.force.vector();
        HeldFlat {
            deformation: Deformation { strain: Strains::from_vector(strain), ..Deformation::default() },
            moment: Moments::from_vector(self.stiffness().b * strain - thermal.moment.vector()),
        }
    }

    pub(super) fn skin_thermal_force(&self, skin: Skin, rise: &Temperatures) -> Vector3<f64> {
        self.skin(skin).layers().iter().map(thermal_force).sum::<Vector3<f64>>() * rise.of(skin).value
    }
}

/// Force per width and kelvin that would undo the thermal strain of a ply, N/(m·K).
fn thermal_force(layer: &Layer) -> Vector3<f64> {
    let elastic = &layer.ply.elastic;
    let stress = elastic.q() * Vector3::new(elastic.alpha1.value, elastic.alpha2.value, 0.0);
    layer.ply.strain_transform().transpose() * stress * layer.ply.thickness.value
}
