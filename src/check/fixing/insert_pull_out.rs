//! A blind insert drawn out of the skin and the backing that it grips.

use super::{
    Held,
    backing_kind::{BackingKind, backing, no_backing},
    each,
};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::insert_pull_out,
    material::{Basis, Insert},
    source::{Citation, DERIVED, Mark},
    top::Hold,
    units::{Force, Length, Pressure, Ratio, System, both},
};

pub(in crate::check) struct InsertPullOut;

impl Check for InsertPullOut {
    fn id(&self) -> &'static str {
        "insert-pull-out"
    }

    fn title(&self) -> &'static str {
        "insert drawn out"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a blind insert is drawn out through the skin that its bulge grips, or its thread goes"
    }

    fn formula(&self) -> &'static str {
        "T q · factor ≤ the less of F_t and s π d_b (k t_u t + k_b b_u b),  b = grip − t where the skin is thinner than the \
         least grip"
    }

    fn limits(&self) -> &'static str {
        "bulge formed right behind the skin; the backing counts only where the insert needs it to fill its grip, and holds \
         the skin from bending away; an insert that was set skew or turned once holds less"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: DERIVED,
            locator: "shear of the sheet round the bulge; no published formula",
            mark: Mark::Derived,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            if let Hold::BlindInsert { insert, .. } = &held.fixing().hold {
                match InsertHold::of(&held, insert) {
                    Ok(hold) => compare(held, insert, hold, outcomes),
                    Err(reason) => outcomes.cannot(None, held.place().part, reason),
                }
            }
        });
    }
}

/// Pull that draws a blind insert out.
#[derive(Clone, Copy)]
pub(super) struct InsertHold {
    /// The pull, knock-downs taken off.
    pub(super) bearable: Force,
    /// Basis of the weakest value in it.
    pub(super) basis: Basis,
    skin: Sheet,
    /// What fills the grip below a thin skin.
    packing: Option<Sheet>,
}

/// A sheet round the bulge.
#[derive(Clone, Copy)]
struct Sheet {
    thickness: Length,
    shear: Pressure,
    left: Ratio,
}

impl InsertHold {
    pub(super) fn of(held: &Held<'_>, insert: &Insert) -> Result<Self, String> {
        let backing = backing(held).ok_or_else(|| no_backing(held))?;
        let (near, board) = (held.near_skin(), &backing.board);
        let thickness = near.laminate().thickness();
        if thickness > insert.grip_max.value {
            return Err(format!(
                "{} grips up to {}, and the skin is {} thick: take one with a longer body",
                insert.name,
                both(insert.grip_max.value, System::Si),
                both(thickness, System::Si),
            ));
        }
        let (shear, mut basis) = near.punching_shear().ok_or(
            "a layer of the skin has no `punching_shear` in the table: add it to its ply, or take a through-bolt",
        )?;
        let left = held.knockdowns.skin_strength(held.mount.near, basis).product();
        let skin = Sheet { thickness, shear, left };
        let missing: Length = insert.grip_min.value - thickness;
        let packing = (missing > Length::default()).then(|| Sheet {
            thickness: missing,
            shear: board.shear_strength.value,
            left: BackingKind::of(board).left(held, board.shear_strength.basis),
        });
        if packing.is_some() {
            basis = basis.max(board.shear_strength.basis);
        }
        let basis = basis.max(insert.bulge.basis);
        let gripped: Length = thickness + packing.map_or_else(Length::default, |sheet| sheet.thickness);
        let borne = |sheet: Sheet| sheet.shear * sheet.left * (sheet.thickness / gripped);
        let mean: Pressure = borne(skin) + packing.map_or_else(Pressure::default, borne);
        let share = held.top.criteria.insert_in_laminate.value;
        let bearable = insert_pull_out(insert.thread_proof.value, insert.bulge.value, gripped, mean, share);
        Ok(Self { bearable, basis, skin, packing })
    }
}

fn compare(held: Held<'_>, insert: &Insert, hold: InsertHold, outcomes: &mut Outcomes<'_>) {
    let (demand, factor) = (held.pull(), held.pull_out_factor(hold.basis));
    outcomes.compare(Some(held.case), demand / hold.bearable * factor, || {
        let finding = held.pulled(Finding::compare(demand, hold.bearable, factor, hold.basis));
        let finding = finding
            .term("F_t", insert.thread_proof.value)
            .term("s", held.top.criteria.insert_in_laminate.value)
            .term("d_b", insert.bulge.value)
            .term("t", hold.skin.thickness)
            .term("t_u", hold.skin.shear)
            .term("k", hold.skin.left);
        let finding = match hold.packing {
            Some(sheet) => finding.term("b", sheet.thickness).term("b_u", sheet.shear).term("k_b", sheet.left),
            None => finding.term("b", Length::default()),
        };
        (held.place(), finding)
    });
}
