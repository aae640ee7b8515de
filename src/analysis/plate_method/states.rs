//! States of the core in which the top is solved, and at which degrees.

use super::{
    PlateForces, Pressed,
    error::{AS_MUCH_AGAIN, Lent},
    people::Moving,
    solver::OfState,
};
use crate::units::Ratio;

/// Cases whose core has the same share of its stiffness left, with what moves in them: they share a matrix.
pub(super) struct Alike<'a> {
    pub(super) left: Ratio,
    pub(super) moving: Vec<&'a Moving>,
}

/// The states of a top. Where nobody moves the lower degree may count: what it is off by then shows in the same loads on
/// the leading core.
pub(super) struct States<'a> {
    /// Solved at both degrees.
    twice: Vec<Alike<'a>>,
    /// The loads of those solved once, on the leading core at both degrees.
    lent: Option<Alike<'a>>,
    /// Solved at the lower degree alone.
    once: Vec<Alike<'a>>,
}

impl<'a> States<'a> {
    pub(super) fn new(alike: &'a [(Ratio, Vec<Moving>)], leading: Ratio, still_at_lower: bool) -> Self {
        let standing = alike.iter().filter(|(_, moving)| !moving.is_empty());
        let (once, twice): (Vec<Alike<'a>>, Vec<Alike<'a>>) = standing
            .map(|(left, moving)| Alike { left: *left, moving: moving.iter().collect() })
            .partition(|Alike { left, moving }| {
                still_at_lower && *left != leading && moving.iter().all(|moving| moving.placed.is_empty())
            });
        let moving: Vec<&Moving> = once.iter().flat_map(|state| &state.moving).copied().collect();
        let lent = (!moving.is_empty()).then_some(Alike { left: leading, moving });
        Self { twice, lent, once }
    }

    /// Those solved at both degrees, first in the order of [`Self::at_lower`].
    pub(super) fn at_both(&self) -> Vec<&Alike<'a>> {
        self.twice.iter().chain(&self.lent).collect()
    }

    /// All that are solved at the lower degree.
    pub(super) fn at_lower(&self) -> Vec<&Alike<'a>> {
        self.twice.iter().chain(&self.lent).chain(&self.once).collect()
    }

    /// What presses a crown in the cases of what was tried at the lower degree, each on its own core.
    pub(super) fn pressed<'b>(&self, tried: &'b [OfState]) -> impl Iterator<Item = &'b Pressed> {
        let lent = self.twice.len()..self.at_both().len();
        let own = tried.iter().enumerate().filter(move |(number, _)| !lent.contains(number));
        own.flat_map(|(_, (_, pressed))| pressed)
    }

    /// Cases in which the lower degree counts.
    pub(super) fn cases_at_lower(&self) -> Vec<usize> {
        let moving = self.once.iter().flat_map(|state| &state.moving);
        let mut cases: Vec<usize> = moving.flat_map(|moving| &moving.cases).map(|(case, _)| *case).collect();
        cases.sort_unstable();
        cases
    }

    /// Puts together what was tried at the lower degree and solved at the higher; `looked` is what presses a crown, with the
    /// modes that were looked for.
    pub(super) fn settled(&self, tried: Vec<OfState>, solved: Vec<OfState>, looked: &[Pressed]) -> OfState {
        let (mut forces, mut pressed): OfState = (Vec::new(), Vec::new());
        let (mut lent, mut lent_pressed): (Vec<Lent>, Vec<(Pressed, Pressed)>) = (Vec::new(), Vec::new());
        let mut tried = tried.into_iter();
        for (number, (mut higher, mut higher_pressed)) in solved.into_iter().enumerate() {
            let Some((lower, lower_pressed)) = tried.next() else { break };
            if number < self.twice.len() {
                higher.iter_mut().zip(&lower).for_each(|(higher, lower)| higher.settle(lower));
                for higher in &mut higher_pressed {
                    if let Some(lower) = looked.iter().find(|lower| lower.case == higher.case) {
                        higher.settle(lower);
                    }
                }
                forces.extend(higher);
                pressed.extend(higher_pressed);
            } else {
                lent.extend(lower.into_iter().zip(&higher).map(|(lower, higher)| Lent::new(lower, higher)));
                lent_pressed.extend(lower_pressed.into_iter().zip(higher_pressed));
            }
        }
        for (mut own, own_pressed) in tried {
            for own in &mut own {
                if let Some(lent) = lent.iter().find(|lent| lent.case() == own.case) {
                    own.settle_as(lent);
                }
            }
            forces.extend(own);
            for own in own_pressed {
                let mut own = looked.iter().find(|looked| looked.case == own.case).copied().unwrap_or(own);
                let pair = lent_pressed.iter().find(|(lower, _)| lower.case == own.case);
                if let Some((lower, higher)) = pair.filter(|_| own.buckles_at.is_none()) {
                    own.error = Ratio::from((higher.most / lower.most).value - 1.0).abs() * AS_MUCH_AGAIN;
                }
                pressed.push(own);
            }
        }
        forces.sort_by_key(|forces: &PlateForces| forces.case);
        (forces, pressed)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may panic")]

    use super::super::{Fineness, PlateMethod};
    use crate::{
        analysis::Analysis,
        input::{NamedText, read_design, read_tables},
    };

    #[test]
    fn with_its_error_the_lower_degree_covers_what_the_higher_finds() {
        let file = |name: &str| {
            let text = std::fs::read_to_string(format!("{}/examples/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap();
            NamedText { name: name.to_owned(), text }
        };
        let top = read_design(&file("galley-roof.toml"), &read_tables(&[]).unwrap(), None).unwrap_or_else(|_| panic!());
        let analysis = Analysis::new(&top, 16).unwrap();
        let solved = |still_at_lower| {
            let fineness = Fineness { still_at_lower, ..Fineness::usual() };
            let loads = (&analysis.cases[..], &analysis.knockdowns[..]);
            PlateMethod::new(&top, &analysis.sections, loads, None, fineness).unwrap_or_else(|_| panic!())
        };
        let (usual, all_at_both) = (solved(true), solved(false));
        assert!(!usual.at_lower.is_empty() && usual.at_lower.len() < usual.cases.len());
        assert_eq!(all_at_both.at_lower, Vec::<usize>::new());
        let mut looked_at = 0;
        for (own, both) in usual.cases.iter().zip(&all_at_both.cases) {
            if !usual.at_lower.contains(&own.case) {
                assert_eq!(own, both);
                continue;
            }
            // On another core the step to the higher degree is another: up by no more than a thousandth over twice that lent.
            let mut covers = |lower: f64, error: f64, higher: f64| {
                let step = (higher / lower - 1.0).abs();
                assert!(error + 1e-3 >= step && error <= 2.0 * step + 0.02, "{lower}, {error}, {higher}");
                looked_at += 1;
            };
            covers(own.largest_sag(), own.error.sag.value, both.largest_sag());
            for (own, both) in own.regions.iter().zip(&both.regions) {
                covers(own.largest_shear(), own.error.shear.value, both.largest_shear());
                covers(own.largest_moment(), own.error.moment.value, both.largest_moment());
            }
            for (own, both) in own.pipes.iter().zip(&both.pipes) {
                covers(own.push.value, own.along_error[0].value, both.push.value);
            }
        }
        assert!(looked_at > 12);
    }
}
