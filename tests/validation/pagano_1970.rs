//! Pagano, *Exact Solutions for Rectangular Bidirectional Composites and Sandwich Plates*, J. Compos. Mater. 4, 1970.
//!
//! Square sandwich, skins a tenth of the thickness each, pressure in one half sine wave both ways. The numbers are
//! exact three-dimensional elasticity: from memory, and computed again apart from this program. The deflection is
//! that of later papers on the same plate.

#![allow(clippy::unwrap_used)] // a test may panic

use approx::assert_relative_eq;
use skinspan::laminate::{Elastic, Laminate, Ply};
use skinspan::section::{CoreLayer, Section, Temperatures};
use skinspan::units::{Angle, Length, Pressure, Ratio, TemperatureCoefficient};
use uom::ConstZero;
use uom::si::{length::meter, pressure::gigapascal};

use crate::navier::Plate;

/// Unit of stress: the modulus of a skin across its fibres.
const E2: f64 = 1e9;

fn sandwich() -> Section {
    let e2 = |x: f64| Pressure::new::<gigapascal>(x);
    let elastic = Elastic {
        e1: e2(25.0),
        e2: e2(1.0),
        g12: e2(0.5),
        nu12: Ratio::from(0.25),
        alpha1: TemperatureCoefficient::ZERO,
        alpha2: TemperatureCoefficient::ZERO,
    };
    let ply = Ply { elastic, strength: None, thickness: Length::new::<meter>(0.1), angle: Angle::ZERO };
    let core = CoreLayer::isotropic(
        Length::new::<meter>(0.8),
        e2(0.04),
        Ratio::from(0.25),
        e2(0.06),
        TemperatureCoefficient::ZERO,
    );
    let skin = Laminate::new(&[ply]).unwrap();
    Section::new(skin.clone(), core, skin).unwrap()
}

/// Deflection and outer stresses in Pagano's numbers: `w`, `sx`, `sy`, `txy`.
fn numbers(slenderness: f64) -> [f64; 4] {
    let section = sandwich();
    let (a, q) = (slenderness, 1.0);
    let plate = Plate { section: &section, a, b: a };
    let (w, centre) = plate.term(q, (1, 1), (a / 2.0, a / 2.0));
    let (_, corner) = plate.term(q, (1, 1), (0.0, 0.0));
    let outer = |deformation| {
        let (_, stress) = section.ply_stresses(deformation, Temperatures::default()).next().unwrap();
        stress
    };
    let scale = q * slenderness * slenderness;
    [
        100.0 * E2 * w / (q * slenderness.powi(4)),
        -outer(centre).s1.value / scale,
        -outer(centre).s2.value / scale,
        -outer(corner).s12.value / scale,
    ]
}

#[test]
fn deflection_pagano_1970_sandwich() {
    // exact deflection, and how far first-order theory with S = Gc d²/c is off: nothing from span to thickness 20 on,
    // 0.3 % at 10, 3 % at 4, where the skins bend on their own
    for (slenderness, exact, tolerance) in
        [(4.0, 7.5962, 0.03), (10.0, 2.2004, 0.004), (20.0, 1.2264, 2e-4), (50.0, 0.9348, 2e-4), (100.0, 0.8924, 2e-4)]
    {
        assert_relative_eq!(numbers(slenderness)[0], exact, max_relative = tolerance);
    }
}

#[test]
fn outer_stress_pagano_1970_sandwich() {
    // three or four digits are printed; plane sections miss the skins' own bending, by about 20/slenderness²
    for (slenderness, exact) in [(50.0, [1.099, 0.0569, -0.0446]), (100.0, [1.098, 0.0550, -0.0437])] {
        let [_, computed @ ..] = numbers(slenderness);
        for (value, expected) in computed.into_iter().zip(exact) {
            let printed = 0.00005 / f64::abs(expected);
            assert_relative_eq!(value, expected, max_relative = 20.0 / (slenderness * slenderness) + printed);
        }
    }
}

#[test]
fn thin_limit_pagano_1970_sandwich() {
    // the line "CPT" of the table, and of later papers for the deflection
    let [w, sx, sy, txy] = numbers(1e4);
    for (value, printed, last_digit) in [(w, 0.8782, 1e-4), (sx, 1.097, 1e-3), (sy, 0.0543, 1e-4), (txy, -0.0433, 1e-4)]
    {
        assert!((value - printed).abs() < 0.55 * last_digit, "{value} against {printed}");
    }
}

#[test]
fn five_sixths_of_the_layer_sum_is_refuted_by_pagano_1970() {
    // kappa Σ G t over all layers would be stiffer than what the exact plate shows at slenderness 10
    let section = sandwich();
    let wrong = 5.0 / 6.0 * (2.0 * 0.1 * 0.5 + 0.8 * 0.06) * E2;
    let used = section.shear_stiffness(skinspan::section::Axis::X).value;
    assert!(wrong > 1.5 * used);
}
