//! Keys of a table that nobody knows, and keys that have to be there and are not: what belongs together is one mistake.

use std::ops::Range;

use super::problem::{Problem, nearest};

/// Something that had to be in a table.
pub(super) struct Missed {
    /// Any of them would have done.
    pub(super) keys: Vec<&'static str>,
    pub(super) problem: Problem,
    /// `mass = "10 kg"`, where that is all there is to say.
    pub(super) example: Option<String>,
}

/// A table whose keys have all been asked for.
pub(super) struct Closing<'a> {
    /// How messages call it.
    pub(super) name: &'a str,
    pub(super) place: Range<usize>,
    /// What it may hold, in the order in which it was asked for.
    pub(super) known: &'a [&'static str],
    /// What it holds.
    pub(super) keys: Vec<(&'a str, Range<usize>)>,
    pub(super) missed: Vec<Missed>,
}

impl Closing<'_> {
    /// What is wrong with its keys: a misspelt key is not missing as well, and keys that are missing beside strangers, or
    /// beside each other, are one mistake.
    pub(super) fn problems(self) -> Vec<Problem> {
        let Self { name, place, known, keys, mut missed } = self;
        let mut problems = Vec::new();
        let mut strangers: Vec<(&str, Range<usize>)> = Vec::new();
        // A key that is there already cannot be the one that was meant.
        let free = || known.iter().copied().filter(|known| keys.iter().all(|(key, _)| key != known));
        for (key, range) in keys.iter().filter(|(key, _)| !known.contains(key)) {
            match nearest(key, free()) {
                Some(meant) => {
                    missed.retain(|missed| !missed.keys.contains(&meant));
                    let problem = Problem::at(range.clone(), format!("`{key}` is not a key of {name}"));
                    problems.push(problem.help(format!("did you mean `{meant}`?")).patch(range.clone(), meant));
                }
                None => strangers.push((key, range.clone())),
            }
        }
        let (plain, other): (Vec<_>, Vec<_>) = missed.into_iter().partition(|missed| missed.example.is_some());
        problems.extend(other.into_iter().map(|missed| missed.problem));
        let absent = and(plain.iter().flat_map(|missed| &missed.keys).copied());
        let examples = plain.iter().filter_map(|missed| missed.example.as_deref()).collect::<Vec<_>>();
        match (strangers.as_slice(), plain.as_slice()) {
            ([], []) => {}
            ([], [only]) => problems.push(only.problem.clone()),
            ([], _) => problems.push(
                Problem::at(place, format!("{absent} are missing in {name}"))
                    .help(format!("write for example {}", and(examples))),
            ),
            (strangers, []) => problems.extend(strangers.iter().map(|(key, range)| {
                Problem::at(range.clone(), format!("`{key}` is not a key of {name}"))
                    .help(format!("its keys are {}", known.join(", ")))
            })),
            ([(key, range), rest @ ..], plain) => {
                let said = match rest {
                    [] => format!("`{key}` is not a key of {name}"),
                    _ => format!("{} are no keys of {name}", and(strangers.iter().map(|(key, _)| *key))),
                };
                let lacks = if plain.len() == 1 { "is" } else { "are" };
                problems.push(
                    Problem::at(range.clone(), format!("{said}, and {absent} {lacks} missing")).help(format!(
                        "write for example {}; its keys are {}",
                        and(examples),
                        known.join(", ")
                    )),
                );
            }
        }
        problems
    }
}

/// `` `a`, `b` and `c` ``.
fn and<'t>(words: impl IntoIterator<Item = &'t str>) -> String {
    let mut words: Vec<String> = words.into_iter().map(|word| format!("`{word}`")).collect();
    let last = words.pop().unwrap_or_default();
    if words.is_empty() { last } else { format!("{} and {last}", words.join(", ")) }
}
