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
    ///
    /// ```text
    /// S = Gc d²/c
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `Gc` | shear modulus of the core across its thickness, along the axis |
    /// | `d` | distance between the centroids of the skins, [`Section::bending`] |
    /// | `c` | core thickness |
    ///
    /// # Validity
    /// Core much weaker in shear and in its plane than the skins. `Gc c` and `Gc d` are lower, and a factor of 5/6 on the
    /// sum of `G t` is wrong for a sandwich. [`ShearFlow::energy_stiffness`] is the exact value for bending without warping.
    ///
    /// # Source
    /// [`ALLEN_1969`](crate::source::ALLEN_1969), ch. 2, from memory; derived, and checked against the exact plate of Pagano.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// near(section.shear_stiffness(Axis::X).value, 726e3); // 30 MPa · (22 mm)²/20 mm, N/m
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn shear_stiffness(&self, axis: Axis) -> ShearStiffness {
        let d = self.bending(axis, Width::Narrow).lever;
        per_width(self.core().shear_modulus(axis) * d * d / self.core().thickness)
    }

    /// Core shear stress by the simple formula.
    ///
    /// ```text
    /// tau = V/d
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `V` | shear force per width |
    /// | `d` | distance between the centroids of the skins |
    ///
    /// # Validity
    /// Thin skins and weak core, [`Section::skin_check`]; for a stiff backing use [`Section::shear_flow`].
    ///
    /// # Source
    /// [`ALLEN_1969`](crate::source::ALLEN_1969), ch. 2, and [`ZENKERT_1995`](crate::source::ZENKERT_1995), ch. 3; from memory, derived.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let mut v = ForcePerWidth::default();
    /// v.value = 1100.0;
    /// near(section.core_shear_stress(Axis::X, v).get::<megapascal>(), 0.05); // 1100 N/m over 22 mm
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn core_shear_stress(&self, axis: Axis, v: ForcePerWidth) -> Pressure {
        plain(v) / self.bending(axis, Width::Narrow).lever
    }

    /// Shear stress over the thickness of a strip along `axis`, from equilibrium.
    ///
    /// ```text
    /// tau(z) = −V ∫ sigma(z') dz',  from the outer surface to z,   sigma the bending stress per unit moment per width
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `V` | shear force per width |
    /// | `sigma` | stress along the axis under a unit moment along it, [`Section::bent`] |
    /// | `z` | from the outer surface |
    ///
    /// # Validity
    /// Away from supports and point loads, where the skins bend on their own.
    ///
    /// # Source
    /// [`ALLEN_1969`](crate::source::ALLEN_1969), ch. 2, from memory; [`DERIVED`](crate::source::DERIVED) for any layers.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let flow = section.shear_flow(Axis::X, Width::Narrow, SkinShear::Rigid);
    /// let mut v = ForcePerWidth::default();
    /// v.value = 4840.0 + 40.0 / 3.0; // as large as D, so that V/D = 1/m²
    /// // (V/D) E t d/2 = 10 GPa · 2 mm · 11 mm
    /// near(flow.stress(v, mm(12.0)).get::<megapascal>(), 0.22);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
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
