//! What rules a candidate out at a glance: the load case and the check that ruled out others.

use crate::{
    analysis::{Analysis, DIVISIONS, Mount, MountOn},
    check::{CHECKS, Method, Outcome, Subject, run_one},
    top::Top,
};

/// How many are asked: each costs a part of what the whole hand method costs.
const MOST: usize = 4;

/// A check that fails under a load case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Witness {
    pub(super) check: usize,
    /// Name of its load case; none of a check that asks about no load.
    case: Option<&'static str>,
    /// Name of a load case under which it is asked: its own, if it has one.
    under: &'static str,
    /// The mount that lets go; none of a check of the top.
    on: Option<MountOn>,
    /// By the hand method, the strip or bay in which it failed last; nothing is known of one that was never asked.
    part: Option<usize>,
    /// How many it has ruled out.
    told: usize,
}

/// Those that have ruled out most, the strictest first.
///
/// A part of the whole analysis fails only where the whole fails too: the forces of a case in a strip or a bay, and what a check
/// makes of them, do not hang on other cases, strips and bays; fixings of gear hang on no strip at all, and a row along a pipe is
/// pulled by the strip that pulls most. So what a witness rules out is ruled out by the whole, and nothing is passed on its word.
#[derive(Clone, Debug, Default)]
pub(super) struct Witnesses(Vec<Witness>);

impl Witnesses {
    /// The first failure that one of them finds by the hand method.
    pub(super) fn rule_out(&self, top: &Top, mounts: &[Mount<'_>]) -> Option<Witness> {
        let asked = self.asked()?;
        let mut analysis = unsolved(top, mounts, asked)?;
        if let Some(told) = asked.iter().find(|witness| witness.hangs_on_no_strip() && witness.finds(&mut analysis)) {
            return Some(*told);
        }
        let asked: Vec<Witness> = asked.iter().filter(|witness| !witness.hangs_on_no_strip()).copied().collect();
        // Where each has failed last, it most often fails again.
        let mut known: Vec<usize> = Vec::with_capacity(MOST);
        for part in asked.iter().filter_map(|witness| witness.part) {
            if known.contains(&part) {
                continue;
            }
            known.push(part);
            if let Some(told) = told_in(&mut analysis, part, &asked) {
                return Some(told);
            }
        }
        if asked.is_empty() {
            return None;
        }
        (0..analysis.parts()).filter(|part| !known.contains(part)).find_map(|part| told_in(&mut analysis, part, &asked))
    }

    /// The first failure that one of them finds on a rough plate.
    pub(super) fn rule_out_by_plate(&self, top: &Top, mounts: &[Mount<'_>]) -> Option<Witness> {
        let asked = self.asked()?;
        // One alone has one state of the core, and so far fewer matrices than all together.
        let (first, others) = asked.split_first()?;
        told_by_plate(top, mounts, std::slice::from_ref(first)).or_else(|| told_by_plate(top, mounts, others))
    }

    fn asked(&self) -> Option<&[Witness]> {
        let asked = &self.0[..self.0.len().min(MOST)];
        (!asked.is_empty()).then_some(asked)
    }

    /// Remembers who ruled one out, and where.
    pub(super) fn count(&mut self, of: Witness) {
        match self.0.iter_mut().find(|known| (known.check, known.case, known.on) == (of.check, of.case, of.on)) {
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
    /// One that has ruled out the first: the worst outcome of an analysis; none where a part of it would not find the same failure.
    pub(super) fn of(worst: &Outcome, analysis: &Analysis<'_>) -> Option<Self> {
        let of_top = CHECKS[worst.check].subject() == Subject::Top;
        let on = worst.place.part.mount().filter(|_| !of_top);
        // What asks about no load needs forces all the same: of a mount without any nothing is known.
        let acts = |on: MountOn| analysis.mount_forces.iter().find(|forces| analysis.mounts[forces.mount].on == on);
        let under = worst.case.or_else(|| on.and_then(acts).map(|forces| forces.case))?;
        let may_be = fails(worst) && (of_top || on.is_some());
        let name = |case: usize| analysis.cases[case].id;
        may_be.then(|| Self {
            check: worst.check,
            case: worst.case.map(name),
            under: name(under),
            on,
            part: None,
            told: 1,
        })
    }

    /// Whether it is one of fixings that strips have no part in.
    const fn hangs_on_no_strip(&self) -> bool {
        matches!(self.on, Some(MountOn::Gear(_)))
    }

    /// Whether it finds its failure in what of an analysis is solved.
    fn finds(&self, analysis: &mut Analysis<'_>) -> bool {
        if let Some(on) = self.on {
            analysis.solve_mount(on);
        }
        self.finds_by(Method::Hand, analysis)
    }

    fn finds_by(&self, method: Method, analysis: &Analysis<'_>) -> bool {
        run_one(self.check, analysis).iter().any(|outcome| {
            let case = outcome.case.map(|case| analysis.cases[case].id);
            outcome.method == method && case == self.case && fails_whatever_its_error(outcome)
        })
    }
}

/// What the hand method stands on, under the load cases of those who are asked; with fixings in their places where these are asked for.
fn unsolved<'t>(top: &'t Top, mounts: &[Mount<'t>], asked: &[Witness]) -> Option<Analysis<'t>> {
    let mut analysis = Analysis::unsolved(top, &|case| asked.iter().any(|witness| witness.under == case.id)).ok()?;
    if asked.iter().any(|witness| witness.on.is_some()) {
        analysis.mounts = mounts.to_vec();
    }
    Some(analysis)
}

/// The first that finds a failure in a strip or a bay.
fn told_in(analysis: &mut Analysis<'_>, part: usize, asked: &[Witness]) -> Option<Witness> {
    // A part of another layout: the top of the witness had more of them.
    if part >= analysis.parts() {
        return None;
    }
    analysis.solve_part(part, DIVISIONS).ok()?;
    let told = asked.iter().find(|witness| witness.finds(analysis));
    told.map(|witness| Witness { part: Some(part), ..*witness })
}

/// The first that finds a failure on a rough plate.
fn told_by_plate(top: &Top, mounts: &[Mount<'_>], asked: &[Witness]) -> Option<Witness> {
    if asked.is_empty() {
        return None;
    }
    let analysis = without_error(unsolved(top, mounts, asked)?.with_rough_plate());
    asked.iter().find(|witness| witness.finds_by(Method::Plate, &analysis)).copied()
}

/// An analysis whose pulls of fixings, which have the numerical error of the plate on top, have it taken off instead.
pub(super) fn without_error(mut analysis: Analysis<'_>) -> Analysis<'_> {
    for forces in &mut analysis.mount_forces {
        let error = 1.0 + forces.numerical_error.value;
        forces.pulls.iter_mut().for_each(|pull| *pull /= error * error);
    }
    analysis
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
        assert!(witnesses.rule_out(&holds, &[]).is_none(), "there is none yet");
        witnesses.count(Witness {
            check: core_shear,
            case: Some("people"),
            under: "people",
            on: None,
            part: None,
            told: 1,
        });
        // Its core is used by 98 % under one person; one thinner by a tenth is not enough.
        assert!(witnesses.rule_out(&holds, &[]).is_none());
        let mut weaker = holds.clone();
        weaker.core.thickness *= 0.9;
        assert_eq!(witnesses.rule_out(&weaker, &[]).map(|witness| witness.check), Some(core_shear));
    }

    /// What a rough plate finds of fixings, its error taken off, is no more than what the usual one finds with its own on top.
    #[test]
    fn a_rough_plate_pulls_no_harder_at_fixings_than_the_usual_one() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/rail-row.toml");
        let text = NamedText { name: "rail-row".to_owned(), text: std::fs::read_to_string(path).unwrap() };
        let top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
        let rough = without_error(Analysis::new(&top, DIVISIONS).unwrap().with_rough_plate());
        let usual = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
        let on_plate = rough.mount_forces.iter().filter(|forces| forces.on_plate);
        let mut seen = 0;
        for forces in on_plate {
            let same = |other: &&crate::analysis::MountForces| {
                other.on_plate && (other.mount, other.case) == (forces.mount, forces.case)
            };
            let Some(other) = usual.mount_forces.iter().find(same) else { panic!("the same are judged") };
            let hardest =
                |forces: &crate::analysis::MountForces| forces.pulls.iter().map(|pull| pull.value).fold(0.0, f64::max);
            let (pull, usual) = (hardest(forces), hardest(other));
            assert!(pull <= usual * (1.0 + 1e-9), "{pull} over {usual}");
            seen += usize::from(usual > 0.0);
        }
        assert!(seen > 0);
    }
}
