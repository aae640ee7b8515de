//! Tsai and Hahn, *Introduction to Composite Materials*, Technomic, 1980; the printed numbers are from memory.

#![allow(clippy::unwrap_used)] // a test may panic

use approx::assert_relative_eq;
use skinspan::laminate::{
    Component::{X, Xy, Y},
    Elastic, Laminate, Ply,
};
use skinspan::units::{Angle, Length, Pressure, Ratio, TemperatureCoefficient};
use uom::ConstZero;
use uom::si::{angle::degree, length::millimeter, pressure::gigapascal};

/// Two decimals of a GPa are printed.
const TWO_DECIMALS: f64 = 0.0051;
/// Rounding of `f64` only.
const EXACT: f64 = 1e-13;

fn quasi_isotropic() -> Laminate {
    let elastic = Elastic {
        e1: Pressure::new::<gigapascal>(181.0),
        e2: Pressure::new::<gigapascal>(10.3),
        g12: Pressure::new::<gigapascal>(7.17),
        nu12: Ratio::from(0.28),
        alpha1: TemperatureCoefficient::ZERO,
        alpha2: TemperatureCoefficient::ZERO,
    };
    let plies = [0.0, 45.0, -45.0, 90.0].map(|angle| Ply {
        elastic,
        strength: None,
        thickness: Length::new::<millimeter>(0.125),
        angle: Angle::new::<degree>(angle),
    });
    Laminate::new(&plies).unwrap()
}

#[test]
fn invariants_tsai_hahn_table_3_2() {
    // T300/5208: U1 = 76.37, U4 = 22.61, U5 = 26.88 GPa are A11, A12 and A66 of a quasi-isotropic laminate, over t
    let laminate = quasi_isotropic();
    let per_thickness = |i, j| laminate.stiffness().a(i, j).value / laminate.thickness().value * 1e-9;
    assert!((per_thickness(X, X) - 76.37_f64).abs() < TWO_DECIMALS);
    assert!((per_thickness(X, Y) - 22.61_f64).abs() < TWO_DECIMALS);
    assert!((per_thickness(Xy, Xy) - 26.88_f64).abs() < TWO_DECIMALS);
}

#[test]
fn quasi_isotropic_modulus_tsai_hahn_table_3_2() {
    // E = (1 − nu²) U1 with nu = U4/U1
    let constants = quasi_isotropic().in_plane_constants();
    let nu = 22.61 / 76.37;
    assert_relative_eq!(constants.nuxy.value, nu, max_relative = 1e-3); // four digits each
    assert!((constants.ex.get::<gigapascal>() - 76.37 * (1.0 - nu * nu)).abs() < 2.0 * TWO_DECIMALS);
    // exact pair: an isotropic membrane
    assert_relative_eq!(constants.ex.value, constants.ey.value, max_relative = EXACT);
    let g = constants.ex / (2.0 * (1.0 + constants.nuxy.value));
    assert_relative_eq!(constants.gxy.value, g.value, max_relative = EXACT);
}
