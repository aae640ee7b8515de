//! Holes that are drilled alike, together.

use super::{Template, words};
use crate::{plan::FixingMark, section::Skin, units::System};

/// Fixings of one mount that are drilled the same way, one after the other.
#[derive(Debug)]
pub(super) struct Group<'t> {
    pub(super) marks: &'t [FixingMark],
}

/// All fixings, in their order.
pub(super) fn groups<'t>(template: &'t Template<'_>) -> Vec<Group<'t>> {
    let alike = |one: &FixingMark, other: &FixingMark| {
        one.on == other.on && one.fixing == other.fixing && one.drills == other.drills && one.tap == other.tap
    };
    template.plan.fixings.chunk_by(alike).map(|marks| Group { marks }).collect()
}

impl<'t> Group<'t> {
    /// Any of them, to speak for all.
    pub(super) fn first(&self) -> Option<&'t FixingMark> {
        self.marks.first()
    }

    /// Its numbers.
    pub(super) fn numbers(&self) -> String {
        match (self.marks.first(), self.marks.last()) {
            (Some(first), Some(last)) if first.number < last.number => format!("{} to {}", first.number, last.number),
            (Some(one), _) => one.number.to_string(),
            (None, _) => String::new(),
        }
    }

    /// What it holds and how, in one line.
    pub(super) fn heading(&self) -> String {
        self.first().map_or_else(String::new, |mark| {
            let count = self.marks.len();
            format!(
                "{}: {count} × {}, {} {}, set from {}",
                mark.held,
                mark.fixing,
                mark.hold,
                mark.size,
                face(mark.near)
            )
        })
    }

    /// The work on each, step by step.
    pub(super) fn steps(&self, system: System) -> Vec<String> {
        let Some(mark) = self.first() else { return Vec::new() };
        if mark.drills.is_empty() {
            return vec!["no hole: mark its place and glue".to_owned()];
        }
        let tap = mark.tap.iter().map(|tap| format!("tap {tap}"));
        mark.drills.iter().map(|step| words::step(step, system)).chain(tap).collect()
    }
}

/// The face that a hole is drilled from.
pub(super) const fn face(near: Skin) -> &'static str {
    match near {
        Skin::Outer => "above (outer skin)",
        Skin::Inner => "below (inner skin)",
    }
}

/// Numbers in words: those that follow each other as from and to.
pub(super) fn listed(numbers: &[usize]) -> String {
    let runs: Vec<String> = numbers
        .chunk_by(|one, next| *next == one + 1)
        .filter_map(|run| {
            let (first, last) = (run.first()?, run.last()?);
            Some(match last - first {
                0 => first.to_string(),
                1 => format!("{first}, {last}"),
                _ => format!("{first} to {last}"),
            })
        })
        .collect();
    runs.join(", ")
}

#[cfg(test)]
mod tests {
    use super::listed;

    #[test]
    fn numbers_that_follow_each_other_are_one_word() {
        assert_eq!(listed(&[1, 2, 3, 5, 7, 8]), "1 to 3, 5, 7, 8");
    }
}
