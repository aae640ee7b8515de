//! What the command line does: a plain request in, texts and a status out. It reads files and writes those it is asked
//! to; it prints nothing.

mod choose;
mod files;
mod order;
mod proof;
mod request;
mod sheet;
mod template;

use std::{
    fmt::Write as _,
    fs,
    io::{self, Write as _},
    path::{Path, PathBuf},
};

use serde_json::Value;

pub use request::{DesignFile, Form, Request};

use self::files::{beside, not_beside, not_written, read, read_drawing, rendered, same_file, write_whole};
use crate::{
    choice::Watch,
    criteria::Criteria,
    input::{Design, FileProblems, NamedText, drawing_named_in, read_design, read_tables, tables_named_in},
    material::{Kind, MaterialTable},
    report::{Answer, Report, explain, explain_json, list, list_json, to_json, to_text},
    units::System,
};

/// How a request ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Done; of a check: everything holds; of a choice: something does.
    Holds,
    /// Done; something does not hold or could not be checked; of a choice: nothing holds.
    DoesNotHold,
    /// The program could not do its work.
    Failed,
}

impl Status {
    /// The exit code.
    #[must_use]
    pub const fn code(self) -> u8 {
        match self {
            Self::Holds => 0,
            Self::DoesNotHold => 1,
            Self::Failed => 2,
        }
    }
}

/// What a request leaves.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finished {
    /// Results.
    pub stdout: String,
    /// All else.
    pub stderr: String,
    /// How it ended.
    pub status: Status,
}

impl Finished {
    fn with(stdout: String, status: Status) -> Self {
        Self { stdout, stderr: String::new(), status }
    }

    /// With a word on the other stream that stands above all else.
    fn warned(mut self, warning: Option<String>) -> Self {
        if let Some(warning) = warning {
            self.stderr.insert_str(0, &format!("{warning}\n"));
        }
        self
    }

    fn failed(stderr: String) -> Self {
        Self { stdout: String::new(), stderr, status: Status::Failed }
    }
}

/// Width of a page where there is no terminal to ask.
pub const PAGE: usize = 80;

/// The commented starter file.
const STARTER: &str = include_str!("../../examples/starter.toml");

/// Does what is asked, for a terminal of a given width; `watch` is told how a choice comes on, and may stop it.
#[must_use]
pub fn run(request: &Request, width: usize, watch: &dyn Watch) -> Finished {
    let done = match request {
        Request::Check { design, hand, full, json, output } => {
            check(design, (*hand, *full, *json), output.as_deref(), width)
        }
        Request::Choose { design, form, output } => choose::choose(design, *form, output.as_deref(), (width, watch)),
        Request::Sheet { design, output } => sheet::sheet(design, output.as_deref()),
        Request::Template { design, face, paper, holes_only, outputs } => {
            template::template(design, *face, (*paper, *holes_only), outputs, width)
        }
        Request::Order { design, form, output } => order::order(design, *form, output.as_deref(), width),
        Request::Proof { design, load, readings, json, output } => {
            proof::prove(design, (*load, readings.as_deref(), *json), output.as_deref(), width)
        }
        Request::Materials { text, kind, tables, units, json } => materials(text, *kind, tables, *units, *json, width),
        Request::Explain { name, property, tables, json } => {
            explain_it(name, property.as_deref(), tables, *json, width)
        }
        Request::New { file } => new(file),
    };
    done.unwrap_or_else(Finished::failed)
}

fn check(
    design: &DesignFile,
    (hand, full, json): (bool, bool, bool),
    output: Option<&Path>,
    width: usize,
) -> Result<Finished, String> {
    let (top, table) = load(design, output, |text, table, units| read_design(text, table, units))?;
    let report = if hand { Report::by_hand(&top, &table) } else { Report::new(&top, &table) };
    let status = if report.answer() == Answer::Holds { Status::Holds } else { Status::DoesNotHold };
    let text = if json { pretty(&to_json(&report)) } else { to_text(&report, full, page(output, width)) };
    deliver(text, status, output)
}

/// A file outlives the terminal it was asked for on.
fn page(output: Option<&Path>, width: usize) -> usize {
    if output.is_some() { PAGE } else { width }
}

/// What `read_it` makes of a design file with all that it names, and its material table.
fn load<T>(
    DesignFile { file, tables, units }: &DesignFile,
    output: Option<&Path>,
    read_it: impl FnOnce(Design<'_>, &MaterialTable, Option<System>) -> Result<T, Vec<FileProblems>>,
) -> Result<(T, MaterialTable), String> {
    let design = read(file).map_err(|unreadable| unreadable.message(Some(file)))?;
    if output.is_some_and(|output| same_file(file, output)) {
        return Err(format!(
            "error: the report would replace the design file {}\nhelp: choose another name\n",
            file.display()
        ));
    }
    let mut texts = Vec::new();
    for path in tables {
        spared(output, path)?;
    }
    for (name, range) in tables_named_in(&design).map_err(|problems| rendered(&[problems]))? {
        spared(output, &beside(file, &name))?;
        texts.push(read(&beside(file, &name)).map_err(|unreadable| not_beside(&design, range, unreadable, "table"))?);
    }
    let drawing = drawing_named_in(&design).map_err(|problems| rendered(&[problems]))?.map(|(name, range)| {
        spared(output, &beside(file, &name))?;
        read_drawing(&beside(file, &name)).map_err(|unreadable| not_beside(&design, range, unreadable, "drawing"))
    });
    let drawing = drawing.transpose()?;
    for path in tables {
        texts.push(read(path).map_err(|unreadable| unreadable.message(None))?);
    }
    let table = read_tables(&texts).map_err(|files| rendered(&files))?;
    let named = Design { file: &design, drawing: drawing.as_ref() };
    let made = read_it(named, &table, *units).map_err(|files| rendered(&files))?;
    Ok((made, table))
}

/// Refuses to write over what a report is made from.
fn spared(output: Option<&Path>, source: &Path) -> Result<(), String> {
    if output.is_some_and(|output| same_file(source, output)) {
        return Err(format!(
            "error: the report would replace {}, which it is made from\nhelp: choose another name\n",
            source.display()
        ));
    }
    Ok(())
}

/// Hands a report to the terminal, or writes it where it is to go.
fn deliver(text: String, status: Status, output: Option<&Path>) -> Result<Finished, String> {
    let Some(output) = output else { return Ok(Finished::with(text, status)) };
    let plain = anstream::adapter::strip_str(&text).to_string();
    write_whole(output, &plain).map_err(|error| not_written(output, &error))?;
    Ok(Finished { stdout: String::new(), stderr: format!("wrote {}\n", output.display()), status })
}

fn materials(
    text: &str,
    kind: Option<Kind>,
    tables: &[PathBuf],
    units: System,
    json: bool,
    width: usize,
) -> Result<Finished, String> {
    let table = table(tables)?;
    if !json && table.rows().any(|row| row.id() == text) {
        // One row by its name: with the source of each value.
        return explain_it(text, None, tables, json, width);
    }
    let listed = if json {
        list_json(&table, kind, text).map(|value| pretty(&value))
    } else {
        list(&table, kind, text, units, width)
    };
    listed.map(|text| Finished::with(text, Status::Holds)).ok_or_else(|| {
        let kind = kind.map_or_else(String::new, |kind| format!(" of kind {}", kind.word()));
        format!(
            "error: the material table has nothing{kind} that matches `{text}`\n\
             help: `skinspan materials` lists all of it\n"
        )
    })
}

fn explain_it(
    name: &str,
    property: Option<&str>,
    tables: &[PathBuf],
    json: bool,
    width: usize,
) -> Result<Finished, String> {
    let table = table(tables)?;
    let criteria = Criteria::built_in().map_err(|error| format!("error: {error}\n"))?;
    let explained = if json {
        explain_json(name, property, &table, &criteria).map(|value| pretty(&value))
    } else {
        explain(name, property, &table, &criteria, width)
    };
    explained.map(|text| Finished::with(text, Status::Holds)).map_err(|nothing| {
        let mut message = format!("error: {nothing}\n");
        match &nothing.near {
            Some(near) => {
                let _ = writeln!(message, "help: did you mean `skinspan explain {near}`?");
            }
            None if nothing.property.is_some() => {
                let _ = writeln!(message, "help: `skinspan explain {}` shows all that is known of it", nothing.name);
            }
            None => message.push_str("help: `skinspan check` names its checks, `skinspan materials` its materials\n"),
        }
        message
    })
}

fn new(file: &Path) -> Result<Finished, String> {
    // Asking first and writing then would overwrite what came between.
    let mut starter = match fs::OpenOptions::new().write(true).create_new(true).open(file) {
        Ok(starter) => starter,
        Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {
            return Err(format!(
                "error: {} is there already and is not overwritten\nhelp: choose another name\n",
                file.display()
            ));
        }
        Err(error) => return Err(not_written(file, &error)),
    };
    starter.write_all(STARTER.as_bytes()).map_err(|error| not_written(file, &error))?;
    Ok(Finished {
        stdout: String::new(),
        stderr: format!("wrote {}\nnow change it and run: skinspan check {}\n", file.display(), file.display()),
        status: Status::Holds,
    })
}

fn table(tables: &[PathBuf]) -> Result<MaterialTable, String> {
    let texts: Vec<NamedText> = tables
        .iter()
        .map(|path| read(path).map_err(|unreadable| unreadable.message(None)))
        .collect::<Result<_, _>>()?;
    read_tables(&texts).map_err(|files| rendered(&files))
}

fn pretty(value: &Value) -> String {
    format!("{value:#}\n")
}
