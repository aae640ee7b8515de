//! The places at which a skin is bent by itself: over a seat, under a sole, beside a footing, beside a backing.

use super::skins::{Local, PanelState, Skins, by_skin};
use crate::{
    analysis::{Bent, GearAction, Region},
    check::{Finding, Outcomes, Part, Place},
    geometry::Axis,
    section::Skin,
    strength::{SkinBending, skin_moment_beside_strip},
    units::{Force, ForcePerWidth, Length, MomentPerWidth, Torque},
};

/// A seat or an edge under a case, with the panel there.
pub(super) struct At<'s> {
    pub(super) case: usize,
    pub(super) region: Region,
    pub(super) axis: Axis,
    pub(super) panel: &'s [PanelState],
    pub(super) place: Place,
}

impl<'s> At<'s> {
    fn local(&self, moments: [[MomentPerWidth; 2]; 2]) -> Local<'s> {
        Local { case: self.case, axis: self.axis, moments, panel: self.panel, place: self.place }
    }
}

/// What the formulas take from the panel.
fn of_panel(finding: Finding, panel: &SkinBending) -> Finding {
    let finding = finding.term("a", panel.decay_length()).term("C", panel.core_share());
    finding.term("D_f", panel.flanges).term("D_s", panel.skins).term("S", panel.shear)
}

/// Over a pipe's seat, which presses the inner skin; `shear` is the most that the panel beside it has.
pub(super) fn over_seat(
    skins: &Skins<'_>,
    outcomes: &mut Outcomes<'_>,
    at: &At<'_>,
    (push, shear): (ForcePerWidth, ForcePerWidth),
    width: Length,
) {
    if push <= ForcePerWidth::default() {
        return;
    }
    let panel = skins.pressed(at.case, at.region, at.axis, Skin::Inner);
    let moments = by_skin(skins.over_seat(&panel, (push, shear), width), Skin::Inner, Bent::Hogging);
    skins.compare(outcomes, &at.local(moments), |finding| {
        let finding = finding.term("R", push).term("w", width).term("V", push.min(shear));
        let finding = finding.term("h", skins.analysis.top.criteria.seat_edge_share.value);
        of_panel(finding, &panel.panel).term("b", panel.dent_length()).term("t", skins.off(Skin::Inner) * 2.0)
    });
}

/// Beside a backing, which holds both skins.
pub(super) fn beside_backing(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>, at: &At<'_>, shear: ForcePerWidth) {
    let panel = skins.panel(at.case, Region::Field, at.axis);
    let strip = skins.panel(at.case, at.region, at.axis).shear;
    let share = skins.analysis.top.criteria.backing_edge_share.value;
    let moment = |skin| {
        let rigidity = skins.rigidity(skin, at.axis);
        skin_moment_beside_strip(shear, &panel, strip, rigidity, skins.off(skin)) * share.value
    };
    skins.compare(outcomes, &at.local(Skin::BOTH.map(|skin| [moment(skin), -moment(skin)])), |finding| {
        of_panel(finding.term("V", shear), &panel).term("S_b", strip).term("n", share)
    });
}

/// Under a person, who may stand anywhere; a sole presses evenly.
pub(super) fn under_sole(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>, case: usize, panel: &dyn Fn() -> PanelState) {
    let Some(people) = skins.analysis.cases[case].people else { return };
    let load = skins.sole(people.each);
    let state = [panel()];
    for axis in Axis::BOTH {
        let pressed = skins.pressed(case, Region::Field, axis, Skin::Outer);
        let moments = by_skin(pressed.under_even_disc(load), Skin::Outer, Bent::Sagging);
        let local = Local { case, axis, moments, panel: &state, place: Place::of(Part::Foot, None) };
        skins.compare(outcomes, &local, |finding| {
            of_panel(finding.term("P", load.force).term("r", load.radius), &pressed.panel)
        });
    }
}

/// Beside footings that are not fastened, taken as rigid: the rims of those that are belong to skin beside backing.
pub(super) fn beside_footing(
    skins: &Skins<'_>,
    outcomes: &mut Outcomes<'_>,
    case: usize,
    panel: &dyn Fn(Region) -> PanelState,
) {
    let analysis = skins.analysis;
    let loaded = &analysis.cases[case];
    let loose = analysis.top.gear.iter().enumerate().filter(|(_, gear)| loaded.with_gear && gear.fastened.is_none());
    for (index, gear) in loose {
        let action = GearAction::of(analysis.top, gear, loaded);
        let (force, moment): (Force, Torque) = (action.up.abs(), action.moment.abs());
        let shear = skins.beside_footing(force, moment, gear.footing());
        let region = analysis.below_gear[index];
        let state = [panel(region)];
        for axis in Axis::BOTH {
            let pressed = skins.pressed(case, region, axis, Skin::Outer);
            let local = pressed.beside_hard_edge(shear, skins.off(Skin::Outer));
            // Pushed or pulled.
            let moments = by_skin(local, Skin::Outer, Bent::Sagging).map(|[most, _]| [most, -most]);
            let place = Place::of(Part::Gear(index), Some(gear.at));
            skins.compare(outcomes, &Local { case, axis, moments, panel: &state, place }, |finding| {
                let finding = finding.term("P", force).term("M", moment).term("f", gear.footing()).term("V", shear);
                of_panel(finding, &pressed.panel)
                    .term("b", pressed.dent_length())
                    .term("t", skins.off(Skin::Outer) * 2.0)
            });
        }
    }
}
