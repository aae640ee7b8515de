//! What each skin carries.

use super::{Section, Skin, Temperatures};
use crate::{
    laminate::{Deformation, Forces, PlyStress, Surface},
    section::PlyPlace,
    units::{Pressure, plain},
};

/// Mean stress in a skin, in the axes of the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SkinStress {
    /// Along `x`; tension is positive.
    pub x: Pressure,
    /// Along `y`.
    pub y: Pressure,
    /// Shear.
    pub xy: Pressure,
}

impl Section {
    /// In-plane force per width in a skin.
    ///
    /// ```text
    /// N = As eps0 + Bs kappa − Σ Qbar alpha dT t
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `As`, `Bs` | stiffness of the skin about the mid-plane of the section |
    /// | `eps0`, `kappa` | deformation of the section |
    /// | `alpha`, `dT`, `t` | expansion, temperature rise and thickness of its plies |
    ///
    /// # Validity
    /// Linear.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let mut bent = Deformation::default();
    /// bent.curvature.x.value = 0.1; // 1/m
    /// let force = section.skin_force(Skin::Inner, &bent, &Temperatures::default());
    /// near(force.x.value, 22e3); // 10 GPa · 2 mm · 11 mm · 0.1/m, N/m
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn skin_force(&self, skin: Skin, deformation: &Deformation, rise: &Temperatures) -> Forces {
        let stiffness = self.skin_stiffness(skin);
        let mechanical = stiffness.a * deformation.strain.vector() + stiffness.b * deformation.curvature.vector();
        Forces::from_vector(mechanical - self.skin_thermal_force(skin, rise))
    }

    /// Mean stress in a skin.
    ///
    /// ```text
    /// sigma = N/t
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `N` | in-plane force per width in the skin, [`Section::skin_force`] |
    /// | `t` | its thickness |
    ///
    /// # Validity
    /// What wrinkling and rule formulas compare; the outermost fibre carries some `t/d` more, the stiffest ply much more.
    ///
    /// # Source
    /// [`ALLEN_1969`](crate::source::ALLEN_1969), ch. 2, from memory; derived.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let mut bent = Deformation::default();
    /// bent.curvature.x.value = 0.1; // 1/m
    /// let stress = section.skin_stress(Skin::Outer, &bent, &Temperatures::default());
    /// near(stress.x.get::<megapascal>(), -11.0); // −22 kN/m over 2 mm
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn skin_stress(&self, skin: Skin, deformation: &Deformation, rise: &Temperatures) -> SkinStress {
        let t = self.skin(skin).thickness();
        let Forces { x, y, xy } = self.skin_force(skin, deformation, rise);
        let mean = |force| -> Pressure { plain(force) / t };
        SkinStress { x: mean(x), y: mean(y), xy: mean(xy) }
    }

    /// Stress of each ply on both its sides, outside first.
    ///
    /// ```text
    /// sigma12 = Q (T (eps0 + z kappa) − alpha12 dT)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `eps0`, `kappa` | deformation of the section at its mid-plane |
    /// | `z` | from the mid-plane, positive towards the inside |
    /// | `T`, `Q`, `alpha12` | of the ply, see [`Laminate::ply_stresses`](crate::laminate::Laminate::ply_stresses) |
    /// | `dT` | temperature rise of the skin |
    ///
    /// # Validity
    /// Linear; away from edges, holes and point loads.
    ///
    /// # Source
    /// [`JONES_1999`](crate::source::JONES_1999), ch. 4; from memory, derived.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let mut bent = Deformation::default();
    /// bent.curvature.x.value = 0.1; // 1/m
    /// let (place, stress) = section.ply_stresses(bent, Temperatures::default()).next().ok_or("no ply")?;
    /// assert_eq!((place.skin, place.ply), (Skin::Outer, 0));
    /// near(stress.s1.get::<megapascal>(), -12.0); // 10 GPa · 12 mm · 0.1/m
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn ply_stresses(
        &self,
        deformation: Deformation,
        rise: Temperatures,
    ) -> impl Iterator<Item = (PlyPlace, PlyStress)> {
        Skin::BOTH.into_iter().flat_map(move |skin| {
            let shift = self.skin_middle(skin).value;
            let about_own_middle = Deformation {
                strain: deformation.strain
                    + crate::laminate::Strains::from_vector(deformation.curvature.vector() * shift),
                curvature: deformation.curvature,
            };
            self.skin(skin).ply_stresses(about_own_middle, rise.of(skin)).map(
                move |(ply, surface, stress): (usize, Surface, PlyStress)| (PlyPlace { skin, ply, surface }, stress),
            )
        })
    }
}
