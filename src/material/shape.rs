//! The shapes of a property: one value, points, a law, a list of what is sold.

use std::ops::Range;

use toml::de::DeTable;

use super::{
    cell::{MARKS, word_of},
    curve::Shape,
    measured::Dimension,
    reader::{Report, text},
    scalar::{Value, Written, array, pair, quantity},
    schema::{Field, Form, PLAIN},
};
use crate::source::Mark;

pub(crate) struct Values {
    pub shape: Shape,
    pub between: Option<(f64, f64)>,
    pub choices: Vec<f64>,
    /// Marks of single points that differ from the mark of the property.
    pub marks: Vec<Option<Mark>>,
    pub written: String,
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

pub(crate) fn read_values(
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
