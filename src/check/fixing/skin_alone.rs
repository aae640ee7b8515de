//! One skin by itself: how stiff it bends, and when its first ply fails.

use uom::si::{force::newton, length::meter, ratio::ratio};

use crate::{
    analysis::ply_factor,
    geometry::Axis,
    laminate::{Component, Laminate, Ply, PlyStress, Reserve, Resultants, TsaiWu},
    top::Top,
    units::{
        FlexuralRigidity, Force, ForcePerWidth, Length, MomentPerWidth, Pressure, Ratio, TemperatureInterval,
        per_width, plain,
    },
};

pub(super) const NO_BEARING: &str = "a layer of the skin has no `bearing` in the table: add it to its ply";

/// Rigidity of a skin that is bent along an axis, held straight across it.
pub(in crate::check) fn rigidity(skin: &Laminate, axis: Axis) -> FlexuralRigidity {
    let along = component(axis);
    skin.stiffness().bending_free(along, along)
}

/// Rigidity in the softer direction.
pub(super) fn softer_rigidity(skin: &Laminate) -> FlexuralRigidity {
    let [x, y] = Axis::BOTH.map(|axis| rigidity(skin, axis));
    if x < y { x } else { y }
}

/// Shear strength in the plane, mean over the plies, each along its own fibres: the least in any direction. None where a
/// ply has no strength.
pub(super) fn shear_strength(skin: &Laminate) -> Option<Pressure> {
    let sum: Option<ForcePerWidth> = skin.plies().map(|ply| Some(per_width(ply.strength?.s * ply.thickness))).sum();
    Some(plain(sum?) / skin.thickness())
}

/// Mean stress at which the first ply fails when the skin is pulled along, across or at 45 degrees, whichever is least.
pub(super) fn tensile_strength(skin: &Laminate) -> Option<Pressure> {
    let unit: ForcePerWidth = per_width(Force::new::<newton>(1.0) / Length::new::<meter>(1.0));
    let mut least = f64::INFINITY;
    for [x, y, xy] in [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.5, 0.5, 0.5], [0.5, 0.5, -0.5]] {
        let mut under = Resultants::default();
        (under.force.x, under.force.y, under.force.xy) = (unit * x, unit * y, unit * xy);
        for reserve in reserves(skin, &under) {
            least = least.min(reserve?.1.factor.get::<ratio>());
        }
    }
    Some(plain(unit) / skin.thickness() * least)
}

/// Moment at which the first ply of a skin fails, and the factor that its way of failing asks for.
#[derive(Clone, Copy)]
pub(in crate::check) struct Bendable {
    pub(in crate::check) moment: MomentPerWidth,
    pub(in crate::check) factor: Ratio,
}

/// A unit moment of a skin by itself that bends it along an axis and leaves it straight across.
pub(in crate::check) fn bent_alone(skin: &Laminate, axis: Axis) -> Resultants {
    let unit: MomentPerWidth = per_width(Force::new::<newton>(1.0));
    let along = component(axis);
    let d = |other| skin.stiffness().bending_free(along, other);
    let share = |other| (d(other) / d(along)).get::<ratio>();
    let mut under = Resultants::default();
    under.moment.x = unit * share(Component::X);
    under.moment.y = unit * share(Component::Y);
    under.moment.xy = unit * share(Component::Xy);
    under
}

/// What a skin bears when it is bent along an axis, whichever way, held straight across it.
pub(in crate::check) fn bendable(skin: &Laminate, axis: Axis, top: &Top) -> Option<Bendable> {
    let unit: MomentPerWidth = per_width(Force::new::<newton>(1.0));
    let one = bent_alone(skin, axis);
    let mut least: Option<Bendable> = None;
    for way in [1.0, -1.0] {
        let under = Resultants { moment: one.moment * way, ..one };
        for reserve in reserves(skin, &under) {
            let (ply, reserve) = reserve?;
            let found = Bendable {
                moment: unit * reserve.factor.get::<ratio>(),
                factor: ply_factor(&top.criteria, ply, &reserve),
            };
            if least.is_none_or(|least| found.moment / found.factor.value < least.moment / least.factor.value) {
                least = Some(found);
            }
        }
    }
    least
}

const fn component(axis: Axis) -> Component {
    match axis {
        Axis::X => Component::X,
        Axis::Y => Component::Y,
    }
}

/// Reserve of both sides of each ply; none in the place of one without strength.
fn reserves<'a>(skin: &'a Laminate, under: &Resultants) -> impl Iterator<Item = Option<(&'a Ply, Reserve)>> {
    let stresses = skin.ply_stresses(skin.deformation(under), TemperatureInterval::default());
    stresses.map(|(index, _, stress)| {
        let ply = skin.plies().nth(index)?;
        Some((ply, TsaiWu::new(&ply.strength?).reserve(&stress, &PlyStress::default())))
    })
}
