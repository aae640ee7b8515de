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
mod cut_drawn;
mod cut_named;
mod drawn_map;
mod figure;
mod frame;
mod grain;
mod labels;
mod levels;
mod maps;
mod methods;
mod page;
mod plan;
mod plan_labels;
mod plan_lines;
mod section;
mod settle;
mod sources;

use maud::{Markup, html};

use super::{Report, cautions};

/// A part of the sheet: its number, id, title, and what stands in it.
type Part = (usize, &'static str, &'static str, Markup);

/// The report as a calculation sheet in HTML.
#[must_use]
pub fn to_sheet(report: &Report<'_>) -> String {
    let parts: Vec<Part> = match &report.analysis {
        Err(reason) => vec![
            (1, "answer", "Answer", nothing(reason)),
            (10, "assumptions", "Assumptions", assumptions::assumptions(report, None)),
            (11, "cautions", "Cautions", said_cautions(report)),
        ],
        Ok(analysis) => vec![
            (1, "answer", "Answer", answer::answer(report, analysis)),
            (2, "bars", "How much is used", bars::bars(report, analysis)),
            (3, "plan", "Plan", plan::plan(report.top)),
            (4, "section", "Section", section::section(report.top)),
            (5, "maps", "Maps over the top", maps::maps(report, analysis)),
            (6, "cases", "Load cases", cases::cases(report, analysis)),
            (7, "frame", "What frame and fixings must take", frame::frame(report, analysis)),
            (8, "checks", "Every check, to be redone by hand", checks::checks(report, analysis)),
            (9, "methods", "Hand and plate method side by side", methods::methods(report, analysis)),
            (10, "assumptions", "Assumptions", assumptions::assumptions(report, Some(analysis))),
            (11, "cautions", "Cautions", said_cautions(report)),
            (12, "settle", "What a test would settle", settle::settle(report, analysis)),
        ],
    };
    let contents: Vec<(&str, &str)> = parts.iter().map(|(_, id, title, _)| (*id, *title)).collect();
    let body = html! { @for (number, id, title, own) in &parts { (part(*number, id, title, own)) } };
    in_lines(&page::page(report.top, &contents, &body).into_string())
}

/// The same with a line for each block, so that two sheets can be compared line by line.
fn in_lines(sheet: &str) -> String {
    const BLOCKS: [&str; 11] =
        ["<body", "<nav", "<section", "<article", "<figure", "<path", "<table", "<tr", "<li", "<dt", "<footer"];
    let mut lines = String::with_capacity(sheet.len() + sheet.len() / 50);
    for (k, piece) in sheet.split('<').enumerate() {
        if k > 0 {
            let begins = |block: &&str| {
                let rest = piece.strip_prefix(&block[1..]);
                rest.is_some_and(|rest| rest.starts_with([' ', '>']))
            };
            lines.push_str(if BLOCKS.iter().any(begins) { "\n<" } else { "<" });
        }
        lines.push_str(piece);
    }
    lines.push('\n');
    lines
}

/// That nothing could be looked at.
fn nothing(reason: &str) -> Markup {
    html! {
        p class="verdict open" { strong { "NOT SHOWN TO HOLD" } "." }
        p { "Nothing could be checked: " (reason) "." }
    }
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
