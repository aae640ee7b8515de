//! How much each check is used, worst first: a number, a word, and a bar whose length says the same.

use maud::{Markup, html};
use uom::si::ratio::ratio;

use super::{answer::class, figure::mm};
use crate::{
    analysis::Analysis,
    check::{CHECKS, Outcome, Verdict},
    report::{Report, hand_error::error_words, not_looked_at::NOT_MADE, words},
};

/// Length of the longest bar.
const LONGEST: f64 = 100.0;
/// What is used more than this many times has a bar no longer than that.
const MOST: f64 = 4.0;
const HIGH: f64 = 5.0;

pub(super) fn bars(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    let worst =
        report.checks.iter().filter_map(Outcome::utilisation).map(|used| used.get::<ratio>()).fold(1.1, f64::max);
    let full = LONGEST / worst.min(MOST);
    html! {
        table class="bars" {
            caption { "Used: demand × factor / allowable. The line stands at 100 %; beyond it a check fails." }
            thead { tr { th scope="col" { "Check" } th scope="col" { "Used" } th scope="col" class="n" { "of 100 %" } th scope="col" { "Verdict" } } }
            tbody {
                @for outcome in &report.checks { (row(analysis, outcome, full)) }
                @for check in report.not_made() {
                    tr {
                        th scope="row" { (CHECKS[check].title()) }
                        td colspan="2" { (NOT_MADE) }
                        td class="open" { "OPEN" }
                    }
                }
            }
        }
        p class="note" { (error_words(report, analysis)) }
    }
}

fn row(analysis: &Analysis<'_>, outcome: &Outcome, full: f64) -> Markup {
    let (check, (word, tone)) = (CHECKS[outcome.check], words::verdict(outcome));
    let basis = match &outcome.verdict {
        Verdict::Compared(finding) => words::basis(finding.basis),
        Verdict::NotEvaluated(_) => "",
    };
    html! {
        tr {
            th scope="row" {
                a href={ "#check-" (check.id()) } { (check.title()) }
                span class="under" { (words::case(analysis, outcome)) @if !basis.is_empty() { "; " (basis) } }
            }
            td class="bar" {
                @match outcome.utilisation() {
                    Some(used) => (bar(used.get::<ratio>(), full, &words::used(outcome))),
                    None => "could not be checked",
                }
            }
            td class="n" { (words::used(outcome)) }
            td class=(class(tone)) { (word) }
        }
    }
}

fn bar(used: f64, full: f64, words: &str) -> Markup {
    let long = if used.is_nan() { LONGEST } else { (used * full).clamp(0.4, LONGEST) };
    let name = format!("{words} used");
    html! {
        svg role="img" aria-label=(name) viewBox={ "0 0 " (mm(LONGEST)) " " (mm(HIGH)) } preserveAspectRatio="none" {
            title { (name) }
            rect class="bar-all" x="0" y="1.4" width=(mm(full)) height="2.2" {}
            rect class=(if used > 1.0 { "bar-over" } else { "bar-used" }) x="0" y="0.8" width=(mm(long)) height="3.4" {}
            line class="bar-full" x1=(mm(full)) x2=(mm(full)) y1="0" y2=(mm(HIGH)) {}
        }
    }
}
