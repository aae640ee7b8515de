//! The answer in a few sentences: what is best, how it does, and what it is beside the file's own.

use uom::si::{length::millimeter, mass::kilogram};

use super::{
    Choice, SAME_MASS,
    tally::{fates, losses},
    words::{governing, holds, skin},
};
use crate::{
    choice::{Found, LeftOut, Measures, Money, Open, Order},
    report::{page::Page, said::counted, without_fixings, words},
    top::Schedule,
    units::{Length, Mass, both, show},
};

/// Millimetres; less than this apart is the same. Our choice: what a rule does not show.
const SAME_THICKNESS: f64 = 0.05;

pub(super) fn answer(page: &mut Page, choice: Choice<'_>) {
    page.paragraph("", &choice.top.title);
    page.blank();
    for sentence in sentences(choice) {
        page.paragraph("  ", &sentence);
    }
}

/// The same for every form of the answer.
pub(super) fn sentences(choice: Choice<'_>) -> Vec<String> {
    let mut all = super::always::sentences(choice);
    all.extend(cannot(choice));
    all.extend(stopped(choice));
    all.extend(left_out(choice));
    match choice.best() {
        None => all.push(nothing(choice)),
        Some(best) => {
            all.push(first(choice, best));
            all.push(how_it_does(choice, best));
            let without = without_fixings(choice.top);
            if !without.is_empty() {
                all.push(format!(
                    "It holds but for its fixings: not checked for {} (the file gives none).",
                    without.join(", ")
                ));
            }
        }
    }
    all.push(beside_own(choice));
    all
}

/// What is judged by all checks but some, and why.
fn cannot(choice: Choice<'_>) -> Option<String> {
    let open = &choice.chosen.cannot;
    let cases = open.iter().filter_map(|open| match open {
        Open::Case { title, reason, .. } => Some((words::within(title), reason)),
        Open::Check { .. } => None,
    });
    let (titles, reasons): (Vec<String>, Vec<&String>) = cases.unzip();
    if let Some(reason) = reasons.first() {
        return Some(format!(
            "NOTHING CAN PASS: these load cases cannot be looked at, whatever is laid up: {}. Why: {reason}.",
            titles.join("; ")
        ));
    }
    let checks = super::words::checks(open);
    (!checks.is_empty()).then(|| {
        format!(
            "NOTHING CAN PASS FULLY: {} cannot be judged here, whatever is laid up; what follows is by all else.",
            checks.join(", ")
        )
    })
}

fn stopped(choice: Choice<'_>) -> Option<String> {
    if !choice.chosen.stopped {
        return None;
    }
    if choice.looked_at() == choice.chosen.of {
        return Some(
            "STOPPED while those were looked at that by hand may sag less than what comes first: one of them may."
                .to_owned(),
        );
    }
    // From the lightest up: what comes later is no lighter than what was found before.
    let others = choice.best().map_or("", |_| match choice.space.order.measures() {
        Measures::Sizes => {
            " None of the others is lighter than the lightest that is shown; one of them may be thinner or cheaper."
        }
        Measures::SizesAndSag => {
            " None of the others is lighter than the lightest that is shown, and most of those that sag least are among them: \
             lower `most_weight` or name fewer cores and skins to get to them."
        }
    });
    Some(format!(
        "STOPPED: {} of {} combinations were looked at, and the answer is of these alone.{others}",
        choice.looked_at(),
        choice.chosen.of
    ))
}

/// Which parts of the answer are not there.
fn left_out(choice: Choice<'_>) -> Option<String> {
    let parts: Vec<&str> = choice
        .chosen
        .left_out
        .iter()
        .map(|part| match part {
            LeftOut::Grids => "the table of density and thickness",
            LeftOut::Steps => "the steps from the first of those shown",
            LeftOut::ByBoth => "what both methods say of the borders of the tables and of the steps that save weight",
        })
        .collect();
    (!parts.is_empty()).then(|| format!("Not worked out, since it was stopped: {}.", parts.join(", ")))
}

/// Which combinations an answer speaks of.
fn those(choice: Choice<'_>) -> String {
    if choice.chosen.stopped {
        format!("the {} that were looked at", counted(choice.looked_at(), "combination"))
    } else {
        counted(choice.chosen.of, "combination")
    }
}

fn nothing(choice: Choice<'_>) -> String {
    let mut fates = fates(choice);
    fates.retain(losses);
    let most = fates.first().map_or_else(String::new, |fate| {
        format!(" Most are lost for this: {} ({} of {}).", fate.words, fate.count, choice.looked_at())
    });
    let passes = if choice.chosen.always.is_empty() { "holds" } else { "passes all else" };
    format!("None of {} {passes} by both methods.{most}", those(choice))
}

fn first(choice: Choice<'_>, best: &Found) -> String {
    let which = match choice.space.order {
        Order::Weight => "the lightest that",
        Order::Thickness => "the thinnest that",
        Order::Cost => "the cheapest that",
        Order::Sag => "the one that sags least of those that",
    };
    let passes = match (choice.chosen.always.is_empty(), choice.space.order) {
        (true, Order::Sag) => "hold",
        (true, _) => "holds",
        (false, Order::Sag) => "pass all else",
        (false, _) => "passes all else",
    };
    format!("Of {} {which} {passes} by both methods is {}.", those(choice), short(choice, best))
}

/// What it is laid up of, the skins only where they are not those of the file.
fn short(choice: Choice<'_>, found: &Found) -> String {
    if choice.is_own(found) {
        return "what the file has".to_owned();
    }
    let (laid, top) = (choice.laid(found), choice.top);
    let of = |name: &str, own: &Schedule, its: &Schedule| (own != its).then(|| format!("{name} skin {}", skin(its)));
    let other: Vec<String> =
        [of("outer", &top.outer, laid.outer), of("inner", &top.inner, laid.inner)].into_iter().flatten().collect();
    let skins = match other.len() {
        0 => "both skins as in the file".to_owned(),
        1 => format!("{}, the other skin as in the file", other.join("; ")),
        _ => other.join("; "),
    };
    let arranged = choice.arranged(found);
    let arranged = if arranged.is_empty() { String::new() } else { format!("; {}", arranged.join(", ")) };
    format!(
        "{} of {}, {} thick; {skins}{arranged}",
        words::within(&laid.core.material.name),
        both(laid.core.material.density, choice.system()),
        both(laid.core.thickness, choice.system())
    )
}

fn how_it_does(choice: Choice<'_>, found: &Found) -> String {
    let system = choice.system();
    let sag = found.sag.map_or_else(String::new, |sag| format!(" It sags by {} at most.", both(sag, system)));
    let cost = found.cost.map_or_else(String::new, |cost| {
        format!(" Its {} cost {} without waste.", choice.priced(), choice.money(cost))
    });
    let with_pipes = choice
        .frame(found)
        .map_or_else(String::new, |frame| format!(", {} with its pipes,", both(found.mass + frame, system)));
    format!(
        "It weighs {} bare{with_pipes} and is {} thick, skins and core.{cost} {}{sag}",
        both(found.mass, system),
        both(found.thickness, system),
        words::capital(&governs(found))
    )
}

/// What governs, in one sentence.
fn governs(found: &Found) -> String {
    let [title, used, margin] = governing(found);
    match &found.governs {
        None => format!("{title}."),
        Some(worst) if worst.utilisation().is_none() => format!("{title} could not be checked."),
        Some(worst) => {
            let case = found.case.as_ref().map_or_else(String::new, |case| format!("; {}", words::within(case)));
            format!("{title} governs by the {}: {used} used, margin {margin}{case}.", worst.method.words())
        }
    }
}

fn beside_own(choice: Choice<'_>) -> String {
    let (own, system) = (&choice.chosen.own, choice.system());
    let own_words = format!(
        "{} ({} bare, {} thick); {}",
        holds(own),
        show(own.mass, system),
        show(own.thickness, system),
        governs(own)
    );
    let Some(best) = choice.best() else { return format!("The file's own {own_words}") };
    if choice.is_own(best) {
        return format!("So nothing that holds beats the file's own in {}.", super::words::measures(choice.space));
    }
    let (mass, (_, thickness)) = (choice.heavier(best), choice.over_own(best));
    let cheaper = match (best.cost, own.cost) {
        (Some(best), Some(own)) => format!(", {},", cheaper(best - own, choice)),
        _ => String::new(),
    };
    format!(
        "That is {}{cheaper} and {} the file's own, which {own_words}",
        heavier(mass, choice),
        thicker(thickness, choice)
    )
}

fn heavier(by: Mass, choice: Choice<'_>) -> String {
    if by.get::<kilogram>().abs() < SAME_MASS {
        return "as heavy".to_owned();
    }
    let word = if by > Mass::default() { "heavier" } else { "lighter" };
    format!("{} {word}", show(by.abs(), choice.system()))
}

fn cheaper(by: Money, choice: Choice<'_>) -> String {
    // Less than the last figure that is printed is nothing.
    if by.amount().abs() < 0.005 {
        return "as dear".to_owned();
    }
    let word = if by > Money::default() { "dearer" } else { "cheaper" };
    format!("{} {word}", choice.money(Money::new(by.amount().abs())))
}

fn thicker(by: Length, choice: Choice<'_>) -> String {
    if by.get::<millimeter>().abs() < SAME_THICKNESS {
        return "as thick as".to_owned();
    }
    let word = if by > Length::default() { "thicker" } else { "thinner" };
    format!("{} {word} than", show(by.abs(), choice.system()))
}
