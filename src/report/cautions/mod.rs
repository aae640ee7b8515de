//! Cautions: short, and about what this result shows.

mod of_choice;
mod of_parts;
mod of_top;

pub(super) use of_choice::of_choice;

use self::of_top::{CERTIFICATION, NOT_CHECKED, ON_TESTS, OPEN};
use super::{Answer, Report, hands};
use crate::{
    analysis::{Analysis, HeldDown, Layout, PipeModel, Role},
    check::{Outcome, Verdict},
    load_case::Repeats,
    material::Basis,
    top::{Scope, Top},
};

/// What is to be said about fixings.
fn fixings(report: &Report<'_>) -> Vec<String> {
    let top = report.top;
    let mut cautions = Vec::new();
    if top.scope == Scope::Patch {
        cautions.push(
            "A patch: whether the top round it carries the mount was not looked at. Check the whole top with it."
                .to_owned(),
        );
    }
    let tied = match &report.analysis {
        Ok(Analysis { whole: Some(Ok(method)), .. }) => method.holds.contains(&HeldDown::AllAlong),
        _ => false,
    };
    cautions.extend(of_top::silent(top, tied));
    cautions.extend(of_top::past_backing(top));
    cautions.extend(of_top::idle(top));
    cautions.extend(report.analysis.as_ref().ok().and_then(landings));
    if report.fittings.iter().any(|fitting| fitting.test.is_some()) {
        cautions.push(ON_TESTS.to_owned());
    }
    cautions
}

/// That the file rules landings out, where there are fixings that they would tire.
fn landings(analysis: &Analysis<'_>) -> Option<String> {
    if analysis.mounts.is_empty() {
        return None;
    }
    let repeats = |what| analysis.cases.iter().any(|case| case.repeats == Some(what));
    let counted = match (repeats(Repeats::Landings), repeats(Repeats::Rolls)) {
        (true, _) => return None,
        (false, true) => "the fatigue of fixings was looked at under rolling alone",
        (false, false) => "nothing repeats that could tire the fixings, and their fatigue was not looked at",
    };
    Some(format!("The file rules landings out (`slam = \"none\"`): {counted}."))
}

/// What the plate method was not told and does not see, or that it was not asked.
fn plate(report: &Report<'_>, analysis: &Analysis<'_>) -> Vec<String> {
    let mut cautions = Vec::new();
    match &analysis.whole {
        None if report.top.scope == Scope::Whole => cautions.push(
            "Hand method alone: pipes are rigid in it, and nothing was looked at as a plate. Check without --hand before \
             you build."
                .to_owned(),
        ),
        Some(Ok(method)) => {
            let models = method.pipes.iter().zip(&report.top.supports);
            let rigid = models.filter(|(model, _)| **model == PipeModel::Rigid);
            cautions.extend(of_top::rigid(rigid.map(|(_, support)| support)));
            cautions.extend(of_top::over_rim(report.top));
            cautions.extend(of_top::joints(report.top));
        }
        None | Some(Err(_)) => {}
    }
    cautions.extend(of_top::walls_and_pads(report.top));
    cautions.extend(of_parts::carbon(report.top, report.table));
    cautions.extend(of_parts::doubled(report.top));
    cautions.extend(of_parts::crossing_conduits(report.top));
    cautions.extend(of_parts::wide_seats(report.top));
    if analysis.whole.is_some() {
        cautions.extend(of_top::pipes_across_holes(report.top));
    }
    cautions
}

/// What the strips of the hand method leave out.
fn strips(top: &Top, analysis: &Analysis<'_>) -> Vec<String> {
    let mut cautions = Vec::new();
    if let Layout::Strips(strips) = &analysis.layout {
        let unused: Vec<&str> = (0..top.supports.len())
            .filter(|support| !strips.pipes.contains(support) && !top.supports[*support].is_pad())
            .map(|pipe| top.supports[pipe].name.as_str())
            .collect();
        if !unused.is_empty() {
            cautions.push(format!("The hand method does not count on {}.", unused.join(", ")));
        }
    }
    if analysis.lines.iter().any(|line| line.role == Role::EndOverhang) {
        cautions.push(
            "In the hand method overhangs beyond the ends of pipes are taken as strips that hand their load to the strip beside them; the \
             peak at the end of a pipe is not in it."
                .to_owned(),
        );
    }
    cautions
}

/// What the margin rests on that governs.
fn governing(outcome: Option<&Outcome>) -> Option<String> {
    let basis = outcome.and_then(|outcome| match &outcome.verdict {
        Verdict::Compared(finding) => Some(finding.basis),
        Verdict::NotEvaluated(_) => None,
    });
    let on = match basis? {
        Basis::Estimate => {
            "The governing margin rests on an estimate: make a coupon and test it before people stand below."
        }
        Basis::Typical => {
            "The governing margin rests on typical values: coupons of your own laminate and core would settle it."
        }
        _ => return None,
    };
    Some(on.to_owned())
}

/// The cautions that belong beside a report.
#[must_use]
pub fn cautions(report: &Report<'_>) -> Vec<String> {
    let top = report.top;
    let mut cautions = vec![CERTIFICATION.to_owned()];
    cautions.extend(governing(report.checks.first()));
    if report.answer() == Answer::Open {
        cautions.push(OPEN.to_owned());
    }
    cautions.push(NOT_CHECKED.to_owned());
    cautions.extend(fixings(report));
    cautions.extend(hands(top));
    cautions.extend(of_top::outline(top));
    let by_plate = matches!(&report.analysis, Ok(Analysis { whole: Some(Ok(_)), .. }));
    cautions.extend(of_top::crown(top, by_plate));
    if let Ok(analysis) = &report.analysis {
        cautions.extend(plate(report, analysis));
        cautions.extend(strips(top, analysis));
    }
    cautions.extend(of_top::service(top));
    cautions
}
