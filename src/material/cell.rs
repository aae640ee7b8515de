//! One field of a row: flags, texts, sub-layers, and properties with basis and source.

use std::{ops::Range, sync::Arc};

use toml::{Spanned, de::DeTable};

use super::{
    Basis, Origin,
    measured::Dimension,
    reader::{Report, text, text_of},
    scalar::{Value, quantity},
    schema::{Cell, Datum, FRACTION, Field, Form, Layer, PLAIN},
    shape::{Values, read_values},
};
use crate::{
    source::Mark,
    units::{Angle, Dimensioned, Ratio},
};

pub(crate) fn read_cell(
    field: &Field,
    row: &str,
    key: Range<usize>,
    value: &Value<'_>,
    report: &mut Report<'_>,
) -> Option<Cell> {
    let wrong = |report: &mut Report<'_>, what: &str, example: &str| {
        let help = Some(format!("write `{} = {example}`", field.name));
        report.add(value.span(), format!("`{}` is {what}", field.name), help);
        None
    };
    match field.form {
        Form::Flag => match value.get_ref().as_bool() {
            Some(flag) => Some(Cell::Flag(flag)),
            None => wrong(report, "yes or no", "true"),
        },
        Form::Text => match text(value) {
            Some(text) => Some(Cell::Text(text.to_owned())),
            None => wrong(report, "a text", "\"…\""),
        },
        Form::Texts => {
            let texts = value.get_ref().as_array().and_then(|list| list.iter().map(text).collect::<Option<Vec<_>>>());
            match texts {
                Some(texts) => Some(Cell::Texts(texts.into_iter().map(str::to_owned).collect())),
                None => wrong(report, "a list of texts", "[\"…\", \"…\"]"),
            }
        }
        Form::Layers => match value.get_ref().as_array() {
            Some(list) => list.iter().map(|layer| read_layer(layer, report)).collect::<Option<_>>().map(Cell::Layers),
            None => wrong(report, "a list of sub-layers", "[{ angle = \"0 deg\", share = 1.0 }]"),
        },
        _ => match value.get_ref().as_table() {
            Some(table) => read_property(field, row, &key, table, report).map(Cell::Property),
            None => wrong(
                report,
                "a property, with its basis and source",
                "{ value = \"…\", basis = \"…\", source = \"…\", mark = \"…\" }",
            ),
        },
    }
}

fn read_layer(value: &Value<'_>, report: &mut Report<'_>) -> Option<Layer> {
    let help = || Some("write `{ angle = \"0 deg\", share = 0.5 }`".to_owned());
    let Some(table) = value.get_ref().as_table() else {
        report.add(value.span(), "a sub-layer has an angle and a share", help());
        return None;
    };
    for key in table.keys().filter(|key| !["angle", "share"].contains(&&**key.get_ref())) {
        report.unknown(key.span(), "key in a sub-layer", key.get_ref(), ["angle", "share"].into_iter());
    }
    let (Some(angle), Some(share)) = (table.get("angle"), table.get("share")) else {
        report.add(value.span(), "a sub-layer has an angle and a share", help());
        return None;
    };
    let angle = quantity(Dimension::Angle, PLAIN, angle, report);
    let share = quantity(Dimension::Ratio, FRACTION, share, report);
    Some(Layer { angle: Angle::from_si(angle?.0), share: Ratio::from_si(share?.0) })
}

const KEYS: [&str; 11] =
    ["value", "between", "points", "law", "range", "choices", "basis", "source", "locator", "mark", "condition"];
const BASES: [(&str, Basis); 5] = [
    ("measured", Basis::Measured),
    ("minimum", Basis::Minimum),
    ("characteristic", Basis::Characteristic),
    ("typical", Basis::Typical),
    ("estimate", Basis::Estimate),
];
pub(crate) const MARKS: [(&str, Mark); 6] = [
    ("read", Mark::Read),
    ("quoted", Mark::Quoted),
    ("derived", Mark::Derived),
    ("memory", Mark::Memory),
    ("practice", Mark::Practice),
    ("assumed", Mark::Assumed),
];

fn read_property(
    field: &Field,
    row: &str,
    key: &Range<usize>,
    table: &DeTable<'_>,
    report: &mut Report<'_>,
) -> Option<Datum> {
    for word in table.keys().filter(|word| !KEYS.contains(&&**word.get_ref())) {
        let what = format!("key in `{}` of {row}", field.name);
        report.unknown(word.span(), &what, word.get_ref(), KEYS.into_iter());
    }
    let values = read_values(field, row, key, table, report);
    let basis = choice(field, row, key, table, "basis", &BASES, report);
    let mark = choice(field, row, key, table, "mark", &MARKS, report);
    let source = text_of(table, "source", report);
    if !table.contains_key("source") {
        let help = Some("add `source = \"…\"`, a key of `[[source]]`".to_owned());
        report.add(key.clone(), format!("`{}` of {row} has no source", field.name), help);
    }
    let locator = text_of(table, "locator", report).unwrap_or_default();
    let condition = text_of(table, "condition", report);
    let (values, basis) = (values?, basis?);
    let origin = Origin {
        row: row.to_owned(),
        property: field.name.to_owned(),
        as_written: values.written.clone(),
        source: source?,
        locator,
        mark: mark?,
        condition,
        table: report.file.to_string(),
    };
    let choices = values.choices.as_slice().into();
    let source_range = table.get("source").map_or(key.clone(), Spanned::span);
    let Values { shape, between, marks, .. } = values;
    let weaker = marks.iter().map(|mark| mark.map(|mark| Arc::new(Origin { mark, ..origin.clone() }))).collect();
    Some(Datum { shape, between, choices, weaker, basis, origin: Arc::new(origin), source_range })
}

/// A word out of a short list.
fn choice<T: Copy>(
    field: &Field,
    row: &str,
    key: &Range<usize>,
    table: &DeTable<'_>,
    name: &str,
    words: &[(&'static str, T)],
    report: &mut Report<'_>,
) -> Option<T> {
    let known = || words.iter().map(|(word, _)| *word);
    if !table.contains_key(name) {
        let help = Some(format!("add `{name}`, one of {}", known().collect::<Vec<_>>().join(", ")));
        report.add(key.clone(), format!("`{}` of {row} has no {name}", field.name), help);
    }
    let word = text_of(table, name, report)?;
    let place = table.get(name).map_or(key.clone(), Spanned::span);
    word_of(name, &word, words, place, report)
}

pub(crate) fn word_of<T: Copy>(
    name: &str,
    word: &str,
    words: &[(&'static str, T)],
    place: Range<usize>,
    report: &mut Report<'_>,
) -> Option<T> {
    let found = words.iter().find(|(known, _)| *known == word).map(|(_, value)| *value);
    if found.is_none() {
        report.unknown(place, name, word, words.iter().map(|(word, _)| *word));
    }
    found
}
