//! What is wrong with a file: the place, the cause, a way out.

use std::{
    cell::{Cell, RefCell},
    ops::Range,
};

use annotate_snippets::{AnnotationKind, Group, Level, Origin, Patch, Renderer, Snippet};

use crate::units::System;

/// One thing that is wrong in one file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// Bytes of the file that the caret stands under; `0..0` where the problem is what the file lacks as a whole.
    pub range: Range<usize>,
    /// The cause in one sentence.
    pub message: String,
    /// A way out, in words.
    pub help: Option<String>,
    /// A way out, as text that replaces a range of bytes.
    pub patch: Option<(Range<usize>, String)>,
}

impl Problem {
    /// A problem at a place.
    pub fn at(range: Range<usize>, message: impl Into<String>) -> Self {
        Self { range, message: message.into(), help: None, patch: None }
    }

    /// Adds a way out in words.
    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Self {
        self.help = Some(help.into());
        self
    }

    /// Adds a correction that can be typed as it stands.
    #[must_use]
    pub fn patch(mut self, range: Range<usize>, text: impl Into<String>) -> Self {
        self.patch = Some((range, text.into()));
        self
    }
}

/// Everything that is wrong with one file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FileProblems {
    /// Name of the file as the user gave it.
    pub file: String,
    /// Its text.
    pub text: String,
    /// What is wrong, in the order of the file.
    pub problems: Vec<Problem>,
}

impl FileProblems {
    /// The problems as text with file, line, column, caret and correction; `styled` adds terminal colours.
    #[must_use]
    pub fn render(&self, styled: bool) -> String {
        let renderer = if styled { Renderer::styled() } else { Renderer::plain() };
        let mut out = String::new();
        for problem in &self.problems {
            let title = Group::with_title(Level::ERROR.primary_title(&problem.message));
            let mut groups = vec![if problem.range == (0..0) {
                // What is nowhere in the file is not at its first letter either.
                title.element(Origin::path(&self.file))
            } else {
                title.element(
                    Snippet::source(&self.text)
                        .path(&self.file)
                        .annotation(AnnotationKind::Primary.span(within(&self.text, &problem.range))),
                )
            }];
            let help = problem.help.as_deref();
            if let Some((range, text)) = &problem.patch {
                groups.push(Group::with_title(Level::HELP.secondary_title(help.unwrap_or("write"))).element(
                    Snippet::source(&self.text).path(&self.file).patch(Patch::new(within(&self.text, range), text)),
                ));
            } else if let Some(help) = help {
                groups.push(Group::with_title(Level::HELP.secondary_title(help)));
            }
            out.push_str(&renderer.render(&groups));
            out.push_str("\n\n");
        }
        out
    }
}

/// Clips a range to the text and to character borders: a message must never be the thing that fails.
fn within(text: &str, range: &Range<usize>) -> Range<usize> {
    let mut start = range.start.min(text.len());
    while !text.is_char_boundary(start) {
        start -= 1;
    }
    let mut end = range.end.clamp(start, text.len());
    while !text.is_char_boundary(end) {
        end += 1;
    }
    start..end
}

/// Collects problems while a file is read, so that one run reports them all; says them in the units of its report.
#[derive(Debug)]
pub(crate) struct Sink {
    problems: RefCell<Vec<Problem>>,
    units: Cell<System>,
}

impl Sink {
    pub(crate) const fn new(units: System) -> Self {
        Self { problems: RefCell::new(Vec::new()), units: Cell::new(units) }
    }

    pub(crate) fn report(&self, problem: Problem) {
        self.problems.borrow_mut().push(problem);
    }

    /// Whether nothing is wrong so far.
    pub(crate) fn is_empty(&self) -> bool {
        self.problems.borrow().is_empty()
    }

    /// The units that what is said from here on comes first in.
    pub(crate) fn say_in(&self, units: System) {
        self.units.set(units);
    }

    pub(crate) fn units(&self) -> System {
        self.units.get()
    }

    /// The problems in the order of the file.
    pub(crate) fn into_sorted(self) -> Vec<Problem> {
        let mut problems = self.problems.into_inner();
        problems.sort_by_key(|problem| (problem.range.start, problem.range.end));
        problems.dedup();
        problems
    }
}

/// Names of materials that may have been meant, the likeliest first. One alone is given only where no other is about
/// as near: 1/2 in pipe must not become 1 in pipe.
fn likely<'a>(name: &str, known: impl IntoIterator<Item = &'a str>) -> Vec<&'a str> {
    let name = name.to_lowercase();
    let mut near: Vec<(f64, &str)> = known
        .into_iter()
        .map(|candidate| (likeness(&name, &candidate.to_lowercase()), candidate))
        .filter(|(likeness, _)| *likeness >= 0.5)
        .collect();
    near.sort_by(|a, b| b.0.total_cmp(&a.0));
    let best = near.first().map_or(0.0, |(likeness, _)| *likeness);
    let margin = if best > 0.8 { 0.05 } else { 0.2 };
    near.into_iter().take_while(|(likeness, _)| *likeness > best - margin).map(|(_, candidate)| candidate).collect()
}

/// How like two names are; their words may stand in another order.
fn likeness(one: &str, other: &str) -> f64 {
    let sorted = |name: &str| {
        let mut words: Vec<&str> = name.split(['-', ' ']).collect();
        words.sort_unstable();
        words.join("-")
    };
    let as_written = strsim::normalized_damerau_levenshtein(one, other);
    as_written.max(strsim::normalized_damerau_levenshtein(&sorted(one), &sorted(other)))
}

/// Offers the names that may have been meant; `place` is what one of them would replace, where that can be typed.
pub(super) fn offer(problem: Problem, name: &str, known: &[&str], place: Option<Range<usize>>, quote: &str) -> Problem {
    match (likely(name, known.iter().copied()).as_slice(), place) {
        ([], _) => problem.help(format!("the names are {}", known.join(", "))),
        ([only], Some(place)) => {
            let text = format!("{}{only}{}", quote.trim_matches('`'), quote.trim_matches('`'));
            problem.help(format!("did you mean {quote}{only}{quote}?")).patch(place, text)
        }
        ([only], None) => problem.help(format!("did you mean {quote}{only}{quote}?")),
        // Between two materials the writer chooses.
        (several, _) => {
            let list: Vec<String> = several.iter().map(|name| format!("{quote}{name}{quote}")).collect();
            problem.help(format!("did you mean one of {}?", list.join(", ")))
        }
    }
}

/// The nearest known name, where one is near enough to be meant.
#[must_use]
pub fn nearest<'a>(name: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    known
        .into_iter()
        .map(|candidate| (strsim::jaro_winkler(&name.to_lowercase(), &candidate.to_lowercase()), candidate))
        .filter(|(likeness, _)| *likeness > 0.75)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, candidate)| candidate)
}
