//! The plies of both skins; then the top cut along one line, to scale: skins, core, backing, conduit, edge, what stands below, fixings.

use maud::{Markup, html};
use uom::si::length::millimeter;

use super::{
    cut_drawn::{self, Layout},
    cut_named,
    figure::{Figure, PAPER, mm, scale_bar},
    grain,
};
use crate::{
    geometry::Axis,
    plan::{Cut, Plan},
    report::words,
    top::{Forward, Schedule, Scope, Top},
    units::{both, show},
};

/// Rows of letters above and below the cut.
const LETTERS: f64 = 9.0;
/// From the letters below down to the bar: its words stand between, on a narrow screen too.
const BAR: f64 = 7.5;
/// The drawing of a short cut is no narrower than words and letters need.
const NARROWEST: f64 = 90.0;
/// Width of the drawing of the plies, and what stands above its stacks.
const PLIES: f64 = 152.0;
const STACKS: f64 = 7.0;

pub(super) fn section(top: &Top) -> Markup {
    let plan = Plan::of(top);
    let cut = Cut::telling(top, &plan.fixings);
    let layout = Layout::new(top, &cut, &plan.fixings);
    let named = cut_named::named(top, &cut, &plan.fixings, layout.scale);
    let size = |length: crate::units::Length| length.get::<millimeter>() / layout.scale;
    let (sky, all) = (LETTERS + 6.5, size(top.thickness()));
    let under = sky + all;
    let below = under + size(cut_drawn::below(top, &cut)) + LETTERS;
    let [left, right] = hands(top, &cut);
    let body = html! {
        text class="t-soft" x="2" y="4" { (left) }
        text class="t-soft end" x=(mm(layout.wide())) y="4" { (right) }
        (cut_drawn::drawn(top, &cut, &plan.fixings, &layout, sky))
        (cut_named::letters(&named, &layout, [sky, under, below]))
        (scale_bar([2.0, below + BAR], layout.scale, top.report))
    };
    let description = format!(
        "{}. Outer skin {}, core {}, inner skin {}; {} in all.",
        named.iter().map(|named| named.words.as_str()).collect::<Vec<_>>().join("; "),
        show(top.outer.laminate().thickness(), top.report),
        show(top.core.thickness, top.report),
        show(top.inner.laminate().thickness(), top.report),
        both(top.thickness(), top.report)
    );
    let said = if layout.scale > 1.0 { format!("Scale 1:{}", layout.scale) } else { "Full size at 100 %".to_owned() };
    let figure = Figure {
        id: "section-figure",
        title: "The top cut along a line",
        description: &description,
        size: [(layout.wide() + LETTERS).clamp(NARROWEST, PAPER), below + BAR + 2.0],
        body,
        caption: html! {
            "Cut " (where_cut(top, &cut)) ". " (said) " in both directions"
            @if layout.broken { "; between zigzags a piece that goes on alike is left out" }
            @if top.crown > crate::units::Length::default() { "; drawn flat, without its crown" }
            "."
        },
    };
    // The list of plies breaks over pages: it fills what the plan leaves, and the cut begins on the next.
    html! {
        (plies(top))
        (grain::list(top))
        (figure.markup())
        dl class="rows key" {
            @for named in &named { dt { (named.letter) } dd { (words::capital(&named.words)) } }
        }
    }
}

/// The plies of both skins, larger than they are: a figure of its own, so that paper may be turned between it and the cut.
fn plies(top: &Top) -> Markup {
    let times = grain::enlargement(top);
    let (outer, outer_high) = grain::stack(&top.outer, 1, [12.0, STACKS], times);
    let (inner, inner_high) = grain::stack(&top.inner, 1 + grain::count(&top.outer), [88.0, STACKS], times);
    let body = html! {
        text class="t" x="2" y="4" { "Outer skin, " (times) " times larger" }
        text class="t" x="78" y="4" { "Inner skin, " (times) " times larger" }
        (outer) (inner)
    };
    let thick =
        |skin: &Schedule| format!("{} plies, {}", grain::count(skin), show(skin.laminate().thickness(), top.report));
    Figure {
        id: "plies-figure",
        title: "The plies of both skins",
        description: &format!("Outer skin: {}. Inner skin: {}.", thick(&top.outer), thick(&top.inner)),
        size: [PLIES, STACKS + outer_high.max(inner_high) + 2.0],
        body,
        caption: html! {
            "The plies of each skin " (times) " times larger, from the sky down, numbered as in the list; the strokes beside them are the "
            "directions of their fibres as seen from above, the length of the top to the right."
        },
    }
    .markup()
}

/// Where the cut runs and how one looks at it.
fn where_cut(top: &Top, cut: &Cut) -> String {
    let station = show(cut.station, top.report);
    match cut.axis {
        Axis::Y if top.scope == Scope::Whole => format!("across at x {station}, looking towards the bow"),
        Axis::Y => format!("across at x {station}"),
        Axis::X => format!("along at y {station}"),
    }
}

/// What lies on the left and on the right of the drawing.
fn hands(top: &Top, cut: &Cut) -> [&'static str; 2] {
    match cut.axis {
        // Who looks towards the bow has port on the left.
        Axis::Y => ["port", "starboard"],
        Axis::X if top.bow() == Forward::Right => ["stern", "bow"],
        Axis::X => ["bow", "stern"],
    }
}
