//! Those found as a table of values parted by commas, for a spreadsheet.

use serde_json::Value;
use uom::si::ratio::{percent, ratio};

use super::{
    Choice,
    always::failing,
    words::{Units, checks, in_unit, margin_of, skin, units},
};
use crate::{
    check::CHECKS,
    choice::{Chosen, Found, Space},
    report::json::number,
    top::Top,
};

/// Those found, one a line below one line of heads; units in the heads, in the system of the report, the same for every
/// file of that system but for the currency of costs. A cell is empty where there is nothing to say; where "not judged" is not, those
/// checks cannot be made whatever is laid up, and the line passes all others; so it does where "fails anyway" is not, but for that.
///
/// Numbers have nine digits and a point. Cells with a comma, a quotation mark or an end of a line stand in quotation marks,
/// those within doubled; lines end with CR LF, as in RFC 4180. The program itself writes nothing but ASCII, which every
/// spreadsheet reads.
#[must_use]
pub fn choice_to_csv(chosen: &Chosen, space: &Space, top: &Top) -> String {
    let choice = Choice { chosen, space, top };
    let Units { length, mass, areal, density } = units(choice.system());
    let heads = [
        "family".to_owned(),
        "core".to_owned(),
        format!("density ({density})"),
        format!("core thickness ({length})"),
        "outer skin".to_owned(),
        "inner skin".to_owned(),
        format!("thickness ({length})"),
        format!("weight ({mass})"),
        format!("weight per area ({areal})"),
        "governs".to_owned(),
        "method".to_owned(),
        "load case".to_owned(),
        "used (%)".to_owned(),
        "margin".to_owned(),
        "used by hand (%)".to_owned(),
        "used by plate (%)".to_owned(),
        format!("sag ({length})"),
        "pipes and backing".to_owned(),
        space.prices.as_ref().map_or_else(|| "cost".to_owned(), |prices| format!("cost ({})", prices.currency)),
        format!("pipes ({mass})"),
        "not judged".to_owned(),
        "fails anyway".to_owned(),
    ];
    let mut text = line(&heads);
    for found in &chosen.found {
        text.push_str(&line(&cells(choice, found)));
    }
    text
}

fn cells(choice: Choice<'_>, found: &Found) -> [String; 22] {
    let Units { length, mass, areal, density } = units(choice.system());
    let laid = choice.laid(found);
    let worst = found.governs.as_ref();
    let share = |of: Option<crate::units::Ratio>| of.map_or_else(String::new, |of| digits(of.get::<percent>()));
    [
        laid.core.family.id.clone(),
        laid.core.material.name.clone(),
        digits(in_unit(laid.core.material.density, density)),
        digits(in_unit(laid.core.thickness, length)),
        skin(laid.outer).replace('×', "x"),
        skin(laid.inner).replace('×', "x"),
        digits(in_unit(found.thickness, length)),
        digits(in_unit(found.mass, mass)),
        digits(in_unit(choice.areal(found), areal)),
        worst.map_or_else(String::new, |worst| CHECKS[worst.check].title().to_owned()),
        worst.map_or_else(String::new, |worst| worst.method.words().to_owned()),
        found.case.clone().unwrap_or_default(),
        share(worst.and_then(crate::check::Outcome::utilisation)),
        worst.and_then(margin_of).map_or_else(String::new, |margin| digits(margin.get::<ratio>())),
        share(found.by_hand),
        share(found.by_plate),
        found.sag.map_or_else(String::new, |sag| digits(in_unit(sag, length))),
        choice.arranged(found).join("; "),
        found.cost.map_or_else(String::new, |cost| digits(cost.amount())),
        found.frame.map_or_else(String::new, |frame| digits(in_unit(frame, mass))),
        checks(&found.open).join("; "),
        failing(choice, found).join("; "),
    ]
}

pub(in crate::report) fn digits(value: f64) -> String {
    match number(value) {
        Value::Null => String::new(),
        number => number.to_string(),
    }
}

pub(in crate::report) fn line(cells: &[String]) -> String {
    format!("{}\r\n", cells.iter().map(|cell| quoted(cell)).collect::<Vec<_>>().join(","))
}

fn quoted(cell: &str) -> String {
    if cell.contains([',', '"', '\r', '\n']) { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::quoted;

    #[test]
    fn a_cell_is_quoted_where_it_must_be() {
        let cells = [r#"mat 1 oz, "fine""#, "plain × 2", "two\nlines"].map(quoted);
        assert_eq!(cells, [r#""mat 1 oz, ""fine""""#, "plain × 2", "\"two\nlines\""]);
    }
}
