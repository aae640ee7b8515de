//! The glue under a bonded stud.

use super::{Held, each};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::{Interaction, stud_bond_shear, stud_bond_tension},
    material::{Adhesive, Basis, Stud},
    source::{Citation, DERIVED, Mark},
    top::Hold,
    units::{Force, Length, Pressure, Ratio, Torque},
};

pub(in crate::check) struct StudBond;

impl Check for StudBond {
    fn id(&self) -> &'static str {
        "stud-bond"
    }

    fn title(&self) -> &'static str {
        "glue under a stud"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a bonded stud comes off the skin with its glue, or with the first ply"
    }

    fn formula(&self) -> &'static str {
        "(s/(k s_u) + t/(k_t t_u)) · factor ≤ 1,  s = 4 T q/(π D²) + 32 V h/(π D³),  t = 4 V/(π D²),  h = base + half of what it \
         clamps"
    }

    fn limits(&self) -> &'static str {
        "stiff base, all of it bonded to sanded laminate, never to paint or gelcoat; peel of a thin base and of the first ply is \
         in the strength only as far as the table has it from joints on laminate; ageing lies in the factor"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "round section under force and moment, linear sum", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            if let Hold::BondedStud { stud, adhesive, .. } = &held.fixing().hold {
                match Glued::of(&held, stud, adhesive) {
                    Ok(glued) => compare(held, stud, glued, outcomes),
                    Err(reason) => outcomes.cannot(None, held.place().part, reason),
                }
            }
        });
    }
}

/// Glue under a stud, and what acts on it.
#[derive(Clone, Copy)]
pub(super) struct Glued {
    /// Tension and shear over what the glue bears of each, added up.
    pub(super) used: Ratio,
    /// Basis of the weaker strength.
    pub(super) basis: Basis,
    tension: Acting,
    shear: Acting,
    height: Length,
}

/// A stress, the strength against it, and what is left of that.
#[derive(Clone, Copy)]
struct Acting {
    stress: Pressure,
    strength: Pressure,
    left: Ratio,
}

impl Acting {
    fn used(self) -> Ratio {
        self.stress / (self.strength * self.left)
    }
}

impl Glued {
    pub(super) fn of(held: &Held<'_>, stud: &Stud, glue: &Adhesive) -> Result<Self, String> {
        if !glue.structural {
            return Err(format!(
                "{} is for sealing, not for a load that lasts: it creeps; take a structural glue or a through-bolt",
                glue.name
            ));
        }
        let near = held.mount.near;
        let (tension, shear) = (&glue.flatwise_tension.typical, &glue.lap_shear.typical);
        let left = |basis| held.knockdowns.glue_strength(glue, near, basis).map(|shares| shares.product());
        let half_foot: Length = held.mount.fastened.clamped.unwrap_or_default() / 2.0;
        let (diameter, height) = (stud.base.value, stud.base_thickness.value + half_foot);
        let side: Force = held.shear();
        let moment: Torque = (side * height).into();
        let tension_acting = Acting {
            stress: stud_bond_tension(held.pull(), moment, diameter),
            strength: tension.value,
            left: left(tension.basis)?,
        };
        let shear_acting =
            Acting { stress: stud_bond_shear(side, diameter), strength: shear.value, left: left(shear.basis)? };
        let used = Interaction::Linear.utilisation(tension_acting.used(), shear_acting.used());
        let basis = tension.basis.max(shear.basis);
        Ok(Self { used, basis, tension: tension_acting, shear: shear_acting, height })
    }
}

fn compare(held: Held<'_>, stud: &Stud, glued: Glued, outcomes: &mut Outcomes<'_>) {
    let factor = held.bond_factor(glued.basis);
    outcomes.compare(Some(held.case), glued.used * factor, || {
        let finding = held.pulled(Finding::compare(glued.used, Ratio::from(1.0), factor, glued.basis));
        let finding = held
            .sheared(finding)
            .term("D", stud.base.value)
            .term("h", glued.height)
            .term("s", glued.tension.stress)
            .term("s_u", glued.tension.strength)
            .term("k", glued.tension.left)
            .term("t", glued.shear.stress)
            .term("t_u", glued.shear.strength)
            .term("k_t", glued.shear.left);
        (held.place(), finding)
    });
}
