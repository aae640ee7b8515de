//! A section: two skins and what is between them, with its stiffness worked out once.

use super::{Axis, Bending, CoreLayer, InvalidCore, Width};
use crate::{
    laminate::{Compliance, Deformation, Forces, Laminate, Moments, Resultants, Stiffness},
    units::{Length, MomentPerWidth},
};

/// One of the two skins.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Skin {
    /// Towards the sky.
    Outer,
    /// Towards the people.
    Inner,
}

impl Skin {
    /// Both skins.
    pub const BOTH: [Self; 2] = [Self::Outer, Self::Inner];
}

/// Two skins on a core; `z` is measured from the outer surface, stiffness holds about the mid-plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    outer: Laminate,
    core: CoreLayer,
    inner: Laminate,
    thickness: Length,
    stiffness: Stiffness,
    compliance: Compliance,
    bending: [[Bending; 2]; 2],
}

impl Section {
    /// Joins two skins and a core; the plies of both skins are listed from the outside to the inside.
    ///
    /// # Errors
    /// [`InvalidCore`] if the core cannot exist.
    pub fn new(outer: Laminate, core: CoreLayer, inner: Laminate) -> Result<Self, InvalidCore> {
        core.checked()?;
        let thickness = outer.thickness() + core.thickness + inner.thickness();
        let middle = thickness / 2.0;
        let to_core = outer.thickness() - middle;
        let stiffness = outer.stiffness().shifted(middle - outer.thickness() / 2.0)
            + Stiffness::of_layer(&core.q(), to_core.value, (to_core + core.thickness).value)
            + inner.stiffness().shifted(inner.thickness() / 2.0 - middle);
        let compliance = stiffness.compliance();
        let bending = Bending::all(&outer, &core, &inner, &stiffness, &compliance);
        Ok(Self { outer, core, inner, thickness, stiffness, compliance, bending })
    }

    /// One of the skins.
    #[must_use]
    pub const fn skin(&self, skin: Skin) -> &Laminate {
        match skin {
            Skin::Outer => &self.outer,
            Skin::Inner => &self.inner,
        }
    }

    /// What is between the skins.
    #[must_use]
    pub const fn core(&self) -> &CoreLayer {
        &self.core
    }

    /// From outer to inner surface.
    #[must_use]
    pub const fn thickness(&self) -> Length {
        self.thickness
    }

    /// Stiffness of the whole about its mid-plane: both skins and the core, nothing left out.
    #[must_use]
    pub const fn stiffness(&self) -> &Stiffness {
        &self.stiffness
    }

    /// What the section does in bending along `axis`.
    #[must_use]
    pub const fn bending(&self, axis: Axis, width: Width) -> &Bending {
        &self.bending[axis.index()][width.index()]
    }

    /// Deformation under loads; nothing is held.
    #[must_use]
    pub fn deformation(&self, under: &Resultants) -> Deformation {
        self.compliance.deformation(under)
    }

    /// The loads that go with a moment along `axis`: none else in a narrow strip, in a wide one also the moment that
    /// keeps it from curling.
    #[must_use]
    pub fn bent(&self, axis: Axis, width: Width, moment: MomentPerWidth) -> Resultants {
        let unit = self.bending(axis, width).moments;
        Resultants { force: Forces::default(), moment: Moments::from_vector(unit * moment.value) }
    }

    pub(crate) const fn compliance(&self) -> &Compliance {
        &self.compliance
    }

    /// Middle of a skin, m inwards of the mid-plane of the section.
    pub(crate) fn skin_middle(&self, skin: Skin) -> Length {
        match skin {
            Skin::Outer => (self.outer.thickness() - self.thickness) / 2.0,
            Skin::Inner => (self.thickness - self.inner.thickness()) / 2.0,
        }
    }

    /// Stiffness of one skin about the mid-plane of the section.
    pub(crate) fn skin_stiffness(&self, skin: Skin) -> Stiffness {
        self.skin(skin).stiffness().shifted(-self.skin_middle(skin))
    }
}
