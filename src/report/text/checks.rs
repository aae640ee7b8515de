//! The table of checks, and each of them by hand.

use uom::si::ratio::ratio;

use super::super::{
    Report, beside,
    page::{Page, Tone, left, right},
    words,
};
use crate::{
    analysis::{Analysis, HeldDown, PipeModel},
    check::{CHECKS, Method, Outcome, Subject, Verdict},
    top::{Scope, Support},
    units::Ratio,
};

pub(super) fn table(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    let system = report.top.report;
    page.heading("Checks, worst first (used = demand × factor / allowable; passes up to 100 %)");
    page.line(&Tone::Quiet.paint(&row(["", "", "demand", "allowable", "factor", "used", "margin", "basis"])));
    for outcome in &report.checks {
        let check = CHECKS[outcome.check];
        let (word, tone) = match (&outcome.verdict, outcome.passes()) {
            (Verdict::NotEvaluated(_), _) => ("OPEN", Tone::Open),
            (_, true) => ("pass", Tone::Good),
            (_, false) => ("FAIL", Tone::Bad),
        };
        let line = match &outcome.verdict {
            Verdict::Compared(finding) => row([
                word,
                check.title(),
                &words::measure(finding.demand, system),
                &words::measure(finding.allowable, system),
                &format!("{:.2}", finding.factor.get::<ratio>()),
                &words::used(outcome),
                &words::margin(finding.margin().get::<ratio>()),
                words::short_basis(finding.basis),
            ]),
            Verdict::NotEvaluated(_) => row([word, check.title(), "", "", "", "—", "—", ""]),
        };
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
        page.paragraph("      ", "not made: the plate method alone knows it; check without --hand");
    }
    if report.top.scope == Scope::Patch {
        let error =
            analysis.mount_forces.iter().map(|forces| forces.numerical_error).fold(Ratio::default(), Ratio::max);
        page.paragraph(
            "  ",
            &format!(
                "Numerical error: the forces below each footing balance what acts on it to {:.0e}; sides between the sixteen \
                 that are looked at are covered by 2 % on all of them.",
                error.get::<ratio>().max(1e-15)
            ),
        );
        return;
    }
    page.paragraph("  ", &report.hand_error.words(report.checks.first()));
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
        // Shears of rows are shared evenly and have none; what a swing is off by is not estimated.
        let none = if CHECKS[both.check].id() == "frequency" { "not known" } else { "" };
        let error = both.error.map_or_else(|| none.to_owned(), |error| words::percent(error.get::<ratio>()));
        page.line(&format!(
            "     {}{}{}{}",
            left(CHECKS[both.check].title(), 19),
            right(&words::used(both.hand), 9),
            right(&words::used(both.plate), 9),
            right(&error, 11),
        ));
        if let Some(reason) = &both.reason {
            page.paragraph("      ", reason);
        }
    }
    let supports = &report.top.supports;
    let of_pipes: Vec<PipeModel> = plate
        .pipes
        .iter()
        .zip(supports)
        .filter(|(_, support)| support.pipe().is_some())
        .map(|(model, _)| *model)
        .collect();
    let rigid = of_pipes.iter().filter(|pipe| **pipe == PipeModel::Rigid).count();
    let pipes = match (rigid, of_pipes.len()) {
        (_, 0) => String::new(),
        (0, _) => "; pipes bend on their posts".to_owned(),
        (rigid, all) if rigid == all => {
            "; pipes are rigid, since the file does not give all that they bend by (see Cautions)".to_owned()
        }
        (rigid, _) => {
            format!("; {rigid} of the pipes rigid, since the file does not give all that they bend by (see Cautions)")
        }
    };
    let others = if of_pipes.len() < supports.len() { "; walls and pads are rigid" } else { "" };
    let finer = if plate.sides < Ratio::from(1.0) { ", cut finer since what governs was not settled" } else { "" };
    let tied: Vec<&Support> = plate
        .holds
        .iter()
        .zip(supports)
        .filter(|(held, _)| **held == HeldDown::AllAlong)
        .map(|(_, support)| support)
        .collect();
    let (lies_on, all_on) =
        if others.is_empty() { ("its pipes", "pipes") } else { ("what it stands on", "what it stands on") };
    let holds = match (tied.len(), plate.holds.len()) {
        (0, _) => format!("presses on {lies_on} and lifts off between its fixings"),
        (tied, all) if tied == all => format!("is held down all along {lies_on}"),
        (number, _) if tied.iter().all(|support| support.fastened.is_none()) => {
            format!(
                "lifts off {all_on} between the fixings, and is held down all along the {number} whose are not given"
            )
        }
        (number, _) => format!(
            "lifts off {all_on} between the fixings, and is held down all along {number} of them: clamped, pads, or without \
             fixings in the file"
        ),
    };
    page.paragraph(
        "  ",
        &format!(
            "Plate: {} triangles of degree 4{finer}, {} unknowns; the top {holds}{pipes}{others}. Error: what \
             degree 3 on the same mesh makes of it, added to the demand; where it is large the solution has not settled, at \
             ends of pipes and corners of backing. All other checks are by hand, except pipe bending, which is by the plate method alone.",
            plate.triangles, plate.unknowns
        ),
    );
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
    let system = report.top.report;
    page.paragraph("  ", &format!("{}: {}", check.title(), check.what()));
    let on_plate = outcome.on_plate();
    page.paragraph("    formula   ", on_plate.map_or_else(|| check.formula(), |on_plate| on_plate.formula));
    if outcome.method == Method::Plate {
        let pulls = if check.subject() == Subject::Fixings {
            ", T with its error ε in it, l the length that it holds"
        } else {
            ""
        };
        page.paragraph("    forces    ", &format!("of the plate method{pulls}"));
    }
    match &outcome.verdict {
        Verdict::NotEvaluated(reason) => page.paragraph("    open      ", reason),
        Verdict::Compared(finding) => {
            page.paragraph("    case      ", &words::case(analysis, outcome));
            page.paragraph("    place     ", &words::place(analysis, &outcome.place, system));
            let terms: Vec<String> = finding
                .terms
                .iter()
                .map(|term| format!("{} = {}", term.symbol, words::measure(term.value, system)))
                .collect();
            if !terms.is_empty() {
                page.paragraph("    values    ", &terms.join(";  "));
            }
            page.paragraph(
                "    result    ",
                &format!(
                    "{} × {:.2} / {} = {}, margin {}",
                    words::measure(finding.demand, system),
                    finding.factor.get::<ratio>(),
                    words::measure(finding.allowable, system),
                    words::used(outcome),
                    words::margin(finding.margin().get::<ratio>()),
                ),
            );
        }
    }
    page.paragraph("    holds for ", on_plate.map_or_else(|| check.limits(), |on_plate| on_plate.limits));
    page.paragraph("    source    ", &citation(report, outcome));
}

/// Where a check's formula is published, with the text of the source.
pub(in crate::report) fn citation(report: &Report<'_>, outcome: &Outcome) -> String {
    let citation = outcome.on_plate().map_or_else(|| CHECKS[outcome.check].citation(), |on_plate| on_plate.citation);
    let text = report.table.source(citation.work.0).map_or(citation.work.0, |source| source.text.as_str());
    format!("{text}; {} ({})", citation.locator, citation.mark.words())
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
