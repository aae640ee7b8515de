//! The table of those found, the file's own below them.

use super::{
    Choice, heading,
    words::{Units, bare, governing, holds, measures, skin, symbol, units},
};
use crate::{
    check::CHECKS,
    choice::{Found, Open, Order},
    report::{
        page::{Page, left, right},
        words,
    },
    units::{ArealMassDensity, System, show},
};

pub(super) fn found(page: &mut Page, choice: Choice<'_>) {
    let order = match choice.space.order {
        Order::Weight => "the lightest first",
        Order::Thickness => "the thinnest first",
        Order::Sag => "what sags least first",
        Order::Cost => "the cheapest first",
    };
    let all = &choice.chosen.found;
    if all.is_empty() {
        heading(page, "The file's own");
    } else {
        heading(
            page,
            &format!(
                "{}, none beaten by another in {} ({order}; the file's own last)",
                match (all.iter().all(|found| found.holds), choice.chosen.always.is_empty()) {
                    (true, _) => "Hold by both methods",
                    (false, true) => "Pass by both methods all that can be judged",
                    (false, false) => "Pass by both methods all but what fails whatever is laid up",
                },
                measures(choice.space)
            ),
        );
    }
    let Units { length, mass, areal, .. } = units(choice.system());
    page.line(&row(["", "weight", "per area", "thick", "sag", "used", "margin"]));
    page.line(&row(["", mass, symbol::<ArealMassDensity>(areal), length, length, "", ""]));
    for (number, found) in all.iter().enumerate() {
        one(page, choice, &(number + 1).to_string(), found);
    }
    one(page, choice, "file", &choice.chosen.own);
}

fn one(page: &mut Page, choice: Choice<'_>, name: &str, found: &Found) {
    let Units { length, mass, areal, .. } = units(choice.system());
    let fine = match choice.system() {
        System::Us => 3,
        System::Si => 1,
    };
    let [title, used, margin] = governing(found);
    page.line(&row([
        name,
        &bare(found.mass, mass, 2),
        &bare(choice.areal(found), areal, 2),
        &bare(found.thickness, length, fine),
        &found.sag.map_or_else(|| "—".to_owned(), |sag| bare(sag, length, fine)),
        &used,
        &margin,
    ]));
    let laid = choice.laid(found);
    let mut line = |name: &str, text: &str| page.paragraph(&format!("      {} ", left(name, 6)), text);
    let core = &laid.core.material;
    let (density, thick) = (show(core.density, choice.system()), show(laid.core.thickness, choice.system()));
    line("core", &format!("{}, {density}, {thick} thick", words::within(&core.name)));
    line("outer", &skin(laid.outer));
    line("inner", &skin(laid.inner));
    let arranged = choice.arranged(found);
    if !arranged.is_empty() {
        line("with", &arranged.join("; "));
    }
    if let Some(frame) = choice.frame(found) {
        line("pipes", &format!("{}, which count in the order beside the bare weight", show(frame, choice.system())));
    }
    if let Some(cost) = found.cost {
        line("cost", &format!("{}, {} without waste", choice.money(cost), choice.priced()));
    }
    let by = found.governs.as_ref().map_or_else(String::new, |worst| format!(", {}", worst.method.words()));
    let case = found.case.as_ref().map_or_else(String::new, |case| format!("; {}", words::within(case)));
    let verdict = if found.holds { String::new() } else { format!("; {}", holds(found)) };
    let at = found.governs.as_ref().and_then(|worst| worst.place.at);
    let at = at.map_or_else(String::new, |at| format!("; at {}", words::point(at, choice.system())));
    line("first", &format!("{title}{by}{case}{at}{verdict}"));
    for fails in super::always::failing(choice, found) {
        line("fails", &fails);
    }
    for open in &found.open {
        match open {
            Open::Check { check, reason } => line("open", &format!("{}: {reason}", CHECKS[*check].title())),
            Open::Case { title, reason, .. } => line("open", &format!("{title}: {reason}")),
        }
    }
}

fn row(cells: [&str; 7]) -> String {
    let [name, mass, areal, thick, sag, used, margin] = cells;
    format!(
        "  {}{}{}{}{}{}{}",
        left(name, 4),
        right(mass, 9),
        right(areal, 10),
        right(thick, 9),
        right(sag, 8),
        right(used, 9),
        right(margin, 8),
    )
}
