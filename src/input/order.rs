//! `[order]`: what the shop buys in, in short; each key is one of the criteria, or two.

use toml::de::DeValue;

use super::{
    problem::Problem,
    reader::{Given, Room},
};
use crate::{
    criteria::Criteria,
    material::CoreFamily,
    units::{Dimensioned, Length, Ratio, Sign},
};

/// Keys that are one criterion each, and whether it is a length.
const KEYS: [(&str, &str, bool); 11] = [
    ("roll_width", "order-roll-width", true),
    ("lap", "order-lap", true),
    ("edge_lap", "order-edge-lap", true),
    ("fabric_waste", "order-fabric-waste", false),
    ("resin_waste", "order-resin-waste", false),
    ("putty_waste", "order-putty-waste", false),
    ("board_waste", "order-board-waste", false),
    ("glue_line", "order-glue-line", true),
    ("catalyst", "order-catalyst-share", false),
    ("hardener", "order-hardener-share", false),
    ("spares", "order-spares", false),
];

/// Most of a share: above it somebody has written per cent without the sign.
const MOST_SHARE: f64 = 1.0;

/// Puts what the file says into the criteria. `core` is that of the top: its sheets are meant.
pub(super) fn read_order(root: &Room<'_>, criteria: &mut Criteria, core: Option<&CoreFamily>) {
    let Some(room) = root.room("order") else { return };
    for (key, id, is_length) in KEYS {
        if is_length {
            let sign = if key == "roll_width" { Sign::Positive } else { Sign::NotNegative };
            if let Some(given) = room.quantity::<Length>(key, sign) {
                change(&room, criteria, (key, id), &given);
            }
        } else if let Some(given) = room.quantity::<Ratio>(key, Sign::NotNegative) {
            if given.value > Ratio::from(MOST_SHARE) {
                room.report(too_much(key, &given));
                continue;
            }
            change(&room, criteria, (key, id), &given);
        }
    }
    read_sheet(&room, criteria, core);
    let (lap, roll) = (&criteria.order_lap, &criteria.order_roll_width);
    if lap.value >= roll.value {
        let place = ["lap", "roll_width"].into_iter().find_map(|key| room.value(key)).map(toml::Spanned::span);
        let message = format!("breadths of {} would lap by all of their width", room.both(roll.value));
        let help = format!("`lap` is {} here: it is less than `roll_width`", room.both(lap.value));
        room.report(Problem::at(place.unwrap_or_else(|| room.place()), message).help(help));
    }
    room.close();
}

/// That a share is above one.
pub(super) fn too_much(key: &str, given: &Given<Ratio>) -> Problem {
    let problem =
        Problem::at(given.range.clone(), format!("`{key}` is a share of what is used, and this is more than all"));
    problem.help(match given.text.trim().parse::<f64>() {
        Ok(number) if number <= 100.0 => format!("did you mean `\"{} %\"`?", given.text.trim()),
        _ => format!("write for example `{key} = \"10 %\"`"),
    })
}

/// Length and width of a sheet, `["96 in", "48 in"]`.
fn read_sheet(room: &Room<'_>, criteria: &mut Criteria, core: Option<&CoreFamily>) {
    let Some(value) = room.list("sheet") else { return };
    let DeValue::Array(items) = value.get_ref() else { return };
    if items.len() != 2 {
        let message = format!("a sheet has a length and a width, not {} sizes", items.len());
        room.report(Problem::at(value.span(), message).help("write for example `sheet = [\"96 in\", \"48 in\"]`"));
        return;
    }
    let Some(sheets) = room.quantities::<Length>("sheet", Sign::Positive) else { return };
    let balsa = core.is_some_and(CoreFamily::is_balsa);
    let ids = if balsa {
        ["order-balsa-sheet-length", "order-balsa-sheet-width"]
    } else {
        ["order-sheet-length", "order-sheet-width"]
    };
    for (id, given) in ids.into_iter().zip(&sheets) {
        change(room, criteria, ("sheet", id), given);
    }
}

/// Puts what a key says in place of a criterion.
pub(super) fn change<Q: Dimensioned>(
    room: &Room<'_>,
    criteria: &mut Criteria,
    (key, id): (&str, &str),
    given: &Given<Q>,
) {
    let twice = criteria.records().iter().any(|record| record.id == id && record.changed_by_user);
    if twice {
        let message = format!("`{key}` is given twice: here, and as `{id}` in `[criteria]`");
        room.report(Problem::at(given.range.clone(), message).help("leave out one of the two"));
        return;
    }
    if let Err(error) = criteria.with_override(id, &given.text) {
        room.report(Problem::at(given.range.clone(), error.message));
    }
}
