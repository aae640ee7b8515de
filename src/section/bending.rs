//! Flexural rigidity of a section, whole and in parts, and where its neutral plane lies.

use nalgebra::{Matrix3, Vector3};

use super::{Axis, CoreLayer, Width};
use crate::{
    laminate::{Compliance, Curvatures, Deformation, Laminate, Stiffness, Strains, inverse},
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

struct Stack<'a> {
    outer: &'a Laminate,
    core: &'a CoreLayer,
    inner: &'a Laminate,
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
            outer,
            core,
            inner,
            ratio: compliance.ratio,
            reduced: stiffness.reduced(),
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
        let thickness = self.outer.thickness() + self.core.thickness + self.inner.thickness();
        let lever = self.lever(axis);
        let (outer, inner) = (extensional(self.outer, i, width), extensional(self.inner, i, width));
        let c = self.core.thickness.value;
        let core_modulus = match width {
            Width::Narrow => self.core.modulus(axis).value,
            Width::Wide => self.core.q()[(i, i)],
        };
        Bending {
            rigidity: rigidity(1.0 / curvature[i]),
            neutral_plane: thickness / 2.0 - meter(strain[i] / curvature[i]),
            lever,
            skin_membranes: rigidity(outer * inner / (outer + inner) * lever.value * lever.value),
            skins_alone: rigidity(own(self.outer, i, width) + own(self.inner, i, width)),
            core_alone: rigidity(core_modulus * c * c * c / 12.0),
            moments,
            deformation: Deformation {
                strain: Strains::from_vector(strain),
                curvature: Curvatures::from_vector(curvature),
            },
        }
    }

    fn lever(&self, axis: Axis) -> Length {
        let i = axis.index();
        let offset = |skin: &Laminate| meter(skin.stiffness().b[(i, i)] / skin.stiffness().a[(i, i)]);
        let middles = self.core.thickness + (self.outer.thickness() + self.inner.thickness()) / 2.0;
        middles + offset(self.inner) - offset(self.outer)
    }
}

/// Extensional stiffness of a skin, N/m.
fn extensional(skin: &Laminate, i: usize, width: Width) -> f64 {
    let a = &skin.stiffness().a;
    match width {
        Width::Narrow => 1.0 / inverse(a)[(i, i)],
        Width::Wide => a[(i, i)],
    }
}

/// Rigidity of a skin about its own neutral plane, N·m.
fn own(skin: &Laminate, i: usize, width: Width) -> f64 {
    let reduced = skin.stiffness().reduced();
    match width {
        Width::Narrow => 1.0 / inverse(&reduced)[(i, i)],
        Width::Wide => reduced[(i, i)],
    }
}

fn meter(value: f64) -> Length {
    Length::new::<uom::si::length::meter>(value)
}

fn rigidity(value: f64) -> FlexuralRigidity {
    FlexuralRigidity { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value }
}
