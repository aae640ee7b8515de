//! How small and how large a value ever is. Beyond that it is a slip in its unit or its digits, and not a matter of
//! judgement: each limit stands beside its key and lies well outside of what anybody builds or meets.

use std::ops::RangeInclusive;

use super::{
    problem::Problem,
    reader::{Given, Room},
};
use crate::units::{Dimensioned, parse, show_in};

/// Most units that are offered in place of the written one.
const MOST_OFFERED: usize = 3;

/// Decimals of a limit in the unit that was written.
const DECIMALS: usize = 1;

/// The value of `key`, if it lies in what `noun` ever is; one that does not is reported with units in which it would.
pub(super) fn usual<Q: Dimensioned>(
    room: &Room<'_>,
    key: &str,
    given: Option<Given<Q>>,
    (noun, range): (&str, RangeInclusive<Q>),
) -> Option<Given<Q>> {
    let given = given?;
    if range.contains(&given.value) {
        return Some(given);
    }
    let side = if given.value < *range.start() { "less" } else { "more" };
    // Whoever writes knots reads knots: the reports' own units stand beside them.
    // Not so where the limits are too small in that unit to be read.
    let legible = in_written(&given.text, *range.start()).filter(|_| !is_small(&given.text, *range.start()));
    let said = |value: Q| legible.as_ref().and(in_written(&given.text, value)).unwrap_or_else(|| room.both(value));
    let message = match legible.as_ref().and(in_written(&given.text, given.value)) {
        Some(written) => format!("`{key}` is {written}, {}, {side} than {noun} ever is", room.both(given.value)),
        None => format!("`{key}` is {}, {side} than {noun} ever is", room.both(given.value)),
    };
    let bounds = if range.start().si() == 0.0 {
        format!("it is {} at the most here", said(*range.end()))
    } else {
        format!("it is from {} to {} here", said(*range.start()), said(*range.end()))
    };
    let meant = in_other_units(&given.text, &range);
    let problem = Problem::at(given.range.clone(), message);
    room.report(match meant.as_slice() {
        [] => problem.help(format!("{bounds}: is the unit right?")),
        [only] => problem.help(format!("{bounds}; did you mean `{only}`?")).patch(given.range, format!("\"{only}\"")),
        several => {
            let list: Vec<String> = several.iter().map(|text| format!("`{text}`")).collect();
            problem.help(format!("{bounds}; did you mean {}?", list.join(" or ")))
        }
    });
    None
}

/// The value in the unit of the text, where that is one that no report prints.
fn in_written<Q: Dimensioned>(text: &str, value: Q) -> Option<String> {
    let unit = Q::ENTRY.unit(unit_of(text).1)?;
    let mut printed = Q::ENTRY.us.iter().chain(Q::ENTRY.si).filter_map(|step| Q::ENTRY.unit(step.unit));
    let is_printed = printed.any(|printed| printed.symbol == unit.symbol);
    (!is_printed).then(|| show_in(value, unit.symbol, DECIMALS))
}

/// Whether a limit is none, or less than one of the unit of the text.
fn is_small<Q: Dimensioned>(text: &str, limit: Q) -> bool {
    Q::ENTRY.unit(unit_of(text).1).is_none_or(|unit| (unit.of_si(limit.si()) * 10.0).round() < 10.0)
}

/// The number of a text and its unit.
fn unit_of(text: &str) -> (&str, &str) {
    let text = text.trim();
    let end = text.find(|c: char| c.is_alphabetic() || matches!(c, '°' | '%')).unwrap_or(text.len());
    (text[..end].trim(), text[end..].trim())
}

/// The same number in other units of the quantity, where it would be a usual one.
fn in_other_units<Q: Dimensioned>(text: &str, range: &RangeInclusive<Q>) -> Vec<String> {
    let (number, written) = unit_of(text);
    if !written.is_empty() && Q::ENTRY.unit(written).is_none() {
        // Several units in one text, or an exponent: which of the numbers is meant is anybody's guess.
        return Vec::new();
    }
    let others = Q::UNITS.iter().filter_map(|unit| unit.names.first().filter(|name| !name.is_empty()));
    let texts = others.map(|name| format!("{number} {name}"));
    texts.filter(|text| parse::<Q>(text).is_ok_and(|value| range.contains(&value))).take(MOST_OFFERED).collect()
}
