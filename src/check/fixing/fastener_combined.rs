//! The fastener itself in tension and shear at once.

use super::{Held, each, steel::Steel};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::Interaction,
    source::{Citation, EN_1993_1_8, Mark},
    top::Hold,
    units::Ratio,
};

pub(in crate::check) struct FastenerCombined;

impl Check for FastenerCombined {
    fn id(&self) -> &'static str {
        "fastener-combined"
    }

    fn title(&self) -> &'static str {
        "fastener combined"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "the shank is torn off by pull and side force together, though it bears each alone"
    }

    fn formula(&self) -> &'static str {
        "(V/F_v + T q/(1.4 F_t)) · factor ≤ 1 and T q/F_t · factor ≤ 1;  of a rivet (V/F_v + T q/F_t) · factor ≤ 1"
    }

    fn limits(&self) -> &'static str {
        "the largest pull and the largest side force of a case are taken at once, though they may come from two sides: \
         safe; no bending of the bolt across a shim or a thick soft gasket"
    }

    fn citation(&self) -> Citation {
        Citation { work: EN_1993_1_8, locator: "Table 3.4, combined shear and tension", mark: Mark::Quoted }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| compare(held, outcomes));
    }
}

fn compare(held: Held<'_>, outcomes: &mut Outcomes<'_>) {
    let hold = &held.fixing().hold;
    let (rule, tension, shear, basis) = match (hold, Steel::of(hold)) {
        (Hold::BlindRivet { rivet }, _) => {
            let basis = rivet.tension.basis.max(rivet.shear.basis);
            (Interaction::Linear, rivet.tension.value, rivet.shear.value, basis)
        }
        (_, Some(steel)) => (Interaction::SteelBolt, steel.tension(), steel.shear(), steel.basis()),
        (_, None) => return,
    };
    let factor = held.factor(held.top.criteria.fastener_steel_factor.value);
    let one = Ratio::from(1.0);
    let demand = rule.utilisation(held.pull() / tension, held.shear() / shear);
    outcomes.compare(Some(held.case), demand * factor, || {
        let finding = held.pulled(Finding::compare(demand, one, factor, basis));
        (held.place(), held.sheared(finding).term("F_t", tension).term("F_v", shear))
    });
}
