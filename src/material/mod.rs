//! Materials: a table in which every value has a basis, a source and a place in it.

mod body;
mod built_in;
mod cell;
mod core_family;
mod curve;
mod fabric;
mod fixings;
mod galvanic;
mod kinds;
mod layering;
mod listing;
mod measured;
mod plies;
mod ply_layer;
mod problem;
mod property;
mod reader;
mod row;
mod scalar;
mod schema;
mod shape;
mod source_list;
mod table;

pub use body::Body;
pub use core_family::{Core, CoreFamily};
pub use curve::Curve;
pub use fabric::{Fabric, Part, PlyForm};
pub use fixings::{Adhesive, Insert, Lubrication, PottedInsert, Rivet, Screw, Stud, Thread};
pub use galvanic::Galvanic;
pub use kinds::{Alloy, Board, Coat, Conduit, Fastener, Fibre, Filler, Ply, Resin};
pub use listing::{PropertyView, RowView};
pub use ply_layer::{NoPly, PlyLayer};
pub use problem::{OutOfRange, TableProblem, UnknownName};
pub use property::{Basis, Origin, Property};
pub use row::Kind;
pub use schema::{Banded, Choices, Layer};
pub use source_list::{Seen, SourceText};
pub use table::{MaterialTable, TableText};

use kinds::FabricRow;
