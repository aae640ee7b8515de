//! Side force that a screw bears in its backing.

use super::{Held, thread_hold::Engaged};
use crate::{
    analysis::screw_thread,
    fastening::{Dowel, HingeRule, PlateGrip, backing_bearing, plastic_moment},
    material::Basis,
    top::Hold,
    units::{Force, Length, Pressure, Ratio},
};

/// Side force that the backing bears of a screw, as a dowel in it; what the skin adds is left out.
#[derive(Clone, Copy)]
pub(super) struct LateralHold {
    /// The force, knock-downs taken off.
    pub(super) bearable: Force,
    /// Basis of the weakest value in it.
    pub(super) basis: Basis,
}

impl LateralHold {
    pub(super) fn of(held: &Held<'_>, engaged: &Engaged<'_>) -> Result<Self, String> {
        let board = &engaged.backing.board;
        let bearing = board
            .bearing_strength
            .as_ref()
            .ok_or_else(|| format!("{} has no `bearing_strength` in the table: add it to its row", board.name))?;
        let (root, proof): (Length, Pressure) = match &held.fixing().hold {
            Hold::Screw { screw, grade, .. } => (screw.root.value, grade.proof_stress.value),
            Hold::TappedScrew { bolt, .. } => {
                (screw_thread(&bolt.thread).root_diameter(), bolt.grade.proof_stress.value)
            }
            other => return Err(format!("{other:?} does not bear in the backing")),
        };
        let basis = bearing.basis;
        let dowel = Dowel {
            diameter: engaged.diameter,
            depth: (engaged.depth - engaged.tip).max(Length::default()),
            embedding: bearing.value * engaged.kind.left(held, basis),
            plastic_moment: plastic_moment(proof, root),
        };
        // A foot holds the head upright only where it is stiff and as thick as the screw.
        let fastened = held.mount.fastened;
        let thick = fastened.stiff && fastened.clamped.is_some_and(|clamped| clamped >= engaged.diameter);
        let grip = if thick { PlateGrip::Thick } else { PlateGrip::Thin };
        let plain = HingeRule { factor: Ratio::from(1.0), rope: Force::default(), rope_limit: Ratio::default() };
        Ok(Self { bearable: backing_bearing(&dowel, grip, plain).force, basis })
    }
}
