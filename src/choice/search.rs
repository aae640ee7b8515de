//! The search: from the lightest up, so that what holds rules out all that is heavier and no thinner.

use rayon::prelude::*;

use super::{
    always::Always,
    aside::Aside,
    both::{Both, used},
    cannot::{Cannot, Open},
    fate::{Fate, Fates, Tally},
    found::{Found, Seen},
    grid::Grid,
    looking::Looking,
    price::Money,
    sizes::{Size, Sizes},
    space::Space,
    step::Step,
};
use crate::{
    check::Method,
    top::{CoreSheet, Top},
    units::Ratio,
};

/// Candidates that are looked at together; what a batch has taught rules out in the next.
const AT_ONCE: usize = 64;

/// Somebody who waits.
pub trait Watch: Sync {
    /// How many of how many have been looked at, and how many of them are shown.
    fn at(&self, looked_at: usize, of: usize, shown: usize);
    /// Whether to stop with what there is.
    fn stops(&self) -> bool;
}

/// A part of the answer that is not there, since somebody stopped it before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeftOut {
    /// [`Chosen::grids`].
    Grids,
    /// [`Chosen::steps`].
    Steps,
    /// What both methods say of the borders of the tables, and of steps that save weight.
    ByBoth,
}

/// What a search came to.
#[derive(Clone, Debug)]
pub struct Chosen {
    /// How many candidates there are.
    pub of: usize,
    /// Those that hold and that none other beats in weight, thickness and cost, and where sag was asked for in sag, in the order that
    /// was asked for. Where something cannot be judged of any candidate, those that pass all else.
    pub found: Vec<Found>,
    /// The top as the file has it.
    pub own: Found,
    /// What cannot be judged, whatever is laid up.
    pub cannot: Vec<Open>,
    /// What fails whatever is laid up, as far as was judged, where nothing holds; [`Chosen::found`] and [`Chosen::tally`] are then without it.
    pub always: Vec<Always>,
    /// Whether each candidate was looked at with that too, and none holds; else that is known of those alone that were judged for it.
    pub none_holds: bool,
    /// What became of how many, most first.
    pub tally: Vec<Tally>,
    /// What every core makes of the skins of the file, by the hand method; where one that holds lies beside one that does not, by both, as
    /// far as one cares to wait.
    pub grids: Vec<Grid>,
    /// What one step more or less makes of the first of those found; of the file's own where none was. By the hand method; of those that
    /// save most by both.
    pub steps: Vec<Step>,
    /// Whether the search was stopped.
    pub stopped: bool,
    /// What is not there since it was stopped.
    pub left_out: Vec<LeftOut>,
}

/// Looks at every candidate of a space, so far as that takes.
///
/// From the lightest up, each is either beaten by one that holds and is as light, as thin and as cheap; ruled out by a load case that
/// ruled out others; or goes through the whole hand method, and, where that passes it, through the whole plate method.
/// Only what both pass is shown. Where the least sag is asked for, one is beaten only where it also sags as much, which a part of the
/// hand method may tell, since the sag that counts is the larger of both methods.
#[must_use]
pub fn choose(top: &Top, space: &Space, watch: &dyn Watch) -> Chosen {
    watch.at(0, space.len(), 0);
    // The file's own is looked at whatever happens: the answer is set beside it.
    let mut own = Seen::of(top, space.place_of(top), space.prices.as_ref(), &|| true);
    let cannot = Cannot::of(own.open(), space);
    let always = own.analysis().map_or_else(Vec::new, |(analysis, outcomes)| Always::all(analysis, outcomes, space));
    let Answer { found, fates, stopped, mut aside, none_holds } = answer(space, cannot, always, watch);
    let own = own.judged(&aside).found;
    let first = found.first().and_then(|first| first.candidate).map(|first| space.top(first));
    let from = first.as_ref().unwrap_or(top);
    if !watch.stops() {
        Always::find_remedies(&mut aside.always, from);
    }
    let known = found
        .iter()
        .filter_map(|found| known(space, top, found))
        .chain(own.governs.as_ref().map(|worst| (&top.core, used(worst))));
    let both = Both { space, aside: &aside, watch, known: known.collect() };
    let mut grids = Grid::all(top, &both);
    let mut steps = Step::all(from, &both);
    // What both methods say comes last: it takes longest.
    let families = [from.core.family.id.as_str(), top.core.family.id.as_str()];
    let judged = grids.as_mut().is_none_or(|grids| both.borders(top, grids, &families))
        && steps.as_mut().is_none_or(|steps| both.steps(steps));
    let left_out = [(LeftOut::Grids, grids.is_none()), (LeftOut::Steps, steps.is_none()), (LeftOut::ByBoth, !judged)];
    Chosen {
        of: space.len(),
        found,
        own,
        tally: fates.tally(),
        grids: grids.unwrap_or_default(),
        steps: steps.unwrap_or_default().into_iter().map(|(step, _)| step).collect(),
        stopped,
        left_out: left_out.into_iter().filter(|(_, missing)| *missing).map(|(part, _)| part).collect(),
        cannot: aside.cannot.0,
        always: aside.always,
        none_holds,
    }
}

/// The core of one found in the skins of the file and on its pipes, with how far it is used and what governs.
fn known<'s>(space: &'s Space, top: &Top, found: &Found) -> Option<(&'s CoreSheet, (Ratio, usize))> {
    let of = found.candidate?;
    let laid_so = space.arrangements[of.arrangement].changes.is_empty()
        && space.outer[of.outer] == top.outer
        && space.inner[of.inner] == top.inner;
    found.governs.as_ref().filter(|_| laid_so).map(|worst| (&space.cores[of.core], used(worst)))
}

/// What all looking came to.
struct Answer {
    found: Vec<Found>,
    fates: Fates,
    stopped: bool,
    aside: Aside,
    none_holds: bool,
}

/// Looks at all of a space. What may fail whatever is laid up is left aside only where nothing holds with it: where that is known at a glance
/// all are looked at twice, else those that pass the rest are judged with it too.
fn answer(space: &Space, cannot: Cannot, always: Vec<Always>, watch: &dyn Watch) -> Answer {
    let all = Aside { cannot: cannot.clone(), always: Vec::new() };
    let but = Aside { cannot, always };
    let with = |aside: Aside, none_holds: bool| {
        let (found, fates, stopped) = search(space, &aside, watch);
        Answer { found, fates, stopped, aside, none_holds }
    };
    if but.always.iter().all(|own| own.least.method == Method::Plate) {
        let mut answer = with(but, false);
        if answer.found.iter().any(|found| found.fails.is_empty()) && !answer.aside.always.is_empty() {
            return with(all, false);
        }
        let judged = answer.found.len();
        answer.aside.always.iter_mut().for_each(|own| own.judged += judged);
        return answer;
    }
    let first = with(all, false);
    if !first.found.is_empty() {
        return first;
    }
    if first.stopped {
        return Answer { aside: but, ..first };
    }
    let mut answer = with(but, true);
    let judged = answer.found.len();
    answer.aside.always.iter_mut().for_each(|own| own.judged += judged);
    answer
}

/// Those found in the order that was asked for, what became of how many, and whether it was stopped.
fn search(space: &Space, aside: &Aside, watch: &dyn Watch) -> (Vec<Found>, Fates, bool) {
    let mut looking = Looking::new(space, aside, watch);
    let mut stopped = false;
    for batch in from_the_lightest(space).chunks(AT_ONCE) {
        looking.tell();
        stopped = watch.stops() || looking.batch(batch);
        if stopped {
            break;
        }
    }
    stopped = stopped || looking.least_sag();
    looking.tell();
    let (found, mut fates) = looking.done();
    let left = space.len() - fates.counted();
    if left > 0 {
        fates.more(Fate::NotLookedAt, left);
    }
    (found, fates, stopped)
}

/// All candidates: the lightest first; of those as heavy the thinnest, and of these the cheapest.
fn from_the_lightest(space: &Space) -> Vec<(Size, usize)> {
    let sizes = Sizes::of(space);
    let sized = |number| (sizes.size(space.candidate(number)), number);
    let mut order: Vec<(Size, usize)> = (0..space.len()).into_par_iter().map(sized).collect();
    order.par_sort_unstable_by(|(a, first), (b, second)| {
        let by = a.weight().value.total_cmp(&b.weight().value).then(a.thickness.value.total_cmp(&b.thickness.value));
        let cost = |size: &Size| size.cost.map_or(0.0, Money::amount);
        by.then(cost(a).total_cmp(&cost(b))).then(first.cmp(second))
    });
    order
}
