//! The whole drawing on one sheet.

use maud::{Markup, PreEscaped, html};

use super::{
    Template, bars,
    cautions::cautions,
    drawing::{self, Frame, number},
    holes::groups,
    running, style, text,
};
use crate::{
    geometry::{Axis, Point},
    plan::{Dimension, LayerKind, LineKind, Shape},
    top::Forward,
    units::both,
};

/// What stands below the title of a top that the checks speak against; the notes say why.
pub(super) const NOT_FOR_BUILDING: &str = "NOT FOR BUILDING: see the notes";

/// White all round.
const MARGIN: f64 = 15.0;
/// Beside the drawing, for running sizes, sizes over all and the mark of the bow.
const GUTTER: f64 = 60.0;
/// Above the drawing, for the title.
const TITLE: f64 = 16.0;
/// Narrowest sheet, so that words have room.
const NARROWEST: f64 = 300.0;
/// Height of the letters of notes, and from line to line.
const NOTE: (f64, f64) = (3.6, 5.2);

pub(super) fn svg(template: &Template<'_>) -> String {
    let view = template.view;
    let [low, high] = template.plan.bounds().map(|corner| view.place(corner));
    let (bottom, up) = (low.v.min(high.v), low.v.max(high.v));
    let width = (high.u - low.u + 2.0 * (MARGIN + GUTTER)).max(NARROWEST);
    let frame = Frame { right: MARGIN + GUTTER - low.u, down: MARGIN + TITLE + up };
    let below = frame.down - bottom + GUTTER;
    let notes = notes(template, width);
    let legend = legend(template, (MARGIN, below + bars::HEIGHT + 6.0), width);
    let notes_at = below + bars::HEIGHT + 6.0 + legend.1 + 6.0;
    #[allow(clippy::cast_precision_loss, reason = "lines of notes")]
    let height = notes_at + notes.len() as f64 * NOTE.1 + MARGIN;
    let title = format!("Template 1:1 of {}", template.top.title);
    let drawn = html! {
        (PreEscaped("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"))
        svg xmlns="http://www.w3.org/2000/svg" width=(format!("{}mm", number(width))) height=(format!("{}mm", number(height)))
            viewBox=(format!("0 0 {} {}", number(width), number(height))) {
            title { (title) }
            desc { (view.words()) " " (text::datum()) }
            defs { (drawing::hatch()) }
            rect width="100%" height="100%" fill="#fff" {}
            text x=(number(MARGIN)) y=(number(MARGIN + 6.0)) font-family="sans-serif" font-size="8" { (title) }
            @if template.not_for_building().is_some() {
                text id="not-for-building" x=(number(MARGIN)) y=(number(MARGIN + 13.0)) font-family="sans-serif" font-size="6" font-weight="bold" { (NOT_FOR_BUILDING) }
            }
            (drawing::layers(template, frame))
            (drawing::datum(view, frame))
            (running::drawn(template, frame, [low.u, bottom]))
            (sizes(template, frame, [low.u, bottom]))
            (bow(template, frame, (low.u, high.u), f64::midpoint(bottom, up)))
            (bars::bars(MARGIN, below))
            (legend.0)
            g id="notes" font-family="sans-serif" font-size=(NOTE.0) {
                @for (line, row) in notes.iter().zip(0_u16..) {
                    text x=(number(MARGIN)) y=(number(notes_at + f64::from(row) * NOTE.1)) { (line) }
                }
            }
        }
    };
    drawing::printable(drawn)
}

/// Sizes over all, below the drawing and on its left.
fn sizes(template: &Template<'_>, frame: Frame, [left, bottom]: [f64; 2]) -> Markup {
    let items = template.plan.layer(LayerKind::Dimensions).map_or(&[][..], |layer| &layer.items);
    let all = items.iter().flat_map(|item| &item.shapes).filter_map(|shape| match shape {
        Shape::Dimension(dimension) => Some(dimension),
        _ => None,
    });
    html! {
        g id="layer-dimensions" fill="none" stroke="#000" stroke-width="0.2" font-family="sans-serif" {
            @for dimension in all { (size(template, frame, [left, bottom], dimension)) }
        }
    }
}

fn size(template: &Template<'_>, frame: Frame, [left, bottom]: [f64; 2], dimension: &Dimension) -> Markup {
    const OFF: f64 = 34.0;
    let place = |at: Point| {
        let at = template.view.place(at);
        (frame.x(at), frame.y(at))
    };
    let ((x0, y0), (x1, y1)) = (place(dimension.from), place(dimension.to));
    let words = both(dimension.size, template.top.report);
    // The line, its two ends, and ticks at them.
    let (line, at, turn) = match dimension.axis {
        Axis::X => {
            let (edge, y) = (frame.down - bottom + OFF - 6.0, frame.down - bottom + OFF);
            let data = [x0, x1].map(|x| {
                format!(
                    "M{0} {1} V{2} M{3} {4} l3 -3",
                    number(x),
                    number(edge),
                    number(y + 3.0),
                    number(x - 1.5),
                    number(y + 1.5)
                )
            });
            (
                format!("M{} {} H{} {}", number(x0), number(y), number(x1), data.join(" ")),
                (f64::midpoint(x0, x1), y - 1.5),
                0.0,
            )
        }
        Axis::Y => {
            let (edge, x) = (frame.right + left - OFF + 6.0, frame.right + left - OFF);
            let data = [y0, y1].map(|y| {
                format!(
                    "M{0} {1} H{2} M{3} {4} l3 -3",
                    number(edge),
                    number(y),
                    number(x - 3.0),
                    number(x - 1.5),
                    number(y + 1.5)
                )
            });
            (
                format!("M{} {} V{} {}", number(x), number(y0), number(y1), data.join(" ")),
                (x - 1.5, f64::midpoint(y0, y1)),
                -90.0,
            )
        }
    };
    html! {
        path d=(line) {}
        text x=(number(at.0)) y=(number(at.1)) font-size="4.5" fill="#000" stroke="none" text-anchor="middle"
            transform=(format!("rotate({} {} {})", number(turn), number(at.0), number(at.1))) { (words) }
    }
}

/// An arrow to the bow.
fn bow(template: &Template<'_>, frame: Frame, (left, right): (f64, f64), middle: f64) -> Markup {
    let (x, way) = match template.view.bow {
        Forward::Left => (frame.right + left - 45.0, -1.0),
        Forward::Right => (frame.right + right + 6.0, 1.0),
    };
    let y = frame.down - middle;
    let (x, tip) = if way < 0.0 { (x, x - 13.0) } else { (x, x + 13.0) };
    html! {
        g id="bow" {
            path d=(format!("M{} {} L{} {} L{} {} Z", number(x), number(y - 8.0), number(tip), number(y), number(x), number(y + 8.0))) {}
            text x=(number(f64::midpoint(x, tip))) y=(number(y + 14.0)) font-family="sans-serif" font-size="4.5" text-anchor="middle" { "bow" }
        }
    }
}

/// A sample of every line with what it stands for, from its upper left; and how high it is.
pub(super) fn legend(template: &Template<'_>, (x, y): (f64, f64), width: f64) -> (Markup, f64) {
    const COLUMN: f64 = 92.0;
    const ROW: f64 = 6.0;
    let kinds: Vec<LayerKind> =
        template.plan.layers.iter().map(|layer| layer.kind).filter(|kind| *kind != LayerKind::Dimensions).collect();
    let columns = ((width - 2.0 * MARGIN) / COLUMN).floor().max(1.0);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a handful of columns")]
    let columns = columns.min(6.0) as usize;
    let rows = kinds.len().div_ceil(columns);
    let place = |index: usize| {
        let cell = |number: usize| f64::from(u16::try_from(number).unwrap_or(u16::MAX));
        (x + cell(index / rows) * COLUMN, y + cell(index % rows) * ROW)
    };
    let drawn = html! {
        g id="key" font-family="sans-serif" font-size=(NOTE.0) {
            @for (index, kind) in kinds.iter().enumerate() {
                @let (x, y) = place(index);
                @let stroke = style::of(*kind, LineKind::Edge);
                @if *kind == LayerKind::NoDrill {
                    rect x=(number(x)) y=(number(y - 2.2)) width="22" height="4.4" fill="url(#hatch)" stroke="#000"
                        stroke-width=(stroke.width) stroke-dasharray=(stroke.dashes) {}
                } @else if *kind == LayerKind::Fixings {
                    path d=(format!("M{} {} h12 m-6 -3 v6", number(x + 5.0), number(y))) stroke="#000" stroke-width="0.2" {}
                    circle cx=(number(x + 11.0)) cy=(number(y)) r="2" fill="none" stroke="#000" stroke-width="0.2" {}
                } @else {
                    path d=(format!("M{} {} h22", number(x), number(y))) stroke="#000" fill="none" stroke-width=(stroke.width)
                        stroke-dasharray=[(!stroke.dashes.is_empty()).then_some(stroke.dashes)] {}
                }
                text x=(number(x + 25.0)) y=(number(y + 1.1)) { (kind.words()) }
            }
        }
    };
    let high = f64::from(u16::try_from(rows).unwrap_or(u16::MAX)) * ROW;
    (drawn, high)
}

/// Notes below the drawing, wrapped to the sheet.
fn notes(template: &Template<'_>, width: f64) -> Vec<String> {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "letters on a sheet")]
    let letters = ((width - 2.0 * MARGIN) / (NOTE.0 * 0.55)).clamp(40.0, 150.0) as usize;
    let mut page = crate::report::page::Page::new(letters);
    page.paragraph("", &template.view.words());
    page.paragraph("", text::datum());
    for group in groups(template) {
        page.paragraph(
            "",
            &format!(
                "Holes {}: {}; {}.",
                group.numbers(),
                group.heading(),
                group.steps(template.top.report).join("; ")
            ),
        );
    }
    for caution in cautions(template) {
        page.paragraph("", &caution);
    }
    page.done().lines().map(str::to_owned).collect()
}
