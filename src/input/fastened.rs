//! `fixings = { … }` of gear and of what the top stands on: puts fixings in their places.

use std::sync::Arc;

use uom::si::{length::millimeter, ratio::ratio};

use super::{
    fixing::Fixings,
    problem::Problem,
    reader::{Given, Room},
    usual::usual,
};
use crate::{
    geometry::{Pattern, Polyline},
    top::{Fastened, Fixing, Laid, MOST_ALONG},
    units::{Angle, Length, Sign},
};

/// Most fixings of one pattern: a file that asks for more has a slip in its pitch.
const MOST: usize = 400;

/// What stands beside the pattern: the foot that the fixings hold down.
struct FootGiven {
    clamped: Option<Length>,
    stiff: bool,
    to_body: Option<Length>,
    to_edge: Option<Length>,
}

impl FootGiven {
    fn read(room: &Room<'_>) -> Self {
        let clamped = room.quantity::<Length>("clamped", Sign::Positive);
        if let Some(clamped) = &clamped
            && clamped.value > Length::new::<millimeter>(100.0)
        {
            room.report(
                Problem::at(clamped.range.clone(), "no foot is as thick as that").help(
                    "`clamped` is the thickness of what a head or a nut presses on the panel, 100 mm at the most",
                ),
            );
        }
        let clamped = clamped.map(|given| given.value);
        let stiff = room.flag("stiff").unwrap_or(false);
        let arm = |key, sign| {
            let arms = Length::default()..=Length::new::<millimeter>(1000.0);
            usual(room, key, room.quantity::<Length>(key, sign), ("the arm of a flange", arms)).map(|given| given.value)
        };
        let [to_body, to_edge] = [arm("to_body", Sign::NotNegative), arm("to_edge", Sign::Positive)];
        Self { clamped, stiff, to_body, to_edge }
    }

    fn fastened(self, fixing: Arc<Fixing>, laid: Laid) -> Fastened {
        let Self { clamped, stiff, to_body, to_edge } = self;
        Fastened { fixing, laid, clamped, stiff, to_body, to_edge }
    }
}

/// `fixings` of a piece of gear or a pad: places from the middle of its footing. The inner `None` is one without.
#[allow(clippy::option_option, reason = "fixings, none, or some that cannot be read")]
pub(super) fn read_pattern(gear: &Room<'_>, fixings: &Fixings) -> Option<Option<Fastened>> {
    let Some(room) = gear.room("fixings") else {
        return gear.value("fixings").is_none().then_some(None);
    };
    let fixing = fixings.named_in(&room);
    let places = read_places(&room);
    let foot = FootGiven::read(&room);
    room.close();
    Some(Some(foot.fastened(fixing?, places?)))
}

fn read_places(room: &Room<'_>) -> Option<Laid> {
    let patterned = ["circle", "row", "grid"].iter().any(|key| room.value(key).is_some());
    // Points stand where they are said to: `turned` would do nothing.
    let turned = patterned.then(|| room.quantity::<Angle>("turned", Sign::Any)).flatten();
    let turned = turned.map_or_else(Angle::default, |given| given.value);
    let laid = |pattern: Pattern| Laid::Pattern { pattern, turned };
    let few = |key: &'static str| room.count(key, 1, MOST).and_then(|count| u32::try_from(count).ok());
    room.absent_all(
        &["circle", "row", "grid", "points"],
        room.problem("does not say where its fixings are").help(
            "write `circle = 4` with `diameter`, `row = 3` with `pitch`, `grid = [2, 3]` with `pitch = [\"3 in\", \"4 in\"]`, \
             or `points = [[\"-2 in\", \"0 in\"], [\"2 in\", \"0 in\"]]`",
        ),
    );
    let mut patterns = ["circle", "row", "grid", "points"].into_iter().filter(|key| room.value(key).is_some());
    if let (Some(one), Some(other)) = (patterns.next(), patterns.next()) {
        let range = room.value(other).map_or(0..0, toml::Spanned::span);
        room.report(
            Problem::at(range, format!("`{other}` stands beside `{one}`: the fixings stand in one pattern"))
                .help("leave out one of the two, or give all places as `points`"),
        );
    }
    if room.value("circle").is_some() {
        let count = few("circle");
        let diameter = room.required::<Length>("diameter", Sign::Positive, "\"7 in\"");
        return Some(laid(Pattern::Circle { count: count?, diameter: diameter?.value, first: Angle::default() }));
    }
    if room.value("row").is_some() {
        let count = few("row");
        let pitch = room.required::<Length>("pitch", Sign::Positive, "\"4 in\"");
        return Some(laid(Pattern::Row { count: count?, pitch: pitch?.value, direction: Angle::default() }));
    }
    if room.value("grid").is_some() {
        let count = room.counts("grid", MOST);
        room.missing("pitch", "[\"3 in\", \"4 in\"]");
        let pitch = room.quantities::<Length>("pitch", Sign::Positive)?;
        let [pitch_x, pitch_y] = pitch.as_slice() else {
            let problem = room.problem("has a grid, whose pitch is two lengths");
            room.report(problem.help("write pitch = [\"3 in\", \"4 in\"]: along the length, along the width"));
            return None;
        };
        let [along_x, along_y] = count?;
        if usize::try_from(u64::from(along_x) * u64::from(along_y)).map_or(true, |all| all > MOST) {
            let range = room.value("grid").map_or(0..0, toml::Spanned::span);
            room.report(
                Problem::at(
                    range,
                    format!("that makes {} fixings in one grid", u64::from(along_x) * u64::from(along_y)),
                )
                .help(format!("at most {MOST}")),
            );
            return None;
        }
        return Some(laid(Pattern::Grid { along_x, along_y, pitch_x: pitch_x.value, pitch_y: pitch_y.value }));
    }
    if room.value("points").is_none() {
        // Which of them count hangs on the pattern, whose key is missing or misspelt.
        room.trust_keys(&["diameter", "pitch", "turned"]);
        return None;
    }
    let Given { value: points, range, .. } = room.points("points")?;
    if points.is_empty() || points.len() > MOST {
        room.report(
            Problem::at(range, format!("`points` is a list of 1 to {MOST} places, not {}", points.len()))
                .help("write for example `points = [[\"-2 in\", \"0 in\"], [\"2 in\", \"0 in\"]]`"),
        );
        return None;
    }
    let twin = (0..points.len()).find(|&i| points[..i].iter().any(|known| known.value == points[i].value));
    if let Some(twin) = twin {
        room.report(Problem::at(points[twin].range.clone(), "two fixings stand in one place"));
        return None;
    }
    Some(Laid::Points(points.into_iter().map(|given| given.value).collect()))
}

/// `fixings` of a pipe or a wall, as `word` says: a row along it. The inner `None` is one without.
#[allow(clippy::option_option, reason = "fixings, none, or some that cannot be read")]
pub(super) fn read_row(
    (pipe, word): (&Room<'_>, &str),
    along: Option<&Polyline>,
    fixings: &Fixings,
) -> Option<Option<Fastened>> {
    let Some(room) = pipe.room("fixings") else {
        return pipe.value("fixings").is_none().then_some(None);
    };
    let fixing = fixings.named_in(&room);
    let spacing = room.required::<Length>("spacing", Sign::Positive, "\"10 in\"");
    let spacings = Length::new::<millimeter>(5.0)..=Length::new::<millimeter>(3000.0);
    let spacing = usual(&room, "spacing", spacing, ("the spacing of a row of fixings", spacings));
    let end = room.quantity::<Length>("end", Sign::NotNegative);
    let foot = FootGiven::read(&room);
    let row = row_along((&room, word), along, spacing, end);
    room.close();
    Some(Some(foot.fastened(fixing?, row?)))
}

/// Evenly from end to end, no farther apart than asked.
fn row_along(
    (room, word): (&Room<'_>, &str),
    along: Option<&Polyline>,
    spacing: Option<Given<Length>>,
    end: Option<Given<Length>>,
) -> Option<Laid> {
    let (along, spacing) = (along?, spacing?);
    let length = along.length();
    // Common practice: a quarter of the spacing keeps the overhang of the row short.
    let from = end.as_ref().map_or_else(|| spacing.value / 4.0, |given| given.value);
    if from * 2.0 >= length {
        let (range, words) = end
            .map_or((spacing.range, format!("so far apart there is no room for two fixings on the {word}")), |given| {
                (given.range, format!("the first fixing lies beyond the middle of the {word}"))
            });
        room.report(Problem::at(range, words).help(format!("the {word} is {} long", room.both(length))));
        return None;
    }
    if (length / spacing.value).get::<ratio>() > MOST_ALONG {
        let problem = Problem::at(spacing.range, format!("that makes more than {MOST_ALONG:.0} fixings on one {word}"));
        room.report(problem.help("is the unit right?"));
        return None;
    }
    Some(Laid::Along { end: from, spacing: spacing.value })
}
