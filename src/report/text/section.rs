//! The top cut along a line, for a wide terminal: along it to scale, its depth not.

use crate::{
    geometry::Axis,
    plan::{Cut, Filled, Plan},
    report::{Report, page::Page},
    top::{Forward, Scope, Top},
    units::{Length, Ratio, show},
};

/// Narrower pages have no room for it.
const WIDE: usize = 100;

/// What the letters of the drawing are.
const CORE: char = '·';
const BOARD: char = '█';
const EDGE: char = '▒';
const CONDUIT: char = 'o';
const FIXING: char = '│';
const PIPE: char = '◯';
const SEAT: char = '▔';

pub(super) fn section(page: &mut Page, report: &Report<'_>, width: usize) {
    let top = report.top;
    if width < WIDE || top.scope == Scope::Patch {
        return;
    }
    let plan = Plan::of(top);
    let cut = Cut::telling(top, &plan.fixings);
    let station = show(cut.station, top.report);
    page.heading(&match cut.axis {
        Axis::Y => format!("Section across at x {station}, looking towards the bow (its depth not to scale)"),
        Axis::X => format!("Section along at y {station} (its depth not to scale)"),
    });
    let columns = width.min(120) - 4;
    let place = |at: Length| column(top, &cut, at, columns);
    let mut inside = vec![' '; columns];
    let mut skins = vec![' '; columns];
    for run in &cut.runs {
        let letter = match run.filled {
            Filled::Core => CORE,
            Filled::Backing(_) => BOARD,
            Filled::Edge => EDGE,
            Filled::Nothing => continue,
        };
        let (a, b) = (place(run.from), place(run.to));
        for at in a.min(b)..=a.max(b) {
            (inside[at], skins[at]) = (letter, '━');
        }
    }
    let mut below = vec![' '; columns];
    let mark = |row: &mut Vec<char>, at: Length, letter: char| row[place(at)] = letter;
    cut.conduits.iter().for_each(|crossed| mark(&mut inside, crossed.at, CONDUIT));
    for (index, _) in &cut.fixings {
        mark(&mut inside, plan.fixings[*index].at.along(cut.axis), FIXING);
    }
    for crossed in &cut.supports {
        let letter = if top.supports[crossed.index].pipe().is_some() { PIPE } else { SEAT };
        mark(&mut below, crossed.at, letter);
    }
    let [left, right] = match (cut.axis, top.bow()) {
        (Axis::Y, _) => ["port", "starboard"],
        (Axis::X, Forward::Right) => ["stern", "bow"],
        (Axis::X, Forward::Left) => ["bow", "stern"],
    };
    page.line(&format!("  {left}{}{right}", " ".repeat(columns - left.len() - right.len())));
    for row in [&skins, &inside, &skins, &below] {
        page.line(&format!("  {}", row.iter().collect::<String>().trim_end()));
    }
    page.paragraph("  ", &key(&cut, [&inside, &below]));
}

/// The column of a place: across, port on the left.
fn column(top: &Top, cut: &Cut, at: Length, columns: usize) -> usize {
    let share: Ratio = at / top.outline.size(cut.axis);
    let turned = cut.axis == Axis::Y && top.bow() == Forward::Right;
    let share = if turned { 1.0 - share.value } else { share.value };
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_precision_loss,
        clippy::cast_sign_loss,
        reason = "a hundred columns, and a share from none to all"
    )]
    let column = (share.clamp(0.0, 1.0) * (columns - 1) as f64).round() as usize;
    column
}

/// What those letters are that were drawn.
fn key(cut: &Cut, rows: [&Vec<char>; 2]) -> String {
    let drawn = |letter: char| rows.iter().any(|row| row.contains(&letter));
    let words = [
        ('━', "skin"),
        (CORE, "core"),
        (BOARD, "backing"),
        (EDGE, "filled edge"),
        (CONDUIT, "conduit"),
        (FIXING, "fixing"),
        (PIPE, "pipe below"),
        (SEAT, "wall or pad below"),
    ];
    let shown = words.into_iter().filter(|(letter, _)| *letter == '━' && !cut.runs.is_empty() || drawn(*letter));
    shown.map(|(letter, word)| format!("{letter} {word}")).collect::<Vec<_>>().join("   ")
}
