//! Columns that shear. Bažant, *Shear Buckling of Sandwich, Fiber Composite and Lattice Columns, Bearings, and
//! Helical Springs: Paradox Resolved*, Journal of Applied Mechanics 70, 2003: Engesser's formula and Haringx's (read
//! in an excerpt).

use approx::assert_relative_eq;
use skinspan::{
    strength::{crimping_load, crimping_stress, euler_load, wide_column_load},
    units::{FlexuralRigidity, Force, Length, ShearStiffness, per_width},
};
use uom::si::{force::newton, length::meter};

/// Both sides are the same few operations.
const ROUNDING: f64 = 1e-14;

fn one_meter() -> Length {
    Length::new::<meter>(1.0)
}

/// Rigidity whose Euler load over 1 m is the given one.
fn rigidity_for(euler: f64) -> FlexuralRigidity {
    let pi_squared = std::f64::consts::PI.powi(2);
    per_width(Force::new::<newton>(euler / pi_squared) * one_meter())
}

fn shear(newtons_per_meter: f64) -> ShearStiffness {
    per_width(Force::new::<newton>(newtons_per_meter) / one_meter())
}

#[test]
fn wide_column_load_bazant_2003_engesser() {
    for (euler, s, load) in [(1.0, 1.0, 0.5), (1.0, 4.0, 0.8), (10.0, 1.0, 10.0 / 11.0)] {
        let p = wide_column_load(rigidity_for(euler), shear(s), one_meter()).value;
        assert_relative_eq!(p, load, max_relative = ROUNDING);
    }
}

#[test]
fn wide_column_load_bazant_2003_is_below_haringx() {
    for (euler, s, haringx) in [(1.0, 1.0, 0.61803), (1.0, 4.0, 0.82843), (10.0, 1.0, 2.70156)] {
        let formula = s / 2.0 * ((1.0f64 + 4.0 * euler / s).sqrt() - 1.0);
        assert_relative_eq!(formula, haringx, max_relative = 1e-5); // five digits
        assert!(wide_column_load(rigidity_for(euler), shear(s), one_meter()).value < formula);
    }
}

#[test]
fn wide_column_load_reaches_both_limits() {
    let (d, s) = (rigidity_for(1.0), shear(1.0));
    let stiff = wide_column_load(d, shear(1e12), one_meter());
    assert_relative_eq!(stiff.value, euler_load(d, one_meter()).value, max_relative = 2e-12);
    let short = wide_column_load(d, s, one_meter() * 1e-6);
    assert_relative_eq!(short.value, crimping_load(s).value, max_relative = 2e-12);
    assert_relative_eq!(euler_load(d, one_meter()).value, 1.0, max_relative = ROUNDING);
    // The stress that two skins of 1 mm each have at the crimping load.
    assert_relative_eq!(crimping_stress(s, one_meter() * 2e-3).value, s.value / 2e-3, max_relative = ROUNDING);
}
