//! The template: the plan of a top at its true size, to lay on the panel, to cut by and to drill through, as SVG, as DXF and
//! as pages for a printer at home; and the table of its holes.
//!
//! Numbers that go into a file are millimetres of paper.

mod bars;
mod cautions;
mod drawing;
mod dxf;
mod holes;
mod inch_drills;
mod labels;
mod list;
mod running;
mod strokes;
mod style;
mod svg;
mod text;
mod tiles;
mod view;
mod words;

pub use tiles::Paper;
pub use view::Face;

use self::{labels::Placed, view::View};
use crate::{
    check::Standing,
    plan::{FixingMark, Plan},
    report::not_for_building,
    top::Top,
};

/// Version of the DXF, so that nobody need guess: the oldest, which every reader knows.
pub const DXF_VERSION: &str = "R12";

/// The plan of a top, and how one looks at it.
#[derive(Debug)]
pub struct Template<'a> {
    top: &'a Top,
    plan: Plan,
    view: View,
    /// What speaks against building it, by the checks of the hand method.
    not_for_building: Option<String>,
}

impl<'a> Template<'a> {
    /// Draws a top as one looks at a face of it.
    #[must_use]
    pub fn new(top: &'a Top, face: Face) -> Self {
        let view = View { face, bow: top.bow(), said: top.forward.is_some() };
        Self { top, plan: Plan::of(top), view, not_for_building: not_for_building(&Standing::by_hand(top)) }
    }

    /// The plan that it shows.
    #[must_use]
    pub const fn plan(&self) -> &Plan {
        &self.plan
    }

    /// What speaks against building by it: that the checks of the hand method say that the top does not hold, or could not look at
    /// every load case. It stands on the drawings.
    #[must_use]
    pub fn not_for_building(&self) -> Option<&str> {
        self.not_for_building.as_deref()
    }

    /// Whether every hole keeps clear of the conduits.
    #[must_use]
    pub fn clear_of_conduits(&self) -> bool {
        self.plan.fixings.iter().all(|mark| mark.in_band.is_none())
    }

    /// The drawing as SVG, a millimetre of the top on a millimetre of paper.
    ///
    /// Layers are groups `layer-outline`, `layer-pipes` and so on; the finished outline is the path `outline`.
    #[must_use]
    pub fn to_svg(&self) -> String {
        svg::svg(self)
    }

    /// The drawing as DXF in text form, in millimetres, arcs as arcs, the datum at its origin.
    #[must_use]
    pub fn to_dxf(&self) -> String {
        dxf::dxf(self)
    }

    /// The drawing in pages for a printer, as one HTML file: how to put them together, then every page that shows something,
    /// or those alone that a hole is drilled through.
    #[must_use]
    pub fn to_tiles(&self, paper: Paper, holes_only: bool) -> String {
        tiles::html(self, paper, holes_only)
    }

    /// The holes as a table for a spreadsheet: a line for each drill of each fixing, the datum as in the file.
    #[must_use]
    pub fn to_csv(&self) -> String {
        list::csv(self)
    }

    /// The holes for programs.
    ///
    /// # Format, version 1
    ///
    /// Within a version keys are only added; what a key means never changes. A quantity is `{"value": 12.3, "unit": "mm"}`. Top
    /// level: `not_for_building` (what speaks against building by it, or null), `format` (`{"name": "skinspan-holes", "version": 1}`), `title`, `units` (`"us"` or `"si"`), `forward` (`"right"` or
    /// `"left"`), and `holes`: `hole` (its number), `holds`, `fixing`, `hold`, `size`, `from` (`"above"` or `"below"`), `x`, `y`,
    /// `drills` in the order of the work (`drill` by its name, `diameter`, `depth` or null where it goes through, `through`), `tap`
    /// (null where none is cut), `near_conduit` (the conduit in whose band it stands, or null).
    #[must_use]
    pub fn to_json(&self) -> serde_json::Value {
        list::json(self)
    }

    /// What the template shows, the table of its holes and what to mind; `files` are the names that it was written to, with
    /// what is in each.
    #[must_use]
    pub fn to_text(&self, files: &[(String, String)], width: usize) -> String {
        text::text(self, files, width)
    }

    /// How many pages the tiles have, that with the instructions left out.
    #[must_use]
    pub fn tile_count(&self, paper: Paper, holes_only: bool) -> usize {
        tiles::count(self, paper, holes_only)
    }

    /// Whether a fixing is drilled from the face that one looks at.
    fn shows_drilled_face(&self, mark: &FixingMark) -> bool {
        self.view.face.skin() == mark.near
    }

    /// Labels in their places.
    fn labels(&self) -> Vec<Placed> {
        labels::place(self)
    }
}
