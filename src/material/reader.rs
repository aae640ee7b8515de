//! From the text of one table to rows, each cell with its place; everything wrong is reported in one run.

use std::{collections::BTreeMap, ops::Range, sync::Arc};

use toml::{
    Spanned,
    de::{DeTable, DeValue},
};

use super::{
    TableProblem,
    cell::read_cell,
    problem::near,
    row::{Kind, Place, Row},
    source_list::{SourceRow, read_source},
};

/// What one table holds.
#[derive(Debug, Default)]
pub(crate) struct Contents {
    pub rows: Vec<Row>,
    pub sources: Vec<SourceRow>,
}

/// A problem collector that knows its file.
pub(crate) struct Report<'a> {
    pub file: &'a Arc<str>,
    pub text: &'a str,
    problems: &'a mut Vec<TableProblem>,
}

impl Report<'_> {
    pub(crate) fn add(&mut self, range: Range<usize>, message: impl Into<String>, help: Option<String>) {
        let file = self.file.to_string();
        self.problems.push(TableProblem { file, range, message: message.into(), help });
    }

    /// Reports a word that is none of the known ones.
    pub(crate) fn unknown<'k>(
        &mut self,
        range: Range<usize>,
        what: &str,
        word: &str,
        known: impl Iterator<Item = &'k str> + Clone,
    ) {
        let help = near(word, known.clone()).map_or_else(
            || format!("known: {}", known.collect::<Vec<_>>().join(", ")),
            |near| format!("did you mean `{near}`?"),
        );
        self.add(range, format!("unknown {what} `{word}`"), Some(help));
    }

    pub(crate) fn place(&self, range: Range<usize>) -> Place {
        Place { file: self.file.clone(), range }
    }
}

/// Reads one table; what cannot be read is left out and reported.
pub(crate) fn read_contents(file: &str, text: &str, problems: &mut Vec<TableProblem>) -> Contents {
    let (document, errors) = DeTable::parse_recoverable(text);
    if !errors.is_empty() {
        // What the parser guessed after an error would give problems of its own that nobody wrote.
        problems.extend(errors.into_iter().map(|error| TableProblem {
            file: file.to_owned(),
            range: error.span().unwrap_or(0..text.len()),
            message: error.message().to_owned(),
            help: None,
        }));
        return Contents::default();
    }
    let name = Arc::from(file);
    let mut report = Report { file: &name, text, problems };
    let mut contents = Contents::default();
    for (key, value) in document.get_ref() {
        let word: &str = key.get_ref();
        let kind = Kind::ALL.into_iter().find(|kind| kind.word() == word);
        if kind.is_none() && word != "source" {
            let known = Kind::ALL.iter().map(|kind| kind.word()).chain(["source"]);
            report.unknown(key.span(), "kind of row", word, known);
            continue;
        }
        let Some(rows) = value.get_ref().as_array() else {
            report.add(key.span(), format!("`{word}` is not a list of rows"), Some(format!("write `[[{word}]]`")));
            continue;
        };
        for entry in rows {
            let Some(table) = entry.get_ref().as_table() else {
                let help = Some(format!("write each row as `[[{word}]]`"));
                report.add(entry.span(), format!("a row of `{word}` is a table"), help);
                continue;
            };
            match kind {
                Some(kind) => contents.rows.extend(read_row(kind, table, entry.span(), &mut report)),
                None => contents.sources.extend(read_source(table, entry.span(), &mut report)),
            }
        }
    }
    contents
}

/// The plain texts that every row may have.
const TEXTS: [&str; 5] = ["id", "name", "family", "note", "like"];

fn read_row(kind: Kind, table: &DeTable<'_>, range: Range<usize>, report: &mut Report<'_>) -> Option<Row> {
    let mut texts = BTreeMap::new();
    for name in TEXTS {
        if let Some(text) = text_of(table, name, report) {
            texts.insert(name, text);
        }
    }
    let Some(id) = texts.remove("id") else {
        if !table.contains_key("id") {
            report.add(range, format!("a row of `{}` has no id", kind.word()), Some("add `id = \"…\"`".to_owned()));
        }
        return None;
    };
    if id.is_empty() || !id.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-') {
        let help = Some("use lower-case letters, digits and `-`".to_owned());
        report.add(range, format!("`{id}` cannot be an id"), help);
        return None;
    }
    let place = report.place(range);
    let row = format!("{} {id}", kind.word());
    let (mut cells, mut places) = (BTreeMap::new(), BTreeMap::new());
    for (key, value) in table {
        let word: &str = key.get_ref();
        if TEXTS.contains(&word) {
            continue;
        }
        let Some(field) = kind.fields().iter().find(|field| field.name == word) else {
            let known = kind.fields().iter().map(|field| field.name).chain(TEXTS);
            report.unknown(key.span(), &format!("key in {} `{id}`", kind.word()), word, known);
            continue;
        };
        places.insert(field.name, report.place(key.span()));
        if let Some(cell) = read_cell(field, &row, key.span(), value, report) {
            cells.insert(field.name, cell);
        }
    }
    Some(Row {
        kind,
        id,
        name: texts.remove("name").unwrap_or_default(),
        family: texts.remove("family").unwrap_or_default(),
        note: texts.remove("note"),
        like: texts.remove("like"),
        cells,
        places,
        place,
    })
}

/// A text under a key, reported if it is something else.
pub(crate) fn text_of(table: &DeTable<'_>, name: &str, report: &mut Report<'_>) -> Option<String> {
    let value = table.get(name)?;
    let text = text(value);
    if text.is_none() {
        report.add(value.span(), format!("`{name}` is a text"), Some(format!("write `{name} = \"…\"`")));
    }
    text.map(str::to_owned)
}

/// The text in a value.
pub(crate) fn text<'v>(value: &'v Spanned<DeValue<'_>>) -> Option<&'v str> {
    value.get_ref().as_str()
}
