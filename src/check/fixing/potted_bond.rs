//! An insert in its potting.

use super::{Held, each};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::insert_bond_capacity,
    material::{Basis, Filler, PottedInsert as Row},
    source::{Citation, DERIVED, Mark},
    top::Hold,
    units::{Force, Length, Pressure, Ratio},
};

pub(in crate::check) struct PottedBond;

impl Check for PottedBond {
    fn id(&self) -> &'static str {
        "potted-bond"
    }

    fn title(&self) -> &'static str {
        "insert in potting"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a potted insert is drawn out of its potting"
    }

    fn formula(&self) -> &'static str {
        "T q · factor ≤ k t_u π d h"
    }

    fn limits(&self) -> &'static str {
        "clean insert, bore filled without voids; grooves and the foot of the insert are left out; the potting is taken to \
         soften as the resin of the skin; its ageing lies in the factor"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "even shear round the insert", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            if let Hold::PottedInsert { insert, potting, depth, .. } = &held.fixing().hold {
                match Bond::of(&held, insert, potting, *depth) {
                    Ok(bond) => compare(held, insert, bond, outcomes),
                    Err(reason) => outcomes.cannot(None, held.place().part, reason),
                }
            }
        });
    }
}

/// Bond of an insert to its potting.
#[derive(Clone, Copy)]
pub(super) struct Bond {
    /// Pull that breaks it, knock-downs taken off.
    pub(super) bearable: Force,
    /// Basis of the strength of the potting.
    pub(super) basis: Basis,
    shear: Pressure,
    left: Ratio,
    height: Length,
}

impl Bond {
    pub(super) fn of(held: &Held<'_>, insert: &Row, potting: &Filler, depth: Length) -> Result<Self, String> {
        let Some(shear) = &potting.shear_strength else {
            return Err(format!(
                "{} has no `shear_strength` in the table: it is no potting; take one that has, or add it to its row",
                potting.name
            ));
        };
        let basis = shear.typical.basis;
        let left = held.knockdowns.potting_strength(held.mount.near, basis).product();
        let (height, shear) = (insert.height.value.min(depth), shear.typical.value);
        let bearable = insert_bond_capacity(insert.outside.value, height, shear * left);
        Ok(Self { bearable, basis, shear, left, height })
    }
}

fn compare(held: Held<'_>, insert: &Row, bond: Bond, outcomes: &mut Outcomes<'_>) {
    let (demand, factor) = (held.pull(), held.bond_factor(bond.basis));
    outcomes.compare(Some(held.case), demand / bond.bearable * factor, || {
        let finding = held.pulled(Finding::compare(demand, bond.bearable, factor, bond.basis));
        let finding = finding.term("k", bond.left).term("t_u", bond.shear);
        (held.place(), finding.term("d", insert.outside.value).term("h", bond.height))
    });
}
