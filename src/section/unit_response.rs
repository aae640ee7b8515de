//! The quick way from loads to ply stresses: everything that does not depend on the load is multiplied out.

use nalgebra::Matrix3;

use super::{Section, Skin, Temperatures};
use crate::laminate::{Criterion, Deformation, PlyStress, Reserve, Resultants, Strength, Surface, TsaiWu, max_stress};

/// A side of a ply of a skin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct PlyPlace {
    /// Which skin.
    pub skin: Skin,
    /// Which ply of it, counted from 0 at its outer side.
    pub ply: usize,
    /// Which side of the ply.
    pub surface: Surface,
}

#[derive(Clone, Debug)]
struct Point {
    place: PlyPlace,
    criterion: Option<(TsaiWu, Strength)>,
    per_force: Matrix3<f64>,
    per_moment: Matrix3<f64>,
}

impl Point {
    fn stress(&self, under: &Resultants) -> PlyStress {
        PlyStress::from_vector(self.per_force * under.force.vector() + self.per_moment * under.moment.vector())
    }
}

/// Ply stresses per unit of each load.
#[derive(Clone, Debug)]
pub struct UnitResponse {
    points: Vec<Point>,
}

/// Ply stresses that stay as they are while the load grows: those of temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct Residual(Vec<PlyStress>);

/// A ply whose strength is not known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoStrength(pub PlyPlace);

impl std::fmt::Display for NoStrength {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let skin = match self.0.skin {
            Skin::Outer => "outer",
            Skin::Inner => "inner",
        };
        write!(f, "ply {} of the {skin} skin has no strength", self.0.ply + 1)
    }
}

impl std::error::Error for NoStrength {}

impl Section {
    /// Ply stresses per unit of each load.
    #[must_use]
    pub fn unit_response(&self) -> UnitResponse {
        let compliance = self.compliance();
        let points = Skin::BOTH
            .into_iter()
            .flat_map(|skin| {
                let laminate = self.skin(skin);
                let from = self.skin_middle(skin).value - 0.5 * laminate.thickness().value;
                laminate.layers().iter().enumerate().flat_map(move |(index, layer)| {
                    let to_stress = layer.ply.elastic.q() * layer.ply.strain_transform();
                    let criterion = layer.ply.strength.map(|s| (TsaiWu::new(&s), s));
                    Surface::BOTH.map(|surface| {
                        let z = from
                            + match surface {
                                Surface::Outer => layer.z0,
                                Surface::Inner => layer.z1(),
                            };
                        let per_moment = to_stress * (Matrix3::identity() * z - compliance.ratio) * compliance.d;
                        let per_force = to_stress * compliance.a_inverse - per_moment * compliance.ratio.transpose();
                        Point { place: PlyPlace { skin, ply: index, surface }, criterion, per_force, per_moment }
                    })
                })
            })
            .collect();
        UnitResponse { points }
    }

    /// Ply stresses of a thermal state, to be kept while the load grows.
    #[must_use]
    pub fn residual(&self, deformation: Deformation, rise: Temperatures) -> Residual {
        Residual(self.ply_stresses(deformation, rise).map(|(_, stress)| stress).collect())
    }
}

impl UnitResponse {
    /// Stress of each ply on both its sides, outside first.
    pub fn stresses(&self, under: &Resultants) -> impl Iterator<Item = (PlyPlace, PlyStress)> {
        self.points.iter().map(|point| (point.place, point.stress(under)))
    }

    /// The place that fails first as the load grows.
    ///
    /// # Errors
    /// [`NoStrength`] if the strength of a ply is not known: nothing can be said about the section then.
    pub fn first_ply(
        &self,
        criterion: Criterion,
        under: &Resultants,
        residual: Option<&Residual>,
    ) -> Result<Option<(PlyPlace, Reserve)>, NoStrength> {
        let mut first: Option<(PlyPlace, Reserve)> = None;
        for (index, point) in self.points.iter().enumerate() {
            let (tsai_wu, strength) = point.criterion.as_ref().ok_or(NoStrength(point.place))?;
            let kept = residual.and_then(|r| r.0.get(index)).copied().unwrap_or_default();
            let stress = point.stress(under);
            let reserve = match criterion {
                Criterion::TsaiWu => tsai_wu.reserve(&stress, &kept),
                Criterion::MaxStress => max_stress(&stress, &kept, strength),
            };
            if first.is_none_or(|(_, least)| reserve.factor < least.factor) {
                first = Some((point.place, reserve));
            }
        }
        Ok(first)
    }
}
