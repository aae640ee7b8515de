//! One step more or less of each input, the lightest first.

use uom::si::ratio::ratio;

use super::{
    Choice, heading,
    words::{left_by, margin},
};
use crate::{
    check::CHECKS,
    choice::{Beside, Step},
    report::{
        page::{Page, right},
        text::{added, change},
        words,
    },
    top::Top,
    units::Ratio,
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
    heading(page, &format!("One step from {from}, by the hand method alone"));
    let cells = |used: Option<Ratio>| {
        let text = used.map_or_else(|| "—".to_owned(), |used| words::percent(used.get::<ratio>()));
        [text, margin(used.and_then(left_by))]
    };
    page.line(&row("adds", &["used".to_owned(), "margin".to_owned()]));
    page.paragraph(&format!("{}  ", row("", &cells(before(choice)))), "as it is");
    let (top, system) = (choice.best_top(), choice.system());
    for one in sorted(choice) {
        let holds = if one.utilisation.get::<ratio>() <= 1.0 { "" } else { "; does not hold" };
        page.paragraph(
            &format!("{}  ", row(&added(one.added, system), &cells(Some(one.utilisation)))),
            &format!("{}: then {}{holds}", step(&one.to, &top), CHECKS[one.governs].title()),
        );
    }
}

fn row(adds: &str, [used, margin]: &[String; 2]) -> String {
    format!("{}{}{}", right(adds, 13), right(used, 11), right(margin, 8))
}
