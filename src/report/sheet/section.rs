//! A section to scale: edge, core, conduit and backing side by side between the skins, a pipe below, and the plies.

use maud::{Markup, html};
use uom::si::length::millimeter;

use super::{
    figure::{Figure, PAPER, mm, scale_bar},
    grain,
};
use crate::{
    report::words,
    top::{Backing, Pipe, Support, Top},
    units::{Length, both, show},
};

/// Width of core that is drawn beside what is not core, at full size.
const CORE: f64 = 34.0;
/// Backing wider than this is drawn broken.
const MOST: f64 = 60.0;

/// A piece of the section.
struct Piece<'a> {
    class: &'static str,
    name: String,
    /// Millimetres.
    wide: f64,
    broken: bool,
    /// What it is called by in the drawing; none of what is there only to part two others.
    letter: Option<char>,
    /// A hole through it, of a conduit.
    hole: Option<f64>,
    below: Option<(&'a Support, &'a Pipe)>,
}

pub(super) fn section(top: &Top) -> Markup {
    let pieces = pieces(top);
    let whole: f64 = pieces.iter().map(|piece| piece.wide).sum();
    // Never larger than it is; smaller where it would not fit.
    let scale = [1.0, 1.5, 2.0, 2.5, 3.0, 4.0].into_iter().find(|scale| whole / scale <= PAPER - 4.0).unwrap_or(5.0);
    let size = |length: Length| length.get::<millimeter>() / scale;
    let (outer, core, inner) =
        (size(top.outer.laminate().thickness()), size(top.core.thickness), size(top.inner.laminate().thickness()));
    let (left, sky) = (2.0, 9.0);
    let (upper, lower, under) = (sky + outer, sky + outer + core, sky + outer + core + inner);
    let pipe = pieces.iter().filter_map(|piece| piece.below).map(|(_, pipe)| size(pipe.outside)).fold(0.0, f64::max);
    let below = under + pipe + 5.0;
    let times = grain::enlargement(top);
    let stacks = below + 12.0;
    let (outer_stack, outer_high) = grain::stack(&top.outer, 1, [12.0, stacks], times);
    let (inner_stack, inner_high) = grain::stack(&top.inner, 1 + grain::count(&top.outer), [84.0, stacks], times);
    let end = left + whole / scale;
    let body = html! {
        (drawn(&pieces, (left, scale), [upper, lower, under]))
        rect class="skin" x=(mm(left)) y=(mm(sky)) width=(mm(whole / scale)) height=(mm(outer)) {}
        rect class="skin" x=(mm(left)) y=(mm(lower)) width=(mm(whole / scale)) height=(mm(inner)) {}
        text class="t" x=(mm(left)) y="5" { "outer skin, " (show(top.outer.laminate().thickness(), top.report)) }
        (scale_bar([2.0, below], scale, top.report))
        path class="thin" d={ "M" (mm(end)) " " (mm(sky)) "V" (mm(under)) } {}
        text class="t" x="2" y=(mm(stacks - 3.5)) { "Outer skin, " (times) " times larger" }
        text class="t" x="74" y=(mm(stacks - 3.5)) { "Inner skin, " (times) " times larger" }
        (outer_stack) (inner_stack)
    };
    let description = format!(
        "From left to right: {}. Outer skin {}, core {}, inner skin {}; {} in all.",
        pieces.iter().map(|piece| piece.name.as_str()).filter(|name| !name.is_empty()).collect::<Vec<_>>().join("; "),
        show(top.outer.laminate().thickness(), top.report),
        show(top.core.thickness, top.report),
        show(top.inner.laminate().thickness(), top.report),
        both(top.thickness(), top.report)
    );
    let high = stacks + outer_high.max(inner_high) + 2.0;
    let said = if scale > 1.0 { format!("Scale 1:{scale}") } else { "Full size where printed at 100 %".to_owned() };
    let figure = Figure {
        id: "section-figure",
        title: "Section through skins, core, backing and edge",
        description: &description,
        size: [PAPER, high],
        body,
        caption: html! {
            (said) ", the sky above; pieces that lie apart in the top are drawn side by side" (if pieces.iter().any(|piece| piece.broken) { ", wide backing broken" } else { "" })
            ". Below, the plies of each skin " (times) " times larger, numbered as in the list; the strokes beside them are the directions of their "
            "fibres as seen from above, the length of the top to the right."
        },
    };
    html! {
        (figure.markup())
        dl class="rows key" {
            @for piece in &pieces {
                @if let Some(letter) = piece.letter {
                    dt { (letter) }
                    dd { (words::capital(&piece.name)) @if let Some((support, _)) = piece.below { "; " (support.name) " below" } }
                }
            }
        }
        (grain::list(top))
    }
}

fn pieces(top: &Top) -> Vec<Piece<'_>> {
    let system = top.report;
    let piece = |class, name, wide| Piece { class, name, wide, broken: false, letter: None, hole: None, below: None };
    let core = || piece("core", format!("core, {}", words::within(&top.core.material.name)), CORE);
    let mut all = Vec::new();
    if let Some(edge) = &top.edge {
        let wide = edge.setback.get::<millimeter>();
        all.push(piece(
            "fill",
            format!("edge of {}, {} wide", words::within(&edge.fill.name), show(edge.setback, system)),
            wide,
        ));
    }
    all.push(core());
    let mut known: Vec<(&str, Length)> = Vec::new();
    for backing in &top.backings {
        let kind = (backing.board.name.as_str(), backing.width);
        if known.contains(&kind) || known.len() == 3 {
            continue;
        }
        known.push(kind);
        let wide = backing.width.get::<millimeter>();
        all.push(Piece {
            broken: wide > MOST,
            below: pipe_below(top, backing),
            ..piece(
                "board",
                format!(
                    "{} of {}, {} wide",
                    backing.name,
                    words::within(&backing.board.name),
                    show(backing.width, system)
                ),
                wide.min(MOST),
            )
        });
        all.push(Piece { wide: CORE / 3.0, name: String::new(), ..core() });
    }
    if let Some(conduit) = top.conduits.first() {
        let hole = conduit.diameter.get::<millimeter>();
        let name = format!("conduit {}, {} wide", conduit.name, show(conduit.diameter, system));
        all.push(Piece { hole: Some(hole), wide: CORE.max(hole + 10.0), name, ..core() });
    }
    let named = all.iter_mut().filter(|piece| !piece.name.is_empty());
    named.zip('A'..='Z').for_each(|(piece, letter)| piece.letter = Some(letter));
    all
}

/// A pipe that runs along a backing.
fn pipe_below<'a>(top: &'a Top, backing: &Backing) -> Option<(&'a Support, &'a Pipe)> {
    let along = |support: &Support| {
        let middle = support.along.at(support.along.length() / 2.0);
        backing.along.distance(middle) < backing.width / 2.0
    };
    top.supports.iter().filter(|support| along(support)).find_map(|support| Some((support, support.pipe()?)))
}

fn drawn(pieces: &[Piece<'_>], (left, scale): (f64, f64), [upper, lower, under]: [f64; 3]) -> Markup {
    html! {
        @for (piece, x) in placed(pieces, left, scale) {
            @let wide = piece.wide / scale;
            rect class=(piece.class) x=(mm(x)) y=(mm(upper)) width=(mm(wide)) height=(mm(lower - upper)) {}
            @if x > left { path class="thin" d={ "M" (mm(x)) " " (mm(upper)) "V" (mm(lower)) } {} }
            @if piece.broken {
                @let middle = x + wide / 2.0;
                @let high = (lower - upper) / 4.0;
                @for off in [-0.8, 0.8] {
                    path class="line" d={
                        "M" (mm(middle + off)) " " (mm(upper)) "l1.6 " (mm(high)) "l-3.2 " (mm(high * 2.0)) "l1.6 " (mm(high))
                    } {}
                }
            }
            @if let Some(hole) = piece.hole {
                circle class="hole" cx=(mm(x + wide / 2.0)) cy=(mm(f64::midpoint(upper, lower))) r=(mm(hole / scale / 2.0)) {}
            }
            @if let Some(letter) = piece.letter {
                text class="on" x=(mm(x + wide * if piece.broken || piece.hole.is_some() { 0.16 } else { 0.5 })) y=(mm(f64::midpoint(upper, lower) + 1.1)) { (letter) }
            }
            @if let Some((support, pipe)) = piece.below { (round(support, pipe, [x + wide / 2.0, under], scale)) }
        }
    }
}

/// A pipe below the top, its seat between them.
fn round(support: &Support, pipe: &Pipe, [x, under]: [f64; 2], scale: f64) -> Markup {
    let [outside, seat] = [pipe.outside, support.seat].map(|length| length.get::<millimeter>() / scale);
    let radius = outside / 2.0;
    let wall = pipe.wall.map(|wall| wall.get::<millimeter>() / scale);
    html! {
        circle class="line" cx=(mm(x)) cy=(mm(under + radius)) r=(mm(radius)) {}
        @if let Some(wall) = wall { circle class="thin" cx=(mm(x)) cy=(mm(under + radius)) r=(mm(radius - wall)) {} }
        path class="rim" d={ "M" (mm(x - seat / 2.0)) " " (mm(under + 0.3)) "h" (mm(seat)) } {}
    }
}

fn placed<'p, 'a>(pieces: &'p [Piece<'a>], left: f64, scale: f64) -> Vec<(&'p Piece<'a>, f64)> {
    let mut x = left;
    let each = pieces.iter().map(|piece| {
        let at = x;
        x += piece.wide / scale;
        (piece, at)
    });
    each.collect()
}
