//! How far the top gives way under one person.

use super::{layout::Net, people::Placed};
use crate::{
    finite_element::{Plate, Solution},
    geometry::Point,
    load_case::LoadCase,
    units::{Length, Ratio},
};

/// Where the top gives way most under one person.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Softest {
    /// How far, in the middle of the foot, under one person at rest and nothing else; against the nearest place on a pipe.
    pub sag: Length,
    /// Where the person stands.
    pub at: Point,
    /// What it may be off by, from the same mesh at two degrees.
    pub error: Ratio,
}

impl Softest {
    /// Compares with the same at a lower degree.
    pub(super) fn settle(&mut self, coarse: &Self) {
        self.error = Ratio::from((coarse.sag / self.sag).value - 1.0).abs();
    }
}

/// How far the top gives way under what moves, made of solutions each so many times, where that is one person; none under a
/// row of people or a hand.
pub(super) fn give(
    net: &Net,
    plate: &Plate,
    case: &LoadCase,
    placed: &Placed,
    alone: &[(&Solution, f64)],
) -> Option<Length> {
    case.people.filter(|_| placed.beside.len() == 1)?;
    let deflection = |at: Point| {
        let triangle = net.mesh.holding(at)?;
        let share = [plate.share(triangle, at)];
        let own = |&(solution, times): &(&Solution, f64)| {
            plate
                .states(triangle, &share, solution)
                .first()
                .map_or_else(Length::default, |state| state.deflection * times)
        };
        Some(alone.iter().map(own).sum::<Length>())
    };
    // That a whole pipe goes down is sag, and felt far around: soft is what gives way beside what it rests on.
    let beside = nearest_on_pipe(net, placed.at).and_then(deflection).unwrap_or_default();
    deflection(placed.at).map(|sag| (sag - beside) * placed.at_rest)
}

/// The corner of the mesh on a pipe that lies nearest.
fn nearest_on_pipe(net: &Net, at: Point) -> Option<Point> {
    let corners = net.stretches.iter().flat_map(|stretch| &stretch.corners).map(|&corner| net.mesh.nodes()[corner]);
    corners.min_by(|a, b| a.distance(at).value.total_cmp(&b.distance(at).value))
}
