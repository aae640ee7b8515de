//! Loads on a patch: where they stand, and the width of strip that carries each of them.

use super::line::{Line, Role};
use crate::{
    closed_form::strip::{MovingPatch, Place, Strip},
    units::{Force, Length, Ratio, per_width},
};

/// A load on a square of the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct PatchLoad {
    /// Force, without its sign.
    pub(super) force: Force,
    /// Side of the square.
    pub(super) side: Length,
    /// Width that neighbours side by side take up beyond the square.
    pub(super) beside: Length,
}

#[derive(Clone, Copy)]
struct Widths {
    bending: Length,
    shear: Length,
    deflection: Length,
}

/// The load at each of a list of places along a strip.
pub(super) fn patches(
    line: &Line,
    strip: &Strip,
    places: impl Iterator<Item = Length>,
    load: PatchLoad,
) -> Vec<MovingPatch> {
    let force = load.force * reach(line);
    places
        .filter_map(|centre| {
            let widths = widths(line, strip.place(centre).ok()?, centre, load.side);
            let per = |width: Length| per_width(force / (width + load.beside));
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

/// What a load at the tip of an overhang does to the strip that carries the overhang, over the same load on the strip.
fn reach(line: &Line) -> f64 {
    line.carries.map_or(1.0, |overhang| 1.0 + (overhang.length / overhang.back_span).get::<uom::si::ratio::ratio>())
}

fn widths(line: &Line, place: Place, at: Length, side: Length) -> Widths {
    let (bending, shear) = match place {
        Place::Bay { from, to } => {
            let span: Length = to - from;
            let x = (at - from).min(to - at);
            (x * 2.48 * (Ratio::from(1.0) - x / span) + side, side + x * 0.5)
        }
        Place::Overhang { root, .. } => {
            let arm = (at - root).abs();
            (arm * 1.2 + side, side + arm * 0.3)
        }
    };
    let beside_end = |width: Length| width.min(width / 2.0 + line.to_free_end);
    let (bending, shear) = (beside_end(bending), beside_end(shear));
    Widths { bending, shear, deflection: bending }
}

/// Width of the strip beside an overhang that takes the overhang's load.
pub(super) fn end_width(line: &Line) -> Length {
    debug_assert!(line.role == Role::Edge, "only a strip beside an overhang carries one");
    line.widest_bay() * (2.48 / 4.0 / 2.0)
}
