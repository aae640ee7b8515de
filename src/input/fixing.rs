//! `[[fixing]]`: kinds of fixings by name.

use std::{cell::RefCell, sync::Arc};

use uom::si::torque::newton_meter;

use super::{
    problem::{Problem, offer},
    reader::Room,
    sizes::larger,
    under_nut::{read_sleeve, read_washer},
    unknown_name,
    usual::usual,
};
use crate::{
    material::{MaterialTable, UnknownName},
    top::{Bolt, Fastened, Fixing, Hold},
    units::{Length, Sign, Torque},
};

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
    /// Names that were asked for and that no fixing has, each reported where it was asked for first.
    unknown: RefCell<Vec<String>>,
}

pub(super) fn read_fixings(root: &Room<'_>, table: &MaterialTable, panel: Option<Length>) -> Fixings {
    let rooms = root.rooms("fixing");
    let unreadable = rooms.is_empty() && (root.value("fixing").is_some() || root.misspells("fixing"));
    let mut fixings =
        Fixings { all: Vec::new(), faulty: Vec::new(), nameless: unreadable, unknown: RefCell::default() };
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
        let torque = read_torque(&room, hold.as_ref());
        room.close();
        match (name, hold) {
            (Some(name), Some(hold)) => {
                let larger = larger(&hold, table);
                fixings.all.push(Arc::new(Fixing { name: name.value, hold, torque, larger }));
            }
            (Some(name), None) => fixings.faulty.push(name.value),
            (None, _) => fixings.nameless = true,
        }
    }
    fixings
}

/// The torque that the shop uses; a screw and a rivet have none that says what they bear.
fn read_torque(room: &Room<'_>, hold: Option<&Hold>) -> Option<Torque> {
    let [least, most] = [0.05, 1000.0].map(Torque::new::<newton_meter>);
    let torque = room.quantity::<Torque>("torque", Sign::Positive);
    let torque = usual(room, "torque", torque, ("the torque of a fixing", least..=most))?;
    let why = match hold {
        Some(Hold::Screw { .. }) => "a screw is turned home by hand: no table says what pull its torque makes",
        Some(Hold::BlindRivet { .. }) => "a rivet sets itself",
        _ => return Some(torque.value),
    };
    room.report(Problem::at(torque.range, why).help("leave `torque` out"));
    None
}

impl Fixings {
    fn knows(&self, name: &str) -> bool {
        self.all.iter().any(|fixing| fixing.name == name) || self.faulty.iter().any(|faulty| faulty == name)
    }

    /// Names of those that hold nothing of what there is.
    pub(super) fn idle<'t>(&self, fastened: impl Iterator<Item = &'t Fastened>) -> Vec<String> {
        let used: Vec<&str> = fastened.map(|fastened| fastened.fixing.name.as_str()).collect();
        let names = self.all.iter().map(|fixing| &fixing.name);
        names.filter(|name| !used.contains(&name.as_str())).cloned().collect()
    }

    /// The fixing that a room asks for by its name.
    pub(super) fn named_in(&self, room: &Room<'_>) -> Option<Arc<Fixing>> {
        room.missing("fixing", "\"radar bolts\"");
        let given = room.text("fixing")?;
        if let Some(fixing) = self.all.iter().find(|fixing| fixing.name == given.value) {
            return Some(Arc::clone(fixing));
        }
        let named_before = self.unknown.borrow().contains(&given.value);
        if !self.knows(&given.value) && !self.nameless && !named_before {
            self.unknown.borrow_mut().push(given.value.clone());
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
pub(super) fn row<'t, T>(
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
        room.report(
            Problem::at(depth.range, "the fixing goes deeper than the panel is thick")
                .help(format!("the panel is {} thick: go through it with `hold = \"through-bolt\"`", room.both(panel))),
        );
    }
    Some(depth.value)
}
