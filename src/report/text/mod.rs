//! The report as text that is a pleasure to read at 80 columns.

mod advice;
mod bar;
mod cases;
mod checks;
mod frame;
mod materials;
mod section;

use self::{
    advice::advice,
    cases::cases,
    checks::{envelope, methods, table, working},
    frame::frame,
    materials::{criteria, materials},
};
use super::{
    Report, cautions, fixings,
    page::{Page, Tone},
    said::{Said, facts, said},
};
use crate::analysis::Analysis;
pub(super) use advice::{OFFERS, Offers, added, change, offers};
pub(super) use cases::{actions, bounds_words, layout_words, ruled_out};
pub(super) use frame::{incomplete, pushed_sideways};
pub(super) use materials::{core_values, other_values, skin_origins};

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
            section::section(&mut page, report, width);
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
    page.line(&Tone::Strong.paint(&report.top.title));
    page.paragraph("  ", &facts(report.top));
    page.blank();
}

fn answer(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    let Said { tone, words, but, open, governs, doubt } = said(report, analysis);
    match but {
        Some(but) => page.painted(tone, &format!("{words},"), &format!("{but}.")),
        None => page.line(&tone.paint(words)),
    }
    for line in open.iter().chain(&governs).chain(&doubt) {
        page.paragraph("  ", line);
    }
}
