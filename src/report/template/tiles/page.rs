//! One tile on its sheet: its part of the drawing, marks to join it by, scale bars, its name.

use maud::{Markup, html};

use super::grid::{FOOT, Grid, MARGIN, OVERLAP, Tile};
use crate::{
    report::{
        crossing::crosses,
        template::{
            Template, bars,
            drawing::number,
            holes::listed,
            labels::{LETTER, Placed},
            strokes,
            view::OnPaper,
        },
    },
    units::System,
};

/// Height of the letters beside the marks at the corners, and from line to line.
const SMALL: (f64, f64) = (2.2, 2.6);

/// What is drawn, for words to keep off.
pub(super) struct Drawn {
    labels: Vec<Placed>,
    /// Holes with half of their sizes.
    holes: Vec<(OnPaper, f64)>,
    lines: Vec<[OnPaper; 2]>,
}

impl Drawn {
    pub(super) fn of(template: &Template<'_>) -> Self {
        let holes = template.plan.fixings.iter().map(|mark| {
            let wide = mark.widest().unwrap_or_default().get::<uom::si::length::millimeter>();
            (template.view.place(mark.at), wide / 2.0)
        });
        Self { labels: template.labels(), holes: holes.collect(), lines: strokes::of_lines(template) }
    }

    /// Whether a label or a hole lies on a rectangle about a place, with half of its sizes.
    fn covers(&self, at: OnPaper, half: [f64; 2]) -> bool {
        let on =
            |hole: OnPaper, wide: f64| (hole.u - at.u).abs() < half[0] + wide && (hole.v - at.v).abs() < half[1] + wide;
        self.labels.iter().any(|label| label.meets(at, half)) || self.holes.iter().any(|(hole, wide)| on(*hole, *wide))
    }

    /// Whether a line runs through it.
    fn crosses(&self, at: OnPaper, half: [f64; 2]) -> bool {
        let (low, size) = ([at.u - half[0], at.v - half[1]], half.map(|half| 2.0 * half));
        self.lines.iter().any(|line| crosses(line.map(OnPaper::pair), low, size))
    }
}

pub(super) fn page(template: &Template<'_>, grid: &Grid, tile: &Tile, drawn: &Drawn) -> Markup {
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
                (joints(template, grid, tile, (right, down), drawn))
                (bars::bars(MARGIN, height - MARGIN - FOOT + 4.0))
                (foot(template, grid, tile))
            }
        }
    }
}

/// Lines where neighbours are cut and laid together, and a mark at each corner with its place.
fn joints(template: &Template<'_>, grid: &Grid, tile: &Tile, (right, down): (f64, f64), drawn: &Drawn) -> Markup {
    let half = OVERLAP / 2.0;
    let [left, bottom] = [tile.low[0] + half, tile.low[1] + half];
    let [far, up] = [tile.low[0] + grid.inner[0] - half, tile.low[1] + grid.inner[1] - half];
    // With the sides on which the words stand, towards the middle of the tile.
    let corners =
        [(left, bottom, [1.0, 1.0]), (far, bottom, [-1.0, 1.0]), (far, up, [-1.0, -1.0]), (left, up, [1.0, -1.0])];
    html! {
        g fill="none" stroke="#000" stroke-width="0.15" font-family="sans-serif" font-size=(SMALL.0) {
            rect x=(number(right + left)) y=(number(down - up)) width=(number(far - left)) height=(number(up - bottom))
                stroke-dasharray="0.3 2.7" {}
            @for (u, v, towards) in corners {
                @let (x, y) = (right + u, down - v);
                @let words = place_words(template, u, v);
                @let first = first_line(OnPaper { u, v }, towards, &words, drawn);
                path d={ "M" (number(x - 4.0)) " " (number(y)) " h8 M" (number(x)) " " (number(y - 4.0)) " v8" } {}
                circle cx=(number(x)) cy=(number(y)) r="1.5" {}
                @for (line, row) in words.iter().zip(0_u8..) {
                    // Away from the cross, one line after the other.
                    text x=(number(x + 5.0 * towards[0])) y=(number(y - first - f64::from(row) * SMALL.1 * towards[1]))
                        text-anchor=(if towards[0] > 0.0 { "start" } else { "end" }) fill="#000" stroke="#fff" stroke-width="0.7"
                        paint-order="stroke" { (line) }
                }
            }
        }
    }
}

/// A place from the datum, in inches too where the shop measures in these.
fn place_words(template: &Template<'_>, u: f64, v: f64) -> Vec<String> {
    let v = if template.view.turned_over() { -v } else { v };
    let mut words = vec![format!("x {u:.1}, y {v:.1} mm")];
    if template.top.report == System::Us {
        words.push(format!("x {:.2}, y {:.2} in", u / 25.4, v / 25.4));
    }
    words
}

/// How far above a mark the first line of its words stands: near to it, farther into the tile where a label or a hole of the drawing
/// lies there, or a line runs and there is room beside it.
fn first_line(mark: OnPaper, [across, upwards]: [f64; 2], words: &[String], drawn: &Drawn) -> f64 {
    #[allow(clippy::cast_precision_loss, reason = "letters of a place")]
    let (letters, lines) =
        (words.iter().map(|line| line.chars().count()).max().unwrap_or(0) as f64, words.len() as f64);
    let half = [letters * LETTER * SMALL.0 / 2.0, lines * SMALL.1 / 2.0];
    let near = if upwards > 0.0 { 1.0 } else { -3.0 };
    let middle = |off: f64| {
        // Letters stand on their line.
        let first = near + off * upwards + SMALL.0 / 2.0;
        let middle = first + (lines - 1.0) / 2.0 * SMALL.1 * upwards;
        OnPaper { u: mark.u + across * (5.0 + half[0]), v: mark.v + middle }
    };
    let free = || (0..12_u8).map(|step| 2.0 * f64::from(step)).filter(|off| !drawn.covers(middle(*off), half));
    let whole = free().find(|off| !drawn.crosses(middle(*off), half));
    let off = whole.or_else(|| free().next()).unwrap_or(0.0);
    near + off * upwards
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

#[cfg(test)]
mod tests {
    use super::{Drawn, OnPaper, Placed, first_line};
    use crate::plan::LayerKind;

    #[test]
    fn the_place_of_a_mark_keeps_off_labels_of_the_drawing() {
        let mark = OnPaper { u: 100.0, v: 50.0 };
        let words = vec!["x 100.0, y 50.0 mm".to_owned(), "x 3.94, y 1.97 in".to_owned()];
        let label = |u: f64, v: f64| Placed {
            layer: LayerKind::Fixings,
            lines: vec!["4: drill 9.0 mm".to_owned()],
            at: OnPaper { u, v },
            degrees: 0.0,
            size: 2.8,
        };
        // Nothing there: right above or below the line.
        let near = |towards, labels: &[Placed]| {
            let drawn = Drawn { labels: labels.to_vec(), holes: Vec::new(), lines: Vec::new() };
            first_line(mark, towards, &words, &drawn)
        };
        for (towards, free) in [([1.0, 1.0], 1.0), ([-1.0, 1.0], 1.0), ([-1.0, -1.0], -3.0), ([1.0, -1.0], -3.0)] {
            assert!((near(towards, &[]) - free).abs() < 1e-9, "{towards:?}");
            let [across, upwards] = towards;
            // A label right where the words would stand: they go on into the tile, clear of its 3.5 mm.
            let in_the_way = label(mark.u + across * 15.0, mark.v + upwards * 3.0);
            let moved = near(towards, &[in_the_way]);
            assert!((moved - free) * upwards >= 3.5, "{towards:?} {moved}");
            // One across the joint or beside it is none.
            let beyond = [label(mark.u + across * 15.0, mark.v - upwards * 4.0), label(mark.u - across * 20.0, mark.v)];
            assert!((near(towards, &beyond) - free).abs() < 1e-9, "{towards:?}");
            let drawn = |holes: &[(OnPaper, f64)], lines: &[[OnPaper; 2]]| Drawn {
                labels: Vec::new(),
                holes: holes.to_vec(),
                lines: lines.to_vec(),
            };
            // A hole of 11 mm whose rim reaches there: beyond its upper rim, 5.5 mm from its middle.
            let at = |v: f64| OnPaper { u: mark.u + across * 6.0, v };
            let hole = drawn(&[(at(mark.v), 5.5)], &[]);
            let moved = first_line(mark, towards, &words, &hole);
            assert!((if upwards > 0.0 { moved } else { -moved - 2.2 }) >= 5.4, "{towards:?} {moved}");
            // A line: beside it; where lines run everywhere, right at the mark.
            let line = |v: f64| [OnPaper { u: 0.0, v }, OnPaper { u: 200.0, v }];
            let moved = first_line(mark, towards, &words, &drawn(&[], &[line(mark.v + upwards * 3.0)]));
            assert!((moved - free) * upwards >= 1.9, "{towards:?} {moved}");
            let all: Vec<[OnPaper; 2]> = (0..100).map(|v| line(f64::from(v))).collect();
            let moved = first_line(mark, towards, &words, &drawn(&[], &all));
            assert!((moved - free).abs() < 1e-9, "{towards:?} {moved}");
        }
    }
}
