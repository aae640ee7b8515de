//! Strips from a free end of the top over the pipes, and what they hand to the strip beside them.

use super::{GearOnLine, Line, Overhang, Piece, Region, Role, Seat, shortest};
use crate::{
    analysis::layout::StripLayout,
    geometry::Axis,
    top::Top,
    units::{Length, Ratio},
};

pub(super) fn end_overhang(top: &Top, layout: &StripLayout, overhang: Overhang, reversed: bool) -> Line {
    over_an_end(top, layout.axis.other(), overhang, reversed, None)
}

/// A strip over a free end, in the direction `axis`; a pipe runs along its root where one is given.
fn over_an_end(top: &Top, axis: Axis, overhang: Overhang, reversed: bool, root: Option<usize>) -> Line {
    let size = top.outline.size(axis);
    let width = |pipe: Option<usize>| pipe.map_or_else(Length::default, |pipe| top.supports[pipe].seat);
    let gear = top
        .gear
        .iter()
        .enumerate()
        .filter_map(|(index, gear)| {
            let at = gear.at.along(axis);
            let at = if reversed { size - at } else { at };
            (at < overhang.length).then_some(GearOnLine { gear: index, at, beyond: Length::default() })
        })
        .collect();
    Line {
        role: Role::EndOverhang,
        axis,
        station: top.outline.size(axis.other()) / 2.0,
        origin: if reversed { size } else { Length::default() },
        reversed,
        pieces: weakest_pieces(top, axis, overhang, reversed),
        seats: vec![
            Seat { pipe: root, width: width(root), ..Seat::without_pipe(overhang.length) },
            Seat::without_pipe(overhang.length + overhang.back_span),
        ],
        to_free_end: Length::default(),
        to_outline: Length::default(),
        carries: None,
        gear,
    }
}

/// What a strip over an end passes at worst: every conduit that crosses the overhang anywhere, and core elsewhere.
fn weakest_pieces(top: &Top, axis: Axis, overhang: Overhang, reversed: bool) -> Vec<Piece> {
    let size = top.outline.size(axis);
    let whole = overhang.length + overhang.back_span;
    let crossing = top.conduits.iter().enumerate().filter(|(_, conduit)| conduit.along.main_axis() != axis);
    let mut bands: Vec<(Length, Length, usize)> = crossing
        .filter_map(|(index, conduit)| {
            let (low, high) = conduit.along.extent(axis);
            let (low, high) = if reversed { (size - high, size - low) } else { (low, high) };
            let half: Length = conduit.diameter / 2.0;
            let (from, to) = ((low - half).max(Length::default()), (high + half).min(overhang.length));
            (to > from).then_some((from, to, index))
        })
        .collect();
    bands.sort_by(|a, b| a.0.value.total_cmp(&b.0.value));
    let mut pieces = Vec::new();
    let mut at = Length::default();
    for (from, to, index) in bands {
        let from = from.max(at);
        if to > from {
            if from > at {
                pieces.push(Piece { length: from - at, region: Region::Field });
            }
            pieces.push(Piece { length: to - from, region: Region::Conduit(index) });
            at = to;
        }
    }
    pieces.push(Piece { length: whole - at, region: Region::Field });
    pieces
}

/// The overhangs round bays that pipes hold on four sides: beyond the outer pipes of one direction.
#[must_use]
pub fn rim_overhangs(top: &Top, layout: &StripLayout) -> Vec<Line> {
    let mut pipes: Vec<(Length, usize)> =
        layout.pipes.iter().map(|&pipe| (top.supports[pipe].along.extent(layout.axis).0, pipe)).collect();
    pipes.sort_by(|a, b| a.0.value.total_cmp(&b.0.value));
    let (first, last) = (pipes[0], pipes[pipes.len() - 1]);
    let size = top.outline.size(layout.axis);
    let first_bay = pipes[1].0 - first.0;
    let last_bay = last.0 - pipes[pipes.len() - 2].0;
    [(first.0, first_bay, false, first.1), (size - last.0, last_bay, true, last.1)]
        .into_iter()
        .filter(|(length, ..)| *length > shortest())
        .map(|(length, back_span, reversed, pipe)| {
            over_an_end(top, layout.axis, Overhang { length, back_span }, reversed, Some(pipe))
        })
        .collect()
}

/// Ratio of the strip's own load that an [`Overhang`] adds to a strip of a given width.
///
/// ```text
/// added = c (1 + c / (2 L)) / b
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *c* | length of the overhang |
/// | *L* | back span: its end lifts, so the root carries more than the load on the overhang |
/// | *b* | width of the strip that takes the root's reaction |
///
/// # Validity
///
/// Even load; the strip beside the overhang takes all of it. On the safe side, since the top spreads it farther back.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): moments about the far end of the back span.
///
/// # Examples
///
/// ```
/// use skinspan::{analysis::{Overhang, handed_on}, units::Length};
/// use uom::si::{length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let overhang = Overhang { length: m(0.4), back_span: m(1.0) };
/// // 0.4 · (1 + 0.2) / 0.3 = 1.6
/// assert!((handed_on(overhang, m(0.3)).get::<ratio>() - 1.6).abs() < 1e-12);
/// ```
#[must_use]
pub fn handed_on(overhang: Overhang, width: Length) -> Ratio {
    let c = overhang.length;
    let root: Length = c + c * (c / (2.0 * overhang.back_span));
    root / width
}
