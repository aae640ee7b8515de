//! A row before it is a struct of its kind: what the reader, the layering and the listing share.

use std::{collections::BTreeMap, ops::Range, sync::Arc};

use super::schema::{Cell, Field, Rowed};
use super::{
    Adhesive, Alloy, Board, Body, Coat, Conduit, CoreFamily, FabricRow, Fastener, Fibre, Filler, Galvanic, Insert,
    Lubrication, Ply, PottedInsert, Resin, Rivet, Screw, Stud, Thread,
};

/// Kind of row; the heading `[[core]]` in a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// What lies between the skins.
    Core,
    /// What is sold on the roll.
    Fabric,
    /// Fibre and resin together, in one form: the strengths.
    Ply,
    /// Fibre.
    Fibre,
    /// Cured resin.
    Resin,
    /// Gelcoat, paint, fairing: mass only.
    Coat,
    /// Backing in place of core.
    Board,
    /// Putty and syntactic foam.
    Filler,
    /// Tube in the core.
    Conduit,
    /// Metal of pipes and plates.
    Alloy,
    /// Grade of bolts and screws.
    Fastener,
    /// A machine thread with its hole, nut and washers.
    Thread,
    /// Screw for wood, board and sheet.
    Screw,
    /// Blind threaded insert.
    Insert,
    /// Threaded insert potted into the core.
    PottedInsert,
    /// Blind rivet.
    Rivet,
    /// Stud on a glued base.
    Stud,
    /// Glue.
    Adhesive,
    /// State of thread and head at tightening.
    Lubrication,
    /// Shape of gear in the wind.
    Body,
    /// Metals that touch in salt water.
    Galvanic,
}

impl Kind {
    /// All kinds in the order of listings.
    pub const ALL: [Self; 21] = [
        Self::Core,
        Self::Fabric,
        Self::Ply,
        Self::Fibre,
        Self::Resin,
        Self::Coat,
        Self::Board,
        Self::Filler,
        Self::Conduit,
        Self::Alloy,
        Self::Fastener,
        Self::Thread,
        Self::Screw,
        Self::Insert,
        Self::PottedInsert,
        Self::Rivet,
        Self::Stud,
        Self::Adhesive,
        Self::Lubrication,
        Self::Body,
        Self::Galvanic,
    ];

    /// The heading in a table.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Core => "core",
            Self::Fabric => "fabric",
            Self::Ply => "ply",
            Self::Fibre => "fibre",
            Self::Resin => "resin",
            Self::Coat => "coat",
            Self::Board => "board",
            Self::Filler => "filler",
            Self::Conduit => "conduit",
            Self::Alloy => "alloy",
            Self::Fastener => "fastener",
            Self::Thread => "thread",
            Self::Screw => "screw",
            Self::Insert => "insert",
            Self::PottedInsert => "potted-insert",
            Self::Rivet => "rivet",
            Self::Stud => "stud",
            Self::Adhesive => "adhesive",
            Self::Lubrication => "lubrication",
            Self::Body => "body",
            Self::Galvanic => "galvanic",
        }
    }

    pub(crate) const fn fields(self) -> &'static [Field] {
        match self {
            Self::Core => CoreFamily::FIELDS,
            Self::Fabric => FabricRow::FIELDS,
            Self::Ply => Ply::FIELDS,
            Self::Fibre => Fibre::FIELDS,
            Self::Resin => Resin::FIELDS,
            Self::Coat => Coat::FIELDS,
            Self::Board => Board::FIELDS,
            Self::Filler => Filler::FIELDS,
            Self::Conduit => Conduit::FIELDS,
            Self::Alloy => Alloy::FIELDS,
            Self::Fastener => Fastener::FIELDS,
            Self::Thread => Thread::FIELDS,
            Self::Screw => Screw::FIELDS,
            Self::Insert => Insert::FIELDS,
            Self::PottedInsert => PottedInsert::FIELDS,
            Self::Rivet => Rivet::FIELDS,
            Self::Stud => Stud::FIELDS,
            Self::Adhesive => Adhesive::FIELDS,
            Self::Lubrication => Lubrication::FIELDS,
            Self::Body => Body::FIELDS,
            Self::Galvanic => Galvanic::FIELDS,
        }
    }
}

/// A place in the text of one table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Place {
    pub file: Arc<str>,
    pub range: Range<usize>,
}

/// One row, of one table or layered.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Row {
    pub kind: Kind,
    pub id: String,
    pub name: String,
    pub family: String,
    pub note: Option<String>,
    /// Row whose fields it takes where it has none of its own.
    pub like: Option<String>,
    pub cells: BTreeMap<&'static str, Cell>,
    /// Where each cell stands, for problems found after layering.
    pub places: BTreeMap<&'static str, Place>,
    /// Heading of the row in the table that wrote it last.
    pub place: Place,
}

impl Row {
    pub(crate) fn cell(&self, field: &str) -> Option<&Cell> {
        self.cells.get(field)
    }
}
