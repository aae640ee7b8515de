//! Tables over tables: a row of a later table replaces, field by field, what an earlier one says under its id.

use std::collections::{BTreeMap, BTreeSet, btree_map::Entry};

use super::{
    TableProblem,
    reader::Contents,
    row::{Kind, Place, Row},
    schema::Cell,
    source_list::{Seen, SourceText},
};
use crate::source::Mark;

/// Rows and sources of all tables so far.
#[derive(Debug, Default)]
pub(crate) struct Layers {
    pub rows: BTreeMap<(Kind, String), Row>,
    pub sources: BTreeMap<String, SourceText>,
}

fn problem(place: &Place, message: String, help: Option<String>) -> TableProblem {
    TableProblem { file: place.file.to_string(), range: place.range.clone(), message, help }
}

impl Layers {
    /// Lays one table over the others.
    pub(crate) fn add(&mut self, contents: Contents, problems: &mut Vec<TableProblem>) {
        for source in contents.sources {
            let key = source.source.key.clone();
            // Replacing a source would change, unseen, what the values of other tables rest on.
            match self.sources.entry(key) {
                Entry::Vacant(place) => {
                    place.insert(source.source);
                }
                Entry::Occupied(taken) => {
                    let message = format!("source `{}` stands in the list already", taken.key());
                    problems.push(problem(&source.place, message, Some("choose another key".to_owned())));
                }
            }
        }
        let mut written = BTreeSet::new();
        for row in contents.rows {
            let key = (row.kind, row.id.clone());
            if !written.insert(key.clone()) {
                let message = format!("{} `{}` stands in this table twice", row.kind.word(), row.id);
                let help = Some("write one row with all its properties, or choose another id".to_owned());
                problems.push(problem(&row.place, message, help));
                continue;
            }
            let base = match &row.like {
                Some(like) => {
                    let base = self.rows.get(&(row.kind, like.clone())).cloned();
                    if base.is_none() {
                        let known = self.rows.keys().filter(|(kind, _)| *kind == row.kind).map(|(_, id)| id.as_str());
                        let unknown = super::UnknownName::new(row.kind.word(), like, known);
                        problems.push(problem(&row.place, format!("`like`: {unknown}"), None));
                        continue;
                    }
                    base
                }
                None => self.rows.remove(&key),
            };
            let row = match base {
                Some(base) => over(base, row),
                None => row,
            };
            self.rows.insert(key, row);
        }
    }

    /// Reports what a row lacks and which sources do not exist.
    pub(crate) fn check(&self, problems: &mut Vec<TableProblem>) {
        for row in self.rows.values() {
            let (kind, id) = (row.kind.word(), &row.id);
            for (name, text) in [("name", &row.name), ("family", &row.family)] {
                if text.is_empty() {
                    let help = Some(format!("add `{name} = \"…\"`"));
                    problems.push(problem(&row.place, format!("{kind} `{id}` has no `{name}`"), help));
                }
            }
            for field in row.kind.fields().iter().filter(|field| field.required) {
                // A field that was written and could not be read has been reported where it stands.
                if !row.places.contains_key(field.name) {
                    let help = Some(format!("add `{}`, or take the rest of another row with `like`", field.name));
                    problems.push(problem(&row.place, format!("{kind} `{id}` has no `{}`", field.name), help));
                }
            }
            for (name, cell) in &row.cells {
                if let (Cell::Property(datum), Some(place)) = (cell, row.places.get(name)) {
                    let place = Place { range: datum.source_range.clone(), ..place.clone() };
                    self.check_source(&datum.origin.source, datum.origin.mark, &place, problems);
                }
            }
        }
    }

    fn check_source(&self, key: &str, mark: Mark, place: &Place, problems: &mut Vec<TableProblem>) {
        let Some(source) = self.sources.get(key) else {
            let unknown = super::UnknownName::new("source", key, self.sources.keys().map(String::as_str));
            let help = unknown.near.map_or_else(
                || "add it to the table as `[[source]]`".to_owned(),
                |near| format!("did you mean `{near}`?"),
            );
            problems.push(problem(place, format!("unknown source `{key}`"), Some(help)));
            return;
        };
        let seen = matches!(source.seen, Seen::Read | Seen::Excerpt);
        if matches!(mark, Mark::Read | Mark::Quoted) && !seen {
            let message = format!("marked `{}`, but source `{key}` is {}", mark.words(), source.seen.words());
            problems.push(problem(place, message, Some("mark it `memory`, or change `seen`".to_owned())));
        }
    }
}

/// The fields of `row`, and those of `base` where it has none.
fn over(base: Row, mut row: Row) -> Row {
    for (name, place) in base.places {
        if !row.places.contains_key(name) {
            row.places.insert(name, place);
            if let Some(cell) = base.cells.get(name) {
                row.cells.insert(name, cell.clone());
            }
        }
    }
    if row.name.is_empty() {
        row.name = base.name;
    }
    if row.family.is_empty() {
        row.family = base.family;
    }
    row.note = row.note.or(base.note);
    row
}
