//! How the core is cut from sheets and laid.

mod grid;
mod region;
mod seams;
mod sheets;

use std::fmt;

use crate::{
    geometry::{Axis, Point},
    top::Top,
    units::{Area, Length, Ratio},
};

use self::{grid::Grid, region::Region};

pub use self::{
    seams::{Rule, Seam},
    sheets::SheetPlace,
};

/// A piece of core.
#[derive(Clone, Debug, PartialEq)]
pub struct CorePiece {
    /// The corner of the rectangle round it that has the smallest coordinates.
    pub at: Point,
    /// Along the top.
    pub length: Length,
    /// Across the top.
    pub width: Length,
    /// Its area, the cut-outs for rim, holes and backing taken off.
    pub area: Area,
    /// Holes and backings that are cut out of it or run along it.
    pub cut_out: Vec<String>,
    /// Where it is cut from.
    pub from: SheetPlace,
}

/// How the core is cut from sheets and laid.
#[derive(Clone, Debug, PartialEq)]
pub struct CorePlan {
    /// Length and width of a sheet.
    pub sheet: [Length; 2],
    /// In which direction of the top the length of the sheets lies.
    pub along: Axis,
    /// Sheets that are bought.
    pub sheets: usize,
    /// Pieces, row by row.
    pub pieces: Vec<CorePiece>,
    /// Seams between them, where they run through core.
    pub seams: Vec<Seam>,
    /// Area of core that is laid.
    pub area: Area,
    /// Offcuts, as a share of the sheets.
    pub offcut: Ratio,
    /// Whether core of this density is sold as thick as it is laid.
    pub sold_so_thick: bool,
    /// Ways to lay them that were tried.
    pub tried: usize,
}

/// Why there is no plan of the core.
#[derive(Clone, Debug, PartialEq)]
pub enum NoPlan {
    /// Cut back at the rim the core falls into parts, or nothing of it is left.
    Parts {
        /// Where.
        at: Option<Point>,
    },
    /// So many sheets that the file has a slip in a unit.
    TooManySheets {
        /// How many they would be.
        sheets: usize,
    },
}

impl fmt::Display for NoPlan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Parts { .. } => f.write_str(
                "cut back at the rim the core falls into parts, or nothing is left of it; lay it out by hand",
            ),
            Self::TooManySheets { sheets } => {
                write!(f, "the core would take some {sheets} sheets: is the unit of `sheet` right?")
            }
        }
    }
}

impl std::error::Error for NoPlan {}

/// Most sheets that are laid out.
const MOST_SHEETS: f64 = 200.0;

/// Lays sheets over the core.
///
/// Every way to lay a grid of sheets is tried, staggered by half a sheet or not, along the top or across, its rows begun at
/// the rim, on each backing, or in sixteenths of a sheet. The best has the fewest sheets, then the fewest narrow pieces, then
/// the least length of seam where none should be, then the fewest pieces, then the shortest seams. A core whose directions
/// differ lies along the top.
///
/// # Validity
///
/// A plan of sizes, without saw cuts. Pieces are cut from sheets as the rectangles round them; where a piece leaves room in
/// its rectangle nothing else is cut from there. The best of what was tried, not of all there is.
pub(super) fn plan(top: &Top) -> Result<CorePlan, NoPlan> {
    let region = Region::of(top)?;
    let sheet = sheet(top);
    let sheets = (region.area() / (sheet[0] * sheet[1])).value;
    if sheets > MOST_SHEETS {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a rough count for a message")]
        return Err(NoPlan::TooManySheets { sheets: sheets.min(1e9) as usize });
    }
    let directed = top.core.material.shear_modulus_w.is_some();
    let grids = grid::grids(&region, sheet, directed);
    let tried = grids.len();
    // Sheets are soon counted, seams are not: these are looked at only where the fewest sheets do.
    let laid: Vec<(Grid, Vec<grid::Cell>, Vec<SheetPlace>)> = grids
        .into_iter()
        .map(|grid| {
            let cells = grid.cells(&region);
            let places = sheets::cut(&cells, &grid, !directed);
            (grid, cells, places)
        })
        .collect();
    let fewest = laid.iter().map(|(_, _, places)| sheets::count(places)).min().unwrap_or(0);
    let best = laid
        .into_iter()
        .filter(|(_, _, places)| sheets::count(places) == fewest)
        .map(|(grid, cells, places)| {
            let seams = seams::seams(top, &region, &cells);
            (grid, cells, places, seams)
        })
        .min_by_key(|(_, cells, _, seams)| {
            let narrow = cells.iter().filter(|cell| cell.is_narrower(top.criteria.order_least_piece.value)).count();
            (narrow, seams::against_rules(seams), cells.len(), seams::length(seams))
        });
    let Some((grid, cells, places, seams)) = best else { return Err(NoPlan::Parts { at: None }) };
    let pieces: Vec<CorePiece> = cells.into_iter().zip(places).map(|(cell, from)| cell.piece(&region, from)).collect();
    let area: Area = pieces.iter().map(|piece| piece.area).sum();
    #[expect(clippy::cast_precision_loss, reason = "no more than some hundreds")]
    let bought = sheet[0] * sheet[1] * fewest as f64;
    Ok(CorePlan {
        sheet,
        along: grid.along,
        sheets: fewest,
        pieces,
        seams,
        area,
        offcut: Ratio::from(1.0) - area / bought,
        sold_so_thick: sold_so_thick(top),
        tried,
    })
}

/// Length and width of a sheet.
fn sheet(top: &Top) -> [Length; 2] {
    let criteria = &top.criteria;
    if top.core.family.is_balsa() {
        [criteria.order_balsa_sheet_length.value, criteria.order_balsa_sheet_width.value]
    } else {
        [criteria.order_sheet_length.value, criteria.order_sheet_width.value]
    }
}

/// Millimetres; as far apart two thicknesses are one.
const SAME_THICKNESS: f64 = 0.2;

fn sold_so_thick(top: &Top) -> bool {
    let near = Length::new::<uom::si::length::millimeter>(SAME_THICKNESS);
    top.core.material.sold_thicknesses.values.iter().any(|sold| (*sold - top.core.thickness).abs() < near)
}
