//! The command line's words; nothing else knows `clap`.

mod kind;
mod refused;
mod template;

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use skinspan::{
    command::{self, Request},
    material,
    proof::Wanted,
    report,
    units::System,
};

use self::{
    kind::Kind,
    template::{Looked, Paper},
};

/// Checks fibreglass sandwich hardtops on a pipe frame: skins, core, span and overhang against wind, landings, people
/// and sun.
///
/// Fixings that the file does not give are not checked: the answer names what is held by them.
///
/// Exit codes: 0 all holds; 1 something does not hold or could not be checked; 2 the work could not be done. Of `choose`: 0
/// something holds; 1 nothing does.
#[derive(Parser)]
#[command(
    version,
    max_term_width = 100,
    arg_required_else_help = true,
    after_help = "Start with:\n  skinspan new top.toml      write a commented design file\n  \
                  skinspan check top.toml    check it\n  skinspan choose top.toml   \
                  see what else would hold, the lightest first\n  skinspan explain core-shear  see what a check does"
)]
struct Cli {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Check a top: margins, the governing case, and what would make it hold.
    Check {
        #[command(flatten)]
        design: Design,
        /// The hand method alone, without the plate solution of the whole top: in milliseconds; pipe bending is then not made.
        #[arg(long)]
        hand: bool,
        /// Show every case, every value with its source, every factor and assumption.
        #[arg(long)]
        full: bool,
        /// The same content for machines.
        #[arg(long, conflicts_with = "full")]
        json: bool,
        /// Write the report to a file.
        #[arg(long, short, value_name = "FILE")]
        output: Option<PathBuf>,
    },
    /// Choose core and skins: what of all that one could lay up holds, the lightest first.
    ///
    /// `[choose]` in the design file says what there is to choose from; without it, every core that is sold, in every density
    /// and thickness, between the skins of the file with fewer and more layers. The first Ctrl-C stops the search and shows
    /// what it has found, the second ends it.
    Choose {
        #[command(flatten)]
        design: Design,
        #[command(flatten)]
        form: Form,
        /// Write the report to a file.
        #[arg(long, short, value_name = "FILE")]
        output: Option<PathBuf>,
    },
    /// Write the calculation sheet: one HTML file with the answer, drawings, maps and every check, to read, print and file.
    Sheet {
        #[command(flatten)]
        design: Design,
        /// Where to write it; without this, by the name of the design file in the current folder.
        #[arg(long, short, value_name = "FILE")]
        output: Option<PathBuf>,
    },
    /// Draw the template 1:1, to cut the panel and to drill the holes of its fixings by.
    ///
    /// Prints the table of holes. Exit code 1: a hole stands in the band beside a conduit.
    Template {
        #[command(flatten)]
        design: Design,
        /// The face that one looks at; from below the drawing is turned over.
        #[arg(long = "from", default_value = "above")]
        face: Looked,
        /// Paper of the pages for a printer; Letter where the file is in US units, else A4.
        #[arg(long = "tiles", value_name = "PAPER")]
        paper: Option<Paper>,
        /// Of those pages, print the ones with holes alone.
        #[arg(long)]
        holes_only: bool,
        /// File to write, in the form that its name ends in: `.svg`, `.dxf`, `.html` for pages to print, `.csv` or `.json` for the
        /// list of holes; may be given more than once. Without it, one of each drawing, named after the design.
        #[arg(long = "output", short, value_name = "FILE")]
        outputs: Vec<PathBuf>,
    },
    /// List what the shop buys for a top, how the core is cut, what the finished top weighs, and how it is lifted.
    ///
    /// `[order]` in the design file says widths of rolls, sizes of sheets, laps, waste and spares; what it does not say is taken for
    /// granted, and listed. Exit code 1: the core could not be laid out, or lifting does not hold or could not be checked.
    Order {
        #[command(flatten)]
        design: Design,
        #[command(flatten)]
        form: Form,
        /// Write the report to a file.
        #[arg(long, short, value_name = "FILE")]
        output: Option<PathBuf>,
    },
    /// Write the card of a proof test of the finished top: bags, gauges, expected readings, rules; or compare readings.
    ///
    /// Exit code 1: there is no test that the checks allow in full, a check could not be made, or the readings do not pass.
    Proof {
        #[command(flatten)]
        design: Design,
        /// The load of the test, instead of the one that governs: all over the top, or at one place.
        #[arg(long)]
        load: Option<TestLoad>,
        /// Readings of the test (CSV): `bags, A (mm), B (mm)` in the first line, then a line for each step in its order.
        #[arg(long, value_name = "FILE")]
        readings: Option<PathBuf>,
        /// The same content for machines.
        #[arg(long)]
        json: bool,
        /// Write the report to a file.
        #[arg(long, short, value_name = "FILE")]
        output: Option<PathBuf>,
    },
    /// List the material table.
    Materials {
        /// Only rows whose id, name or family holds this text.
        #[arg(default_value = "")]
        text: String,
        /// Only rows of this kind.
        #[arg(long)]
        kind: Option<Kind>,
        /// Material table over the built-in one.
        #[arg(long = "table", value_name = "FILE")]
        tables: Vec<PathBuf>,
        /// Units of densities.
        #[arg(long, default_value = "us")]
        units: Units,
        /// The same content for machines.
        #[arg(long)]
        json: bool,
    },
    /// Explain a check, a material (or one value of it), or a factor: formula, limits, source.
    Explain {
        /// Name of a check, a material or a factor, such as core-shear, pvc-foam, core-shear-factor.
        name: String,
        /// One property of a material, such as shear-strength.
        property: Option<String>,
        /// Material table over the built-in one.
        #[arg(long = "table", value_name = "FILE")]
        tables: Vec<PathBuf>,
        /// The same content for machines.
        #[arg(long)]
        json: bool,
    },
    /// Write a commented design file to start from.
    New {
        /// Where to write it; a file that is there is not overwritten.
        file: PathBuf,
    },
}

/// A design file, and how it is read.
#[derive(Args)]
struct Design {
    /// Design file (TOML); `skinspan new` writes one to start from.
    file: PathBuf,
    /// Material table over the built-in one; may be given more than once, the last one wins.
    #[arg(long = "table", value_name = "FILE")]
    tables: Vec<PathBuf>,
    /// Units of what is written, instead of those of the file.
    #[arg(long)]
    units: Option<Units>,
}

impl From<Design> for command::DesignFile {
    fn from(Design { file, tables, units }: Design) -> Self {
        Self { file, tables, units: units.map(System::from) }
    }
}

/// How an answer is written.
#[derive(Args)]
struct Form {
    /// The same content for machines.
    #[arg(long, conflicts_with = "csv")]
    json: bool,
    /// The same content for a spreadsheet.
    #[arg(long)]
    csv: bool,
}

impl From<Form> for command::Form {
    fn from(Form { json, csv }: Form) -> Self {
        match (json, csv) {
            (true, _) => Self::Json,
            (false, true) => Self::Csv,
            (false, false) => Self::Text,
        }
    }
}

#[derive(Clone, Copy, ValueEnum)]
enum Units {
    Us,
    Si,
}

impl From<Units> for System {
    fn from(units: Units) -> Self {
        match units {
            Units::Us => Self::Us,
            Units::Si => Self::Si,
        }
    }
}

#[derive(Clone, Copy, ValueEnum)]
enum TestLoad {
    Even,
    Place,
}

impl From<TestLoad> for Wanted {
    fn from(load: TestLoad) -> Self {
        match load {
            TestLoad::Even => Self::Even,
            TestLoad::Place => Self::Place,
        }
    }
}

/// What the command line asks for, or why that is refused. Help and the version are printed at once.
pub(crate) fn request() -> Result<Request, String> {
    match Cli::try_parse() {
        Ok(cli) => Ok(cli.into_request()),
        Err(error) => match refused::words(&error) {
            Some(words) => Err(words),
            None => error.exit(),
        },
    }
}

impl Cli {
    fn into_request(self) -> Request {
        match self.command {
            Command::Check { design, hand, full, json, output } => {
                Request::Check { design: design.into(), hand, full, json, output }
            }
            Command::Choose { design, form, output } => {
                Request::Choose { design: design.into(), form: form.into(), output }
            }
            Command::Sheet { design, output } => Request::Sheet { design: design.into(), output },
            Command::Template { design, face, paper, holes_only, outputs } => Request::Template {
                design: design.into(),
                face: face.into(),
                paper: paper.map(report::Paper::from),
                holes_only,
                outputs,
            },
            Command::Order { design, form, output } => {
                Request::Order { design: design.into(), form: form.into(), output }
            }
            Command::Proof { design, load, readings, json, output } => {
                let load = load.map_or(Wanted::Any, Wanted::from);
                Request::Proof { design: design.into(), load, readings, json, output }
            }
            Command::Materials { text, kind, tables, units, json } => {
                Request::Materials { text, kind: kind.map(material::Kind::from), tables, units: units.into(), json }
            }
            Command::Explain { name, property, tables, json } => Request::Explain { name, property, tables, json },
            Command::New { file } => Request::New { file },
        }
    }
}
