//! `[[pipe]]` and `[[gear]]`.

use uom::si::{f64::Area, ratio::ratio};

use super::{problem::Problem, reader::Room, unknown_name};
use crate::{
    criteria::Criteria,
    geometry::{Point, Polyline},
    material::MaterialTable,
    top::{Gear, Outline, Pipe},
    units::{Length, Mass, Ratio, Sign},
};

pub(super) fn read_pipes(
    root: &Room<'_>,
    table: &MaterialTable,
    criteria: &Criteria,
    outline: Option<&Outline>,
) -> Vec<Pipe> {
    let rooms = root.rooms("pipe");
    if rooms.is_empty() {
        root.absent("pipe", Problem::at(0..0, "the top stands on nothing: there is no `[[pipe]]`").help(
            "add two pipes or more, each with `name`, `outside` and `along = [[\"12 in\", \"20 in\"], [\"98 in\", \"20 in\"]]`",
        ));
    }
    rooms
        .into_iter()
        .enumerate()
        .filter_map(|(index, room)| read_pipe(room, index, (table, criteria), outline))
        .collect()
}

fn read_pipe(
    room: Room<'_>,
    index: usize,
    (table, criteria): (&MaterialTable, &Criteria),
    outline: Option<&Outline>,
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
    room.close();
    let outside = outside?.value;
    Some(Pipe {
        name,
        along: along?,
        outside,
        seat: seat.map_or(outside * criteria.seat_share.value, |given| given.value),
        wall: wall.map(|given| given.value),
        alloy,
        posts: posts.into_iter().map(|given| given.value).collect(),
    })
}

/// The line `along` of a pipe, a backing or a conduit, inside the outline.
pub(super) fn read_line(room: &Room<'_>, outline: Option<&Outline>) -> Option<Polyline> {
    let Some(points) = room.points("along") else {
        room.missing("along", "[[\"12 in\", \"20 in\"], [\"98 in\", \"20 in\"]]");
        return None;
    };
    if let Some(outline) = outline
        && let Some(outside) = points.value.iter().find(|point| !outline.holds(point.value))
    {
        report_outside(room, outside.range.clone(), outside.value, outline);
    }
    let twin = points.value.windows(2).find(|pair| pair[0].value == pair[1].value).map(|pair| pair[1].range.clone());
    let line = Polyline::new(points.value.iter().map(|point| point.value).collect()).ok();
    if line.is_none() {
        room.report(match twin {
            Some(range) => Problem::at(range, "this place is the one before it: the line does not get on"),
            None => Problem::at(points.range, "a line runs from one place to another: it needs two or more")
                .help("write along = [[\"12 in\", \"20 in\"], [\"98 in\", \"20 in\"]]"),
        });
    }
    line
}

fn report_outside(room: &Room<'_>, range: std::ops::Range<usize>, place: Point, outline: &Outline) {
    use crate::units::{System, both};
    room.report(
        Problem::at(
            range,
            format!("the place {}, {} lies outside the top", both(place.x, System::Us), both(place.y, System::Us)),
        )
        .help(format!(
            "the outline runs from 0 to {} along the length and from 0 to {} across",
            both(outline.length, System::Us),
            both(outline.width, System::Us)
        )),
    );
}

pub(super) fn read_gear(root: &Room<'_>, outline: Option<&Outline>) -> Vec<Gear> {
    root.rooms("gear").into_iter().enumerate().filter_map(|(index, room)| read_one(room, index, outline)).collect()
}

fn read_one(room: Room<'_>, index: usize, outline: Option<&Outline>) -> Option<Gear> {
    let name = room.text("name").map_or_else(|| format!("gear {}", index + 1), |given| given.value);
    let mass = room.required::<Mass>("mass", Sign::Positive, "\"10 kg\"");
    let cg_height = room.required::<Length>("cg_height", Sign::NotNegative, "\"6 in\"");
    let footing = room.required::<Length>("footing", Sign::Positive, "\"8 in\"");
    let wind_area = room.quantity::<Area>("wind_area", Sign::NotNegative);
    let drag = room.quantity::<Ratio>("drag", Sign::NotNegative);
    let at = room.point("at");
    room.missing("at", "[\"30 in\", \"38 in\"]");
    if let (Some(at), Some(outline)) = (&at, outline)
        && !outline.holds(at.value)
    {
        report_outside(&room, at.range.clone(), at.value, outline);
    }
    if wind_area.is_some() {
        room.missing("drag", "1.2");
    }
    if drag.is_some() {
        room.missing("wind_area", "\"1.5 ft2\"");
    }
    room.close();
    Some(Gear {
        name,
        mass: mass?.value,
        cg_height: cg_height?.value,
        at: at?.value,
        footing: footing?.value,
        wind_area: wind_area.map_or_else(Area::default, |given| given.value),
        drag: drag.map_or_else(|| Ratio::new::<ratio>(0.0), |given| given.value),
    })
}
