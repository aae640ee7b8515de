//! The design file: the only place, with the tables, that sees text. What it lets through is a [`Top`] that cannot be
//! wrong in itself, so nothing behind it returns "invalid input".

mod arrangement;
mod choice;
mod drawing;
mod fastened;
mod fixing;
mod frame;
mod gear;
mod hole;
mod keys;
mod layer;
mod order;
mod outline;
mod price;
mod problem;
mod proof;
mod reader;
mod readings;
mod service;
mod sizes;
mod skin;
mod standing;
mod top;
mod under_nut;
mod usual;

pub use problem::{FileProblems, Problem, nearest};
pub use readings::read_readings;

use std::{ops::Range, sync::Arc};

use toml::de::{DeTable, DeValue};

use crate::{
    choice::Space,
    criteria::Criteria,
    input::{
        choice::{Asked, read_asked},
        drawing::Drawn,
        problem::{Sink, offer},
        reader::{FILE, Given, Room, decimal, fault},
    },
    material::{MaterialTable, TableText},
    top::{Scope, Top},
    units::System,
};

/// A design file, with the drawing that it takes its outline from.
#[derive(Clone, Copy, Debug)]
pub struct Design<'a> {
    /// The design file.
    pub file: &'a NamedText,
    /// The drawing that it names; none where it names none.
    pub drawing: Option<&'a NamedText>,
}

impl<'a> From<&'a NamedText> for Design<'a> {
    fn from(file: &'a NamedText) -> Self {
        Self { file, drawing: None }
    }
}

/// A file that a design file names, or that the command line adds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NamedText {
    /// Name for messages.
    pub name: String,
    /// Text of the file.
    pub text: String,
}

/// Material tables that a design file asks for in `[tables]`, with the place of each name.
///
/// # Errors
///
/// The problems of a file that is no TOML at all.
pub fn tables_named_in(file: &NamedText) -> Result<Vec<(String, Range<usize>)>, FileProblems> {
    let (root, sink) = (parse(file)?, Sink::new(System::Us));
    let room = Room::new(FILE, root.get_ref(), root.span(), &sink);
    let files = room.room("tables").and_then(|tables| tables.texts("files")).unwrap_or_default();
    Ok(files.into_iter().flatten().map(|given| (given.value, given.range)).collect())
}

/// The drawing that a design file takes its outline from, with the place of its name.
///
/// # Errors
///
/// The problems of a file that is no TOML at all.
pub fn drawing_named_in(file: &NamedText) -> Result<Option<(String, Range<usize>)>, FileProblems> {
    let (root, sink) = (parse(file)?, Sink::new(System::Us));
    let room = Room::new(FILE, root.get_ref(), root.span(), &sink);
    Ok(drawing::named(&room).map(|given| (given.value, given.range)))
}

/// Reads a design file, with the drawing of its outline if it names one, against a material table; `report` overrides the
/// units that the file asks for.
///
/// # Errors
///
/// Everything that is wrong with the files.
pub fn read_design<'a>(
    design: impl Into<Design<'a>>,
    table: &MaterialTable,
    report: Option<System>,
) -> Result<Top, Vec<FileProblems>> {
    read_with(design.into(), table, report, |top, asked, sink| {
        // Who has nothing to choose is not held up by how much there would be.
        if asked.is_written() {
            asked.space(&top, sink)?;
        }
        Some(top)
    })
}

/// As [`read_design`], with the space of what one may lay up.
///
/// # Errors
///
/// Everything that is wrong with the files; that a mount alone leaves nothing to choose; that there is too much to choose from.
pub fn read_choice<'a>(
    design: impl Into<Design<'a>>,
    table: &MaterialTable,
    report: Option<System>,
) -> Result<(Top, Space), Vec<FileProblems>> {
    read_with(design.into(), table, report, |top, asked, sink| {
        let space = asked.space(&top, sink)?;
        Some((top, space))
    })
}

/// Reads a design file; `then` says what is made of a top without fault.
fn read_with<T>(
    Design { file, drawing }: Design<'_>,
    table: &MaterialTable,
    report: Option<System>,
    then: impl FnOnce(Top, Asked<'_>, &Sink) -> Option<T>,
) -> Result<T, Vec<FileProblems>> {
    let faulty = |problems| vec![FileProblems { file: file.name.clone(), text: file.text.clone(), problems }];
    let criteria = Criteria::built_in().map_err(|error| faulty(vec![Problem::at(0..0, error.to_string())]))?;
    let root = parse(file).map_err(|problems| vec![problems])?;
    let sink = Sink::new(System::Us);
    let room = Room::new(FILE, root.get_ref(), root.span(), &sink);
    let drawn = Drawn::new(drawing);
    let read = read_top(&room, table, criteria, (report, &drawn));
    room.close();
    let of_drawing = drawn.into_problems();
    let clean = sink.is_empty() && of_drawing.is_none();
    let made = read.filter(|_| clean).and_then(|(top, asked)| then(top, asked, &sink));
    let problems = sink.into_sorted();
    match made {
        Some(made) => Ok(made),
        // What is wrong with the drawing may be all there is.
        None if problems.is_empty() && of_drawing.is_some() => Err(of_drawing.into_iter().collect()),
        None => Err(faulty(problems).into_iter().chain(of_drawing).collect()),
    }
}

/// The built-in material table with a user's tables over it.
///
/// # Errors
///
/// Everything that is wrong, table by table.
pub fn read_tables(tables: &[NamedText]) -> Result<MaterialTable, Vec<FileProblems>> {
    let texts: Vec<TableText<'_>> =
        tables.iter().map(|table| TableText { name: &table.name, text: &table.text }).collect();
    MaterialTable::layered(&texts).map_err(|problems| {
        let mut files: Vec<FileProblems> = Vec::new();
        for problem in problems {
            let text = tables.iter().find(|table| table.name == problem.file).map_or("", |table| &table.text);
            let place = files.iter().position(|file| file.file == problem.file).unwrap_or(files.len());
            if place == files.len() {
                let (file, text) = (problem.file.clone(), text.to_owned());
                files.push(FileProblems { file, text, problems: Vec::new() });
            }
            let file = &mut files[place];
            file.problems.push(Problem {
                range: problem.range,
                message: problem.message,
                help: problem.help,
                patch: None,
            });
        }
        files
    })
}

fn parse(file: &NamedText) -> Result<toml::Spanned<DeTable<'_>>, FileProblems> {
    let (root, errors) = DeTable::parse_recoverable(&file.text);
    if errors.is_empty() {
        return Ok(root);
    }
    // A list or a table that is not closed takes all that follows for something that it is not.
    let unclosed = errors.iter().any(|error| error.message().starts_with("unclosed"));
    let twice = |error: &&toml::de::Error| error.message() == "duplicate key";
    let key = |error: &toml::de::Error| error.span().and_then(|span| file.text.get(span));
    let first_of_its_kind = |index: &usize| {
        let error = &errors[*index];
        !twice(&error) || errors[..*index].iter().filter(twice).all(|before| key(before) != key(error))
    };
    let problems = (0..if unclosed { 1 } else { errors.len() })
        .filter(first_of_its_kind)
        .map(|index| {
            let error = &errors[index];
            let problem = Problem::at(error.span().unwrap_or(0..0), format!("this is not TOML: {}", error.message()));
            if let Some(quoted) = unquoted(&file.text, error.span()) {
                return problem.help(format!("a quantity or a text stands in quotation marks: `{quoted}`"));
            }
            match error.message() {
                "duplicate key" => problem.help(
                    "a key stands once in its table; what there may be several of has a header such as `[[pipe]]`, \
                     with two pairs of brackets, each time",
                ),
                message if message.starts_with("invalid boolean") => {
                    problem.help("a text or a quantity stands in quotation marks")
                }
                _ => problem.help(
                    "a line is `key = value` or a header such as `[top]` or `[[pipe]]`; a list may go on over more lines until \
                     its `]`",
                ),
            }
        })
        .collect();
    Err(FileProblems { file: file.name.clone(), text: file.text.clone(), problems })
}

/// A line whose value was meant as a text, with its quotation marks; none of any other.
fn unquoted(text: &str, at: Option<std::ops::Range<usize>>) -> Option<String> {
    let start = text.get(..at?.start)?.rfind('\n').map_or(0, |line_end| line_end + 1);
    let line = text.get(start..)?.lines().next()?;
    let (key, value) = line.split_once('=')?;
    let value = value.split_once('#').map_or(value, |(value, _)| value).trim();
    let is_plain = !value.is_empty() && !value.contains(['"', '\'', '[', ']', '{', '}', ',', '=']);
    (is_plain && value.contains(char::is_alphabetic)).then(|| format!("{} = \"{value}\"", key.trim()))
}

fn read_top<'t>(
    room: &Room<'_>,
    table: &'t MaterialTable,
    mut criteria: Criteria,
    (report, drawn): (Option<System>, &Drawn<'_>),
) -> Option<(Top, Asked<'t>)> {
    let title = room.text("title").map_or_else(|| "a top without a title".to_owned(), |given| given.value);
    let written = room.choice("report", &[("us", System::Us), ("si", System::Si)]).map(|given| given.value);
    let report = report.or(written).unwrap_or(System::Us);
    room.say_in(report);
    if let Some(tables) = room.room("tables") {
        tables.texts("files");
        tables.close();
    }
    change_criteria(room, &mut criteria);
    let service = service::read_service(room, &criteria);
    let scope = top::read_scope(room);
    let panel = top::read_panel(room, (table, &criteria), scope, drawn);
    let outline = panel.outline.as_ref();
    order::read_order(room, &mut criteria, panel.core.as_ref().map(|core| &core.family));
    proof::read_proof(room, &mut criteria);
    let asked = read_asked(room, table, scope, (panel.layup.as_ref(), outline));
    let fixings = fixing::read_fixings(room, table, panel.thickness());
    let supports = frame::read_supports(room, table, (&criteria, scope), (outline, &fixings));
    let inlays = top::read_inlays(room, table, (outline, &supports), panel.core_thickness);
    let gear = gear::read_gear(room, table, (outline, &fixings));
    // Fixings that cannot be read have been reported.
    let fastened = || room.rooms("gear").iter().any(|gear| gear.value("fixings").is_some());
    if scope == Scope::Patch && !fastened() {
        room.report(
            Problem::at(0..0, "a patch has nothing to look at: no `[[gear]]` says its `fixings`").help(
                "write `fixings = { fixing = \"radar bolts\", circle = 4, diameter = \"7 in\" }` in its `[[gear]]`",
            ),
        );
    }
    let held = gear.iter().map(|gear| &gear.fastened).chain(supports.iter().map(|support| &support.fastened));
    let idle_fixings = fixings.idle(held.flatten());
    let top = Top {
        scope,
        title,
        report,
        outline: panel.outline?,
        forward: panel.forward,
        crown: panel.crown,
        outer: panel.outer?,
        inner: panel.inner?,
        resin: panel.resin?,
        core: panel.core?,
        edge: panel.edge?,
        backings: inlays.backings,
        conduits: inlays.conduits,
        supports,
        gear,
        idle_fixings,
        service: service?,
        criteria: Arc::new(criteria),
    };
    Some((top, asked))
}

fn change_criteria(room: &Room<'_>, criteria: &mut Criteria) {
    let Some(changes) = room.room("criteria") else { return };
    for (key, value) in changes.entries() {
        let usual =
            criteria.records().iter().find(|record| record.id == key.value).map(|record| record.built_in.clone());
        let Some(usual) = usual else {
            changes.report(unknown_criterion(criteria, &key));
            continue;
        };
        let text = match value.get_ref() {
            DeValue::String(text) => text.to_string(),
            DeValue::Integer(number) => decimal(number),
            DeValue::Float(number) => number.to_string(),
            _ => {
                changes.report(
                    Problem::at(value.span(), format!("`{}` takes a number or a quantity", key.value))
                        .help(format!("it is \"{usual}\" where the file does not say otherwise")),
                );
                continue;
            }
        };
        if let Err(error) = criteria.with_override(&key.value, &text) {
            changes.report(match error.parse {
                Some(error) => fault(value, &text, *error),
                None => Problem::at(value.span(), error.message)
                    .help(format!("it is \"{usual}\" where the file does not say otherwise")),
            });
        }
    }
}

fn unknown_criterion(criteria: &Criteria, key: &Given<String>) -> Problem {
    let records = criteria.records();
    let known: Vec<&str> = records.iter().map(|record| record.id.as_str()).collect();
    let problem = Problem::at(key.range.clone(), format!("there is no criterion `{}`", key.value));
    if nearest(&key.value, known.iter().copied()).is_none() {
        return problem.help("`skinspan check --full` lists them all, each with its value");
    }
    offer(problem, &key.value, &known, Some(key.range.clone()), "`")
}

/// Reports a name that the material table does not have.
fn unknown_name(room: &Room<'_>, given: &Given<String>, name: &crate::material::UnknownName) {
    let problem = Problem::at(given.range.clone(), format!("no {} is called `{}`", name.kind, name.name));
    let known: Vec<&str> = name.known.iter().map(String::as_str).collect();
    room.report(offer(problem, &name.name, &known, Some(given.range.clone()), "\""));
}
