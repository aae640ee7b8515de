//! A top looked at by both methods, and by hand alone.

use super::{
    both::used,
    cannot::{Cannot, Open},
    frame::frame_mass,
    price::{Money, Prices},
    sag::Deepest,
    space::{Candidate, misfit},
    witness::{Witnesses, fails_whatever_its_error},
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
    /// What rules out others like it: a check, and a load case.
    pub(super) witness: Option<(usize, &'static str)>,
}

/// A top as both methods see it, before it is judged.
pub(super) struct Seen {
    /// What is known of it without them.
    unjudged: Found,
    outcomes: Vec<Outcome>,
    /// Whether there is a plate solution.
    solved: bool,
    /// Whether it was not solved as finely as it has to be.
    pub(super) cut_short: bool,
    /// Names and titles of load cases, in the order of the analysis.
    cases: Vec<(&'static str, String)>,
}

impl Seen {
    /// Where it is not to settle any more, on the usual triangles alone.
    pub(super) fn of(
        top: &Top,
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
            open: Vec::new(),
            governs: None,
            case: None,
            by_hand: None,
            by_plate: None,
            sag: None,
        };
        let Ok(analysis) = Analysis::new(top, DIVISIONS) else {
            return Self { unjudged, outcomes: Vec::new(), solved: false, cut_short: false, cases: Vec::new() };
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
        let most = |method: Method| {
            let own = outcomes.iter().filter(|outcome| outcome.method == method).filter_map(Outcome::utilisation);
            own.max_by(|a, b| a.value.total_cmp(&b.value))
        };
        let unjudged = Found {
            open: Open::all(&analysis, &outcomes),
            by_hand: most(Method::Hand),
            by_plate: most(Method::Plate),
            sag: Deepest::of(&analysis).map(|deepest| deepest.sag),
            ..unjudged
        };
        let solved = analysis.whole.as_ref().is_none_or(Result::is_ok);
        let cases = analysis.cases.iter().map(|case| (case.id, case.title.clone())).collect();
        Self { unjudged, outcomes, solved, cut_short, cases }
    }

    /// What could not be judged.
    pub(super) fn open(&self) -> &[Open] {
        &self.unjudged.open
    }

    /// Judged by all but what cannot be judged of any.
    pub(super) fn judged(self, cannot: &Cannot) -> Looked {
        let Self { unjudged, outcomes, solved, cases, .. } = self;
        let rest = || outcomes.iter().filter(|outcome| !cannot.has(outcome));
        let passes = solved && rest().next().is_some() && rest().all(Outcome::passes) && cannot.has_all(&unjudged.open);
        let worst = rest().next();
        let case = worst.and_then(|worst| worst.case).map(|case| cases[case].clone());
        let witness = worst.zip(case.as_ref()).filter(|(worst, _)| Witnesses::may_be(worst));
        Looked {
            witness: witness.map(|(worst, (id, _))| (worst.check, *id)),
            passes,
            found: Found {
                holds: passes && unjudged.open.is_empty(),
                governs: worst.cloned(),
                case: case.map(|(_, title)| title),
                ..unjudged
            },
        }
    }
}

/// How far the worst of the hand method is used that counts, infinite where a check could not be made.
pub(super) fn used_by_hand(top: &Top, cannot: &Cannot) -> Option<(Ratio, usize)> {
    if misfit(top, top.core.thickness, top.thickness()).is_some() {
        return None;
    }
    let analysis = Analysis::new(top, DIVISIONS).ok()?;
    run(&analysis).iter().find(|outcome| !cannot.has(outcome)).map(used)
}
