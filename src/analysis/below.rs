//! What lies between the skins below a footing.

use super::line::{Region, region_at};
use crate::{
    geometry::Point,
    top::{Gear, Top},
};

/// A hair inside the border, so that a footing as wide as its backing lies within it.
const INSIDE: f64 = 1.0 - 1e-6;

/// What lies below the middle of a footing, and core where it reaches past the backing there.
#[must_use]
pub fn below_footing(top: &Top, gear: &Gear) -> Vec<Region> {
    let below = region_at(top, gear.at);
    let beside = |place: Point| {
        let at = Point { x: gear.at.x + place.x * INSIDE, y: gear.at.y + place.y * INSIDE };
        !matches!(region_at(top, at), Region::Backing(_))
    };
    let past = matches!(below, Region::Backing(_)) && gear.foot.border().into_iter().any(beside);
    if past { vec![below, Region::Field] } else { vec![below] }
}
