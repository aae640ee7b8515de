//! First natural frequency of the whole top.

use super::{
    layout::Net,
    loads::{StillLoads, count},
};
use crate::{
    analysis::line::Region,
    finite_element::{Masses, NoMode, Plate, Swinging},
    geometry::Point,
    top::Top,
    units::{ArealMassDensity, Mass},
};

/// First natural frequency of a top on its pipes, with all its gear.
///
/// Gear rides on its footing as its weight does, and does not rock; pipes weigh nothing: they belong to the frame.
pub(super) fn first_frequency(top: &Top, net: &Net, plate: &Plate) -> Result<Swinging, NoMode> {
    let by_region: Vec<ArealMassDensity> = net
        .regions
        .iter()
        .map(|region| match region {
            // As in the loads: a conduit weighs no more than the core that it replaces.
            Region::Field | Region::Conduit(_) => top.field_mass(),
            Region::Backing(index) => top.backing_mass(&top.backings[*index]),
        })
        .collect();
    let loads = StillLoads::new(top, net, plate);
    let mut points = rim(top, net);
    for gear in &top.gear {
        let foot = loads.foot(gear.at, &gear.foot);
        points.extend(foot.iter().map(|&place| (place, gear.mass / count(&foot))));
    }
    let points: Vec<(usize, Point, Mass)> =
        points.into_iter().filter_map(|(place, mass)| Some((net.mesh.holding(place)?, place, mass))).collect();
    plate.first_frequency(&Masses { per_area: &|triangle| by_region[net.of_triangle[triangle]], points: &points })
}

/// What the filled edge weighs more than core.
fn rim(top: &Top, net: &Net) -> Vec<(Point, Mass)> {
    let nodes = net.mesh.nodes();
    let sides = net.mesh.rim().iter().flat_map(|ring| {
        ring.iter().enumerate().map(|(k, &from)| [from, ring[(k + 1) % ring.len()]].map(|corner| nodes[corner]))
    });
    sides
        .map(|[a, b]| (Point { x: (a.x + b.x) / 2.0, y: (a.y + b.y) / 2.0 }, top.edge_mass() * a.distance(b)))
        .collect()
}
