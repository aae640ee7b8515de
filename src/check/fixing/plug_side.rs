//! A plug of potting pushed over in the panel.

use super::{Held, between::Between, each, potted_insert::depth_in_core, potted_side::lever, skin_bearing::Bearing};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::Stub,
    material::{Basis, PottedInsert as Row},
    source::{Citation, DERIVED, Mark},
    top::{Bolt, Hold},
    units::{Force, Length, Pressure, Ratio},
};

pub(in crate::check) struct PlugSide;

impl Check for PlugSide {
    fn id(&self) -> &'static str {
        "plug-side"
    }

    fn title(&self) -> &'static str {
        "potting pushed over"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "pushed sideways, a plug of potting crushes the near skin and the core beside it and turns over in the panel"
    }

    fn formula(&self) -> &'static str {
        "V · factor ≤ B − F + q [√(4 e (h + (F − B)/q) + 4 e² + 2 h² + 4 h F/q) − h − 2 e],  q = k s_c d,  B and F what the near \
         skin and the far one bear of it, at most q h + F + (q h²/2 + F h)/e and [(B + q h) e + q h²/2]/(h + e),  e half of the \
         foot and the near skin"
    }

    fn limits(&self) -> &'static str {
        "plug stiff, far from rim and neighbours; the far skin holds a plug that goes into it; the larger factor of skin and \
         core on all of it; e without the foot where a stiff one as thick as the bolt keeps it upright"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "stiff stub in a plastic bed, held at its mouth", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            if let Hold::PottedInsert { bolt, insert, depth, .. } = &held.fixing().hold {
                match Pushed::of(&held, bolt, insert, *depth) {
                    Ok(pushed) => compare(held, pushed, outcomes),
                    Err(reason) => outcomes.cannot(None, held.place().part, reason),
                }
            }
        });
    }
}

/// Side force that pushes a plug over.
#[derive(Clone, Copy)]
pub(super) struct Pushed {
    /// The force, knock-downs taken off.
    pub(super) bearable: Force,
    /// Factor on it.
    pub(super) factor: Ratio,
    /// Basis of the weakest value in it.
    pub(super) basis: Basis,
    stub: Stub,
    strength: Pressure,
    left: Ratio,
}

impl Pushed {
    pub(super) fn of(held: &Held<'_>, bolt: &Bolt, insert: &Row, depth: Length) -> Result<Self, &'static str> {
        let (near, beside, in_core) =
            (Bearing::of(held, held.mount.near)?, Between::at(held), depth_in_core(held, depth));
        let far = if depth > held.near_skin().laminate().thickness() + held.top.core.thickness {
            Some(Bearing::of(held, held.far())?)
        } else {
            None
        };
        let crush = beside.compressive_strength();
        let left = beside.left(held, crush.basis);
        let stub = Stub {
            diameter: insert.bore.value,
            depth: in_core,
            bed: crush.value * left,
            mouth: near.bearable,
            end: far.map_or_else(Force::default, |far| far.bearable),
            lever: lever(held, bolt) + held.near_skin().laminate().thickness(),
        };
        let criteria = &held.top.criteria;
        let factor = held.factor(criteria.skin_bearing_factor.value.max(criteria.core_crush_factor.value));
        let basis = far.map_or(near.basis, |far| near.basis.max(far.basis)).max(crush.basis);
        Ok(Self { bearable: stub.force(), factor, basis, stub, strength: crush.value, left })
    }
}

fn compare(held: Held<'_>, pushed: Pushed, outcomes: &mut Outcomes<'_>) {
    let Pushed { bearable, factor, basis, stub, strength, left } = pushed;
    let demand = held.shear();
    outcomes.compare(Some(held.case), demand / bearable * factor, || {
        let finding = held.sheared(Finding::compare(demand, bearable, factor, basis));
        let finding = finding.term("B", stub.mouth).term("F", stub.end);
        let finding = finding.term("k", left).term("s_c", strength).term("d", stub.diameter);
        (held.place(), finding.term("h", stub.depth).term("e", stub.lever))
    });
}
