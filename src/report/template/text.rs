//! What `template` prints: which files, which holes, what to mind.

use super::{
    Template,
    cautions::cautions,
    holes::{Group, groups},
    words,
};
use crate::report::page::{Page, left, right};

pub(super) fn text(template: &Template<'_>, files: &[(String, String)], width: usize) -> String {
    let mut page = Page::new(width.clamp(60, 120));
    page.paragraph("", &format!("Template 1:1 of {}", template.top.title));
    if let Some(warning) = template.not_for_building() {
        page.paragraph("  ", warning);
    }
    page.paragraph("  ", &template.view.words());
    page.paragraph("  ", datum());
    if !files.is_empty() {
        page.blank();
        let longest = files.iter().map(|(name, _)| name.chars().count()).max().unwrap_or(0).min(40);
        for (name, what) in files {
            page.paragraph(&format!("wrote {}  ", left(name, longest)), what);
        }
    }
    page.blank();
    holes(&mut page, template);
    page.blank();
    page.paragraph("", "Mind");
    for caution in cautions(template) {
        page.paragraph("  - ", &caution);
    }
    page.done()
}

/// Where places are measured from.
pub(super) const fn datum() -> &'static str {
    "Datum: the corner 0, 0 of the rectangle round the finished outline; x and y are measured from its sides."
}

fn holes(page: &mut Page, template: &Template<'_>) {
    let groups = groups(template);
    if groups.is_empty() {
        page.paragraph("", "Holes: none, since the file gives no fixings.");
        return;
    }
    page.paragraph("", "Holes");
    for group in &groups {
        page.paragraph("  ", &group.heading());
        for step in group.steps(template.top.report) {
            page.paragraph("    ", &step);
        }
        rows(page, template, group);
    }
}

fn rows(page: &mut Page, template: &Template<'_>, group: &Group<'_>) {
    let system = template.top.report;
    let drill = group.marks.iter().map(|mark| words::sizes(mark).chars().count()).max().unwrap_or(0).max(5);
    page.line(&format!(
        "    {}{}{}  {}  {}  tap",
        right("no", 4),
        right("x", 12),
        right("y", 12),
        left("drill", drill),
        left("stop", 8)
    ));
    for mark in group.marks {
        page.line(&format!(
            "    {}{}{}  {}  {}  {}{}",
            right(&mark.number.to_string(), 4),
            right(&words::place(mark.at.x, system), 12),
            right(&words::place(mark.at.y, system), 12),
            left(&words::sizes(mark), drill),
            left(&words::stop(mark), 8),
            mark.tap.as_deref().unwrap_or("none"),
            if mark.in_band.is_some() { "  NEAR A CONDUIT" } else { "" },
        ));
    }
}
