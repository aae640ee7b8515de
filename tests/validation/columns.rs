//! Engesser's and Haringx's columns.

use skinspan::closed_form::columns::{engesser, haringx};

use crate::kit::{force, within};

/// Five printed digits.
const PRINTED: f64 = 1e-5;

#[test]
fn buckling_engesser_haringx_table() {
    let rows = [(1.0, 1.0, 0.5, 0.61803), (1.0, 4.0, 0.8, 0.82843), (10.0, 1.0, 0.90909, 2.70156)];
    for (euler, shear, low, high) in rows {
        within(engesser(force(euler), force(shear)).value, low, PRINTED);
        within(haringx(force(euler), force(shear)).value, high, PRINTED);
    }
}

/// Haringx: `P²/S + P = P_E`; both turn into Euler for a stiff core.
#[test]
fn buckling_engesser_haringx_identities() {
    let p = haringx(force(3.0), force(0.7)).value;
    within(p * p / 0.7 + p, 3.0, 1e-14);
    let p = engesser(force(3.0), force(0.7)).value;
    within(1.0 / p, 1.0 / 3.0 + 1.0 / 0.7, 1e-14);
    within(haringx(force(3.0), force(1e18)).value, 3.0, 1e-14);
}
