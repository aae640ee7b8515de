//! What the top asks of the frame: push and pull along each pipe.

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
    for load in &mut loads {
        for case in 0..analysis.cases.len() {
            let Some(under) = analysis.line_load(load.pipe, case) else { continue };
            load.known = true;
            if under.push > load.push.0 {
                load.push = (under.push, Some(case));
            }
            if under.pull > load.pull.0 {
                load.pull = (under.pull, Some(case));
            }
        }
    }
    loads
}
