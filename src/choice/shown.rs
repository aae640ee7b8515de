//! Those that hold and that no other beats, as they are found.

use super::{
    found::Found,
    price::Money,
    sizes::Size,
    space::{Measures, Order},
};
use crate::units::Length;

/// What is shown so far.
#[derive(Clone, Debug)]
pub(super) struct Shown {
    measures: Measures,
    found: Vec<(Found, Size)>,
}

/// What is known of a candidate beside those that are shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Standing {
    /// One that holds beats it.
    Beaten,
    /// One that holds is no larger; it is beaten where it sags by so much or more.
    BeatenFrom(Length),
    /// None is as light, as thin and as cheap.
    Free,
}

impl Standing {
    /// Whether that sags too much, if it sags at least by so much.
    pub(super) fn is_beaten_by(self, least: Option<Length>) -> bool {
        match self {
            Self::Beaten => true,
            Self::BeatenFrom(sag) => least.is_some_and(|least| least >= sag),
            Self::Free => false,
        }
    }
}

impl Shown {
    pub(super) const fn new(measures: Measures) -> Self {
        Self { measures, found: Vec::new() }
    }

    pub(super) fn len(&self) -> usize {
        self.found.len()
    }

    pub(super) fn standing(&self, size: &Size) -> Standing {
        let mut smaller = self.found.iter().filter(|(_, own)| own.beats(size)).peekable();
        if smaller.peek().is_none() {
            return Standing::Free;
        }
        match self.measures {
            Measures::Sizes => Standing::Beaten,
            Measures::SizesAndSag => smaller
                .filter_map(|(found, _)| found.sag)
                .reduce(Length::min)
                .map_or(Standing::Free, Standing::BeatenFrom),
        }
    }

    /// One that holds and that none beats; how many it beats of those known before, which are as heavy.
    pub(super) fn push(&mut self, found: Found, size: Size) -> usize {
        let before = self.found.len();
        let sags_less = |known: &Found| match self.measures {
            Measures::Sizes => true,
            Measures::SizesAndSag => found.sag.zip(known.sag).is_some_and(|(own, known)| own <= known),
        };
        self.found.retain(|(known, known_size)| !(size.beats(known_size) && sags_less(known)));
        let beaten = before - self.found.len();
        self.found.push((found, size));
        beaten
    }

    /// In the order that was asked for.
    pub(super) fn in_order(self, order: Order) -> Vec<Found> {
        let mut all: Vec<Found> = self.found.into_iter().map(|(found, _)| found).collect();
        let by: &dyn Fn(&Found) -> f64 = match order {
            // From the lightest up they were found.
            Order::Weight => return all,
            Order::Thickness => &|found| found.thickness.value,
            Order::Sag => &|found| found.sag.map_or(f64::INFINITY, |sag| sag.value),
            Order::Cost => &|found| found.cost.map_or(f64::INFINITY, Money::amount),
        };
        all.sort_by(|a, b| by(a).total_cmp(&by(b)));
        all
    }
}
