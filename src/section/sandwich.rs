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
    /// ```text
    /// A, B, D of the whole = Σ of outer skin, core, inner skin, each moved to the common mid-plane
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `A`, `B`, `D` | stiffness matrices, [`Stiffness::of_stack`], [`Stiffness::shifted`] |
    ///
    /// # Validity
    /// Skins may differ in plies and thickness. A solid backing is a section whose core has the moduli of the backing.
    ///
    /// # Errors
    /// [`InvalidCore`] if the core cannot exist.
    ///
    /// # Source
    /// [`REDDY_2004`](crate::source::REDDY_2004), ch. 3, from memory; [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// near(section.stiffness().a(Component::X, Component::X).value, 40e6); // 2 · 10 GPa · 2 mm, N/m
    /// near(section.stiffness().d(Component::X, Component::X).value, 4840.0 + 40.0 / 3.0); // E t d²/2 + E t³/6, N·m
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
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

    /// What the section does in bending along `axis`, the membrane free of force.
    ///
    /// ```text
    /// D* = D − B A⁻¹ B
    /// narrow: M_other = M_xy = 0,         rigidity 1/(D*⁻¹)ii
    /// wide:   kappa_other = kappa_xy = 0, rigidity D*ii
    /// parts:  D0 = EA1 EA2 d²/(EA1 + EA2),   Df = Df1 + Df2,   Dc = Ec c³/12
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `A`, `B`, `D` | stiffness of the whole |
    /// | `i` | the axis |
    /// | `EA1`, `EA2` | extensional stiffness of the skins: `1/(A⁻¹)ii` narrow, `Aii` wide |
    /// | `d` | lever, distance between the centroids of the skins; the centroid of a skin lies `Bii/Aii` from its middle |
    /// | `Df1`, `Df2` | rigidity of each skin about its own neutral plane |
    /// | `Ec`, `c` | core modulus along the axis, `Qii` if wide; core thickness |
    ///
    /// # Validity
    /// The rigidity is exact; the parts add up to it when skins and core share a Poisson's ratio and the core is centred
    /// on the neutral plane or weak. With the edges held in their plane the stiffness about the held plane rules instead.
    ///
    /// # Source
    /// [`ALLEN_1969`](crate::source::ALLEN_1969), ch. 2, and [`ZENKERT_1995`](crate::source::ZENKERT_1995), ch. 3, from memory; derived.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let bending = section.bending(Axis::X, Width::Wide);
    /// near(bending.lever.get::<millimeter>(), 22.0);
    /// near(bending.neutral_plane.get::<millimeter>(), 12.0);
    /// near(bending.skin_membranes.value, 4840.0); // 10 GPa · 2 mm · (22 mm)²/2, N·m
    /// near(bending.skins_alone.value, 40.0 / 3.0); // 10 GPa · (2 mm)³/6
    /// near(bending.rigidity.value, 4840.0 + 40.0 / 3.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn bending(&self, axis: Axis, width: Width) -> &Bending {
        &self.bending[axis.index()][width.index()]
    }

    /// Deformation under loads; nothing is held. See [`Stiffness::deformation`].
    #[must_use]
    pub fn deformation(&self, under: &Resultants) -> Deformation {
        self.compliance.deformation(under)
    }

    /// The loads that go with a moment along `axis`: none else in a narrow strip, in a wide one also the moment that keeps it
    /// from curling.
    ///
    /// ```text
    /// narrow: M = m e_i      wide: M = m D*·i/D*ii
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `m` | moment along the axis |
    /// | `e_i` | unit vector |
    /// | `D*·i` | column of the bending stiffness with the membrane free |
    ///
    /// # Validity
    /// See [`Section::bending`].
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let mut m = MomentPerWidth::default();
    /// m.value = 485.0 + 1.0 / 3.0;
    /// let bent = section.deformation(&section.bent(Axis::X, Width::Wide, m));
    /// near(bent.curvature.x.value, 0.1); // m/D, 1/m
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
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
