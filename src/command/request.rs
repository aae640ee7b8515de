//! What the command line may be asked for.

use std::path::PathBuf;

use crate::{
    material::Kind,
    proof::Wanted,
    report::{Face, Paper},
    units::System,
};

/// A design file, and how it is read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DesignFile {
    /// The file.
    pub file: PathBuf,
    /// Tables over the built-in one, the last one highest.
    pub tables: Vec<PathBuf>,
    /// Units of the report, if not those of the file.
    pub units: Option<System>,
}

/// How an answer is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// For people.
    Text,
    /// For machines.
    Json,
    /// For spreadsheets.
    Csv,
}

/// What to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Request {
    /// Check a top.
    Check {
        /// What it is about.
        design: DesignFile,
        /// The hand method alone.
        hand: bool,
        /// Every case, value and criterion.
        full: bool,
        /// For machines.
        json: bool,
        /// Where to write the report; to the terminal if nowhere.
        output: Option<PathBuf>,
    },
    /// Choose among what one may lay up.
    Choose {
        /// What it is about.
        design: DesignFile,
        /// How the answer is written.
        form: Form,
        /// Where to write the report; to the terminal if nowhere.
        output: Option<PathBuf>,
    },
    /// Write the calculation sheet of a top.
    Sheet {
        /// What it is about.
        design: DesignFile,
        /// Where to write it; by the name of the design file in the current folder if nowhere.
        output: Option<PathBuf>,
    },
    /// Draw the template.
    Template {
        /// What it is about.
        design: DesignFile,
        /// How one looks at it.
        face: Face,
        /// Paper of the tiles, if not that of the units.
        paper: Option<Paper>,
        /// Tiles with holes alone.
        holes_only: bool,
        /// Files to write, each in the form that its name ends in; one of each form if none.
        outputs: Vec<PathBuf>,
    },
    /// Say what is bought for a top, and what it weighs.
    Order {
        /// What it is about.
        design: DesignFile,
        /// How the answer is written.
        form: Form,
        /// Where to write the report; to the terminal if nowhere.
        output: Option<PathBuf>,
    },
    /// Write the card of a proof test, or compare readings with it.
    Proof {
        /// What it is about.
        design: DesignFile,
        /// Which loads it may be made of.
        load: Wanted,
        /// Readings of the test.
        readings: Option<PathBuf>,
        /// For machines.
        json: bool,
        /// Where to write the report; to the terminal if nowhere.
        output: Option<PathBuf>,
    },
    /// List materials.
    Materials {
        /// Text that id, name or family holds.
        text: String,
        /// Kind of rows.
        kind: Option<Kind>,
        /// Tables over the built-in one.
        tables: Vec<PathBuf>,
        /// Units of densities.
        units: System,
        /// For machines.
        json: bool,
    },
    /// Explain a check, a material or a criterion.
    Explain {
        /// Its name.
        name: String,
        /// One property of a material.
        property: Option<String>,
        /// Tables over the built-in one.
        tables: Vec<PathBuf>,
        /// For machines.
        json: bool,
    },
    /// Write a starter file.
    New {
        /// Where; it must not exist.
        file: PathBuf,
    },
}
