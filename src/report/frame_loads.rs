//! What the top asks of the frame: push and pull along each pipe.

use uom::si::ratio::ratio;

use super::Report;
use crate::units::ForcePerWidth;

/// Largest line loads on one pipe.
#[derive(Clone, Debug, PartialEq)]
pub struct FrameLoad {
    /// The pipe, as its place in the list.
    pub pipe: usize,
    /// Push of the top on the pipe, and the case that makes it.
    pub push: (ForcePerWidth, Option<usize>),
    /// Pull at the fixings, and the case that makes it.
    pub pull: (ForcePerWidth, Option<usize>),
    /// Whether the hand method counts on the pipe; if not, nothing is known of what it carries.
    pub known: bool,
}

/// Largest line loads on each pipe over all strips, stretches beside bays, and cases.
#[must_use]
pub fn frame_loads(report: &Report<'_>) -> Vec<FrameLoad> {
    let nothing = (ForcePerWidth::default(), None);
    let mut loads: Vec<FrameLoad> = (0..report.top.pipes.len())
        .map(|pipe| FrameLoad { pipe, push: nothing, pull: nothing, known: false })
        .collect();
    let Ok(analysis) = &report.analysis else { return loads };
    for forces in &analysis.strips {
        let line = &analysis.lines[forces.line];
        for (seat, own) in line.seats.iter().zip(&forces.seats) {
            let Some(load) = seat.pipe.and_then(|pipe| loads.get_mut(pipe)) else { continue };
            // A strip that meets a pipe at an angle rests on more of its length than the strip is wide.
            let along = seat.obliqueness.get::<ratio>();
            let (push, pull) = (own.push.value / along, own.pull.value / along);
            if push > load.push.0 {
                load.push = (push, Some(forces.case));
            }
            if pull > load.pull.0 {
                load.pull = (pull, Some(forces.case));
            }
            load.known = true;
        }
    }
    for on_pipe in &analysis.pipe_loads {
        let load = &mut loads[on_pipe.pipe];
        load.known = true;
        if on_pipe.push > load.push.0 {
            load.push = (on_pipe.push, Some(on_pipe.case));
        }
        if on_pipe.pull > load.pull.0 {
            load.pull = (on_pipe.pull, Some(on_pipe.case));
        }
    }
    loads
}
