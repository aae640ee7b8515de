//! Why a text is not the quantity that is due, and what was probably meant.

use std::ops::Range;

use super::{
    super::catalog::{Entry, System, Unit},
    ParseError, Reading, number, part, part_start,
    unit::{Case, Found, find, find_elsewhere},
};

/// Longer words are not misspelt units.
const LONGEST_WORD: usize = 16;

/// Nothing at `at` is a number.
pub(super) fn no_number(entry: &Entry, text: &str, at: usize) -> ParseError {
    let rest = &text[at..];
    let token = at..at + word(rest);
    let example = format!("write a number{}", units_example(entry));
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
    if let Some(error) = number_goes_on(text, &number, at) {
        return error;
    }
    let rest = &text[at..];
    if !rest.starts_with(|c: char| c.is_alphanumeric() || matches!(c, '°' | '%' | '\'' | '"' | '/' | 'º' | '′' | '″'))
    {
        return unit_missing(entry, text, number);
    }
    if let Some((other, found)) = find_elsewhere(entry, rest, Case::Kept) {
        return wrong_quantity(entry, text, other, at..at + found.len);
    }
    let token = at..at + word(rest);
    let unknown = ParseError::new(token.clone(), format!("unknown unit of {}: `{}`", entry.name, &text[token.clone()]));
    if let Some(name) = corrected(entry, &text[token.clone()]) {
        return unknown.offer(text, token, &name);
    }
    if let Some((other, found)) = find_elsewhere(entry, rest, Case::Ignored) {
        return wrong_quantity(entry, text, other, at..at + found.len);
    }
    unknown.help(list(entry))
}

/// The quantity is complete, but text follows it.
pub(super) fn rest(entry: &'static Entry, text: &str, reading: &Reading) -> ParseError {
    let at = super::skip_spaces(text, reading.end);
    let tail = at..text.trim_end().len();
    let start = text.len() - text.trim_start().len();
    if reading.unit.len == 0
        && let Some(error) = number_goes_on(text, &(start..reading.end), at)
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
    let end = reading.end;
    ParseError::new(tail, message).offer(text, end..text.len(), "")
}

/// Faults of the number that only show where the unit should be: commas, spaces, ranges.
fn number_goes_on(text: &str, number: &Range<usize>, at: usize) -> Option<ParseError> {
    let next = text[at..].chars().next()?;
    let digit_follows = |from: usize| text[from..].starts_with(|c: char| c.is_ascii_digit());
    match next {
        ',' | '.' if at == number.end && digit_follows(at + 1) => {
            let run =
                text[at..].bytes().take_while(|byte| byte.is_ascii_digit() || matches!(byte, b',' | b'.')).count();
            Some(separators(text, number.start..at + run, at))
        }
        c if c.is_ascii_digit() && at > number.end => {
            let end =
                at + text[at..].bytes().take_while(|byte| byte.is_ascii_digit() || matches!(byte, b' ' | b'.')).count();
            let whole = text[number.start..end].trim_end();
            let range = number.start..number.start + whole.len();
            let error = ParseError::new(range.clone(), "two numbers stand here without a unit between them");
            let grouped = whole.split(' ').skip(1).all(|group| group.split('.').next().is_some_and(|g| g.len() == 3));
            Some(if grouped { error.offer(text, range, &whole.replace(' ', "")) } else { error })
        }
        c if number::is_dash(c) && digit_follows(at + c.len_utf8()) => {
            let from = at + c.len_utf8();
            let end = from + text[from..].bytes().take_while(|byte| byte.is_ascii_digit() || *byte == b'.').count();
            Some(ParseError::new(number.start..end, "one value is due here, not a range"))
        }
        _ => None,
    }
}

/// `1,5`, `1,500`, `1.234,5`, `1,234.5`, `1.2.3`.
fn separators(text: &str, run: Range<usize>, at: usize) -> ParseError {
    let written = &text[run.clone()];
    let commas = written.matches(',').count();
    let points = written.matches('.').count();
    if commas == 0 {
        return ParseError::new(at..at + 1, "a number has one decimal point");
    }
    let error = ParseError::new(at..at + 1, "a number is written without commas, with a decimal point");
    let digits = written.trim_start_matches(|c: char| !c.is_ascii_digit());
    let groups_of_three = digits.split('.').next().is_some_and(|whole| {
        !whole.starts_with('0')
            && whole.split(',').enumerate().all(|(i, g)| g.len() == 3 || i == 0 && (1..=2).contains(&g.len()))
    });
    let plain = written.replace(',', "");
    let point = written.replace('.', "").replacen(',', ".", 1);
    let first_point = written.find('.').unwrap_or(usize::MAX);
    let first_comma = written.find(',').unwrap_or(usize::MAX);
    let (before, after) = (&text[..run.start], &text[run.end..]);
    if commas == 1 && points == 0 && groups_of_three {
        error.help(format!("did you mean `{before}{point}{after}` or `{before}{plain}{after}`?"))
    } else if groups_of_three && points <= 1 && (points == 0 || first_comma < first_point) {
        error.offer(text, run, &plain)
    } else if commas == 1 && (points == 0 || first_point < first_comma) {
        error.offer(text, run, &point)
    } else {
        error
    }
}

fn unit_missing(entry: &Entry, text: &str, number: Range<usize>) -> ParseError {
    let written = &text[number.clone()];
    let [si, us] = entry.usual;
    ParseError::new(number, format!("{} needs a unit", entry.article))
        .help(format!("did you mean `{written} {si}` or `{written} {us}`?"))
}

fn wrong_quantity(entry: &Entry, text: &str, other: &Entry, token: Range<usize>) -> ParseError {
    let written = &text[token.clone()];
    if entry.name == "mass per area" && matches!(written, "oz" | "ounce" | "ounces") {
        let start = &text[..token.start];
        return ParseError::new(
            token,
            "`oz` alone can mean two masses per area: mat is sold in oz/ft2, cloth in oz/yd2",
        )
        .help(format!(
            "write `{}/ft2` for mat or `{}/yd2` for cloth",
            start.to_owned() + "oz",
            start.to_owned() + "oz"
        ));
    }
    let message = format!("`{written}` is a unit of {}, but {} is needed here", other.name, entry.article);
    match corrected_sibling(entry, written) {
        Some(name) => ParseError::new(token.clone(), message).offer(text, token, &name),
        None => ParseError::new(token, message).help(list(entry)),
    }
}

/// The unit that was meant by a misspelt one.
fn corrected(entry: &Entry, written: &str) -> Option<String> {
    corrected_sibling(entry, written).or_else(|| {
        let length = written.chars().count();
        if !(2..=LONGEST_WORD).contains(&length) {
            return None;
        }
        names(entry)
            .map(|name| (strsim::damerau_levenshtein(name, written), name))
            .filter(|(distance, name)| *distance <= 1 + length / 5 && name.chars().count() > *distance)
            .min_by_key(|(distance, _)| *distance)
            .map(|(_, name)| name.to_owned())
    })
}

/// The same letters in the right case, or pounds and kilograms of force for those of mass.
fn corrected_sibling(entry: &Entry, written: &str) -> Option<String> {
    let whole = |text: &str, case| find(entry, text, case).filter(|found| found.len == text.len() && found.len > 0);
    if let Some(found) = whole(written, Case::Ignored) {
        return Some(found.name.to_owned());
    }
    for (mass, force) in [("lb", "lbf"), ("lbs", "lbf"), ("kg", "kgf"), ("lbf", "lb"), ("kgf", "kg")] {
        let sibling = written.strip_prefix(mass).filter(|rest| !rest.starts_with(char::is_alphabetic));
        if let Some(name) =
            sibling.map(|rest| format!("{force}{rest}")).filter(|name| whole(name, Case::Kept).is_some())
        {
            return Some(name);
        }
    }
    None
}

fn names(entry: &Entry) -> impl Iterator<Item = &'static str> {
    entry.units.iter().flat_map(|unit| unit.names.iter().copied())
}

fn list(entry: &Entry) -> String {
    let names: Vec<_> = entry
        .units
        .iter()
        .filter_map(|unit: &Unit| unit.names.first().copied())
        .filter(|name| !name.is_empty())
        .collect();
    if entry.units.iter().any(|unit| unit.symbol.is_empty()) {
        return "a ratio is a bare number or a percentage".to_owned();
    }
    format!("units of {}: {}", entry.name, names.join(", "))
}

fn units_example(entry: &Entry) -> String {
    match entry.usual {
        ["", _] => ", for example `0.35` or `35 %`".to_owned(),
        [si, us] => format!(" and a unit, for example `12 {si}` or `12 {us}`"),
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

/// Bytes of the first word.
fn word(text: &str) -> usize {
    text.find(|c: char| c.is_whitespace() || matches!(c, ',' | ';' | '@' | '(' | ')'))
        .filter(|end| *end > 0)
        .unwrap_or_else(|| {
            // A word of one mark, or all of the text.
            match text.chars().next() {
                Some(c) if matches!(c, ',' | ';' | '@' | '(' | ')') => c.len_utf8(),
                _ => text.len(),
            }
        })
}

fn starts_with_word(text: &str, name: &str) -> bool {
    text.get(..name.len()).is_some_and(|start| start.eq_ignore_ascii_case(name))
        && !text[name.len()..].starts_with(char::is_alphabetic)
}
