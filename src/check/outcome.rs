//! What a check found, case by case: the worst of many places.

use super::{Finding, Measure, OnPlate, Part, Place, Verdict};
use crate::{
    analysis::{Analysis, LARGER},
    units::Ratio,
};

/// How the forces were found that a check looks at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Method {
    /// Strips over the pipes, plate series, closed forms.
    Hand,
    /// The whole top as a plate on its frame.
    Plate,
}

impl Method {
    /// Both, in the order in which they are listed.
    pub const ALL: [Self; 2] = [Self::Hand, Self::Plate];

    /// The words used in reports.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Hand => "hand method",
            Self::Plate => "plate method",
        }
    }
}

/// The outcome of one check under one case, by one method.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// The check, as its place in [`CHECKS`](super::CHECKS).
    pub check: usize,
    /// The case, as its place in the analysis; none where no load is asked about.
    pub case: Option<usize>,
    /// How the forces were found.
    pub method: Method,
    /// Where.
    pub place: Place,
    /// What.
    pub verdict: Verdict,
}

impl Outcome {
    /// Whether it passes. What was not evaluated does not.
    #[must_use]
    pub fn passes(&self) -> bool {
        matches!(&self.verdict, Verdict::Compared(finding) if finding.passes())
    }

    /// What its check says of itself where the forces are those of the plate method.
    #[must_use]
    pub fn on_plate(&self) -> Option<OnPlate> {
        super::CHECKS[self.check].on_plate().filter(|_| self.method == Method::Plate)
    }

    /// The utilisation, where a comparison was made.
    #[must_use]
    pub fn utilisation(&self) -> Option<Ratio> {
        match &self.verdict {
            Verdict::Compared(finding) => Some(finding.utilisation),
            Verdict::NotEvaluated(_) => None,
        }
    }

    /// What the plate method says that it may be off by.
    #[must_use]
    pub fn numerical_error(&self) -> Option<Ratio> {
        let Verdict::Compared(finding) = &self.verdict else { return None };
        finding.terms.iter().find_map(|term| match term.value {
            Measure::Ratio(error) if self.method == Method::Plate && term.symbol == "ε" => Some(error),
            _ => None,
        })
    }

    /// What it weighs in a list that has the worst first: failures by their utilisation, then what could not be
    /// evaluated, then what passes.
    pub(super) fn weight(&self) -> f64 {
        match self.utilisation().map(|utilisation| utilisation.get::<uom::si::ratio::ratio>()) {
            Some(utilisation) if utilisation > 1.0 => 1.0 + utilisation,
            Some(utilisation) if utilisation.is_nan() => f64::INFINITY,
            Some(utilisation) => utilisation,
            None => 1.5,
        }
    }
}

/// Collects what one check finds.
pub struct Outcomes<'a> {
    check: usize,
    method: Method,
    worst: Vec<Option<Outcome>>,
    open: Vec<Outcome>,
    analysis: &'a Analysis<'a>,
}

impl<'a> Outcomes<'a> {
    /// Nothing found yet.
    #[must_use]
    pub fn new(check: usize, analysis: &'a Analysis<'a>) -> Self {
        let slots = (analysis.cases.len() + 1) * Method::ALL.len();
        Self { check, method: Method::Hand, worst: vec![None; slots], open: Vec::new(), analysis }
    }

    fn slot(&self, case: Option<usize>) -> usize {
        case.unwrap_or(self.analysis.cases.len()) * Method::ALL.len() + self.method as usize
    }

    /// What is compared from here on comes from this method.
    pub fn by(&mut self, method: Method) {
        self.method = method;
    }

    /// Whether a comparison with this utilisation would be kept. What is known to be less need not be worked out.
    #[must_use]
    pub fn keeps(&self, case: Option<usize>, utilisation: Ratio) -> bool {
        let known = self.worst[self.slot(case)].as_ref().and_then(Outcome::utilisation);
        // A value that is not a number is worse than any number: it must be seen.
        known.is_none_or(|known| utilisation > known * (1.0 + LARGER) || utilisation.is_nan())
    }

    /// Keeps a comparison if nothing worse was seen under the case. `finding` is only called then: most places are not
    /// the worst, and a finding lists all that a reader needs.
    pub fn compare(&mut self, case: Option<usize>, utilisation: Ratio, finding: impl FnOnce() -> (Place, Finding)) {
        if self.keeps(case, utilisation) {
            let slot = self.slot(case);
            let (place, finding) = finding();
            self.worst[slot] = Some(Outcome {
                check: self.check,
                case,
                method: self.method,
                place,
                verdict: Verdict::Compared(finding),
            });
        }
    }

    /// Says that a comparison could not be made; a check with such an outcome does not pass.
    pub fn cannot(&mut self, case: Option<usize>, part: Part, reason: impl Into<String>) {
        let reason = reason.into();
        let known = |outcome: &Outcome| matches!(&outcome.verdict, Verdict::NotEvaluated(known) if *known == reason);
        if !self.open.iter().any(known) {
            let place = Place::of(part, None);
            self.open.push(Outcome {
                check: self.check,
                case,
                method: self.method,
                place,
                verdict: Verdict::NotEvaluated(reason),
            });
        }
    }

    pub(super) fn into_vec(self) -> Vec<Outcome> {
        let mut all: Vec<Outcome> = self.worst.into_iter().flatten().collect();
        all.extend(self.open);
        all
    }
}
