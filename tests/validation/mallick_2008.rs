//! Mallick, *Fiber-Reinforced Composites*, 3rd ed., CRC Press, 2008; the printed numbers are from memory.
//!
//! Left out: A66 = 426.84 MN/m and D66 = 5122.08 N·m as remembered do not follow from the moduli of the example, which
//! give (134.03 + 8.82 − 2·2.29)/4 · 12 = 414.8 MN/m. Whether the book or the memory errs is not known.

#![allow(clippy::unwrap_used)] // a test may panic

use approx::assert_relative_eq;
use skinspan::laminate::{
    Component::{X, Xy, Y},
    Elastic, Laminate, Ply,
};
use skinspan::units::{Angle, Length, Pressure, Ratio, TemperatureCoefficient};
use uom::ConstZero;
use uom::si::{angle::degree, length::millimeter, pressure::gigapascal};

/// The stiffness of a ply is printed to four digits (40.11 GPa) and carried on rounded.
const FOUR_DIGITS: f64 = 5e-4;

fn laminate(angles: &[f64]) -> Laminate {
    let elastic = Elastic {
        e1: Pressure::new::<gigapascal>(133.4),
        e2: Pressure::new::<gigapascal>(8.78),
        g12: Pressure::new::<gigapascal>(3.254),
        nu12: Ratio::from(0.26),
        alpha1: TemperatureCoefficient::ZERO,
        alpha2: TemperatureCoefficient::ZERO,
    };
    let plies: Vec<Ply> = angles
        .iter()
        .map(|&angle| Ply {
            elastic,
            strength: None,
            thickness: Length::new::<millimeter>(6.0),
            angle: Angle::new::<degree>(angle),
        })
        .collect();
    Laminate::new(&plies).unwrap()
}

#[test]
fn angle_ply_stiffness_mallick_example_3_7a() {
    // [+45/−45], 6 mm each: A in MN/m, B in kN, D in N·m
    let s = *laminate(&[45.0, -45.0]).stiffness();
    assert_relative_eq!(s.a(X, X).value, 481.32e6, max_relative = FOUR_DIGITS);
    assert_relative_eq!(s.a(X, Y).value, 403.32e6, max_relative = FOUR_DIGITS);
    assert_relative_eq!(s.b(X, Xy).value, -1126.8e3, max_relative = FOUR_DIGITS);
    assert_relative_eq!(s.d(X, X).value, 5775.84, max_relative = FOUR_DIGITS);
    assert_relative_eq!(s.d(X, Y).value, 4839.84, max_relative = FOUR_DIGITS);
}

#[test]
fn doubled_angle_ply_is_eight_times_as_stiff_in_bending() {
    // exact pair of example 3.7: [+45/−45] and [+45/−45]s have the same normal and shear stiffness per thickness
    let (single, double) = (laminate(&[45.0, -45.0]), laminate(&[45.0, -45.0, -45.0, 45.0]));
    assert_relative_eq!(double.stiffness().d(X, X).value, 8.0 * single.stiffness().d(X, X).value, max_relative = 1e-13);
}
