//! What a coupon or a proof test would settle: checks that rest on typical or estimated values, those that are used most first.

use maud::{Markup, html};
use uom::si::ratio::ratio;

use crate::{
    analysis::Analysis,
    check::{CHECKS, Finding, Outcome, Verdict},
    material::Basis,
    report::{Report, fixings::proofs, words},
};

pub(super) fn settle(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    let open: Vec<(&Outcome, &Finding)> = report.checks.iter().filter_map(rests_on_little).collect();
    let proofs = proofs(report, analysis);
    html! {
        @if open.is_empty() && proofs.is_empty() { p { "No check rests on a typical or an estimated strength." } }
        @if !open.is_empty() {
            table class="narrow" {
                caption { "Checks whose strength is typical or estimated, the most used first" }
                thead {
                    tr {
                        th scope="col" { "Check" }
                        th scope="col" { "Rests on" }
                        th scope="col" class="n" { "Used" }
                        th scope="col" class="n" { "If measured" }
                    }
                }
                tbody {
                    @for (outcome, finding) in open {
                        tr {
                            th scope="row" { a href={ "#check-" (CHECKS[outcome.check].id()) } { (CHECKS[outcome.check].title()) } }
                            td { (words::basis(finding.basis)) }
                            td class="n" { (words::used(outcome)) }
                            td class="n" { (if_measured(analysis, finding)) }
                        }
                    }
                }
            }
            p class="note" {
                "If measured: what would be used if coupons of your own laminate, core or board bore out the value that the table has, so that "
                "its share for the basis (" (share(analysis, Basis::Typical)) " of a typical value, " (share(analysis, Basis::Estimate))
                " of an estimate) gave way to that of a measured one (" (share(analysis, Basis::Measured))
                "). Coupons that bear less leave more used. Limits of use, such as sags, rest on no strength and are not listed."
            }
        }
        @if !proofs.is_empty() {
            h3 { "Proof of the fixings" }
            dl class="rows" { @for (name, text) in proofs { dt { (name) } dd { (text) } } }
        }
    }
}

/// A check that rests on a value with a knock-down for its basis.
fn rests_on_little(outcome: &Outcome) -> Option<(&Outcome, &Finding)> {
    let Verdict::Compared(finding) = &outcome.verdict else { return None };
    let knocked_down = finding.terms.iter().any(|term| term.symbol == "k");
    let little = matches!(finding.basis, Basis::Typical | Basis::Estimate);
    (little && knocked_down).then_some((outcome, finding))
}

fn if_measured(analysis: &Analysis<'_>, finding: &Finding) -> String {
    let criteria = &analysis.top.criteria;
    let gained = criteria.basis_share(finding.basis).value / criteria.basis_share(Basis::Measured).value;
    words::percent((finding.utilisation * gained).get::<ratio>())
}

fn share(analysis: &Analysis<'_>, basis: Basis) -> String {
    format!("{:.2}", analysis.top.criteria.basis_share(basis).value.get::<ratio>())
}
