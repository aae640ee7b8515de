//! What counts of an answer, and what it leaves out.

use super::Choice;
use crate::{
    check::Method,
    choice::{Fate, Order},
    report::cautions::of_choice,
};

/// What was looked at how.
pub(super) fn notes(choice: Choice<'_>) -> Vec<String> {
    let chosen = choice.chosen;
    let had = |which: &dyn Fn(&Fate) -> bool| chosen.tally.iter().any(|tally| which(&tally.fate));
    let mut notes = vec![
        "Each combination that is shown, and the file's own, was checked by both methods under all load cases. The table of \
         density and thickness and the steps are by the hand method alone: check a design that you make from them before you build."
            .to_owned(),
    ];
    if had(&|fate| *fate == Fate::Beaten) {
        let sag =
            if choice.space.order == Order::Sag { " One of them may sag less than all that are shown." } else { "" };
        notes.push(format!(
            "What is beaten was not checked by both methods: it is not lighter{} or thinner than one that holds.{sag}",
            if choice.space.prices.is_some() { ", cheaper" } else { "" }
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
             is, and so does the backing over a pipe that is taken away. Weights and costs are those of the bare top: what a pipe more \
             weighs and costs comes on top of them.",
            choice.space.arrangements.len()
        ));
    }
    notes.push(match &choice.space.prices {
        None => "Prices are not reckoned: the file has no `[choose.prices]`.".to_owned(),
        Some(_) => "Cost is that of fabrics, resin, core and boards as they are in the finished top. Not counted: waste, edge fill, tubes, \
                    fixings, paint, the frame, and work."
            .to_owned(),
    });
    notes
}

/// The cautions beside the first of those found, or the file's own.
pub(super) fn cautions(choice: Choice<'_>) -> Vec<String> {
    let open = choice.chosen.tally.iter().any(|tally| matches!(tally.fate, Fate::Open(_)));
    let about = choice.best().unwrap_or(&choice.chosen.own);
    let open_itself = about.governs.as_ref().is_none_or(|worst| worst.utilisation().is_none());
    of_choice(&choice.best_top(), about.governs.as_ref(), open || open_itself)
}
