//! Both methods side by side.

use maud::{Markup, html};

use crate::{
    analysis::Analysis,
    check::CHECKS,
    report::{Report, beside, methods::plate_words, words},
};

pub(super) fn methods(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    let plate = match &analysis.whole {
        None => {
            return html! { p { "The plate method was not asked, or there is no outline to solve on: all is by the hand method." } };
        }
        Some(Err(reason)) => return html! { p { "There is no plate solution: " (reason) "." } },
        Some(Ok(plate)) => plate,
    };
    html! {
        table class="narrow" {
            caption { "Used, worst case of each; the worse counts." }
            thead {
                tr {
                    th scope="col" { "Check" }
                    th scope="col" class="n" { "Hand" }
                    th scope="col" class="n" { "Plate" }
                    th scope="col" class="n" { "Error of plate" }
                }
            }
            tbody {
                @for both in beside(report) {
                    tr {
                        th scope="row" {
                            (CHECKS[both.check].title())
                            @if let Some(reason) = &both.reason { span class="under" { (reason) } }
                        }
                        td class="n" { (words::used(both.hand)) }
                        td class="n" { (words::used(both.plate)) }
                        td class="n" { (both.error_words()) }
                    }
                }
            }
        }
        p class="note" { "A reason stands where the two differ by more than a tenth. " (plate_words(report, plate)) }
    }
}
