//! Whether a top bears being lifted at four places.

use rayon::prelude::*;

use super::lifted::{on_diagonal, on_pads};
use crate::{
    analysis::{Analysis, FieldPeak},
    check::{CHECKS, Measure, Method, Outcome, Verdict, run_one},
    geometry::Point,
    load::weight::gravity,
    load_case::{Duration, LoadCase, State},
    top::Top,
    units::{Force, ForcePerWidth, Length, Pressure, Ratio, per_width},
};

/// Checks that a lift asks for, by their names.
const BENT: [&str; 3] = ["ply-failure", "wrinkling", "core-shear"];
/// Those of what lies over a sling: four are taken to bear as hard there as two.
const PRESSED: [&str; 2] = ["skin-bending", "core-crush"];
/// Those that what slanting legs pull inwards asks for beside them.
const PUSHED: [&str; 2] = ["panel-buckling", "shear-crimping"];

/// Which slings bear.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LiftOn {
    /// All four.
    All,
    /// Two that lie across from each other, as places in the list; the others hang slack.
    Diagonal([usize; 2]),
}

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
    /// On which slings.
    pub on: LiftOn,
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

/// Checks a bare top on pads where the slings bear, jerked upwards, by the plate method: all four at once, then each diagonal
/// alone. What slanting legs pull inwards is taken in at the lower face.
///
/// ```text
/// g' = φ (4/n) g on four,  φ g on two;  N = H/w,  M = N (t/2 + c)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *φ* | jerk over weight at rest |
/// | *n* | legs of the four that are counted on; a diagonal alone where that is fewer than four |
/// | *N*, *M* | push in the plane of the top and its moment |
/// | *H*, *w* | what a leg pulls inwards, side of the pad |
/// | *t*, *c* | thickness of the top, its crown |
///
/// # Validity
///
/// On four all bear alike, each as hard as when *n* of them bear all: on the safe side in the core and the skins at a sling. Their pads
/// do not turn with the top. On a diagonal two forces, even over their pads, bear the weight and let the top turn; three specks that keep
/// it in its place bear what rounding leaves; how it bends and shears is looked at, what lies over a sling with all four. *N* is not
/// taken to spread beyond the pad, and goes in along, across, both at once and along either diagonal, with its moment and without, at
/// every place: on the safe side. How it passes from the lower skin into the core beside a pad is not looked at, nor how slings press
/// on the rim.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): statics; limits are those of the checks.
pub(super) fn lift_check(top: &Top, places: &[Point; 4], pad: Length, inwards: Force) -> LiftCheck {
    let [factor, legs] = [top.criteria.lift_factor.value, top.criteria.sling_legs.value];
    let push = per_width(inwards / pad);
    let mut ways = vec![LiftOn::All];
    if legs < Ratio::from(4.0) {
        ways.extend([LiftOn::Diagonal([0, 2]), LiftOn::Diagonal([1, 3])]);
    }
    let way = (places[2].y - places[0].y).value.atan2((places[2].x - places[0].x).value);
    let looked: Result<Vec<_>, String> = ways
        .into_par_iter()
        .map(|on| {
            let (lifted, gravity) = match on {
                LiftOn::All => (on_pads(top, places, pad)?, factor * (4.0 / legs.value)),
                LiftOn::Diagonal(two) => (on_diagonal(top, places, (two, pad), factor)?, factor),
            };
            looked_at(&lifted, on, gravity, (push, way))
        })
        .collect();
    let looked = match looked {
        Ok(looked) => looked,
        Err(reason) => return LiftCheck::NotMade(reason),
    };
    let (mut outcomes, mut open): (Vec<LiftOutcome>, Vec<(usize, String)>) = (Vec::new(), Vec::new());
    for (own, own_open) in looked {
        outcomes.extend(own);
        for (check, reason) in own_open {
            if !open.iter().any(|(known, _)| *known == check) {
                open.push((check, reason));
            }
        }
    }
    outcomes.sort_by(|a, b| b.used.value.total_cmp(&a.used.value).then(a.check.cmp(&b.check)));
    // The worst of each check speaks for it.
    let mut known = Vec::new();
    outcomes.retain(|outcome| {
        let first = !known.contains(&outcome.check);
        known.push(outcome.check);
        first
    });
    LiftCheck::Made { outcomes, open }
}

/// What checks say of the top on some slings, and which could not be made.
type Looked = (Vec<LiftOutcome>, Vec<(usize, String)>);

/// The load case of a lift.
pub(super) fn lift(on: LiftOn, times: Ratio) -> LoadCase {
    let state = State { hot: false, duration: Duration::Short };
    let mut case = LoadCase::at_rest("slings", "lifting the bare top by slings", state);
    case.gravity = times;
    case.given = matches!(on, LiftOn::Diagonal(_)).then_some(0);
    case
}

fn looked_at(lifted: &Top, on: LiftOn, times: Ratio, (push, way): (ForcePerWidth, f64)) -> Result<Looked, String> {
    let mut case = lift(on, times);
    // Buckling and crimping do not hang on who bears: they are looked at once.
    let pushed = on == LiftOn::All && push > ForcePerWidth::default();
    if pushed {
        // The checks take the push of a case as that of a top whose far half pushes the near one.
        let whole: Pressure = lifted.field_mass() * gravity();
        case.in_plane = push / per_width(whole * lifted.outline.length().max(lifted.outline.width()));
    }
    let mut analysis = Analysis::by_plate_alone(lifted, vec![case])?;
    match &mut analysis.whole {
        Some(Ok(method)) => {
            let arm = lifted.thickness() / 2.0 + lifted.crown;
            for region in method.cases.iter_mut().flat_map(|forces| &mut forces.regions) {
                let each = region.peaks.iter().flat_map(|peak| pulled_in(peak, push, way, arm));
                let more: Vec<FieldPeak> = each.collect();
                region.peaks.extend(more);
            }
        }
        Some(Err(reason)) => return Err(format!("the plate method has no solution: {reason}")),
        None => return Err("the plate method was not asked".to_owned()),
    }
    let (mut outcomes, mut open) = (Vec::new(), Vec::new());
    let pressed = PRESSED.into_iter().filter(|_| on == LiftOn::All);
    for id in BENT.into_iter().chain(pressed).chain(PUSHED.into_iter().filter(|_| pushed)) {
        let Some(check) = CHECKS.iter().position(|check| check.id() == id) else { continue };
        let by_plate = CHECKS[check].on_plate().is_some();
        let made: Vec<Outcome> = run_one(check, &analysis)
            .into_iter()
            .filter(|outcome| outcome.method == Method::Plate || !by_plate)
            .collect();
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
                    on,
                }),
                Verdict::NotEvaluated(reason) => open.push((check, reason)),
            }
        }
    }
    Ok((outcomes, open))
}

/// A state with what slanting legs add to it, in each way in which they may.
fn pulled_in(peak: &FieldPeak, push: ForcePerWidth, way: f64, arm: Length) -> impl Iterator<Item = FieldPeak> {
    let (sin, cos) = way.sin_cos();
    // Shares of the push along, across and in shear.
    let ways = [
        [1.0, 0.0, 0.0],
        [0.0, 1.0, 0.0],
        [1.0, 1.0, 0.0],
        [cos * cos, sin * sin, sin * cos],
        [cos * cos, sin * sin, -sin * cos],
    ];
    let peak = *peak;
    ways.into_iter().filter(move |_| push > ForcePerWidth::default()).flat_map(move |[x, y, xy]| {
        // Inwards at the lower face: it presses the inner skin.
        [Length::default(), arm].map(|arm| {
            let mut peak = peak;
            let added = &mut peak.state.resultants;
            (added.force.x, added.force.y, added.force.xy) =
                (added.force.x - push * x, added.force.y - push * y, added.force.xy - push * xy);
            let moment = |share: f64| per_width(push * share * arm);
            (added.moment.x, added.moment.y, added.moment.xy) =
                (added.moment.x - moment(x), added.moment.y - moment(y), added.moment.xy - moment(xy));
            peak
        })
    })
}
