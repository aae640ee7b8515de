//! A check with all that it takes to redo it by hand.

use uom::si::ratio::ratio;

use super::{Report, words};
use crate::{
    analysis::Analysis,
    check::{CHECKS, Method, Outcome, Subject, Verdict},
};

/// What is said of an outcome, each with its name: formula, case, place, values, result, limits, source.
pub(super) fn redone(report: &Report<'_>, analysis: &Analysis<'_>, outcome: &Outcome) -> Vec<(&'static str, String)> {
    let check = CHECKS[outcome.check];
    let system = report.top.report;
    let on_plate = outcome.on_plate();
    let formula = on_plate.map_or_else(|| check.formula(), |on_plate| on_plate.formula);
    let mut rows = vec![("formula", words::one_line(formula))];
    if outcome.method == Method::Plate {
        let pulls = if check.subject() == Subject::Fixings {
            ", T with its error ε in it, l the length that it holds"
        } else {
            ""
        };
        rows.push(("forces", format!("of the plate method{pulls}")));
    }
    match &outcome.verdict {
        Verdict::NotEvaluated(reason) => rows.push(("open", reason.clone())),
        Verdict::Compared(finding) => {
            rows.push(("case", words::case(analysis, outcome)));
            rows.push(("place", words::place(analysis, &outcome.place, system)));
            let terms: Vec<String> = finding
                .terms
                .iter()
                .map(|term| format!("{} = {}", term.symbol, words::measure(term.value, system)))
                .collect();
            if !terms.is_empty() {
                rows.push(("values", terms.join("; ")));
            }
            rows.push((
                "result",
                format!(
                    "{} × {:.2} / {} = {}, margin {}",
                    words::measure(finding.demand, system),
                    finding.factor.get::<ratio>(),
                    words::measure(finding.allowable, system),
                    words::used(outcome),
                    words::margin(finding.margin().get::<ratio>()),
                ),
            ));
        }
    }
    let limits = on_plate.map_or_else(|| check.limits(), |on_plate| on_plate.limits);
    rows.push(("holds for", limits.to_owned()));
    rows.push(("source", citation(report, outcome)));
    rows
}

/// Where a check's formula is published, with the text of the source.
pub(super) fn citation(report: &Report<'_>, outcome: &Outcome) -> String {
    let citation = outcome.on_plate().map_or_else(|| CHECKS[outcome.check].citation(), |on_plate| on_plate.citation);
    let text = report.table.source(citation.work.0).map_or(citation.work.0, |source| source.text.as_str());
    format!("{text}; {} ({})", citation.locator, citation.mark.words())
}
