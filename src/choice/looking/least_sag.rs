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

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;
    use crate::{
        choice::{
            arrangement::Arrangement,
            aside::Aside,
            search::Watch,
            sizes::Sizes,
            space::{Limits, Order},
        },
        input::{NamedText, read_design, read_tables},
    };

    struct Told(bool);

    impl Watch for Told {
        fn at(&self, _: usize, _: usize, _: usize) {}
        fn stops(&self) -> bool {
            self.0
        }
    }

    /// A roof as its file has it, and with one more of the first layer of its outer skin: both hold.
    fn two() -> Space {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/galley-roof.toml");
        let text = NamedText { name: "galley-roof".to_owned(), text: std::fs::read_to_string(path).unwrap() };
        let top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
        let mut layers = top.outer.layers().to_vec();
        layers.insert(1, layers[1].clone());
        Space {
            arrangements: vec![Arrangement::own(&top)],
            prices: None,
            cores: vec![top.core.clone()],
            outer: vec![top.outer.clone(), Schedule::new(layers).unwrap()],
            inner: vec![top.inner.clone()],
            limits: Limits::default(),
            order: Order::Sag,
        }
    }

    /// One after the other, so that the first holds before the second is looked at.
    fn looked_at<'a>(space: &'a Space, aside: &'a Aside, watch: &'a dyn Watch) -> Looking<'a> {
        let (sizes, mut looking) = (Sizes::of(space), Looking::new(space, aside, &Told(false)));
        for number in 0..space.len() {
            assert!(!looking.batch(&[(sizes.size(space.candidate(number)), number)]));
        }
        looking.watch = watch;
        looking
    }

    /// What sags less than a smaller one by too little for a look on the way is looked at in the end, and comes first.
    #[test]
    fn what_sags_a_little_less_comes_first() {
        let (space, aside) = (two(), Aside::default());
        let mut looking = looked_at(&space, &aside, &Told(false));
        assert_eq!(looking.passed_over.len(), 1);
        let (lighter, heavier) = (space.candidate(0), looking.passed_over[0].0.candidate);
        assert_eq!(heavier, space.candidate(1));
        assert!(!looking.least_sag());
        let (found, fates) = looking.done();
        let order: Vec<Candidate> = found.iter().filter_map(|found| found.candidate).collect();
        assert_eq!(order, [heavier, lighter]);
        assert!(found[0].sag < found[1].sag && found[0].mass > found[1].mass);
        assert_eq!(fates.counted(), 2);
    }

    /// Stopped before that, it says so, and shows what it has.
    #[test]
    fn a_stop_before_the_end_is_told() {
        let (space, aside) = (two(), Aside::default());
        let mut looking = looked_at(&space, &aside, &Told(true));
        assert!(looking.least_sag());
        let (found, _) = looking.done();
        assert_eq!(found.iter().filter_map(|found| found.candidate).collect::<Vec<_>>(), [space.candidate(0)]);
    }

    /// Fewer layers in both skins on one core: that alone is taken to sag no less.
    #[test]
    fn what_has_no_more_has_no_more_of_anything() {
        let own = two();
        let mut thicker = own.cores[0].clone();
        thicker.thickness *= 1.5;
        let (outer, cores) = (own.outer.clone(), vec![own.cores[0].clone(), thicker]);
        let space = Space { inner: outer, cores, ..own };
        let laid = |core: usize, outer: usize, inner: usize| Candidate { arrangement: 0, core, outer, inner };
        let no_more = |one: Candidate, other: Candidate| has_no_more(&space, one, other);
        assert!(no_more(laid(0, 0, 0), laid(0, 0, 0)) && no_more(laid(0, 0, 0), laid(0, 1, 0)));
        assert!(no_more(laid(0, 0, 0), laid(0, 0, 1)) && no_more(laid(0, 0, 1), laid(0, 1, 1)));
        assert!(!no_more(laid(0, 1, 0), laid(0, 0, 0)) && !no_more(laid(0, 1, 0), laid(0, 0, 1)));
        assert!(!no_more(laid(0, 0, 1), laid(0, 1, 0)) && !no_more(laid(1, 0, 0), laid(0, 1, 1)));
    }
}
