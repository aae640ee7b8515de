//! The order as a table of values parted by commas, for a spreadsheet.

use super::{Ordered, answer, buy, lifting, notes};
use crate::{
    check::CHECKS,
    geometry::Axis,
    order::{LiftCheck, Order},
    report::{
        choice::{
            csv::{digits, line},
            words::in_unit,
        },
        not_for_building::not_for_building,
        words as shared,
    },
    top::Top,
    units::{Area, Dimensioned, Length, Mass, System, Volume},
};

/// Everything that is bought, then pieces of core and backing, weights and slings, one a line below one line of heads; units
/// in the heads. A cell is empty where there is nothing to say. Cells and ends of lines as in
/// [`choice_to_csv`](crate::report::choice_to_csv).
///
/// `list` is `warning` (that it is not for building), `buy`, `core piece`, `seam`, `backing piece`, `resin layer`, `weight`, `sling`, `moment` (about the middle of the frame at
/// `x`, `y`), `lift check` (`value` is the share that is used) or `assumption`. For a piece of core `x`, `y`
/// are its corner on the top and `count` is the sheet that it is cut from; a seam runs from `x`, `y`, and `note` says what
/// it breaks.
#[must_use]
pub fn order_to_csv(order: &Order, top: &Top) -> String {
    let ordered = Ordered { order, top };
    let units = Units::of(ordered.system());
    let Units { length, run, area, volume, mass } = units;
    let heads = [
        "list".to_owned(),
        "kind".to_owned(),
        "item".to_owned(),
        "count".to_owned(),
        format!("run ({run})"),
        format!("length ({length})"),
        format!("width ({length})"),
        format!("thickness ({length})"),
        format!("area ({area})"),
        format!("volume ({volume})"),
        format!("mass ({mass})"),
        format!("x ({length})"),
        format!("y ({length})"),
        format!("z ({length})"),
        "note".to_owned(),
        "value".to_owned(),
        "unit".to_owned(),
    ];
    let mut text = line(&heads);
    for row in rows(ordered) {
        text.push_str(&line(&row.cells(units)));
    }
    text
}

#[derive(Clone, Copy)]
struct Units {
    length: &'static str,
    run: &'static str,
    area: &'static str,
    volume: &'static str,
    mass: &'static str,
}

impl Units {
    const fn of(system: System) -> Self {
        match system {
            System::Us => Self { length: "in", run: "yd", area: "ft2", volume: "gal", mass: "lb" },
            System::Si => Self { length: "mm", run: "m", area: "m2", volume: "L", mass: "kg" },
        }
    }
}

#[derive(Default)]
struct Row {
    list: &'static str,
    kind: &'static str,
    item: String,
    count: Option<usize>,
    run: Option<Length>,
    size: [Option<Length>; 3],
    area: Option<Area>,
    volume: Option<Volume>,
    mass: Option<Mass>,
    at: [Option<Length>; 3],
    note: String,
    /// A number of another kind, with its unit.
    value: String,
    unit: &'static str,
}

impl Row {
    fn cells(&self, units: Units) -> [String; 17] {
        fn cell<Q: Dimensioned>(of: Option<Q>, unit: &str) -> String {
            of.map_or_else(String::new, |of| digits(in_unit(of, unit)))
        }
        let [length, width, thickness] = self.size.map(|size| cell(size, units.length));
        let [x, y, z] = self.at.map(|at| cell(at, units.length));
        [
            self.list.to_owned(),
            self.kind.to_owned(),
            plain(&self.item),
            self.count.map_or_else(String::new, |count| count.to_string()),
            cell(self.run, units.run),
            length,
            width,
            thickness,
            cell(self.area, units.area),
            cell(self.volume, units.volume),
            cell(self.mass, units.mass),
            x,
            y,
            z,
            plain(&self.note),
            plain(&self.value),
            plain(self.unit),
        ]
    }
}

/// Letters that every spreadsheet reads.
fn plain(text: &str) -> String {
    text.replace('×', "x")
        .replace(['−', '—'], "-")
        .replace('²', "2")
        .replace('³', "3")
        .replace('±', "+/-")
        .replace('·', ".")
}

fn rows(ordered: Ordered<'_>) -> Vec<Row> {
    let order = ordered.order;
    let mut rows: Vec<Row> = not_for_building(&order.standing)
        .map(|note| Row { list: "warning", kind: "check", note, ..Row::default() })
        .into_iter()
        .collect();
    rows.extend(buy::rows(ordered).into_iter().map(|row| Row {
        list: "buy",
        kind: row.kind,
        item: row.item,
        count: row.count,
        run: row.length,
        area: row.area,
        volume: row.volume,
        mass: row.mass,
        note: row.note,
        ..Row::default()
    }));
    if let Ok(plan) = &order.core {
        rows.extend(plan.pieces.iter().enumerate().map(|(number, piece)| Row {
            list: "core piece",
            kind: "core",
            item: (number + 1).to_string(),
            count: Some(piece.from.sheet),
            size: [Some(piece.length), Some(piece.width), Some(ordered.top.core.thickness)],
            area: Some(piece.area),
            at: [Some(piece.at.x), Some(piece.at.y), None],
            note: piece.cut_out.join(", "),
            ..Row::default()
        }));
        rows.extend(plan.seams.iter().enumerate().map(|(number, seam)| Row {
            list: "seam",
            kind: "core",
            item: (number + 1).to_string(),
            size: [Some(seam.length), None, None],
            at: [Some(seam.from.x), Some(seam.from.y), None],
            note: super::words::breaks(seam, ordered).unwrap_or_default(),
            ..Row::default()
        }));
    }
    rows.extend(order.backings.iter().map(|piece| Row {
        list: "backing piece",
        kind: "board",
        item: piece.name.clone(),
        size: [Some(piece.length), Some(piece.width), Some(piece.thickness)],
        mass: Some(piece.mass),
        note: piece.board.clone(),
        ..Row::default()
    }));
    rows.extend(order.resins.lines.iter().map(|own| Row {
        list: "resin layer",
        kind: "resin",
        item: own.layer.clone(),
        count: Some(own.times),
        mass: Some(own.bought),
        ..Row::default()
    }));
    rows.extend(weights(ordered));
    rows.extend(moments(ordered));
    rows.extend(lift_checks(ordered));
    rows.extend(notes::records(ordered).into_iter().map(|record| Row {
        list: "assumption",
        kind: if record.changed_by_user { "of the file" } else { record.mark.words() },
        item: record.id.clone(),
        value: record.as_written.clone(),
        note: record.title.clone(),
        ..Row::default()
    }));
    rows
}

/// Moments of the weight about the middle of the frame.
fn moments(ordered: Ordered<'_>) -> Vec<Row> {
    let (moments, bow) = (&ordered.order.moments, ordered.top.bow());
    let unit = match ordered.system() {
        System::Us => "lbf.ft",
        System::Si => "N.m",
    };
    let names = ["bare", "with gear"];
    let of_each = names.into_iter().zip(&moments.of).flat_map(|(name, of)| {
        let tips = |axis, moment| format!("tips towards {}", bow.tips(axis, moment));
        [
            ("about the axis across", of.across.abs(), tips(Axis::X, of.across)),
            ("about the axis along", of.along.abs(), tips(Axis::Y, of.along)),
            ("about the plane of the frame", of.sideways, "for each g from the side".to_owned()),
        ]
        .map(|(about, moment, note)| Row {
            list: "moment",
            kind: name,
            item: about.to_owned(),
            at: [Some(moments.about.x), Some(moments.about.y), None],
            value: digits(in_unit(moment, unit.replace('.', "·").as_str())),
            unit,
            note,
            ..Row::default()
        })
    });
    of_each.collect()
}

/// What the check of lifting says, and what it could not look at.
fn lift_checks(ordered: Ordered<'_>) -> Vec<Row> {
    let row = |kind, item: String, value, note| Row { list: "lift check", kind, item, value, note, ..Row::default() };
    let system = ordered.system();
    match ordered.order.lifting.as_ref().map(|lifting| &lifting.check) {
        None => vec![row("not made", "lifting".to_owned(), String::new(), answer::no_slings(ordered))],
        Some(LiftCheck::NotMade(reason)) => {
            vec![row("not made", "lifting".to_owned(), String::new(), reason.clone())]
        }
        Some(LiftCheck::Made { outcomes, open }) => {
            let made = outcomes.iter().map(|outcome| {
                let [demand, allowable] = [outcome.demand, outcome.allowable].map(|of| shared::measure(of, system));
                row(
                    if outcome.passes { "pass" } else { "FAIL" },
                    CHECKS[outcome.check].title().to_owned(),
                    digits(outcome.used.value),
                    format!("used{}; demand {demand}, allowable {allowable}", lifting::on(outcome.on)),
                )
            });
            let open = open.iter().map(|(check, reason)| {
                row("not made", CHECKS[*check].title().to_owned(), String::new(), reason.clone())
            });
            made.chain(open).collect()
        }
    }
}

fn weights(ordered: Ordered<'_>) -> Vec<Row> {
    let (weight, order) = (&ordered.order.weight, ordered.order);
    let of = |item: &str, mass, [x, y, z]: [Length; 3]| Row {
        list: "weight",
        item: item.to_owned(),
        mass: Some(mass),
        at: [Some(x), Some(y), Some(z)],
        ..Row::default()
    };
    let mut rows: Vec<Row> =
        weight.items.iter().map(|item| of(&item.name, item.mass, [item.at.x, item.at.y, item.height])).collect();
    rows.push(of("bare", weight.bare, [weight.bare_centre.x, weight.bare_centre.y, weight.bare_height]));
    rows.push(of("with gear", weight.total, [weight.centre.x, weight.centre.y, weight.height]));
    let slings = order.lifting.iter().flat_map(|lifting| &lifting.slings).enumerate();
    rows.extend(slings.map(|(number, sling)| Row {
        list: "sling",
        item: (number + 1).to_string(),
        at: [Some(sling.at.x), Some(sling.at.y), None],
        note: sling.backing.clone().unwrap_or_default(),
        ..Row::default()
    }));
    rows
}
