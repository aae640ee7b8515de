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
    /// Forces and moments that, applied to a cold panel, would give the same deformation as the heat.
    ///
    /// ```text
    /// N = Σ Qbar alpha dT t,   M = Σ Qbar alpha dT t z      skins, dT even through each
    /// N = Qc alpha c (To + Ti)/2,   M = N zc + Qc alpha (Ti − To) c²/12      core
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `Qbar`, `alpha`, `t`, `z` | stiffness, expansion, thickness and middle of each ply, from the mid-plane |
    /// | `To`, `Ti` | temperature rise of outer and inner skin |
    /// | `c`, `zc` | thickness and middle of the core |
    ///
    /// # Validity
    /// Steady heat flow through the core; properties that do not change with temperature.
    ///
    /// # Source
    /// [`JONES_1999`](crate::source::JONES_1999), ch. 4, thermal forces, from memory; core by integration, derived.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let sun = Temperatures { outer: TemperatureInterval::new::<kelvin>(50.0), inner: TemperatureInterval::ZERO };
    /// let load = section.thermal_resultants(&sun);
    /// near(load.force.x.value, 20e3); // 10 GPa · 20e-6 · 50 K · 2 mm, N/m
    /// near(load.moment.x.value, -220.0); // times 11 mm outwards, N·m/m
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
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
    ///
    /// ```text
    /// eps0, kappa = compliance · (N, M)      thin skins: kappa = (alpha_i Ti − alpha_o To)/d
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `N`, `M` | thermal resultants, [`Section::thermal_resultants`] |
    /// | `alpha_o`, `alpha_i`, `To`, `Ti` | expansion and temperature rise of outer and inner skin |
    /// | `d` | distance between the centroids of the skins |
    ///
    /// # Validity
    /// No support holds it flat; a negative curvature bulges to the outside.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let sun = Temperatures { outer: TemperatureInterval::new::<kelvin>(50.0), inner: TemperatureInterval::ZERO };
    /// let free = section.thermal_free(&sun);
    /// near(free.curvature.x.value, -220.0 / (4840.0 + 40.0 / 3.0)); // thin skins: −0.001/22 mm = −0.0455/m
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn thermal_free(&self, rise: &Temperatures) -> Deformation {
        self.deformation(&self.thermal_resultants(rise))
    }

    /// Deformation and edge moment of a panel that is kept flat and may grow in its plane.
    ///
    /// ```text
    /// eps0 = A⁻¹ N,   M_edge = B eps0 − M
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `N`, `M` | thermal resultants, [`Section::thermal_resultants`] |
    /// | `A`, `B` | stiffness of the section |
    ///
    /// # Validity
    /// An upper bound for any panel on a frame that can slide; real supports lie between this and [`Section::thermal_free`].
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let sun = Temperatures { outer: TemperatureInterval::new::<kelvin>(50.0), inner: TemperatureInterval::ZERO };
    /// let flat = section.thermal_flat(&sun);
    /// near(flat.moment.x.value, 220.0);
    /// let outer = section.skin_stress(Skin::Outer, &flat.deformation, &sun);
    /// near(outer.x.get::<megapascal>(), -5.0); // 10 GPa · (0.0005 − 0.001)
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn thermal_flat(&self, rise: &Temperatures) -> HeldFlat {
        let thermal = self.thermal_resultants(rise);
        let strain = self.compliance().a_inverse * thermal.force.vector();
        HeldFlat {
            deformation: Deformation { strain: Strains::from_vector(strain), ..Deformation::default() },
            moment: Moments::from_vector(self.stiffness().b * strain - thermal.moment.vector()),
        }
    }

    /// What heat makes of it beyond a deformation that it has anyway.
    ///
    /// ```text
    /// N_T = N − A eps − B kappa,   M_T = M − B eps − D kappa
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `N`, `M` | thermal resultants, [`Section::thermal_resultants`] |
    /// | `A`, `B`, `D` | stiffness of the section |
    /// | `eps`, `kappa` | the deformation |
    ///
    /// # Validity
    /// As of the thermal resultants; none is left of the deformation of [`Section::thermal_free`].
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let sun = Temperatures { outer: TemperatureInterval::new::<kelvin>(50.0), inner: TemperatureInterval::ZERO };
    /// // Let grow as much as it likes, kept flat: only the moment is left.
    /// let beyond = section.thermal_beyond(&sun, &section.thermal_flat(&sun).deformation);
    /// assert!(beyond.force.x.value.abs() < 1e-6);
    /// near(beyond.moment.x.value, -220.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn thermal_beyond(&self, rise: &Temperatures, deformation: &Deformation) -> Resultants {
        let thermal = self.thermal_resultants(rise);
        let (strain, curvature) = (deformation.strain.vector(), deformation.curvature.vector());
        let (force, moment) = {
            let stiffness = self.stiffness();
            (stiffness.a * strain + stiffness.b * curvature, stiffness.b * strain + stiffness.d * curvature)
        };
        Resultants {
            force: Forces::from_vector(thermal.force.vector() - force),
            moment: Moments::from_vector(thermal.moment.vector() - moment),
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
