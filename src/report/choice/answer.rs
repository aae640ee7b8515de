//! The answer in a few sentences: what is best, how it does, and what it is beside the file's own.

use uom::si::{length::millimeter, mass::kilogram};

use super::{
    Choice, SAME_MASS,
    tally::{fates, losses},
    words::{governing, holds, skin},
};
use crate::{
    choice::{Found, Money, Order},
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
    let mut all = Vec::new();
    all.extend(stopped(choice));
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

fn stopped(choice: Choice<'_>) -> Option<String> {
    if !choice.chosen.stopped {
        return None;
    }
    // From the lightest up: what comes later is no lighter than what was found before.
    let others = choice.best().map_or(
        "",
        |_| " None of the others is lighter than the lightest that is shown; one of them may be thinner or cheaper, or sag less.",
    );
    Some(format!(
        "STOPPED: {} of {} combinations were looked at, and the answer is of these alone.{others}",
        choice.looked_at(),
        choice.chosen.of
    ))
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
    format!("None of {} holds by both methods.{most}", those(choice))
}

fn first(choice: Choice<'_>, best: &Found) -> String {
    let of = those(choice);
    let which = match choice.space.order {
        Order::Weight => format!("Of {of} the lightest that holds by both methods is"),
        Order::Thickness => format!("Of {of} the thinnest that holds by both methods is"),
        Order::Cost => format!("Of {of} the cheapest that holds by both methods is"),
        // What is heavier and no thinner than one that holds was not looked at, and may well sag less.
        Order::Sag => format!(
            "Of {of} {} by both methods with no other {}; of these, what sags least is",
            if choice.chosen.found.len() == 1 {
                "1 holds".to_owned()
            } else {
                format!("{} hold", choice.chosen.found.len())
            },
            super::words::as_good(choice.space)
        ),
    };
    format!("{which} {}.", short(choice, best))
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
    let cost = found
        .cost
        .map_or_else(String::new, |cost| format!(" Its materials cost {} without waste.", choice.money(cost)));
    format!(
        "It weighs {} bare and is {} thick, skins and core.{cost} {}{sag}",
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
    let (mass, thickness) = choice.over_own(best);
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
