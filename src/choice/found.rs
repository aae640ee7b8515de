//! A top looked at by both methods, and by hand alone.

use uom::si::ratio::ratio;

use super::{
    price::{Money, Prices},
    space::{Candidate, misfit},
    witness::{Witnesses, fails_whatever_its_error},
};
use crate::{
    analysis::{Analysis, DIVISIONS},
    check::{CHECKS, Measure, Method, Outcome, Verdict, run, settled},
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
    /// Skins and core.
    pub thickness: Length,
    /// What its materials cost, where there are prices.
    pub cost: Option<Money>,
    /// Whether all checks were made and pass.
    pub holds: bool,
    /// The outcome that is used most; none where nothing could be checked.
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

/// By both methods, with what rules out others like it.
pub(super) fn looked_at_whole(
    top: &Top,
    candidate: Option<Candidate>,
    prices: Option<&Prices>,
) -> (Found, Option<(usize, &'static str)>) {
    let nothing = Found {
        candidate,
        mass: top.weight().bare,
        thickness: top.thickness(),
        cost: prices.and_then(|prices| prices.cost(top)),
        holds: false,
        governs: None,
        case: None,
        by_hand: None,
        by_plate: None,
        sag: None,
    };
    let Ok(analysis) = Analysis::new(top, DIVISIONS) else { return (nothing, None) };
    let mut analysis = analysis.with_plate_method();
    let mut outcomes = run(&analysis);
    // What fails anyhow need not settle.
    if !outcomes.first().is_some_and(fails_whatever_its_error) {
        analysis = settled(analysis);
        outcomes = run(&analysis);
    }
    let used = |method: Method| {
        let own = outcomes.iter().filter(|outcome| outcome.method == method).filter_map(Outcome::utilisation);
        own.max_by(|a, b| a.value.total_cmp(&b.value))
    };
    let solved = analysis.whole.as_ref().is_none_or(Result::is_ok);
    let holds =
        solved && analysis.open_cases.is_empty() && !outcomes.is_empty() && outcomes.iter().all(Outcome::passes);
    let worst = outcomes.first();
    let witness = worst.and_then(|worst| Some((worst.check, Witnesses::case_of(worst, &analysis)?)));
    let found = Found {
        holds,
        governs: worst.cloned(),
        case: worst.and_then(|worst| worst.case).map(|case| analysis.cases[case].title.clone()),
        by_hand: used(Method::Hand),
        by_plate: used(Method::Plate),
        sag: largest_sag(&outcomes),
        ..nothing
    };
    (found, witness)
}

/// The largest deflection that is compared as a sag.
fn largest_sag(outcomes: &[Outcome]) -> Option<Length> {
    let sags = outcomes.iter().filter_map(|outcome| match &outcome.verdict {
        Verdict::Compared(finding) if CHECKS[outcome.check].id().ends_with("sag") => match finding.demand {
            Measure::Length(sag) => Some(sag),
            _ => None,
        },
        _ => None,
    });
    sags.max_by(|a, b| a.get::<uom::si::length::meter>().total_cmp(&b.get::<uom::si::length::meter>()))
}

/// How far the worst of the hand method is used, infinite where a check could not be made.
pub(super) fn used_by_hand(top: &Top) -> Option<(Ratio, usize)> {
    if misfit(top, top.core.thickness, top.thickness()).is_some() {
        return None;
    }
    let analysis = Analysis::new(top, DIVISIONS).ok()?;
    let outcomes = run(&analysis);
    let worst = outcomes.first()?;
    Some((worst.utilisation().unwrap_or_else(|| Ratio::new::<ratio>(f64::INFINITY)), worst.check))
}
