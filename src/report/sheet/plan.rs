//! The plan of the top, to scale.

use std::fmt::Write as _;

use maud::{Markup, html};

use super::{
    figure::{Figure, OnPaper, PAPER, mm, scale, scale_bar},
    plan_labels::{Names, Placed, Thing},
    plan_lines::{places, weight},
};
use crate::{
    geometry::Axis,
    plan::{Dimension, Item, Layer, LayerKind, Line, LineKind, Plan, Shape},
    top::{Forward, Scope, Top},
    units::{Length, Ratio, System, both, show},
};

/// Room round the top on the paper: at its left and below it for sizes, at its right and above it for what is trimmed off.
const SIZES: f64 = 11.0;
const RIM: f64 = 4.0;
/// Above that, for the arrow to the bow.
const BOW: f64 = 6.0;
/// Height of a row of the legend.
const ROW: f64 = 5.6;
/// The drawing is no narrower than two columns of the legend need in the letters of a narrow screen.
const LEGEND: f64 = 146.0;
/// Highest the top is drawn.
const HIGH: f64 = 110.0;

pub(super) fn plan(top: &Top) -> Markup {
    let plan = &Plan::of(top);
    let room = [PAPER - SIZES - RIM, HIGH];
    let scale = scale(plan.length, room[0]).max(scale(plan.width, room[1]));
    let sizes = [plan.length, plan.width].map(|length| length.get::<uom::si::length::millimeter>() / scale);
    let on = OnPaper { scale, left: SIZES, bottom: BOW + RIM + sizes[1] };
    let wide = (sizes[0] + SIZES + RIM).max(LEGEND);
    let legend_at = on.bottom + SIZES + 4.0;
    let shown: Vec<&Layer> = plan.layers.iter().filter(|layer| layer.kind != LayerKind::Dimensions).collect();
    let rows = shown.len().div_ceil(2) + 1;
    #[expect(clippy::cast_precision_loss, reason = "a handful of rows")]
    let high = legend_at + rows as f64 * ROW + 3.0;
    // Clear of the arrow to the bow and of sizes.
    let mut names = Names::new([[on.left - RIM, BOW], [wide, on.bottom + RIM]]);
    for (at, by) in plan.layers.iter().flat_map(|layer| marks(layer, on)) {
        names.keep_off(at, by);
    }
    for layer in &plan.layers {
        for item in &layer.items {
            names.keep_off_lines(&places(item, on), weight(layer.kind));
        }
    }
    // Footings first: they are small, and what runs along the top finds room for its name anywhere along it.
    let (small, long): (Vec<&Layer>, Vec<&Layer>) =
        plan.layers.iter().partition(|layer| layer.kind == LayerKind::Footings);
    let items = small.into_iter().chain(long).flat_map(|layer| &layer.items);
    let labels: Vec<Markup> = items.map(|item| named(top, item, on, &mut names)).collect();
    let body = html! {
        @for layer in &plan.layers { g class={ "l-" (layer.kind.id()) } { (layer_drawn(layer, on, top.report)) } }
        @for label in labels { (label) }
        (bow(top.bow(), on.left + sizes[0] / 2.0))
        (legend(&shown, legend_at, wide))
        (scale_bar([wide / 2.0 + 2.0, high - 2.5], scale, top.report))
    };
    let description = described(top, plan);
    Figure {
        id: "plan-figure",
        title: "Plan of the top",
        description: &description,
        size: [wide, high],
        body,
        caption: html! {
            "Scale 1:" (scale) ", seen from above; places count from the lower left corner of the rectangle round the outline, along the length to the "
            "right and across upwards. The bow lies to the " (top.bow().word())
            @if top.forward.is_none() { ", as is taken for granted: the file does not say it (" code { "forward" } ")" }
            "."
            @if top.scope == Scope::Patch { " A piece of panel round a mount; how the top goes on round it is not known." }
            @if !plan.fixings.is_empty() { " Each cross is a fixing; the template has each hole in its place." }
            @if plan.layer(LayerKind::NoDrill).is_some() {
                " Beside conduits no hole of up to " (both(plan.no_drill_hole, top.report)) " has its middle in the band."
            }
        },
    }
    .markup()
}

/// The plan in words: what lies on which layer.
fn described(top: &Top, plan: &Plan) -> String {
    let mut parts = vec![format!(
        "{} by {}, the bow to the {}",
        show(plan.length, top.report),
        show(plan.width, top.report),
        top.bow().word()
    )];
    for layer in &plan.layers {
        let names: Vec<&str> = layer.items.iter().map(|item| item.name.as_str()).collect();
        match layer.kind {
            LayerKind::Backings
            | LayerKind::Conduits
            | LayerKind::Pipes
            | LayerKind::Seats
            | LayerKind::Footings
            | LayerKind::Openings => {
                parts.push(format!("{}: {}", layer.kind.words(), names.join(", ")));
            }
            LayerKind::Fixings => parts.push(format!("{} fixings", names.len())),
            _ => {}
        }
    }
    format!("{}.", parts.join("; "))
}

fn layer_drawn(layer: &Layer, on: OnPaper, system: System) -> Markup {
    html! {
        @for item in &layer.items {
            @for shape in &item.shapes {
                @match shape {
                    Shape::Line(line) => path class=(line_class(line.kind)) d=(line_path(line, on)) {},
                    Shape::Circle { centre, diameter } => {
                        @let [x, y] = on.at(*centre);
                        circle class="e" cx=(mm(x)) cy=(mm(y)) r=(mm(on.length(*diameter) / 2.0)) {}
                    },
                    // A cross is a hole; the middle of a footing is none.
                    Shape::Cross { at } if layer.kind != LayerKind::Fixings => {
                        @let [x, y] = on.at(*at);
                        circle class="e" cx=(mm(x)) cy=(mm(y)) r="0.3" {}
                    },
                    Shape::Cross { at } => {
                        @let [x, y] = on.at(*at);
                        path class="e" d={ "M" (mm(x - 1.1)) " " (mm(y)) "h2.2M" (mm(x)) " " (mm(y - 1.1)) "v2.2" } {}
                    },
                    Shape::Dimension(size) => (dimension(size, on, system)),
                    Shape::Label(_) => {},
                }
            }
        }
    }
}

const fn line_class(kind: LineKind) -> &'static str {
    match kind {
        LineKind::Edge => "e",
        LineKind::Inner => "i",
        LineKind::Centre => "c",
    }
}

/// A line with its arcs as arcs.
pub(super) fn line_path(line: &Line, on: OnPaper) -> String {
    let mut text = String::new();
    for (from, to, bulge) in line.pieces() {
        let ([x0, y0], [x, y]) = (on.at(from), on.at(to));
        if text.is_empty() {
            text = format!("M{} {}", mm(x0), mm(y0));
        }
        if bulge == Ratio::default() {
            let _ = write!(text, "L{} {}", mm(x), mm(y));
        } else {
            let bulge = bulge.value;
            // The paper counts downwards: what runs against the clock still does, which SVG writes as 0.
            let radius = (x - x0).hypot(y - y0) * (1.0 + bulge * bulge) / (4.0 * bulge.abs());
            let (large, clockwise) = (u8::from(bulge.abs() > 1.0), u8::from(bulge < 0.0));
            let _ = write!(text, "A{0} {0} 0 {large} {clockwise} {1} {2}", mm(radius), mm(x), mm(y));
        }
    }
    if line.closed {
        text.push('Z');
    }
    text
}

/// A size over all, outside the top, its words on the line.
fn dimension(size: &Dimension, on: OnPaper, system: System) -> Markup {
    let ([x0, y0], [x1, y1]) = (on.at(size.from), on.at(size.to));
    let words = both(size.size, system);
    match size.axis {
        Axis::X => {
            let y = y0.max(y1) + 8.0;
            html! {
                path class="thin" d={ "M" (mm(x0)) " " (mm(y0 + 1.0)) "V" (mm(y + 1.0)) "M" (mm(x1)) " " (mm(y1 + 1.0)) "V" (mm(y + 1.0)) "M" (mm(x0)) " " (mm(y)) "H" (mm(x1)) } {}
                (tick([x0, y])) (tick([x1, y]))
                text class="on" x=(mm(f64::midpoint(x0, x1))) y=(mm(y - 1.2)) { (words) }
            }
        }
        Axis::Y => {
            let x = x0.min(x1) - 6.0;
            let middle = f64::midpoint(y0, y1);
            html! {
                path class="thin" d={ "M" (mm(x0 - 1.0)) " " (mm(y0)) "H" (mm(x - 1.0)) "M" (mm(x1 - 1.0)) " " (mm(y1)) "H" (mm(x - 1.0)) "M" (mm(x)) " " (mm(y0)) "V" (mm(y1)) } {}
                (tick([x, y0])) (tick([x, y1]))
                text class="on" transform={ "translate(" (mm(x - 1.2)) " " (mm(middle)) ") rotate(-90)" } { (words) }
            }
        }
    }
}

/// An arrow to the bow, above the middle of the plan.
fn bow(bow: Forward, middle: f64) -> Markup {
    const HALF: f64 = 9.0;
    let way = match bow {
        Forward::Right => 1.0,
        Forward::Left => -1.0,
    };
    let (y, tip) = (BOW / 2.0, middle + way * HALF);
    html! {
        g class="bow" {
            path class="line" d={ "M" (mm(middle - way * HALF)) " " (mm(y)) "H" (mm(tip)) "m" (mm(-2.2 * way)) " -1.1L" (mm(tip)) " " (mm(y)) "l" (mm(-2.2 * way)) " 1.1" } {}
            text class={ "t-plan " @if way < 0.0 { "end" } } x=(mm(tip + 1.5 * way)) y=(mm(y + 1.0)) { "bow" }
        }
    }
}

fn tick([x, y]: [f64; 2]) -> Markup {
    html! { path class="line" d={ "M" (mm(x - 0.9)) " " (mm(y + 0.9)) "l1.8 -1.8" } {} }
}

/// Places of holes and posts on the paper, each with how far names keep off it.
fn marks(layer: &Layer, on: OnPaper) -> Vec<([f64; 2], f64)> {
    if !matches!(layer.kind, LayerKind::Fixings | LayerKind::Posts) {
        return Vec::new();
    }
    let mark = |shape: &Shape| match shape {
        Shape::Cross { at } => Some((on.at(*at), 1.3)),
        Shape::Circle { centre, diameter } => Some((on.at(*centre), on.length(*diameter) / 2.0)),
        _ => None,
    };
    layer.items.iter().flat_map(|item| &item.shapes).filter_map(mark).collect()
}

/// The name of an item where there is room for it, with a line to it where it stands off.
fn named(top: &Top, item: &Item, on: OnPaper, names: &mut Names) -> Markup {
    let label = item.shapes.iter().find_map(|shape| match shape {
        Shape::Label(label) => Some(label),
        _ => None,
    });
    let Some(label) = label else { return Markup::default() };
    let turned = -label.along.get::<uom::si::angle::degree>();
    let places = places(item, on);
    let thing = Thing { at: on.at(label.at), turned, places: &places };
    let inside = |at: [f64; 2]| top.outline.within_by(on.place(at)) > Length::default();
    let Some(Placed { at: [x, y], leader }) = names.place(&label.text, thing, &inside) else {
        return Markup::default();
    };
    html! {
        @if let Some([from, to]) = leader { path class="thin" d={ "M" (mm(from[0])) " " (mm(from[1])) "L" (mm(to[0])) " " (mm(to[1])) } {} }
        text class="on-plan" transform={ "translate(" (mm(x)) " " (mm(y)) ") rotate(" (mm(turned)) ")" } y="1" { (label.text) }
    }
}

/// What each kind of line is.
fn legend(layers: &[&Layer], first: f64, wide: f64) -> Markup {
    html! {
        @for (k, layer) in layers.iter().enumerate() {
            @let x = if k % 2 == 0 { 2.0 } else { wide / 2.0 + 2.0 };
            @let y = first + ROW * f64::from(u32::try_from(k / 2).unwrap_or(0)) + 1.5;
            g class={ "l-" (layer.kind.id()) } {
                @match layer.kind {
                    LayerKind::Fixings => path class="e" d={ "M" (mm(x + 3.0)) " " (mm(y)) "h2.2m-1.1 -1.1v2.2" } {},
                    LayerKind::Posts => circle class="e" cx=(mm(x + 4.0)) cy=(mm(y)) r="1.4" {},
                    LayerKind::Backings | LayerKind::NoDrill | LayerKind::Conduits | LayerKind::Pipes | LayerKind::Seats | LayerKind::Footings => {
                        rect class="e" x=(mm(x)) y=(mm(y - 1.4)) width="8" height="2.8" {}
                    },
                    _ => path class="e" d={ "M" (mm(x)) " " (mm(y)) "h8" } {},
                }
            }
            text class="t-plan" x=(mm(x + 10.0)) y=(mm(y + 1.1)) { (layer.kind.words()) }
        }
    }
}
