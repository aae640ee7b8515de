//! E-glass plies over the usual fibre contents: a table worked out apart from this program, by the same formulas and
//! to three digits. A cross-check of arithmetic, not of physics.

#![allow(clippy::unwrap_used)] // a test may panic

use approx::assert_relative_eq;
use skinspan::laminate::{
    Laminate, Ply,
    fibre_content::Densities,
    micromechanics::{Constituent, unidirectional},
};
use skinspan::units::{Angle, Length, MassDensity, Pressure, Ratio, TemperatureCoefficient};
use uom::ConstZero;
use uom::si::{angle::degree, length::millimeter, mass_density::kilogram_per_cubic_meter, pressure::gigapascal};

/// Two or three digits are given, and the Poisson's ratios of glass and resin are not: 0.22 and 0.35 are taken.
const DIGITS: f64 = 0.012;

/// psi, E1, E2, G12 of the ply, Ex of 0/90, Ex and Gxy of ±45, E of the quasi-isotropic laminate, GPa.
const TABLE: [[f64; 8]; 5] = [
    [0.45, 22.6, 6.5, 2.05, 14.7, 6.6, 6.4, 11.3],
    [0.50, 25.5, 7.1, 2.23, 16.5, 7.2, 7.2, 12.7],
    [0.55, 28.7, 7.9, 2.44, 18.5, 7.9, 8.1, 14.2],
    [0.60, 32.1, 8.9, 2.71, 20.7, 8.8, 9.1, 15.8],
    [0.65, 35.7, 10.1, 3.04, 23.1, 9.9, 10.2, 17.7],
];

#[test]
fn glass_polyester_moduli() {
    let constituent = |e: f64, nu: f64| Constituent {
        modulus: Pressure::new::<gigapascal>(e),
        nu: Ratio::from(nu),
        alpha: TemperatureCoefficient::ZERO,
    };
    let densities = Densities {
        fibre: MassDensity::new::<kilogram_per_cubic_meter>(2560.0),
        resin: MassDensity::new::<kilogram_per_cubic_meter>(1200.0),
    };
    for [psi, e1, e2, g12, biaxial, diagonal, diagonal_shear, quasi] in TABLE {
        let vf = densities.fibre_volume_fraction(Ratio::from(psi));
        let elastic = unidirectional(&constituent(73.0, 0.22), &constituent(3.3, 0.35), vf);
        let constants = |angles: &[f64]| {
            let plies: Vec<Ply> = angles
                .iter()
                .map(|&angle| Ply {
                    elastic,
                    strength: None,
                    thickness: Length::new::<millimeter>(0.5),
                    angle: Angle::new::<degree>(angle),
                })
                .collect();
            Laminate::new(&plies).unwrap().in_plane_constants()
        };
        let close = |value: Pressure, expected: f64| {
            assert_relative_eq!(value.get::<gigapascal>(), expected, max_relative = DIGITS);
        };
        close(elastic.e1, e1);
        close(elastic.e2, e2);
        close(elastic.g12, g12);
        close(constants(&[0.0, 90.0]).ex, biaxial);
        close(constants(&[45.0, -45.0]).ex, diagonal);
        close(constants(&[45.0, -45.0]).gxy, diagonal_shear);
        close(constants(&[0.0, 45.0, 90.0, -45.0]).ex, quasi);
    }
}
