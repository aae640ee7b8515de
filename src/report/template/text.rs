//! What `template` prints: which files, which holes, what to mind.

use super::{
    Template,
    cautions::cautions,
    holes::{Group, groups},
    words,
};
use crate::{
    plan::FixingMark,
    report::page::{Page, left, right},
};

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

/// Width of number and place of a hole, and of how deep it goes.
const PLACE: usize = 32;
const STOP: usize = 8;

fn rows(page: &mut Page, template: &Template<'_>, group: &Group<'_>) {
    let system = template.top.report;
    let drill = group.marks.iter().map(|mark| words::sizes(mark).chars().count()).max().unwrap_or(0).max(5);
    let tap = |mark: &FixingMark| {
        let near = if mark.in_band.is_some() { "  NEAR A CONDUIT" } else { "" };
        format!("{}{near}", mark.tap.as_deref().unwrap_or("none"))
    };
    let taps = group.marks.iter().map(|mark| tap(mark).chars().count()).max().unwrap_or(0);
    // What does not fit beside its place stands below it.
    let beside = PLACE + 2 + drill + 2 + STOP + 2 + taps <= page.width();
    let place = |[no, x, y]: [&str; 3]| format!("    {}{}{}", right(no, 4), right(x, 12), right(y, 12));
    let row = |page: &mut Page, own: [&str; 3], [sizes, stop, tap]: [&str; 3]| {
        if beside {
            page.line(&format!("{}  {}  {}  {tap}", place(own), left(sizes, drill), left(stop, STOP)));
        } else {
            page.line(&place(own));
            page.paragraph("          ", &format!("{sizes}; {stop}; {tap}"));
        }
    };
    row(page, ["no", "x", "y"], ["drill", "stop", "tap"]);
    for mark in group.marks {
        let own = [&mark.number.to_string(), &words::place(mark.at.x, system), &words::place(mark.at.y, system)];
        row(page, own.map(String::as_str), [&words::sizes(mark), &words::stop(mark), &tap(mark)]);
    }
}
