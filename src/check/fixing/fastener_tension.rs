//! The fastener itself in tension.

use super::{Held, each};
use crate::{
    analysis::{Analysis, screw_thread},
    check::{Check, Finding, Outcomes, Part, Subject},
    fastening::{HEAD_FACTOR, tensile_capacity},
    source::{Citation, EN_1993_1_8, Mark},
    top::Hold,
    units::{Area, Force},
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
        each(analysis, |held| compare(held, outcomes));
    }
}

fn compare(held: Held<'_>, outcomes: &mut Outcomes<'_>) {
    let (demand, factor) = (held.pull(), held.factor(held.top.criteria.fastener_steel_factor.value));
    let bolt = |stress_area: Area, grade: &crate::material::Fastener, outcomes: &mut Outcomes<'_>| {
        let strength = grade.ultimate_stress.value;
        let bearable: Force = tensile_capacity(strength, stress_area, HEAD_FACTOR);
        outcomes.compare(Some(held.case), demand / bearable * factor, || {
            let finding = Finding::compare(demand, bearable, factor, grade.ultimate_stress.basis);
            let finding = held.pulled(finding).term("k2", HEAD_FACTOR).term("R_m", strength);
            (held.place(), finding.term("A_s", stress_area))
        });
    };
    match &held.fixing().hold {
        Hold::BlindRivet { rivet } => {
            let bearable = rivet.tension.value;
            outcomes.compare(Some(held.case), demand / bearable * factor, || {
                let finding = Finding::compare(demand, bearable, factor, rivet.tension.basis);
                (held.place(), held.pulled(finding))
            });
        }
        Hold::Screw { screw, grade, .. } => bolt(crate::fastening::round_area(screw.root.value), grade, outcomes),
        Hold::ThroughBolt { bolt: b, .. }
        | Hold::TappedScrew { bolt: b, .. }
        | Hold::BlindInsert { bolt: b, .. }
        | Hold::PottedInsert { bolt: b, .. }
        | Hold::BondedStud { bolt: b, .. } => bolt(screw_thread(&b.thread).stress_area(), &b.grade, outcomes),
    }
}
