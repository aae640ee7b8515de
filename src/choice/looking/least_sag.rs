//! What sags least of all, among those that were passed over since by hand they sag about as far as a smaller one.

use super::{ByHand, Fate, Looking, Next, Witness};
use crate::{
    analysis::Analysis,
    check::Method,
    choice::{
        sag::Deepest,
        shown::Standing,
        space::{Candidate, Measures, Space},
    },
    top::{Schedule, Top},
    units::Length,
};

/// How much farther one may sag by hand than the one that sags least by both methods, and yet less by both: by so much the two methods may
/// part otherwise for one core than for another. Our choice, not measured.
const APART: f64 = 0.05;

/// Those passed over are thinned out when there are so many.
const MANY: usize = 100_000;

impl Looking<'_> {
    /// Remembers one that may yet sag least.
    pub(super) fn pass_over(&mut self, next: Next, by_hand: Length) {
        if self.shown.that_sags_least().is_some_and(|(_, least)| by_hand < least * (1.0 + APART)) {
            self.passed_over.push((next, by_hand));
        }
        if self.passed_over.len() > MANY {
            self.thin_out();
        }
    }

    fn thin_out(&mut self) {
        let Some((_, least)) = self.shown.that_sags_least() else { return };
        self.passed_over.retain(|(_, by_hand)| *by_hand < least * (1.0 + APART));
    }

    /// Looks at those passed over, from what sags least by hand, until none can sag less by both methods than the least that is known.
    /// Whether it was stopped.
    ///
    /// Taken for granted: two cores alike on the same pipes, the one with fewer layers in both skins that sags no less by hand sags no less by
    /// both methods than the other does under a load case that does not warm it (the bow in the sun may well grow with more layers: measured
    /// on one roof, 0.67 mm with one layer along and 0.87 mm with three); and that the methods part for one core by [`APART`] of what they do
    /// for another at most.
    pub(in crate::choice) fn least_sag(&mut self) -> bool {
        if self.space.order.measures() != Measures::SizesAndSag {
            return false;
        }
        self.thin_out();
        let mut passed_over = std::mem::take(&mut self.passed_over);
        passed_over.sort_by(|(a, by_hand), (b, other)| {
            by_hand.value.total_cmp(&other.value).then(a.candidate.cmp(&b.candidate))
        });
        for (next, by_hand) in passed_over {
            if self.watch.stops() {
                return true;
            }
            let Some((least, known)) = self.shown.that_sags_least() else { break };
            let (most, sag) = (known * (1.0 + APART), least.sag);
            if by_hand >= most {
                break;
            }
            if self.is_no_stiffer(next.candidate, by_hand) {
                continue;
            }
            // Its size is no matter any more.
            let free = Next { standing: Standing::Free, ..next };
            match self.by_hand(&free) {
                ByHand::Holds => {}
                ByHand::Over(fate) => {
                    self.fates.not_beaten(fate);
                    continue;
                }
                ByHand::Fails { check, witness } => {
                    if let Some(witness) = witness {
                        self.hand.count(witness);
                    }
                    self.fates.not_beaten(Fate::Fails { check, method: Method::Hand, at_a_glance: false });
                    continue;
                }
                ByHand::AtAGlance(witness) => {
                    let Witness { check, .. } = witness;
                    self.hand.count(witness);
                    self.fates.not_beaten(Fate::Fails { check, method: Method::Hand, at_a_glance: true });
                    continue;
                }
                ByHand::Sags(..) => continue,
            }
            let top = self.space.top(next.candidate);
            if sag.zip(self.at_least(&top)).is_some_and(|(known, least)| least >= known) {
                continue;
            }
            let at_a_glance = self.rule_out_by_plate(next.candidate);
            let standing = self.shown.least_sag().map_or(Standing::Free, Standing::BeatenFrom);
            match self.by_plate(&Next { standing, ..next }, at_a_glance) {
                None => return true,
                Some(Fate::Beaten) => {}
                Some(fate) => self.fates.not_beaten(fate),
            }
        }
        false
    }

    /// How far a top sags at least by a rough plate, under the load case that made another sag most.
    fn at_least(&self, top: &Top) -> Option<Length> {
        let under = self.sags_under?;
        let analysis = Analysis::unsolved(top, &|case| case.id == under).ok()?.with_rough_plate();
        Deepest::at_least_by_plate(&analysis)
    }

    /// Whether one that held has the same core on the same pipes, no fewer layers, and sags no more by hand.
    fn is_no_stiffer(&self, candidate: Candidate, by_hand: Length) -> bool {
        self.held.iter().any(|(held, sag)| *sag <= by_hand && has_no_more(self.space, candidate, *held))
    }
}

/// Whether one of two that differ in their skins alone has no more of any layer.
fn has_no_more(space: &Space, one: Candidate, other: Candidate) -> bool {
    let less = |one: &Schedule, other: &Schedule| {
        let count = |skin: &Schedule, text: &str| skin.layers().iter().filter(|layer| layer.text == text).count();
        one.layers().iter().all(|layer| count(one, &layer.text) <= count(other, &layer.text))
    };
    (one.arrangement, one.core) == (other.arrangement, other.core)
        && less(&space.outer[one.outer], &space.outer[other.outer])
        && less(&space.inner[one.inner], &space.inner[other.inner])
}
