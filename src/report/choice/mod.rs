//! What `choose` answers: the same content as text, as JSON and as a table of values parted by commas.

mod always;
mod answer;
pub(super) mod csv;
mod found;
mod grids;
mod json;
mod notes;
mod steps;
mod tally;
pub(super) mod words;

pub use csv::choice_to_csv;
pub use json::choice_to_json;

use std::borrow::Cow;

use super::{
    page::Page,
    text::{added, change},
};
use crate::{
    choice::{Chosen, Fate, Found, Money, Space},
    top::{CoreSheet, Schedule, Top},
    units::{ArealMassDensity, Length, Mass, System},
};

/// Kilograms; less than this apart is the same. Our choice: what a scale does not show.
const SAME_MASS: f64 = 0.005;

/// The answer in words and tables, without styles, on a page of a width between 60 and 120 columns.
#[must_use]
pub fn choice_to_text(chosen: &Chosen, space: &Space, top: &Top, width: usize) -> String {
    let choice = Choice { chosen, space, top };
    let width = width.clamp(60, 120);
    let mut page = Page::new(width);
    answer::answer(&mut page, choice);
    found::found(&mut page, choice);
    grids::grids(&mut page, choice, width);
    steps::steps(&mut page, choice);
    tally::tally(&mut page, choice);
    heading(&mut page, "What counts");
    for note in notes::notes(choice) {
        page.paragraph("  - ", &note);
    }
    heading(&mut page, "Cautions");
    for caution in notes::cautions(choice) {
        page.paragraph("  - ", &caution);
    }
    page.done()
}

/// A heading that no terminal has to know styles for.
fn heading(page: &mut Page, words: &str) {
    page.blank();
    page.paragraph("", words);
}

/// What was asked, and what came of it.
#[derive(Clone, Copy)]
struct Choice<'a> {
    chosen: &'a Chosen,
    space: &'a Space,
    top: &'a Top,
}

/// What one of them is laid up of.
#[derive(Clone, Copy)]
struct Laid<'a> {
    core: &'a CoreSheet,
    outer: &'a Schedule,
    inner: &'a Schedule,
}

impl<'a> Choice<'a> {
    const fn system(self) -> System {
        self.top.report
    }

    /// The first of those found.
    fn best(self) -> Option<&'a Found> {
        self.chosen.found.first()
    }

    /// What it is laid up of; of the file's own where it is none of the space.
    fn laid(self, found: &Found) -> Laid<'a> {
        let (space, top) = (self.space, self.top);
        found.candidate.map_or(Laid { core: &top.core, outer: &top.outer, inner: &top.inner }, |of| Laid {
            core: &space.cores[of.core],
            outer: &space.outer[of.outer],
            inner: &space.inner[of.inner],
        })
    }

    /// The top laid up as the first of those found; as the file has it where none was.
    fn best_top(self) -> Cow<'a, Top> {
        let candidate = self.best().and_then(|best| best.candidate);
        candidate.map_or(Cow::Borrowed(self.top), |candidate| Cow::Owned(self.space.top(candidate)))
    }

    /// The top in the arrangement that it has, laid up as the file is.
    fn arranged_top(self, found: &Found) -> &'a Top {
        found.candidate.map_or(self.top, |of| &self.space.arrangements[of.arrangement].top)
    }

    /// Bare weight over the area in plan, holes left out.
    fn areal(self, found: &Found) -> ArealMassDensity {
        found.mass / self.top.outline.area()
    }

    /// What differs from the file in pipes and backing.
    fn arranged(self, found: &Found) -> Vec<String> {
        let Some(known) = found.candidate.map(|of| &self.space.arrangements[of.arrangement]) else { return Vec::new() };
        let bare = known.left_out.iter().map(|place| &self.top.backings[*place].name);
        let bare = bare.map(|name| format!("without {name}, which lay along a pipe that is gone"));
        known.changes.iter().map(|made| change(made, self.top)).chain(bare).collect()
    }

    /// Money with its currency.
    fn money(self, money: Money) -> String {
        let currency = self.space.prices.as_ref().map_or("", |prices| prices.currency.as_str());
        format!("{:.2} {currency}", money.amount())
    }

    /// What costs are of.
    fn priced(self) -> &'static str {
        let pipes = self.space.prices.as_ref().is_some_and(|prices| prices.pipe.is_some());
        if pipes { "materials and pipes" } else { "materials" }
    }

    /// What its pipes weigh, where they count.
    fn frame(self, found: &Found) -> Option<Mass> {
        found.frame.filter(|_| self.space.frames().is_some())
    }

    /// How much heavier it is than the file's own, with its pipes where these count.
    fn heavier(self, found: &Found) -> Mass {
        let weight = |found: &Found| found.mass + self.frame(found).unwrap_or_default();
        weight(found) - weight(&self.chosen.own)
    }

    /// How much heavier and thicker the bare top is than the file's own.
    fn over_own(self, found: &Found) -> (Mass, Length) {
        (found.mass - self.chosen.own.mass, found.thickness - self.chosen.own.thickness)
    }

    /// Whether it is laid up as the file is.
    fn is_own(self, found: &Found) -> bool {
        let (laid, top) = (self.laid(found), self.top);
        self.arranged(found).is_empty()
            && *laid.core == top.core
            && *laid.outer == top.outer
            && *laid.inner == top.inner
    }

    /// How many were looked at.
    fn looked_at(self) -> usize {
        let not = self.chosen.tally.iter().filter(|tally| tally.fate == Fate::NotLookedAt).map(|tally| tally.count);
        self.chosen.of.saturating_sub(not.sum())
    }
}
