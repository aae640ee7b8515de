//! Load cases.

use maud::{Markup, html};

use crate::{
    analysis::Analysis,
    report::{
        Report,
        text::{actions, bounds_words, layout_words, ruled_out},
        words,
    },
};

pub(super) fn cases(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    let system = report.top.report;
    html! {
        table {
            caption { "Loads as they act, without factors. Pressures down are positive, so that a negative one lifts." }
            thead { tr { th scope="col" { "Case" } th scope="col" { "What acts" } th scope="col" { "How long" } } }
            tbody {
                @for case in &analysis.cases {
                    tr {
                        th scope="row" { (words::capital(&case.title)) span class="under" { (case.id) } }
                        td {
                            (actions(case, system).join(", "))
                            @if let Some(doubt) = &case.doubt { span class="under" { "caution: " (doubt) } }
                        }
                        td { (words::state(case.state)) }
                    }
                }
                @for (case, reason) in &analysis.open_cases {
                    tr {
                        th scope="row" { (words::capital(&case.title)) span class="under" { (case.id) } }
                        td colspan="2" { span class="open" { "OPEN" } ", " (reason) }
                    }
                }
            }
        }
        @let out = ruled_out(analysis);
        @if !out.is_empty() { p { "Ruled out by the file: " (out.join("; ")) "." } }
        p class="note" { (layout_words(analysis)) }
        @if let Some(bounds) = analysis.sag_bounds() { p class="note" { (bounds_words(report, analysis, bounds)) } }
    }
}
