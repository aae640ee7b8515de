//! What a report says first: what the top is, whether it holds, and what governs.

use uom::si::ratio::ratio;

use super::{Answer, Report, page::Tone, without_fixings, words};
use crate::{
    analysis::Analysis,
    check::{CHECKS, Outcome, Verdict},
    top::{Scope, Support, Top},
    units::{both, show},
};

/// The answer.
pub(super) struct Said {
    pub(super) tone: Tone,
    /// Whether it holds.
    pub(super) words: &'static str,
    /// What was left out.
    pub(super) but: Option<String>,
    /// Load cases of which nothing is known.
    pub(super) open: Option<String>,
    /// What governs.
    pub(super) governs: Option<String>,
    /// That it passes by less than it may be off by.
    pub(super) doubt: Option<String>,
}

pub(super) fn said(report: &Report<'_>, analysis: &Analysis<'_>) -> Said {
    let by_hand = report.by_hand_alone();
    let (tone, words) = match report.answer() {
        Answer::Holds if by_hand => (Tone::Good, "HOLDS BY THE HAND METHOD ALONE"),
        Answer::Holds => (Tone::Good, "HOLDS"),
        Answer::DoesNotHold => (Tone::Bad, "DOES NOT HOLD"),
        Answer::Open => (Tone::Open, "NOT SHOWN TO HOLD"),
    };
    let without = without_fixings(report.top);
    let but = (report.answer() == Answer::Holds && !without.is_empty())
        .then(|| format!("but for its fixings: not checked for {} (the file gives none)", without.join(", ")));
    let first = report.checks.first();
    Said {
        tone,
        words,
        but,
        open: open(analysis),
        governs: first.map(|first| sentence(report, analysis, first)),
        doubt: first.and_then(|first| report.hand_error.doubt(first)),
    }
}

/// Load cases that could not be looked at: what stands below is silent of them.
fn open(analysis: &Analysis<'_>) -> Option<String> {
    let (_, reason) = analysis.open_cases.first()?;
    let titles: Vec<&str> = analysis.open_cases.iter().map(|(case, _)| case.title.as_str()).collect();
    let others =
        if analysis.open_cases.iter().all(|(_, other)| other == reason) { "" } else { "; others further below" };
    let cases = counted(titles.len(), "load case");
    Some(format!(
        "{cases} could not be looked at, and nothing below says anything of them ({}): {reason}{others}.",
        titles.join("; ")
    ))
}

/// What the top is, in one line.
pub(super) fn facts(top: &Top) -> String {
    let system = top.report;
    if top.scope == Scope::Patch {
        return format!(
            "a mount alone, on a panel {} thick: core {} of {}, {}",
            both(top.thickness(), system),
            show(top.core.thickness, system),
            words::within(&top.core.material.name),
            show(top.core.material.density, system),
        );
    }
    let weight = top.weight();
    format!(
        "{} by {}; core {} of {}, {}; {}; {} bare, {} with gear, centre of gravity at {}",
        show(top.outline.length(), system),
        show(top.outline.width(), system),
        both(top.core.thickness, system),
        words::within(&top.core.material.name),
        show(top.core.material.density, system),
        counted_supports(top.supports.iter()),
        both(weight.bare, system),
        show(weight.total, system),
        words::point(weight.centre, system),
    )
}

/// A number of things.
pub(super) fn counted(number: usize, thing: &str) -> String {
    if number == 1 { format!("1 {thing}") } else { format!("{number} {thing}s") }
}

/// Pipes, walls and pads, each kind by its number.
pub(super) fn counted_supports<'a>(supports: impl Iterator<Item = &'a Support>) -> String {
    let words: Vec<&str> = supports.map(Support::word).collect();
    let kinds = ["pipe", "wall", "pad"].map(|kind| (words.iter().filter(|word| **word == kind).count(), kind));
    let parts: Vec<String> =
        kinds.into_iter().filter(|(number, _)| *number > 0).map(|(number, kind)| counted(number, kind)).collect();
    parts.join(", ")
}

/// The governing check in one sentence.
fn sentence(report: &Report<'_>, analysis: &Analysis<'_>, outcome: &Outcome) -> String {
    let check = CHECKS[outcome.check];
    match &outcome.verdict {
        Verdict::NotEvaluated(reason) => format!("{} could not be checked: {reason}.", words::capital(check.title())),
        Verdict::Compared(finding) => format!(
            "{} governs: {} used, margin {}; {}; {}.",
            words::capital(check.title()),
            words::used(outcome),
            words::margin(finding.margin().get::<ratio>()),
            words::case(analysis, outcome),
            words::place(analysis, &outcome.place, report.top.report),
        ),
    }
}
