//! Budynas and Nisbett, *Shigley's Mechanical Engineering Design*, 9th ed., section 8-12: bolts loaded in shear by an
//! eccentric force. The example is from memory.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::{
    closed_form::fixing_group::{FixingGroup, FootingAction},
    geometry::{Foot, Pattern, Point},
    units::{Force, Pressure},
};
use uom::si::force::{kilonewton, newton};

use crate::kit::{m, within};

/// The source prints three digits, from intermediate values of three digits.
const THREE_DIGITS: f64 = 0.005;

/// Example 8-7: four bolts at (±75, ±60) mm, 16 kN 425 mm to the side of their middle. Resultants 21.0 kN on the two
/// near the force, 14.8 kN on the two others.
#[test]
fn shear_on_each_bolt_shigley_9_example_8_7() {
    let at = Pattern::Grid { along_x: 2, along_y: 2, pitch_x: m(0.150), pitch_y: m(0.120) }.points();
    let foot = Foot::Rectangle { length: m(0.25), width: m(0.2) };
    let stiffness = Force::new::<newton>(1e8) / m(1.0);
    let group =
        FixingGroup::new(at, foot, stiffness, Pressure::new::<uom::si::pressure::pascal>(1e11) / m(1.0)).unwrap();
    let kn = Force::new::<kilonewton>;
    let offset = Point { x: m(0.425), y: m(0.0) };
    let action = FootingAction::of_force_at([kn(0.0), kn(-16.0), kn(0.0)], offset, m(0.0));
    let shears = group.shears(&action).unwrap();
    for (place, [x, y]) in group.at().iter().zip(shears) {
        let printed = if place.x > m(0.0) { 21.0 } else { 14.8 };
        within(x.hypot(y).get::<kilonewton>(), printed, THREE_DIGITS);
        // Exact: 6800 N·m over 4 × (75² + 60²) mm², and 4 kN straight down.
        let arm = 6.8 / (4.0 * (0.075 * 0.075 + 0.06 * 0.06));
        within(x.get::<kilonewton>(), arm * place.y.value, 1e-12);
        within(y.get::<kilonewton>(), -4.0 - arm * place.x.value, 1e-12);
    }
}
