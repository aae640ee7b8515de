//! `[service]`: what the top must live through. What people are hurt by has to be ruled out in writing.

// A file says a value, says that there is none, or says nothing readable: three states, and the outer `None` is the fault.
#![allow(clippy::option_option)]

use std::ops::RangeInclusive;

use uom::si::{
    acceleration::standard_gravity,
    angle::degree,
    force::newton,
    length::{meter, millimeter},
    mass::kilogram,
    mass_density::kilogram_per_cubic_meter,
    pressure::pascal,
    velocity::meter_per_second,
};

use super::{
    problem::Problem,
    reader::{Given, Room},
    usual::usual,
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
    let speeds = |low: f64, high: f64| Velocity::new::<meter_per_second>(low)..=Velocity::new::<meter_per_second>(high);
    let speed = or_none(&room, "speed", "\"40 mph\"", ("the speed of a boat", speeds(0.5, 60.0)));
    // The strongest gust that was ever measured at the ground is 113 m/s (from memory).
    let storm = or_none(&room, "storm", "\"100 mph\"", ("a gust", speeds(2.0, 120.0)));
    let trailer = or_none(&room, "trailer", "\"70 mph\"", ("the speed of a trailer", speeds(1.0, 60.0)));
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
    let headwind = usual(&room, "headwind", headwind, ("a head wind that one drives into", speeds(0.0, 60.0)));
    let person = room.quantity::<Mass>("person", Sign::Positive);
    let persons = Mass::new::<kilogram>(20.0)..=Mass::new::<kilogram>(300.0);
    let person = usual(&room, "person", person, ("the mass of a person", persons));
    let hand_load = room.quantity::<Force>("hand_load", Sign::NotNegative);
    let by_hand = Force::default()..=Force::new::<newton>(10e3);
    let hand_load = usual(&room, "hand_load", hand_load, ("what hands pull at an edge", by_hand));
    let ponding = unless_none::<Length>(&room, "ponding");
    let depths = Length::new::<millimeter>(0.5)..=Length::new::<millimeter>(500.0);
    let ponding = usual(&room, "ponding", ponding, ("the depth of water that stands on a top", depths));
    let snow = unless_none::<Pressure>(&room, "snow");
    let snows = Pressure::new::<pascal>(20.0)..=Pressure::new::<pascal>(20e3);
    let snow = usual(&room, "snow", snow, ("a load of snow", snows));
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

/// A quantity that may be left out, also in so many words.
fn unless_none<Q: Dimensioned>(room: &Room<'_>, key: &'static str) -> Option<Given<Q>> {
    if is_none(room.value(key)?) {
        return None;
    }
    room.quantity_or::<Q>(key, Sign::Positive, &format!(", or `{key} = \"none\"`"))
}

fn is_none(value: &toml::Spanned<toml::de::DeValue<'_>>) -> bool {
    matches!(value.get_ref(), toml::de::DeValue::String(text) if text == "none")
}

/// A quantity, or the word "none": leaving a hazard out is a decision, and the file shows it.
fn or_none<Q: Dimensioned>(
    room: &Room<'_>,
    key: &'static str,
    example: &str,
    ever: (&str, RangeInclusive<Q>),
) -> Option<Option<Q>> {
    room.missing_or(key, example, &format!(", or `{key} = \"none\"` if that will never happen"));
    if is_none(room.value(key)?) {
        return Some(None);
    }
    let never = format!(", or `{key} = \"none\"` if that will never happen");
    usual(room, key, room.quantity_or::<Q>(key, Sign::Positive, &never), ever).map(|given| Some(given.value))
}

fn read_slam(room: &Room<'_>, criteria: &Criteria) -> Option<Slam> {
    room.missing_or("slam", "\"3 g\"", ", or `slam = \"none\"` if the boat never leaves flat water");
    let value = room.value("slam")?;
    match value.get_ref() {
        toml::de::DeValue::Table(_) => read_boat(room.room("slam")?, criteria),
        _ => {
            let landings = [0.01, 20.0].map(Acceleration::new::<standard_gravity>);
            or_none(room, "slam", "\"3 g\"", ("the acceleration of a landing", landings[0]..=landings[1]))
                .map(|slam| slam.map_or(Slam::None, Slam::Given))
        }
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
    let lengths = |low: f64, high: f64| Length::new::<meter>(low)..=Length::new::<meter>(high);
    let length = |key, sign, example, noun, range| {
        value(usual(&room, key, room.required::<Length>(key, sign, example), (noun, range)))
    };
    let waterline =
        length("waterline", Sign::Positive, "\"23 ft\"", "the waterline of such a boat", lengths(1.0, 60.0));
    let beam = length("beam", Sign::Positive, "\"7 ft 6 in\"", "the beam of such a boat", lengths(0.3, 20.0));
    let deadrise = below_right_angle(&room, "deadrise", room.required("deadrise", Sign::NotNegative, "\"20 deg\""));
    let mass = room.required::<Mass>("mass", Sign::Positive, "\"7000 lb\"");
    let masses = Mass::new::<kilogram>(50.0)..=Mass::new::<kilogram>(500e3);
    let mass = value(usual(&room, "mass", mass, ("the mass of such a boat", masses)));
    let speed = room.required::<Velocity>("speed", Sign::Positive, "\"28 kn\"");
    let speeds = Velocity::new::<meter_per_second>(0.5)..=Velocity::new::<meter_per_second>(60.0);
    let speed = value(usual(&room, "speed", speed, ("the speed of a boat", speeds)));
    let trim = below_right_angle(&room, "trim", room.required("trim", Sign::Positive, "\"4 deg\""));
    let waves = length("waves", Sign::Positive, "\"2 ft\"", "the height of waves", lengths(0.01, 20.0));
    let ahead = length("ahead", Sign::Any, "\"2 ft\"", "a place on such a boat", lengths(-60.0, 60.0));
    let water = room.quantity::<MassDensity>("water", Sign::Positive);
    let [fresh, salt] = [900.0, 1300.0].map(MassDensity::new::<kilogram_per_cubic_meter>);
    let water = value(usual(&room, "water", water, ("the density of water", fresh..=salt)));
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
