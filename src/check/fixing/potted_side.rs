//! An insert pushed over in its potting.

use super::{Held, each, lateral_hold::grip};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::Stub,
    material::{Basis, Filler, PottedInsert as Row},
    source::{Citation, DERIVED, Mark},
    top::{Bolt, Hold},
    units::{Force, Length, Pressure, Ratio},
};

pub(in crate::check) struct PottedSide;

impl Check for PottedSide {
    fn id(&self) -> &'static str {
        "potted-side"
    }

    fn title(&self) -> &'static str {
        "insert pushed over"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "pushed sideways, a potted insert crushes the potting on one side and turns over in it"
    }

    fn formula(&self) -> &'static str {
        "V · factor ≤ k s_c d [√(4 e h + 4 e² + 2 h²) − h − 2 e],  e half of the foot, none of a stiff one as thick as the bolt"
    }

    fn limits(&self) -> &'static str {
        "stiff insert, bore filled without voids; no help from the flange of the insert or from friction; a foot of no known thickness is taken as thick as the bolt"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "stiff stub in a plastic bed, forced above its mouth", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            if let Hold::PottedInsert { bolt, insert, potting, depth } = &held.fixing().hold {
                compare(held, Pushed::of(&held, bolt, (insert, potting), *depth), outcomes);
            }
        });
    }
}

/// Side force that pushes an insert over in its potting.
#[derive(Clone, Copy)]
pub(super) struct Pushed {
    /// The force, knock-downs taken off.
    pub(super) bearable: Force,
    pub(super) basis: Basis,
    stub: Stub,
    strength: Pressure,
    left: Ratio,
}

impl Pushed {
    pub(super) fn of(held: &Held<'_>, bolt: &Bolt, (insert, potting): (&Row, &Filler), depth: Length) -> Self {
        let crush = &potting.compressive_strength.typical;
        let left = held.knockdowns.potting_strength(held.mount.near, crush.basis).product();
        let stub = Stub {
            diameter: insert.outside.value,
            depth: insert.height.value.min(depth),
            bed: crush.value * left,
            mouth: Force::default(),
            end: Force::default(),
            lever: lever(held, bolt),
        };
        Self { bearable: stub.force(), basis: crush.basis, stub, strength: crush.value, left }
    }
}

/// From the face of the near skin up to where the foot pushes the bolt: the middle of the foot, less where a stiff one
/// keeps the bolt upright.
pub(super) fn lever(held: &Held<'_>, bolt: &Bolt) -> Length {
    let (fastened, diameter) = (held.mount.fastened, bolt.thread.major.value);
    let free: Ratio = Ratio::from(1.0) - grip(fastened, diameter);
    fastened.clamped.unwrap_or(diameter) / 2.0 * free
}

fn compare(held: Held<'_>, pushed: Pushed, outcomes: &mut Outcomes<'_>) {
    let Pushed { bearable, basis, stub, strength, left } = pushed;
    let (demand, factor) = (held.shear(), held.bond_factor(basis));
    outcomes.compare(Some(held.case), demand / bearable * factor, || {
        let finding = held.sheared(Finding::compare(demand, bearable, factor, basis)).term("k", left);
        let finding = finding.term("s_c", strength).term("d", stub.diameter);
        (held.place(), finding.term("h", stub.depth).term("e", stub.lever))
    });
}
