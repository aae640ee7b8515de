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

/// Largest line loads on each pipe over all strips and cases. Of a bay on four sides
/// only the largest shear at its pipes is known, and counts both ways; two bays that share a pipe each bring theirs.
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
    // Of a bay only the largest shear is known; it may press or lift.
    for forces in &analysis.plates {
        for pipe in analysis.bays[forces.bay].pipes {
            let (load, shear) = (&mut loads[pipe], forces.shear.abs());
            load.known = true;
            if shear > load.push.0 {
                load.push = (shear, Some(forces.case));
            }
            if shear > load.pull.0 {
                load.pull = (shear, Some(forces.case));
            }
        }
    }
    loads
}
