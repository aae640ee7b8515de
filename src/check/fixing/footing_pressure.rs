//! A footing pressed into what lies below it by the gear that leans over.

use super::{Held, between::Between, each_mount};
use crate::{
    analysis::{Analysis, MountOn, below_footing},
    check::{Check, Finding, Outcomes, Part, Place, Subject},
    source::{Citation, DERIVED, Mark},
    units::{Pressure, Ratio},
};

pub(in crate::check) struct FootingPressure;

impl Check for FootingPressure {
    fn id(&self) -> &'static str {
        "footing-pressure"
    }

    fn title(&self) -> &'static str {
        "pressure of footing"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "gear that leans over presses the rim of its footing into the skin, and the core or the backing below"
    }

    fn formula(&self) -> &'static str {
        "p · factor ≤ k s,  p the largest pressure of the footing on its bed, s the compressive strength of the core or the \
         backing, or the bearing strength of the skin; of core too where the footing reaches past its backing"
    }

    fn limits(&self) -> &'static str {
        "stiff footing on a bed that gives way evenly; what reaches past the backing bears nothing, and core there is held \
         against all of p, which is safe; spread through the skin is not counted; the rim of a footing that \
         bends presses less, that of one that is hollow more"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "rigid plate on springs, held by its fixings", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each_mount(analysis, outcomes, |held, outcomes| {
            if let MountOn::Gear(index) = held.mount.on {
                for below in below_footing(held.top, &held.top.gear[index]) {
                    compare(held, Between::of(below, held.top), index, outcomes);
                }
            }
        });
    }
}

fn compare(held: Held<'_>, below: Between<'_>, gear: usize, outcomes: &mut Outcomes<'_>) {
    let criteria = &held.top.criteria;
    let place = Place::of(Part::Gear(gear), Some(held.top.gear[gear].at));
    let mut against = |strength: Pressure, basis, left: Ratio, factor: Ratio, place: Place| {
        let (demand, bearable): (Pressure, Pressure) = (held.forces.pressure, strength * left);
        let factor = held.factor(factor);
        outcomes.compare(Some(held.case), demand / bearable * factor, || {
            let finding = held.raised(Finding::compare(demand, bearable, factor, basis));
            (place, finding.term("p", demand).term("s", strength).term("k", left))
        });
    };
    let strength = below.compressive_strength();
    let left = below.left(&held, strength.basis);
    against(strength.value, strength.basis, left, criteria.core_crush_factor.value, place);
    let near = held.mount.near;
    match held.near_skin().bearing() {
        Some((strength, basis)) => {
            let left = held.knockdowns.skin_strength(near, basis).product();
            against(strength, basis, left, criteria.skin_bearing_factor.value, place.in_skin(near));
        }
        None => outcomes.cannot(None, place.part, super::skin_alone::NO_BEARING),
    }
}
