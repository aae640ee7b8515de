//! A screw pushed sideways in its backing.

use super::{
    Held,
    backing_kind::{BackingKind, backing, no_backing},
    each,
};
use crate::{
    analysis::{Analysis, screw_thread},
    check::{Check, Finding, Outcomes, Subject},
    fastening::{Dowel, HingeRule, PlateGrip, backing_bearing, plastic_moment},
    material::{Fastener, Property},
    source::{Citation, EN_1995_1_1, Mark},
    top::{Fastened, Hold},
    units::{Force, Length, Pressure, Ratio},
};

pub(in crate::check) struct BackingBearing;

impl Check for BackingBearing {
    fn id(&self) -> &'static str {
        "backing-bearing"
    }

    fn title(&self) -> &'static str {
        "bearing in backing"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "pushed sideways, a screw that ends in the backing turns over or bends in it"
    }

    fn formula(&self) -> &'static str {
        "V · factor ≤ (1 − g) V_0 + g V_1;  head free: V_0 = min[0.41 f t d, √(2 M_y f d)];  head held: V_1 = min[f t d, \
         f t d (√(2 + 4 M_y/(f d t²)) − 1), 2 √(M_y f d)];  f = k f_h"
    }

    fn limits(&self) -> &'static str {
        "as if the near skin bore nothing (bearing in skin is what counts where that passes with room); d the root of the \
         thread; the head is held, g = 1, by a stiff foot as thick as the screw, free, g = 0, below half of that or in a soft \
         foot; what a code adds for the rope is left out"
    }

    fn citation(&self) -> Citation {
        Citation { work: EN_1995_1_1, locator: "8.2.3, steel to timber, one shear plane", mark: Mark::Memory }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, |held| match &held.fixing().hold {
            Hold::TappedScrew { bolt, depth } => {
                let thread = screw_thread(&bolt.thread);
                let sizes = Sizes { outside: thread.major, root: thread.root_diameter(), depth: *depth };
                compare(held, sizes, &bolt.grade, outcomes);
            }
            Hold::Screw { screw, grade, depth } => {
                let sizes = Sizes { outside: screw.major.value, root: screw.root.value, depth: *depth };
                compare(held, sizes, grade, outcomes);
            }
            _ => {}
        });
    }
}

#[derive(Clone, Copy)]
struct Sizes {
    outside: Length,
    root: Length,
    depth: Length,
}

/// How far the foot holds the head of a screw from turning: 0 not at all, 1 wholly.
fn grip(fastened: &Fastened, outside: Length) -> Ratio {
    if !fastened.stiff {
        return Ratio::default();
    }
    // Stiff means as thick as the screw, where the file does not say how thick.
    let thickness = fastened.clamped.unwrap_or(outside) / outside;
    Ratio::from((2.0 * thickness.value - 1.0).clamp(0.0, 1.0))
}

fn compare(held: Held<'_>, sizes: Sizes, grade: &Fastener, outcomes: &mut Outcomes<'_>) {
    let Some(backing) = backing(&held) else {
        return outcomes.cannot(None, held.place().part, no_backing(&held));
    };
    let board = &backing.board;
    let Some(strength): Option<&Property<Pressure>> = board.bearing_strength.as_ref() else {
        let reason = format!("{} has no `bearing_strength` in the table: add it, or take a through-bolt", board.name);
        return outcomes.cannot(None, held.place().part, reason);
    };
    let left = BackingKind::of(board).left(&held, strength.basis);
    let depth = (sizes.depth - held.near_skin().laminate().thickness()).max(Length::default());
    let dowel = Dowel {
        diameter: sizes.root,
        depth,
        embedding: strength.value * left,
        plastic_moment: plastic_moment(grade.proof_stress.value, sizes.root),
    };
    let rule = HingeRule { factor: Ratio::from(1.0), rope: Force::default(), rope_limit: Ratio::default() };
    let held_by = grip(held.mount.fastened, sizes.outside);
    let [free, fixed] = [PlateGrip::Thin, PlateGrip::Thick].map(|grip| backing_bearing(&dowel, grip, rule).force);
    let bearable: Force = free + (fixed - free) * held_by;
    let (demand, factor) = (held.shear(), held.pull_out_factor(strength.basis));
    outcomes.compare(Some(held.case), demand / bearable * factor, || {
        let basis = strength.basis.max(grade.proof_stress.basis);
        let finding = Finding::compare(demand, bearable, factor, basis).term("V", demand).term("g", held_by);
        let finding = finding.term("V_0", free).term("V_1", fixed).term("f_h", strength.value).term("k", left);
        let finding = finding.term("t", depth).term("d", sizes.root).term("M_y", dowel.plastic_moment);
        (held.place(), finding)
    });
}
