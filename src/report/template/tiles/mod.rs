//! The drawing in pages for a printer at home: one HTML file, a page of instructions, then the tiles.

mod grid;
mod index;
mod page;

use maud::{DOCTYPE, PreEscaped, html};

use self::{grid::Grid, page::Drawn};
use super::{
    Template,
    drawing::{self, Frame},
};
use crate::plan::Plan;

/// Paper that printers at home take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 mm by 297 mm.
    A4,
    /// 8.5 in by 11 in.
    Letter,
}

impl Paper {
    /// Width and height when it stands, in millimetres.
    const fn size(self) -> [f64; 2] {
        match self {
            Self::A4 => [210.0, 297.0],
            Self::Letter => [215.9, 279.4],
        }
    }

    /// Its name.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "Letter",
        }
    }
}

/// The datum at the origin: each page moves the drawing to where it shows its part.
const DRAWING: Frame = Frame { right: 0.0, down: 0.0 };

pub(super) fn count(template: &Template<'_>, paper: Paper, holes_only: bool) -> usize {
    Grid::of(template, paper, holes_only).tiles.iter().filter(|tile| tile.printed).count()
}

pub(super) fn html(template: &Template<'_>, paper: Paper, holes_only: bool) -> String {
    let grid = Grid::of(template, paper, holes_only);
    let drawn_there = Drawn::of(template);
    let [width, height] = grid.sheet;
    let style = format!(
        "@page {{ size: {width}mm {height}mm; margin: 0 }}\n\
         @page index {{ size: {width}mm {height}mm; margin: 12mm }}\n\
         html {{ font: 11pt/1.4 system-ui, sans-serif; color: #000; background: #fff }}\n\
         body {{ margin: 0 }}\n\
         .index {{ page: index; max-width: {inner}mm; break-after: page }}\n\
         .tile {{ width: {width}mm; height: {tile}mm; overflow: hidden; break-after: page }}\n\
         .tile:last-child {{ break-after: auto }}\n\
         .tile svg {{ display: block }}\n\
         h1 {{ font-size: 16pt; margin: 0 0 2mm }} h2 {{ font-size: 12pt; margin: 5mm 0 1mm; break-after: avoid }}\n\
         p, ul, ol {{ margin: 1mm 0 2mm }} li {{ margin: .6mm 0 }}\n\
         table {{ border-collapse: collapse; font-variant-numeric: tabular-nums; margin: 1mm 0 3mm }}\n\
         th, td {{ text-align: right; padding: .4mm 3mm .4mm 0 }} td:last-child, th:last-child {{ text-align: left }}\n\
         tr, figure {{ break-inside: avoid }} figure {{ margin: 3mm 0 }} figure svg {{ display: block }}\n\
         @media screen {{ body {{ padding: 4mm }} .tile {{ border: 1px solid #999; margin-top: 6mm }} }}\n",
        inner = width - 24.0,
        // A hair less than the sheet, so that rounding never makes a second one.
        tile = height - 0.2,
    );
    let title = format!("Template 1:1 of {}", template.top.title);
    let drawn = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) }
                style { (PreEscaped(style)) }
            }
            body {
                svg width="0" height="0" style="position:absolute" aria-hidden="true" {
                    defs {
                        (drawing::hatch())
                        g id="drawing" {
                            (drawing::layers(template, DRAWING))
                            (drawing::datum(template.view, DRAWING))
                        }
                    }
                }
                (index::index(template, &grid, &title))
                @for tile in grid.tiles.iter().filter(|tile| tile.printed) {
                    (page::page(template, &grid, tile, &drawn_there))
                }
            }
        }
    };
    drawing::printable(drawn)
}

/// Corners of what has to be on the tiles, from the datum to the right and upwards.
fn reach(template: &Template<'_>) -> [[f64; 2]; 2] {
    /// Room for a label or for the mark of a hole at the edge.
    const ROOM: f64 = 10.0;
    let plan: &Plan = template.plan();
    let [one, other] = plan.bounds().map(|corner| template.view.place(corner));
    let (low, high) = (one.v.min(other.v), one.v.max(other.v));
    [[one.u - ROOM, low - ROOM], [other.u + ROOM, high + ROOM]]
}
