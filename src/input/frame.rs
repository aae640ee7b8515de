//! What the top stands on: `[[pipe]]`, `[[wall]]` and `[[pad]]`; and lines and places inside the outline.

use std::ops::{Range, RangeInclusive};

use uom::si::length::{micrometer, millimeter};

use super::{
    fastened::{read_pattern, read_row},
    fixing::Fixings,
    gear::{held_by_foot, read_foot},
    outline::{beside, where_it_is, within_panel, words},
    problem::Problem,
    reader::Room,
    standing::{read_standing, stand_apart},
    unknown_name,
    usual::usual,
};
use crate::{
    criteria::Criteria,
    geometry::{Point, Polyline},
    material::MaterialTable,
    top::{Carrier, Outline, Pad, Pipe, Scope, Support, WallEdge},
    units::{Length, Sign},
};

pub(super) fn read_supports(
    root: &Room<'_>,
    table: &MaterialTable,
    (criteria, scope): (&Criteria, Scope),
    (outline, fixings): (Option<&Outline>, &Fixings),
) -> Vec<Support> {
    let kinds = ["pipe", "wall", "pad"].map(|kind| (kind, root.rooms(kind)));
    let rooms = || kinds.iter().flat_map(|(_, rooms)| rooms);
    if scope == Scope::Patch {
        for room in rooms() {
            room.report(
                room.problem("stands in a file about a patch")
                    .help("a patch knows of no frame: describe the whole top with `[top]`"),
            );
        }
    } else if rooms().next().is_none() {
        // A `[patch]` stands on nothing, be it misspelt or beside a `[top]`.
        root.absent_all(
            &["pipe", "wall", "pad", "patch"],
            Problem::at(0..0, "the top stands on nothing: there is no `[[pipe]]`, `[[wall]]` or `[[pad]]`").help(
                "add two pipes or more, each with `name`, `outside` and `along = [[\"12 in\", \"20 in\"], [\"98 in\", \"20 in\"]]`",
            ),
        );
    }
    let count = rooms().count();
    let mut supports: Vec<(Support, Range<usize>)> = Vec::with_capacity(count);
    for (kind, rooms) in kinds {
        for (index, room) in rooms.into_iter().enumerate() {
            let line = if kind == "pad" { "at" } else { "along" };
            let range = room.value(line).map_or_else(|| room.place(), toml::Spanned::span);
            let name = room.text("name").map_or_else(|| format!("{kind} {}", index + 1), |given| given.value);
            let support = match kind {
                "pipe" => read_pipe(room, name, (table, criteria), (outline, fixings)),
                "wall" => read_wall(room, name, (outline, fixings)),
                _ => read_pad(room, name, (outline, fixings)),
            };
            supports.extend(support.map(|support| (support, range)));
        }
    }
    for (index, (support, range)) in supports.iter().enumerate() {
        if supports[..index].iter().any(|(other, _)| other.name == support.name) {
            root.report(
                Problem::at(range.clone(), format!("two supports are called {}", support.name))
                    .help("the report tells them apart by their names: give this one another `name`"),
            );
        }
    }
    // One that could not be read may be the one that holds the top.
    if supports.len() == count && scope == Scope::Whole {
        read_standing(root, &supports);
    }
    supports.into_iter().map(|(support, _)| support).collect()
}

/// Lengths in millimetres.
fn lengths(least: f64, most: f64) -> RangeInclusive<Length> {
    Length::new::<millimeter>(least)..=Length::new::<millimeter>(most)
}

fn read_pipe(
    room: Room<'_>,
    name: String,
    (table, criteria): (&MaterialTable, &Criteria),
    (outline, fixings): (Option<&Outline>, &Fixings),
) -> Option<Support> {
    let outside = room.required::<Length>("outside", Sign::Positive, "\"2 in\"");
    let outside = usual(&room, "outside", outside, ("the outside of a pipe under a top", lengths(5.0, 250.0)));
    let outside = within_panel(&room, outside, outline);
    let wall = room.quantity::<Length>("wall", Sign::Positive);
    let wall = usual(&room, "wall", wall, ("the wall of a pipe under a top", lengths(0.3, 125.0)));
    if let (Some(outside), Some(wall)) = (&outside, &wall)
        && wall.value > outside.value / 2.0
    {
        room.report(
            Problem::at(wall.range.clone(), "the wall is thicker than half the pipe")
                .help(format!("the pipe is {} outside", outside.text)),
        );
    }
    let seat = usual(&room, "seat", room.quantity::<Length>("seat", Sign::Positive), seats());
    let seat = within_panel(&room, seat, outline);
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
        room.report(Problem::at(post.range.clone(), "a post stands beyond the end of its pipe").help(format!(
            "the pipe is {} long, and places of posts are measured along it from its first point",
            room.both(along.length())
        )));
    }
    let fastened = read_row((&room, "pipe"), along.as_ref(), fixings);
    let pipe = || {
        let outside = outside?.value;
        Some(Support {
            name,
            along: along?,
            seat: seat.map_or(outside * criteria.seat_share.value, |given| given.value),
            carrier: Carrier::Pipe(Pipe {
                outside,
                wall: wall.map(|given| given.value),
                alloy,
                posts: posts.into_iter().map(|given| given.value).collect(),
            }),
            fastened: fastened?,
        })
    };
    let pipe = pipe().inspect(|pipe| stand_apart(&room, pipe));
    room.close();
    pipe
}

/// Widths on which a top bears.
fn seats() -> (&'static str, RangeInclusive<Length>) {
    ("the seat of a top", lengths(0.1, 1000.0))
}

fn read_wall(room: Room<'_>, name: String, (outline, fixings): (Option<&Outline>, &Fixings)) -> Option<Support> {
    // A wall has no diameter to take a share of.
    let seat = usual(&room, "seat", room.required::<Length>("seat", Sign::Positive, "\"30 mm\""), seats());
    let seat = within_panel(&room, seat, outline);
    let edges = [("hinged", WallEdge::Hinged), ("clamped", WallEdge::Clamped)];
    let edge = room.choice("edge", &edges).map_or(WallEdge::Hinged, |given| given.value);
    let along = read_line(&room, outline);
    let fastened = read_row((&room, "wall"), along.as_ref(), fixings);
    room.close();
    Some(Support { name, along: along?, seat: seat?.value, carrier: Carrier::Wall(edge), fastened: fastened? })
}

fn read_pad(room: Room<'_>, name: String, (outline, fixings): (Option<&Outline>, &Fixings)) -> Option<Support> {
    room.missing("at", "[\"30 in\", \"38 in\"]");
    let at = room.point("at");
    let foot = read_foot(&room, "size");
    let fastened = read_pattern(&room, fixings);
    if let (Some(at), Some(foot), Some(outline)) = (&at, foot, outline) {
        if on_panel(outline, at.value) {
            lies_on_top(&room, Pad { at: at.value, foot }, outline);
        } else {
            room.report(beside(&room, at.range.clone(), at.value, outline));
        }
    }
    if let (Some(foot), Some(Some(fastened))) = (&foot, &fastened) {
        held_by_foot(&room, foot, fastened);
    }
    room.close();
    Support::pad(name, Pad { at: at?.value, foot: foot? }, fastened?).ok()
}

/// Whether a place lies on the top and in none of its holes.
fn on_panel(outline: &Outline, place: Point) -> bool {
    // A hair of rounding.
    outline.within_by(place) >= Length::new::<micrometer>(-1.0)
}

/// Reports a pad that reaches over a rim: the part beside the top would carry nothing.
fn lies_on_top(room: &Room<'_>, pad: Pad, outline: &Outline) {
    let off = pad.border().into_iter().find(|place| !on_panel(outline, *place));
    let cut = outline.holes().iter().find(|hole| {
        let inside = |place: &Point| pad.foot.holds(Point { x: place.x - pad.at.x, y: place.y - pad.at.y });
        hole.contour.flattened(Length::new::<micrometer>(100.0)).iter().any(inside)
    });
    let range = room.value("size").map_or(0..0, toml::Spanned::span);
    let problem = match (off, cut) {
        (Some(off), _) => Problem::at(range, format!("the pad reaches over the rim at {}", words(room, off)))
            .help(where_it_is(room, off, outline)),
        (None, Some(hole)) => Problem::at(range, format!("the pad reaches into {}", hole.name))
            .help("move it off the hole, or make it smaller"),
        (None, None) => return,
    };
    room.report(problem);
}

/// The line `along` of a pipe, a wall, a backing or a conduit, inside the outline.
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
