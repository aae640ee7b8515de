//! A washer under a nut.

use crate::{
    top::{Bolt, Top, Washer},
    units::Length,
};

/// Diameter on which a washer presses: it reaches only so far beyond the nut before it bends up.
pub(super) fn pressing_diameter(top: &Top, bolt: &Bolt, washer: &Washer) -> Length {
    let reach: Length = washer.thickness * top.criteria.washer_reach.value;
    washer.outside.min(bolt.thread.head_bearing.value + 2.0 * reach)
}
