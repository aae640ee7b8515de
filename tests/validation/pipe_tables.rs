//! Section moduli of pipes as tables of steel sections print them (from memory): schedule 40, nominal 2 in (2.375 in by
//! 0.154 in) 0.561 in³ and nominal 1½ in (1.900 in by 0.145 in) 0.326 in³.

use skinspan::{strength::Tube, units::Length};
use uom::si::{
    length::{inch, millimeter},
    volume::{cubic_inch, cubic_millimeter},
};

use crate::kit::within;

/// Three digits are printed.
const PRINTED: f64 = 2e-3;
/// The same numbers in another order.
const ROUNDING: f64 = 1e-12;

fn tube(outside: f64, wall: f64) -> Tube {
    Tube { outside: Length::new::<inch>(outside), wall: Length::new::<inch>(wall) }
}

#[test]
fn section_modulus_pipe_tables() {
    within(tube(2.375, 0.154).section_modulus().get::<cubic_inch>(), 0.561, PRINTED);
    within(tube(1.9, 0.145).section_modulus().get::<cubic_inch>(), 0.326, PRINTED);
}

/// A wall of half the diameter leaves a bar: π D³/32.
#[test]
fn section_modulus_of_a_bar() {
    let bar = Tube { outside: Length::new::<millimeter>(20.0), wall: Length::new::<millimeter>(10.0) };
    within(bar.section_modulus().get::<cubic_millimeter>(), std::f64::consts::PI * 250.0, ROUNDING);
}
