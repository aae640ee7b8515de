//! Quantities from text, with the place and the cause of a fault, and what would be right.

mod error;
mod explain;
mod guess;
mod number;
mod number_fault;
mod unit;

pub use error::ParseError;

use self::{
    number::Number,
    unit::{Case, Found},
};
use super::catalog::{Dimensioned, Entry};

/// Which values a caller can use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// All.
    Any,
    /// Zero or more.
    NotNegative,
    /// More than zero.
    Positive,
}

/// Reads a quantity: a number and a unit of it, and nothing else.
///
/// Numbers may be decimal (`1.5`, `2e3`), fractions (`3/4`, `1-1/2`, `1 1/2`, `1½`) and, for lengths, masses and
/// times, compounds (`5 ft 6 in`, `5' 6-1/2"`). The space before the unit is optional.
///
/// # Errors
///
/// Anything else, with its place, its cause and, where it can be guessed, the right text. A bare number is refused: no
/// one but the writer knows its unit.
///
/// # Examples
///
/// ```
/// use skinspan::units::{Length, Pressure, Ratio, parse};
/// assert_eq!(parse::<Length>("1-1/2 in")?.value, 0.0381);
/// assert_eq!(parse::<Length>("5 ft 6 in")?, parse::<Length>("66in")?);
/// assert_eq!(parse::<Pressure>("2 N/mm^2")?, parse::<Pressure>("2 MPa")?);
/// assert_eq!(parse::<Ratio>("35 %")?, parse::<Ratio>("0.35")?);
///
/// let error = parse::<Length>("600").unwrap_err();
/// assert_eq!(error.message, "a length needs a unit");
/// assert_eq!(error.help.as_deref(), Some("did you mean `600 mm` or `600 in`?"));
/// # Ok::<(), skinspan::units::ParseError>(())
/// ```
pub fn parse<Q: Dimensioned>(text: &str) -> Result<Q, ParseError> {
    let reading = read(Q::ENTRY, text)?;
    if text[reading.end..].trim_start().is_empty() {
        Ok(Q::from_si(reading.si))
    } else {
        Err(explain::rest(Q::ENTRY, text, &reading))
    }
}

/// Reads a quantity that must have a sign; `what` is its name with the article, `a thickness`.
///
/// # Errors
///
/// As [`parse`], and where the sign is not the one that is due.
///
/// # Examples
///
/// ```
/// use skinspan::units::{Length, Sign, parse_signed};
/// let error = parse_signed::<Length>("-3 mm", Sign::Positive, "a thickness").unwrap_err();
/// assert_eq!(error.to_string(), "a thickness cannot be negative; did you mean `3 mm`?");
/// ```
pub fn parse_signed<Q: Dimensioned>(text: &str, sign: Sign, what: &str) -> Result<Q, ParseError> {
    let quantity = parse::<Q>(text)?;
    let fault = match sign {
        Sign::NotNegative | Sign::Positive if quantity.si() < 0.0 => "negative",
        Sign::Positive if quantity.si() == 0.0 => "zero",
        _ => return Ok(quantity),
    };
    let start = text.len() - text.trim_start().len();
    let error = ParseError::new(start..text.trim_end().len(), format!("{what} cannot be {fault}"));
    Err(match text[start..].strip_prefix(number::is_dash) {
        Some(positive) if quantity.si() < 0.0 => error.offer(text, start..text.len() - positive.trim_start().len(), ""),
        _ => error.help("write more than zero"),
    })
}

/// How such a quantity is written, as an advice.
///
/// # Examples
///
/// ```
/// use skinspan::units::{Length, example};
/// assert_eq!(example::<Length>(), "write a number and a unit, for example `12 mm` or `12 in`");
/// ```
#[must_use]
pub fn example<Q: Dimensioned>() -> String {
    guess::example(Q::ENTRY)
}

/// Reads a quantity at the start of a text and tells how many bytes it took.
///
/// # Errors
///
/// As [`parse`], except that any text may follow.
///
/// # Examples
///
/// ```
/// use skinspan::units::{ArealMassDensity, parse_prefix};
/// let (mass, used) = parse_prefix::<ArealMassDensity>("600 g/m2 @ 45")?;
/// assert_eq!((mass.value, used), (0.6, 8));
/// # Ok::<(), skinspan::units::ParseError>(())
/// ```
pub fn parse_prefix<Q: Dimensioned>(text: &str) -> Result<(Q, usize), ParseError> {
    let reading = read(Q::ENTRY, text)?;
    Ok((Q::from_si(reading.si), reading.end))
}

/// A quantity at the start of a text.
struct Reading {
    si: f64,
    end: usize,
    /// The last unit of it and where that starts.
    unit: Found,
    unit_at: usize,
}

fn read(entry: &'static Entry, text: &str) -> Result<Reading, ParseError> {
    let start = text.len() - text.trim_start().len();
    let Some(number) = number::read(text, start, true)? else { return Err(explain::no_number(entry, text, start)) };
    let unit_at = skip_spaces(text, number.end);
    let Some(unit) = unit::find(entry, &text[unit_at..], Case::Kept) else {
        return Err(explain::no_unit(entry, text, start..number.end, unit_at));
    };
    // A bare ratio ends with its number.
    let end = if unit.len == 0 { number.end } else { unit_at + unit.len };
    let mut reading = Reading { si: number.value(), end, unit, unit_at };
    let mut total = number;
    if entry.compound {
        while let Some((part, next)) = continued(entry, text, &reading) {
            // In terms of the smaller unit, so that `5 ft 6 in` is `66 in` to the last bit.
            total.magnitude = total.magnitude * reading.unit.unit.in_terms_of(next.unit.unit) + part.magnitude;
            reading = next;
        }
    }
    reading.si = reading.unit.unit.to_si(total.value());

    let range = start..reading.end;
    if !reading.si.is_finite() {
        return Err(ParseError::new(range, format!("{} of this size is beyond all use", entry.article)));
    }
    if reading.si == 0.0 && total.magnitude != 0.0 && !reading.unit.unit.has_offset() {
        return Err(ParseError::new(range, "this number is too small"));
    }
    if entry.lowest.is_some_and(|lowest| reading.si < lowest) {
        return Err(ParseError::new(range, "this is below absolute zero"));
    }
    Ok(reading)
}

/// The next part of a compound: a number without sign in a smaller unit of the same system.
fn continued(entry: &'static Entry, text: &str, before: &Reading) -> Option<(Number, Reading)> {
    let (part, unit_at, unit) = part(entry, text, before.end)?;
    let smaller = before.unit.unit.in_terms_of(unit.unit) > 1.0;
    (smaller && unit.unit.system == before.unit.unit.system)
        .then(|| (part, Reading { si: 0.0, end: unit_at + unit.len, unit, unit_at }))
}

/// A number and a unit after `at`; a hyphen may stand between, as in `5'-6"`.
fn part(entry: &'static Entry, text: &str, at: usize) -> Option<(Number, usize, Found)> {
    let number = number::read(text, part_start(text, at), false).ok()??;
    let unit_at = skip_spaces(text, number.end);
    let unit = unit::find(entry, &text[unit_at..], Case::Kept)?;
    Some((number, unit_at, unit))
}

/// Where the number of a next part starts. A hyphen with a space beside it could as well mean less.
fn part_start(text: &str, at: usize) -> usize {
    let joined =
        text[at..].strip_prefix(number::is_dash).filter(|after| after.starts_with(|c: char| c.is_ascii_digit()));
    joined.map_or_else(|| skip_spaces(text, at), |after| text.len() - after.len())
}

fn skip_spaces(text: &str, at: usize) -> usize {
    text.len() - text[at..].trim_start().len()
}

#[cfg(test)]
mod tests;
