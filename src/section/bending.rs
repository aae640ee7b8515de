//! Flexural rigidity of a section, whole and in parts, and where its neutral plane lies.

use nalgebra::{Matrix3, Vector3};

use super::{Axis, CoreLayer, Width};
use crate::{
    laminate::{Compliance, Curvatures, Deformation, Laminate, Stiffness, Strains},
    units::{FlexuralRigidity, Length},
};

/// Bending of a section along one axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bending {
    /// The whole.
    pub rigidity: FlexuralRigidity,
    /// The plane that keeps its length, from the outer surface.
    pub neutral_plane: Length,
    /// Distance between the centroids of the skins.
    pub lever: Length,
    /// Part of the rigidity that comes from the skins as membranes.
    pub skin_membranes: FlexuralRigidity,
    /// Part that comes from the skins bending on their own.
    pub skins_alone: FlexuralRigidity,
    /// Part that comes from the core bending on its own.
    pub core_alone: FlexuralRigidity,
    /// Moments that go with a unit moment.
    pub(super) moments: Vector3<f64>,
    /// Deformation under a unit moment.
    pub(super) deformation: Deformation,
}

/// One skin by itself, about its mid-plane.
struct SkinAlone {
    a: Matrix3<f64>,
    a_inverse: Matrix3<f64>,
    reduced: Matrix3<f64>,
    reduced_inverse: Matrix3<f64>,
    b: Matrix3<f64>,
    thickness: Length,
}

impl SkinAlone {
    fn new(skin: &Laminate) -> Self {
        let Stiffness { a, b, d } = *skin.stiffness();
        let compliance = skin.stiffness().compliance();
        Self {
            a,
            a_inverse: compliance.a_inverse,
            reduced: d - b * compliance.ratio,
            reduced_inverse: compliance.d,
            b,
            thickness: skin.thickness(),
        }
    }

    /// Extensional stiffness, N/m.
    fn extensional(&self, i: usize, width: Width) -> f64 {
        match width {
            Width::Narrow => 1.0 / self.a_inverse[(i, i)],
            Width::Wide => self.a[(i, i)],
        }
    }

    /// Rigidity about its own neutral plane, N·m.
    fn rigidity(&self, i: usize, width: Width) -> f64 {
        match width {
            Width::Narrow => 1.0 / self.reduced_inverse[(i, i)],
            Width::Wide => self.reduced[(i, i)],
        }
    }

    /// Centroid, inwards of the middle.
    fn centroid(&self, i: usize) -> Length {
        meter(self.b[(i, i)] / self.a[(i, i)])
    }
}

struct Stack<'a> {
    outer: SkinAlone,
    core: &'a CoreLayer,
    core_q: Matrix3<f64>,
    inner: SkinAlone,
    ratio: Matrix3<f64>,
    reduced: Matrix3<f64>,
    reduced_inverse: Matrix3<f64>,
}

impl Bending {
    pub(super) fn all(
        outer: &Laminate,
        core: &CoreLayer,
        inner: &Laminate,
        stiffness: &Stiffness,
        compliance: &Compliance,
    ) -> [[Self; 2]; 2] {
        let stack = Stack {
            outer: SkinAlone::new(outer),
            core,
            core_q: core.q(),
            inner: SkinAlone::new(inner),
            ratio: compliance.ratio,
            reduced: stiffness.d - stiffness.b * compliance.ratio,
            reduced_inverse: compliance.d,
        };
        Axis::BOTH.map(|axis| [Width::Narrow, Width::Wide].map(|width| stack.bending(axis, width)))
    }
}

impl Stack<'_> {
    fn bending(&self, axis: Axis, width: Width) -> Bending {
        let i = axis.index();
        let mut unit = Vector3::zeros();
        unit[i] = 1.0;
        let (moments, curvature) = match width {
            Width::Narrow => (unit, self.reduced_inverse * unit),
            Width::Wide => (self.reduced * unit / self.reduced[(i, i)], unit / self.reduced[(i, i)]),
        };
        let strain = -(self.ratio * curvature);
        let skins = self.outer.thickness + self.inner.thickness;
        let lever = self.core.thickness + skins / 2.0 + self.inner.centroid(i) - self.outer.centroid(i);
        let (outer, inner) = (self.outer.extensional(i, width), self.inner.extensional(i, width));
        let c = self.core.thickness.value;
        let core_modulus = match width {
            Width::Narrow => self.core.modulus(axis).value,
            Width::Wide => self.core_q[(i, i)],
        };
        Bending {
            rigidity: rigidity(1.0 / curvature[i]),
            neutral_plane: (self.core.thickness + skins) / 2.0 - meter(strain[i] / curvature[i]),
            lever,
            skin_membranes: rigidity(outer * inner / (outer + inner) * lever.value * lever.value),
            skins_alone: rigidity(self.outer.rigidity(i, width) + self.inner.rigidity(i, width)),
            core_alone: rigidity(core_modulus * c * c * c / 12.0),
            moments,
            deformation: Deformation {
                strain: Strains::from_vector(strain),
                curvature: Curvatures::from_vector(curvature),
            },
        }
    }
}

fn meter(value: f64) -> Length {
    Length::new::<uom::si::length::meter>(value)
}

fn rigidity(value: f64) -> FlexuralRigidity {
    FlexuralRigidity { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value }
}
