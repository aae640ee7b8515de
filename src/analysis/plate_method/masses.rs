//! Masses of the top in plan.

use super::layout::Net;
use crate::{
    analysis::line::Region,
    geometry::Point,
    top::Top,
    units::{ArealMassDensity, Mass},
};

impl Net {
    /// Mass per area of each region.
    pub(super) fn masses(&self, top: &Top) -> Vec<ArealMassDensity> {
        let masses = self.regions.iter().map(|region| match region {
            // A conduit weighs no more than the core that it replaces, and counts as much.
            Region::Field | Region::Conduit(_) => top.field_mass(),
            Region::Backing(index) => top.backing_mass(&top.backings[*index]),
        });
        masses.collect()
    }

    /// What the filled edge weighs more than core, side by side of the rim.
    pub(super) fn rim_masses(&self, top: &Top) -> Vec<(Point, Mass)> {
        let nodes = self.mesh.nodes();
        let sides = self.mesh.rim().iter().flat_map(|ring| {
            ring.iter().enumerate().map(|(k, &from)| [from, ring[(k + 1) % ring.len()]].map(|corner| nodes[corner]))
        });
        let masses = sides.map(|[a, b]| {
            let middle = Point { x: (a.x + b.x) / 2.0, y: (a.y + b.y) / 2.0 };
            (middle, top.edge_mass() * a.distance(b))
        });
        masses.collect()
    }
}
