//! What counts of an answer, and what it leaves out.

use super::Choice;
use crate::{
    check::Method,
    choice::{Fate, Measures, Space},
    report::cautions::of_choice,
};

/// What the first of those ordered by sag rests on.
const LEAST_SAG: &str = " So what by hand sags less than the one that comes first was looked at in the end, but where a rough plate, its error \
                         taken off, sags no less already. That a finer plate sags no less than that was tried on some and is not proven.";

/// What was looked at how.
pub(super) fn notes(choice: Choice<'_>) -> Vec<String> {
    let chosen = choice.chosen;
    let had = |which: &dyn Fn(&Fate) -> bool| chosen.tally.iter().any(|tally| which(&tally.fate));
    let waiting = chosen.tally.iter().find(|tally| tally.fate == Fate::MaySagLess).map(|tally| tally.count);
    let mut notes = vec![
        "Each combination that is shown, and the file's own, was checked by both methods under all load cases. The table of \
         density and thickness and the steps are by the hand method alone, but for some cells on the border of what holds and some steps \
         that save weight, in capitals, which are by both: check a design that you make from them before you build."
            .to_owned(),
    ];
    if had(&|fate| *fate == Fate::Beaten) {
        let cheaper = if choice.space.prices.is_some() { ", cheaper" } else { "" };
        notes.push(match choice.space.order.measures() {
            Measures::Sizes => format!(
                "What is beaten was not checked by both methods: it is not lighter{cheaper} or thinner than one that holds."
            ),
            Measures::SizesAndSag => format!(
                "What is beaten was mostly not checked by both methods: one that holds is no heavier{} than it, and by hand it sags less \
                 by no more than a fifth. The larger sag of both methods counts.{}",
                if choice.space.prices.is_some() { ", thicker or dearer" } else { " or thicker" },
                if chosen.stopped || waiting.is_some() { "" } else { LEAST_SAG }
            ),
        });
    }
    if let Some(waiting) = waiting {
        notes.push(format!(
            "By hand {waiting} more may sag less than the one that comes first. Only a plate could tell, which is too much work for so many: one \
             of them may sag less. Fewer cores or skins in `[choose]` let all be looked at."
        ));
    }
    let glance =
        |by: Method| had(&|fate| matches!(fate, Fate::Fails { at_a_glance: true, method, .. } if *method == by));
    if glance(Method::Hand) || glance(Method::Plate) {
        let rough = if glance(Method::Plate) { ", as a plate by more than the error of a rough solution" } else { "" };
        notes.push(format!(
            "At a glance: one check fails under one load case{rough}. That is enough to rule a combination out; the other checks \
             and cases were not looked at then."
        ));
    }
    if choice.space.arrangements.len() == 1 {
        notes.push(
            "Not looked at: other fixings than those of the file, nor other pipes and backing; `pipes`, `overhangs` and \
             `[[choose.backing]]` offer the latter."
                .to_owned(),
        );
    } else {
        notes.push(format!(
            "{} ways of pipes and backing were looked at, the file's own among them. Fixings go with their pipes; gear stays where it \
             is; backing that lay along a pipe which is taken away is left out where no gear stands on it.{}",
            choice.space.arrangements.len(),
            of_pipes(choice.space)
        ));
    }
    if choice.space.limits.mass.is_some() {
        notes.push(
            "`most_weight` is of the top that `order` calls finished, bare: coats, edge, backing and conduits are in it; gear and \
             pipes are not."
                .to_owned(),
        );
    }
    notes.push(match &choice.space.prices {
        None => "Prices are not reckoned: the file has no `[choose.prices]`.".to_owned(),
        Some(_) => "Cost is that of fabrics, resin, core and boards as they are in the finished top. Not counted: waste, edge fill, tubes, \
                    fixings, paint, posts, and work."
            .to_owned(),
    });
    notes
}

/// What counts of the pipes, where there is a choice of them.
fn of_pipes(space: &Space) -> String {
    if !space.pipes_differ() {
        return String::new();
    }
    let weight = if space.frames().is_some() {
        "What the pipes weigh counts in weight, posts and welds left out; `most_weight` is of the bare top."
    } else {
        "What the pipes weigh does not count: give `wall` and `alloy` of each."
    };
    let cost = match &space.prices {
        None => "",
        Some(prices) if prices.pipe.is_some() => " Cost is with the pipes, posts and welds left out.",
        Some(_) => " What they cost does not count: `[choose.prices]` has no `pipe`, such as `pipe = \"9.00 / ft\"`.",
    };
    format!(" {weight}{cost}")
}

/// The cautions beside the first of those found, or the file's own.
pub(super) fn cautions(choice: Choice<'_>) -> Vec<String> {
    let open = choice.chosen.tally.iter().any(|tally| matches!(tally.fate, Fate::Open(_)));
    let about = choice.best().unwrap_or(&choice.chosen.own);
    let open_itself =
        !about.open.is_empty() || about.governs.as_ref().is_none_or(|worst| worst.utilisation().is_none());
    of_choice(&choice.best_top(), about.governs.as_ref(), open || open_itself)
}
