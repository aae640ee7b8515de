//! How the drawing is cut into tiles, and which of them show something.

use super::{Paper, reach};
use crate::report::{
    crossing::crosses,
    template::{Template, strokes, view::OnPaper},
};

/// White all round, which a printer cannot print on.
pub(super) const MARGIN: f64 = 10.0;
/// Below a tile: scale bars and its name.
pub(super) const FOOT: f64 = 18.0;
/// What neighbours show both.
pub(super) const OVERLAP: f64 = 10.0;
/// Shifts that are tried along and across.
const SHIFTS: u8 = 12;
/// What of the paper that is left over may lie before what is drawn.
const BEFORE: [f64; 3] = [0.5, 0.2, 0.8];
/// So far off a hole the ringed cross at a corner of a page cannot be taken for that of the hole.
const CLEAR: f64 = 15.0;

/// Where tiles begin, along and across.
#[derive(Clone, Copy)]
struct Begins {
    /// By how much of a tile they are shifted, which takes one more.
    shifted: [f64; 2],
    /// Which share of what is left over lies before what is drawn.
    before: [f64; 2],
}

/// One tile.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Tile {
    /// From the top.
    pub(super) row: usize,
    /// From the left.
    pub(super) column: usize,
    /// Its left and its lower edge, from the datum.
    pub(super) low: [f64; 2],
    /// Numbers of the holes whose middle it shows.
    pub(super) holes: Vec<usize>,
    /// Whether it is printed.
    pub(super) printed: bool,
}

/// The tiles, row by row.
#[derive(Debug)]
pub(super) struct Grid {
    /// Width and height of the paper as it is printed.
    pub(super) sheet: [f64; 2],
    /// What one shows of the drawing.
    pub(super) inner: [f64; 2],
    pub(super) tiles: Vec<Tile>,
}

impl Grid {
    /// Standing or lying, and with holes alone shifted, whichever takes the fewest pages; of those the one that keeps holes
    /// farthest from where pages are joined, or of the whole drawing the first that keeps them clear of the corners of pages.
    pub(super) fn of(template: &Template<'_>, paper: Paper, holes_only: bool) -> Self {
        let [width, height] = paper.size();
        let strokes = if holes_only { Vec::new() } else { strokes(template) };
        let usual = Begins { shifted: [0.0; 2], before: [BEFORE[0]; 2] };
        let begins: Vec<Begins> = if holes_only {
            (0..SHIFTS)
                .flat_map(|right| (0..SHIFTS).map(move |up| [right, up].map(|k| f64::from(k) / f64::from(SHIFTS))))
                .map(|shifted| Begins { shifted, ..usual })
                .collect()
        } else if template.plan.fixings.is_empty() {
            vec![usual]
        } else {
            let each = BEFORE.into_iter().flat_map(|right| BEFORE.map(|up| [right, up]));
            each.map(|before| Begins { before, ..usual }).collect()
        };
        let grids = [[width, height], [height, width]].into_iter().flat_map(|sheet| {
            let strokes = &strokes;
            begins.iter().map(move |begins| Self::on(template, sheet, *begins, (strokes, holes_only)))
        });
        let ranked = grids.map(|grid| {
            let pages = grid.tiles.iter().filter(|tile| tile.printed).count();
            let clear =
                if holes_only { grid.nearest_joint(template) } else { grid.nearest_corner(template).min(CLEAR) };
            (pages, clear, grid)
        });
        // The first of those that are as good.
        let best = ranked.reduce(|best, next| {
            let better = next.0 < best.0 || next.0 == best.0 && next.1 > best.1 + 1e-9;
            if better { next } else { best }
        });
        best.map_or_else(|| Self::on(template, [width, height], usual, (&strokes, holes_only)), |(.., grid)| grid)
    }

    /// Tiles for a sheet.
    fn on(
        template: &Template<'_>,
        sheet: [f64; 2],
        Begins { shifted, before }: Begins,
        (strokes, holes_only): (&[[OnPaper; 2]], bool),
    ) -> Self {
        let inner = [sheet[0] - 2.0 * MARGIN, sheet[1] - 2.0 * MARGIN - FOOT];
        let [low, high] = reach(template);
        let counts = [0, 1].map(|k| {
            let step = inner[k] - OVERLAP;
            let tiles = ((high[k] - low[k] - OVERLAP) / step).ceil().max(1.0);
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a top is 20 m long at most")]
            let count = tiles as usize;
            // What is left over lies on both sides; what is shifted off takes a tile more.
            let spare = tiles * step + OVERLAP - (high[k] - low[k]);
            (count + usize::from(shifted[k] > 0.0), low[k] - spare * before[k] - shifted[k] * step)
        });
        let [(columns, left), (rows, bottom)] = counts;
        let step = |index: usize, k: usize| f64::from(u16::try_from(index).unwrap_or(u16::MAX)) * (inner[k] - OVERLAP);
        let mut tiles = Vec::with_capacity(rows * columns);
        for row in 0..rows {
            for column in 0..columns {
                let low = [left + step(column, 0), bottom + step(rows - 1 - row, 1)];
                // Each hole on the one tile that keeps it when the pages are cut.
                let keeps = |at: OnPaper| {
                    [at.u, at.v].into_iter().enumerate().all(|(k, at)| {
                        let from = low[k] + OVERLAP / 2.0;
                        (from..from + inner[k] - OVERLAP).contains(&at)
                    })
                };
                let holes = template.plan.fixings.iter().filter(|mark| keeps(template.view.place(mark.at)));
                let holes: Vec<usize> = holes.map(|mark| mark.number).collect();
                let shows = || strokes.iter().any(|ends| crosses(ends.map(OnPaper::pair), low, inner));
                let printed = if holes_only { !holes.is_empty() } else { shows() };
                tiles.push(Tile { row, column, low, holes, printed });
            }
        }
        Self { sheet, inner, tiles }
    }

    /// The least distance of a hole from the line where its tile is cut.
    fn nearest_joint(&self, template: &Template<'_>) -> f64 {
        let of = |tile: &Tile, number: &usize| {
            let mark = template.plan.fixings.get(number - 1)?;
            let at = template.view.place(mark.at);
            let [from_left, from_below] = [at.u - tile.low[0] - OVERLAP / 2.0, at.v - tile.low[1] - OVERLAP / 2.0];
            let [wide, high] = self.inner.map(|size| size - OVERLAP);
            Some(from_left.min(from_below).min(wide - from_left).min(high - from_below))
        };
        let all = self.tiles.iter().flat_map(|tile| tile.holes.iter().filter_map(move |number| of(tile, number)));
        all.fold(f64::INFINITY, f64::min)
    }

    /// The least distance of a hole from the mark at a corner of a page.
    fn nearest_corner(&self, template: &Template<'_>) -> f64 {
        let half = OVERLAP / 2.0;
        let ends = |tile: &Tile, k: usize| [tile.low[k] + half, tile.low[k] + self.inner[k] - half];
        let corners = self.tiles.iter().filter(|tile| tile.printed).flat_map(|tile| {
            let across = ends(tile, 1);
            ends(tile, 0).into_iter().flat_map(move |u| across.map(|v| [u, v]))
        });
        let holes: Vec<OnPaper> = template.plan.fixings.iter().map(|mark| template.view.place(mark.at)).collect();
        let off = corners.flat_map(|[u, v]| holes.iter().map(move |hole| (hole.u - u).hypot(hole.v - v)));
        off.fold(f64::INFINITY, f64::min)
    }

    /// The tile at a row and a column, where it is printed.
    pub(super) fn printed(&self, row: Option<usize>, column: Option<usize>) -> Option<&Tile> {
        let (row, column) = (row?, column?);
        self.tiles.iter().find(|tile| tile.printed && tile.row == row && tile.column == column)
    }
}

impl Tile {
    /// Letters for the row, a number for the column.
    pub(super) fn name(&self) -> String {
        let (mut row, mut letters) = (self.row, String::new());
        loop {
            let letter = char::from(b'A' + u8::try_from(row % 26).unwrap_or(0));
            letters.insert(0, letter);
            row /= 26;
            if row == 0 {
                break;
            }
            row -= 1;
        }
        format!("{letters}{}", self.column + 1)
    }
}

/// All that is drawn as straight strokes on the paper, labels by a stroke through their middle.
fn strokes(template: &Template<'_>) -> Vec<[OnPaper; 2]> {
    let mut all = strokes::of_lines(template);
    for label in template.labels() {
        let [half, _] = label.half();
        let (sin, cos) = label.degrees.to_radians().sin_cos();
        let end = |way: f64| OnPaper { u: label.at.u + way * half * cos, v: label.at.v + way * half * sin };
        all.push([end(-1.0), end(1.0)]);
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_have_letters() {
        let name = |row| Tile { row, column: 4, low: [0.0; 2], holes: Vec::new(), printed: true }.name();
        assert_eq!([name(0), name(25), name(26), name(52)], ["A5", "Z5", "AA5", "BA5"]);
    }
}
