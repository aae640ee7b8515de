//! Loads on a patch: where they stand, and the width of strip that carries each of them.

use super::line::Line;
use crate::{
    closed_form::{
        effective_width::{
            NearEdge, Spread, deflection, hogging, near_free_edge, overhang, sagging, shear_near_free_edge,
            tip_deflection,
        },
        strip::{MovingPatch, Place, Strip},
    },
    units::{Force, Length, per_width},
};

/// A load on a square of the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct PatchLoad {
    /// Force, without its sign.
    pub(super) force: Force,
    /// Force that sag is judged by: a step is over before the top has followed it.
    pub(super) at_rest: Force,
    /// Side of the square.
    pub(super) side: Length,
    /// How many of the same stand side by side across the strip.
    pub(super) many: u32,
    /// How far apart they stand.
    pub(super) spacing: Length,
}

impl PatchLoad {
    /// A load that does not step.
    pub(super) fn resting(force: Force, side: Length) -> Self {
        Self { force, at_rest: force, side, many: 1, spacing: Length::default() }
    }
}

/// Widths of strip that carry a patch, by result.
#[derive(Clone, Copy)]
struct Widths {
    sagging: Length,
    hogging: Length,
    shear: Length,
    deflection: Length,
}

/// The load at each of a list of places along a strip.
pub(super) fn patches(
    line: &Line,
    strip: &Strip,
    spread: &Spread,
    places: impl Iterator<Item = Length>,
    load: PatchLoad,
) -> Vec<MovingPatch> {
    let (force, at_rest) = (load.force * reach(line), load.at_rest * reach(line));
    places
        .filter_map(|centre| {
            // The patch lies wholly on the strip, and its width goes with where it lies.
            let half = load.side.min(strip.length()) / 2.0;
            let centre = centre.max(half).min(strip.length() - half);
            let widths = widths(line, spread, strip.place(centre).ok()?, centre, load.side);
            let many = f64::from(load.many);
            // Side by side, each has its own width where that is small, and they share one where it is large.
            let per = |force: Force, width: Length| {
                per_width(force * many / (width * many).min(width + load.spacing * (many - 1.0)))
            };
            Some(MovingPatch {
                centre,
                sagging: per(force, widths.sagging),
                hogging: per(force, widths.hogging),
                shear: per(force, widths.shear),
                deflection: per(at_rest, widths.deflection),
            })
        })
        .collect()
}

/// What a load at the tip of an overhang does to the strip that carries the overhang, over the same load on the strip.
fn reach(line: &Line) -> f64 {
    line.carries.map_or(1.0, |overhang| 1.0 + (overhang.length / overhang.back_span).get::<uom::si::ratio::ratio>())
}

fn widths(line: &Line, spread: &Spread, place: Place, at: Length, side: Length) -> Widths {
    // The load itself stands inside the top: its middle is half a side from the free edge at the least.
    let to_end = line.to_free_end.max(side / 2.0);
    let near = |width, result| near_free_edge(width, to_end, result);
    match place {
        Place::Bay { from, to } => {
            let span: Length = to - from;
            let x = (at - from).min(to - at);
            let (inner, between) = simple_span(line, (from, to), at);
            Widths {
                sagging: near(sagging(side, inner, between, spread), NearEdge::SpanMoment),
                hogging: near(hogging(side, x, span, spread), NearEdge::SpanMoment),
                shear: shear_near_free_edge(side, x, to_end, false, spread),
                deflection: near(deflection(side, x, span, spread), NearEdge::SpanDeflection),
            }
        }
        Place::Overhang { root, .. } => {
            let arm = (at - root).abs();
            let bending = near(overhang(side, arm, spread), NearEdge::OverhangMoment);
            let sink = tip_deflection(side, arm, span_behind(line, root), spread);
            Widths {
                sagging: bending,
                hogging: bending,
                shear: shear_near_free_edge(side, arm, to_end, true, spread),
                deflection: near(sink, NearEdge::OverhangDeflection),
            }
        }
    }
}

/// Length of the simple span behind a root: of a bay that runs on, three quarters, as if its far end were clamped.
fn span_behind(line: &Line, root: Length) -> Length {
    let seats = &line.seats;
    let bay = match seats.as_slice() {
        [first, second, ..] if (first.at - root).abs() < (second.at - root).abs() => second.at - first.at,
        [.., before, last] => last.at - before.at,
        _ => Length::default(),
    };
    bay * if seats.len() > 2 { 0.75 } else { 1.0 }
}

/// Distance of a load from the nearer end of the span that it sees as a simple one, and that span: all of a single
/// bay, nine tenths of an end bay from its outer support, the middle eight tenths of an inner bay.
fn simple_span(line: &Line, (from, to): (Length, Length), at: Length) -> (Length, Length) {
    let (first, last) = (line.seats[0].at, line.seats[line.seats.len() - 1].at);
    let span: Length = to - from;
    let (begin, share) = match (from == first, to == last) {
        (true, true) => (from, 1.0),
        (true, false) => (from, 0.9),
        (false, true) => (from + span * 0.1, 0.9),
        (false, false) => (from + span * 0.1, 0.8),
    };
    let between = span * share;
    ((at - begin).min(begin + between - at).max(Length::default()), between)
}

/// Width of the strip beside an overhang that takes the overhang's load: what half a load in the middle of its widest
/// bay would be given.
pub(super) fn end_width(line: &Line, spread: &Spread) -> Length {
    let bay = line.widest_bay();
    near_free_edge(sagging(Length::default(), bay / 2.0, bay, spread), Length::default(), NearEdge::SpanMoment)
}
