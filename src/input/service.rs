//! `[service]`: what the top must live through. What people are hurt by has to be ruled out in writing.

// A file says a value, says that there is none, or says nothing readable: three states, and the outer `None` is the fault.
#![allow(clippy::option_option)]

use uom::si::angle::degree;

use super::{
    problem::Problem,
    reader::{Given, Room},
};
use crate::{
    criteria::Criteria,
    load::{
        slam::{HeadSea, PlaningBoat},
        wind::Underside,
    },
    service::{BoatInWaves, Service, Slam, Sun, Walking},
    units::{Acceleration, Angle, Dimensioned, Force, Length, Mass, MassDensity, Pressure, Sign, Velocity},
};

pub(super) fn read_service(root: &Room<'_>, criteria: &Criteria) -> Option<Service> {
    let Some(room) = root.room("service") else {
        root.absent("service", Problem::at(0..0, "there is no `[service]`: nothing says what the top must live through").help(
            "add `[service]` with `speed`, `storm`, `trailer`, `slam`, `people`, `walking`, `underside` and `sun`; write \"none\" for what will never happen",
        ));
        return None;
    };
    let speed = or_none::<Velocity>(&room, "speed", "\"40 mph\"");
    let storm = or_none::<Velocity>(&room, "storm", "\"100 mph\"");
    let trailer = or_none::<Velocity>(&room, "trailer", "\"70 mph\"");
    let slam = read_slam(&room, criteria);
    room.missing("people", "1");
    let people = room.count("people", 0, 4);
    let walking = required_choice(
        &room,
        "walking",
        &[("no-walk", Walking::NoWalk), ("walk-on", Walking::WalkOn), ("coachroof", Walking::Coachroof)],
        "\"no-walk\"",
    );
    let sun =
        required_choice(&room, "sun", &[("none", Sun::None), ("light", Sun::Light), ("dark", Sun::Dark)], "\"dark\"");
    let underside = required_choice(
        &room,
        "underside",
        &[("open", Underside::Open), ("blocked", Underside::Blocked)],
        "\"blocked\"",
    );
    let headwind = room.quantity::<Velocity>("headwind", Sign::NotNegative);
    let person = room.quantity::<Mass>("person", Sign::Positive);
    let hand_load = room.quantity::<Force>("hand_load", Sign::NotNegative);
    let ponding = room.quantity::<Length>("ponding", Sign::Positive);
    let snow = room.quantity::<Pressure>("snow", Sign::Positive);
    room.close();
    Some(Service {
        speed: speed?,
        headwind: headwind.map_or(criteria.headwind.value, |given| given.value),
        storm: storm?,
        trailer: trailer?,
        underside: underside?,
        slam: slam?,
        people: people?,
        person: person.map_or(criteria.person_mass.value, |given| given.value),
        walking: walking?,
        hand_load: hand_load.map_or(criteria.hand_force.value, |given| given.value),
        ponding: ponding.map(|given| given.value),
        snow: snow.map(|given| given.value),
        sun: sun?,
    })
}

fn required_choice<T: Copy>(room: &Room<'_>, key: &'static str, words: &[(&str, T)], example: &str) -> Option<T> {
    room.missing(key, example);
    room.choice(key, words).map(|given| given.value)
}

/// A quantity, or the word "none": leaving a hazard out is a decision, and the file shows it.
fn or_none<Q: Dimensioned>(room: &Room<'_>, key: &'static str, example: &str) -> Option<Option<Q>> {
    room.missing_or(key, example, &format!(", or `{key} = \"none\"` if that will never happen"));
    let value = room.value(key)?;
    if matches!(value.get_ref(), toml::de::DeValue::String(text) if text == "none") {
        return Some(None);
    }
    let never = format!(", or `{key} = \"none\"` if that will never happen");
    room.quantity_or::<Q>(key, Sign::Positive, &never).map(|given| Some(given.value))
}

fn read_slam(room: &Room<'_>, criteria: &Criteria) -> Option<Slam> {
    room.missing_or("slam", "\"3 g\"", ", or `slam = \"none\"` if the boat never leaves flat water");
    let value = room.value("slam")?;
    match value.get_ref() {
        toml::de::DeValue::Table(_) => read_boat(room.room("slam")?, criteria),
        _ => or_none::<Acceleration>(room, "slam", "\"3 g\"").map(|slam| slam.map_or(Slam::None, Slam::Given)),
    }
}

/// An angle of a hull; one of 90 degrees or more is a slip in its unit.
fn below_right_angle(room: &Room<'_>, key: &str, given: Option<Given<Angle>>) -> Option<Angle> {
    let given = given?;
    if given.value >= Angle::new::<degree>(90.0) {
        let problem = Problem::at(given.range, format!("`{key}` of a boat is below 90 degrees"));
        room.report(problem.help("is the unit right?"));
        return None;
    }
    Some(given.value)
}

fn read_boat(room: Room<'_>, criteria: &Criteria) -> Option<Slam> {
    fn value<Q>(given: Option<Given<Q>>) -> Option<Q> {
        given.map(|given| given.value)
    }
    let waterline = value(room.required::<Length>("waterline", Sign::Positive, "\"23 ft\""));
    let beam = value(room.required::<Length>("beam", Sign::Positive, "\"7 ft 6 in\""));
    let deadrise = below_right_angle(&room, "deadrise", room.required("deadrise", Sign::NotNegative, "\"20 deg\""));
    let mass = value(room.required::<Mass>("mass", Sign::Positive, "\"7000 lb\""));
    let speed = value(room.required::<Velocity>("speed", Sign::Positive, "\"28 kn\""));
    let trim = below_right_angle(&room, "trim", room.required("trim", Sign::Positive, "\"4 deg\""));
    let waves = value(room.required::<Length>("waves", Sign::Positive, "\"2 ft\""));
    let ahead = value(room.required::<Length>("ahead", Sign::Any, "\"2 ft\""));
    let water = value(room.quantity::<MassDensity>("water", Sign::Positive));
    room.close();
    Some(Slam::Boat(Box::new(BoatInWaves {
        boat: PlaningBoat {
            length: waterline?,
            beam: beam?,
            deadrise: deadrise?,
            displacement: mass?,
            speed: speed?,
            trim: trim?,
        },
        sea: HeadSea { significant_height: waves?, density: water.unwrap_or(criteria.sea_water_density.value) },
        ahead: ahead?,
    })))
}
