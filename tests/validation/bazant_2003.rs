//! Columns that shear. Bažant, *Shear Buckling of Sandwich, Fiber Composite and Lattice Columns, Bearings, and
//! Helical Springs: Paradox Resolved*, Journal of Applied Mechanics 70, 2003: Engesser's formula and Haringx's (read
//! in an excerpt).

use skinspan::{
    closed_form::columns::{engesser, euler, haringx},
    strength::{crimping_load, crimping_stress},
    units::{FlexuralRigidity, Force, Length, per_width},
};
use uom::si::{force::newton, length::meter};

use crate::kit::{force, within};

/// Five digits.
const FIVE_DIGITS: f64 = 1e-5;
/// Both sides are the same few operations.
const ROUNDING: f64 = 1e-14;

fn one_meter() -> Length {
    Length::new::<meter>(1.0)
}

#[test]
fn buckling_bazant_2003_engesser_and_haringx() {
    let rows = [(1.0, 1.0, 0.5, 0.61803), (1.0, 4.0, 0.8, 0.82843), (10.0, 1.0, 0.90909, 2.70156)];
    for (euler, shear, low, high) in rows {
        within(engesser(force(euler), force(shear)).value, low, FIVE_DIGITS);
        within(haringx(force(euler), force(shear)).value, high, FIVE_DIGITS);
    }
}

/// Haringx: `P²/S + P = P_E`; both turn into Euler for a stiff core.
#[test]
fn buckling_engesser_haringx_identities() {
    let p = haringx(force(3.0), force(0.7)).value;
    within(p * p / 0.7 + p, 3.0, ROUNDING);
    let p = engesser(force(3.0), force(0.7)).value;
    within(1.0 / p, 1.0 / 3.0 + 1.0 / 0.7, ROUNDING);
    within(haringx(force(3.0), force(1e18)).value, 3.0, ROUNDING);
}

#[test]
fn engesser_reaches_both_limits() {
    let pi_squared = std::f64::consts::PI.powi(2);
    let d: FlexuralRigidity = per_width(Force::new::<newton>(1.0 / pi_squared) * one_meter());
    within(euler(d, one_meter()).value, 1.0, ROUNDING);
    within(engesser(euler(d, one_meter()), force(1e12)).value, 1.0, 2e-12);
    let short = engesser(euler(d, one_meter() * 1e-6), force(1.0));
    within(short.value, crimping_load(force(1.0)).value, 2e-12);
    // The stress that two skins of 1 mm each have at the crimping load.
    within(crimping_stress(force(1.0), one_meter() * 2e-3).value, 1.0 / 2e-3, ROUNDING);
}
