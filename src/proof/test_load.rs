//! The load case that a test stands for.

use crate::{
    analysis::Analysis,
    check::Outcome,
    geometry::Point,
    load::weight::gravity,
    load_case::{Held, LoadCase},
    top::Top,
    units::{Force, Length, Pressure, Ratio},
};

/// How the load of a case lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// All over the top.
    Even {
        /// Beyond own weight.
        pressure: Pressure,
    },
    /// At one place.
    Place {
        /// The worst, where somebody stands or hangs on.
        at: Point,
    },
}

/// Which loads a test may be made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// Whichever governs.
    Any,
    /// One all over the top.
    Even,
    /// One at a place.
    Place,
}

impl Wanted {
    const fn takes(self, kind: Kind) -> bool {
        matches!((self, kind), (Self::Any, _) | (Self::Even, Kind::Even { .. }) | (Self::Place, Kind::Place { .. }))
    }
}

/// What a test stands for.
#[derive(Clone, Debug, PartialEq)]
pub struct TestLoad {
    /// Title of the load case.
    pub case: String,
    /// The check that is used most under it, as its place in the list.
    pub check: usize,
    /// How far, with its factor.
    pub used: Ratio,
    /// How it lies.
    pub kind: Kind,
    /// All of it.
    pub force: Force,
}

/// The load that bags can make whose worst check is used most.
pub(super) fn governing(analysis: &Analysis<'_>, outcomes: &[Outcome], wanted: Wanted) -> Option<TestLoad> {
    let load = |outcome: &Outcome| {
        let case = &analysis.cases[outcome.case?];
        let (used, place) = (outcome.utilisation()?, outcome.place.load_at.or(outcome.place.at));
        let (kind, force) = of_case(analysis.top, case, place)?;
        Some(TestLoad { case: case.title.clone(), check: outcome.check, used, kind, force })
    };
    // The first that is used most: a tie goes to the order of the report.
    let loads = outcomes.iter().filter_map(load).filter(|load| wanted.takes(load.kind));
    loads.reduce(|most, other| if other.used > most.used { other } else { most })
}

/// What of a case bags can make.
///
/// ```text
/// q = p + w + (n − 1) m g,  F = q A
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *q*, *F* | load beyond own weight, per area and all over |
/// | *p*, *w* | pressure; wind away from the edges |
/// | *n*, *m* | times own weight; mass of the top per area |
/// | *A* | area in plan, holes left out |
fn of_case(top: &Top, case: &LoadCase, place: Option<Point>) -> Option<(Kind, Force)> {
    if case.held != Held::OnFrame || case.temperatures.is_some() {
        return None;
    }
    if let Some(people) = case.people {
        return Some((Kind::Place { at: place? }, people.each * super::heaps::count(people.count)));
    }
    if let Some(hand) = case.hand {
        return (hand > Force::default()).then_some((Kind::Place { at: place? }, hand));
    }
    let weight: Pressure = top.field_mass() * (gravity() * (case.gravity - Ratio::from(1.0)));
    let pressure: Pressure = case.pressure + case.wind.interior + weight;
    let area = top.outline.area();
    let none = Pressure::default() * (Length::default() * Length::default());
    let force: Force = pressure * area;
    (force > none && pressure > Pressure::default()).then_some((Kind::Even { pressure }, force))
}
