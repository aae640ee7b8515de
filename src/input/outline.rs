//! `outline`: as a rectangle, by corners, or from a drawing.

use std::ops::Range;

use uom::si::length::millimeter;

use super::{
    drawing::{Drawn, Sheet},
    hole::read_holes,
    problem::Problem,
    reader::{Given, Room},
};
use crate::{
    geometry::{Contour, Corner, InvalidContour, Point},
    top::{InvalidHole, Outline, Scope},
    units::{Length, Sign},
};

/// How far from zero an outline by corners may begin and is moved there without a word: less than anyone measures.
const BEGINS_WITHIN: f64 = 1.0;

/// How an outline or a hole may be described.
const FORMS: &str = "one of a rectangle, a list of corners and a drawing";

/// An outline as it stands in the file, with the drawing that it comes from.
pub(super) struct Read<'d> {
    pub(super) contour: Contour,
    pub(super) sheet: Option<Sheet<'d>>,
}

pub(super) fn read_outline(root: &Room<'_>, top: &Room<'_>, scope: Scope, drawn: &Drawn<'_>) -> Option<Outline> {
    top.missing("outline", "{ length = \"9 ft\", width = \"6 ft\", corner_radius = \"12 in\" }");
    let read = top.room("outline").and_then(|room| {
        let read = read_contour(&room, scope, drawn);
        room.close();
        read
    });
    let holes = read_holes(root, read.as_ref());
    let read = read?;
    let [low, high] = read.contour.bounds();
    match (Outline::new(&read.contour, holes.iter().map(|hole| hole.value.clone()).collect()), read.sheet) {
        (Ok(outline), _) => Some(outline),
        (Err(fault), sheet) => {
            // Holes of a drawing lie in the drawing's own places.
            let place = |at: Point| sheet.as_ref().map_or_else(|| words(root, at), |sheet| sheet.words(at));
            let (hole, message, help) = match fault {
                InvalidHole::Beyond { hole, at } => (
                    hole,
                    format!("{} does not lie within the top, at {}", holes[hole].value.name, place(at)),
                    match &sheet {
                        None => runs(root, high.x - low.x, high.y - low.y),
                        Some(_) => "draw it inside the outline, with some panel round it".to_owned(),
                    },
                ),
                InvalidHole::Meets { hole, other, at } => {
                    let [one, other] = [hole, other].map(|index| holes[index].value.name.as_str());
                    (
                        hole,
                        format!("{one} meets {other} at {}", place(at)),
                        "leave panel between them, or make them one hole".to_owned(),
                    )
                }
            };
            root.report(Problem::at(holes[hole].range.clone(), message).help(help));
            None
        }
    }
}

fn read_contour<'d>(room: &Room<'_>, scope: Scope, drawn: &'d Drawn<'_>) -> Option<Read<'d>> {
    let [drawing, points, length, width] = ["drawing", "points", "length", "width"].map(|key| room.value(key));
    let forms = [drawing.is_some(), points.is_some(), length.is_some() || width.is_some()];
    if forms.into_iter().filter(|form| *form).count() > 1 {
        room.trust_keys(&["corner_radius", "layer", "path", "units"]);
        room.report(
            room.problem(&format!("is {FORMS}, not two of them"))
                .help("write `length` and `width`, or `points`, or `drawing` with its `layer` or `path`"),
        );
        return None;
    }
    let (contour, range, sheet) = if let Some(drawing) = drawing {
        let sheet = drawn.open(room)?;
        let contour = sheet.only_contour(room)?;
        (contour, drawing.span(), Some(sheet))
    } else if let Some(points) = points {
        (read_corners(room)?, points.span(), None)
    } else {
        return read_rectangle(room, scope);
    };
    let [low, high] = contour.bounds();
    sized(room, scope, &[(high.x - low.x, &range), (high.y - low.y, &range)])?;
    if sheet.is_none() {
        begins_at_zero(room, low, &range)?;
    }
    Some(Read { contour, sheet })
}

fn read_rectangle<'d>(room: &Room<'_>, scope: Scope) -> Option<Read<'d>> {
    for (key, example) in [("length", "9 ft 2 in"), ("width", "6 ft 4 in")] {
        room.absent_all(
            &[key, "points", "drawing"],
            room.without(key).help(format!("write for example `{key} = \"{example}\"`")),
        );
    }
    let [length, width] = ["length", "width"].map(|key| room.quantity_or::<Length>(key, Sign::Positive, ""));
    let radii = read_radii(room);
    let (length, width) = (length?, width?);
    sized(room, scope, &[(length.value, &length.range), (width.value, &width.range)])?;
    let contour = rounded(room, (length.value, width.value), &radii?, "the top is wide")?;
    Some(Read { contour, sheet: None })
}

/// `corner_radius`: one for all, or four.
pub(super) fn read_radii(room: &Room<'_>) -> Option<Vec<Given<Length>>> {
    let Some(value) = room.value("corner_radius") else { return Some(Vec::new()) };
    if !matches!(value.get_ref(), toml::de::DeValue::Array(_)) {
        return Some(vec![room.quantity("corner_radius", Sign::NotNegative)?]);
    }
    let radii = room.quantities::<Length>("corner_radius", Sign::NotNegative)?;
    let given = match value.get_ref() {
        toml::de::DeValue::Array(items) => items.len(),
        _ => 1,
    };
    if given != 4 {
        room.report(
            Problem::at(value.span(), format!("a rectangle has four corners, not {given}"))
                .help("write one radius for all, or four: the corner at 0, 0 first, then anticlockwise"),
        );
        return None;
    }
    // One that could not be read has been reported.
    (radii.len() == 4).then_some(radii)
}

pub(super) fn rounded(
    room: &Room<'_>,
    (length, width): (Length, Length),
    radii: &[Given<Length>],
    wide: &str,
) -> Option<Contour> {
    let least = length.min(width) / 2.0;
    match radii {
        [all] if all.value > least => {
            room.report(
                Problem::at(all.range.clone(), format!("the corners are rounder than {wide}"))
                    .help(format!("at most {}", room.both(least))),
            );
            None
        }
        given => {
            let at = |corner: usize| given.get(corner).or_else(|| given.first());
            let values = [0, 1, 2, 3].map(|corner| at(corner).map_or_else(Length::default, |radius| radius.value));
            match Contour::rectangle(length, width, values) {
                Ok(contour) => Some(contour),
                Err(fault) => {
                    let range = |corner: usize| at(corner).map_or(0..0, |radius| radius.range.clone());
                    room.report(corner_fault(room, fault, &(0..0), range));
                    None
                }
            }
        }
    }
}

pub(super) fn read_corners(room: &Room<'_>) -> Option<Contour> {
    let all = room.quantity::<Length>("corner_radius", Sign::NotNegative).map(|given| given.value);
    let corners = room.corners("points", all.unwrap_or_default())?;
    let values: Vec<Corner> = corners.value.iter().map(|corner| corner.value).collect();
    if values.len() < 3 {
        room.report(
            Problem::at(corners.range, format!("{} corners enclose nothing", values.len()))
                .help("write three or more, in the order in which one walks round"),
        );
        return None;
    }
    match Contour::polygon(&values) {
        Ok(contour) => Some(contour),
        Err(fault) => {
            room.report(corner_fault(room, fault, &corners.range, |corner| corners.value[corner].range.clone()));
            None
        }
    }
}

/// What is wrong with corners, at the corner where there is one.
pub(super) fn corner_fault(
    room: &Room<'_>,
    fault: InvalidContour,
    whole: &Range<usize>,
    at: impl Fn(usize) -> Range<usize>,
) -> Problem {
    match fault {
        InvalidContour::Nothing => Problem::at(whole.clone(), "the corners enclose nothing")
            .help("write three or more, in the order in which one walks round"),
        InvalidContour::OutOfReach => {
            Problem::at(whole.clone(), "a corner is too far away to be one of a top").help("is the unit right?")
        }
        InvalidContour::Crosses { at } => {
            Problem::at(whole.clone(), format!("the line crosses or touches itself at {}", words(room, at)))
                .help("write the corners in the order in which one walks round")
        }
        InvalidContour::Repeated { corner } => {
            Problem::at(at(corner), "this corner stands where the one before it does")
                .help("leave one of them out; the last corner is joined to the first by itself")
        }
        InvalidContour::RadiusDoesNotFit { corner, most } => {
            Problem::at(at(corner), "the rounding of this corner does not fit beside its neighbours")
                .help(format!("its radius is at most {}", room.both(most)))
        }
    }
}

/// A wrong unit, and whatever lies on such a top would be reported as beside it.
fn sized(room: &Room<'_>, scope: Scope, sizes: &[(Length, &Range<usize>)]) -> Option<()> {
    // Our assumption.
    let (least, words) = match scope {
        Scope::Whole => (500.0, "top"),
        Scope::Patch => (100.0, "patch"),
    };
    let usual = Length::new::<millimeter>(least)..=Length::new::<millimeter>(20_000.0);
    let mut fits = Some(());
    for (size, range) in sizes {
        if !usual.contains(size) {
            room.report(
                Problem::at((*range).clone(), format!("no {words} measures {}", room.both(*size)))
                    .help(format!("a {words} is {} m to 20 m long and wide: is the unit right?", least / 1000.0)),
            );
            fits = None;
        }
    }
    fits
}

/// Pipes and gear of the file are measured from where the outline begins.
fn begins_at_zero(room: &Room<'_>, low: Point, range: &Range<usize>) -> Option<()> {
    let least = Length::new::<millimeter>(BEGINS_WITHIN);
    if low.x.abs() <= least && low.y.abs() <= least {
        return Some(());
    }
    let take = |way: &str, low: Length| {
        (low.abs() > least).then(|| {
            let (verb, word) = if low > Length::default() { ("take", "off") } else { ("add", "to") };
            format!("{verb} {} {word} every {way}", room.both(low.abs()))
        })
    };
    let ways: Vec<String> = take("x", low.x).into_iter().chain(take("y", low.y)).collect();
    room.report(
        Problem::at(range.clone(), format!("the outline begins at {}, not at 0, 0", words(room, low)))
            .help(format!("places are measured from there: {}", ways.join(", "))),
    );
    None
}

/// A place in words.
pub(super) fn words(room: &Room<'_>, at: Point) -> String {
    format!("{}, {}", room.both(at.x), room.both(at.y))
}

/// A length no larger than the panel that it lies on; one that is larger is reported: a slip in its unit.
pub(super) fn within_panel(
    room: &Room<'_>,
    given: Option<Given<Length>>,
    outline: Option<&Outline>,
) -> Option<Given<Length>> {
    let given = given?;
    if let Some(outline) = outline
        && given.value > outline.length().max(outline.width())
    {
        let problem = Problem::at(given.range, "this is larger than the panel");
        room.report(problem.help(panel_is(room, outline)));
        return None;
    }
    Some(given)
}

/// How large the panel is, in words.
pub(super) fn panel_is(room: &Room<'_>, outline: &Outline) -> String {
    format!("the panel is {} by {}: is the unit right?", room.both(outline.length()), room.both(outline.width()))
}

/// How far a top runs, in words.
fn runs(room: &Room<'_>, length: Length, width: Length) -> String {
    format!(
        "the outline runs from 0 to {} along the length and from 0 to {} across",
        room.both(length),
        room.both(width)
    )
}

/// That a place lies outside the top.
pub(super) fn beside(room: &Room<'_>, range: Range<usize>, place: Point, outline: &Outline) -> Problem {
    Problem::at(range, format!("the place {} lies outside the top", words(room, place)))
        .help(where_it_is(room, place, outline))
}

/// How to get a place onto the panel.
pub(super) fn where_it_is(room: &Room<'_>, place: Point, outline: &Outline) -> String {
    let along = |at: Length, size: Length| at >= Length::default() && at <= size;
    if let Some(hole) = outline.hole_at(place) {
        format!("it lies in {}, {} from its rim", hole.name, room.both(-outline.within_by(place)))
    } else if along(place.x, outline.length()) && along(place.y, outline.width()) {
        format!("it misses the outline by {}", room.both(-outline.within_by(place)))
    } else {
        runs(room, outline.length(), outline.width())
    }
}
