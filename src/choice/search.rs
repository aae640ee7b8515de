//! The search: from the lightest up, so that what holds rules out all that is heavier and no thinner.

use rayon::prelude::*;

use super::{
    found::{Found, looked_at_whole},
    grid::Grid,
    price::Money,
    sizes::{Size, Sizes},
    space::{Candidate, Order, Space, misfit},
    step::Step,
    witness::{Witness, Witnesses, fails},
};
use crate::{
    analysis::{Analysis, DIVISIONS},
    check::{Method, run},
    top::Top,
    units::Length,
};

/// Candidates that are looked at together; what a batch has taught rules out in the next.
const AT_ONCE: usize = 64;

/// Plates that are looked at together, each many times the work of a candidate by hand.
const PLATES_AT_ONCE: usize = 4;

/// Somebody who waits.
pub trait Watch: Sync {
    /// How many of how many have been looked at, and how many of them are shown.
    fn at(&self, looked_at: usize, of: usize, shown: usize);
    /// Whether to stop with what there is.
    fn stops(&self) -> bool;
}

/// What became of candidates.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fate {
    /// Holds by both methods, and no other that holds is as light, as thin and, where there are prices, as cheap.
    Shown,
    /// One that holds is as light, as thin and as cheap.
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

/// What a search came to.
#[derive(Clone, Debug)]
pub struct Chosen {
    /// How many candidates there are.
    pub of: usize,
    /// Those that hold and that none other beats in weight, thickness and cost, in the order that was asked for.
    pub found: Vec<Found>,
    /// The top as the file has it.
    pub own: Found,
    /// What became of how many, most first.
    pub tally: Vec<Tally>,
    /// What every core makes of the skins of the file, by the hand method.
    pub grids: Vec<Grid>,
    /// What one step more or less makes of the first of those found; of the file's own where none was.
    pub steps: Vec<Step>,
    /// Whether it was stopped.
    pub stopped: bool,
}

/// Looks at every candidate of a space, so far as that takes.
///
/// From the lightest up, each is either beaten by one that holds and is as light, as thin and as cheap; ruled out by a load case that
/// ruled out others; or goes through the whole hand method, and, where that passes it, through the whole plate method.
/// Only what both pass is shown.
#[must_use]
pub fn choose(top: &Top, space: &Space, watch: &dyn Watch) -> Chosen {
    let sizes = Sizes::of(space);
    let sized = |number| (sizes.size(space.candidate(number)), number);
    let mut order: Vec<(Size, usize)> = (0..space.len()).into_par_iter().map(sized).collect();
    order.par_sort_unstable_by(|(a, first), (b, second)| {
        let by = a.mass.value.total_cmp(&b.mass.value).then(a.thickness.value.total_cmp(&b.thickness.value));
        let cost = |size: &Size| size.cost.map_or(0.0, Money::amount);
        by.then(cost(a).total_cmp(&cost(b))).then(first.cmp(second))
    });
    let mut search = Search {
        space,
        found: Vec::new(),
        sizes: Vec::new(),
        tally: Vec::new(),
        hand: Witnesses::default(),
        plate: Witnesses::default(),
    };
    let (mut looked_at, mut stopped) = (0, false);
    for batch in order.chunks(AT_ONCE) {
        watch.at(looked_at, order.len(), search.found.len());
        if watch.stops() {
            stopped = true;
            break;
        }
        stopped = search.batch(batch, watch);
        if stopped {
            break;
        }
        looked_at += batch.len();
    }
    let counted = search.counted();
    if counted < order.len() {
        search.tally.push(Tally { fate: Fate::NotLookedAt, count: order.len() - counted });
    }
    let Search { mut found, mut tally, .. } = search;
    watch.at(counted, order.len(), found.len());
    tally.sort_by_key(|tally| std::cmp::Reverse(tally.count));
    match space.order {
        Order::Weight => {}
        Order::Thickness => found.sort_by(|a, b| a.thickness.value.total_cmp(&b.thickness.value)),
        Order::Sag => {
            let sag = |found: &Found| found.sag.map_or(f64::INFINITY, |sag| sag.value);
            found.sort_by(|a, b| sag(a).total_cmp(&sag(b)));
        }
        Order::Cost => {
            let cost = |found: &Found| found.cost.map_or(f64::INFINITY, Money::amount);
            found.sort_by(|a, b| cost(a).total_cmp(&cost(b)));
        }
    }
    let own = looked_at_whole(top, space.place_of(top), space.prices.as_ref()).0;
    let first = found.first().and_then(|first| first.candidate).map(|first| space.top(first));
    let steps = Step::all(first.as_ref().unwrap_or(top), space);
    Chosen { of: order.len(), found, own, tally, grids: Grid::all(top, space), steps, stopped }
}

struct Search<'a> {
    space: &'a Space,
    found: Vec<Found>,
    /// Sizes of those found.
    sizes: Vec<Size>,
    tally: Vec<Tally>,
    hand: Witnesses,
    plate: Witnesses,
}

/// What the hand method says of a candidate.
enum ByHand {
    Over(Fate),
    /// Fails in the whole analysis: the worst, with the name of its case.
    Fails {
        check: usize,
        case: Option<&'static str>,
    },
    /// Fails as others did.
    AtAGlance(Witness),
    Holds,
}

impl Search<'_> {
    /// Whether one that holds is as light, as thin and as cheap.
    fn is_beaten(&self, size: &Size) -> bool {
        self.sizes.iter().any(|found| found.beats(size))
    }

    fn count(&mut self, fate: Fate) {
        match self.tally.iter_mut().find(|known| known.fate == fate) {
            Some(known) => known.count += 1,
            None => self.tally.push(Tally { fate, count: 1 }),
        }
    }

    /// How many have a fate.
    fn counted(&self) -> usize {
        self.tally.iter().map(|tally| tally.count).sum()
    }

    /// Whether it was stopped.
    fn batch(&mut self, batch: &[(Size, usize)], watch: &dyn Watch) -> bool {
        let limits = self.space.limits;
        let mut left = Vec::with_capacity(batch.len());
        for &(size, number) in batch {
            let over = limits.mass.is_some_and(|most| size.mass > most)
                || limits.thickness.is_some_and(|most| size.thickness > most)
                || limits.cost.zip(size.cost).is_some_and(|(most, cost)| cost > most);
            if over {
                self.count(Fate::OverLimit);
            } else if self.is_beaten(&size) {
                self.count(Fate::Beaten);
            } else {
                left.push((size, self.space.candidate(number)));
            }
        }
        let said: Vec<ByHand> =
            left.par_iter().map(|&(size, candidate)| self.by_hand(candidate, size.thickness)).collect();
        let mut holding = Vec::new();
        for ((size, candidate), said) in left.into_iter().zip(said) {
            let fate = match said {
                ByHand::Over(fate) => fate,
                ByHand::Fails { check, case } => {
                    if let Some(case) = case {
                        self.hand.count(Witness::new(check, case));
                    }
                    Fate::Fails { check, method: Method::Hand, at_a_glance: false }
                }
                ByHand::AtAGlance(witness) => {
                    self.hand.count(witness);
                    Fate::Fails { check: witness.check, method: Method::Hand, at_a_glance: true }
                }
                ByHand::Holds => {
                    holding.push((size, candidate));
                    continue;
                }
            };
            self.count(fate);
        }
        holding.chunks(PLATES_AT_ONCE).any(|holding| self.plates(holding, watch))
    }

    /// Whether it was stopped.
    fn plates(&mut self, holding: &[(Size, Candidate)], watch: &dyn Watch) -> bool {
        if watch.stops() {
            return true;
        }
        watch.at(self.counted(), self.space.len(), self.found.len());
        let at_a_glance: Vec<Option<Witness>> = holding
            .par_iter()
            .map(|(size, candidate)| {
                let top = || self.space.top(*candidate);
                if self.is_beaten(size) { None } else { self.plate.rule_out_by_plate(&top()) }
            })
            .collect();
        for ((size, candidate), at_a_glance) in holding.iter().zip(at_a_glance) {
            let fate =
                if self.is_beaten(size) { Fate::Beaten } else { self.by_plate((*size, *candidate), at_a_glance) };
            self.count(fate);
        }
        false
    }

    fn by_hand(&self, candidate: Candidate, thickness: Length) -> ByHand {
        if let Some(why) = misfit(
            &self.space.arrangements[candidate.arrangement].top,
            self.space.cores[candidate.core].thickness,
            thickness,
        ) {
            return ByHand::Over(Fate::Misfit(why));
        }
        let top = self.space.top(candidate);
        if let Some(witness) = self.hand.rule_out(&top) {
            return ByHand::AtAGlance(witness);
        }
        let Ok(analysis) = Analysis::new(&top, DIVISIONS) else { return ByHand::Over(Fate::Open(None)) };
        let outcomes = run(&analysis);
        let Some(worst) = outcomes.first() else { return ByHand::Over(Fate::Open(None)) };
        if fails(worst) {
            return ByHand::Fails { check: worst.check, case: Witnesses::case_of(worst, &analysis) };
        }
        // What could not be made comes after what fails and before what passes.
        if !worst.passes() {
            return ByHand::Over(Fate::Open(Some(worst.check)));
        }
        if !analysis.open_cases.is_empty() {
            return ByHand::Over(Fate::Open(None));
        }
        ByHand::Holds
    }

    fn by_plate(&mut self, (size, candidate): (Size, Candidate), at_a_glance: Option<Witness>) -> Fate {
        let top = self.space.top(candidate);
        // What this batch has taught since may tell.
        if let Some(witness) = at_a_glance.or_else(|| self.plate.rule_out_by_plate(&top)) {
            self.plate.count(witness);
            return Fate::Fails { check: witness.check, method: Method::Plate, at_a_glance: true };
        }
        let (found, witness) = looked_at_whole(&top, Some(candidate), self.space.prices.as_ref());
        if let Some((check, case)) = witness {
            self.plate.count(Witness::new(check, case));
        }
        if found.holds {
            self.found.push(found);
            self.sizes.push(size);
            return Fate::Shown;
        }
        match found.governs {
            Some(worst) if fails(&worst) => {
                Fate::Fails { check: worst.check, method: worst.method, at_a_glance: false }
            }
            worst => Fate::Open(worst.map(|worst| worst.check)),
        }
    }
}
