//! Loads that move: where they stand, and the width of strip that carries each of them.

use super::{
    line::{Line, Role},
    strip_model::Shape,
};
use crate::{
    closed_form::{
        effective_width::{self, Edge},
        strip::{MovingPatch, Place, Strip},
    },
    units::{Force, Length, Ratio, per_width},
};

/// A load on a square of the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Footprint {
    /// Force, without its sign.
    pub force: Force,
    /// Side of the square.
    pub side: Length,
    /// Width beyond the square that neighbours side by side take up.
    pub beside: Length,
}

/// The load at each of a list of places.
pub fn patches(
    line: &Line,
    shape: &Shape,
    strip: &Strip,
    places: impl Iterator<Item = Length>,
    load: Footprint,
) -> Vec<MovingPatch> {
    let force = load.force * reach_factor(line);
    places
        .filter_map(|centre| {
            let place = strip.place(centre).ok()?;
            let per = |width: Length| per_width(force / (width + load.beside));
            let widths = widths(line, shape, place, centre, load.side);
            Some(MovingPatch {
                centre,
                sagging: per(widths.bending),
                hogging: per(widths.bending),
                shear: per(widths.shear),
                deflection: per(widths.deflection),
            })
        })
        .collect()
}
