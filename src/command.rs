//! What the command line does: a plain request in, texts and a status out. It reads files and writes those it is asked
//! to; it prints nothing.

use std::{
    fmt::Write as _,
    fs,
    io::{self, Write as _},
    ops::Range,
    path::{Path, PathBuf},
};

use serde_json::Value;

use crate::{
    criteria::Criteria,
    input::{Design, FileProblems, NamedText, Problem, drawing_named_in, read_design, read_tables, tables_named_in},
    material::{Kind, MaterialTable},
    report::{Answer, Report, explain, explain_json, list, list_json, to_json, to_text},
    units::System,
};

/// What to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Request {
    /// Check a top.
    Check {
        /// The design file.
        file: PathBuf,
        /// Tables over the built-in one, the last one highest.
        tables: Vec<PathBuf>,
        /// Units of the report, if not those of the file.
        units: Option<System>,
        /// The hand method alone.
        hand: bool,
        /// Every case, value and criterion.
        full: bool,
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

/// How a request ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Done; of a check: everything holds.
    Holds,
    /// Done; something does not hold or could not be checked.
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

    fn failed(stderr: String) -> Self {
        Self { stdout: String::new(), stderr, status: Status::Failed }
    }
}

/// Width of a page where there is no terminal to ask.
pub const PAGE: usize = 80;

/// The commented starter file.
const STARTER: &str = include_str!("../examples/starter.toml");

/// Does what is asked, for a terminal of a given width.
#[must_use]
pub fn run(request: &Request, width: usize) -> Finished {
    let done = match request {
        Request::Check { file, tables, units, hand, full, json, output } => {
            check(file, tables, *units, (*hand, *full, *json), output.as_deref(), width)
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
    file: &Path,
    tables: &[PathBuf],
    units: Option<System>,
    (hand, full, json): (bool, bool, bool),
    output: Option<&Path>,
    width: usize,
) -> Result<Finished, String> {
    if output.is_some_and(|output| same_file(file, output)) {
        return Err(format!(
            "error: the report would replace the design file {}\nhelp: choose another name\n",
            file.display()
        ));
    }
    // A file outlives the terminal it was asked for on.
    let width = if output.is_some() { PAGE } else { width };
    let design = read(file).map_err(|unreadable| unreadable.message(Some(file)))?;
    let mut texts = Vec::new();
    for (name, range) in tables_named_in(&design).map_err(|problems| rendered(&[problems]))? {
        texts.push(read(&beside(file, &name)).map_err(|unreadable| not_beside(&design, range, unreadable, "table"))?);
    }
    let drawing = drawing_named_in(&design).map_err(|problems| rendered(&[problems]))?.map(|(name, range)| {
        read_drawing(&beside(file, &name)).map_err(|unreadable| not_beside(&design, range, unreadable, "drawing"))
    });
    let drawing = drawing.transpose()?;
    for path in tables {
        texts.push(read(path).map_err(|unreadable| unreadable.message(None))?);
    }
    let table = read_tables(&texts).map_err(|files| rendered(&files))?;
    let named = Design { file: &design, drawing: drawing.as_ref() };
    let top = read_design(named, &table, units).map_err(|files| rendered(&files))?;
    let report = if hand { Report::by_hand(&top, &table) } else { Report::new(&top, &table) };
    let status = if report.answer() == Answer::Holds { Status::Holds } else { Status::DoesNotHold };
    let text = if json { pretty(&to_json(&report)) } else { to_text(&report, full, width) };
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

/// Why a file could not be read.
struct Unreadable {
    cause: String,
    help: Option<&'static str>,
    missing: bool,
}

impl Unreadable {
    /// The message; `design` is the file that `skinspan new` could write.
    fn message(&self, design: Option<&Path>) -> String {
        let help = match (self.help, design) {
            (Some(help), _) => format!("help: {help}\n"),
            (None, Some(design)) if self.missing => {
                format!("help: `skinspan new {}` writes a file to start from\n", design.display())
            }
            _ => String::new(),
        };
        format!("error: {}\n{help}", self.cause)
    }
}

/// A file that a design file names is looked for from where the design file stands.
fn beside(design: &Path, name: &str) -> PathBuf {
    design.parent().map_or_else(|| PathBuf::from(name), |folder| folder.join(name))
}

/// That a file which a design file names could not be read, at the place of its name.
fn not_beside(design: &NamedText, range: Range<usize>, unreadable: Unreadable, what: &str) -> String {
    let problem = Problem::at(range, unreadable.cause)
        .help(format!("a {what} is looked for beside the design file that names it"));
    rendered(&[FileProblems { file: design.name.clone(), text: design.text.clone(), problems: vec![problem] }])
}

/// A drawing has notes and names in whatever alphabet it was made; what counts are its numbers.
fn read_drawing(path: &Path) -> Result<NamedText, Unreadable> {
    let bytes = read_bytes(path)?;
    Ok(NamedText { name: path.display().to_string(), text: String::from_utf8_lossy(&bytes).into_owned() })
}

fn read_bytes(path: &Path) -> Result<Vec<u8>, Unreadable> {
    fs::read(path).map_err(|error| Unreadable {
        cause: format!("cannot read {}: {}", path.display(), reason(&error)),
        help: (error.kind() == io::ErrorKind::IsADirectory).then_some("name a file that lies in it"),
        missing: error.kind() == io::ErrorKind::NotFound,
    })
}

fn read(path: &Path) -> Result<NamedText, Unreadable> {
    let name = path.display().to_string();
    let bytes = read_bytes(path)?;
    String::from_utf8(bytes).map(|text| NamedText { name: name.clone(), text }).map_err(|error| {
        let fault = error.utf8_error().valid_up_to();
        let line = error.as_bytes()[..fault].split(|byte| *byte == b'\n').count();
        Unreadable {
            cause: format!("{name} is not a text file: line {line} (byte {}) is not UTF-8", fault + 1),
            help: Some("save it as UTF-8 text"),
            missing: false,
        }
    })
}

/// A fault of the file system in words.
fn reason(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::NotFound => "there is no such file or folder".to_owned(),
        io::ErrorKind::IsADirectory => "it is a folder".to_owned(),
        io::ErrorKind::NotADirectory => "a file stands where its path has a folder".to_owned(),
        io::ErrorKind::PermissionDenied => "there is no permission to".to_owned(),
        _ => error.to_string(),
    }
}

fn not_written(path: &Path, error: &io::Error) -> String {
    let help = match error.kind() {
        io::ErrorKind::NotFound | io::ErrorKind::NotADirectory => "help: make the folder first, or name another\n",
        io::ErrorKind::IsADirectory => "help: name a file that lies in it\n",
        _ => "",
    };
    format!("error: cannot write {}: {}\n{help}", path.display(), reason(error))
}

/// Whether two paths lead to one file that is there.
fn same_file(one: &Path, other: &Path) -> bool {
    matches!((fs::canonicalize(one), fs::canonicalize(other)), (Ok(one), Ok(other)) if one == other)
}

fn rendered(files: &[FileProblems]) -> String {
    let mut text: String = files.iter().map(|file| file.render(true)).collect();
    let count: usize = files.iter().map(|file| file.problems.len()).sum();
    let _ = writeln!(text, "{count} problem{}; nothing was checked", if count == 1 { "" } else { "s" });
    text
}

fn pretty(value: &Value) -> String {
    format!("{value:#}\n")
}

/// Writes a file so that it is there whole or not at all: beside its place first, then moved into it. What is no plain
/// file, a pipe or a device, is written to as it stands.
fn write_whole(path: &Path, text: &str) -> io::Result<()> {
    // Behind a link the file itself is replaced, not the link.
    let path = &fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    let old = fs::metadata(path).ok();
    if old.as_ref().is_some_and(|old| !old.is_file()) {
        return fs::OpenOptions::new().write(true).open(path)?.write_all(text.as_bytes());
    }
    let name =
        path.file_name().ok_or_else(|| io::Error::new(io::ErrorKind::InvalidInput, "that is not a file name"))?;
    let mut beside = name.to_owned();
    beside.push(format!(".{}.part", std::process::id()));
    let part = path.with_file_name(beside);
    let written = fs::File::create(&part).and_then(|mut file| {
        file.write_all(text.as_bytes())?;
        if let Some(old) = old {
            file.set_permissions(old.permissions())?;
        }
        file.sync_all()
    });
    written.and_then(|()| fs::rename(&part, path)).inspect_err(|_| {
        // What is left of a failed attempt helps nobody; that it cannot be removed either changes nothing.
        let _ = fs::remove_file(&part);
    })
}
