//! Looking at candidates in batches, by what is cheapest first.

mod least_sag;

use rayon::prelude::*;

use super::{
    aside::Aside,
    cannot::Open,
    fate::{Fate, Fates},
    found::{Found, Seen},
    sag::{Deepest, SaggedAt},
    search::Watch,
    shown::{Sagging, Shown, Standing},
    sizes::Size,
    space::{Candidate, Space, misfit},
    witness::{Witness, Witnesses, fails},
};
use crate::{
    analysis::{Analysis, DIVISIONS, Mount, mounts},
    check::{Method, run},
    units::Length,
};

/// Plates that are looked at together, each many times the work of a candidate by hand.
const PLATES_AT_ONCE: usize = 4;

/// A search that is under way.
pub(super) struct Looking<'a> {
    space: &'a Space,
    aside: &'a Aside,
    watch: &'a dyn Watch,
    /// Fixings in their places, by arrangement.
    mounts: Vec<Vec<Mount<'a>>>,
    shown: Shown,
    fates: Fates,
    hand: Witnesses,
    plate: Witnesses,
    sagged_at: SaggedAt,
    /// Load case under which the one that sags least of those that are shown sags most by the plate method.
    sags_under: Option<&'static str>,
    /// Those that one which is no larger was taken to beat by how far they sag by hand, with how far they do at least.
    passed_over: Vec<(Next, Length)>,
}

/// A candidate of which nothing is known but how large it is, and how it stands beside those that are shown.
#[derive(Clone, Copy)]
struct Next {
    size: Size,
    candidate: Candidate,
    standing: Standing,
}

/// What the hand method says of a candidate.
enum ByHand {
    Over(Fate),
    /// Fails in the whole analysis: by which check, and what may rule out others.
    Fails {
        check: usize,
        witness: Option<Witness>,
    },
    /// Fails as others did.
    AtAGlance(Witness),
    /// Sags by so much at least, about as far as one that beats it otherwise; under a load case, where all of it is known.
    Sags(Length, Option<&'static str>),
    /// Holds, and sags by so much.
    Holds(Option<Length>),
}

impl<'a> Looking<'a> {
    pub(super) fn new(space: &'a Space, aside: &'a Aside, watch: &'a dyn Watch) -> Self {
        Self {
            space,
            aside,
            watch,
            mounts: space.arrangements.iter().map(|known| mounts(&known.top)).collect(),
            shown: Shown::new(space.order.measures()),
            fates: Fates::default(),
            hand: Witnesses::default(),
            plate: Witnesses::default(),
            sagged_at: SaggedAt::default(),
            sags_under: None,
            passed_over: Vec::new(),
        }
    }

    /// Tells who waits how far it has come.
    pub(super) fn tell(&self) {
        self.watch.at(self.fates.counted(), self.space.len(), self.shown.len());
    }

    /// What it came to, in the order that was asked for.
    pub(super) fn done(self) -> (Vec<Found>, Fates) {
        (self.shown.in_order(self.space.order), self.fates)
    }

    /// Whether it was stopped.
    pub(super) fn batch(&mut self, batch: &[(Size, usize)]) -> bool {
        let limits = self.space.limits;
        let mut left = Vec::with_capacity(batch.len());
        for &(size, number) in batch {
            let over = limits.mass.is_some_and(|most| size.mass > most)
                || limits.thickness.is_some_and(|most| size.thickness > most)
                || limits.cost.zip(size.cost).is_some_and(|(most, cost)| cost > most);
            if over {
                self.fates.count(Fate::OverLimit);
                continue;
            }
            match self.shown.standing(&size) {
                Standing::Beaten => self.fates.count(Fate::Beaten),
                standing => left.push(Next { size, candidate: self.space.candidate(number), standing }),
            }
        }
        let said: Vec<ByHand> = left.par_iter().map(|next| self.by_hand(next)).collect();
        let mut holding = Vec::new();
        for (next, said) in left.into_iter().zip(said) {
            let fate = match said {
                ByHand::Over(fate) => fate,
                ByHand::Fails { check, witness } => {
                    if let Some(witness) = witness {
                        self.hand.count(witness);
                    }
                    Fate::Fails { check, method: Method::Hand, at_a_glance: false }
                }
                ByHand::AtAGlance(witness) => {
                    self.hand.count(witness);
                    Fate::Fails { check: witness.check, method: Method::Hand, at_a_glance: true }
                }
                ByHand::Sags(sag, case) => {
                    // What the whole alone has told a part tells of the next.
                    if let Some(case) = case {
                        self.sagged_at.learn(&self.space.top(next.candidate), case);
                    }
                    self.pass_over(next, sag);
                    Fate::Beaten
                }
                ByHand::Holds(_) => {
                    holding.push(next);
                    continue;
                }
            };
            self.fates.count(fate);
        }
        holding.chunks(PLATES_AT_ONCE).any(|holding| self.plates(holding))
    }

    /// Whether it was stopped.
    fn plates(&mut self, holding: &[Next]) -> bool {
        if self.watch.stops() {
            return true;
        }
        self.tell();
        let at_a_glance: Vec<Option<Witness>> = holding
            .par_iter()
            .map(|next| {
                let beaten = self.shown.standing(&next.size) == Standing::Beaten;
                if beaten { None } else { self.rule_out_by_plate(next.candidate) }
            })
            .collect();
        for (next, at_a_glance) in holding.iter().zip(at_a_glance) {
            if self.watch.stops() {
                return true;
            }
            let standing = self.shown.standing(&next.size);
            let fate = if standing == Standing::Beaten {
                Fate::Beaten
            } else {
                match self.by_plate(&Next { standing, ..*next }, at_a_glance) {
                    Some(fate) => fate,
                    None => return true,
                }
            };
            self.fates.count(fate);
        }
        false
    }

    fn by_hand(&self, next: &Next) -> ByHand {
        let Next { size, candidate, standing } = *next;
        if let Some(why) = misfit(
            &self.space.arrangements[candidate.arrangement].top,
            self.space.cores[candidate.core].thickness,
            size.thickness,
        ) {
            return ByHand::Over(Fate::Misfit(why));
        }
        let top = self.space.top(candidate);
        if let Some(witness) = self.hand.rule_out(&top, &self.mounts[candidate.arrangement]) {
            return ByHand::AtAGlance(witness);
        }
        if standing != Standing::Free
            && let Some(least) = self.sagged_at.least(&top)
            && standing.is_passed_over(Some(least))
        {
            return ByHand::Sags(least, None);
        }
        let Ok(mut analysis) = Analysis::new(&top, DIVISIONS) else { return ByHand::Over(Fate::Open(None)) };
        let outcomes = run(&analysis);
        let outcomes = self.aside.parted(&mut analysis, outcomes).rest;
        let Some(worst) = outcomes.first() else { return ByHand::Over(Fate::Open(None)) };
        if fails(worst) {
            return ByHand::Fails { check: worst.check, witness: Witness::of(worst, &analysis) };
        }
        // What could not be made comes after what fails and before what passes.
        if !worst.passes() {
            return ByHand::Over(Fate::Open(Some(worst.check)));
        }
        if !self.aside.cannot.has_all(&Open::all(&analysis, &[])) {
            return ByHand::Over(Fate::Open(None));
        }
        match Deepest::by_hand(&analysis) {
            Some(Deepest { sag, case }) if standing.is_passed_over(Some(sag)) => {
                ByHand::Sags(sag, Some(analysis.cases[case].id))
            }
            deepest => ByHand::Holds(deepest.map(|deepest| deepest.sag)),
        }
    }

    /// What rules it out on a rough plate.
    fn rule_out_by_plate(&self, candidate: Candidate) -> Option<Witness> {
        self.plate.rule_out_by_plate(&self.space.top(candidate), &self.mounts[candidate.arrangement])
    }

    /// None where it was stopped.
    fn by_plate(&mut self, next: &Next, at_a_glance: Option<Witness>) -> Option<Fate> {
        let top = self.space.top(next.candidate);
        // What this batch has taught since may tell.
        if let Some(witness) = at_a_glance.or_else(|| self.rule_out_by_plate(next.candidate)) {
            self.plate.count(witness);
            return Some(Fate::Fails { check: witness.check, method: Method::Plate, at_a_glance: true });
        }
        let watch = self.watch;
        let seen = Seen::of(&top, Some(next.candidate), self.space.prices.as_ref(), &|| !watch.stops());
        if seen.cut_short {
            return None;
        }
        let looked = seen.judged(self.aside);
        if let Some(witness) = looked.witness {
            self.plate.count(witness);
        }
        let found = looked.found;
        if !looked.passes {
            return Some(match found.governs {
                Some(worst) if fails(&worst) => {
                    Fate::Fails { check: worst.check, method: worst.method, at_a_glance: false }
                }
                worst => Fate::Open(worst.filter(|worst| !worst.passes()).map(|worst| worst.check)),
            });
        }
        if next.standing.is_beaten_by(found.sag) {
            return Some(Fate::Beaten);
        }
        let sags_least = |least: Sagging| found.sag.is_some_and(|sag| sag < least.verified);
        if self.shown.least_sag().is_none_or(sags_least) {
            self.sags_under = looked.sags_under;
        }
        let beaten = self.shown.push(found, next.size, looked.sag_by_hand);
        self.fates.beaten_after_all(beaten);
        Some(Fate::Shown)
    }
}
