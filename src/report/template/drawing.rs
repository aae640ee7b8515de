//! The layers as SVG, by places on the paper: to the right and downwards from the upper left of a frame.

use std::fmt::Write as _;

use maud::{Markup, html};

use super::{
    Template,
    labels::{LEADING, Placed},
    style,
    view::{OnPaper, View},
};
use crate::plan::{Item, Layer, LayerKind, Line, LineKind, Shape};

/// Where the datum lies in a frame, from its upper left.
#[derive(Clone, Copy, Debug)]
pub(super) struct Frame {
    pub(super) right: f64,
    pub(super) down: f64,
}

impl Frame {
    pub(super) fn x(self, at: OnPaper) -> f64 {
        self.right + at.u
    }

    pub(super) fn y(self, at: OnPaper) -> f64 {
        self.down - at.v
    }
}

/// A number to a tenth of a micrometre, without zeros at its end.
pub(super) fn number(value: f64) -> String {
    let text = format!("{value:.4}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// Markup whose names hold nothing that no SVG may hold: a title is whatever the file has between its quotation marks.
pub(super) fn printable(markup: Markup) -> String {
    let text = markup.into_string();
    let allowed = |letter: char| !letter.is_control() && !matches!(letter, '\u{fffe}' | '\u{ffff}') || letter == '\n';
    text.chars().map(|letter| if allowed(letter) { letter } else { ' ' }).collect::<String>() + "\n"
}

/// Every layer but the sizes over all, with its labels, as groups.
pub(super) fn layers(template: &Template<'_>, frame: Frame) -> Markup {
    let labels = template.labels();
    let shown = template.plan.layers.iter().filter(|layer| layer.kind != LayerKind::Dimensions);
    html! {
        @for layer in shown {
            g id={ "layer-" (layer.kind.id()) } fill="none" stroke="#000" {
                @for (index, item) in layer.items.iter().enumerate() {
                    (drawn(template, layer, (index, item), frame))
                }
            }
        }
        g id="labels" font-family="sans-serif" text-anchor="middle" fill="#000" {
            @for label in &labels { (text(label, frame)) }
        }
    }
}

fn drawn(template: &Template<'_>, layer: &Layer, (index, item): (usize, &Item), frame: Frame) -> Markup {
    let view = template.view;
    // A hole that is drilled from the other face shows as one behind.
    let behind = layer.kind == LayerKind::Fixings
        && template.plan.fixings.get(index).is_some_and(|mark| !template.shows_drilled_face(mark));
    let id = match layer.kind {
        LayerKind::Outline => "outline".to_owned(),
        kind => format!("{}-{}", kind.id(), index + 1),
    };
    let lines = item.shapes.iter().filter(|shape| matches!(shape, Shape::Line(_))).count();
    html! {
        g {
            title { (item.name) }
            @for (place, shape) in item.shapes.iter().enumerate() {
                @match shape {
                    Shape::Line(line) => {
                        @let id = if lines == 1 { id.clone() } else { format!("{id}-{}", place + 1) };
                        (path(&id, line, layer.kind, view, frame))
                    },
                    Shape::Circle { centre, diameter } => {
                        @let at = view.place(*centre);
                        @let stroke = style::of(layer.kind, LineKind::Edge);
                        @let dashes = if behind { "1.5 1" } else { stroke.dashes };
                        circle cx=(number(frame.x(at))) cy=(number(frame.y(at)))
                            r=(number(diameter.get::<uom::si::length::millimeter>() / 2.0))
                            stroke-width=(stroke.width) stroke-dasharray=[some(dashes)] {}
                    },
                    Shape::Cross { at } => (cross(view.place(*at), style::cross(layer.kind), frame)),
                    Shape::Label(_) | Shape::Dimension(_) => {},
                }
            }
        }
    }
}

fn some(text: &str) -> Option<&str> {
    (!text.is_empty()).then_some(text)
}

fn path(id: &str, line: &Line, layer: LayerKind, view: View, frame: Frame) -> Markup {
    let stroke = style::of(layer, line.kind);
    let hatched = layer == LayerKind::NoDrill && line.closed;
    html! {
        path id=(id) d=(path_data(line, view, frame)) stroke-width=(stroke.width)
            stroke-dasharray=[some(stroke.dashes)] fill=[hatched.then_some("url(#hatch)")] {}
    }
}

/// Pieces as path commands, arcs as arcs.
pub(super) fn path_data(line: &Line, view: View, frame: Frame) -> String {
    let mut data = String::new();
    let place = |at: OnPaper| format!("{} {}", number(frame.x(at)), number(frame.y(at)));
    for (index, (from, to, bulge)) in line.pieces().enumerate() {
        let (from, to, bulge) = (view.place(from), view.place(to), view.bulge(bulge));
        if index == 0 {
            let _ = write!(data, "M{}", place(from));
        }
        if bulge.abs() < 1e-9 {
            let _ = write!(data, " L{}", place(to));
        } else {
            let chord = (to.u - from.u).hypot(to.v - from.v);
            let radius = chord * (1.0 + bulge * bulge) / (4.0 * bulge.abs());
            let (large, sweep) = (u8::from(bulge.abs() > 1.0), u8::from(bulge < 0.0));
            let _ = write!(data, " A{0} {0} 0 {large} {sweep} {1}", number(radius), place(to));
        }
    }
    if line.closed {
        data.push('Z');
    }
    data
}

pub(super) fn cross(at: OnPaper, half: f64, frame: Frame) -> Markup {
    let (x, y) = (frame.x(at), frame.y(at));
    let data = format!(
        "M{} {} H{} M{} {} V{}",
        number(x - half),
        number(y),
        number(x + half),
        number(x),
        number(y - half),
        number(y + half)
    );
    html! { path d=(data) stroke-width="0.2" {} }
}

/// A label on a white ground, so that lines behind it do not cross it out.
fn text(label: &Placed, frame: Frame) -> Markup {
    let (x, y) = (frame.x(label.at), frame.y(label.at));
    #[allow(clippy::cast_precision_loss, reason = "lines of a label")]
    let lines = label.lines.len() as f64;
    let turn =
        (label.degrees.abs() > 1e-9).then(|| format!("rotate({} {} {})", number(-label.degrees), number(x), number(y)));
    // The first line of letters stands on a line a third of a height below the middle of its row.
    let first = y - (lines - 1.0) / 2.0 * LEADING * label.size + 0.35 * label.size;
    html! {
        text transform=[turn] font-size=(label.size) stroke="#fff" stroke-width="1" stroke-linejoin="round" paint-order="stroke" {
            @for (line, row) in label.lines.iter().zip(0_u8..) {
                tspan x=(number(x)) y=(number(first + f64::from(row) * LEADING * label.size)) { (line) }
            }
        }
    }
}

/// What the drawing is hatched with where nothing is drilled.
pub(super) fn hatch() -> Markup {
    html! {
        pattern id="hatch" patternUnits="userSpaceOnUse" width="4" height="4" {
            path d="M-1 1 L1 -1 M0 4 L4 0 M3 5 L5 3" stroke="#000" stroke-width="0.12" {}
        }
    }
}

/// The datum: its corner, and where *x* and *y* run.
pub(super) fn datum(view: View, frame: Frame) -> Markup {
    const ARM: f64 = 30.0;
    let down = if view.turned_over() { 1.0 } else { -1.0 };
    let (x, y) = (frame.right, frame.down);
    let tip = y + down * ARM;
    let arrows = format!(
        "M{x0} {y0} H{x1} M{xa} {ya} L{x1} {y0} L{xa} {yb} M{x0} {y0} V{y1} M{xc} {yc} L{x0} {y1} L{xd} {yc}",
        x0 = number(x),
        y0 = number(y),
        x1 = number(x + ARM),
        xa = number(x + ARM - 4.0),
        ya = number(y - 1.5),
        yb = number(y + 1.5),
        y1 = number(tip),
        yc = number(tip - down * 4.0),
        xc = number(x - 1.5),
        xd = number(x + 1.5),
    );
    let letter = |right: f64, at: f64, words: &str| {
        html! {
            text x=(number(right)) y=(number(at)) font-family="sans-serif" font-size="4" text-anchor="middle"
                stroke="#fff" stroke-width="1" paint-order="stroke" { (words) }
        }
    };
    html! {
        g id="datum" {
            path d=(arrows) fill="none" stroke="#000" stroke-width="0.35" {}
            circle cx=(number(x)) cy=(number(y)) r="2.5" fill="none" stroke="#000" stroke-width="0.35" {}
            (letter(x + ARM + 4.0, y + 1.4, "x"))
            (letter(x, tip + down * 4.0 + 1.4, "y"))
            (letter(x - 6.0, y - down * 6.0 + 1.4, "0, 0"))
        }
    }
}
