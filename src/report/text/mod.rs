//! The report as text that is a pleasure to read at 80 columns.

mod advice;
mod cases;
mod checks;
mod materials;

pub(super) use advice::change;
pub(super) use checks::citation;

use uom::si::ratio::ratio;

use self::{
    advice::advice,
    cases::{cases, frame},
    checks::{envelope, methods, table, working},
    materials::{criteria, materials},
};
use super::{
    Answer, Report, cautions, fixings,
    page::{Page, Tone},
    without_fixings, words,
};
use crate::{
    analysis::Analysis,
    check::{CHECKS, Outcome, Verdict},
    top::{Scope, Support},
    units::{both, show},
};

/// The report in words and tables, with terminal styles; `full` shows every case, every value and every criterion.
#[must_use]
pub fn to_text(report: &Report<'_>, full: bool, width: usize) -> String {
    let mut page = Page::new(width.clamp(60, 120));
    head(&mut page, report);
    match &report.analysis {
        Err(reason) => page.paragraph("  ", &format!("Nothing could be checked: {reason}.")),
        Ok(analysis) => {
            answer(&mut page, report, analysis);
            advice(&mut page, report);
            table(&mut page, report, analysis);
            methods(&mut page, report, analysis);
            working(&mut page, report, analysis, full);
            if full {
                envelope(&mut page, report, analysis);
            }
            fixings::fixings(&mut page, report, analysis);
            cases(&mut page, report, analysis, full);
            frame(&mut page, report, analysis);
            materials(&mut page, report, analysis, full);
            criteria(&mut page, report, full);
        }
    }
    page.heading("Cautions");
    for caution in cautions(report) {
        page.paragraph("  - ", &caution);
    }
    page.done()
}

fn head(page: &mut Page, report: &Report<'_>) {
    let top = report.top;
    let system = top.report;
    page.line(&Tone::Strong.paint(&top.title));
    if top.scope == Scope::Patch {
        page.paragraph(
            "  ",
            &format!(
                "a mount alone, on a panel {} thick: core {} of {}, {}",
                both(top.thickness(), system),
                show(top.core.thickness, system),
                words::within(&top.core.material.name),
                show(top.core.material.density, system),
            ),
        );
        page.blank();
        return;
    }
    let weight = top.weight();
    page.paragraph(
        "  ",
        &format!(
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
        ),
    );
    page.blank();
}

fn answer(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    let by_hand = report.by_hand_alone();
    let (tone, words) = match report.answer() {
        Answer::Holds if by_hand => (Tone::Good, "HOLDS BY THE HAND METHOD ALONE"),
        Answer::Holds => (Tone::Good, "HOLDS"),
        Answer::DoesNotHold => (Tone::Bad, "DOES NOT HOLD"),
        Answer::Open => (Tone::Open, "NOT SHOWN TO HOLD"),
    };
    let without = without_fixings(report.top);
    if report.answer() == Answer::Holds && !without.is_empty() {
        let but = format!("but for its fixings: not checked for {} (the file gives none)", without.join(", "));
        page.painted(tone, &format!("{words},"), &format!("{but}."));
    } else {
        page.line(&tone.paint(words));
    }
    if let Some(first) = report.checks.first() {
        page.paragraph("  ", &sentence(report, analysis, first));
        if let Some(error) = report.hand_error.doubt(first) {
            page.paragraph("  ", &error);
        }
    }
}

/// A number of things.
pub(super) fn counted(number: usize, thing: &str) -> String {
    if number == 1 { format!("1 {thing}") } else { format!("{number} {thing}s") }
}

/// Pipes, walls and pads, each kind by its number.
fn counted_supports<'a>(supports: impl Iterator<Item = &'a Support>) -> String {
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
        Verdict::NotEvaluated(reason) => format!("{} could not be checked: {reason}.", capital(check.title())),
        Verdict::Compared(finding) => format!(
            "{} governs: {} used, margin {}; {}; {}.",
            capital(check.title()),
            words::used(outcome),
            words::margin(finding.margin().get::<ratio>()),
            words::case(analysis, outcome),
            words::place(analysis, &outcome.place, report.top.report),
        ),
    }
}

pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
