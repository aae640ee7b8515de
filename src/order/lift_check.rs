//! Whether a top bears being lifted at four places.

use crate::{
    analysis::Analysis,
    check::{CHECKS, Measure, Method, Outcome, Verdict, run_one},
    geometry::{Foot, Point},
    load_case::{Duration, LoadCase, State},
    top::{Pad, Support, Top},
    units::{Length, Ratio},
};

/// Checks that a lift asks for, by their names.
const ASKED: [&str; 5] = ["ply-failure", "skin-bending", "wrinkling", "core-shear", "core-crush"];

/// One check of the lifted top.
#[derive(Clone, Debug, PartialEq)]
pub struct LiftOutcome {
    /// The check, as its place in [`CHECKS`].
    pub check: usize,
    /// Demand.
    pub demand: Measure,
    /// Allowable.
    pub allowable: Measure,
    /// How far it is used, its factor with it.
    pub used: Ratio,
    /// Whether it passes.
    pub passes: bool,
    /// Where.
    pub at: Option<Point>,
}

/// What came of the check of the lift.
#[derive(Clone, Debug, PartialEq)]
pub enum LiftCheck {
    /// Checks that were made, the worst first, and those that could not be, with the reason.
    Made {
        /// Comparisons.
        outcomes: Vec<LiftOutcome>,
        /// Checks that could not be made.
        open: Vec<(usize, String)>,
    },
    /// Nothing was looked at, for this reason. That is no pass.
    NotMade(String),
}

impl LiftCheck {
    /// Whether all was looked at and passes.
    #[must_use]
    pub fn passes(&self) -> bool {
        match self {
            Self::Made { outcomes, open } => {
                open.is_empty() && !outcomes.is_empty() && outcomes.iter().all(|outcome| outcome.passes)
            }
            Self::NotMade(_) => false,
        }
    }
}

/// Checks a bare top on four pads where the slings bear, jerked upwards, by the plate method.
///
/// ```text
/// g' = φ (4/n) g
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *φ* | jerk over weight at rest |
/// | *n* | legs of the four that are counted on |
///
/// All four bear alike in it, each as hard as when *n* of them bear all: on the safe side in the core and the skins at a sling.
pub(super) fn lift_check(top: &Top, places: &[Point; 4], pad: Length) -> LiftCheck {
    let mut supports = Vec::with_capacity(4);
    for (number, at) in places.iter().enumerate() {
        let seat = Pad { at: *at, foot: Foot::Rectangle { length: pad, width: pad } };
        match Support::pad(format!("sling {}", number + 1), seat, None) {
            Ok(support) => supports.push(support),
            Err(_) => return LiftCheck::NotMade("the slings bear on nothing: is `sling-pad` right?".to_owned()),
        }
    }
    let lifted = Top { supports, gear: Vec::new(), ..top.clone() };
    let state = State { hot: false, duration: Duration::Short };
    let mut case = LoadCase::at_rest("slings", "lifting the bare top at four places", state);
    case.gravity = top.criteria.lift_factor.value * (4.0 / top.criteria.sling_legs.value.value);
    let analysis = match Analysis::by_plate_alone(&lifted, vec![case]) {
        Ok(analysis) => analysis,
        Err(reason) => return LiftCheck::NotMade(reason),
    };
    if let Some(Err(reason)) = &analysis.whole {
        return LiftCheck::NotMade(format!("the plate method has no solution: {reason}"));
    }
    let (mut outcomes, mut open) = (Vec::new(), Vec::new());
    for id in ASKED {
        let Some(check) = CHECKS.iter().position(|check| check.id() == id) else { continue };
        let made: Vec<Outcome> =
            run_one(check, &analysis).into_iter().filter(|outcome| outcome.method == Method::Plate).collect();
        if made.is_empty() {
            open.push((check, "the plate method says nothing of it".to_owned()));
        }
        for outcome in made {
            let passes = outcome.passes();
            match outcome.verdict {
                Verdict::Compared(finding) => outcomes.push(LiftOutcome {
                    check,
                    demand: finding.demand,
                    allowable: finding.allowable,
                    used: finding.utilisation,
                    passes,
                    at: outcome.place.at,
                }),
                Verdict::NotEvaluated(reason) => open.push((check, reason)),
            }
        }
    }
    outcomes.sort_by(|a, b| b.used.value.total_cmp(&a.used.value).then(a.check.cmp(&b.check)));
    LiftCheck::Made { outcomes, open }
}
