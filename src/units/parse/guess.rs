//! What was probably meant by a unit that is none, or is one of something else.

use super::{
    super::catalog::Entry,
    unit::{Case, find},
};

/// Longer words are not misspelt units.
const LONGEST_WORD: usize = 16;

/// The unit that was meant by a misspelt one.
///
/// A wrong guess is a wrong number: one letter makes `kN/m2` of `kg/m2`, `kg/m3` of `kg/mm3`, `mil` of `mi`. So the
/// first letter must be right, only a long word may have a wrong letter, only letters may be too many or too few, and
/// none is added to three.
pub(super) fn unit(entry: &Entry, written: &str) -> Option<String> {
    if let Some(name) = sibling(entry, written) {
        return Some(name);
    }
    let length = written.chars().count();
    if !(2..=LONGEST_WORD).contains(&length) {
        return None;
    }
    let distance = |name: &&str| {
        let other = name.chars().count();
        let letters = name.chars().all(char::is_alphabetic);
        let word = letters && length >= 5;
        let distance = strsim::damerau_levenshtein(name, written);
        let likely = other > 1
            && name.chars().next() == written.chars().next()
            && distance <= 1 + usize::from(word)
            && (word || sorted(name) == sorted(written) || letters && (length > other || length > 3 && length < other));
        likely.then_some(distance)
    };
    let names = entry.units.iter().flat_map(|unit| unit.names.iter().copied());
    names
        .filter_map(|name| distance(&name).map(|distance| (distance, name)))
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, name)| typed(name))
}

/// The same letters in the right case, or pounds and kilograms of force for those of mass.
pub(super) fn sibling(entry: &Entry, written: &str) -> Option<String> {
    let whole = |text: &str, case| find(entry, text, case).filter(|found| found.len == text.len() && found.len > 0);
    if let Some(found) = whole(written, Case::Ignored) {
        return Some(typed(found.name));
    }
    [("lb", "lbf"), ("lbs", "lbf"), ("kg", "kgf"), ("lbf", "lb"), ("kgf", "kg")].iter().find_map(|(from, to)| {
        let rest = written.strip_prefix(from).filter(|rest| !rest.starts_with(char::is_alphabetic))?;
        Some(format!("{to}{rest}")).filter(|name| whole(name, Case::Kept).is_some())
    })
}

/// The only unit that goes on with `/`: `600 g` where a mass per area is due is `600 g/m2`.
pub(super) fn quotient(entry: &Entry, written: &str) -> Option<String> {
    let goes_on = |name: &&str| name.strip_prefix(written).is_some_and(|rest| rest.starts_with('/'));
    let mut names = entry.units.iter().filter_map(|unit| unit.names.first().copied()).filter(goes_on);
    let only = names.next()?;
    names.next().is_none().then(|| typed(only))
}

/// The units there are.
pub(super) fn list(entry: &Entry) -> String {
    if entry.units.iter().any(|unit| unit.symbol.is_empty()) {
        return "a ratio is a bare number or a percentage".to_owned();
    }
    let names: Vec<_> = entry.units.iter().filter_map(|unit| unit.names.first().copied()).map(typed).collect();
    format!("units of {}: {}", entry.name, names.join(", "))
}

/// How such a quantity looks.
pub(super) fn example(entry: &Entry) -> String {
    match entry.usual {
        ["", _] => "write a number, for example `0.35` or `35 %`".to_owned(),
        [si, us] => format!("write a number and a unit, for example `12 {si}` or `12 {us}`"),
    }
}

/// A name as it can be typed on any keyboard.
fn typed(name: &str) -> String {
    name.replace('·', " ")
}

fn sorted(word: &str) -> Vec<char> {
    let mut letters: Vec<_> = word.chars().collect();
    letters.sort_unstable();
    letters
}
