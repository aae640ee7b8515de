//! One field of a row: flags, texts, sub-layers, and properties with basis and source.

use std::{ops::Range, sync::Arc};

use toml::{
    Spanned,
    de::{DeTable, DeValue},
};

use super::{
    Basis, Origin,
    curve::Shape,
    measured::Dimension,
    reader::{Report, text, text_of},
    schema::{Bound, Cell, Datum, FRACTION, Field, Form, Layer, PLAIN},
};
use crate::{
    source::Mark,
    units::{Angle, Dimensioned, Ratio},
};

type Value<'i> = Spanned<DeValue<'i>>;

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

/// A number with its unit: value in SI base units, and the text as written.
fn quantity(dimension: Dimension, bound: Bound, value: &Value<'_>, report: &mut Report<'_>) -> Option<(f64, String)> {
    let (what, unit) = dimension.words();
    let written = match value.get_ref() {
        DeValue::String(text) => text.to_string(),
        DeValue::Integer(number) if number.radix() == 10 => number.as_str().to_owned(),
        DeValue::Float(number) => number.as_str().to_owned(),
        _ => {
            let help = Some(format!("write `\"… {unit}\"`"));
            report.add(value.span(), format!("{what} is due here"), help);
            return None;
        }
    };
    if !value.get_ref().is_str() && dimension != Dimension::Ratio {
        let help = Some(format!("write `\"{written} {unit}\"`, if that is meant"));
        report.add(value.span(), format!("{what} needs a unit"), help);
        return None;
    }
    let number = match dimension.read(&written) {
        Ok(number) => number,
        Err(error) => {
            let range = inside(&value.span(), &written, &error.range, report.text);
            report.add(range, error.message, error.help);
            return None;
        }
    };
    if !bound.holds(number) {
        report.add(value.span(), format!("`{written}` is not physical"), Some(bound.words.to_owned()));
        return None;
    }
    Some((number, written))
}

/// A range inside a quoted text as a range of the file; the whole text where escapes shift the bytes.
fn inside(span: &Range<usize>, written: &str, range: &Range<usize>, file: &str) -> Range<usize> {
    let start = span.start + 1;
    if file.get(start..start + written.len()) == Some(written) && range.end <= written.len() {
        start + range.start..start + range.end
    } else {
        span.clone()
    }
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
const MARKS: [(&str, Mark); 5] = [
    ("read", Mark::Read),
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

fn word_of<T: Copy>(
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

struct Values {
    shape: Shape,
    between: Option<(f64, f64)>,
    choices: Vec<f64>,
    /// Marks of single points that differ from the mark of the property.
    marks: Vec<Option<Mark>>,
    written: String,
}

/// Which shapes a form may have; the first is the usual one.
fn shapes(form: Form) -> &'static [&'static str] {
    match form {
        Form::Curve { argument: Dimension::Ratio, .. } => &["points", "law", "value"],
        Form::Curve { .. } => &["points", "value"],
        Form::Choices(_) => &["choices"],
        _ => &["value"],
    }
}

fn read_values(
    field: &Field,
    row: &str,
    key: &Range<usize>,
    table: &DeTable<'_>,
    report: &mut Report<'_>,
) -> Option<Values> {
    let allowed = shapes(field.form);
    let given: Vec<_> =
        table.iter().filter(|(k, _)| ["value", "points", "law", "choices"].contains(&&**k.get_ref())).collect();
    let [(word, value)] = given.as_slice() else {
        let message = format!("`{}` of {row} needs exactly one of: {}", field.name, allowed.join(", "));
        report.add(key.clone(), message, None);
        return None;
    };
    let name: &str = word.get_ref();
    if !allowed.contains(&name) {
        let help = Some(format!("write it as: {}", allowed.join(", ")));
        report.add(word.span(), format!("`{}` cannot be given as `{name}`", field.name), help);
        return None;
    }
    let banded = matches!(field.form, Form::Band(_));
    for (extra, fits) in [("between", banded), ("range", name == "law")] {
        match (table.get(extra), fits) {
            (Some(value), false) => {
                report.add(value.span(), format!("`{extra}` has no meaning beside `{name}` of `{}`", field.name), None);
            }
            (None, true) => {
                let help = Some(format!("add `{extra} = [\"…\", \"…\"]`"));
                report.add(key.clone(), format!("`{}` of {row} needs `{extra}`", field.name), help);
                return None;
            }
            _ => {}
        }
    }
    match (field.form, name) {
        (Form::Value(of) | Form::Band(of) | Form::Curve { value: of, .. }, "value") => {
            let (number, mut written) = quantity(of, field.bound, value, report)?;
            let mut between = None;
            if let (true, Some(ends)) = (banded, table.get("between")) {
                let (low, high) = pair(of, field.bound, ends, report)?;
                if !(low.0 <= number && number <= high.0) {
                    report.add(ends.span(), format!("{written} is not between {} and {}", low.1, high.1), None);
                    return None;
                }
                written = format!("{written} ({} to {})", low.1, high.1);
                between = Some((low.0, high.0));
            }
            Some(Values { shape: Shape::Constant(number), between, choices: Vec::new(), marks: Vec::new(), written })
        }
        (Form::Curve { argument, value: of }, "points") => read_points(field, argument, of, value, report),
        (Form::Curve { argument, value: of }, _) => {
            let range = table.get("range")?;
            read_law(field, of, value, pair(argument, PLAIN, range, report)?, report)
        }
        (Form::Choices(of), _) => {
            let list = array(value, report)?;
            let read: Option<Vec<_>> = list.iter().map(|v| quantity(of, field.bound, v, report)).collect();
            let (choices, written): (Vec<_>, Vec<_>) = read?.into_iter().unzip();
            if choices.is_empty() || choices.windows(2).any(|w| w[0] >= w[1]) {
                report.add(value.span(), format!("`{}` is a rising list", field.name), None);
                return None;
            }
            Some(Values {
                shape: Shape::Points([].into()),
                between: None,
                choices,
                marks: Vec::new(),
                written: written.join(", "),
            })
        }
        _ => None,
    }
}

fn array<'v, 'i>(value: &'v Value<'i>, report: &mut Report<'_>) -> Option<&'v [Value<'i>]> {
    let list = value.get_ref().as_array();
    if list.is_none() {
        report.add(value.span(), "a list is due here", Some("write `[…, …]`".to_owned()));
    }
    list.map(|list| &**list)
}

type Written = (f64, String);

fn pair(of: Dimension, bound: Bound, value: &Value<'_>, report: &mut Report<'_>) -> Option<(Written, Written)> {
    let [low, high] = array(value, report)? else {
        report.add(value.span(), "two ends are due here", Some("write `[\"…\", \"…\"]`".to_owned()));
        return None;
    };
    let (low, high) = (quantity(of, bound, low, report), quantity(of, bound, high, report));
    let (low, high) = (low?, high?);
    if low.0 > high.0 {
        report.add(value.span(), format!("{} is above {}", low.1, high.1), None);
        return None;
    }
    Some((low, high))
}

fn read_points(
    field: &Field,
    argument: Dimension,
    of: Dimension,
    value: &Value<'_>,
    report: &mut Report<'_>,
) -> Option<Values> {
    let mut points = Vec::new();
    let mut written = Vec::new();
    let list = array(value, report)?;
    let mut marks = Vec::new();
    for point in list {
        let (x, y, mark) = match point.get_ref().as_array().map(|p| &**p) {
            Some([x, y]) => (x, y, None),
            Some([x, y, mark]) => (x, y, Some(mark)),
            _ => {
                let help = format!("write `[\"… {}\", \"… {}\"]`", argument.words().1, of.words().1);
                report.add(point.span(), "a point has an argument, a value and perhaps a mark of its own", Some(help));
                return None;
            }
        };
        let (x, y) = (quantity(argument, PLAIN, x, report), quantity(of, field.bound, y, report));
        let ((x, x_text), (y, y_text)) = (x?, y?);
        points.push((x, y));
        let mark = match mark {
            Some(word) => Some(word_of("mark", text(word).unwrap_or_default(), &MARKS, word.span(), report)?),
            None => None,
        };
        marks.push(mark);
        let aside = mark.map_or(String::new(), |mark| format!(" ({})", mark.words()));
        written.push(format!("{y_text} at {x_text}{aside}"));
    }
    let rises = |pair: &[(f64, f64)]| pair[0].0 < pair[1].0;
    let up = points.windows(2).all(|w| w[0].1 <= w[1].1);
    let down = points.windows(2).all(|w| w[0].1 >= w[1].1);
    if points.is_empty() || !points.windows(2).all(rises) {
        report.add(value.span(), "points stand in rising order of their first number", None);
        return None;
    }
    if !up && !down {
        let help = Some("a reading mistake is likelier than such a material; smooth real scatter first".to_owned());
        report.add(value.span(), format!("`{}` goes up and down", field.name), help);
        return None;
    }
    let shape = Shape::Points(points.into());
    Some(Values { shape, between: None, choices: Vec::new(), marks, written: written.join("; ") })
}

/// Steps in which the range of a law is searched for values that are not physical.
const LAW_STEPS: u8 = 16;

fn read_law(
    field: &Field,
    of: Dimension,
    value: &Value<'_>,
    (low, high): (Written, Written),
    report: &mut Report<'_>,
) -> Option<Values> {
    let list = array(value, report)?;
    let read: Option<Vec<_>> = list.iter().map(|v| quantity(of, PLAIN, v, report)).collect();
    let (coefficients, texts): (Vec<_>, Vec<_>) = read?.into_iter().unzip();
    let shape = Shape::Law(coefficients.into(), low.0, high.0);
    let physical = (0..=LAW_STEPS)
        .map(|i| low.0 + (high.0 - low.0) * f64::from(i) / f64::from(LAW_STEPS))
        .all(|x| field.bound.holds(shape.at(x)));
    if !physical {
        report.add(value.span(), "the law leaves the physical range", Some(field.bound.words.to_owned()));
        return None;
    }
    let terms = texts.iter().enumerate().map(|(power, text)| match power {
        0 => text.clone(),
        1 => format!("({text})·ψ"),
        _ => format!("({text})·ψ^{power}"),
    });
    let written = format!("{}, ψ from {} to {}", terms.collect::<Vec<_>>().join(" + "), low.1, high.1);
    Some(Values { shape, between: None, choices: Vec::new(), marks: Vec::new(), written })
}
