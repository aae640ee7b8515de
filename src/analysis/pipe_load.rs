//! What the top does to the pipes that it lies on.

use uom::si::ratio::ratio;

use super::Analysis;
use crate::units::ForcePerWidth;

/// Largest loads per length of one pipe under one case.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct LineLoad {
    /// Push of the top on the pipe.
    pub push: ForcePerWidth,
    /// Pull at the fixings, as a positive number.
    pub pull: ForcePerWidth,
}

impl Analysis<'_> {
    /// Largest loads per length of a pipe over all strips and bays under a case; none where the hand method does not
    /// count on the pipe, so that nothing is known of what it carries.
    #[must_use]
    pub fn line_load(&self, pipe: usize, case: usize) -> Option<LineLoad> {
        let mut load: Option<LineLoad> = None;
        let mut raise = |push: ForcePerWidth, pull: ForcePerWidth| {
            let known = load.get_or_insert_default();
            *known = LineLoad { push: known.push.max(push), pull: known.pull.max(pull) };
        };
        for forces in self.strips.iter().filter(|forces| forces.case == case) {
            let line = &self.lines[forces.line];
            for (seat, own) in line.seats.iter().zip(&forces.seats).filter(|(seat, _)| seat.pipe == Some(pipe)) {
                // A strip that meets a pipe at an angle rests on more of its length than the strip is wide.
                let along = seat.obliqueness.get::<ratio>();
                raise(own.push.value / along, own.pull.value / along);
            }
        }
        for own in self.pipe_loads.iter().filter(|own| own.pipe == pipe && own.case == case) {
            raise(own.push, own.pull);
        }
        load
    }
}
