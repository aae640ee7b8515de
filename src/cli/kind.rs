//! Kinds of rows that `materials` lists, in words.

use clap::ValueEnum;
use skinspan::material;

/// A kind of row of the material table.
#[derive(Clone, Copy, ValueEnum)]
pub(super) enum Kind {
    Core,
    Fabric,
    Ply,
    Fibre,
    Resin,
    Coat,
    Board,
    Filler,
    Conduit,
    Alloy,
    Fastener,
    Thread,
    Screw,
    Insert,
    PottedInsert,
    Rivet,
    Stud,
    Adhesive,
    Lubrication,
    Body,
    Galvanic,
}

impl From<Kind> for material::Kind {
    fn from(kind: Kind) -> Self {
        match kind {
            Kind::Core => Self::Core,
            Kind::Fabric => Self::Fabric,
            Kind::Ply => Self::Ply,
            Kind::Fibre => Self::Fibre,
            Kind::Resin => Self::Resin,
            Kind::Coat => Self::Coat,
            Kind::Board => Self::Board,
            Kind::Filler => Self::Filler,
            Kind::Conduit => Self::Conduit,
            Kind::Alloy => Self::Alloy,
            Kind::Fastener => Self::Fastener,
            Kind::Thread => Self::Thread,
            Kind::Screw => Self::Screw,
            Kind::Insert => Self::Insert,
            Kind::PottedInsert => Self::PottedInsert,
            Kind::Rivet => Self::Rivet,
            Kind::Stud => Self::Stud,
            Kind::Adhesive => Self::Adhesive,
            Kind::Lubrication => Self::Lubrication,
            Kind::Body => Self::Body,
            Kind::Galvanic => Self::Galvanic,
        }
    }
}
