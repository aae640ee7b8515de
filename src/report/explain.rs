//! Explains one check, one material, one value of a material, or one criterion.

use serde_json::{Value, json};

use super::{
    page::{Page, Tone, left},
    words,
};
use crate::{
    check::{CHECKS, Check, OnPlate},
    criteria::{Criteria, Record},
    input::nearest,
    material::{MaterialTable, PropertyView, RowView},
    source::Mark,
};

/// There is nothing of that name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NothingToExplain {
    /// What was asked for.
    pub name: String,
    /// The property of it that was asked for, if that is what does not exist.
    pub property: Option<String>,
    /// The nearest name, with the nearest property behind it if it is a property that does not exist.
    pub near: Option<String>,
}

impl std::fmt::Display for NothingToExplain {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match &self.property {
            Some(property) => write!(f, "`{}` has no property `{property}`", self.name),
            None => write!(f, "there is no check, material or factor `{}`", self.name),
        }
    }
}

impl std::error::Error for NothingToExplain {}

/// What a name can stand for.
enum Subject<'a> {
    Check(&'static dyn Check),
    /// Rows of different kinds may share a name.
    Materials(Vec<(RowView<'a>, Vec<PropertyView<'a>>)>),
    Criterion(&'a Record),
}

fn find<'a>(
    name: &str,
    property: Option<&str>,
    table: &'a MaterialTable,
    criteria: &'a Criteria,
) -> Result<Subject<'a>, NothingToExplain> {
    let no_property = |wanted: &str, near: Option<String>| NothingToExplain {
        name: name.to_owned(),
        property: Some(wanted.to_owned()),
        near,
    };
    let rows: Vec<_> =
        table.rows().filter(|row| row.id() == name).map(|row| (row, row.properties().collect::<Vec<_>>())).collect();
    if !rows.is_empty() {
        let Some(wanted) = property else { return Ok(Subject::Materials(rows)) };
        let spelt = wanted.replace('-', "_");
        let all = rows.iter().flat_map(|(_, properties)| properties.iter().map(|property| property.name));
        let near = nearest(&spelt, all).map(|near| format!("{name} {}", near.replace('_', "-")));
        let only: Vec<_> = rows
            .into_iter()
            .filter_map(|(row, properties)| {
                let only: Vec<_> = properties.into_iter().filter(|property| property.name == spelt).collect();
                (!only.is_empty()).then_some((row, only))
            })
            .collect();
        return if only.is_empty() { Err(no_property(wanted, near)) } else { Ok(Subject::Materials(only)) };
    }
    let records = criteria.records();
    let subject = match CHECKS.iter().find(|check| check.id() == name || check.title() == name) {
        Some(check) => Some(Subject::Check(*check)),
        None => records.iter().find(|record| record.id == name).map(|record| Subject::Criterion(record)),
    };
    match (subject, property) {
        (Some(subject), None) => return Ok(subject),
        (Some(_), Some(wanted)) => return Err(no_property(wanted, Some(name.to_owned()))),
        (None, _) => {}
    }
    let names = CHECKS
        .iter()
        .map(|check| check.id())
        .chain(table.rows().map(RowView::id))
        .chain(records.iter().map(|record| record.id.as_str()));
    Err(NothingToExplain { name: name.to_owned(), property: None, near: nearest(name, names).map(str::to_owned) })
}

/// Explains in words.
///
/// # Errors
///
/// [`NothingToExplain`] with the nearest name.
pub fn explain(
    name: &str,
    property: Option<&str>,
    table: &MaterialTable,
    criteria: &Criteria,
    width: usize,
) -> Result<String, NothingToExplain> {
    let mut page = Page::new(width.clamp(60, 120));
    match find(name, property, table, criteria)? {
        Subject::Check(check) => {
            let citation = check.citation();
            page.line(&Tone::Strong.paint(&format!("{} ({})", check.title(), check.id())));
            page.paragraph("  what      ", check.what());
            page.paragraph("  formula   ", check.formula());
            page.paragraph("  holds for ", check.limits());
            page.paragraph("  source    ", &cited(table, citation.work.0, citation.locator, citation.mark));
            if let Some(OnPlate { formula, limits, citation }) = check.on_plate() {
                page.blank();
                page.paragraph("  on plate  ", formula);
                page.paragraph("  holds for ", limits);
                page.paragraph("  source    ", &cited(table, citation.work.0, citation.locator, citation.mark));
            }
        }
        Subject::Materials(rows) => {
            for (index, (row, properties)) in rows.into_iter().enumerate() {
                if index > 0 {
                    page.blank();
                }
                material(&mut page, row, &properties, table);
            }
        }
        Subject::Criterion(record) => {
            page.line(&Tone::Strong.paint(&format!("{} = {}", record.id, record.as_written)));
            page.paragraph("  what      ", &record.title);
            page.paragraph("  group     ", &record.group);
            if !record.note.is_empty() {
                page.paragraph("  note      ", &record.note);
            }
            page.paragraph("  source    ", &cited(table, &record.source, &record.locator, record.mark));
            page.paragraph("  change it ", &format!("in the design file: [criteria] {} = \"…\"", record.id));
        }
    }
    Ok(page.done())
}

fn material(page: &mut Page, row: RowView<'_>, properties: &[PropertyView<'_>], table: &MaterialTable) {
    page.line(&Tone::Strong.paint(&format!("{} ({} {})", row.name(), row.kind().word(), row.id())));
    if let Some(note) = row.note() {
        page.paragraph("  ", note);
    }
    for (name, text) in row.facts() {
        page.paragraph(&format!("  {} ", left(&name.replace('_', " "), 24)), &text);
    }
    for property in properties {
        let origin = property.origin;
        page.paragraph(&format!("  {} ", left(&property.name.replace('_', " "), 24)), property.meaning);
        let indent = " ".repeat(27);
        page.paragraph(&indent, &format!("{}; {}", origin.as_written, words::basis(property.basis)));
        if let Some(condition) = &origin.condition {
            page.paragraph(&indent, &format!("when: {condition}"));
        }
        page.paragraph(&indent, &cited(table, &origin.source, &origin.locator, origin.mark));
        page.paragraph(&indent, &format!("table: {}", origin.table));
    }
}

/// A source in words; a place in it is named only where there is one.
fn cited(table: &MaterialTable, key: &str, locator: &str, mark: Mark) -> String {
    let place = if locator.is_empty() { String::new() } else { format!("; {locator}") };
    format!("{}{place} ({})", source(table, key), mark.words())
}

fn source(table: &MaterialTable, key: &str) -> String {
    table.source(key).map_or_else(|| key.to_owned(), |source| source.text.clone())
}

/// Explains for machines: a list, since materials of different kinds may share a name.
///
/// # Errors
///
/// [`NothingToExplain`] with the nearest name.
pub fn explain_json(
    name: &str,
    property: Option<&str>,
    table: &MaterialTable,
    criteria: &Criteria,
) -> Result<Value, NothingToExplain> {
    Ok(Value::Array(match find(name, property, table, criteria)? {
        Subject::Check(check) => vec![check_json(check, table)],
        Subject::Materials(rows) => rows.iter().map(|(row, properties)| row_json(*row, properties)).collect(),
        Subject::Criterion(record) => vec![criterion_json(record)],
    }))
}

pub(super) fn check_json(check: &dyn Check, table: &MaterialTable) -> Value {
    let (citation, on_plate) = (check.citation(), check.on_plate());
    json!({
        "check": check.id(),
        "title": check.title(),
        "what": check.what(),
        "formula": words::one_line(check.formula()),
        "formula_on_plate": on_plate.map(|on_plate| words::one_line(on_plate.formula)),
        "limits_on_plate": on_plate.map(|on_plate| on_plate.limits),
        "source_on_plate": on_plate.map(|on_plate| source(table, on_plate.citation.work.0)),
        "locator_on_plate": on_plate.map(|on_plate| on_plate.citation.locator),
        "mark_on_plate": on_plate.map(|on_plate| on_plate.citation.mark.words()),
        "limits": check.limits(),
        "source": source(table, citation.work.0),
        "locator": citation.locator,
        "mark": citation.mark.words(),
    })
}

pub(super) fn row_json(row: RowView<'_>, properties: &[PropertyView<'_>]) -> Value {
    let properties: Vec<Value> = properties
        .iter()
        .map(|property| {
            json!({
                "property": property.name,
                "meaning": property.meaning,
                "as_written": property.origin.as_written,
                "basis": words::basis(property.basis),
                "source": property.source.map(|source| source.text.as_str()),
                "source_key": property.origin.source,
                "locator": property.origin.locator,
                "mark": property.origin.mark.words(),
                "condition": property.origin.condition,
                "table": property.origin.table,
            })
        })
        .collect();
    let facts: serde_json::Map<String, Value> =
        row.facts().map(|(name, text)| (name.to_owned(), Value::String(text))).collect();
    json!({
        "kind": row.kind().word(),
        "id": row.id(),
        "name": row.name(),
        "note": row.note(),
        "facts": facts,
        "properties": properties,
    })
}

pub(super) fn criterion_json(record: &Record) -> Value {
    json!({
        "criterion": record.id,
        "group": record.group,
        "title": record.title,
        "value": record.as_written,
        "built_in": record.built_in,
        "changed": record.changed_by_user,
        "source": record.source,
        "locator": record.locator,
        "mark": record.mark.words(),
        "note": record.note,
    })
}
