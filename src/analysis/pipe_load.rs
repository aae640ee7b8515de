//! What the top does to the pipes that it lies on.

use uom::si::ratio::ratio;

use super::Analysis;
use crate::units::ForcePerWidth;

/// Largest line loads on one pipe under one case.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct PipeLoad {
    /// Push of the top on the pipe.
    pub push: ForcePerWidth,
    /// Pull at the fixings.
    pub pull: ForcePerWidth,
}

impl Analysis<'_> {
    /// Largest line loads on a pipe over all strips and bays under a case; none where the hand method does not count
    /// on the pipe, so that nothing is known of what it carries.
    #[must_use]
    pub fn pipe_load(&self, pipe: usize, case: usize) -> Option<PipeLoad> {
        let mut load: Option<PipeLoad> = None;
        let mut raise = |push: ForcePerWidth, pull: ForcePerWidth| {
            let known = load.get_or_insert_default();
            *known = PipeLoad { push: known.push.max(push), pull: known.pull.max(pull) };
        };
        for forces in self.strips.iter().filter(|forces| forces.case == case) {
            let line = &self.lines[forces.line];
            for (seat, own) in line.seats.iter().zip(&forces.seats).filter(|(seat, _)| seat.pipe == Some(pipe)) {
                // A strip that meets a pipe at an angle rests on more of its length than the strip is wide.
                let along = seat.obliqueness.get::<ratio>();
                raise(own.push.value / along, own.pull.value / along);
            }
        }
        // Of a bay only the largest shear is known; it may press or lift.
        for forces in self.plates.iter().filter(|forces| forces.case == case) {
            for _ in self.bays[forces.bay].pipes.iter().filter(|own| **own == pipe) {
                raise(forces.shear.abs(), forces.shear.abs());
            }
        }
        load
    }
}
