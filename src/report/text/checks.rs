//! The table of checks, and each of them by hand.

use uom::si::ratio::ratio;

use super::{
    super::{
        Report, beside,
        hand_error::error_words,
        methods::plate_words,
        not_looked_at::NOT_MADE,
        page::{Page, Tone, left, right},
        redone::redone,
        words,
    },
    bar::with_bar,
};
use crate::{
    analysis::Analysis,
    check::{CHECKS, Method, Outcome, Verdict},
};

pub(super) fn table(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    let system = report.top.report;
    page.heading("Checks, worst first (used = demand × factor / allowable; passes up to 100 %)");
    // A narrow page keeps what one decides by; factor, margin and basis stand in each working.
    let row = if page.width() < ROW { narrow_row } else { row };
    page.line(&Tone::Quiet.paint(&row(["", "", "demand", "allowable", "factor", "used", "margin", "basis"])));
    for outcome in &report.checks {
        let check = CHECKS[outcome.check];
        let (word, tone) = words::verdict(outcome);
        let line = match &outcome.verdict {
            Verdict::Compared(finding) => {
                let [demand, allowable] = words::side_by_side(finding.demand, finding.allowable, system);
                row([
                    word,
                    check.title(),
                    &demand,
                    &allowable,
                    &format!("{:.2}", finding.factor.get::<ratio>()),
                    &words::used(outcome),
                    &words::margin(finding.margin().get::<ratio>()),
                    words::short_basis(finding.basis),
                ])
            }
            Verdict::NotEvaluated(_) => row([word, check.title(), "", "", "", "—", "—", ""]),
        };
        let line = with_bar(&line, outcome, page.width());
        page.line(&line.replacen(word, &tone.paint(word), 1));
        match &outcome.verdict {
            Verdict::Compared(_) => page.paragraph(
                "      ",
                &format!("{}; {}", words::case(analysis, outcome), words::place(analysis, &outcome.place, system)),
            ),
            Verdict::NotEvaluated(reason) => page.paragraph("      ", reason),
        }
    }
    for check in report.not_made() {
        page.line(&row(["OPEN", CHECKS[check].title(), "", "", "", "—", "—", ""]).replacen(
            "OPEN",
            &Tone::Open.paint("OPEN"),
            1,
        ));
        page.paragraph("      ", NOT_MADE);
    }
    page.paragraph("  ", &error_words(report, analysis));
}

/// Both methods, check by check.
pub(super) fn methods(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    let plate = match &analysis.whole {
        None => return,
        Some(Err(reason)) => {
            page.heading("Hand and plate method");
            page.paragraph("  ", &format!("There is no plate solution: {reason}."));
            return;
        }
        Some(Ok(plate)) => plate,
    };
    page.heading("Hand and plate method (used, worst case of each; the worse counts)");
    page.line(&Tone::Quiet.paint(&format!(
        "     {}{}{}{}",
        left("", 19),
        right("hand", 9),
        right("plate", 9),
        right("error", 11)
    )));
    for both in beside(report) {
        page.line(&format!(
            "     {}{}{}{}",
            left(CHECKS[both.check].title(), 19),
            right(&words::used(both.hand), 9),
            right(&words::used(both.plate), 9),
            right(&both.error_words(), 11),
        ));
        if let Some(reason) = &both.reason {
            page.paragraph("      ", reason);
        }
    }
    page.paragraph("  ", &plate_words(report, plate));
}

/// Columns of a whole row.
const ROW: usize = 80;

fn narrow_row([word, title, demand, allowable, _, used, ..]: [&str; 8]) -> String {
    format!("{} {}{}{}{}", left(word, 4), left(title, 19), right(demand, 13), right(allowable, 13), right(used, 7))
}

fn row(cells: [&str; 8]) -> String {
    let [word, title, demand, allowable, factor, used, margin, basis] = cells;
    format!(
        "{} {}{}{}{}{}{} {basis}",
        left(word, 4),
        left(title, 19),
        right(demand, 13),
        right(allowable, 13),
        right(factor, 6),
        right(used, 8),
        right(margin, 7),
    )
}

/// The governing check and all that fail, or all of them, so that a reader can redo them by hand.
pub(super) fn working(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>, full: bool) {
    page.heading(if full {
        "Every check, to be redone"
    } else {
        "The governing check, to be redone (--full shows all)"
    });
    let shown = report.checks.iter().enumerate().filter(|(index, outcome)| full || *index == 0 || !outcome.passes());
    for (index, (_, outcome)) in shown.enumerate() {
        if index > 0 {
            page.blank();
        }
        by_hand(page, report, analysis, outcome);
    }
}

fn by_hand(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>, outcome: &Outcome) {
    let check = CHECKS[outcome.check];
    page.paragraph("  ", &format!("{}: {}", check.title(), check.what()));
    for (name, text) in redone(report, analysis, outcome) {
        page.paragraph(&format!("    {} ", left(name, 9)), &text);
    }
}

pub(super) fn envelope(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    page.heading("Every check under every case");
    for (number, check) in CHECKS.iter().enumerate() {
        let own: Vec<&Outcome> = report.envelope.iter().filter(|outcome| outcome.check == number).collect();
        if own.is_empty() {
            continue;
        }
        page.line(&format!("  {}", check.title()));
        for outcome in own {
            let case = words::case(analysis, outcome);
            let method = match outcome.method {
                Method::Hand => "hand",
                Method::Plate => "plate",
            };
            page.line(&format!("    {} {} {case}", right(&words::used(outcome), 7), left(method, 5)));
        }
    }
}
