//! Numbers with their units, and lists of them.

use std::ops::Range;

use toml::{Spanned, de::DeValue};

use super::{measured::Dimension, reader::Report, schema::Bound};

pub(crate) type Value<'i> = Spanned<DeValue<'i>>;

/// A number with its unit: value in SI base units, and the text as written.
pub(crate) fn quantity(
    dimension: Dimension,
    bound: Bound,
    value: &Value<'_>,
    report: &mut Report<'_>,
) -> Option<(f64, String)> {
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

pub(crate) fn array<'v, 'i>(value: &'v Value<'i>, report: &mut Report<'_>) -> Option<&'v [Value<'i>]> {
    let list = value.get_ref().as_array();
    if list.is_none() {
        report.add(value.span(), "a list is due here", Some("write `[…, …]`".to_owned()));
    }
    list.map(|list| &**list)
}

pub(crate) type Written = (f64, String);

pub(crate) fn pair(
    of: Dimension,
    bound: Bound,
    value: &Value<'_>,
    report: &mut Report<'_>,
) -> Option<(Written, Written)> {
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
