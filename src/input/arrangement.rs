//! Pipes and backing that may be chosen in place of the file's own.

use std::ops::Range;

use toml::de::DeValue;

use super::{
    problem::{Problem, Sink, nearest},
    reader::{Given, Room, decimal},
    unknown_name,
};
use crate::{
    choice::{Arrangement, Arranging, BackingOptions, NoArrangement},
    material::MaterialTable,
    top::Top,
    units::{Length, Sign},
};

/// A top does not stand on more pipes than this in one row. Our choice.
const MOST_PIPES: usize = 20;

/// What a file asks to try, each with its place.
#[derive(Default)]
pub(super) struct AskedArranging {
    pipes: Vec<Given<usize>>,
    overhangs: Vec<Given<Length>>,
    backings: Vec<AskedBacking>,
}

struct AskedBacking {
    name: Given<String>,
    widths: Vec<Given<Length>>,
    boards: Vec<Given<String>>,
}

pub(super) fn read_arranging(room: &Room<'_>, table: &MaterialTable) -> AskedArranging {
    let backings = room.rooms("backing").into_iter().filter_map(|room| {
        let name = room.text("name");
        room.missing("name", "\"radar pad\"");
        let widths = room.quantities("widths", Sign::Positive).unwrap_or_default();
        let boards = room.texts("boards").unwrap_or_default().into_iter().flatten();
        let known = |board: &Given<String>| match table.board(&board.value) {
            Ok(_) => true,
            Err(unknown) => {
                unknown_name(&room, board, &unknown);
                false
            }
        };
        let boards: Vec<Given<String>> = boards.filter(known).collect();
        if room.value("widths").is_none() && room.value("boards").is_none() {
            room.report(room.problem("nothing of it is to be chosen").help("give `widths` or `boards`, or both"));
        }
        room.close();
        Some(AskedBacking { name: name?, widths, boards })
    });
    AskedArranging {
        backings: backings.collect(),
        pipes: read_pipes(room),
        overhangs: room.quantities("overhangs", Sign::Positive).unwrap_or_default(),
    }
}

fn read_pipes(room: &Room<'_>) -> Vec<Given<usize>> {
    let Some(list) = room.list("pipes") else { return Vec::new() };
    let DeValue::Array(items) = list.get_ref() else { return Vec::new() };
    if items.is_empty() {
        room.report(
            Problem::at(list.span(), "no number of pipes is given")
                .help("write for example `pipes = [3, 4]`, or leave `pipes` out to keep those of the file"),
        );
    }
    let pipes = items.iter().filter_map(|item| {
        let text = match item.get_ref() {
            DeValue::Integer(digits) => decimal(digits),
            _ => String::new(),
        };
        let count = text.parse::<usize>().ok().filter(|count| (2..=MOST_PIPES).contains(count));
        if count.is_none() {
            room.report(
                Problem::at(item.span(), format!("a number of pipes is a whole number from 2 to {MOST_PIPES}"))
                    .help("write for example `pipes = [3, 4]`: they are spaced evenly between the outer two"),
            );
        }
        Some(Given { value: count?, text, range: item.span() })
    });
    pipes.collect()
}

impl AskedArranging {
    /// All arrangements of a top; none where one of them cannot be, which is reported.
    pub(super) fn arrangements(self, top: &Top, place: &Range<usize>, sink: &Sink) -> Option<Vec<Arrangement>> {
        let mut faultless = true;
        let mut fault = |problem: Problem| {
            sink.report(problem);
            faultless = false;
        };
        let mut asked = Arranging::default();
        // One at a time first, so that what cannot be is named at its own place.
        let mut one = |place: &Range<usize>, only: Arranging| match Arrangement::all(top, &only) {
            Ok(_) => true,
            Err(none) => {
                fault(problem(place.clone(), &none, top));
                false
            }
        };
        for pipes in self.pipes {
            // What one number meets the others of the list mostly meet too.
            if !one(&pipes.range, Arranging { pipes: vec![pipes.value], ..Arranging::default() }) {
                break;
            }
            asked.pipes.push(pipes.value);
        }
        for overhang in self.overhangs {
            if one(&overhang.range, Arranging { overhangs: vec![overhang.value], ..Arranging::default() }) {
                asked.overhangs.push(overhang.value);
            }
        }
        for options in self.backings {
            let Some(backing) = top.backings.iter().position(|backing| backing.name == options.name.value) else {
                sink.report(no_backing(&options.name, top));
                return None;
            };
            let mut of = BackingOptions { backing, ..BackingOptions::default() };
            let only = |of: BackingOptions| Arranging { backings: vec![of], ..Arranging::default() };
            for width in options.widths {
                if one(&width.range, only(BackingOptions { backing, widths: vec![width.value], boards: Vec::new() })) {
                    of.widths.push(width.value);
                }
            }
            for board in options.boards {
                let boards = vec![board.value.clone()];
                if one(&board.range, only(BackingOptions { backing, widths: Vec::new(), boards })) {
                    of.boards.push(board.value);
                }
            }
            asked.backings.push(of);
        }
        match Arrangement::all(top, &asked) {
            Ok(all) => faultless.then_some(all),
            Err(none) => {
                if faultless {
                    let problem = problem(place.clone(), &none, top);
                    let message = format!("two options do not go together: {}", problem.message);
                    sink.report(Problem { message, ..problem });
                }
                None
            }
        }
    }
}

fn problem(place: Range<usize>, none: &NoArrangement, top: &Top) -> Problem {
    let [cause, help] = none.words(top.report);
    Problem::at(place, cause).help(help)
}

fn no_backing(name: &Given<String>, top: &Top) -> Problem {
    let known: Vec<&str> = top.backings.iter().map(|backing| backing.name.as_str()).collect();
    let problem = Problem::at(name.range.clone(), format!("no backing is called `{}`", name.value));
    match nearest(&name.value, known.iter().copied()) {
        Some(meant) => {
            problem.help(format!("did you mean `{meant}`?")).patch(name.range.clone(), format!("\"{meant}\""))
        }
        None if known.is_empty() => problem.help("the file has no `[[backing]]`"),
        None => problem.help(format!("the file has {}", known.join(", "))),
    }
}
