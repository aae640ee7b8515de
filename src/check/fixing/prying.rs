//! How much harder a fixing is pulled because its foot bends.

use crate::{
    analysis::{Mount, MountOn},
    fastening::elastic_prying_factor,
    geometry::Point,
    top::Top,
    units::{Length, Ratio},
};

/// Pull of a fixing over the share of a stiff foot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prying {
    /// Factor on the pull.
    pub factor: Ratio,
    /// From the fixing to the body that pulls, and to the edge of the foot; none where the foot is stiff or not known.
    pub levers: Option<[Length; 2]>,
}

/// How the foot of a mount pries on one of its fixings. A body whose place the file does not say stands in the middle of
/// the footing: as far away as it can.
#[must_use]
pub fn prying(top: &Top, mount: &Mount<'_>, number: usize) -> Prying {
    let (fastened, criteria) = (mount.fastened, &top.criteria);
    if fastened.stiff {
        return Prying { factor: Ratio::from(1.0), levers: None };
    }
    let (to_body, to_edge) = match mount.on {
        MountOn::Gear(index) => {
            let (gear, at) = (&top.gear[index], mount.places[number].at);
            let place = Point { x: at.x - gear.at.x, y: at.y - gear.at.y };
            let middle: Length = place.x.hypot(place.y);
            (
                Some(fastened.to_body.unwrap_or(middle)),
                Some(fastened.to_edge.unwrap_or_else(|| gear.foot.within_by(place))),
            )
        }
        MountOn::Support(_) => (fastened.to_body, fastened.to_edge),
    };
    match to_body.zip(to_edge) {
        Some((to_body, to_edge)) => {
            let elastic = elastic_prying_factor(to_body, to_edge);
            Prying { factor: criteria.prying_factor.value.max(elastic), levers: Some([to_body, to_edge]) }
        }
        None => Prying { factor: criteria.prying_unknown.value, levers: None },
    }
}
