//! Punching shear of a bolt's head. EN 1993-1-8, table 3.4 (quoted in a published worked calculation): S235 with 360 MPa,
//! 8 mm thick, nut of 30 mm, partial factor 1.25: 130.288 kN.

use skinspan::fastening::{pull_through_laminate, pull_through_metal};

use crate::kit::{m, pressure, within};

/// Six digits are printed.
const SIX_DIGITS: f64 = 4e-6;
/// The same products in another order.
const ROUNDING: f64 = 1e-12;

#[test]
fn punching_en_1993_1_8_table_3_4() {
    let load = pull_through_metal(m(0.030), m(0.008), pressure(360e6)).value / 1.25;
    within(load, 130.288e3, SIX_DIGITS);
}

#[test]
fn punching_exact() {
    let area = std::f64::consts::PI * 0.020 * 0.002;
    within(pull_through_laminate(m(0.020), m(0.002), pressure(50e6)).value, area * 50e6, ROUNDING);
}
