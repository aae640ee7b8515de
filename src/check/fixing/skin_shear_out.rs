//! A fixing that shears out of the near skin towards the rim of the top.

use super::{Held, each, skin_alone::shear_strength};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::shear_out_capacity,
    source::{Citation, Mark, SHIGLEY_9},
    units::{Force, Length, Pressure, Ratio},
};

pub(in crate::check) struct SkinShearOut;

impl Check for SkinShearOut {
    fn id(&self) -> &'static str {
        "skin-shear-out"
    }

    fn title(&self) -> &'static str {
        "shear-out of skin"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a fixing near the rim tears a strip of the near skin out with it"
    }

    fn formula(&self) -> &'static str {
        "V · factor ≤ 2 (e − h/2) t k t_u,  e from the hole of width h to the rim"
    }

    fn limits(&self) -> &'static str {
        "straight towards the rim, even shear on both sides of the strip; each ply with its strength along its own fibres, \
         the least in any direction; a solid border is not counted"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: SHIGLEY_9,
            locator: "example 8-6, edge shearing; from the edge of the hole, the safe side",
            mark: Mark::Quoted,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            if let Some(hole) = held.fixing().hole() {
                compare(held, hole, outcomes);
            }
        });
    }
}

fn compare(held: Held<'_>, hole: Length, outcomes: &mut Outcomes<'_>) {
    let (skin, near) = (held.near_skin(), held.mount.near);
    let Some(strength) = shear_strength(skin.laminate()) else {
        let reason = "a ply of the skin has no strength in the table: add it";
        return outcomes.cannot(None, held.place().part, reason);
    };
    let left = held.knockdowns.skin_strength(near, skin.basis()).product();
    let (rim, thickness) = (held.around().rim, skin.laminate().thickness());
    let (demand, factor) = (held.shear(), held.factor(held.top.criteria.skin_bearing_factor.value));
    let counted: Pressure = strength * left;
    let bearable = shear_out_capacity(rim, hole, thickness, counted);
    // Where no skin is left nothing holds, even if nothing acts.
    let used = if bearable > Force::default() { demand / bearable * factor } else { Ratio::from(f64::INFINITY) };
    outcomes.compare(Some(held.case), used, || {
        let finding = Finding { utilisation: used, ..Finding::compare(demand, bearable, factor, skin.basis()) };
        let finding = held.sheared(finding).term("e", rim);
        let finding = finding.term("h", hole).term("t", thickness).term("k", left).term("t_u", strength);
        (held.place().in_skin(near), finding)
    });
}
