//! What sags least of all, among those that were passed over since by hand they sag about as far as a smaller one.

use rayon::prelude::*;

use super::{ByHand, Fate, Looking, Next, PLATES_AT_ONCE};
use crate::{
    analysis::Analysis,
    check::Method,
    choice::{sag::Deepest, shown::Standing, space::Measures},
    units::Length,
};

/// So many are looked at by a plate, rough or not: what may sag least first. More would take minutes on a large top.
const MOST_LOOKS: usize = 256;

/// Those passed over are thinned out when there are so many more.
const MANY: usize = 100_000;

/// One that may yet sag least.
struct Waiting {
    next: Next,
    /// How far it sags at least.
    least: Length,
    /// Whether it holds by hand and a rough plate has told that, or the hand method alone, as far as it was asked.
    on_plate: bool,
}

impl Looking<'_> {
    /// Remembers one that may yet sag least.
    pub(super) fn pass_over(&mut self, next: Next, at_least: Length) {
        if self.may_sag_least(at_least) {
            self.passed_over.push((next, at_least));
            if self.passed_over.len().is_multiple_of(MANY) {
                self.thin_out();
            }
        }
    }

    fn thin_out(&mut self) {
        let mut passed_over = std::mem::take(&mut self.passed_over);
        passed_over.retain(|(_, at_least)| self.may_sag_least(*at_least));
        self.passed_over = passed_over;
    }

    /// Whether what sags by so much at least may sag less than all that are shown.
    fn may_sag_least(&self, at_least: Length) -> bool {
        self.shown.least_sag().is_some_and(|least| at_least < least.verified)
    }

    /// Looks at those passed over, always next at what may sag least, until none can sag less than the least that is known.
    /// Whether it was stopped. Those for which it does not come to a look have a fate of their own.
    ///
    /// The sag that counts is the larger of both methods, so that one sags no less than it does by hand. Nor does it sag less than on a rough
    /// plate whose error is taken off: that is taken for granted, since that error is an estimate. Nothing is taken for granted of what
    /// fewer layers or another core do: in the sun a top with fewer layers may bow less.
    pub(in crate::choice) fn least_sag(&mut self) -> bool {
        self.least_sag_within(MOST_LOOKS)
    }

    fn least_sag_within(&mut self, most: usize) -> bool {
        let mut looks = 0;
        if self.space.order.measures() != Measures::SizesAndSag {
            return false;
        }
        self.thin_out();
        // What sags least comes last.
        let mut waiting: Vec<Waiting> = std::mem::take(&mut self.passed_over)
            .into_iter()
            // Its size is no matter any more.
            .map(|(next, least)| Waiting { next: Next { standing: Standing::Free, ..next }, least, on_plate: false })
            .collect();
        waiting.sort_by(|a, b| b.least.value.total_cmp(&a.least.value).then(b.next.candidate.cmp(&a.next.candidate)));
        loop {
            if self.watch.stops() {
                return true;
            }
            if looks >= most {
                let left = waiting.iter().filter(|own| self.may_sag_least(own.least)).count();
                (0..left).for_each(|_| self.fates.not_beaten(Fate::MaySagLess));
                return false;
            }
            let may = waiting.iter().rev().take_while(|own| self.may_sag_least(own.least));
            let by_hand = may.take(PLATES_AT_ONCE).take_while(|own| !own.on_plate).count();
            let own = waiting.split_off(waiting.len() - by_hand.max(1).min(waiting.len()));
            let Some(first) = own.last().filter(|first| self.may_sag_least(first.least)) else { return false };
            if first.on_plate {
                looks += 1;
                if self.last_look(&first.next) {
                    return true;
                }
                continue;
            }
            let said: Vec<(ByHand, Option<Length>)> = own.par_iter().map(|own| self.at_least(&own.next)).collect();
            for (Waiting { next, .. }, (said, least)) in own.into_iter().zip(said) {
                match (self.not_holding(said), least) {
                    (Some(fate), _) => self.fates.not_beaten(fate),
                    (None, Some(least)) => {
                        looks += 1;
                        let place = waiting.partition_point(|other| other.least > least);
                        waiting.insert(place, Waiting { next, least, on_plate: true });
                    }
                    (None, None) => {}
                }
            }
        }
    }

    /// Looks at one by both methods. Whether it was stopped.
    fn last_look(&mut self, next: &Next) -> bool {
        let standing = self.shown.least_sag().map_or(Standing::Free, Standing::BeatenFrom);
        match self.by_plate(&Next { standing, ..*next }, None) {
            None => return true,
            Some(Fate::Beaten) => {}
            Some(fate) => self.fates.not_beaten(fate),
        }
        false
    }

    /// What became of one that does not hold by hand.
    fn not_holding(&mut self, said: ByHand) -> Option<Fate> {
        match said {
            ByHand::Over(fate) => Some(fate),
            ByHand::Fails { check, witness } => {
                if let Some(witness) = witness {
                    self.hand.count(witness);
                }
                Some(Fate::Fails { check, method: Method::Hand, at_a_glance: false })
            }
            ByHand::AtAGlance(witness) => {
                self.hand.count(witness);
                Some(Fate::Fails { check: witness.check, method: Method::Hand, at_a_glance: true })
            }
            ByHand::Sags(..) | ByHand::Holds(_) => None,
        }
    }

    /// What the hand method says of one, and where it holds how far it sags at least, by hand and on a rough plate under the load case that
    /// makes another sag most.
    fn at_least(&self, next: &Next) -> (ByHand, Option<Length>) {
        let said = self.by_hand(next);
        let ByHand::Holds(by_hand) = said else { return (said, None) };
        let by_hand = by_hand.unwrap_or_default();
        if !self.may_sag_least(by_hand) {
            return (said, Some(by_hand));
        }
        let on_plate = self.sags_under.and_then(|under| {
            let top = self.space.top(next.candidate);
            let analysis = Analysis::unsolved(&top, &|case| case.id == under).ok()?.with_rough_plate();
            Deepest::at_least_by_plate(&analysis)
        });
        (said, Some(on_plate.unwrap_or_default().max(by_hand)))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;
    use crate::{
        choice::{
            arrangement::Arrangement,
            aside::Aside,
            found::{Looked, Seen},
            search::Watch,
            sizes::Sizes,
            space::{Candidate, Limits, Order, Space},
        },
        input::{NamedText, read_design, read_tables},
        top::{CoreSheet, Schedule, SkinLayer, Top},
        units::MassDensity,
    };
    use uom::si::{length::millimeter, mass_density::kilogram_per_cubic_meter};

    struct Told(bool);

    impl Watch for Told {
        fn at(&self, _: usize, _: usize, _: usize) {}
        fn stops(&self) -> bool {
            self.0
        }
    }

    fn roof() -> Top {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/galley-roof.toml");
        let text = NamedText { name: "galley-roof".to_owned(), text: std::fs::read_to_string(path).unwrap() };
        read_design(&text, &read_tables(&[]).unwrap(), None).unwrap()
    }

    /// The roof with nobody on it and a stiff core: the wind makes it sag most by hand, the sun as a plate.
    fn in_the_sun() -> Space {
        let mut top = roof();
        top.service.people = 0;
        let table = read_tables(&[]).unwrap();
        let family = table.core("pmi-foam").unwrap();
        let density = MassDensity::new::<kilogram_per_cubic_meter>(200.0);
        let thickness = Length::new::<millimeter>(50.8);
        top.core = CoreSheet { family: family.clone(), material: family.at(density).unwrap(), thickness };
        // One coat, one cloth along, one at 45 degrees; the inner skin the other way round.
        let [coat, along, slanting] = [0, 1, 2].map(|at| top.outer.layers()[at].clone());
        let laid = |first: (&SkinLayer, usize), then: (&SkinLayer, usize)| {
            let of = |(layer, times): (&SkinLayer, usize)| std::iter::repeat_n(layer.clone(), times);
            of(first).chain(of(then))
        };
        let outer = |times: usize| {
            let carrying = laid((&along, times), (&slanting, 3));
            Schedule::new(std::iter::once(coat.clone()).chain(carrying).collect()).unwrap()
        };
        let inner = |times: usize| Schedule::new(laid((&slanting, times), (&along, 1)).collect()).unwrap();
        Space {
            arrangements: vec![Arrangement::own(&top)],
            prices: None,
            cores: vec![top.core.clone()],
            outer: vec![outer(2), outer(3)],
            inner: vec![inner(1), inner(2)],
            limits: Limits::default(),
            order: Order::Sag,
        }
    }

    /// A roof as its file has it, and with one more of the first layer of its outer skin: both hold.
    fn two() -> Space {
        let top = roof();
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

    /// In the sun more layers bow a top more: the one that sags least may have fewer in both skins and sag far more by hand than the one that
    /// sagged least on the way, and is found all the same.
    #[test]
    fn what_bows_least_in_the_sun_is_found_among_stiffer_ones() {
        let (space, aside) = (in_the_sun(), Aside::default());
        let looked = |number: usize| {
            let candidate = space.candidate(number);
            Seen::of(&space.top(candidate), Some(candidate), None, &|| true).judged(&aside)
        };
        let all: Vec<Looked> = (0..space.len()).map(looked).collect();
        assert!(all.iter().all(|looked| looked.passes));
        let least =
            all.iter().min_by(|a, b| a.found.sag.unwrap().value.total_cmp(&b.found.sag.unwrap().value)).unwrap();
        let stiffer = all.last().unwrap();
        assert_eq!(least.found.candidate, Some(space.candidate(2)));
        assert!(least.sag_by_hand > stiffer.sag_by_hand * 1.2 && least.found.mass < stiffer.found.mass);
        let mut looking = looked_at(&space, &aside, &Told(false));
        assert_eq!(
            looking.passed_over.iter().map(|(next, _)| Some(next.candidate)).collect::<Vec<_>>(),
            [least.found.candidate]
        );
        assert_eq!(looking.shown.least_sag().map(|sags| Some(sags.verified)), Some(stiffer.found.sag));
        assert!(!looking.least_sag());
        let (found, _) = looking.done();
        assert_eq!(found[0].candidate, least.found.candidate);
    }

    /// What it does not come to is told.
    #[test]
    fn what_may_sag_less_and_was_not_looked_at_is_told() {
        let (space, aside) = (two(), Aside::default());
        let mut looking = looked_at(&space, &aside, &Told(false));
        assert!(!looking.least_sag_within(0));
        let (found, fates) = looking.done();
        assert_eq!(found.iter().filter_map(|found| found.candidate).collect::<Vec<_>>(), [space.candidate(0)]);
        let tally = fates.tally().into_iter().map(|tally| (tally.fate, tally.count)).collect::<Vec<_>>();
        assert_eq!(tally.len(), 2, "{tally:?}");
        assert!([Fate::Shown, Fate::MaySagLess].iter().all(|fate| tally.contains(&(fate.clone(), 1))), "{tally:?}");
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
}
