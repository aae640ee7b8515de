//! The first page: how the tiles go together, which there are, the holes, what to mind.

use maud::{Markup, html};

use super::{
    DRAWING,
    grid::{Grid, OVERLAP},
};
use crate::{
    plan::{LayerKind, Shape},
    report::template::{
        Template, bars,
        cautions::cautions,
        drawing::{number, path_data},
        holes::{Group, groups},
        svg::legend,
        text, words,
    },
};

pub(super) fn index(template: &Template<'_>, grid: &Grid, title: &str) -> Markup {
    let printed = grid.tiles.iter().filter(|tile| tile.printed).count();
    let left_out = grid.tiles.len() - printed;
    let inner = grid.sheet[0] - 24.0;
    let (key, high) = legend(template, (2.0, 4.0), inner + 24.0);
    html! {
        section class="index" {
            h1 { (title) }
            @if let Some(warning) = template.not_for_building() { p { strong { (warning) } } }
            p { (template.view.words()) " " (text::datum()) }
            figure {
                svg role="img" xmlns="http://www.w3.org/2000/svg" width="112mm" height="13mm" viewBox="0 0 112 13" {
                    title { "Scale bars of 100 mm and 4 in" }
                    (bars::bars(0.0, 0.0))
                }
            }
            h2 { "How to put it together" }
            ol {
                li { "Print at 100 %, “actual size”, never “fit to page”, and measure the bars: 100 mm and 4 in, on every page." }
                li { "Each page carries its name, a letter for the row and a number for the column, and those of its neighbours." }
                li {
                    "Neighbours share " (format!("{OVERLAP:.0}")) " mm. Cut one of two along its dotted line, lay it on the other so \
                     that the ringed crosses cover each other, and tape it. Each cross has its place from the datum, so a page \
                     can also be laid on alone."
                }
            }
            figure { (overview(template, grid)) }
            p {
                (printed) " of " (grid.tiles.len()) " tiles are printed"
                @if left_out > 0 { "; those struck through show nothing that is needed and are left out" }
                "."
            }
            figure {
                svg role="img" xmlns="http://www.w3.org/2000/svg" width={ (number(inner)) "mm" } height={ (number(high + 4.0)) "mm" }
                    viewBox={ "0 0 " (number(inner)) " " (number(high + 4.0)) } {
                    title { "What the lines mean" }
                    (key)
                }
            }
            h2 { "Mind" }
            ul { @for caution in cautions(template) { li { (caution) } } }
            h2 { "Holes" }
            @let groups = groups(template);
            @if groups.is_empty() { p { "None, since the file gives no fixings." } }
            @for group in &groups { (holes(template, group)) }
        }
    }
}

/// The outline with the tiles over it.
fn overview(template: &Template<'_>, grid: &Grid) -> Markup {
    let [low, first] = [grid.tiles.last(), grid.tiles.first()].map(|tile| tile.map_or([0.0; 2], |tile| tile.low));
    let (left, bottom, up) = (first[0], low[1], first[1] + grid.inner[1]);
    let (wide, high) = (low[0] + grid.inner[0] - left, up - bottom);
    // On a page, with words beside it.
    let scale = ((grid.sheet[0] - 24.0) / wide).min((grid.sheet[1] - 24.0) * 0.45 / high);
    let thin = 0.15 / scale;
    let lines = template.plan.layers.iter().filter(|layer| {
        matches!(layer.kind, LayerKind::Outline | LayerKind::Moulded | LayerKind::Openings | LayerKind::Footings)
    });
    html! {
        svg role="img" xmlns="http://www.w3.org/2000/svg" width={ (number(wide * scale)) "mm" } height={ (number(high * scale)) "mm" }
            viewBox={ (number(left)) " " (number(-up)) " " (number(wide)) " " (number(high)) } {
            title { "Which tile shows which part" }
            g fill="none" stroke="#000" stroke-width=(number(2.0 * thin)) {
                @for shape in lines.flat_map(|layer| &layer.items).flat_map(|item| &item.shapes) {
                    @match shape {
                        Shape::Line(line) => path d=(path_data(line, template.view, DRAWING)) {},
                        Shape::Circle { centre, diameter } => {
                            @let at = template.view.place(*centre);
                            circle cx=(number(at.u)) cy=(number(-at.v)) r=(number(diameter.get::<uom::si::length::millimeter>() / 2.0)) {}
                        },
                        _ => {},
                    }
                }
            }
            g {
                @for mark in &template.plan.fixings {
                    @let at = template.view.place(mark.at);
                    circle cx=(number(at.u)) cy=(number(-at.v)) r=(number(0.6 / scale)) {}
                }
            }
            g fill="none" stroke="#000" stroke-width=(number(thin)) font-family="sans-serif" font-size=(number(2.8 / scale)) text-anchor="middle" {
                @for tile in &grid.tiles {
                    @let (x, y) = (tile.low[0] + OVERLAP / 2.0, -(tile.low[1] + grid.inner[1] - OVERLAP / 2.0));
                    @let (w, h) = (grid.inner[0] - OVERLAP, grid.inner[1] - OVERLAP);
                    rect x=(number(x)) y=(number(y)) width=(number(w)) height=(number(h)) stroke=[(!tile.printed).then_some("#888")] {}
                    @if tile.printed {
                        text x=(number(x + w / 2.0)) y=(number(y + h / 2.0 + 1.0 / scale)) fill="#000" stroke="#fff" stroke-width=(number(6.0 * thin)) paint-order="stroke" { (tile.name()) }
                    } @else {
                        path d={ "M" (number(x)) " " (number(y + h)) " l" (number(w)) " " (number(-h)) } stroke="#888" {}
                    }
                }
            }
        }
    }
}

fn holes(template: &Template<'_>, group: &Group<'_>) -> Markup {
    let system = template.top.report;
    html! {
        p { strong { (group.heading()) } }
        ul { @for step in group.steps(template.top.report) { li { (step) } } }
        table {
            thead { tr { @for head in ["no", "x", "y", "drill", "stop", "tap"] { th scope="col" { (head) } } } }
            tbody {
                @for mark in group.marks {
                    tr {
                        td { (mark.number) }
                        td { (words::place(mark.at.x, system)) }
                        td { (words::place(mark.at.y, system)) }
                        td { (words::sizes(mark)) }
                        td { (words::stop(mark)) }
                        td { (mark.tap.as_deref().unwrap_or("none")) @if mark.in_band.is_some() { " — NEAR A CONDUIT" } }
                    }
                }
            }
        }
    }
}
