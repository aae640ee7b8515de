//! `[[hole]]`: as a circle, a rectangle, by corners, or from the outline's drawing.

use uom::si::length::micrometer;

use super::{
    outline::{Read, corner_fault, read_corners, read_radii, rounded, words},
    problem::Problem,
    reader::{Given, Room},
};
use crate::{
    geometry::{Contour, Point, Polyline},
    top::{Hole, Outline, Support},
    units::{Length, Sign},
};

/// Holes that could be read; those of a drawing may be several for one `[[hole]]`.
pub(super) fn read_holes(root: &Room<'_>, outline: Option<&Read<'_>>) -> Vec<Given<Hole>> {
    let mut holes: Vec<Given<Hole>> = Vec::new();
    for (name, room) in root.named_rooms("hole") {
        let range = room.place();
        let contours = read_rims(&room, outline);
        room.close();
        let several = contours.len() > 1;
        holes.extend(contours.into_iter().enumerate().map(|(index, contour)| {
            let name = if several { format!("{name} {}", index + 1) } else { name.clone() };
            Given { value: Hole { name, contour }, text: String::new(), range: range.clone() }
        }));
    }
    holes
}

fn read_rims(room: &Room<'_>, outline: Option<&Read<'_>>) -> Vec<Contour> {
    const KEYS: [&str; 5] = ["points", "rectangle", "circle", "layer", "path"];
    let given: Vec<&str> = KEYS.into_iter().filter(|key| room.value(key).is_some()).collect();
    let problem = |message: &str| {
        room.problem(message).help(
            "write `circle = { at = [\"30 in\", \"38 in\"], diameter = \"8 in\" }`, `rectangle = { at, length, width, \
             corner_radius }`, `points`, or the `layer` or `path` of the outline's drawing",
        )
    };
    room.absent_all(&KEYS, problem("does not say what its rim is"));
    match given.as_slice() {
        ["points"] => {
            let Some(contour) = read_corners(room) else { return Vec::new() };
            vec![in_place(contour, outline)]
        }
        ["rectangle"] => room.room("rectangle").and_then(|room| read_rectangular(room, outline)).into_iter().collect(),
        ["circle"] => room.room("circle").and_then(|room| read_circular(room, outline)).into_iter().collect(),
        [key @ ("layer" | "path")] => match outline {
            Some(Read { sheet: Some(sheet), .. }) => sheet.contours(room).unwrap_or_default(),
            Some(Read { sheet: None, .. }) => {
                room.report(
                    Problem::at(
                        room.value(key).map_or(0..0, toml::Spanned::span),
                        format!("`{key}` is one of a drawing, and the outline is not drawn"),
                    )
                    .help("write `circle`, `rectangle` or `points`, or `outline = { drawing = \"top.dxf\", … }`"),
                );
                Vec::new()
            }
            // Without the outline that could not be read its drawing is not there either.
            None => Vec::new(),
        },
        [] => Vec::new(),
        _ => {
            room.report(problem("has more than one rim"));
            Vec::new()
        }
    }
}

/// A hole measured from where the top begins, among the places of the outline's drawing.
fn in_place(contour: Contour, outline: Option<&Read<'_>>) -> Contour {
    match outline {
        Some(read @ Read { sheet: Some(_), .. }) => contour.moved(read.contour.bounds()[0]),
        _ => contour,
    }
}

fn read_rectangular(room: Room<'_>, outline: Option<&Read<'_>>) -> Option<Contour> {
    let at = read_middle(&room);
    let length = room.required::<Length>("length", Sign::Positive, "\"20 in\"");
    let width = room.required::<Length>("width", Sign::Positive, "\"18 in\"");
    let radii = read_radii(&room);
    let contour = match (length, width, radii) {
        (Some(length), Some(width), Some(radii)) => {
            let size = (length.value, width.value);
            rounded(&room, size, &radii, "the hole is wide")
                .zip(at)
                .map(|(contour, at)| contour.moved(Point { x: at.x - 0.5 * size.0, y: at.y - 0.5 * size.1 }))
        }
        _ => None,
    };
    room.close();
    Some(in_place(contour?, outline))
}

fn read_circular(room: Room<'_>, outline: Option<&Read<'_>>) -> Option<Contour> {
    let at = read_middle(&room);
    let diameter = room.required::<Length>("diameter", Sign::Positive, "\"8 in\"");
    let contour = at.zip(diameter).and_then(|(at, diameter)| match Contour::circle(at, diameter.value) {
        Ok(contour) => Some(contour),
        Err(fault) => {
            room.report(corner_fault(&room, fault, &diameter.range, |_| diameter.range.clone()));
            None
        }
    });
    room.close();
    Some(in_place(contour?, outline))
}

fn read_middle(room: &Room<'_>) -> Option<Point> {
    room.missing("at", "[\"30 in\", \"38 in\"]");
    room.point("at").map(|given| given.value)
}

/// Reports a backing or a conduit that runs through a hole; true where none does.
pub(super) fn clear_of_holes(
    room: &Room<'_>,
    line: Option<&Polyline>,
    outline: Option<&Outline>,
    supports: &[Support],
) -> bool {
    let found = line.zip(outline).and_then(|(line, outline)| outline.hole_on(line));
    let Some((hole, at)) = found else { return true };
    let range = room.value("along").map_or(0..0, toml::Spanned::span);
    let problem = Problem::at(range, format!("the line runs through {} at {}", hole.name, words(room, at)));
    // Where a pipe runs below, it is the hole that is in the wrong place.
    let below = supports.iter().find(|pipe| hole.contour.entered_by(&pipe.along).is_some());
    room.report(match below {
        Some(pipe) => problem.help(format!(
            "{} lies over {} as well: move it off the {}, or end the line on both sides of it",
            hole.name,
            pipe.name,
            pipe.word()
        )),
        None => problem.help("end it before the hole, or lead it round"),
    });
    false
}

/// Reports a conduit whose outside reaches into a hole that its middle line passes.
pub(super) fn beside_holes(
    room: &Room<'_>,
    (name, line, outside): (&str, &Polyline, Length),
    outline: Option<&Outline>,
) {
    let half = outside / 2.0;
    let near = |hole: &Hole| {
        let rim =
            hole.contour.flattened(Length::new::<micrometer>(100.0)).into_iter().map(|place| line.distance(place));
        let ends = line.points().iter().map(|place| -hole.contour.within_by(*place));
        rim.chain(ends).fold(half, Length::min)
    };
    let holes = outline.iter().flat_map(|outline| outline.holes()).map(|hole| (near(hole), hole));
    let cut = holes.filter(|(near, _)| half - *near > Length::new::<micrometer>(1.0));
    let Some((near, hole)) = cut.min_by(|a, b| a.0.value.total_cmp(&b.0.value)) else { return };
    let range = room.value("along").map_or(0..0, toml::Spanned::span);
    room.report(Problem::at(range, format!("{name} reaches {} into {}", room.both(half - near), hole.name)).help(
        format!(
            "it is {} thick: its middle passes the rim of a hole by {} or more",
            room.both(outside),
            room.both(half)
        ),
    ));
}
