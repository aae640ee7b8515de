//! `[[gear]]`: what the top carries, what acts on it, and what it stands on.

use std::ops::RangeInclusive;

use uom::si::{
    area::square_meter,
    f64::Area,
    force::newton,
    length::{meter, millimeter},
    mass::{gram, kilogram},
    ratio::ratio,
    torque::newton_meter,
};

use super::{
    fastened::read_pattern,
    fixing::Fixings,
    outline::{beside, panel_is, where_it_is, words},
    problem::Problem,
    reader::{Given, Room},
    unknown_name,
    usual::usual,
};
use crate::{
    geometry::{Foot, Point},
    load_case::MOST_GIVEN,
    material::{Body, MaterialTable},
    top::{Fastened, Gear, GivenForce, Outline},
    units::{Force, Length, Mass, Ratio, Sign, Torque},
};

pub(super) fn read_gear(
    root: &Room<'_>,
    table: &MaterialTable,
    (outline, fixings): (Option<&Outline>, &Fixings),
) -> Vec<Gear> {
    let rooms = root.named_rooms("gear").into_iter();
    rooms.filter_map(|(name, room)| read_one(room, name, table, (outline, fixings))).collect()
}

fn read_one(
    room: Room<'_>,
    name: String,
    table: &MaterialTable,
    (outline, fixings): (Option<&Outline>, &Fixings),
) -> Option<Gear> {
    let mass = room.required::<Mass>("mass", Sign::Positive, "\"10 kg\"");
    let masses = Mass::new::<gram>(10.0)..=Mass::new::<kilogram>(1000.0);
    let mass = usual(&room, "mass", mass, ("the mass of gear on a top", masses));
    let cg_height = room.required::<Length>("cg_height", Sign::NotNegative, "\"6 in\"");
    let cg_height = usual(&room, "cg_height", cg_height, ("the height of gear on a top", heights()));
    let foot = read_foot(&room, "footing");
    let wind = read_wind(&room, table, cg_height.as_ref().map(|given| given.value));
    let grab_height = room.quantity::<Length>("grab_height", Sign::NotNegative);
    let grab_height = usual(&room, "grab_height", grab_height, ("the height of gear on a top", heights()));
    let grab_height = grab_height.map(|given| given.value);
    let given = read_given(&room);
    let at = room.point("at");
    room.missing("at", "[\"30 in\", \"38 in\"]");
    if let (Some(at), Some(outline)) = (&at, outline) {
        if !outline.holds(at.value) {
            room.report(beside(&room, at.range.clone(), at.value, outline));
        } else if let Some(hole) = outline.hole_at(at.value) {
            room.report(
                Problem::at(at.range.clone(), format!("{name} stands in {}", hole.name))
                    .help(where_it_is(&room, at.value, outline)),
            );
        }
    }
    let foot = foot.filter(|foot| smaller_than_panel(&room, foot, outline));
    let fastened = read_pattern(&room, fixings);
    if let (Some(foot), Some(Some(fastened))) = (&foot, &fastened) {
        held_by_foot(&room, foot, fastened);
    }
    if let (Some(at), Some(outline), Some(Some(fastened))) = (&at, outline, &fastened)
        && outline.holds(at.value)
        && outline.hole_at(at.value).is_none()
    {
        within_outline(&room, at.value, outline, fastened);
    }
    room.close();
    let wind = wind?;
    Some(Gear {
        name,
        mass: mass?.value,
        cg_height: cg_height?.value,
        at: at?.value,
        foot: foot?,
        wind_area: wind.area,
        wind_height: wind.height,
        drag: wind.drag,
        lift: wind.lift,
        limber: wind.limber,
        grab_height,
        given,
        fastened: fastened?,
    })
}

/// Heights above the top: the tallest thing there is a long whip.
fn heights() -> RangeInclusive<Length> {
    Length::default()..=Length::new::<meter>(15.0)
}

/// Sides of feet; how large one may be at the most says the panel.
fn feet() -> (&'static str, RangeInclusive<Length>) {
    ("the size of a foot", Length::new::<millimeter>(2.0)..=Length::new::<meter>(20.0))
}

/// A length is the side of a square; a table says another shape.
pub(super) fn read_foot(room: &Room<'_>, key: &'static str) -> Option<Foot> {
    room.missing_or(key, "\"8 in\"", ", or `{ diameter = \"9 in\" }` or `{ length = \"9 in\", width = \"4 in\" }`");
    let Some(foot) = room.room_or_text(key) else {
        let side = usual(room, key, room.quantity_or::<Length>(key, Sign::Positive, ""), feet())?.value;
        return Some(Foot::Rectangle { length: side, width: side });
    };
    let size = |key| usual(&foot, key, foot.quantity_or::<Length>(key, Sign::Positive, ""), feet());
    let [diameter, length, width] = ["diameter", "length", "width"].map(size);
    let [round, long, wide] = ["diameter", "length", "width"].map(|key| foot.value(key).is_some());
    let problem = foot
        .problem("is a disc or a rectangle")
        .help("write `{ diameter = \"9 in\" }` or `{ length = \"9 in\", width = \"4 in\" }`");
    if round && (long || wide) {
        foot.report(problem);
        foot.close();
        return None;
    }
    if long || wide {
        foot.missing("length", "\"9 in\"");
        foot.missing("width", "\"4 in\"");
    } else {
        foot.absent_all(&["diameter", "length", "width"], problem);
    }
    foot.close();
    if let Some(diameter) = diameter {
        return Some(Foot::Disc { diameter: diameter.value });
    }
    Some(Foot::Rectangle { length: length?.value, width: width?.value })
}

struct Wind {
    area: Area,
    height: Length,
    drag: Ratio,
    lift: Ratio,
    limber: bool,
}

fn read_wind(room: &Room<'_>, table: &MaterialTable, cg_height: Option<Length>) -> Option<Wind> {
    let area = room.quantity::<Area>("wind_area", Sign::NotNegative);
    let areas = Area::default()..=Area::new::<square_meter>(20.0);
    let area = usual(room, "wind_area", area, ("the area of gear in the wind", areas));
    let height = room.quantity::<Length>("wind_height", Sign::NotNegative);
    let height = usual(room, "wind_height", height, ("the height of gear on a top", heights()));
    // A flat plate across the wind has a drag of 2, and no shape much more.
    let coefficient = |key| {
        let given = room.quantity::<Ratio>(key, Sign::NotNegative);
        usual(room, key, given, ("a coefficient of wind", Ratio::default()..=Ratio::new::<ratio>(5.0)))
    };
    let [drag, lift] = ["drag", "lift"].map(coefficient);
    let limber = room.flag("limber");
    let slenderness = room.quantity::<Ratio>("slenderness", Sign::Positive);
    let body: Option<Body> = room.text("body").and_then(|given| match table.body(&given.value) {
        Ok(body) => Some(body.clone()),
        Err(name) => {
            unknown_name(room, &given, &name);
            None
        }
    });
    if area.is_some() {
        room.absent_all(
            &["drag", "body"],
            room.problem("has a `wind_area` and does not say how it stands in the wind")
                .help("write `body = \"dome\"` for a shape of the material table, or `drag = 1.2`"),
        );
    }
    if drag.is_some() || body.is_some() {
        room.missing("wind_area", "\"1.5 ft2\"");
    }
    let zero = Ratio::new::<ratio>(0.0);
    let of_body = body.as_ref().and_then(|body| drag_of(room, body, slenderness));
    Some(Wind {
        area: area.map_or_else(Area::default, |given| given.value),
        height: height.map(|given| given.value).or(cg_height)?,
        drag: drag.map(|given| given.value).or(of_body).unwrap_or(zero),
        lift: lift.map_or_else(|| body.and_then(|body| body.lift).map_or(zero, |lift| lift.value), |given| given.value),
        limber: limber.unwrap_or(false),
    })
}

/// Drag of a body, at its slenderness where it depends on it.
fn drag_of(room: &Room<'_>, body: &Body, slenderness: Option<Given<Ratio>>) -> Option<Ratio> {
    let at = match (&slenderness, body.drag.range()) {
        (Some(given), _) => given.value,
        // One coefficient, whatever its slenderness.
        (None, None) => Ratio::new::<ratio>(1.0),
        (None, Some(_)) => {
            room.missing("slenderness", "40");
            return None;
        }
    };
    match body.drag.at(at) {
        Ok(drag) => Some(drag.value),
        Err(out) => {
            let range = slenderness.map_or(0..0, |given| given.range);
            room.report(Problem::at(range, out.to_string()).help("slenderness is length over diameter"));
            None
        }
    }
}

fn read_given(room: &Room<'_>) -> Vec<GivenForce> {
    let forces = room.rooms("given");
    if let Some(one_more) = forces.get(MOST_GIVEN) {
        one_more.report(
            one_more
                .problem(&format!("is one too many: {MOST_GIVEN} forces can be given for one piece of gear"))
                .help("each acts alone; leave out what another covers"),
        );
    }
    forces
        .into_iter()
        .enumerate()
        .map(|(index, force)| {
            let name = force.text("name").map_or_else(|| format!("force {}", index + 1), |given| given.value);
            let most = Force::new::<newton>(200e3);
            let up = force.quantity::<Force>("up", Sign::Any);
            let up = usual(&force, "up", up, ("a force on gear", -most..=most));
            let side = force.quantity::<Force>("side", Sign::NotNegative);
            let side = usual(&force, "side", side, ("a force on gear", Force::default()..=most));
            let height = force.quantity::<Length>("height", Sign::NotNegative);
            let height = usual(&force, "height", height, ("the height of gear on a top", heights()));
            let most = Torque::new::<newton_meter>(200e3);
            let twist = force.quantity::<Torque>("twist", Sign::Any);
            let twist = usual(&force, "twist", twist, ("a twist on gear", -most..=most));
            force.absent_all(
                &["up", "side", "twist"],
                force.problem("does not say what acts").help("write `up`, `side` with `height`, or `twist`"),
            );
            if force.value("side").is_some() {
                force.missing("height", "\"12 in\"");
            }
            if let (None, Some(height)) = (force.value("side"), &height) {
                force.report(
                    Problem::at(height.range.clone(), "`height` is where `side` acts, and there is no `side`")
                        .help("write `side` as well, or leave `height` out"),
                );
            }
            force.close();
            GivenForce {
                name,
                up: up.map_or_else(Force::default, |given| given.value),
                side: side.map_or_else(Force::default, |given| given.value),
                height: height.map_or_else(Length::default, |given| given.value),
                twist: twist.map_or_else(Torque::default, |given| given.value),
            }
        })
        .collect()
}

/// Whether the foot is smaller than the panel that it stands on; reports one that is not.
fn smaller_than_panel(room: &Room<'_>, foot: &Foot, outline: Option<&Outline>) -> bool {
    let (Some(outline), [length, width]) = (outline, foot.sizes()) else { return true };
    let fits = length <= outline.length() && width <= outline.width();
    if !fits {
        let range = room.value("footing").map_or(0..0, toml::Spanned::span);
        room.report(Problem::at(range, "this is larger than the panel").help(panel_is(room, outline)));
    }
    fits
}

/// Fixings stand in the foot that they hold.
pub(super) fn held_by_foot(room: &Room<'_>, foot: &Foot, fastened: &Fastened) {
    if fastened.laid.about_middle().into_iter().all(|place| foot.holds(place)) {
        return;
    }
    let range = room.value("fixings").map_or(0..0, toml::Spanned::span);
    let [length, width] = foot.sizes();
    room.report(Problem::at(range, "a fixing stands beside the footing that it holds").help(format!(
        "the footing measures {} along the length and {} across: make it as large as the foot really is",
        room.both(length),
        room.both(width)
    )));
}

/// A hole is drilled in a panel.
fn within_outline(room: &Room<'_>, at: Point, outline: &Outline, fastened: &Fastened) {
    let places = fastened.laid.about_middle().into_iter().map(|place| Point { x: at.x + place.x, y: at.y + place.y });
    let Some(outside) = places.into_iter().find(|place| outline.within_by(*place) <= Length::default()) else { return };
    let range = room.value("fixings").map_or(0..0, toml::Spanned::span);
    room.report(
        Problem::at(range, format!("the fixing at {} does not lie within the panel", words(room, outside)))
            .help(where_it_is(room, outside, outline)),
    );
}
