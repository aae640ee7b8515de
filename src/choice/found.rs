//! A top looked at by both methods, and by hand alone.

use super::{
    aside::{Aside, Parted},
    both::used,
    cannot::Open,
    frame::frame_mass,
    price::{Money, Prices},
    sag::Deepest,
    space::{Candidate, misfit},
    witness::{Witness, fails_whatever_its_error},
};
use crate::{
    analysis::{Analysis, DIVISIONS},
    check::{Method, Outcome, run, settled},
    top::Top,
    units::{Length, Mass, Ratio},
};

/// A top that was looked at by both methods.
#[derive(Clone, Debug)]
pub struct Found {
    /// Which of the space; none for one that is none of it.
    pub candidate: Option<Candidate>,
    /// Of the bare top.
    pub mass: Mass,
    /// Of its pipes, where wall and alloy of all of them are given.
    pub frame: Option<Mass>,
    /// Skins and core.
    pub thickness: Length,
    /// What its materials cost, where there are prices.
    pub cost: Option<Money>,
    /// Whether all checks were made and pass.
    pub holds: bool,
    /// What fails of fixings and pipes as it does in all that were judged: what counts of it is the rest.
    pub fails: Vec<Outcome>,
    /// What could not be judged; of those that are shown, what cannot be of any.
    pub open: Vec<Open>,
    /// The outcome that is used most, of the others where what could not be judged cannot be of any; none where nothing could be
    /// checked.
    pub governs: Option<Outcome>,
    /// Title of its load case.
    pub case: Option<String>,
    /// How far it is used by the hand method, at most.
    pub by_hand: Option<Ratio>,
    /// How far it is used by the plate method, at most.
    pub by_plate: Option<Ratio>,
    /// The largest sag of its shape, by either method.
    pub sag: Option<Length>,
}

/// What looking at a top came to.
pub(super) struct Looked {
    pub(super) found: Found,
    /// Whether it passes all but what cannot be judged of any.
    pub(super) passes: bool,
    /// What may rule out others.
    pub(super) witness: Option<Witness>,
    /// How far it sags by the hand method.
    pub(super) sag_by_hand: Length,
    /// The load case under which it sags most by the plate method.
    pub(super) sags_under: Option<&'static str>,
}

impl Looked {
    /// Of one that could not be analysed.
    fn nothing(found: Found) -> Self {
        Self { found, passes: false, witness: None, sag_by_hand: Length::default(), sags_under: None }
    }
}

/// A top as both methods see it, before it is judged.
pub(super) struct Seen<'t> {
    /// What is known of it without them.
    unjudged: Found,
    /// None where it could not be analysed.
    analysis: Option<Analysis<'t>>,
    outcomes: Vec<Outcome>,
    /// Whether it was not solved as finely as it has to be.
    pub(super) cut_short: bool,
}

impl<'t> Seen<'t> {
    /// Where it is not to settle any more, on the usual triangles alone.
    pub(super) fn of(
        top: &'t Top,
        candidate: Option<Candidate>,
        prices: Option<&Prices>,
        settles: &dyn Fn() -> bool,
    ) -> Self {
        let unjudged = Found {
            candidate,
            mass: top.weight().bare,
            frame: frame_mass(top),
            thickness: top.thickness(),
            cost: prices.and_then(|prices| prices.cost(top)),
            holds: false,
            fails: Vec::new(),
            open: Vec::new(),
            governs: None,
            case: None,
            by_hand: None,
            by_plate: None,
            sag: None,
        };
        let Ok(analysis) = Analysis::new(top, DIVISIONS) else {
            return Self { unjudged, analysis: None, outcomes: Vec::new(), cut_short: false };
        };
        let mut analysis = analysis.with_plate_method();
        let mut outcomes = run(&analysis);
        // What fails anyhow need not settle.
        let unsettled = !outcomes.first().is_some_and(fails_whatever_its_error);
        let cut_short = unsettled && !settles();
        if unsettled && !cut_short {
            analysis = settled(analysis);
            outcomes = run(&analysis);
        }
        let unjudged = Found {
            open: Open::all(&analysis, &outcomes),
            sag: Deepest::of(&analysis).map(|deepest| deepest.sag),
            ..unjudged
        };
        Self { unjudged, analysis: Some(analysis), outcomes, cut_short }
    }

    /// What could not be judged.
    pub(super) fn open(&self) -> &[Open] {
        &self.unjudged.open
    }

    /// The analysis and its outcomes, where there are any.
    pub(super) fn analysis(&mut self) -> Option<(&mut Analysis<'t>, &[Outcome])> {
        self.analysis.as_mut().map(|analysis| (analysis, &self.outcomes[..]))
    }

    /// Judged by all but what is left aside.
    pub(super) fn judged(self, aside: &Aside) -> Looked {
        let Self { unjudged, analysis, outcomes, .. } = self;
        let Some(mut analysis) = analysis else { return Looked::nothing(unjudged) };
        let solved = analysis.whole.as_ref().is_none_or(Result::is_ok);
        let Parted { rest, fails } = aside.parted(&mut analysis, outcomes);
        let passes =
            solved && !rest.is_empty() && rest.iter().all(Outcome::passes) && aside.cannot.has_all(&unjudged.open);
        let most = |method: Method| {
            let own = rest.iter().filter(|outcome| outcome.method == method).filter_map(Outcome::utilisation);
            own.max_by(|a, b| a.value.total_cmp(&b.value))
        };
        let worst = rest.first();
        Looked {
            witness: worst.and_then(|worst| Witness::of(worst, &analysis)),
            passes,
            sag_by_hand: Deepest::by_hand(&analysis).map_or_else(Length::default, |deepest| deepest.sag),
            sags_under: Deepest::by_plate(&analysis).map(|deepest| analysis.cases[deepest.case].id),
            found: Found {
                holds: passes && fails.is_empty() && unjudged.open.is_empty(),
                by_hand: most(Method::Hand),
                by_plate: most(Method::Plate),
                governs: worst.cloned(),
                case: worst.and_then(|worst| worst.case).map(|case| analysis.cases[case].title.clone()),
                fails,
                ..unjudged
            },
        }
    }
}

/// How far the worst of the hand method is used that counts, infinite where a check could not be made.
pub(super) fn used_by_hand(top: &Top, aside: &Aside) -> Option<(Ratio, usize)> {
    if misfit(top, top.core.thickness, top.thickness()).is_some() {
        return None;
    }
    let mut analysis = Analysis::new(top, DIVISIONS).ok()?;
    let outcomes = run(&analysis);
    aside.parted(&mut analysis, outcomes).rest.first().map(used)
}
