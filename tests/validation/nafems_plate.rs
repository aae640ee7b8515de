//! NAFEMS R0031, test 3: square sandwich plate under pressure.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::{
    closed_form::plate::{Plate, PlateLoad, PlateStiffness},
    units::{FlexuralRigidity, Length, ShearStiffness},
};

use crate::kit::{force, m, pressure, rigidity, share, within};

/// The published targets come from finite elements of several codes and spread by 4 % in `σyy`.
const TARGET_SPREAD: f64 = 0.01;
const PSI: f64 = 4.4482216152605 / (0.0254 * 0.0254);

/// Deflection at the centre, skin stresses at the middle of the skin, and shear stress at the quarter point. Units in
/// and lbf turned to SI exactly.
#[test]
fn deflection_and_stress_nafems_r0031_3() {
    let inch: f64 = 0.0254;
    let (t, c) = (0.028 * inch, 0.75 * inch);
    let d = c + t;
    let (e1, e2, nu12, g) = (1e7 * PSI, 4e6 * PSI, 0.3, 1.875e6 * PSI);
    let reduced = 1.0 - nu12 * nu12 * e2 / e1;
    let inertia = t * d * d / 2.0 + t.powi(3) / 6.0;
    let bend = |q: f64| -> FlexuralRigidity { rigidity(q * inertia) };
    let shear = |g: f64| -> ShearStiffness { force(g * PSI * d * d / c) };
    let stiffness = PlateStiffness {
        d11: bend(e1 / reduced),
        d12: bend(nu12 * e2 / reduced),
        d22: bend(e2 / reduced),
        d66: bend(g),
        shear_x: shear(3e4),
        shear_y: shear(1.2e4),
    };
    let side: Length = m(10.0 * inch);
    let plate = Plate::new(side, side, stiffness).unwrap();
    let load = PlateLoad::Uniform(pressure(100.0 * PSI));
    let centre = plate.at(&load, [side / 2.0, side / 2.0], share(1e-3)).unwrap();
    let quarter = plate.at(&load, [side / 4.0, side / 4.0], share(1e-3)).unwrap();
    // Stress at the middle of the skin: σ = M z/I with z = d/2.
    let stress = |moment: f64| moment * d / 2.0 / inertia / PSI;
    within(centre.deflection.value / inch, 0.123, TARGET_SPREAD);
    within(stress(centre.mx.value), 34449.0, TARGET_SPREAD);
    within(stress(centre.my.value), 13350.0, TARGET_SPREAD);
    within(stress(quarter.mxy.value.abs()), 5067.5, TARGET_SPREAD);
}
