//! The quick way from loads to ply stresses: everything that does not depend on the load is multiplied out.

use nalgebra::Matrix3;

use super::{Section, Skin, Temperatures};
use crate::{
    laminate::{Criterion, Deformation, Mode, PlyStress, Reserve, Resultants, Strength, Surface, TsaiWu, max_stress},
    units::Ratio,
};

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
    /// Ply stresses per unit of each load: the quick way for many loads on one section.
    ///
    /// ```text
    /// sigma12 = Q T [(z − R) D*⁻¹ M + (A⁻¹ − (z − R) D*⁻¹ Rᵀ) N],   R = A⁻¹ B
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `N`, `M` | forces and moments per width |
    /// | `A`, `B`, `D*` | stiffness of the section, `D* = D − B A⁻¹ B` |
    /// | `Q`, `T`, `z` | of the ply side, see [`Section::ply_stresses`] |
    ///
    /// # Validity
    /// As [`Section::ply_stresses`]; temperature enters as a [`Residual`].
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let mut m = MomentPerWidth::default();
    /// m.value = 485.0 + 1.0 / 3.0; // bends to 0.1/m
    /// let load = section.bent(Axis::X, Width::Wide, m);
    /// let (_, stress) = section.unit_response().stresses(&load).next().ok_or("no ply")?;
    /// near(stress.s1.get::<megapascal>(), -12.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
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

    /// Ply stresses of a thermal state, to be kept while the load grows; for a [`UnitResponse`] of the same section.
    #[must_use]
    pub fn residual(&self, deformation: Deformation, rise: Temperatures) -> Residual {
        Residual(self.ply_stresses(deformation, rise).map(|(_, stress)| stress).collect())
    }
}

/// A side of a ply under a load, and how far from failing it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlyReserve {
    /// Which ply, and which side of it.
    pub place: PlyPlace,
    /// Stress of the load, without what is residual.
    pub stress: PlyStress,
    /// Factor on the load at which it fails.
    pub reserve: Reserve,
}

impl UnitResponse {
    /// Stress of each ply on both its sides, outside first.
    pub fn stresses(&self, under: &Resultants) -> impl Iterator<Item = (PlyPlace, PlyStress)> {
        self.points.iter().map(|point| (point.place, point.stress(under)))
    }

    /// The reserve of each side of each ply, outside first; [`UnitResponse::first_ply`] is the least of them.
    ///
    /// # Errors
    /// [`NoStrength`] in the place of a ply that has none.
    pub fn reserves(
        &self,
        criterion: Criterion,
        under: &Resultants,
        residual: Option<&Residual>,
    ) -> impl Iterator<Item = Result<PlyReserve, NoStrength>> {
        self.points.iter().enumerate().map(move |(index, point)| {
            let (tsai_wu, strength) = point.criterion.as_ref().ok_or(NoStrength(point.place))?;
            let kept = residual.and_then(|r| r.0.get(index)).copied().unwrap_or_default();
            let stress = point.stress(under);
            let reserve = match criterion {
                Criterion::TsaiWu => tsai_wu.reserve(&stress, &kept),
                Criterion::MaxStress => max_stress(&stress, &kept, strength),
            };
            Ok(PlyReserve { place: point.place, stress, reserve })
        })
    }

    /// The place that fails first as the load grows.
    ///
    /// ```text
    /// R = min over plies and their sides of the reserve of the criterion
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `R` | [`Reserve::factor`] |
    ///
    /// # Validity
    /// First-ply failure; a skin may carry more. Without load the factor is infinite.
    ///
    /// # Errors
    /// [`NoStrength`] if the strength of a ply is not known: nothing can be said about the section then.
    ///
    /// # Source
    /// See [`TsaiWu::reserve`] and [`max_stress`].
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let mut m = MomentPerWidth::default();
    /// m.value = 485.0 + 1.0 / 3.0; // 12 MPa at the outside, against 120 MPa
    /// let load = section.bent(Axis::X, Width::Wide, m);
    /// let first = section.unit_response().first_ply(Criterion::TsaiWu, &load, None)?;
    /// near(first.1.factor.value, 10.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn first_ply(
        &self,
        criterion: Criterion,
        under: &Resultants,
        residual: Option<&Residual>,
    ) -> Result<(PlyPlace, Reserve), NoStrength> {
        let outermost = PlyPlace { skin: Skin::Outer, ply: 0, surface: Surface::Outer };
        let unloaded =
            Reserve { factor: Ratio::from(f64::INFINITY), mode: Mode::FibreTension, across: Ratio::default() };
        let mut first = (outermost, unloaded);
        for reserve in self.reserves(criterion, under, residual) {
            let PlyReserve { place, reserve, .. } = reserve?;
            if reserve.factor < first.1.factor {
                first = (place, reserve);
            }
        }
        Ok(first)
    }
}
