//! Readings of a proof test: a table of values parted by commas.

use std::ops::Range;

use super::{FileProblems, NamedText, Problem, nearest};
use crate::{
    proof::{Head, Proof, Readings, Row},
    units::{Length, parse},
};

/// What a file of readings looks like.
const EXAMPLE: &str = "bags, A (mm), B (mm)";

/// A cell with its place in the file.
#[derive(Clone)]
struct Cell<'t> {
    text: &'t str,
    range: Range<usize>,
}

/// What stands in a column.
enum Column {
    Bags,
    /// A gauge, as its place on the card, the length of the unit that it was read in, and which it is.
    Gauge(usize, Length, Option<Head>),
    /// Something that cannot be read, which is reported.
    Unknown,
}

/// Reads what the gauges of a card read, step by step, in the order of the test.
///
/// The first line names the columns: `bags`, and gauges by their letters with a unit, `A (mm)`. An empty cell is a gauge
/// that was not read; lines that begin with `#` and empty lines say nothing.
///
/// # Errors
///
/// Everything that is wrong with the file.
pub fn read_readings(file: &NamedText, proof: &Proof) -> Result<Readings, FileProblems> {
    let mut problems = Vec::new();
    let mut lines = lines(&file.text);
    let mut heads = vec![None; proof.gauges.len()];
    let rows = match lines.next() {
        None => {
            let help = format!("its first line names the columns: `{EXAMPLE}`");
            problems.push(Problem::at(0..0, "there are no readings in it").help(help));
            Vec::new()
        }
        Some(head) => {
            if let Some(problem) = semicolons(&head) {
                // Whatever else is wrong comes of it.
                return Err(FileProblems { file: file.name.clone(), text: file.text.clone(), problems: vec![problem] });
            }
            let columns = columns(&head, proof, &mut problems);
            for column in &columns {
                if let Column::Gauge(gauge, _, head) = column {
                    heads[*gauge] = *head;
                }
            }
            lines.filter_map(|line| row(&line, &columns, proof, &mut problems)).collect()
        }
    };
    if problems.is_empty() && rows.iter().map(|row| row.bags).collect::<std::collections::BTreeSet<_>>().len() < 2 {
        problems.push(
            Problem::at(0..0, "readings at one load say nothing of stiffness")
                .help("read without bags (`0`) and at one step or more"),
        );
    }
    if problems.is_empty() {
        return Ok(Readings { rows, heads });
    }
    Err(FileProblems { file: file.name.clone(), text: file.text.clone(), problems })
}

/// Lines that say something, cell by cell.
fn lines(text: &str) -> impl Iterator<Item = Vec<Cell<'_>>> {
    let mut start = 0;
    text.split_inclusive('\n').filter_map(move |line| {
        let begin = start;
        start += line.len();
        let said = line.trim();
        if said.is_empty() || said.starts_with('#') {
            return None;
        }
        let mut cells = Vec::new();
        let mut at = begin;
        for cell in line.trim_end_matches(['\n', '\r']).split(',') {
            let lead = cell.len() - cell.trim_start().len();
            let text = cell.trim();
            cells.push(Cell { text, range: at + lead..at + lead + text.len() });
            at += cell.len() + 1;
        }
        Some(cells)
    })
}

/// That columns are parted by semicolons, as spreadsheets do whose decimals have a comma.
fn semicolons(head: &[Cell<'_>]) -> Option<Problem> {
    let cell = head.iter().find(|cell| cell.text.contains(';'))?;
    let at = cell.range.start + cell.text.find(';')?;
    let help = format!("columns are parted by commas, and decimals have a point: `{EXAMPLE}`, then `4, 1.25, 0.80`");
    Some(Problem::at(at..at + 1, "a semicolon stands between columns").help(help))
}

fn columns(head: &[Cell<'_>], proof: &Proof, problems: &mut Vec<Problem>) -> Vec<Column> {
    let names: Vec<&str> = proof.gauges.iter().map(|gauge| gauge.name.as_str()).collect();
    let mut columns: Vec<Column> = Vec::with_capacity(head.len());
    for cell in head {
        if cell.text == "bags" {
            columns.push(Column::Bags);
            continue;
        }
        let (name, unit) = match cell.text.split_once('(') {
            Some((name, rest)) => (name.trim(), rest.trim_end().strip_suffix(')').map(str::trim)),
            None => (cell.text, None),
        };
        let known = names.iter().position(|known| *known == name);
        let column = match (known, unit.map(|unit| parse::<Length>(&format!("1 {unit}")))) {
            (None, _) => {
                let problem = Problem::at(cell.range.clone(), format!("there is no gauge `{name}` on the card"));
                let known = names.iter().copied().chain(["bags"]);
                problems.push(match nearest(name, known) {
                    Some(near) => problem.help(format!("did you mean `{near}`?")),
                    None => problem.help(format!("its columns are bags, {}", names.join(", "))),
                });
                Column::Unknown
            }
            (Some(_), None) => {
                let message = format!("gauge {name} does not say in which unit it was read");
                let problem = Problem::at(cell.range.clone(), message);
                problems.push(problem.help(format!("write `{name} (mil)`, `{name} (mm)` or `{name} (in)`")));
                Column::Unknown
            }
            (Some(_), Some(Err(_))) => {
                let problem = Problem::at(cell.range.clone(), format!("`{}` is no unit of length", unit.unwrap_or("")));
                problems.push(problem.help(format!("write `{name} (mil)`, `{name} (mm)` or `{name} (in)`")));
                Column::Unknown
            }
            (Some(gauge), Some(Ok(length))) => {
                let twice = columns.iter().any(|column| matches!(column, Column::Gauge(known, ..) if *known == gauge));
                if twice {
                    let problem = Problem::at(cell.range.clone(), format!("gauge {name} has two columns"));
                    problems.push(problem.help("leave out one of the two"));
                }
                Column::Gauge(gauge, length, unit.and_then(named))
            }
        };
        columns.push(column);
    }
    let absent = |wanted: fn(&Column) -> bool| !columns.iter().any(wanted);
    let whole = head.first().map_or(0..0, |first| first.range.clone());
    if absent(|column| matches!(column, Column::Bags)) {
        let problem = Problem::at(whole, "no column says how many `bags` lay on the top");
        problems.push(problem.help(format!("the first line names the columns: `{EXAMPLE}`")));
    } else if absent(|column| !matches!(column, Column::Bags)) {
        let problem = Problem::at(whole, "no column has readings of a gauge");
        problems.push(problem.help(format!("its columns are bags, {}", names.join(", "))));
    }
    columns
}

/// The units that are taken for each other.
fn named(unit: &str) -> Option<Head> {
    let length = |unit: &str| parse::<Length>(&format!("1 {unit}")).ok();
    let known = [("mm", Head::Millimetres), ("in", Head::Inches), ("mil", Head::Thousandths)];
    known.into_iter().find(|(known, _)| length(known) == length(unit)).map(|(_, head)| head)
}

fn row(cells: &[Cell<'_>], columns: &[Column], proof: &Proof, problems: &mut Vec<Problem>) -> Option<Row> {
    let last = cells.last()?;
    if cells.len() != columns.len() {
        let message = format!("this line has {} cells, the first line {}", cells.len(), columns.len());
        let range = cells.first().map_or(0, |first| first.range.start)..last.range.end;
        problems.push(
            Problem::at(range, message).help("a gauge that was not read leaves its cell empty; decimals have a point"),
        );
        return None;
    }
    let most = proof.steps.last().map_or(0, |last| last.bags);
    let mut readings = vec![None; proof.gauges.len()];
    let mut bags = None;
    for (cell, column) in cells.iter().zip(columns) {
        match column {
            Column::Bags => match cell.text.parse::<usize>() {
                Ok(number) if number <= most => bags = Some(number),
                Ok(number) => problems.push(
                    Problem::at(cell.range.clone(), format!("{number} bags are more than the test has"))
                        .help(format!("the card has {most} of them: is it the card of this test?")),
                ),
                Err(_) => problems.push(
                    Problem::at(cell.range.clone(), "`bags` is a whole number")
                        .help(format!("write how many lay on the top: from 0 to {most}")),
                ),
            },
            Column::Gauge(gauge, unit, _) if !cell.text.is_empty() => match cell.text.parse::<f64>() {
                Ok(number) if number.is_finite() => readings[*gauge] = Some(*unit * number),
                _ => problems.push(
                    Problem::at(cell.range.clone(), format!("`{}` is not a number", cell.text))
                        .help("write for example `1.25`; the unit stands in the first line, behind the gauge"),
                ),
            },
            Column::Gauge(..) | Column::Unknown => {}
        }
    }
    Some(Row { bags: bags?, readings })
}
