//! What became of candidates, and how many had which fate.

use crate::check::Method;

/// What became of candidates.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fate {
    /// Holds by both methods, and no other that holds beats it in what the answers are asked for.
    Shown,
    /// One that holds is as light, as thin and as cheap; asked for sag, it also sags no more, or by hand at most a quarter more.
    Beaten,
    /// Heavier, thicker or dearer than the file allows.
    OverLimit,
    /// Something does not go in: what.
    Misfit(&'static str),
    /// A check fails.
    Fails {
        /// The check, as its place in [`CHECKS`](crate::check::CHECKS).
        check: usize,
        /// By which method.
        method: Method,
        /// Whether one load case alone told.
        at_a_glance: bool,
    },
    /// A check could not be made, as its place in [`CHECKS`](crate::check::CHECKS); none where nothing could be.
    Open(Option<usize>),
    /// One that holds is as light, as thin and as cheap, but by hand it may sag less than all that are shown: only a plate could tell, and too
    /// many wait for one.
    MaySagLess,
    /// The search was stopped before.
    NotLookedAt,
}

/// How many had a fate.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tally {
    /// The fate.
    pub fate: Fate,
    /// How many.
    pub count: usize,
}

/// Fates so far.
#[derive(Clone, Debug, Default)]
pub(super) struct Fates(Vec<Tally>);

impl Fates {
    pub(super) fn count(&mut self, fate: Fate) {
        self.more(fate, 1);
    }

    pub(super) fn more(&mut self, fate: Fate, count: usize) {
        match self.0.iter_mut().find(|known| known.fate == fate) {
            Some(known) => known.count += count,
            None => self.0.push(Tally { fate, count }),
        }
    }

    /// So many that were shown are beaten after all.
    pub(super) fn beaten_after_all(&mut self, count: usize) {
        if count > 0 {
            self.more(Fate::Beaten, count);
            for shown in self.0.iter_mut().filter(|known| known.fate == Fate::Shown) {
                shown.count -= count;
            }
        }
    }

    /// One that was passed over as beaten has another fate after all.
    pub(super) fn not_beaten(&mut self, fate: Fate) {
        for beaten in self.0.iter_mut().filter(|known| known.fate == Fate::Beaten) {
            beaten.count -= 1;
        }
        self.count(fate);
    }

    /// How many have a fate.
    pub(super) fn counted(&self) -> usize {
        self.0.iter().map(|tally| tally.count).sum()
    }

    /// Most first.
    pub(super) fn tally(mut self) -> Vec<Tally> {
        self.0.retain(|tally| tally.count > 0);
        self.0.sort_by_key(|tally| std::cmp::Reverse(tally.count));
        self.0
    }
}
