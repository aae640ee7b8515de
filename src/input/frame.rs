//! `[[pipe]]`, and lines and places inside the outline.

use std::ops::Range;

use super::{
    fastened::read_row,
    fixing::Fixings,
    outline::{beside, words},
    problem::Problem,
    reader::Room,
    standing::{read_standing, stand_apart},
    unknown_name,
};
use crate::{
    criteria::Criteria,
    geometry::Polyline,
    material::MaterialTable,
    top::{Outline, Pipe, Scope},
    units::{Length, Sign},
};

pub(super) fn read_pipes(
    root: &Room<'_>,
    table: &MaterialTable,
    (criteria, scope): (&Criteria, Scope),
    (outline, fixings): (Option<&Outline>, &Fixings),
) -> Vec<Pipe> {
    let rooms = root.rooms("pipe");
    if scope == Scope::Patch {
        for room in &rooms {
            room.report(
                room.problem("stands in a file about a patch")
                    .help("a patch knows of no frame: describe the whole top with `[top]`"),
            );
        }
    } else if rooms.is_empty() {
        // A `[patch]` stands on nothing, be it misspelt or beside a `[top]`.
        root.absent_all(&["pipe", "patch"], Problem::at(0..0, "the top stands on nothing: there is no `[[pipe]]`").help(
            "add two pipes or more, each with `name`, `outside` and `along = [[\"12 in\", \"20 in\"], [\"98 in\", \"20 in\"]]`",
        ));
    }
    let count = rooms.len();
    let pipes: Vec<(Pipe, Range<usize>)> = rooms
        .into_iter()
        .enumerate()
        .filter_map(|(index, room)| {
            let range = room.value("along").map_or_else(|| room.place(), toml::Spanned::span);
            Some((read_pipe(room, index, (table, criteria), (outline, fixings))?, range))
        })
        .collect();
    for (index, (pipe, range)) in pipes.iter().enumerate() {
        if pipes[..index].iter().any(|(other, _)| other.name == pipe.name) {
            root.report(
                Problem::at(range.clone(), format!("two pipes are called {}", pipe.name))
                    .help("the report tells pipes apart by their names: give this one another `name`"),
            );
        }
    }
    // One that could not be read may be the one that holds the top.
    if pipes.len() == count && scope == Scope::Whole {
        read_standing(root, &pipes);
    }
    pipes.into_iter().map(|(pipe, _)| pipe).collect()
}

fn read_pipe(
    room: Room<'_>,
    index: usize,
    (table, criteria): (&MaterialTable, &Criteria),
    (outline, fixings): (Option<&Outline>, &Fixings),
) -> Option<Pipe> {
    let name = room.text("name").map_or_else(|| format!("pipe {}", index + 1), |given| given.value);
    let outside = room.required::<Length>("outside", Sign::Positive, "\"2 in\"");
    let wall = room.quantity::<Length>("wall", Sign::Positive);
    if let (Some(outside), Some(wall)) = (&outside, &wall)
        && wall.value > outside.value / 2.0
    {
        room.report(
            Problem::at(wall.range.clone(), "the wall is thicker than half the pipe")
                .help(format!("the pipe is {} outside", outside.text)),
        );
    }
    let seat = room.quantity::<Length>("seat", Sign::Positive);
    let alloy = room.text("alloy").and_then(|given| match table.alloy(&given.value) {
        Ok(alloy) => Some(alloy.clone()),
        Err(name) => {
            unknown_name(&room, &given, &name);
            None
        }
    });
    let posts = room.quantities::<Length>("posts", Sign::NotNegative).unwrap_or_default();
    let along = read_line(&room, outline);
    if let (Some(along), Some(post)) =
        (&along, posts.iter().find(|post| along.as_ref().is_some_and(|line| post.value > line.length())))
        && along.points().len() >= 2
    {
        room.report(Problem::at(post.range.clone(), "a post stands beyond the end of its pipe"));
    }
    let fastened = read_row(&room, along.as_ref(), fixings);
    let pipe = || {
        let outside = outside?.value;
        Some(Pipe {
            name,
            along: along?,
            outside,
            seat: seat.map_or(outside * criteria.seat_share.value, |given| given.value),
            wall: wall.map(|given| given.value),
            alloy,
            posts: posts.into_iter().map(|given| given.value).collect(),
            fastened: fastened?,
        })
    };
    let pipe = pipe().inspect(|pipe| stand_apart(&room, pipe));
    room.close();
    pipe
}

/// The line `along` of a pipe, a backing or a conduit, inside the outline.
pub(super) fn read_line(room: &Room<'_>, outline: Option<&Outline>) -> Option<Polyline> {
    let Some(points) = room.points("along") else {
        room.missing("along", "[[\"12 in\", \"20 in\"], [\"98 in\", \"20 in\"]]");
        return None;
    };
    let outside =
        outline.and_then(|outline| Some((points.value.iter().find(|point| !outline.holds(point.value))?, outline)));
    if let Some((outside, outline)) = outside {
        room.report(beside(room, outside.range.clone(), outside.value, outline));
    }
    let twin = points.value.windows(2).find(|pair| pair[0].value == pair[1].value).map(|pair| pair[1].range.clone());
    let line = Polyline::new(points.value.iter().map(|point| point.value).collect()).ok();
    if let (Some(line), Some(outline), None) = (&line, outline, outside)
        && let Some(left) = outline.left_by(line)
    {
        room.report(
            Problem::at(points.range.clone(), format!("the line leaves the top at {}", words(room, left)))
                .help("the outline cuts in there: lead the line round it"),
        );
    }
    if line.is_none() {
        room.report(match twin {
            Some(range) => Problem::at(range, "this place is the one before it: the line does not get on"),
            None => Problem::at(points.range, "a line runs from one place to another: it needs two or more")
                .help("write along = [[\"12 in\", \"20 in\"], [\"98 in\", \"20 in\"]]"),
        });
    }
    line
}
