//! Finding a unit at some place of a text.

use super::super::catalog::{Entry, QUANTITIES, Unit};

/// A unit found in a text.
#[derive(Clone, Copy, Debug)]
pub(super) struct Found {
    pub unit: &'static Unit,
    /// The name that matched.
    pub name: &'static str,
    /// Bytes it took.
    pub len: usize,
}

#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Case {
    Kept,
    Ignored,
}

/// The longest unit of the quantity at the start of `text`.
pub(super) fn find(entry: &Entry, text: &str, case: Case) -> Option<Found> {
    longest(entry, text, case, entry.compound)
}

fn longest(entry: &Entry, text: &str, case: Case, compound: bool) -> Option<Found> {
    let mut best: Option<Found> = None;
    for unit in entry.units {
        for name in unit.names {
            let Some(len) = matched(name, text, case) else { continue };
            if best.is_none_or(|best| best.len < len) && ends(name, &text[len..], compound) {
                best = Some(Found { unit, name, len });
            }
        }
    }
    best
}

/// The longest unit of any other quantity at the start of `text`.
pub(super) fn find_elsewhere(entry: &Entry, text: &str, case: Case) -> Option<(&'static Entry, Found)> {
    let mut best: Option<(&'static Entry, Found)> = None;
    for other in QUANTITIES.iter().filter(|other| other.name != entry.name) {
        // A bare ratio is no unit.
        if let Some(found) = longest(other, text, case, entry.compound).filter(|found| found.len > 0)
            && best.is_none_or(|(_, best)| best.len < found.len)
        {
            best = Some((other, found));
        }
    }
    best
}

/// Bytes of `text` that `name` takes, if the text starts with it.
fn matched(name: &str, text: &str, case: Case) -> Option<usize> {
    // Most names fail here: ASCII letters are never folded.
    if case == Case::Kept
        && let (Some(wanted), Some(written)) = (name.bytes().next(), text.bytes().next())
        && wanted != written
        && wanted.is_ascii_alphabetic()
        && written.is_ascii()
    {
        return None;
    }
    let mut rest = text;
    let mut previous: Option<char> = None;
    for wanted in name.chars() {
        match wanted {
            '/' => {
                if previous.is_some() {
                    rest = rest.trim_start_matches(' ');
                }
                rest = rest.strip_prefix(['/', '\u{2044}', '\u{2215}'])?.trim_start_matches(' ');
            }
            '·' => {
                let after = rest.trim_start_matches(' ');
                let after = after.strip_prefix(is_product).map_or(after, |after| after.trim_start_matches(' '));
                if after.len() == rest.len() {
                    return None;
                }
                rest = after;
            }
            _ => {
                let power = previous.is_some_and(|previous| {
                    wanted.is_ascii_digit() && previous.is_alphabetic() || wanted == '-' && previous.is_alphanumeric()
                });
                if power && let Some(after) = rest.strip_prefix('^') {
                    rest = after;
                }
                let c = rest.chars().next()?;
                if !same(folded(c), wanted, case) {
                    return None;
                }
                rest = &rest[c.len_utf8()..];
            }
        }
        previous = Some(wanted);
    }
    Some(text.len() - rest.len())
}

fn same(written: char, wanted: char, case: Case) -> bool {
    written == wanted || case == Case::Ignored && written.eq_ignore_ascii_case(&wanted)
}

fn is_product(c: char) -> bool {
    matches!(c, '·' | '*' | '×' | '⋅' | '∙' | '•' | '-' | '.')
}

/// One form for what keyboards and word processors write in several.
pub(super) fn folded(c: char) -> char {
    match c {
        '¹' => '1',
        '²' => '2',
        '³' => '3',
        '⁰' => '0',
        '⁴' => '4',
        '⁵' => '5',
        '⁶' => '6',
        '⁷' => '7',
        '⁸' => '8',
        '⁹' => '9',
        '⁻' | '\u{2212}' => '-',
        'º' | '˚' => '°',
        'μ' => 'µ',
        '\u{2032}' | '\u{2018}' | '\u{2019}' => '\'',
        '\u{2033}' | '\u{201c}' | '\u{201d}' => '"',
        '\u{212a}' => 'K',
        c => c,
    }
}

/// Whether a unit may end before `rest`: `mm` is not `m` and then `m`.
fn ends(name: &str, rest: &str, compound: bool) -> bool {
    let (Some(last), Some(next)) = (name.chars().next_back(), rest.chars().next()) else { return true };
    if last == '°' {
        !next.is_alphabetic()
    } else if !last.is_alphanumeric() {
        true
    } else if next.is_ascii_digit() {
        // `5ft6in` goes on with a number and its unit, `5m2` does not.
        let after = rest.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
        compound && after.starts_with(|c: char| c.is_ascii_alphabetic() || c == '"')
    } else {
        !next.is_alphabetic() && !matches!(next, '/' | '^' | '·' | '*' | '⋅' | '¹' | '²' | '³' | '⁻' | '°' | '%' | '_')
    }
}
