//! Fixings under landings and rolls that repeat.

use super::{
    Held, backing_kind::BackingKind, each, insert_pull_out::InsertHold, potted_bond::Bond, steel::Steel,
    stud_bond::Glued, thread_hold::Engaged,
};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::{BOLT_THREAD_CATEGORY, bolt_fatigue_range, laminate_fatigue_share},
    load_case::Repeats,
    material::Basis,
    source::{Citation, EN_1993_1_9, Mark},
    top::{Hold, Top},
    units::{Force, Pressure, Ratio},
};

pub(in crate::check) struct FixingFatigue;

impl Check for FixingFatigue {
    fn id(&self) -> &'static str {
        "fixing-fatigue"
    }

    fn title(&self) -> &'static str {
        "fixing in fatigue"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a bolt cracks at its thread, or its hold works loose, under the landings or the rolls of many hours"
    }

    fn formula(&self) -> &'static str {
        "bolt: c T q/A_s · factor ≤ s_N, 50 MPa at 2 million pulls, slope 3;  hold: c T q/F · factor ≤ m, of a stud c u · factor \
         ≤ m, F and u as in its own check"
    }

    fn limits(&self) -> &'static str {
        "pulls of N landings whose peaks fall off exponentially from that of the design, or of N rolls in its sea, each alone; \
         pull from nothing, no preload counted; whips that flutter in the wind, engines, the foot itself and pits in stainless steel are not in it"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: EN_1993_1_9,
            locator: "Table 8.1, bolts in tension, category 50; holds by a share of their static strength, assumed",
            mark: Mark::Memory,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            if let Some(repeats) = analysis.cases[held.case].repeats {
                let again = Again::of(analysis.top, repeats);
                steel(held, again, outcomes);
                hold(held, again, outcomes);
            }
        });
    }
}

/// How often a force comes again, and how much of it: what does the same harm as forces of all heights.
#[derive(Clone, Copy)]
struct Again {
    cycles: u32,
    share_steel: Ratio,
    share_hold: Ratio,
}

impl Again {
    fn of(top: &Top, repeats: Repeats) -> Self {
        let criteria = &top.criteria;
        let (cycles, share_steel, share_hold) = match repeats {
            Repeats::Landings => (&criteria.fatigue_cycles, &criteria.cyclic_share_steel, &criteria.cyclic_share_hold),
            Repeats::Rolls => (
                &criteria.fatigue_cycles_rolling,
                &criteria.cyclic_share_rolling_steel,
                &criteria.cyclic_share_rolling_hold,
            ),
        };
        // The criteria are held at one or more.
        let cycles = cycles.value.get::<uom::si::ratio::ratio>();
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to the range of the type")]
        let cycles = cycles.round().clamp(1.0, 4e9) as u32;
        Self { cycles, share_steel: share_steel.value, share_hold: share_hold.value }
    }
}

fn factor(held: Held<'_>) -> Ratio {
    held.factor(held.top.criteria.fatigue_factor.value)
}

fn steel(held: Held<'_>, again: Again, outcomes: &mut Outcomes<'_>) {
    let Some(steel) = Steel::of(&held.fixing().hold) else { return };
    if steel.grade.family == "aluminium" {
        let reason = format!("{} has no curve for repeated pull here: take stainless steel", steel.grade.name);
        return outcomes.cannot(None, held.place().part, reason);
    }
    let (Again { cycles, share_steel: share, .. }, factor) = (again, factor(held));
    let range: Pressure = held.pull() * share / steel.area;
    let bearable = bolt_fatigue_range(cycles, BOLT_THREAD_CATEGORY);
    outcomes.compare(Some(held.case), range / bearable * factor, || {
        let finding = held.pulled(Finding::compare(range, bearable, factor, Basis::Characteristic));
        let finding = finding.term("c", share).term("A_s", steel.area);
        (held.place(), finding.term("N", Ratio::from(f64::from(cycles))))
    });
}

/// What a fixing holds in: its pull over what it bears once.
#[derive(Clone, Copy)]
struct Once {
    used: Ratio,
    force: Option<Force>,
    basis: Basis,
    laminate: bool,
}

fn once(held: &Held<'_>) -> Option<Result<Once, String>> {
    let by_force = |force: Force, basis: Basis, laminate: bool| Once {
        used: held.pull() / force,
        force: Some(force),
        basis,
        laminate,
    };
    match &held.fixing().hold {
        Hold::ThroughBolt { .. } => None,
        Hold::TappedScrew { .. } | Hold::Screw { .. } => Engaged::of(held).map(|engaged| {
            let engaged = engaged?;
            let hold = engaged.hold(held)?;
            Ok(by_force(hold.bearable, hold.basis, engaged.kind == BackingKind::Laminate))
        }),
        Hold::BlindInsert { insert, .. } => {
            Some(InsertHold::of(held, insert).map(|hold| by_force(hold.bearable, hold.basis, false)))
        }
        Hold::PottedInsert { insert, potting, depth, .. } => {
            Some(Bond::of(held, insert, potting, *depth).map(|bond| by_force(bond.bearable, bond.basis, false)))
        }
        Hold::BlindRivet { rivet } => Some(Ok(by_force(rivet.tension.value, rivet.tension.basis, false))),
        Hold::BondedStud { stud, adhesive, .. } => Some(Glued::of(held, stud, adhesive).map(|glued| Once {
            used: glued.used,
            force: None,
            basis: glued.basis,
            laminate: false,
        })),
    }
}

fn hold(held: Held<'_>, again: Again, outcomes: &mut Outcomes<'_>) {
    let once = match once(&held) {
        None => return,
        Some(Ok(once)) => once,
        Some(Err(reason)) => return outcomes.cannot(None, held.place().part, reason),
    };
    let (criteria, Again { cycles, share_hold: share, .. }) = (&held.top.criteria, again);
    let left = if once.laminate {
        laminate_fatigue_share(cycles, criteria.fatigue_laminate.value)
    } else {
        criteria.fatigue_hold.value
    };
    let factor = factor(held);
    let demand: Ratio = once.used * share;
    outcomes.compare(Some(held.case), demand / left * factor, || {
        let finding = Finding::compare(demand, left, factor, once.basis).term("c", share).term("m", left);
        let finding = match once.force {
            Some(force) => held.pulled(finding).term("F", force),
            None => finding.term("u", once.used),
        };
        (held.place(), finding.term("N", Ratio::from(f64::from(cycles))))
    });
}
