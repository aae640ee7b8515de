//! What became of all of them, in words.

use super::{Choice, heading, words::as_good};
use crate::{
    check::CHECKS,
    choice::{Fate, Space},
    report::page::{Page, right},
};

/// A fate in words, those at a glance with the others of their check.
pub(super) struct Lost {
    pub(super) words: String,
    pub(super) count: usize,
    /// How many of them were ruled out by one load case alone.
    pub(super) at_a_glance: usize,
    pub(super) fate: Fate,
}

/// All fates, most first.
pub(super) fn fates(choice: Choice<'_>) -> Vec<Lost> {
    let mut all: Vec<Lost> = Vec::new();
    for tally in &choice.chosen.tally {
        let glance = matches!(tally.fate, Fate::Fails { at_a_glance: true, .. });
        let fate = whole(&tally.fate);
        let at_a_glance = if glance { tally.count } else { 0 };
        match all.iter_mut().find(|known| known.fate == fate) {
            Some(known) => {
                known.count += tally.count;
                known.at_a_glance += at_a_glance;
            }
            None => all.push(Lost { words: words(&fate, choice.space), count: tally.count, at_a_glance, fate }),
        }
    }
    all.sort_by_key(|lost| std::cmp::Reverse(lost.count));
    all
}

/// Whether a fate says what is wrong with those that had it.
pub(super) fn losses(lost: &Lost) -> bool {
    !matches!(lost.fate, Fate::Shown | Fate::Beaten | Fate::MaySagLess | Fate::NotLookedAt)
}

fn whole(fate: &Fate) -> Fate {
    match fate {
        Fate::Fails { check, method, .. } => Fate::Fails { check: *check, method: *method, at_a_glance: false },
        other => other.clone(),
    }
}

fn words(fate: &Fate, space: &Space) -> String {
    match fate {
        Fate::Shown => "shown above".to_owned(),
        Fate::Beaten => format!("beaten: one that holds is {}", as_good(space)),
        Fate::OverLimit if space.prices.is_some() => "heavier, thicker or dearer than the file allows".to_owned(),
        Fate::OverLimit => "heavier or thicker than the file allows".to_owned(),
        Fate::Misfit(why) => format!("do not fit: {why}"),
        Fate::Fails { check, method, .. } => {
            format!("ruled out by {}, {}", CHECKS[*check].title(), method.words())
        }
        Fate::Open(Some(check)) => format!("open: {} could not be checked", CHECKS[*check].title()),
        Fate::Open(None) => "open: could not be checked, or not under all load cases".to_owned(),
        Fate::MaySagLess => "may sag less than what comes first: too many for a plate each".to_owned(),
        Fate::NotLookedAt => "not looked at: the search was stopped".to_owned(),
    }
}

pub(super) fn tally(page: &mut Page, choice: Choice<'_>) {
    let without = if choice.chosen.always.is_empty() { "" } else { ", what fails whatever is laid up left aside" };
    heading(page, &format!("What became of all {}{without}", choice.chosen.of));
    for lost in fates(choice) {
        let glance = match lost.at_a_glance {
            0 => String::new(),
            all if all == lost.count => " (all at a glance)".to_owned(),
            some => format!(" ({some} of them at a glance)"),
        };
        page.paragraph(&format!("{}  ", right(&lost.count.to_string(), 10)), &format!("{}{glance}", lost.words));
    }
}
