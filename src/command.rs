//! What the command line does: a plain request in, texts and a status out. It reads files and writes those it is asked
//! to; it prints nothing.

use std::{
    fmt::Write as _,
    fs,
    io::{self, Write as _},
    path::{Path, PathBuf},
};

use serde_json::Value;

use crate::{
    criteria::Criteria,
    input::{FileProblems, NamedText, Problem, read_design, read_tables, tables_named_in},
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

/// The commented starter file.
const STARTER: &str = include_str!("../examples/starter.toml");

/// Does what is asked, for a terminal of a given width.
#[must_use]
pub fn run(request: &Request, width: usize) -> Finished {
    let done = match request {
        Request::Check { file, tables, units, full, json, output } => {
            check(file, tables, *units, (*full, *json), output.as_deref(), width)
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
    (full, json): (bool, bool),
    output: Option<&Path>,
    width: usize,
) -> Result<Finished, String> {
    let design = read(file)?;
    let mut texts = Vec::new();
    for (name, range) in tables_named_in(&design).map_err(|problems| rendered(&[problems]))? {
        // A table is named from where the design file stands.
        let path = file.parent().map_or_else(|| PathBuf::from(&name), |folder| folder.join(&name));
        match read(&path) {
            Ok(text) => texts.push(text),
            Err(message) => {
                let problem = Problem::at(range, message.trim_start_matches("error: ").trim_end());
                return Err(rendered(&[FileProblems {
                    file: design.name.clone(),
                    text: design.text.clone(),
                    problems: vec![problem],
                }]));
            }
        }
    }
    for path in tables {
        texts.push(read(path)?);
    }
    let table = read_tables(&texts).map_err(|files| rendered(&files))?;
    let top = read_design(&design, &table, units).map_err(|files| rendered(&files))?;
    let report = Report::new(&top, &table);
    let status = if report.answer() == Answer::Holds { Status::Holds } else { Status::DoesNotHold };
    let text = if json { pretty(&to_json(&report)) } else { to_text(&report, full, width) };
    let Some(output) = output else { return Ok(Finished::with(text, status)) };
    let plain = anstream::adapter::strip_str(&text).to_string();
    write_whole(output, &plain).map_err(|error| format!("error: cannot write {}: {error}\n", output.display()))?;
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
    let listed = if json {
        list_json(&table, kind, text).map(|value| pretty(&value))
    } else {
        list(&table, kind, text, units, width)
    };
    listed.map(|text| Finished::with(text, Status::Holds)).ok_or_else(|| {
        format!(
            "error: the material table has nothing that matches `{text}`\nhelp: `skinspan materials` lists all of it\n"
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
            None => message.push_str("help: `skinspan check` names its checks, `skinspan materials` its materials\n"),
        }
        message
    })
}

fn new(file: &Path) -> Result<Finished, String> {
    if file.exists() {
        return Err(format!(
            "error: {} is there already and is not overwritten\nhelp: choose another name\n",
            file.display()
        ));
    }
    write_whole(file, STARTER).map_err(|error| format!("error: cannot write {}: {error}\n", file.display()))?;
    Ok(Finished {
        stdout: String::new(),
        stderr: format!("wrote {}\nnow change it and run: skinspan check {}\n", file.display(), file.display()),
        status: Status::Holds,
    })
}

fn table(tables: &[PathBuf]) -> Result<MaterialTable, String> {
    let texts: Vec<NamedText> = tables.iter().map(|path| read(path)).collect::<Result<_, _>>()?;
    read_tables(&texts).map_err(|files| rendered(&files))
}

fn read(path: &Path) -> Result<NamedText, String> {
    let name = path.display().to_string();
    match fs::read(path) {
        Ok(bytes) => match String::from_utf8(bytes) {
            Ok(text) => Ok(NamedText { name, text }),
            Err(error) => Err(format!(
                "error: {name} is not a text file: byte {} is not UTF-8\nhelp: save it as UTF-8 text\n",
                error.utf8_error().valid_up_to() + 1
            )),
        },
        Err(error) => {
            let help = if error.kind() == io::ErrorKind::NotFound {
                format!("help: `skinspan new {name}` writes a file to start from\n")
            } else {
                String::new()
            };
            Err(format!("error: cannot read {name}: {error}\n{help}"))
        }
    }
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

/// Writes a file so that it is there whole or not at all: beside its place first, then moved into it.
fn write_whole(path: &Path, text: &str) -> io::Result<()> {
    let name =
        path.file_name().ok_or_else(|| io::Error::new(io::ErrorKind::InvalidInput, "that is not a file name"))?;
    let mut beside = name.to_owned();
    beside.push(format!(".{}.part", std::process::id()));
    let part = path.with_file_name(beside);
    let written = fs::File::create(&part).and_then(|mut file| {
        file.write_all(text.as_bytes())?;
        file.sync_all()
    });
    written.and_then(|()| fs::rename(&part, path)).inspect_err(|_| {
        // What is left of a failed attempt helps nobody; that it cannot be removed either changes nothing.
        let _ = fs::remove_file(&part);
    })
}
