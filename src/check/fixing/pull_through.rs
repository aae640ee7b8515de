//! A washer, or the tail of a rivet, pulled through the skin.

use super::{Held, each, under_washer::pressing_diameter};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::pull_through_laminate,
    source::{Citation, DERIVED, Mark},
    top::Hold,
};

pub(in crate::check) struct PullThrough;

impl Check for PullThrough {
    fn id(&self) -> &'static str {
        "pull-through"
    }

    fn title(&self) -> &'static str {
        "pull-through"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "the washer on the far skin, or the tail of a blind rivet behind the near one, is pulled through the skin"
    }

    fn formula(&self) -> &'static str {
        "T q · factor ≤ π w t k t_pt,  w the diameter that presses: of a washer no more than it reaches beyond the nut, of \
         a rivet its tail"
    }

    fn limits(&self) -> &'static str {
        "a skin that stands on backing or is thick: over foam the core below it gives way first (crush under washer, core \
         round backing); other screws press with their head on the foot, not on the skin; that a rivet peels the skin \
         off the core is not counted"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "equilibrium of the plug below the washer", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| compare(held, outcomes));
    }
}

fn compare(held: Held<'_>, outcomes: &mut Outcomes<'_>) {
    let criteria = &held.top.criteria;
    let (width, skin) = match &held.fixing().hold {
        Hold::ThroughBolt { bolt, washer, .. } => (pressing_diameter(held.top, bolt, washer), held.far()),
        Hold::BlindRivet { rivet } => (rivet.diameter.value * criteria.rivet_tail.value, held.mount.near),
        _ => return,
    };
    let Some((strength, basis)) = held.skin(skin).punching_shear() else {
        let reason = "a layer of the skin has no `punching_shear` in the table: add it to its ply";
        return outcomes.cannot(None, held.place().part, reason);
    };
    let thickness = held.skin(skin).laminate().thickness();
    let left = held.knockdowns.skin_strength(skin, basis).product();
    let (demand, factor) = (held.pull(), held.factor(criteria.skin_bearing_factor.value));
    let bearable = pull_through_laminate(width, thickness, strength * left);
    outcomes.compare(Some(held.case), demand / bearable * factor, || {
        let finding = held.pulled(Finding::compare(demand, bearable, factor, basis));
        let finding = finding.term("w", width).term("t", thickness).term("k", left).term("t_pt", strength);
        (held.place().in_skin(skin), finding)
    });
}
