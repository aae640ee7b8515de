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
    #[must_use]
    pub fn skin_force(&self, skin: Skin, deformation: &Deformation, rise: &Temperatures) -> Forces {
        let stiffness = self.skin_stiffness(skin);
        let mechanical = stiffness.a * deformation.strain.vector() + stiffness.b * deformation.curvature.vector();
        Forces::from_vector(mechanical - self.skin_thermal_force(skin, rise))
    }

    /// Mean stress in a skin.
    #[must_use]
    pub fn skin_stress(&self, skin: Skin, deformation: &Deformation, rise: &Temperatures) -> SkinStress {
        let t = self.skin(skin).thickness();
        let Forces { x, y, xy } = self.skin_force(skin, deformation, rise);
        let mean = |force| -> Pressure { plain(force) / t };
        SkinStress { x: mean(x), y: mean(y), xy: mean(xy) }
    }

    /// Stress of each ply on both its sides, outside first.
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
