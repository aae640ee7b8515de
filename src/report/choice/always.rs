//! What fails whatever is laid up, and what to change in the file.

use serde_json::{Value, json};

use super::{Choice, added, json::share};
use crate::{
    advice::Remedy,
    check::{CHECKS, Method, Outcome, Part, stronger_pipe},
    choice::{Always, Fate, Found},
    report::{
        json::{method, quantity},
        said::counted,
        text::change,
        words,
    },
};

/// So many changes are told in a sentence; JSON has all. Our choice.
const MOST_TOLD: usize = 4;

/// What comes first in an answer: that nothing holds, what fails in all that were judged, and what of it would pass.
pub(super) fn sentences(choice: Choice<'_>) -> Vec<String> {
    let all = &choice.chosen.always;
    if all.is_empty() {
        return Vec::new();
    }
    let nothing = if choice.chosen.none_holds {
        let over = choice.chosen.tally.iter().filter(|tally| tally.fate == Fate::OverLimit).map(|tally| tally.count);
        let over = match over.sum::<usize>() {
            0 => String::new(),
            over => format!(", but for {over} that are over the limits of `[choose]`"),
        };
        format!("NOTHING HOLDS: each of {} was looked at{over}.", counted(choice.chosen.of, "combination"))
    } else {
        "NOTHING WAS FOUND TO HOLD.".to_owned()
    };
    let mut sentences = vec![format!(
        "{nothing} What `[choose]` leaves as it is failed in all that were judged for it, whatever is laid up:"
    )];
    sentences.extend(all.iter().map(|own| sentence(choice, own)));
    let doubt =
        if choice.chosen.none_holds { "" } else { " Between those that were judged some may pass it all the same." };
    sentences.push(format!(
        "Change that in the file first.{doubt} What follows is by all else, and so shows what to lay up once that is changed."
    ));
    sentences
}

fn sentence(choice: Choice<'_>, own: &Always) -> String {
    let system = choice.system();
    let of = own.of.as_ref().map_or_else(String::new, |name| format!(" of {name}"));
    let at = own.least.place.at.map_or_else(String::new, |at| format!("; at {}", words::point(at, system)));
    let case = own.case.as_ref().map_or_else(String::new, |case| format!("; {}", words::within(case)));
    format!(
        "{}{of}: {} used at the least, in all {} that were judged for it, by the {}{case}{at}. {}",
        words::capital(CHECKS[own.check].title()),
        words::used(&own.least),
        own.judged,
        own.least.method.words(),
        what_to_change(choice, own)
    )
}

fn what_to_change(choice: Choice<'_>, own: &Always) -> String {
    let told = |remedy: &Remedy| {
        let breaks =
            remedy.breaks.map_or_else(String::new, |check| format!(", but then {} fails", CHECKS[check].title()));
        format!("{} ({}){breaks}", change(&remedy.change, &choice.best_top()), added(remedy.added, choice.system()))
    };
    if let (Part::Support(pipe) | Part::Weld(pipe), None) = (own.least.place.part, &own.of) {
        let pipe = choice.top.supports.get(pipe);
        let stronger =
            pipe.zip(own.least.utilisation()).and_then(|(pipe, used)| stronger_pipe(pipe, used, choice.system()));
        return stronger.map_or_else(String::new, |stronger| format!("What would pass: {stronger}."));
    }
    if own.least.method == Method::Plate {
        return "No change was tried on that, since the hand method finds no fault with it: see where it gives way."
            .to_owned();
    }
    if !own.remedies.is_empty() {
        let all: Vec<String> = own.remedies.iter().take(MOST_TOLD).map(told).collect();
        return format!("What would pass by the hand method, each alone: {}.", all.join("; "));
    }
    let nearest = own.nearest.as_ref().map_or_else(String::new, |nearest| {
        format!("; nearest is {}, which leaves it at {}", told(nearest), words::percent(nearest.utilisation.value))
    });
    format!("No single change of fixings, backing or pipes that was tried makes it pass{nearest}.")
}

/// What fails anyway of one of those found, each check with what it is of.
pub(super) fn failing(choice: Choice<'_>, found: &Found) -> Vec<String> {
    let top = choice.arranged_top(found);
    let name = |outcome: &Outcome| match outcome.place.part {
        Part::Support(pipe) | Part::Weld(pipe) => Some(top.supports[pipe].name.as_str()),
        part => part.mount().map(|on| words::held(top, on)),
    };
    let one = |outcome: &Outcome| {
        let of = name(outcome).map_or_else(String::new, |name| format!(" of {name}"));
        format!("{}{of}, {}: {} used", CHECKS[outcome.check].title(), outcome.method.words(), words::used(outcome))
    };
    found.fails.iter().map(one).collect()
}

pub(super) fn json(choice: Choice<'_>, own: &Always) -> Value {
    let system = choice.system();
    let remedy = |remedy: &Remedy| {
        json!({
            "change": change(&remedy.change, &choice.best_top()),
            "added_mass": quantity(remedy.added, system),
            "utilisation": share(Some(remedy.utilisation)),
            "breaks": remedy.breaks.map(|check| CHECKS[check].id()),
        })
    };
    json!({
        "check": CHECKS[own.check].id(),
        "of": own.of,
        "judged": own.judged,
        "method": method(own.least.method),
        "utilisation": share(own.least.utilisation()),
        "case": own.case,
        "at": own.least.place.at.map(|at| [at.x, at.y].map(|along| quantity(along, system))),
        "remedies": own.remedies.iter().map(remedy).collect::<Vec<_>>(),
        "nearest": own.nearest.as_ref().map(remedy),
    })
}

/// What fails anyway of one of those found.
pub(super) fn fails(outcome: &Outcome) -> Value {
    json!({
        "check": CHECKS[outcome.check].id(),
        "method": method(outcome.method),
        "utilisation": share(outcome.utilisation()),
    })
}
