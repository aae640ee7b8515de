//! What the top does to the fixings along a pipe.

use super::{Mount, MountForces, Pull, WholeFoot};
use crate::{
    analysis::{plate_method::PipeForces, sideways::Sideways},
    geometry::{Point, Polyline},
    load_case::LoadCase,
    top::Top,
    units::{Force, Length, Pressure, Ratio, plain},
};

/// Largest forces in the fixings along a pipe under a case: each holds the pull of the length of pipe up to half way to
/// its neighbours, and all of them share what pushes the top in its plane.
pub(super) fn forces(
    top: &Top,
    (pipe, held): (usize, &Mount<'_>),
    (mount, case_number): (usize, usize),
    case: &LoadCase,
    pull: Pull,
) -> MountForces {
    let places: Vec<Point> = held.places.iter().map(|place| place.at).collect();
    let lengths = held_lengths(&top.supports[pipe].along, &places);
    let of = |length: &Length| {
        let held: Force = plain(pull.per_length) * *length;
        pull.most.map_or(held, |most| held.min(most))
    };
    let pulls: Vec<Force> = lengths.iter().map(of).collect();
    with_pulls(top, (mount, case_number), case, pulls)
}

/// The same with what the plate method found to lift the length of pipe that each fixing holds, its error added.
pub(in crate::analysis) fn forces_on_plate(
    top: &Top,
    numbers: (usize, usize),
    case: &LoadCase,
    pipe: &PipeForces,
) -> MountForces {
    let error = Ratio::from(1.0) + pipe.fixings_error;
    let pulls = pipe.fixings.iter().map(|pull| *pull * error).collect();
    MountForces { on_plate: true, numerical_error: pipe.fixings_error, ..with_pulls(top, numbers, case, pulls) }
}

fn with_pulls(top: &Top, (mount, case_number): (usize, usize), case: &LoadCase, pulls: Vec<Force>) -> MountForces {
    let shear = Sideways::of(top, case_number, case).force / fixings_below(top);
    let whole: Force = pulls.iter().copied().sum();
    let side = shear * count(pulls.len());
    MountForces {
        mount,
        case: case_number,
        on_plate: false,
        shears: vec![shear; pulls.len()],
        pulls,
        pressure: Pressure::default(),
        whole: WholeFoot { lift: whole, side, ..WholeFoot::default() },
        numerical_error: Ratio::default(),
        raised: Ratio::from(1.0),
    }
}

/// Length of pipe that each fixing holds.
#[must_use]
pub fn held_lengths(along: &Polyline, places: &[Point]) -> Vec<Length> {
    held_stretches(along, places).into_iter().map(|(from, to)| to - from).collect()
}

/// From where to where along the pipe each fixing holds it: up to half way to its neighbours, and to the ends.
pub(in crate::analysis) fn held_stretches(along: &Polyline, places: &[Point]) -> Vec<(Length, Length)> {
    let stations: Vec<Length> = places.iter().map(|place| along.place(*place).along).collect();
    let mut order: Vec<usize> = (0..stations.len()).collect();
    order.sort_by(|a, b| stations[*a].value.total_cmp(&stations[*b].value));
    let mut held = vec![(Length::default(), Length::default()); stations.len()];
    for (rank, &index) in order.iter().enumerate() {
        let here = stations[index];
        let from = if rank == 0 { Length::default() } else { (stations[order[rank - 1]] + here) / 2.0 };
        let to = order.get(rank + 1).map_or_else(|| along.length(), |next| (stations[*next] + here) / 2.0);
        held[index] = (from, to);
    }
    held
}

fn fixings_below(top: &Top) -> f64 {
    top.supports.iter().map(|support| count(support.fixing_places().len())).sum()
}

fn count(fixings: usize) -> f64 {
    u32::try_from(fixings).map_or(f64::INFINITY, f64::from)
}
