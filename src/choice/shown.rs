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
    found: Vec<One>,
}

#[derive(Clone, Debug)]
struct One {
    found: Found,
    size: Size,
    /// How far it sags by the hand method.
    by_hand: Length,
}

/// How far something sags.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Sagging {
    /// By the hand method.
    pub(super) by_hand: Length,
    /// By the worse of both.
    pub(super) verified: Length,
}

/// A larger one is looked at for its sag only where the hand method finds it to sag by so much less. Our choice: there is no end to what
/// sags a little less and weighs a little more.
const WORTH_A_LOOK: f64 = 0.8;

/// What is known of a candidate beside those that are shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Standing {
    /// One that holds beats it.
    Beaten,
    /// Some that hold are no larger: the least that these sag.
    BeatenFrom(Sagging),
    /// None is as light, as thin and as cheap.
    Free,
}

impl Standing {
    /// Whether it is not worth a look, if it sags at least by so much by the hand method.
    pub(super) fn is_passed_over(self, least: Option<Length>) -> bool {
        match self {
            Self::Beaten => true,
            Self::BeatenFrom(sags) => least.is_some_and(|least| least >= sags.by_hand * WORTH_A_LOOK),
            Self::Free => false,
        }
    }

    /// Whether that sags too much.
    pub(super) fn is_beaten_by(self, sag: Option<Length>) -> bool {
        match self {
            Self::Beaten => true,
            Self::BeatenFrom(sags) => sag.is_some_and(|sag| sag >= sags.verified),
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
        let smaller = || self.found.iter().filter(|own| own.size.beats(size));
        match (smaller().next().is_some(), self.measures) {
            (false, _) => Standing::Free,
            (true, Measures::Sizes) => Standing::Beaten,
            (true, Measures::SizesAndSag) => least(smaller()).map_or(Standing::Free, Standing::BeatenFrom),
        }
    }

    /// The least that any of them sags.
    pub(super) fn least_sag(&self) -> Option<Sagging> {
        least(self.found.iter())
    }

    /// One that holds and that none beats, with how far it sags by hand; how many it beats of those known before, which are as heavy.
    pub(super) fn push(&mut self, found: Found, size: Size, by_hand: Length) -> usize {
        let before = self.found.len();
        let sags_less = |known: &Found| match self.measures {
            Measures::Sizes => true,
            Measures::SizesAndSag => found.sag.zip(known.sag).is_some_and(|(own, known)| own <= known),
        };
        self.found.retain(|known| !(size.beats(&known.size) && sags_less(&known.found)));
        let beaten = before - self.found.len();
        self.found.push(One { found, size, by_hand });
        beaten
    }

    /// In the order that was asked for.
    pub(super) fn in_order(self, order: Order) -> Vec<Found> {
        let mut own = self.found;
        own.sort_by(|a, b| a.size.weight().value.total_cmp(&b.size.weight().value));
        let mut all: Vec<Found> = own.into_iter().map(|own| own.found).collect();
        let by: &dyn Fn(&Found) -> f64 = match order {
            Order::Weight => return all,
            Order::Thickness => &|found| found.thickness.value,
            Order::Sag => &|found| found.sag.map_or(f64::INFINITY, |sag| sag.value),
            Order::Cost => &|found| found.cost.map_or(f64::INFINITY, Money::amount),
        };
        all.sort_by(|a, b| by(a).total_cmp(&by(b)));
        all
    }
}

/// The least of each.
fn least<'f>(all: impl Iterator<Item = &'f One>) -> Option<Sagging> {
    let each = all.filter_map(|own| Some(Sagging { by_hand: own.by_hand, verified: own.found.sag? }));
    each.reduce(|a, b| Sagging { by_hand: a.by_hand.min(b.by_hand), verified: a.verified.min(b.verified) })
}
