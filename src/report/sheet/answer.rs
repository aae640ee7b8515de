//! The answer, what governs, how much is in reserve, what to change.

use maud::{Markup, html};
use uom::si::ratio::ratio;

use crate::{
    analysis::Analysis,
    check::{CHECKS, Finding, Verdict},
    report::{
        Report,
        fixings::could_be_smaller,
        page::Tone,
        said::{Said, said},
        text::{self, Offers, offers},
        words,
    },
};

pub(super) fn answer(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    let Said { tone, words, but, open, governs, doubt } = said(report, analysis);
    html! {
        p class={ "verdict " (class(tone)) } {
            strong { (words) }
            @if let Some(but) = but { ", " (but) }
            "."
        }
        @for line in open.iter().chain(&governs).chain(&reserve(report)).chain(&doubt) { p { (line) } }
        (change(report, analysis))
    }
}

/// What a tone is called in the style.
pub(super) const fn class(tone: Tone) -> &'static str {
    match tone {
        Tone::Good => "good",
        Tone::Bad => "bad",
        Tone::Open => "open",
        Tone::Strong | Tone::Quiet => "",
    }
}

/// How much more the governing check could bear, or by how much it falls short.
fn reserve(report: &Report<'_>) -> Option<String> {
    let Verdict::Compared(finding) = &report.checks.first()?.verdict else { return None };
    let margin = finding.margin().get::<ratio>();
    if !margin.is_finite() {
        return None;
    }
    let Finding { demand, .. } = finding;
    let now = words::measure(*demand, report.top.report);
    Some(if margin < 0.0 {
        format!(
            "It falls short: {now} is found, and no more than {} of that is allowed with the factor of {:.2}.",
            words::percent(1.0 + margin),
            finding.factor.get::<ratio>()
        )
    } else {
        format!(
            "In reserve: {now} is found, and could be {:.0} % more before the factor of {:.2} is used up.",
            (margin * 100.0).floor(),
            finding.factor.get::<ratio>()
        )
    })
}

fn change(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    let Offers { remarks, offers } = offers(report);
    html! {
        @if !remarks.is_empty() || !offers.is_empty() {
            h3 { (text::OFFERS) }
            @for remark in remarks { p { (remark) } }
            dl class="rows offers" {
                @for (title, changes) in offers {
                    dt { (title) }
                    dd { ul { @for change in changes { li { (change) } } } }
                }
            }
        }
        @if !report.savings.is_empty() {
            h3 { "In backing and fixings" }
            p { (could_be_smaller(analysis)) "." }
            ul {
                @for saving in &report.savings {
                    li {
                        (text::change(&saving.change, report.top)) "; then " (CHECKS[saving.governs].title()) " governs, "
                        (words::percent(saving.utilisation.get::<ratio>())) " used"
                    }
                }
            }
        }
    }
}
