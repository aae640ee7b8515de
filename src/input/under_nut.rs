//! `washer` and `sleeve` of a through-bolt.

use std::ops::RangeInclusive;

use uom::si::length::millimeter;

use super::{fixing::row, problem::Problem, reader::Room, usual::usual};
use crate::{
    material::MaterialTable,
    top::{Bolt, Sleeve, Washer},
    units::{Length, Sign, System, both},
};

/// The washer under the nut; the large one of the thread where the file names none.
pub(super) fn read_washer(room: &Room<'_>, bolt: Option<&Bolt>) -> Option<Washer> {
    let Some(washer) = room.room("washer") else {
        if room.value("washer").is_some() {
            return None;
        }
        let thread = &bolt?.thread;
        return Some(Washer::large_of(thread));
    };
    let outside = washer.required::<Length>("outside", Sign::Positive, "\"24 mm\"");
    let outside = usual(&washer, "outside", outside, ("the outside of a washer", outsides(200.0)));
    let thickness = washer.required::<Length>("thickness", Sign::Positive, "\"2 mm\"");
    if let (Some(outside), Some(bolt)) = (&outside, bolt)
        && outside.value <= bolt.thread.clearance_hole.value
    {
        washer.report(
            Problem::at(outside.range.clone(), "the washer falls through the hole of its bolt")
                .help(format!("the hole is {}", both(bolt.thread.clearance_hole.value, System::Si))),
        );
    } else if let (Some(outside), Some(thickness)) = (&outside, &thickness)
        && thickness.value > outside.value / 4.0
    {
        washer.report(
            Problem::at(thickness.range.clone(), "the washer is thicker than a quarter of its width")
                .help("is the unit right?"),
        );
    }
    washer.close();
    Some(Washer { outside: outside?.value, thickness: thickness?.value })
}

/// From the smallest there are up to so many millimetres.
fn outsides(most: f64) -> RangeInclusive<Length> {
    Length::new::<millimeter>(2.0)..=Length::new::<millimeter>(most)
}

/// The sleeve; the inner `None` is a bolt without one.
#[allow(clippy::option_option, reason = "a sleeve, none, or one that cannot be read")]
pub(super) fn read_sleeve(room: &Room<'_>, table: &MaterialTable, bolt: Option<&Bolt>) -> Option<Option<Sleeve>> {
    let Some(sleeve) = room.room("sleeve") else {
        return room.value("sleeve").is_none().then_some(None);
    };
    let outside = sleeve.required::<Length>("outside", Sign::Positive, "\"12 mm\"");
    let outside = usual(&sleeve, "outside", outside, ("the outside of a sleeve", outsides(100.0)));
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
