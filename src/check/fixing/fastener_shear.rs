//! The fastener itself in shear.

use super::{Held, each, steel::Steel};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    material::Property,
    source::{Citation, EN_1993_1_8, Mark},
    top::Hold,
    units::Force,
};

pub(in crate::check) struct FastenerShear;

impl Check for FastenerShear {
    fn id(&self) -> &'static str {
        "fastener-shear"
    }

    fn title(&self) -> &'static str {
        "fastener in shear"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "the shank of a bolt, a screw or a rivet, or a blind insert, is cut off by its side force"
    }

    fn formula(&self) -> &'static str {
        "V · factor ≤ a_v R_m A_s;  of a rivet or a blind insert the shear load of its table"
    }

    fn limits(&self) -> &'static str {
        "foot, skin and what lies between lie flat on each other, the thread in the plane of shear, no friction counted; \
         across a shim or a thick soft gasket the bolt bends, which is not in it"
    }

    fn citation(&self) -> Citation {
        Citation { work: EN_1993_1_8, locator: "Table 3.4, shear resistance, without its γ_M2", mark: Mark::Quoted }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| compare(held, outcomes));
    }
}

fn compare(held: Held<'_>, outcomes: &mut Outcomes<'_>) {
    let (demand, factor) = (held.shear(), held.factor(held.top.criteria.fastener_steel_factor.value));
    let hold = &held.fixing().hold;
    if let Some(shear) = tabled(hold) {
        outcomes.compare(Some(held.case), demand / shear.value * factor, || {
            (held.place(), held.sheared(Finding::compare(demand, shear.value, factor, shear.basis)))
        });
    }
    if let Some(steel) = Steel::of(hold) {
        let bearable = steel.shear();
        outcomes.compare(Some(held.case), demand / bearable * factor, || {
            let finding = held.sheared(Finding::compare(demand, bearable, factor, steel.basis()));
            let finding = finding.term("a_v", steel.shear_factor()).term("R_m", steel.strength());
            (held.place(), finding.term("A_s", steel.area))
        });
    }
}

/// Shear load that a table gives for the whole fastener.
pub(super) fn tabled(hold: &Hold) -> Option<&Property<Force>> {
    match hold {
        Hold::BlindRivet { rivet } => Some(&rivet.shear),
        Hold::BlindInsert { insert, .. } => Some(&insert.shear),
        _ => None,
    }
}
