//! The calculation sheet: the report as one self-contained HTML file, for paper and screens of any width.
//!
//! Its markup is XHTML as well as HTML: every element is closed, so that any reader of XML can read it. There is no script in it
//! and nothing is fetched. What it says is what [`to_text`](super::to_text) says; what it draws is to scale.

mod answer;
mod assumptions;
mod bands;
mod bars;
mod cases;
mod checks;
mod drawn_map;
mod figure;
mod grain;
mod labels;
mod levels;
mod maps;
mod methods;
mod page;
mod plan;
mod plan_labels;
mod section;
mod settle;
mod sources;

use maud::{Markup, html};

use super::{Report, cautions};

/// The report as a calculation sheet in HTML.
#[must_use]
pub fn to_sheet(report: &Report<'_>) -> String {
    let body = match &report.analysis {
        Err(reason) => html! {
            (part(1, "answer", "Answer", &html! {
                p class="verdict open" { strong { "NOT SHOWN TO HOLD" } }
                p { "Nothing could be checked: " (reason) "." }
            }))
            (part(10, "cautions", "Cautions", &said_cautions(report)))
        },
        Ok(analysis) => html! {
            (part(1, "answer", "Answer", &answer::answer(report, analysis)))
            (part(2, "plan", "Plan", &plan::plan(report, analysis)))
            (part(3, "section", "Section", &section::section(report.top)))
            (part(4, "bars", "How much is used", &bars::bars(report, analysis)))
            (part(5, "maps", "Maps over the top", &maps::maps(report, analysis)))
            (part(6, "cases", "Load cases", &cases::cases(report, analysis)))
            (part(7, "checks", "Every check, to be redone by hand", &checks::checks(report, analysis)))
            (part(8, "methods", "Hand and plate method side by side", &methods::methods(report, analysis)))
            (part(9, "assumptions", "Assumptions", &assumptions::assumptions(report, analysis)))
            (part(10, "cautions", "Cautions", &said_cautions(report)))
            (part(11, "settle", "What a test would settle", &settle::settle(report, analysis)))
        },
    };
    page::page(report.top, &body).into_string()
}

/// A numbered part of the sheet.
fn part(number: usize, id: &str, title: &str, body: &Markup) -> Markup {
    html! {
        section id=(id) aria-labelledby={ (id) "-title" } {
            h2 id={ (id) "-title" } { span class="number" { (number) } " " (title) }
            (body)
        }
    }
}

fn said_cautions(report: &Report<'_>) -> Markup {
    html! { ul { @for caution in cautions(report) { li { (caution) } } } }
}
