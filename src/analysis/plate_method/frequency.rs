//! First natural frequency of the whole top.

use super::{
    layout::Net,
    loads::{StillLoads, count},
};
use crate::{
    finite_element::{Masses, NoMode, Plate, Swinging},
    geometry::Point,
    top::Top,
    units::{Mass, Ratio},
};

/// Residual of `ω²` at which the search ends: of the frequency less than a millionth is left then.
const SETTLED: f64 = 1e-3;

/// First natural frequency of a top on its pipes, with all its gear.
///
/// Gear rides on its footing as its weight does, and does not rock; pipes weigh nothing: they belong to the frame.
pub(super) fn first_frequency(top: &Top, net: &Net, plate: &Plate) -> Result<Swinging, NoMode> {
    let by_region = net.masses(top);
    let loads = StillLoads::new(top, net, plate);
    let mut points = net.rim_masses(top);
    for gear in &top.gear {
        let foot = loads.foot(gear.at, &gear.foot);
        points.extend(foot.iter().map(|&place| (place, gear.mass / count(&foot))));
    }
    let points: Vec<(usize, Point, Mass)> = points
        .into_iter()
        .map(|(place, mass)| {
            let (triangle, place) = loads.onto(place);
            (triangle, place, mass)
        })
        .collect();
    plate.first_frequency_within(
        Ratio::from(SETTLED),
        &Masses { per_area: &|triangle| by_region[net.of_triangle[triangle]], points: &points },
    )
}
