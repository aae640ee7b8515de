//! Things that the top carries.

use crate::{
    geometry::Point,
    units::{Area, Length, Mass, Ratio},
};

/// A radar, an antenna, a light, a raft, with its footing.
#[derive(Clone, Debug, PartialEq)]
pub struct Gear {
    /// Name in the report.
    pub name: String,
    /// Its mass.
    pub mass: Mass,
    /// Height of its centre of gravity above the outer skin.
    pub cg_height: Length,
    /// Where its footing is centred.
    pub at: Point,
    /// Side of the square that its footing presses on.
    pub footing: Length,
    /// Frontal area, for wind.
    pub wind_area: Area,
    /// Drag coefficient on that area.
    pub drag: Ratio,
}
