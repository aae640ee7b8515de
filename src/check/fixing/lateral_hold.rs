//! Side force that a screw bears in its backing.

use super::{Held, thread_hold::Engaged};
use crate::{
    analysis::screw_thread,
    fastening::{Dowel, HingeRule, PlateGrip, backing_bearing, plastic_moment},
    material::Basis,
    top::{Fastened, Hold},
    units::{Force, Length, Pressure, Ratio},
};

/// Side force that the backing bears of a screw, as a dowel in it; what the skin adds is left out.
#[derive(Clone, Copy)]
pub(super) struct LateralHold {
    /// The force, knock-downs taken off.
    pub(super) bearable: Force,
    /// Basis of the weakest value in it.
    pub(super) basis: Basis,
    pub(super) dowel: Dowel,
    pub(super) strength: Pressure,
    pub(super) left: Ratio,
    /// How far the foot holds its head from turning: 0 not at all, 1 wholly.
    pub(super) grip: Ratio,
    /// With its head free, and held.
    pub(super) borne: [Force; 2],
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
        let (strength, basis) = (bearing.value, bearing.basis);
        let left = engaged.kind.left(held, basis);
        let dowel = Dowel {
            diameter: engaged.diameter,
            depth: (engaged.depth - engaged.tip).max(Length::default()),
            embedding: strength * left,
            plastic_moment: plastic_moment(proof, root),
        };
        let plain = HingeRule { factor: Ratio::from(1.0), rope: Force::default(), rope_limit: Ratio::default() };
        let borne = [PlateGrip::Thin, PlateGrip::Thick].map(|grip| backing_bearing(&dowel, grip, plain).force);
        let grip = grip(held.mount.fastened, engaged.diameter);
        let bearable = borne[0] + (borne[1] - borne[0]) * grip;
        Ok(Self { bearable, basis, dowel, strength, left, grip, borne })
    }
}

/// A foot holds the head upright where it is stiff and as thick as the screw, not at all below half of that, and in
/// part between.
pub(super) fn grip(fastened: &Fastened, diameter: Length) -> Ratio {
    if !fastened.stiff {
        return Ratio::default();
    }
    // Stiff means as thick as the screw, where the file does not say how thick.
    let thickness: Ratio = fastened.clamped.unwrap_or(diameter) / diameter;
    Ratio::from((2.0 * thickness.value - 1.0).clamp(0.0, 1.0))
}
