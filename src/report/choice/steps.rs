//! One step more or less of each input, the lightest first.

use uom::si::{mass::kilogram, ratio::ratio};

use super::{
    Choice, SAME_MASS, heading,
    words::{bare, left_by, margin, units},
};
use crate::{
    check::CHECKS,
    choice::{Beside, Step},
    report::{
        page::{Page, left, right},
        text::change,
        words,
    },
    top::Top,
    units::{Mass, Ratio},
};

/// By what they add, those that add the same as they were tried.
pub(super) fn sorted(choice: Choice<'_>) -> Vec<&Step> {
    let mut steps: Vec<&Step> = choice.chosen.steps.iter().collect();
    steps.sort_by(|a, b| a.added.value.total_cmp(&b.added.value));
    steps
}

/// A step in the words of the shop.
pub(super) fn step(to: &Beside, top: &Top) -> String {
    match to {
        Beside::Change(other) => change(other, top),
        Beside::OuterLess(layer) => format!("1 fewer of \"{layer}\" in the outer skin"),
        Beside::InnerLess(layer) => format!("1 fewer of \"{layer}\" in the inner skin"),
    }
}

/// How far the hand method has it used that the steps start from.
pub(super) fn before(choice: Choice<'_>) -> Option<Ratio> {
    choice.best().unwrap_or(&choice.chosen.own).by_hand
}

pub(super) fn steps(page: &mut Page, choice: Choice<'_>) {
    if choice.chosen.steps.is_empty() {
        return;
    }
    let from = if choice.best().is_some() { "the first of these" } else { "the file's own" };
    heading(page, &format!("One step from {from}, by the hand method alone, in capitals by both"));
    let cells = |used: Option<Ratio>| {
        let text = used.map_or_else(|| "—".to_owned(), |used| words::percent(used.get::<ratio>()));
        [text, margin(used.and_then(left_by))]
    };
    let unit = units(choice.system()).mass;
    page.line(&row(&format!("adds {unit}"), &["used".to_owned(), "margin".to_owned()], ""));
    page.paragraph(&row("", &cells(before(choice)), before(choice).map_or("", |used| sign(used, false))), "as it is");
    let top = choice.best_top();
    for one in sorted(choice) {
        page.paragraph(
            &row(&adds(one.added, unit), &cells(Some(one.utilisation)), sign(one.utilisation, one.by_both)),
            &format!("{}: then {}", step(&one.to, &top), CHECKS[one.governs].title()),
        );
    }
    page.paragraph("  ", "ok holds, no does not hold, in capitals by both methods, with what governs then.");
}

/// Whether that holds.
pub(super) fn holds(used: Ratio) -> bool {
    used.get::<ratio>() <= 1.0
}

/// Whether that holds, in capitals where both methods say so.
pub(super) fn sign(used: Ratio, by_both: bool) -> &'static str {
    match (holds(used), by_both) {
        (true, false) => "ok",
        (false, false) => "no",
        (true, true) => "OK",
        (false, true) => "NO",
    }
}

fn adds(mass: Mass, unit: &str) -> String {
    if mass.get::<kilogram>().abs() < SAME_MASS {
        "same".to_owned()
    } else {
        format!("{}{}", if mass > Mass::default() { '+' } else { '−' }, bare(mass.abs(), unit, 2))
    }
}

fn row(adds: &str, [used, margin]: &[String; 2], sign: &str) -> String {
    format!("  {}{}{}  {} ", right(adds, 8), right(used, 11), right(margin, 8), left(sign, 2))
}
