//! What to buy, as one list; pieces of backing; resin by layer.

use super::{Ordered, heading, words};
use crate::{
    order::{FixingLine, Hardener},
    report::{
        page::{Page, left, right},
        said::counted,
        words::capital,
    },
    section::Skin,
    units::{Area, Length, Mass, MassDensity, System, Volume, show},
};

/// One thing that is bought.
pub(super) struct Row {
    /// `fabric`, `resin`, `coat`, `core`, `board`, `putty`, `filling`, `conduit`, `fixing`.
    pub(super) kind: &'static str,
    pub(super) item: String,
    pub(super) count: Option<usize>,
    pub(super) length: Option<Length>,
    pub(super) area: Option<Area>,
    pub(super) volume: Option<Volume>,
    pub(super) mass: Option<Mass>,
    pub(super) note: String,
}

impl Row {
    fn new(kind: &'static str, item: String) -> Self {
        let note = String::new();
        Self { kind, item, count: None, length: None, area: None, volume: None, mass: None, note }
    }
}

/// All that is bought, in the order of the work.
pub(super) fn rows(ordered: Ordered<'_>) -> Vec<Row> {
    let mut rows: Vec<Row> = Vec::new();
    rows.extend(wet(ordered));
    rows.extend(solid(ordered));
    rows
}

/// Fabrics, resin, coats.
fn wet(ordered: Ordered<'_>) -> Vec<Row> {
    let (order, system) = (ordered.order, ordered.system());
    let mut rows: Vec<Row> = Vec::new();
    rows.extend(order.fabrics.iter().map(|line| Row {
        length: Some(line.length),
        area: Some(line.area),
        mass: Some(line.mass),
        note: words::plies(line, ordered),
        ..Row::new("fabric", words::fabric(line, system))
    }));
    let mix = order.resins.mix;
    rows.push(Row { mass: Some(mix.resin), ..Row::new("resin", order.resins.name.clone()) });
    let of = match mix.kind {
        Hardener::Catalyst => "on top of the resin",
        Hardener::Hardener => "a part of what is mixed",
    };
    rows.push(Row {
        mass: Some(mix.hardener),
        note: of.to_owned(),
        ..Row::new("resin", format!("{} for it", capital(words::hardener(mix.kind))))
    });
    for line in &order.coats {
        rows.push(Row {
            area: Some(line.area),
            mass: Some(line.bought),
            note: format!(
                "{} {}",
                words::per_area(line.in_top / line.area, system),
                match line.catalyst {
                    Some(_) => "as cured",
                    None => "as it dries; thinner and hardener by its label",
                }
            ),
            ..Row::new("coat", line.name.clone())
        });
        let catalyst = line
            .catalyst
            .map(|catalyst| Row { mass: Some(catalyst), ..Row::new("coat", "Catalyst for it".to_owned()) });
        rows.extend(catalyst);
    }
    rows
}

/// Core, boards, putty, conduits, fixings.
fn solid(ordered: Ordered<'_>) -> Vec<Row> {
    let (order, system) = (ordered.order, ordered.system());
    let mut rows: Vec<Row> = Vec::new();
    if let Ok(plan) = &order.core {
        #[expect(clippy::cast_precision_loss, reason = "no more than some hundreds")]
        let area = plan.sheet[0] * plan.sheet[1] * plan.sheets as f64;
        rows.push(Row {
            count: Some(plan.sheets),
            area: Some(area),
            note: format!("sheets of {}", words::sheet(plan.sheet, system)),
            ..Row::new("core", words::core(ordered))
        });
    }
    rows.extend(order.boards.iter().map(|line| Row {
        count: Some(line.pieces),
        area: Some(line.area),
        mass: Some(line.mass),
        note: format!(
            "{}, {} net, {} thick",
            counted(line.pieces, "piece"),
            words::area(line.net, system),
            show(line.thickness, system)
        ),
        ..Row::new("board", line.name.clone())
    }));
    rows.extend(putty(ordered));
    // Into a plain bore nothing is laid.
    let tubes = order.conduits.iter().filter_map(|line| Some((line, line.name.clone()?)));
    rows.extend(tubes.map(|(line, name)| Row {
        count: Some(line.runs),
        length: Some(line.length),
        mass: line.mass,
        note: words::tube(line, system),
        ..Row::new("conduit", name)
    }));
    rows.extend(order.fixings.iter().flat_map(|line| fixing(line, system)));
    rows
}

/// Putty, glue and potting: each kind once, with all that it is for.
fn putty(ordered: Ordered<'_>) -> Vec<Row> {
    let (order, system) = (ordered.order, ordered.system());
    let edge = order.putty.iter().map(|putty| {
        let note = format!(
            "{} deep along {} of rim, {} in plan",
            show(putty.setback, system),
            show(putty.rim, system),
            show(putty.border, system)
        );
        let row =
            Row { volume: Some(putty.volume), mass: Some(putty.mass), note, ..Row::new("putty", putty.name.clone()) };
        (row, putty.catalysed)
    });
    let fillings = order.fillings.iter().map(|own| {
        let name = own.material.clone().unwrap_or_else(|| words::unnamed(own.used).to_owned());
        let row =
            Row { volume: Some(own.volume), mass: own.mass, note: words::filling(own), ..Row::new("filling", name) };
        (row, own.catalysed)
    });
    let mut kinds: Vec<(Row, bool, usize)> = Vec::new();
    for (row, catalysed) in edge.chain(fillings) {
        let known = kinds.iter_mut().find(|(known, ..)| known.item == row.item);
        let Some((all, _, uses)) = known else {
            kinds.push((row, catalysed, 1));
            continue;
        };
        // What each use takes, where there are more than one.
        let each = |row: &Row| {
            format!("{}: {}", row.volume.map_or_else(String::new, |of| words::volume(of, system)), row.note)
        };
        if *uses == 1 {
            all.note = each(all);
        }
        all.note = format!("{}; {}", all.note, each(&row));
        all.volume = all.volume.zip(row.volume).map(|(known, more)| known + more);
        all.mass = all.mass.zip(row.mass).map(|(known, more)| known + more);
        *uses += 1;
    }
    // What its mass is made of.
    for (row, ..) in &mut kinds {
        if let Some((volume, mass)) = row.volume.zip(row.mass) {
            let density: MassDensity = mass / volume;
            row.note = format!("{}; {}", row.note, show(density, system));
        }
    }
    let share = ordered.top.criteria.order_catalyst_share.value;
    let with_catalyst = kinds.into_iter().flat_map(|(row, catalysed, _)| {
        let catalyst = row.mass.filter(|_| catalysed).map(|mass| Row {
            mass: Some(mass * share),
            note: "as much as for resin; its label goes before".to_owned(),
            ..Row::new(row.kind, "Catalyst for it".to_owned())
        });
        std::iter::once(row).chain(catalyst)
    });
    with_catalyst.collect()
}

/// A kind of fixing, and what goes with it by number.
fn fixing(line: &FixingLine, system: System) -> Vec<Row> {
    let length = line.shortest.map_or_else(String::new, |shortest| {
        let foot = if line.foot_counted { "" } else { " and the foot" };
        format!("; {}{foot} long at the least, under the head", show(shortest, system))
    });
    let other: Vec<String> =
        line.with.iter().filter(|part| !part.counted()).map(|part| words::part(part, system)).collect();
    let other = if other.is_empty() { String::new() } else { format!("; {}", other.join(", ")) };
    let grade = line.grade.as_ref().map_or_else(String::new, |grade| format!(", {grade}"));
    let own = Row {
        count: Some(line.bought),
        note: format!("{} set for {}, the rest spares{length}{other}", line.set, line.holds.join(", ")),
        ..Row::new("fixing", format!("{}: {}{grade}", line.name, line.what))
    };
    let parts = line.with.iter().filter(|part| part.counted()).map(|part| Row {
        count: Some(line.bought),
        ..Row::new("fixing", format!("{}: {}", line.name, words::part(part, system)))
    });
    std::iter::once(own).chain(parts).collect()
}

/// Widths of the columns of names and of layers.
const NAMES: usize = 40;
const LAYERS: usize = 50;

pub(super) fn buy(page: &mut Page, ordered: Ordered<'_>) {
    heading(page, "What to buy, waste and spares with it");
    let system = ordered.system();
    let names = NAMES.min(page.width().saturating_sub(35));
    let line = |name: &str, cells: [&str; 3]| {
        format!("  {}{}{}{}", left(name, names), right(cells[0], 11), right(cells[1], 11), right(cells[2], 11))
    };
    page.line(&line("", ["amount", "area", "mass"]));
    for row in rows(ordered) {
        let amount = row
            .length
            .map(|length| words::run(length, system))
            .or_else(|| row.volume.map(|volume| words::volume(volume, system)))
            .or_else(|| row.count.filter(|_| row.kind != "board").map(|count| count.to_string()))
            .unwrap_or_default();
        let area = row.area.map_or_else(String::new, |area| words::area(area, system));
        let mass = row.mass.map_or_else(String::new, |mass| words::mass(mass, system));
        let (head, more) = folded(&row.item, names);
        page.line(&line(&head, [&amount, &area, &mass]));
        for more in more {
            page.line(&format!("    {more}"));
        }
        if !row.note.is_empty() {
            page.paragraph("      ", &row.note);
        }
    }
}

/// A name in lines that are no wider than its column.
fn folded(name: &str, wide: usize) -> (String, Vec<String>) {
    let mut lines: Vec<String> = vec![String::new()];
    for word in name.split_whitespace() {
        let room = if lines.len() == 1 { wide } else { wide + 20 };
        match lines.last_mut() {
            Some(line) if line.is_empty() => line.push_str(word),
            Some(line) if line.chars().count() + 1 + word.chars().count() <= room => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    let more = lines.split_off(1);
    (lines.concat(), more)
}

pub(super) fn pieces(page: &mut Page, ordered: Ordered<'_>) {
    let (order, system) = (ordered.order, ordered.system());
    if order.backings.is_empty() {
        return;
    }
    heading(page, "Backing, piece by piece (length by width by thickness)");
    for piece in &order.backings {
        let bent =
            if piece.straight > 1 { format!(", in {} straight pieces, mitred", piece.straight) } else { String::new() };
        page.paragraph(
            &format!("  {} ", left(&piece.name, 18)),
            &format!(
                "{} by {} by {}{bent}; {}; {}",
                show(piece.length, system),
                show(piece.width, system),
                show(piece.thickness, system),
                words::mass(piece.mass, system),
                piece.board
            ),
        );
    }
}

pub(super) fn resin(page: &mut Page, ordered: Ordered<'_>) {
    let (resins, system) = (&ordered.order.resins, ordered.system());
    heading(page, "Mixed resin by layer, from the sky down");
    let layers = LAYERS.min(page.width().saturating_sub(41));
    let line = |name: &str, [each, in_top, bought]: [&str; 3]| {
        format!("  {}{}{}{}", left(name, layers), right(each, 15), right(in_top, 12), right(bought, 12))
    };
    page.line(&line("", ["of each", "in the top", "to buy"]));
    for own in &resins.lines {
        let skin = match own.skin {
            Some(Skin::Outer) => "outer: ",
            Some(Skin::Inner) => "inner: ",
            None => "core: ",
        };
        let times = if own.times > 1 && own.skin.is_some() { format!("{} × ", own.times) } else { String::new() };
        let name = format!("{skin}{times}{}", own.layer);
        let (head, more) = folded(&name, layers);
        let each = words::per_area(own.per_area, system);
        page.line(&line(&head, [&each, &words::mass(own.in_top, system), &words::mass(own.bought, system)]));
        for more in more {
            page.line(&format!("    {more}"));
        }
    }
    page.line(&line("all", ["", &words::mass(resins.in_top(), system), &words::mass(resins.bought(), system)]));
}
