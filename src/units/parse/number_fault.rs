//! Faults of a number that only show where its unit should be: commas, spaces, ranges, powers of ten.

use std::ops::Range;

use super::{
    super::catalog::Entry,
    ParseError, number, skip_spaces,
    unit::{self, Case, folded},
};

/// What is wrong with the number in `number`, judged by what stands at `at` after it.
pub(super) fn find(entry: &Entry, text: &str, number: &Range<usize>, at: usize) -> Option<ParseError> {
    let next = text[at..].chars().next()?;
    let digit_follows = |from: usize| text[from..].starts_with(|c: char| c.is_ascii_digit());
    match next {
        ',' | '.' if at == number.end && digit_follows(at + 1) => {
            let end = run(text, at, ".,");
            Some(separators(text, number.start..end, at))
        }
        // `1/k` is a unit with its letter in the wrong case, and no number.
        '0'..='9'
            if at > number.end && unit::find(entry, &text[at..], Case::Ignored).is_none_or(|unit| unit.len == 0) =>
        {
            Some(spaces(text, number.start, at))
        }
        '/' => {
            let below = skip_spaces(text, at + 1);
            digit_follows(below).then(|| loose_fraction(text, number, below))
        }
        '×' | 'x' | '*' | '·' => power_of_ten(text, number, at),
        c if number::is_dash(c) && digit_follows(at + c.len_utf8()) => {
            let end = run(text, at + c.len_utf8(), ".");
            Some(ParseError::new(number.start..end, "one value is due here, not a range"))
        }
        _ => None,
    }
}

/// Byte after the digits, and the marks among them, that start at `at`.
fn run(text: &str, at: usize, marks: &str) -> usize {
    let rest = &text[at..];
    at + rest.find(|c: char| !c.is_ascii_digit() && !marks.contains(c)).unwrap_or(rest.len())
}

/// `1 500`, `5 6`; the space may be a thin or an unbreakable one.
fn spaces(text: &str, start: usize, at: usize) -> ParseError {
    let rest = text[at..].trim_start_matches(|c: char| c.is_ascii_digit() || c == '.' || c.is_whitespace());
    let written = text[start..text.len() - rest.len()].trim_end();
    let range = start..start + written.len();
    let error = ParseError::new(range.clone(), "two numbers stand here without a unit between them");
    let is_group = |group: &str| group.split('.').next().is_some_and(|whole| whole.len() == 3);
    if written.split_whitespace().skip(1).all(is_group) && !rest.starts_with(',') {
        error.offer(text, range, &written.split_whitespace().collect::<String>())
    } else {
        error
    }
}

/// `1 / 2`, `1.5/2`.
fn loose_fraction(text: &str, number: &Range<usize>, below: usize) -> ParseError {
    let end = run(text, below, "");
    let above = &text[number.clone()];
    let error = ParseError::new(number.start..end, "a fraction is two whole numbers with `/` between and no space");
    if above.bytes().all(|byte| byte.is_ascii_digit()) {
        error.offer(text, number.start..end, &format!("{above}/{}", &text[below..end]))
    } else {
        error
    }
}

/// `5 × 10³`, `5*10^3`.
fn power_of_ten(text: &str, number: &Range<usize>, at: usize) -> Option<ParseError> {
    let after = text[at..].trim_start_matches(['×', 'x', '*', '·', ' ']).strip_prefix("10")?;
    let power = after.strip_prefix('^').unwrap_or(after);
    let is_power = |c: char| folded(c).is_ascii_digit() || folded(c) == '-';
    let exponent: String = power.chars().take_while(|c| is_power(*c)).map(folded).collect();
    let exponent: i32 = exponent.parse().ok()?;
    let range = number.start..text.len() - power.trim_start_matches(is_power).len();
    let good = format!("{}e{exponent}", &text[number.clone()]);
    Some(ParseError::new(range.clone(), "a power of ten is written with `e`").offer(text, range, &good))
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
