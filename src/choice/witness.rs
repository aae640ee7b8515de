//! What rules a candidate out at a glance: the load case and the check that ruled out others.

use crate::{
    analysis::{Analysis, DIVISIONS},
    check::{CHECKS, Outcome, Subject, run_one},
    top::Top,
};

/// How many are asked: each costs a part of what the whole hand method costs.
const MOST: usize = 3;

/// A check that fails under a load case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Witness {
    pub(super) check: usize,
    pub(super) case: &'static str,
    /// By the hand method, the strip or bay in which it failed last; nothing is known of one that was never asked.
    part: Option<usize>,
    /// How many it has ruled out.
    told: usize,
}

/// Those that have ruled out most, the strictest first.
///
/// A part of the whole analysis fails only where the whole fails too: the forces of a case in a strip or a bay, and what a check
/// makes of them, do not hang on other cases, strips and bays. So what a witness rules out is ruled out by the whole, and nothing
/// is passed on its word.
#[derive(Clone, Debug, Default)]
pub(super) struct Witnesses(Vec<Witness>);

impl Witnesses {
    /// The first failure that one of them finds by the hand method.
    pub(super) fn rule_out(&self, top: &Top) -> Option<Witness> {
        let asked = self.asked()?;
        let mut analysis = Analysis::unsolved(top, &|case| asked.iter().any(|witness| witness.case == case.id)).ok()?;
        // Where each has failed last, it most often fails again.
        for (place, part) in asked.iter().enumerate().filter_map(|(place, witness)| Some((place, witness.part?))) {
            if asked[..place].iter().any(|before| before.part == Some(part)) {
                continue;
            }
            if let Some(told) = told_in(&mut analysis, part, asked) {
                return Some(told);
            }
        }
        let known = |part: &usize| asked.iter().any(|witness| witness.part == Some(*part));
        (0..analysis.parts()).filter(|part| !known(part)).find_map(|part| told_in(&mut analysis, part, asked))
    }

    /// The first failure that one of them finds on a rough plate.
    pub(super) fn rule_out_by_plate(&self, top: &Top) -> Option<Witness> {
        let asked = self.asked()?;
        // One alone has one state of the core, and so far fewer matrices than all together.
        let (first, others) = asked.split_first()?;
        told_by_plate(top, std::slice::from_ref(first)).or_else(|| told_by_plate(top, others))
    }

    fn asked(&self) -> Option<&[Witness]> {
        let asked = &self.0[..self.0.len().min(MOST)];
        (!asked.is_empty()).then_some(asked)
    }

    /// Whether a part of the analysis would find the same failure under its load case.
    pub(super) fn may_be(worst: &Outcome) -> bool {
        CHECKS[worst.check].subject() == Subject::Top && fails(worst)
    }

    /// Remembers who ruled one out, and where.
    pub(super) fn count(&mut self, of: Witness) {
        match self.0.iter_mut().find(|known| known.check == of.check && known.case == of.case) {
            Some(known) => {
                known.told += 1;
                known.part = of.part.or(known.part);
            }
            None => self.0.push(of),
        }
        // Those told equally often stay in the order in which they came.
        self.0.sort_by_key(|witness| std::cmp::Reverse(witness.told));
    }
}

impl Witness {
    /// One that has ruled out the first.
    pub(super) fn new(check: usize, case: &'static str) -> Self {
        Self { check, case, part: None, told: 1 }
    }
}

/// The first that finds a failure in a strip or a bay.
fn told_in(analysis: &mut Analysis<'_>, part: usize, asked: &[Witness]) -> Option<Witness> {
    // A part of another layout: the top of the witness had more of them.
    if part >= analysis.parts() {
        return None;
    }
    analysis.solve_part(part, DIVISIONS).ok()?;
    told(analysis, asked).map(|witness| Witness { part: Some(part), ..witness })
}

/// The first that finds a failure on a rough plate.
fn told_by_plate(top: &Top, asked: &[Witness]) -> Option<Witness> {
    if asked.is_empty() {
        return None;
    }
    let analysis = Analysis::unsolved(top, &|case| asked.iter().any(|witness| witness.case == case.id)).ok()?;
    told(&analysis.with_rough_plate(), asked)
}

/// The first that finds a failure in what was solved.
fn told(analysis: &Analysis<'_>, asked: &[Witness]) -> Option<Witness> {
    let finds = |witness: &&Witness| {
        run_one(witness.check, analysis).iter().any(|outcome| {
            let of_case = outcome.case.is_some_and(|case| analysis.cases[case].id == witness.case);
            of_case && fails_whatever_its_error(outcome)
        })
    };
    asked.iter().find(finds).copied()
}

/// Whether a comparison fails even with the numerical error, which the demand has on top, taken off instead.
pub(super) fn fails_whatever_its_error(outcome: &Outcome) -> bool {
    let error = outcome.numerical_error().map_or(1.0, |error| 1.0 + error.value);
    outcome.utilisation().is_some_and(|used| used.value > error * error)
}

/// Whether a comparison was made and fails.
pub(super) fn fails(outcome: &Outcome) -> bool {
    outcome.utilisation().is_some() && !outcome.passes()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;
    use crate::input::{NamedText, read_design, read_tables};

    #[test]
    fn a_witness_rules_out_what_fails_and_nothing_that_holds() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/survey-launch.toml");
        let text = NamedText { name: "survey-launch".to_owned(), text: std::fs::read_to_string(path).unwrap() };
        let holds = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
        let core_shear = CHECKS.iter().position(|check| check.id() == "core-shear").unwrap();
        let mut witnesses = Witnesses::default();
        assert!(witnesses.rule_out(&holds).is_none(), "there is none yet");
        witnesses.count(Witness::new(core_shear, "people"));
        // Its core is used by 98 % under one person; one thinner by a tenth is not enough.
        assert!(witnesses.rule_out(&holds).is_none());
        let mut weaker = holds.clone();
        weaker.core.thickness *= 0.9;
        assert_eq!(witnesses.rule_out(&weaker).map(|witness| witness.check), Some(core_shear));
    }
}
