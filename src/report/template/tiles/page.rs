//! One tile on its sheet: its part of the drawing, marks to join it by, scale bars, its name.

use maud::{Markup, html};

use super::grid::{FOOT, Grid, MARGIN, OVERLAP, Tile};
use crate::{
    report::template::{Template, bars, drawing::number, holes::listed},
    units::System,
};

pub(super) fn page(template: &Template<'_>, grid: &Grid, tile: &Tile) -> Markup {
    let ([width, height], [wide, high], name) = (grid.sheet, grid.inner, tile.name());
    let clip = format!("clip-{name}");
    // From the datum to the upper left of the sheet.
    let (right, down) = (MARGIN - tile.low[0], MARGIN + tile.low[1] + high);
    html! {
        section class="tile" id=(name) {
            svg xmlns="http://www.w3.org/2000/svg" role="img" width={ (number(width)) "mm" } height={ (number(height)) "mm" }
                viewBox={ "0 0 " (number(width)) " " (number(height)) } {
                title { "Tile " (name) }
                clipPath id=(clip) { rect x=(MARGIN) y=(MARGIN) width=(number(wide)) height=(number(high)) {} }
                g clip-path={ "url(#" (clip) ")" } {
                    use href="#drawing" transform={ "translate(" (number(right)) " " (number(down)) ")" } {}
                }
                (joints(template, grid, tile, (right, down)))
                (bars::bars(MARGIN, height - MARGIN - FOOT + 4.0))
                (foot(template, grid, tile))
            }
        }
    }
}

/// Lines where neighbours are cut and laid together, and a mark at each corner with its place.
fn joints(template: &Template<'_>, grid: &Grid, tile: &Tile, (right, down): (f64, f64)) -> Markup {
    let half = OVERLAP / 2.0;
    let [left, bottom] = [tile.low[0] + half, tile.low[1] + half];
    let [far, up] = [tile.low[0] + grid.inner[0] - half, tile.low[1] + grid.inner[1] - half];
    let turned = template.view.turned_over();
    // With the side on which the words stand, towards the middle of the tile.
    let (start, end) = (("start", 5.0), ("end", -5.0));
    let corners = [(left, bottom, start, -1.0), (far, bottom, end, -1.0), (far, up, end, 3.0), (left, up, start, 3.0)];
    html! {
        g fill="none" stroke="#000" stroke-width="0.15" font-family="sans-serif" font-size="2.2" {
            rect x=(number(right + left)) y=(number(down - up)) width=(number(far - left)) height=(number(up - bottom))
                stroke-dasharray="0.3 2.7" {}
            @for (u, v, (anchor, off), lower) in corners {
                @let (x, y) = (right + u, down - v);
                path d={ "M" (number(x - 4.0)) " " (number(y)) " h8 M" (number(x)) " " (number(y - 4.0)) " v8" } {}
                circle cx=(number(x)) cy=(number(y)) r="1.5" {}
                text x=(number(x + off)) y=(number(y + lower)) text-anchor=(anchor) fill="#000" stroke="#fff" stroke-width="0.7"
                    paint-order="stroke" {
                    "x " (format!("{u:.1}")) ", y " (format!("{:.1}", if turned { -v } else { v })) " mm"
                }
                @if template.top.report == System::Us {
                    // Away from the cross, on the side where the other line leaves room.
                    @let next = if lower < 0.0 { lower - 2.6 } else { lower + 2.6 };
                    text x=(number(x + off)) y=(number(y + next)) text-anchor=(anchor) fill="#000" stroke="#fff" stroke-width="0.7"
                        paint-order="stroke" {
                        "x " (format!("{:.2}", u / 25.4)) ", y " (format!("{:.2}", (if turned { -v } else { v }) / 25.4)) " in"
                    }
                }
            }
        }
    }
}

/// The name of the tile, its neighbours, its holes.
fn foot(template: &Template<'_>, grid: &Grid, tile: &Tile) -> Markup {
    let [width, height] = grid.sheet;
    let beside = [
        ("left", grid.printed(Some(tile.row), tile.column.checked_sub(1))),
        ("right", grid.printed(Some(tile.row), Some(tile.column + 1))),
        ("above", grid.printed(tile.row.checked_sub(1), Some(tile.column))),
        ("below", grid.printed(Some(tile.row + 1), Some(tile.column))),
    ];
    let beside: Vec<String> =
        beside.into_iter().filter_map(|(where_, other)| Some(format!("{where_} {}", other?.name()))).collect();
    let holes = if tile.holes.is_empty() { "no holes".to_owned() } else { format!("holes {}", listed(&tile.holes)) };
    let (right, top) = (width - MARGIN, height - MARGIN - FOOT + 4.0);
    html! {
        g font-family="sans-serif" text-anchor="end" font-size="2.6" {
            text x=(number(right)) y=(number(top + 5.5)) font-size="8" font-weight="bold" { (tile.name()) }
            text x=(number(right - 20.0)) y=(number(top + 2.5)) { (beside.join(", ")) }
            text x=(number(right - 20.0)) y=(number(top + 6.0)) { (holes) }
            text x=(number(right)) y=(number(top + 9.8)) {
                @if template.not_for_building().is_some() { tspan font-weight="bold" { "NOT FOR BUILDING " } }
                (shortened(&template.top.title, 48))
            }
            text x=(number(right)) y=(number(top + 13.2)) {
                (template.view.face.words())
                ", bow to the " (template.view.bow.word())
            }
        }
    }
}

/// A title that keeps to its room.
fn shortened(title: &str, letters: usize) -> String {
    if title.chars().count() <= letters {
        return title.to_owned();
    }
    title.chars().take(letters - 1).chain(['…']).collect()
}
