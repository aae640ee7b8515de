//! First natural frequency of a bay.

use std::f64::consts::PI;

use uom::si::{mass::kilogram, ratio::ratio};

use super::{BackingPiece, Bay, beyond_core, plate_of};
use crate::{
    analysis::sections::Sections,
    closed_form::plate::PlateFault,
    top::Top,
    units::{Frequency, Length, Mass, Ratio},
};

/// First natural frequency of a bay, its mass with the gear that stands on it and the backing in it spread over it.
///
/// ```text
/// m' = m + 4 Σ M/(a b) + Σ ΔM s_x s_y/(a b)        s = 1 − (sin 2πv/l − sin 2πu/l)/(2π (v − u)/l)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *m* | mass per area of the field |
/// | *M*, `ΔM` | mass of gear; what a piece of backing weighs more than core, where that is more than nothing |
/// | *a*, *b*, *l* | sides of the bay; the one along `u` and `v` |
/// | *u*, *v* | where a piece of backing begins and ends |
///
/// # Errors
///
/// [`PlateFault`] where its sides or stiffnesses make no plate.
pub fn bay_frequency(top: &Top, sections: &Sections, bay: &Bay, core_left: Ratio) -> Result<Frequency, PlateFault> {
    let plate = plate_of(bay, sections, core_left)?;
    // Gear in the middle of a simply supported plate moves four times the mean square of the first mode.
    let gear =
        top.gear.iter().filter(|gear| bay.holds(gear.at)).fold(Mass::default(), |sum, gear| sum + gear.mass * 4.0);
    let moved = bay.backing.iter().fold(gear, |sum, piece| {
        let more = beyond_core(top, piece).max(Mass::new::<kilogram>(0.0));
        sum + more * mean_square(bay, piece)
    });
    plate.first_frequency(top.field_mass() + moved / (bay.sides[0] * bay.sides[1]))
}

/// Mean square of the first mode, a half wave along each side, over a piece of backing, over that of the whole bay.
fn mean_square(bay: &Bay, piece: &BackingPiece) -> Ratio {
    let along = |centre: Length, from: Length, size: Length, side: Length| {
        let (middle, half) = (PI * ((centre - from) / side).get::<ratio>(), PI * (size / 2.0 / side).get::<ratio>());
        1.0 - (2.0 * middle).cos() * (2.0 * half).sin() / (2.0 * half)
    };
    let (centre, sides) = (piece.cover.centre, piece.cover.sides);
    Ratio::from(
        along(centre.x, bay.from.x, sides[0], bay.sides[0]) * along(centre.y, bay.from.y, sides[1], bay.sides[1]),
    )
}
