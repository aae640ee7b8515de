//! Kaw, *Mechanics of Composite Materials*, 2nd ed., CRC Press, 2006.
//!
//! The printed numbers are from memory, except the strengths and stresses of example 2.19, which were read in a
//! copy of the exercise; that all of them agree to the last digit is the evidence that memory served.

#![allow(clippy::unwrap_used)] // a test may panic

use approx::assert_relative_eq;
use skinspan::laminate::{
    Component::{self, X, Xy, Y},
    Deformation, Elastic, Laminate, Mode, Ply, PlyStress, Resultants, Strength, TsaiWu,
    fibre_content::Densities,
    max_stress,
    micromechanics::{Constituent, unidirectional},
};
use skinspan::section::{CoreLayer, Section, Temperatures};
use skinspan::units::{Angle, Length, MassDensity, Pressure, Ratio, TemperatureCoefficient, TemperatureInterval};
use uom::ConstZero;
use uom::si::{
    angle::degree, length::millimeter, mass_density::kilogram_per_cubic_meter, pressure::gigapascal,
    pressure::megapascal, temperature_coefficient::per_kelvin, temperature_interval::kelvin,
};

/// Four digits are printed, the last of them rounded from numbers that were themselves rounded.
const FOUR_DIGITS: f64 = 1e-3;
const INDEX: [Component; 3] = [X, Y, Xy];

/// Graphite and epoxy of table 2.1.
fn graphite_epoxy() -> Elastic {
    Elastic {
        e1: Pressure::new::<gigapascal>(181.0),
        e2: Pressure::new::<gigapascal>(10.30),
        g12: Pressure::new::<gigapascal>(7.17),
        nu12: Ratio::from(0.28),
        alpha1: TemperatureCoefficient::new::<per_kelvin>(0.02e-6),
        alpha2: TemperatureCoefficient::new::<per_kelvin>(22.5e-6),
    }
}

fn laminate(angles: &[f64], thickness: f64) -> Laminate {
    let plies: Vec<Ply> = angles
        .iter()
        .map(|&angle| Ply {
            elastic: graphite_epoxy(),
            strength: None,
            thickness: Length::new::<millimeter>(thickness),
            angle: Angle::new::<degree>(angle),
        })
        .collect();
    Laminate::new(&plies).unwrap()
}

#[test]
fn transformed_stiffness_kaw_example_2_6() {
    // a ply of 1 m, so that A is the stiffness itself
    let a = *laminate(&[60.0], 1000.0).stiffness();
    let printed = [[23.65, 32.46, 20.05], [32.46, 109.4, 54.19], [20.05, 54.19, 36.74]];
    for (i, row) in INDEX.into_iter().zip(printed) {
        for (j, expected) in INDEX.into_iter().zip(row) {
            assert_relative_eq!(a.a(i, j).value, expected * 1e9, max_relative = FOUR_DIGITS);
        }
    }
}

#[test]
fn stiffness_matrices_kaw_example_4_2() {
    let stiffness = *laminate(&[0.0, 30.0, -45.0], 5.0).stiffness();
    let a = [[1.739e9, 3.884e8, 5.663e7], [3.884e8, 4.533e8, -1.141e8], [5.663e7, -1.141e8, 4.525e8]];
    let b = [[-3.129e6, 9.855e5, -1.072e6], [9.855e5, 1.158e6, -1.072e6], [-1.072e6, -1.072e6, 9.855e5]];
    let d = [[3.343e4, 6.461e3, -5.240e3], [6.461e3, 9.320e3, -5.596e3], [-5.240e3, -5.596e3, 7.663e3]];
    for (row, &i) in INDEX.iter().enumerate() {
        for (column, &j) in INDEX.iter().enumerate() {
            assert_relative_eq!(stiffness.a(i, j).value, a[row][column], max_relative = FOUR_DIGITS);
            assert_relative_eq!(stiffness.b(i, j).value, b[row][column], max_relative = FOUR_DIGITS);
            assert_relative_eq!(stiffness.d(i, j).value, d[row][column], max_relative = FOUR_DIGITS);
        }
    }
}

fn loaded() -> (Laminate, Deformation) {
    let laminate = laminate(&[0.0, 30.0, -45.0], 5.0);
    let mut load = Resultants::default();
    (load.force.x.value, load.force.y.value) = (1000.0, 1000.0);
    let deformation = laminate.deformation(&load);
    (laminate, deformation)
}

#[test]
fn strain_and_curvature_kaw_example_4_3() {
    let (_, Deformation { strain, curvature }) = loaded();
    assert_relative_eq!(strain.x.value, 3.123e-7, max_relative = FOUR_DIGITS);
    assert_relative_eq!(strain.y.value, 3.492e-6, max_relative = FOUR_DIGITS);
    assert_relative_eq!(strain.xy.value, -7.598e-7, max_relative = FOUR_DIGITS);
    assert_relative_eq!(curvature.x.value, 2.971e-5, max_relative = FOUR_DIGITS);
    assert_relative_eq!(curvature.y.value, -3.285e-4, max_relative = FOUR_DIGITS);
    assert_relative_eq!(curvature.xy.value, 4.101e-4, max_relative = FOUR_DIGITS);
}

#[test]
fn ply_stress_kaw_example_4_3() {
    // top of the 0° ply, where the axes of ply and laminate are the same
    let (laminate, deformation) = loaded();
    let (_, _, top) = laminate.ply_stresses(deformation, TemperatureInterval::ZERO).next().unwrap();
    assert_relative_eq!(top.s1.value, 3.351e4, max_relative = FOUR_DIGITS);
    assert_relative_eq!(top.s2.value, 6.188e4, max_relative = FOUR_DIGITS);
    assert_relative_eq!(top.s12.value, -2.750e4, max_relative = FOUR_DIGITS);
}

#[test]
fn thermal_strain_and_curvature_kaw_example_4_5() {
    // [0/90], 5 mm plies, cooled by 75 K; a core of next to no thickness and stiffness between the plies
    let core = CoreLayer::isotropic(
        Length::new::<millimeter>(1e-9),
        Pressure::ZERO,
        Ratio::ZERO,
        Pressure::new::<gigapascal>(1.0),
        TemperatureCoefficient::ZERO,
    );
    let section = Section::new(laminate(&[0.0], 5.0), core, laminate(&[90.0], 5.0)).unwrap();
    let cold = TemperatureInterval::new::<kelvin>(-75.0);
    let rise = Temperatures { outer: cold, inner: cold };
    let load = section.thermal_resultants(&rise);
    assert_relative_eq!(load.force.x.value, -1.131e5, max_relative = FOUR_DIGITS);
    assert_relative_eq!(load.force.y.value, -1.131e5, max_relative = FOUR_DIGITS);
    assert_relative_eq!(load.moment.x.value, -1.538e2, max_relative = FOUR_DIGITS);
    assert_relative_eq!(load.moment.y.value, 1.538e2, max_relative = FOUR_DIGITS);
    let free = section.thermal_free(&rise);
    assert_relative_eq!(free.strain.x.value, -3.907e-4, max_relative = FOUR_DIGITS);
    assert_relative_eq!(free.strain.y.value, -3.907e-4, max_relative = FOUR_DIGITS);
    assert_relative_eq!(free.curvature.x.value, -1.276e-1, max_relative = FOUR_DIGITS);
    assert_relative_eq!(free.curvature.y.value, 1.276e-1, max_relative = FOUR_DIGITS);
}

/// Stress of a 60° ply under (2, −3, 4) MPa, and the strengths of graphite and epoxy.
fn off_axis() -> (PlyStress, Strength) {
    let mpa = |x: f64| Pressure::new::<megapascal>(x);
    let (s, c) = 60f64.to_radians().sin_cos();
    let (x, y, xy) = (2.0, -3.0, 4.0);
    let stress = PlyStress {
        s1: mpa(c * c * x + s * s * y + 2.0 * s * c * xy),
        s2: mpa(s * s * x + c * c * y - 2.0 * s * c * xy),
        s12: mpa(s * c * (y - x) + (c * c - s * s) * xy),
    };
    let strength = Strength { xt: mpa(1500.0), xc: mpa(1500.0), yt: mpa(40.0), yc: mpa(246.0), s: mpa(68.0) };
    (stress, strength)
}

#[test]
fn max_stress_reserve_kaw_example_2_13() {
    let (stress, strength) = off_axis();
    let reserve = max_stress(&stress, &PlyStress::default(), &strength);
    assert_relative_eq!(reserve.factor.value, 16.33, max_relative = FOUR_DIGITS);
    assert_eq!(reserve.mode, Mode::Shear);
}

#[test]
fn tsai_wu_reserve_kaw_example_2_19() {
    let (stress, strength) = off_axis();
    let reserve = TsaiWu::new(&strength).reserve(&stress, &PlyStress::default());
    assert_relative_eq!(reserve.factor.value, 22.39, max_relative = FOUR_DIGITS);
    assert_eq!(reserve.mode, Mode::Shear);
}

#[test]
fn volume_fraction_and_density_kaw_example_3_1() {
    // 70 % of glass by volume is 82.94 % by mass
    let glass_epoxy = Densities {
        fibre: MassDensity::new::<kilogram_per_cubic_meter>(2500.0),
        resin: MassDensity::new::<kilogram_per_cubic_meter>(1200.0),
    };
    let psi = Ratio::from(0.8294);
    assert_relative_eq!(glass_epoxy.fibre_volume_fraction(psi).value, 0.70, max_relative = FOUR_DIGITS);
    assert_relative_eq!(glass_epoxy.density(psi).value, 2110.0, max_relative = FOUR_DIGITS);
}

#[test]
fn unidirectional_ply_kaw_chapter_3() {
    let glass = Constituent {
        modulus: Pressure::new::<gigapascal>(85.0),
        nu: Ratio::from(0.2),
        alpha: TemperatureCoefficient::new::<per_kelvin>(5e-6),
    };
    let epoxy = Constituent {
        modulus: Pressure::new::<gigapascal>(3.4),
        nu: Ratio::from(0.3),
        alpha: TemperatureCoefficient::new::<per_kelvin>(63e-6),
    };
    let ply = unidirectional(&glass, &epoxy, Ratio::from(0.7));
    assert_relative_eq!(ply.e1.get::<gigapascal>(), 60.52, max_relative = FOUR_DIGITS); // example 3.3
    assert_relative_eq!(ply.nu12.value, 0.2300, max_relative = FOUR_DIGITS); // example 3.5
    assert_relative_eq!(ply.e2.get::<gigapascal>(), 20.20, max_relative = FOUR_DIGITS); // Halpin-Tsai, xi = 2
    assert_relative_eq!(ply.g12.get::<gigapascal>(), 6.169, max_relative = FOUR_DIGITS); // Halpin-Tsai, xi = 1
    assert_relative_eq!(ply.alpha1.value, 5.978e-6, max_relative = FOUR_DIGITS);
    assert_relative_eq!(ply.alpha2.value, 27.40e-6, max_relative = FOUR_DIGITS);
}
