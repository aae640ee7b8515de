//! The near skin crushed by the shank of a fixing.

use super::{Held, each, skin_alone::NO_BEARING};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::{SlenderHole, bearing_capacity},
    material::Basis,
    section::Skin,
    source::{Citation, Mark, SHIGLEY_9},
    units::{Force, Length, Pressure, Ratio},
};

pub(in crate::check) struct SkinBearing;

impl Check for SkinBearing {
    fn id(&self) -> &'static str {
        "skin-bearing"
    }

    fn title(&self) -> &'static str {
        "bearing in skin"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "pushed sideways, the shank of a fixing crushes the wall of its hole in the near skin"
    }

    fn formula(&self) -> &'static str {
        "V · factor ≤ j k s_b d t,  j what is left where the skin is thin beside the shank"
    }

    fn limits(&self) -> &'static str {
        "the near skin alone, since the two skins do not share a load without a sleeve or potting between them; friction is \
         not counted; far from rim and neighbours, which have checks of their own"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: SHIGLEY_9,
            locator: "section 8-12, bearing on the projected area; what a thin skin loses is assumed",
            mark: Mark::Quoted,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            // Nothing is drilled for what is glued on.
            if held.fixing().hole().is_some() {
                compare(held, outcomes);
            }
        });
    }
}

/// What a skin bears of a side force.
#[derive(Clone, Copy)]
pub(super) struct Bearing {
    /// The force, knock-downs taken off.
    pub(super) bearable: Force,
    pub(super) basis: Basis,
    strength: Pressure,
    /// What is left of it.
    pub(super) left: Ratio,
    diameter: Length,
    thickness: Length,
    slender: SlenderHole,
}

impl Bearing {
    pub(super) fn of(held: &Held<'_>, skin: Skin) -> Result<Self, &'static str> {
        let criteria = &held.top.criteria;
        let (strength, basis) = held.skin(skin).bearing().ok_or(NO_BEARING)?;
        let (diameter, thickness) = (held.fixing().diameter(), held.skin(skin).laminate().thickness());
        let slender = SlenderHole { limit: criteria.slender_hole.value, left: criteria.slender_hole_left.value };
        let left = held.knockdowns.skin_strength(skin, basis).product();
        let bearable = bearing_capacity(diameter, thickness, strength * left, slender);
        Ok(Self { bearable, basis, strength, left, diameter, thickness, slender })
    }
}

fn compare(held: Held<'_>, outcomes: &mut Outcomes<'_>) {
    let near = held.mount.near;
    let bearing = match Bearing::of(&held, near) {
        Ok(bearing) => bearing,
        Err(reason) => return outcomes.cannot(None, held.place().part, reason),
    };
    let Bearing { bearable, basis, strength, left, diameter, thickness, slender } = bearing;
    let (demand, factor) = (held.shear(), held.factor(held.top.criteria.skin_bearing_factor.value));
    outcomes.compare(Some(held.case), demand / bearable * factor, || {
        let j = if diameter / thickness > slender.limit { slender.left } else { Ratio::from(1.0) };
        let finding = held.sheared(Finding::compare(demand, bearable, factor, basis)).term("j", j).term("k", left);
        let finding = finding.term("s_b", strength).term("d", diameter).term("t", thickness);
        (held.place().in_skin(near), finding)
    });
}
