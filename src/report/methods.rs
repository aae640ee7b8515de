//! The hand method and the plate method side by side.

use uom::si::ratio::ratio;

use super::{Report, words};
use crate::{
    analysis::{HeldDown, MountOn, PipeModel, PlateMethod},
    check::{CHECKS, Method, Outcome, Part, Subject},
    top::Support,
    units::Ratio,
};

/// How far the two may differ without a word on why.
const WITHOUT_REASON: f64 = 0.1;

/// A check by both methods.
#[derive(Clone, Debug, PartialEq)]
pub struct Beside<'a> {
    /// The check, as its place in [`CHECKS`].
    pub check: usize,
    /// Its worst by each method.
    pub hand: &'a Outcome,
    /// By the plate method.
    pub plate: &'a Outcome,
    /// What the plate's may be off by.
    pub error: Option<Ratio>,
    /// Why they differ, where they do by more than a tenth.
    pub reason: Option<String>,
}

/// The checks that both methods looked at.
#[must_use]
pub fn beside<'a>(report: &'a Report<'_>) -> Vec<Beside<'a>> {
    let Ok(analysis) = &report.analysis else { return Vec::new() };
    let Some(Ok(plate_method)) = &analysis.whole else { return Vec::new() };
    // Of fixings the plate method looks at rows along pipes and walls and of those on pads alone.
    let both_look = |outcome: &Outcome| match outcome.place.part {
        Part::Fixing { on, .. } | Part::Mount(on) => matches!(on, MountOn::Support(_)),
        _ => true,
    };
    let worst = |check: usize, method: Method| {
        let of_method = |outcome: &&Outcome| outcome.check == check && outcome.method == method;
        report.envelope.iter().filter(of_method).find(|outcome| outcome.utilisation().is_some() && both_look(outcome))
    };
    (0..CHECKS.len())
        .filter_map(|check| {
            let (hand, plate) = (worst(check, Method::Hand)?, worst(check, Method::Plate)?);
            let reason = reason(plate_method, hand, plate);
            Some(Beside { check, hand, plate, error: plate.numerical_error(), reason })
        })
        .collect()
}

fn reason(method: &PlateMethod, hand: &Outcome, plate: &Outcome) -> Option<String> {
    let used = |outcome: &Outcome| outcome.utilisation().map(|used| used.get::<ratio>());
    let (by_hand, by_plate) = (used(hand)?, used(plate)?);
    if (by_hand - by_plate).abs() <= WITHOUT_REASON * by_hand.max(by_plate) {
        return None;
    }
    let higher = by_plate > by_hand;
    let mut reasons: Vec<&str> = Vec::new();
    match (CHECKS[hand.check].id(), higher) {
        _ if CHECKS[hand.check].subject() == Subject::Fixings && higher => {
            reasons.push("what lifts gathers over posts and at ends of pipes, which a strip does not have");
        }
        _ if CHECKS[hand.check].subject() == Subject::Fixings => {
            reasons.push("the hand method leaves a load on one narrow strip, the plate spreads it along the pipe");
        }
        ("core-shear", false) if hand.place.part == Part::Foot => {
            reasons.push("the hand method punches a foot out of the core, which is no matter of the plate");
        }
        ("core-shear" | "core-crush", false) => {
            reasons.push("the hand method leaves a load on one narrow strip, the plate spreads it along the pipe");
        }
        ("core-shear" | "core-crush", true) => {
            reasons.push("forces gather at ends of pipes and corners of backing, which a strip does not have");
        }
        ("panel-buckling", true) => {
            reasons
                .push("as a plate the push counts all over the top and from all sides, by hand across the pipes alone");
        }
        ("thermal-bow", false) => {
            reasons.push(
                "the hand method lets the top bow freely between two pipes, the plate holds it down on all of them",
            );
        }
        ("frequency", true) => reasons.push("the whole top swings, not one strip of it"),
        (_, false) => reasons.push("the plate carries a load both ways"),
        (_, true) => reasons.push("the plate bends along the pipes too"),
    }
    if higher && method.pipes.contains(&PipeModel::Beam) {
        reasons.push("pipes bend between their posts");
    }
    Some(format!("may come from: {}", reasons.join("; ")))
}

impl Beside<'_> {
    /// What the plate's may be off by, in words: shears of rows are shared evenly and have none; what a swing is off by is not
    /// estimated.
    pub(super) fn error_words(&self) -> String {
        let none = if CHECKS[self.check].id() == "frequency" { "not known" } else { "" };
        self.error.map_or_else(|| none.to_owned(), |error| words::percent(error.get::<ratio>()))
    }
}

/// Why triangles are cut finer.
const WHY: &str = "Cut finer since what governs was not settled";

/// How the plate method took the top.
pub(super) fn plate_words(report: &Report<'_>, plate: &PlateMethod) -> String {
    let supports = &report.top.supports;
    let of_pipes: Vec<PipeModel> = plate
        .pipes
        .iter()
        .zip(supports)
        .filter(|(_, support)| support.pipe().is_some())
        .map(|(model, _)| *model)
        .collect();
    let rigid = of_pipes.iter().filter(|pipe| **pipe == PipeModel::Rigid).count();
    let pipes = match (rigid, of_pipes.len()) {
        (_, 0) => String::new(),
        (0, _) => "; pipes bend on their posts".to_owned(),
        (rigid, all) if rigid == all => {
            "; pipes are rigid, since the file does not give all that they bend by (see Cautions)".to_owned()
        }
        (rigid, _) => {
            format!("; {rigid} of the pipes rigid, since the file does not give all that they bend by (see Cautions)")
        }
    };
    let others = if of_pipes.len() < supports.len() { "; walls and pads are rigid" } else { "" };
    let finer = match (&plate.finer, &report.analysis) {
        (Some((cut, anew)), Ok(analysis)) => {
            let titles: Vec<&str> = anew.iter().map(|case| &analysis.cases[*case].title[..]).collect();
            format!(" {WHY}: {} triangles, {} unknowns, for {}.", cut.triangles, cut.unknowns, titles.join("; "))
        }
        _ if plate.cut.is_finer() => format!(" {WHY}."),
        _ => String::new(),
    };
    let tied: Vec<&Support> = plate
        .holds
        .iter()
        .zip(supports)
        .filter(|(held, _)| **held == HeldDown::AllAlong)
        .map(|(_, support)| support)
        .collect();
    let (lies_on, all_on) =
        if others.is_empty() { ("its pipes", "pipes") } else { ("what it stands on", "what it stands on") };
    let holds = match (tied.len(), plate.holds.len()) {
        (0, _) => format!("presses on {lies_on} and lifts off between its fixings"),
        (tied, all) if tied == all => format!("is held down all along {lies_on}"),
        (number, _) if tied.iter().all(|support| support.fastened.is_none()) => {
            format!(
                "lifts off {all_on} between the fixings, and is held down all along the {number} whose are not given"
            )
        }
        (number, _) => format!(
            "lifts off {all_on} between the fixings, and is held down all along {number} of them: clamped, pads, or without \
             fixings in the file"
        ),
    };
    format!(
        "Plate: {} triangles of degree 4, {} unknowns; the top {holds}{pipes}{others}.{finer} Error: what \
             degree 3 on the same mesh makes of it, added to the demand; where it is large the solution has not settled, at \
             ends of pipes and corners of backing. All other checks are by hand, except pipe bending, which is by the plate method alone.",
        plate.cut.triangles, plate.cut.unknowns
    )
}
