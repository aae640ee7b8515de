//! Every check with all that it takes to redo it by hand.

use maud::{Markup, html};

use super::answer::class;
use crate::{
    analysis::Analysis,
    check::{CHECKS, Outcome},
    report::{Report, redone::redone, words},
};

pub(super) fn checks(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    html! {
        p class="note" {
            "Worst first. Each line “result” is demand × factor / allowable with the numbers in it; “values” are those of the symbols in "
            "“formula”, before rounding for print."
        }
        div class="two" { @for outcome in &report.checks { (check(report, analysis, outcome)) } }
    }
}

fn check(report: &Report<'_>, analysis: &Analysis<'_>, outcome: &Outcome) -> Markup {
    let (check, (word, tone)) = (CHECKS[outcome.check], words::verdict(outcome));
    html! {
        article class="check" id={ "check-" (check.id()) } {
            h3 {
                (words::capital(check.title()))
                " " span class="mark" { (words::used(outcome)) " used, " span class=(class(tone)) { (word) } }
            }
            p { (words::capital(check.what())) "." }
            dl class="rows" {
                @for (name, text) in redone(report, analysis, outcome) {
                    dt { (name) }
                    dd class=[math(name)] {
                        @if name == "values" {
                            @for value in text.split("; ") { span class="value" { (value) } " " }
                        } @else { (text) }
                    }
                }
            }
        }
    }
}

fn math(name: &str) -> Option<&'static str> {
    matches!(name, "formula" | "values" | "result").then_some("math")
}
