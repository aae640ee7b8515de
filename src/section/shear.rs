//! Transverse shear: stiffness, and stress in the core.

use super::{Axis, Section, ShearFlow, Skin, Width, shear_flow::Slab};
use crate::{
    laminate::Layer,
    units::{ForcePerWidth, Length, Pressure, ShearStiffness, per_width, plain},
};

/// Transverse shear moduli of the plies, which few material tables give.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SkinShear {
    /// Skins do not shear: what `S = Gc d²/c` takes for granted.
    Rigid,
    /// The same moduli in every ply, in the ply's own axes.
    Moduli {
        /// Across the thickness, along the fibres.
        g13: Pressure,
        /// Across the thickness, across the fibres.
        g23: Pressure,
    },
}

impl SkinShear {
    fn modulus(self, axis: Axis, layer: &Layer) -> f64 {
        match self {
            Self::Rigid => f64::INFINITY,
            Self::Moduli { g13, g23 } => {
                let (sin, cos) = layer.ply.angle.value.sin_cos();
                let along = match axis {
                    Axis::X => cos * cos,
                    Axis::Y => sin * sin,
                };
                g13.value * along + g23.value * (1.0 - along)
            }
        }
    }
}

impl Section {
    /// Transverse shear stiffness of the sandwich.
    #[must_use]
    pub fn shear_stiffness(&self, axis: Axis) -> ShearStiffness {
        let d = self.bending(axis, Width::Narrow).lever;
        per_width(self.core().shear_modulus(axis) * d * d / self.core().thickness)
    }

    /// Core shear stress by the simple formula.
    #[must_use]
    pub fn core_shear_stress(&self, axis: Axis, v: ForcePerWidth) -> Pressure {
        plain(v) / self.bending(axis, Width::Narrow).lever
    }

    /// Shear stress over the thickness, exact for a strip along `axis`.
    #[must_use]
    pub fn shear_flow(&self, axis: Axis, width: Width, skins: SkinShear) -> ShearFlow {
        let deformation = self.bending(axis, width).deformation;
        let middle = self.thickness().value / 2.0;
        let i = axis.index();
        let slab = |q: &nalgebra::Matrix3<f64>, z0: f64, z1: f64, g: f64| {
            let stress =
                |z: f64| (q * (deformation.strain.vector() + deformation.curvature.vector() * (z - middle)))[i];
            Slab { z0, z1, stress0: stress(z0), stress1: stress(z1), g }
        };
        let of_skin = |skin: Skin, from: Length| {
            self.skin(skin).layers().iter().map(move |layer| {
                slab(&layer.q_bar, from.value + layer.z0, from.value + layer.z1(), skins.modulus(axis, layer))
            })
        };
        let [top, bottom] = self.core_faces();
        let core = slab(&self.core().q(), top.value, bottom.value, self.core().shear_modulus(axis).value);
        ShearFlow::new(of_skin(Skin::Outer, Length::default()).chain([core]).chain(of_skin(Skin::Inner, bottom)))
    }

    /// Outer and inner side of the core, from the outer surface.
    #[must_use]
    pub fn core_faces(&self) -> [Length; 2] {
        let outer = self.skin(Skin::Outer).thickness();
        [outer, outer + self.core().thickness]
    }
}
