//! The near skin torn across a row of holes.

use super::{Held, each, skin_alone::tensile_strength};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::net_section_capacity,
    section::Skin,
    source::{Citation, Mark, SHIGLEY_9},
    units::{Force, Length, Pressure, Ratio},
};

pub(in crate::check) struct SkinNetSection;

impl Check for SkinNetSection {
    fn id(&self) -> &'static str {
        "skin-net-section"
    }

    fn title(&self) -> &'static str {
        "skin across holes"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "pushed sideways, a row of fixings tears the near skin from hole to hole"
    }

    fn formula(&self) -> &'static str {
        "V · factor ≤ (w − h) t k s_t/K,  w the least of the distance to the next fixing and twice that to the rim, s_t the \
         stress at which the first ply fails"
    }

    fn limits(&self) -> &'static str {
        "row square to the load, each hole with its own share; the first ply that cracks counts, in its worst direction; \
         what the panel's bending does to the skin is not added"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: SHIGLEY_9,
            locator: "example 8-6, tension across holes; the rim of the hole by K",
            mark: Mark::Quoted,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        // The plies are looked at once for each skin, not for each fixing.
        let mut known: [Option<Option<Pressure>>; 2] = [None; 2];
        each(analysis, outcomes, |held, outcomes| {
            let Some(hole) = held.fixing().hole() else { return };
            let slot = &mut known[usize::from(held.mount.near == Skin::Inner)];
            match *slot.get_or_insert_with(|| tensile_strength(held.near_skin().laminate())) {
                Some(strength) => compare(held, hole, strength, outcomes),
                None => {
                    let reason = "a ply of the skin has no strength in the table: add it";
                    outcomes.cannot(None, held.place().part, reason);
                }
            }
        });
    }
}

fn compare(held: Held<'_>, hole: Length, strength: Pressure, outcomes: &mut Outcomes<'_>) {
    let (skin, near, criteria) = (held.near_skin(), held.mount.near, &held.top.criteria);
    let to_rim: Length = held.around().rim * 2.0;
    let width = held.around().neighbour.map_or(to_rim, |neighbour| neighbour.min(to_rim));
    let left = held.knockdowns.skin_strength(near, skin.basis()).product();
    let (thickness, concentration) = (skin.laminate().thickness(), criteria.hole_stress.value);
    let (demand, factor) = (held.shear(), held.factor(criteria.skin_bearing_factor.value));
    let bearable = net_section_capacity(width, hole, thickness, strength * left, concentration);
    // Where no skin is left nothing holds, even if nothing acts.
    let used = if bearable > Force::default() { demand / bearable * factor } else { Ratio::from(f64::INFINITY) };
    outcomes.compare(Some(held.case), used, || {
        let finding = Finding { utilisation: used, ..Finding::compare(demand, bearable, factor, skin.basis()) };
        let finding = held.sheared(finding).term("w", width);
        let finding = finding.term("h", hole).term("t", thickness).term("k", left).term("s_t", strength);
        (held.place().in_skin(near), finding.term("K", concentration))
    });
}
