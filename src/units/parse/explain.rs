//! Why a text is not the quantity that is due.

use std::ops::Range;

use super::{
    super::catalog::{Entry, System},
    ParseError, Reading, guess, number, number_fault, part, part_start,
    unit::{Case, Found, find, find_elsewhere},
};

/// Nothing at `at` is a number.
pub(super) fn no_number(entry: &Entry, text: &str, at: usize) -> ParseError {
    let rest = &text[at..];
    let token = at..at + word(rest);
    let example = guess::example(entry);
    if rest.is_empty() {
        return ParseError::new(0..text.len(), format!("{} is missing", entry.article)).help(example);
    }
    let bare = rest.trim_start_matches(|c: char| c == '+' || number::is_dash(c));
    if bare.starts_with('∞') || ["nan", "inf", "infinity"].iter().any(|name| starts_with_word(bare, name)) {
        return ParseError::new(token, format!("{} must be a finite number", entry.article)).help(example);
    }
    if let Some(after) = bare.strip_prefix(',').filter(|after| after.starts_with(|c: char| c.is_ascii_digit())) {
        let comma = text.len() - after.len() - 1;
        return ParseError::new(comma..comma + 1, "the decimal sign is a point").offer(text, comma..comma + 1, "0.");
    }
    if let Some(found) = find(entry, rest, Case::Kept).filter(|found| found.len > 0) {
        let after = rest[found.len..].trim();
        if matches!(number::read(after, 0, true), Ok(Some(number)) if number.end == after.len()) {
            return ParseError::new(at..at + found.len, "the unit comes after the number").offer(
                text,
                at..text.len(),
                &format!("{after} {}", &rest[..found.len]),
            );
        }
    }
    ParseError::new(token, format!("{} starts with a number", entry.article)).help(example)
}

/// A number is there, but no unit of the quantity follows it at `at`.
pub(super) fn no_unit(entry: &Entry, text: &str, number: Range<usize>, at: usize) -> ParseError {
    if let Some(error) = number_fault::find(entry, text, &number, at) {
        return error;
    }
    let rest = &text[at..];
    if rest.is_empty() || rest.starts_with(is_stop) {
        return unit_missing(entry, text, number);
    }
    if let Some((other, found)) = find_elsewhere(entry, rest, Case::Kept) {
        return wrong_quantity(entry, text, other, at..at + found.len);
    }
    let token = at..at + word(rest);
    let unknown = ParseError::new(token.clone(), format!("unknown unit of {}: `{}`", entry.name, &text[token.clone()]));
    if let Some(name) = guess::unit(entry, &text[token.clone()]) {
        return unknown.offer(text, token, &name);
    }
    // `PSI` is psi, but `nm` is not Nm.
    if let Some((other, found)) = find_elsewhere(entry, rest, Case::Ignored)
        && rest[..found.len].contains(char::is_uppercase)
    {
        return wrong_quantity(entry, text, other, at..at + found.len);
    }
    unknown.help(guess::list(entry))
}

/// The quantity is complete, but text follows it.
pub(super) fn rest(entry: &'static Entry, text: &str, reading: &Reading) -> ParseError {
    let at = super::skip_spaces(text, reading.end);
    let tail = at..text.trim_end().len();
    let start = text.len() - text.trim_start().len();
    if reading.unit.len == 0
        && let Some(error) = number_fault::find(entry, text, &(start..reading.end), at)
    {
        return error;
    }
    // `5 N m` where a force is due: the longer reading is what was written.
    if let Some((other, found)) = find_elsewhere(entry, &text[reading.unit_at..], Case::Kept)
        && found.len > reading.unit.len
    {
        return wrong_quantity(entry, text, other, reading.unit_at..reading.unit_at + found.len);
    }
    if let Some((_, unit_at, next)) = part(entry, text, reading.end).filter(|_| reading.unit.len > 0) {
        let (first, second) = (reading.unit.unit.symbol, next.unit.symbol);
        let end = unit_at + next.len;
        let message = if !entry.compound {
            format!("one {} is due here, not two", entry.name)
        } else if reading.unit.unit.system != next.unit.system {
            format!("`{first}` and `{second}` do not go together in one {}", entry.name)
        } else {
            format!("`{second}` cannot follow `{first}`: the larger unit comes first")
        };
        return ParseError::new(at..end, message);
    }
    if let Ok(Some(number)) = number::read(text, part_start(text, reading.end), false)
        && number.end == tail.end
        && reading.unit.len > 0
        && let Some(smaller) = next_smaller(reading.unit)
    {
        let message = format!("`{}` needs a unit", &text[tail.clone()]);
        return ParseError::new(tail, message).offer(text, number.end..number.end, &format!(" {smaller}"));
    }
    let message = format!("this does not belong to the {}", entry.name);
    if reading.unit.len == 0 {
        return ParseError::new(tail, message).help("a ratio is a bare number or a percentage");
    }
    let error = ParseError::new(tail.clone(), message);
    // A stray mark may go; a word or a number meant something.
    if text[tail].contains(char::is_alphanumeric) { error } else { error.offer(text, reading.end..text.len(), "") }
}

fn unit_missing(entry: &Entry, text: &str, number: Range<usize>) -> ParseError {
    let written = &text[number.clone()];
    let small = number::read(text, number.start, true).is_ok_and(|read| read.is_some_and(|n| n.magnitude < 1e-3));
    let [si, us] = match entry.name {
        // 23e-6 is meant per kelvin, 23 in millionths.
        "thermal expansion" if small => ["1/K", "1/°F"],
        _ => entry.usual,
    };
    ParseError::new(number, format!("{} needs a unit", entry.article))
        .help(format!("did you mean `{written} {si}` or `{written} {us}`?"))
}

fn wrong_quantity(entry: &Entry, text: &str, other: &Entry, token: Range<usize>) -> ParseError {
    let written = &text[token.clone()];
    let is_ounce = ["oz", "oz.", "ounce", "ounces"].iter().any(|oz| oz.eq_ignore_ascii_case(written));
    if entry.name == "mass per area" && is_ounce {
        let start = text[..token.start].trim_start();
        let message = "`oz` alone can mean two masses per area: mat is sold in oz/ft2, cloth in oz/yd2";
        return ParseError::new(token, message)
            .help(format!("write `{start}oz/ft2` for mat or `{start}oz/yd2` for cloth"));
    }
    let message = format!("`{written}` is a unit of {}, but {} is needed here", other.name, entry.article);
    let error = ParseError::new(token.clone(), message);
    let is_last = text[token.end..].trim_end().is_empty();
    match guess::sibling(entry, written).or_else(|| guess::quotient(entry, written).filter(|_| is_last)) {
        Some(name) => error.offer(text, token, &name),
        None => error.help(guess::list(entry)),
    }
}

/// The unit that people leave out after this one.
fn next_smaller(unit: Found) -> Option<&'static str> {
    match (unit.unit.system, unit.unit.symbol) {
        (Some(System::Us), "ft") => Some("in"),
        (Some(System::Us), "lb") => Some("oz"),
        (None, "h") => Some("min"),
        _ => None,
    }
}

/// Bytes of the first word, or of the mark that stands there instead.
fn word(text: &str) -> usize {
    match text.chars().next() {
        Some(c) if is_stop(c) => c.len_utf8(),
        _ => text.find(is_stop).unwrap_or(text.len()),
    }
}

fn is_stop(c: char) -> bool {
    c.is_whitespace() || matches!(c, ',' | ';' | ':' | '@' | '(' | ')')
}

fn starts_with_word(text: &str, name: &str) -> bool {
    text.get(..name.len()).is_some_and(|start| start.eq_ignore_ascii_case(name))
        && !text[name.len()..].starts_with(char::is_alphabetic)
}
