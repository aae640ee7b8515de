//! `[[fixing]]`: kinds of fixings by name; and `fixings = { … }` of gear and pipes, which puts them in their places.

use std::sync::Arc;

use uom::si::ratio::ratio;

use super::{
    problem::{Problem, offer},
    reader::{Given, Room},
    unknown_name,
};
use crate::{
    geometry::{Pattern, Polyline},
    material::{MaterialTable, UnknownName},
    top::{Bolt, Fastened, Fixing, Hold, Laid, MOST_ALONG, Sleeve, Washer},
    units::{Angle, Length, Sign, System, Torque, both},
};

/// Most fixings of one pattern: a file that asks for more has a slip in its pitch.
const MOST: usize = 400;

/// What a hold may ask for. Without a hold that can be read nobody knows which of them count.
const KEYS: [&str; 12] = [
    "thread",
    "grade",
    "lubrication",
    "washer",
    "sleeve",
    "depth",
    "screw",
    "insert",
    "potting",
    "rivet",
    "stud",
    "adhesive",
];

/// The ways to hold, as the file names them.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    ThroughBolt,
    TappedScrew,
    Screw,
    BlindInsert,
    PottedInsert,
    BlindRivet,
    BondedStud,
}

/// The fixings of a file, and what is known of its panel.
pub(super) struct Fixings {
    all: Vec<Arc<Fixing>>,
    /// Names of those that could not be read: what asks for them is not at fault.
    faulty: Vec<String>,
    /// Whether one of them has no name that could be read: it may be the one that is asked for.
    nameless: bool,
}

pub(super) fn read_fixings(root: &Room<'_>, table: &MaterialTable, panel: Option<Length>) -> Fixings {
    let rooms = root.rooms("fixing");
    let unreadable = rooms.is_empty() && root.value("fixing").is_some();
    let mut fixings = Fixings { all: Vec::new(), faulty: Vec::new(), nameless: unreadable };
    for room in rooms {
        room.missing("name", "\"radar bolts\"");
        let name = room.text("name").filter(|given| {
            let empty = given.value.trim().is_empty();
            if empty {
                room.report(
                    Problem::at(given.range.clone(), "a fixing has a name, and this is an empty text")
                        .help("write for example `name = \"radar bolts\"`"),
                );
            }
            !empty
        });
        if let Some(name) = &name
            && fixings.knows(&name.value)
        {
            room.report(Problem::at(name.range.clone(), format!("there are two fixings called `{}`", name.value)));
        }
        let hold = read_hold(&room, table, panel);
        let torque = room.quantity::<Torque>("torque", Sign::Positive).map(|given| given.value);
        room.close();
        match (name, hold) {
            (Some(name), Some(hold)) => fixings.all.push(Arc::new(Fixing { name: name.value, hold, torque })),
            (Some(name), None) => fixings.faulty.push(name.value),
            (None, _) => fixings.nameless = true,
        }
    }
    fixings
}

impl Fixings {
    fn knows(&self, name: &str) -> bool {
        self.all.iter().any(|fixing| fixing.name == name) || self.faulty.iter().any(|faulty| faulty == name)
    }

    /// The fixing that a room asks for by its name.
    fn named_in(&self, room: &Room<'_>) -> Option<Arc<Fixing>> {
        room.missing("fixing", "\"radar bolts\"");
        let given = room.text("fixing")?;
        if let Some(fixing) = self.all.iter().find(|fixing| fixing.name == given.value) {
            return Some(Arc::clone(fixing));
        }
        if !self.knows(&given.value) && !self.nameless {
            let known: Vec<&str> =
                self.all.iter().map(|fixing| &fixing.name).chain(&self.faulty).map(String::as_str).collect();
            let problem = Problem::at(given.range.clone(), format!("no `[[fixing]]` is called `{}`", given.value));
            room.report(if known.is_empty() {
                problem.help("add `[[fixing]]` with `name`, `hold`, `thread`, `grade` and `lubrication`")
            } else {
                offer(problem, &given.value, &known, Some(given.range), "\"")
            });
        }
        None
    }
}

/// A row of the table that a key names.
fn row<'t, T>(
    room: &Room<'_>,
    key: &'static str,
    example: &str,
    find: impl Fn(&str) -> Result<&'t T, UnknownName>,
) -> Option<T>
where
    T: Clone + 't,
{
    room.missing(key, example);
    let given = room.text(key)?;
    match find(&given.value) {
        Ok(found) => Some(found.clone()),
        Err(name) => {
            unknown_name(room, &given, &name);
            None
        }
    }
}

fn read_hold(room: &Room<'_>, table: &MaterialTable, panel: Option<Length>) -> Option<Hold> {
    room.missing_or(
        "hold",
        "\"through-bolt\"",
        ", or \"tapped-screw\", \"screw\", \"blind-insert\", \"potted-insert\", \"blind-rivet\", \"bonded-stud\"",
    );
    let way = room.choice(
        "hold",
        &[
            ("through-bolt", Way::ThroughBolt),
            ("tapped-screw", Way::TappedScrew),
            ("screw", Way::Screw),
            ("blind-insert", Way::BlindInsert),
            ("potted-insert", Way::PottedInsert),
            ("blind-rivet", Way::BlindRivet),
            ("bonded-stud", Way::BondedStud),
        ],
    );
    let Some(way) = way else {
        room.trust_keys(&KEYS);
        return None;
    };
    match way.value {
        Way::ThroughBolt => {
            let bolt = read_bolt(room, table);
            let washer = read_washer(room, bolt.as_ref());
            let sleeve = read_sleeve(room, table, bolt.as_ref());
            Some(Hold::ThroughBolt { bolt: bolt?, washer: washer?, sleeve: sleeve? })
        }
        Way::TappedScrew => {
            let (bolt, depth) = (read_bolt(room, table), read_depth(room, panel));
            Some(Hold::TappedScrew { bolt: bolt?, depth: depth? })
        }
        Way::Screw => {
            let screw = row(room, "screw", "\"wood-10\"", |name| table.screw(name));
            let grade = row(room, "grade", "\"a4-50\"", |name| table.fastener(name));
            let depth = read_depth(room, panel);
            Some(Hold::Screw { screw: screw?, grade: grade?, depth: depth? })
        }
        Way::BlindInsert => {
            let insert = row(room, "insert", "\"m6-stainless\"", |name| table.insert(name));
            let bolt = bolt_of(room, table, insert.as_ref().map(|insert| insert.thread.as_str()));
            Some(Hold::BlindInsert { bolt: bolt?, insert: insert? })
        }
        Way::PottedInsert => {
            let insert = row(room, "insert", "\"m5-potted\"", |name| table.potted_insert(name));
            let bolt = bolt_of(room, table, insert.as_ref().map(|insert| insert.thread.as_str()));
            let potting = row(room, "potting", "\"potting-epoxy\"", |name| table.filler(name));
            let depth = read_depth(room, panel);
            Some(Hold::PottedInsert { bolt: bolt?, insert: insert?, potting: potting?, depth: depth? })
        }
        Way::BlindRivet => {
            Some(Hold::BlindRivet { rivet: row(room, "rivet", "\"rivet-al-4-8\"", |name| table.rivet(name))? })
        }
        Way::BondedStud => {
            let stud = row(room, "stud", "\"m6-stud\"", |name| table.stud(name));
            let adhesive = row(room, "adhesive", "\"epoxy-paste\"", |name| table.adhesive(name));
            let bolt = bolt_of(room, table, stud.as_ref().map(|stud| stud.thread.as_str()));
            Some(Hold::BondedStud { bolt: bolt?, stud: stud?, adhesive: adhesive? })
        }
    }
}

fn read_bolt(room: &Room<'_>, table: &MaterialTable) -> Option<Bolt> {
    let thread = row(room, "thread", "\"m8\"", |name| table.thread(name));
    finish_bolt(room, table, thread)
}

/// The screw that goes into an insert or a stud has the thread of that.
fn bolt_of(room: &Room<'_>, table: &MaterialTable, thread: Option<&str>) -> Option<Bolt> {
    let thread = thread.and_then(|name| table.thread(name).ok().cloned());
    finish_bolt(room, table, thread)
}

fn finish_bolt(room: &Room<'_>, table: &MaterialTable, thread: Option<crate::material::Thread>) -> Option<Bolt> {
    let grade = row(room, "grade", "\"a4-70\"", |name| table.fastener(name));
    let lubrication = row(room, "lubrication", "\"lubricated-stainless\"", |name| table.lubrication(name));
    Some(Bolt { thread: thread?, grade: grade?, lubrication: lubrication? })
}

/// Depth from the face of the near skin; it ends before the far skin.
fn read_depth(room: &Room<'_>, panel: Option<Length>) -> Option<Length> {
    let depth = room.required::<Length>("depth", Sign::Positive, "\"1.25 in\"")?;
    if let Some(panel) = panel
        && depth.value > panel
    {
        room.report(Problem::at(depth.range, "the fixing goes deeper than the panel is thick").help(format!(
            "the panel is {} thick: go through it with `hold = \"through-bolt\"`",
            both(panel, System::Us)
        )));
    }
    Some(depth.value)
}

/// The washer under the nut; the large one of the thread where the file names none.
fn read_washer(room: &Room<'_>, bolt: Option<&Bolt>) -> Option<Washer> {
    let Some(washer) = room.room("washer") else {
        if room.value("washer").is_some() {
            return None;
        }
        let thread = &bolt?.thread;
        return Some(Washer {
            outside: thread.large_washer_outside.value,
            thickness: thread.large_washer_thickness.value,
        });
    };
    let outside = washer.required::<Length>("outside", Sign::Positive, "\"24 mm\"");
    let thickness = washer.required::<Length>("thickness", Sign::Positive, "\"2 mm\"");
    if let (Some(outside), Some(bolt)) = (&outside, bolt)
        && outside.value <= bolt.thread.clearance_hole.value
    {
        washer.report(
            Problem::at(outside.range.clone(), "the washer falls through the hole of its bolt")
                .help(format!("the hole is {}", both(bolt.thread.clearance_hole.value, System::Si))),
        );
    }
    washer.close();
    Some(Washer { outside: outside?.value, thickness: thickness?.value })
}

/// The sleeve; the inner `None` is a bolt without one.
#[allow(clippy::option_option, reason = "a sleeve, none, or one that cannot be read")]
fn read_sleeve(room: &Room<'_>, table: &MaterialTable, bolt: Option<&Bolt>) -> Option<Option<Sleeve>> {
    let Some(sleeve) = room.room("sleeve") else {
        return room.value("sleeve").is_none().then_some(None);
    };
    let outside = sleeve.required::<Length>("outside", Sign::Positive, "\"12 mm\"");
    let wall = sleeve.required::<Length>("wall", Sign::Positive, "\"1.5 mm\"");
    let alloy = row(&sleeve, "alloy", "\"6061-t6\"", |name| table.alloy(name));
    if let (Some(outside), Some(wall), Some(bolt)) = (&outside, &wall, bolt) {
        let inside: Length = outside.value - 2.0 * wall.value;
        if inside < bolt.thread.major.value {
            sleeve.report(Problem::at(outside.range.clone(), "the bolt does not go through the sleeve").help(format!(
                "the sleeve is {} inside, the bolt {}",
                both(inside.max(Length::default()), System::Si),
                both(bolt.thread.major.value, System::Si)
            )));
        }
    }
    sleeve.close();
    Some(Some(Sleeve { outside: outside?.value, wall: wall?.value, alloy: alloy? }))
}

/// What stands beside the pattern: thickness of what is clamped, and whether it is stiff.
fn read_foot(room: &Room<'_>) -> (Option<Length>, bool) {
    let clamped = room.quantity::<Length>("clamped", Sign::Positive).map(|given| given.value);
    let stiff = room.flag("stiff").unwrap_or(false);
    (clamped, stiff)
}

/// `fixings` of a piece of gear: places from the middle of its footing. The inner `None` is gear without.
#[allow(clippy::option_option, reason = "fixings, none, or some that cannot be read")]
pub(super) fn read_pattern(gear: &Room<'_>, fixings: &Fixings) -> Option<Option<Fastened>> {
    let Some(room) = gear.room("fixings") else {
        return gear.value("fixings").is_none().then_some(None);
    };
    let fixing = fixings.named_in(&room);
    let places = read_places(&room);
    let (clamped, stiff) = read_foot(&room);
    room.close();
    Some(Some(Fastened { fixing: fixing?, laid: places?, clamped, stiff }))
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

/// `fixings` of a pipe: a row along it. The inner `None` is a pipe without.
#[allow(clippy::option_option, reason = "fixings, none, or some that cannot be read")]
pub(super) fn read_row(pipe: &Room<'_>, along: Option<&Polyline>, fixings: &Fixings) -> Option<Option<Fastened>> {
    let Some(room) = pipe.room("fixings") else {
        return pipe.value("fixings").is_none().then_some(None);
    };
    let fixing = fixings.named_in(&room);
    let spacing = room.required::<Length>("spacing", Sign::Positive, "\"10 in\"");
    let end = room.quantity::<Length>("end", Sign::NotNegative);
    let (clamped, stiff) = read_foot(&room);
    let row = row_along(&room, along, spacing, end);
    room.close();
    Some(Some(Fastened { fixing: fixing?, laid: row?, clamped, stiff }))
}

/// Evenly from end to end, no farther apart than asked.
fn row_along(
    room: &Room<'_>,
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
            .map_or((spacing.range, "so far apart there is no room for two fixings on the pipe"), |given| {
                (given.range, "the first fixing lies beyond the middle of the pipe")
            });
        room.report(Problem::at(range, words).help(format!("the pipe is {} long", both(length, System::Us))));
        return None;
    }
    if (length / spacing.value).get::<ratio>() > MOST_ALONG {
        let problem = Problem::at(spacing.range, format!("that makes more than {MOST_ALONG:.0} fixings on one pipe"));
        room.report(problem.help("is the unit right?"));
        return None;
    }
    Some(Laid::Along { end: from, spacing: spacing.value })
}
