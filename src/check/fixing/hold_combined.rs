//! What a fixing holds in, pulled and pushed sideways at once.

use super::{
    Held, each, insert_pull_out::InsertHold, lateral_hold::LateralHold, plug_side, potted_bond::Bond,
    potted_insert::PlugHold, potted_side, thread_hold::Engaged,
};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::Interaction,
    material::Basis,
    source::{Citation, DERIVED, Mark},
    top::Hold,
    units::{Force, Ratio},
};

pub(in crate::check) struct HoldCombined;

impl Check for HoldCombined {
    fn id(&self) -> &'static str {
        "hold-combined"
    }

    fn title(&self) -> &'static str {
        "hold combined"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a screw or an insert tears out of its backing, its potting or the panel under pull and side force together"
    }

    fn formula(&self) -> &'static str {
        "(T q/F_t + i V/F_v) · factor ≤ 1,  F_t as in the checks of pull; F_v as a dowel in the backing, a blind insert's own \
         shear load, or what pushes a potted one over in its potting, or its potting in the panel; i the factor on F_v over \
         that on F_t"
    }

    fn limits(&self) -> &'static str {
        "straight-line rule: inside every curve that tests gave; the largest pull and the largest side force of a case are taken \
         at once; what the skin bears of the side force of a screw is left out; for potted inserts in honeycomb there are rules \
         with squares, which allow more"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "linear rule, the safest of those in use", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            for both in Both::of(&held, analysis) {
                match both {
                    Ok(both) => compare(held, both, outcomes),
                    Err(reason) => outcomes.cannot(None, held.place().part, reason),
                }
            }
        });
    }
}

/// What is borne of pull alone and of side force alone, each with its factor.
#[derive(Clone, Copy)]
struct Both {
    pull: (Force, Ratio),
    side: (Force, Ratio),
    basis: Basis,
}

impl Both {
    /// One for each body that both forces could tear.
    fn of(held: &Held<'_>, analysis: &Analysis<'_>) -> Vec<Result<Self, String>> {
        match &held.fixing().hold {
            Hold::BlindInsert { insert, .. } => vec![InsertHold::of(held, insert).map(|hold| Self {
                pull: (hold.bearable, held.pull_out_factor(hold.basis)),
                side: (insert.shear.value, held.factor(held.top.criteria.fastener_steel_factor.value)),
                basis: hold.basis.max(insert.shear.basis),
            })],
            Hold::PottedInsert { bolt, insert, potting, depth } => {
                let in_potting = Bond::of(held, insert, potting, *depth).map(|bond| {
                    let side = potted_side::Pushed::of(held, bolt, (insert, potting), *depth);
                    Self {
                        pull: (bond.bearable, held.bond_factor(bond.basis)),
                        side: (side.bearable, held.bond_factor(side.basis)),
                        basis: bond.basis.max(side.basis),
                    }
                });
                let in_panel = PlugHold::of(held, analysis, insert, *depth).and_then(|hold| {
                    let side = plug_side::Pushed::of(held, bolt, insert, *depth)?;
                    Ok(Self {
                        pull: (hold.bearable, hold.factor),
                        side: (side.bearable, side.factor),
                        basis: hold.basis.max(side.basis),
                    })
                });
                vec![in_potting, in_panel]
            }
            _ => Engaged::of(held).map(|engaged| Self::in_backing(held, engaged?)).into_iter().collect(),
        }
    }

    fn in_backing(held: &Held<'_>, engaged: Engaged<'_>) -> Result<Self, String> {
        let (pull, side) = (engaged.hold(held)?, LateralHold::of(held, &engaged)?);
        Ok(Self {
            pull: (pull.bearable, pull.factor(held)),
            side: (side.bearable, held.pull_out_factor(side.basis)),
            basis: pull.basis.max(side.basis),
        })
    }
}

fn compare(held: Held<'_>, both: Both, outcomes: &mut Outcomes<'_>) {
    let ((pull, factor), (side, side_factor)) = (both.pull, both.side);
    let over: Ratio = side_factor / factor;
    let demand = Interaction::Linear.utilisation(held.pull() / pull, held.shear() / side * over);
    outcomes.compare(Some(held.case), demand * factor, || {
        let finding = held.pulled(Finding::compare(demand, Ratio::from(1.0), factor, both.basis));
        (held.place(), held.sheared(finding).term("F_t", pull).term("F_v", side).term("i", over))
    });
}
