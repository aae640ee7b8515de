//! What the hand method's numbers may be off by, as far as they are numerical: it is not added to any demand.

use uom::si::ratio::ratio;

use super::Report;
use crate::{
    analysis::{Analysis, DIVISIONS},
    check::{CHECKS, Method, Outcome, run},
    top::{Scope, Top},
    units::Ratio,
};

/// What is used less than this does not count: a large share of little. Our choice.
const USED: f64 = 0.1;

/// How far dividing the strips twice as finely, or the error of the plate series, moves the hand method's utilisations.
#[derive(Clone, Debug, PartialEq)]
pub struct HandError {
    /// Check, case, change of the utilisation over it, where more than a tenth is used.
    changes: Vec<(usize, Option<usize>, Ratio)>,
    /// Error that the plate series of bays on four sides estimate of themselves.
    series: Ratio,
}

impl HandError {
    /// Nothing was looked at.
    #[must_use]
    pub fn none() -> Self {
        Self { changes: Vec::new(), series: Ratio::default() }
    }

    /// Runs the checks again on strips that are divided twice as finely.
    pub(super) fn of(top: &Top, analysis: &Analysis<'_>, envelope: &[Outcome]) -> Self {
        let series = analysis.plates.iter().map(|plate| plate.numerical_error).fold(Ratio::default(), Ratio::max);
        let mut found = Self { series, ..Self::none() };
        let Ok(fine) = Analysis::new(top, 2 * DIVISIONS) else { return found };
        for finer in run(&fine) {
            let same = |outcome: &&Outcome| {
                outcome.method == Method::Hand && outcome.check == finer.check && outcome.case == finer.case
            };
            let coarse = envelope.iter().find(same).and_then(Outcome::utilisation);
            if let (Some(coarse), Some(finer_used)) = (coarse, finer.utilisation())
                && coarse.get::<ratio>() > USED
            {
                found.changes.push((finer.check, finer.case, ((finer_used - coarse) / coarse).abs()));
            }
        }
        found
    }

    /// The largest, and the check that it is of; none of the series.
    #[must_use]
    pub fn largest(&self) -> (Ratio, Option<usize>) {
        let (check, most) = self.changes.iter().fold((None, Ratio::default()), |(check, most), (number, _, error)| {
            if *error > most { (Some(*number), *error) } else { (check, most) }
        });
        if self.series > most { (self.series, None) } else { (most, check) }
    }

    /// Of an outcome; none of one by the plate method, whose error is in its demand.
    #[must_use]
    pub fn of_outcome(&self, outcome: &Outcome) -> Option<Ratio> {
        let own = self.changes.iter().find(|(check, case, _)| (*check, *case) == (outcome.check, outcome.case));
        let own = own.map_or_else(Ratio::default, |(.., error)| *error);
        (outcome.method == Method::Hand).then(|| own.max(self.series))
    }

    /// That an outcome passes by less than it may be off by, where it does.
    pub(super) fn doubt(&self, outcome: &Outcome) -> Option<String> {
        let (error, used) = (self.of_outcome(outcome)?, outcome.utilisation()?.get::<ratio>());
        let error = error.get::<ratio>();
        (used <= 1.0 && used * (1.0 + error) > 1.0).then(|| {
            format!(
                "The margin lies within the numerical error of the hand method, {}, which is not added to the demand.",
                percent(error)
            )
        })
    }

    /// In words, with the error of what governs.
    pub(super) fn words(&self, governing: Option<&Outcome>) -> String {
        let (largest, check) = self.largest();
        let of_governing = governing.and_then(|outcome| Some((outcome, self.of_outcome(outcome)?)));
        let what = match check {
            Some(check) => format!(
                "dividing every strip twice as finely moves no utilisation above {:.0} % by more than {:.1} % of it ({})",
                USED * 100.0,
                (largest.get::<ratio>() * 100.0).max(0.1),
                CHECKS[check].title()
            ),
            None if largest > Ratio::default() => format!(
                "{} in the series of bays on four sides; dividing strips twice as finely moves nothing by more",
                percent(largest.get::<ratio>())
            ),
            None => "dividing every strip twice as finely moves nothing".to_owned(),
        };
        let of_governing = of_governing.map_or_else(String::new, |(outcome, error)| {
            format!("; {}, which governs, by {}", CHECKS[outcome.check].title(), percent(error.get::<ratio>()))
        });
        format!("Numerical error of the hand method, added to no demand: {what}{of_governing}.")
    }
}

/// A share in words that do not make nothing of little.
fn percent(share: f64) -> String {
    let hundredths = share * 100.0;
    if hundredths < 0.1 { "less than 0.1 %".to_owned() } else { format!("{hundredths:.1} %") }
}

/// What the numbers of the hand method may be off by, or on a patch those of the forces below footings.
pub(super) fn error_words(report: &Report<'_>, analysis: &Analysis<'_>) -> String {
    if report.top.scope == Scope::Whole {
        return report.hand_error.words(report.checks.first());
    }
    let error = analysis.mount_forces.iter().map(|forces| forces.numerical_error).fold(Ratio::default(), Ratio::max);
    format!(
        "Numerical error: the forces below each footing balance what acts on it to {:.0e}; sides between the sixteen that are looked \
         at are covered by 2 % on all of them.",
        error.get::<ratio>().max(1e-15)
    )
}
