//! The core sheared beside a backing, a footing or a washer.

use super::{Held, edge_load};
use crate::{
    analysis::{Analysis, core_shear_factor},
    check::{Check, Finding, Outcomes, Subject},
    geometry::Axis,
    section::{Bending, Width},
    source::{Citation, DERIVED, Mark},
    units::{Pressure, plain},
};

pub(in crate::check) struct BackingCoreShear;

impl Check for BackingCoreShear {
    fn id(&self) -> &'static str {
        "backing-core-shear"
    }

    fn title(&self) -> &'static str {
        "core round backing"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "the core shears off beside the backing that a mount stands on, or round a footing or a washer that stands on foam"
    }

    fn formula(&self) -> &'static str {
        "t_c · factor ≤ k t_u,  t_c = C q/d;  q = P/(2 L) + M/(v L), v = min(w, L/3), beside a strip of width w, L the length \
         over which the load leaves it;  q = [P/(2 (L + w)) + M/(L w + min(L, w)²/3)]/e round a plug or a footing L by w;  \
         q = P/(π w) + 4 M/(π w²) round a disc of width w;  of one fixing P = p T, p by prying"
    }

    fn limits(&self) -> &'static str {
        "panel wide on all sides; M at the skin, with what P does by standing off the middle; a backing carries its load no \
         farther than 45 degrees along itself, less near its end; round a washer the skins take some of this: over-stated by \
         a third and more; neighbours and the rim of the top are not counted"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: DERIVED,
            locator: "equilibrium of the backing on its rim; plate equations",
            mark: Mark::Derived,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let bending = analysis.sections.field.section.bending(Axis::X, Width::Wide);
        edge_load::each_edge(analysis, outcomes, |held, load, outcomes| compare(held, &load, bending, outcomes));
    }
}

fn compare(held: Held<'_>, load: &edge_load::EdgeLoad, bending: &Bending, outcomes: &mut Outcomes<'_>) {
    let core = &held.top.core.material;
    let across = core.shear_strength_w.as_ref().filter(|across| across.value < core.shear_strength.value);
    let strength = across.unwrap_or(&core.shear_strength);
    let left = held.knockdowns.core_strength(strength.basis).product();
    let factor = held.factor(core_shear_factor(&held.top.criteria, core).value);
    let share = bending.skin_membranes / (bending.skin_membranes + bending.skins_alone);
    let (stress, bearable): (Pressure, Pressure) = (share * (plain(load.line) / bending.lever), strength.value * left);
    outcomes.compare(Some(held.case), stress / bearable * factor, || {
        let finding = Finding::compare(stress, bearable, factor, strength.basis);
        let finding = load.terms(&held, finding).term("C", share).term("d", bending.lever);
        (load.place, finding.term("t_u", strength.value).term("k", left))
    });
}
