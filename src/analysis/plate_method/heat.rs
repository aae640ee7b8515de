//! What heat does to the whole top: a load like others, and the bow that it makes by itself.

use super::layout::Net;
use crate::{
    analysis::sections::Sections,
    finite_element::{Load, Plate},
    laminate::{Forces, Moments, Resultants},
    section::Temperatures,
};

/// Heat of both skins as a load, region by region.
pub(super) fn heat(net: &Net, plate: &Plate, sections: &Sections, rise: &Temperatures) -> Load {
    let by_region: Vec<Resultants> = net
        .regions
        .iter()
        .map(|&region| {
            let Moments { x, y, xy } = sections.of(region).section.thermal_flat(rise).moment;
            Resultants { force: Forces::default(), moment: Moments { x: -x, y: -y, xy: -xy } }
        })
        .collect();
    Load::none(plate).heated(plate, &|triangle| by_region[net.of_triangle[triangle]])
}
