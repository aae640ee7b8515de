//! FAA Advisory Circular 43.13-2, chapter 3: drag of an antenna. Formula and example are from memory.

use skinspan::{
    load::wind::{gear_drag, velocity_pressure},
    units::{Area, MassDensity, Ratio, Velocity},
};
use uom::si::{area::square_foot, force::pound_force, mass_density::kilogram_per_cubic_meter, velocity::mile_per_hour};

use crate::kit::within;

/// The example prints 2.75 where its own formula gives 2.759.
const PRINTED: f64 = 0.004;
/// 0.00256 and 0.000327 have three digits.
const THREE_DIGITS: f64 = 0.003;

/// *D* = 0.000327 *A V*² (lbf, square feet, mph): the drag of a streamlined blade, a coefficient of 0.128 in air of
/// 0.00256 *V*² psf. For 0.135 square feet at 250 mph it prints 2.75 lbf. Its flat plate, 0.00327 *A V*², is 1.28.
#[test]
fn antenna_drag_ac_43_13_2_chapter_3() {
    let air = MassDensity::new::<kilogram_per_cubic_meter>(1.225);
    let q = velocity_pressure(Velocity::new::<mile_per_hour>(250.0), air);
    let force =
        |drag: f64, area: f64| gear_drag(q, Ratio::from(drag), Area::new::<square_foot>(area)).get::<pound_force>();
    let blade = 0.000327 / 0.00256;
    within(force(blade, 0.135), 2.75, PRINTED + THREE_DIGITS);
    within(force(blade, 0.135), 0.000327 * 0.135 * 250.0 * 250.0, THREE_DIGITS);
    within(force(1.28, 0.135), 0.00327 * 0.135 * 250.0 * 250.0, THREE_DIGITS);
}
