//! Enough thread in the backing.

use super::{Held, backing_kind::BackingKind, each_in_place, thread_hold::Engaged};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    material::Basis,
    source::{ASSUMPTION, Citation, Mark},
    units::{Length, Ratio},
};

pub(in crate::check) struct Engagement;

impl Check for Engagement {
    fn id(&self) -> &'static str {
        "engagement"
    }

    fn title(&self) -> &'static str {
        "thread engagement"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "too few turns of a screw are in its backing: the hold hangs on how well one hole was drilled"
    }

    fn formula(&self) -> &'static str {
        "n d ≤ h − l − e"
    }

    fn limits(&self) -> &'static str {
        "h is the depth in the backing alone, l what the mouth of the hole loses, e what the tip lacks; thread in the \
         skins is not counted"
    }

    fn citation(&self) -> Citation {
        Citation { work: ASSUMPTION, locator: "least full thread in diameters", mark: Mark::Assumed }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each_in_place(analysis, |held| match Engaged::of(&held) {
            None => {}
            Some(Ok(engaged)) => compare(held, engaged, outcomes),
            Some(Err(reason)) => outcomes.cannot(None, held.place().part, reason),
        });
    }
}

fn compare(held: Held<'_>, engaged: Engaged<'_>, outcomes: &mut Outcomes<'_>) {
    let criteria = &held.top.criteria;
    let diameters = match engaged.kind {
        BackingKind::Soft | BackingKind::Wood => criteria.engagement_soft.value,
        BackingKind::Laminate | BackingKind::Metal => criteria.engagement_hard.value,
    };
    let least: Length = engaged.diameter * diameters;
    let full = engaged.full();
    outcomes.compare(None, least / full, || {
        let finding = Finding::compare(least, full, Ratio::from(1.0), Basis::Typical).term("n", diameters);
        let finding = finding.term("d", engaged.diameter).term("h", engaged.depth);
        (held.place(), finding.term("l", engaged.lead_in).term("e", engaged.tip))
    });
}
