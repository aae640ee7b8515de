//! Numbers as they stand on drawings: `1.5`, `3/4`, `1-1/2`, `1½`, `2e3`.

use super::ParseError;

/// A number at some place of a text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Number {
    pub negative: bool,
    pub magnitude: f64,
    /// Byte after its last character.
    pub end: usize,
}

impl Number {
    pub fn value(self) -> f64 {
        if self.negative { -self.magnitude } else { self.magnitude }
    }
}

const VULGAR: &[(char, f64, f64)] = &[
    ('½', 1.0, 2.0),
    ('¼', 1.0, 4.0),
    ('¾', 3.0, 4.0),
    ('⅛', 1.0, 8.0),
    ('⅜', 3.0, 8.0),
    ('⅝', 5.0, 8.0),
    ('⅞', 7.0, 8.0),
    ('⅓', 1.0, 3.0),
    ('⅔', 2.0, 3.0),
    ('⅕', 1.0, 5.0),
    ('⅖', 2.0, 5.0),
    ('⅗', 3.0, 5.0),
    ('⅘', 4.0, 5.0),
    ('⅙', 1.0, 6.0),
    ('⅚', 5.0, 6.0),
    ('⅐', 1.0, 7.0),
    ('⅑', 1.0, 9.0),
    ('⅒', 1.0, 10.0),
];

/// Hyphen, and the signs that word processors put in its place.
pub(super) fn is_dash(c: char) -> bool {
    matches!(c, '-' | '\u{2010}' | '\u{2011}' | '\u{2012}' | '\u{2013}' | '\u{2212}')
}

fn is_slash(c: char) -> bool {
    matches!(c, '/' | '\u{2044}' | '\u{2215}')
}

/// Byte after the decimal digits that start at `at`.
fn digits(text: &str, at: usize) -> usize {
    at + text.as_bytes()[at..].iter().take_while(|byte| byte.is_ascii_digit()).count()
}

fn first(text: &str, at: usize) -> Option<char> {
    text[at..].chars().next()
}

fn skip_spaces(text: &str, at: usize) -> usize {
    text.len() - text[at..].trim_start().len()
}

/// The sign at `at`, if any, and the byte after it.
fn sign(text: &str, at: usize) -> (bool, usize) {
    match first(text, at) {
        Some('+') => (false, at + 1),
        Some(c) if is_dash(c) => (true, at + c.len_utf8()),
        _ => (false, at),
    }
}

/// Reads a number that starts at `at`, a sign included if it is due; `None` if there is none.
pub(super) fn read(text: &str, at: usize, signed: bool) -> Result<Option<Number>, ParseError> {
    let (negative, start) = if signed { sign(text, at) } else { (false, at) };
    let whole = digits(text, start);
    let number = |magnitude, end| Ok(Some(Number { negative, magnitude, end }));

    if whole == start {
        if let Some((part, end)) = fraction(text, start)? {
            return number(part, end);
        }
    } else {
        if let Some((part, end)) = quotient(text, start)? {
            return number(part, end);
        }
        if let Some((part, end)) = mixed_part(text, whole)? {
            if part >= 1.0 {
                return Err(ParseError::new(at..end, "the fraction of a mixed number must be less than one"));
            }
            return number(float(text, start, whole)? + part, end);
        }
    }

    let end = decimal(text, start, whole);
    if end == start { Ok(None) } else { number(float(text, start, end)?, end) }
}

/// Byte after a decimal number; `start` itself if no digit is there.
fn decimal(text: &str, start: usize, whole: usize) -> usize {
    let bytes = text.as_bytes();
    let mut end = whole;
    if bytes.get(end) == Some(&b'.') {
        let after = digits(text, end + 1);
        if whole == start && after == end + 1 {
            return start;
        }
        end = after;
    }
    if end > start && matches!(bytes.get(end), Some(b'e' | b'E')) {
        let from = end + 1 + usize::from(matches!(bytes.get(end + 1), Some(b'+' | b'-')));
        if bytes.get(from).is_some_and(u8::is_ascii_digit) {
            end = digits(text, from);
        }
    }
    end
}

/// `3/4` or `¾`.
fn fraction(text: &str, at: usize) -> Result<Option<(f64, usize)>, ParseError> {
    let vulgar = first(text, at).and_then(|c| VULGAR.iter().find(|row| row.0 == c));
    match vulgar {
        Some((c, up, down)) => Ok(Some((up / down, at + c.len_utf8()))),
        None => quotient(text, at),
    }
}

/// `3/4`.
fn quotient(text: &str, at: usize) -> Result<Option<(f64, usize)>, ParseError> {
    let slash = digits(text, at);
    let Some(c) = first(text, slash).filter(|c| slash > at && is_slash(*c)) else { return Ok(None) };
    let below = slash + c.len_utf8();
    let end = digits(text, below);
    if end == below {
        return Ok(None);
    }
    let (up, down) = (float(text, at, slash)?, float(text, below, end)?);
    if down == 0.0 {
        return Err(ParseError::new(at..end, "a fraction cannot have zero below the line"));
    }
    Ok(Some((up / down, end)))
}

/// The fraction that follows a whole number: `½`, ` 1/2`, `-1/2`.
fn mixed_part(text: &str, at: usize) -> Result<Option<(f64, usize)>, ParseError> {
    let from = match first(text, at) {
        Some(c) if is_dash(c) => at + c.len_utf8(),
        _ => skip_spaces(text, at),
    };
    // Without a space or hyphen between, digits would have belonged to the whole number.
    fraction(text, from)
}

fn float(text: &str, start: usize, end: usize) -> Result<f64, ParseError> {
    let written = &text[start..end];
    let fault = |message: &str| ParseError::new(start..end, message);
    let value: f64 = written.parse().map_err(|_| fault("this is not a number"))?;
    if !value.is_finite() {
        return Err(fault("this number is too large"));
    }
    let mantissa = written.split(['e', 'E']).next().unwrap_or(written);
    if value == 0.0 && mantissa.bytes().any(|byte| (b'1'..=b'9').contains(&byte)) {
        return Err(fault("this number is too small"));
    }
    Ok(value)
}

#[cfg(test)]
mod tests {
    use super::{Number, read};

    fn value(text: &str) -> f64 {
        let number = read(text, 0, true).ok().flatten();
        assert_eq!(number.map(|number| number.end), Some(text.len()), "{text}");
        number.map_or(f64::NAN, Number::value)
    }

    #[test]
    fn every_written_form_of_a_number() {
        for (text, expected) in [
            ("1.5", 1.5),
            ("-1.5", -1.5),
            ("−1.5", -1.5),
            ("+7", 7.0),
            (".5", 0.5),
            ("5.", 5.0),
            ("2e3", 2000.0),
            ("2.5E-1", 0.25),
            ("3/4", 0.75),
            ("3⁄4", 0.75),
            ("1-1/2", 1.5),
            ("1 1/2", 1.5),
            ("-1-1/2", -1.5),
            ("1½", 1.5),
            ("1 ½", 1.5),
            ("1-½", 1.5),
            ("⅝", 0.625),
        ] {
            assert_eq!(value(text).to_bits(), f64::to_bits(expected), "{text}");
        }
    }

    #[test]
    fn faulty_numbers_are_refused_and_words_are_none() {
        for text in ["1/0", "1 3/2", "1e999", "1e-999"] {
            assert!(read(text, 0, true).is_err(), "{text}");
        }
        for text in ["", ".", "-", "e5", "nan", "inf", "mm"] {
            assert_eq!(read(text, 0, true), Ok(None), "{text}");
        }
        assert_eq!(read("-5", 0, false), Ok(None));
    }
}
