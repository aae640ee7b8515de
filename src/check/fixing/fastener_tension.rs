//! The fastener itself in tension.

use super::{Held, each, steel::Steel};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Part, Subject},
    fastening::HEAD_FACTOR,
    source::{Citation, EN_1993_1_8, Mark},
    top::Hold,
};

pub(in crate::check) struct FastenerTension;

impl Check for FastenerTension {
    fn id(&self) -> &'static str {
        "fastener-tension"
    }

    fn title(&self) -> &'static str {
        "fastener in tension"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "the shank of a bolt, a screw or a rivet is torn off by its pull"
    }

    fn formula(&self) -> &'static str {
        "T q · factor ≤ k₂ R_m A_s;  of a rivet the least tensile load of its standard"
    }

    fn limits(&self) -> &'static str {
        "static pull; the preload is not added: a joint on foam or board does not stay closed by it"
    }

    fn citation(&self) -> Citation {
        Citation { work: EN_1993_1_8, locator: "Table 3.4, tension resistance, without its γ_M2", mark: Mark::Quoted }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        for open in &analysis.open_mounts {
            outcomes.cannot(None, Part::Mount(analysis.mounts[open.mount].on), open.reason.clone());
        }
        each(analysis, outcomes, |held, outcomes| compare(held, outcomes));
    }
}

fn compare(held: Held<'_>, outcomes: &mut Outcomes<'_>) {
    let (demand, factor) = (held.pull(), held.factor(held.top.criteria.fastener_steel_factor.value));
    let hold = &held.fixing().hold;
    if let Hold::BlindRivet { rivet } = hold {
        let bearable = rivet.tension.value;
        outcomes.compare(Some(held.case), demand / bearable * factor, || {
            let finding = Finding::compare(demand, bearable, factor, rivet.tension.basis);
            (held.place(), held.pulled(finding))
        });
    }
    if let Some(steel) = Steel::of(hold) {
        let bearable = steel.tension();
        outcomes.compare(Some(held.case), demand / bearable * factor, || {
            let finding = Finding::compare(demand, bearable, factor, steel.basis());
            let finding = held.pulled(finding).term("k2", HEAD_FACTOR).term("R_m", steel.strength());
            (held.place(), finding.term("A_s", steel.area))
        });
    }
}
