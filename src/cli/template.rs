//! What `template` may be told in words.

use clap::ValueEnum;
use skinspan::report::{self, Face};

/// The face that one looks at.
#[derive(Clone, Copy, ValueEnum)]
pub(super) enum Looked {
    Above,
    Below,
}

impl From<Looked> for Face {
    fn from(face: Looked) -> Self {
        match face {
            Looked::Above => Self::Above,
            Looked::Below => Self::Below,
        }
    }
}

/// Paper of the pages.
#[derive(Clone, Copy, ValueEnum)]
pub(super) enum Paper {
    A4,
    Letter,
}

impl From<Paper> for report::Paper {
    fn from(paper: Paper) -> Self {
        match paper {
            Paper::A4 => Self::A4,
            Paper::Letter => Self::Letter,
        }
    }
}
