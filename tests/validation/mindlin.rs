//! Moderately thick isotropic plate, h/a = 0.1, ν = 0.3, shear correction 5/6: values of the finite-element literature.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::closed_form::plate::{Plate, PlateLoad, PlateStiffness, clamped_plate_uniform};
use uom::si::areal_mass_density::kilogram_per_square_meter;

use crate::kit::{force, m, pressure, rigidity, share, within};
use skinspan::units::ArealMassDensity;

/// `D/(S a²)` = h²/(12·0.91) · 2.6/(5/6)/a².
const PHI: f64 = 0.01 / 10.92 * 2.6 * 1.2;
/// Seven digits quoted; the series is cut at this.
const QUOTED_SIMPLE: f64 = 3e-5;
/// Five digits quoted.
const QUOTED_CLAMPED: f64 = 5e-5;

fn plate(b: f64) -> Plate {
    Plate::new(m(1.0), m(b), PlateStiffness::isotropic(rigidity(1.0), share(0.3), force(1.0 / PHI))).unwrap()
}

#[test]
fn deflection_mindlin_ssss() {
    let load = PlateLoad::Uniform(pressure(1.0));
    let p = plate(1.0).at(&load, [m(0.5), m(0.5)], share(1e-4)).unwrap();
    within(p.deflection.value, 0.0042728, QUOTED_SIMPLE);
}

#[test]
fn deflection_mindlin_cccc() {
    let c = clamped_plate_uniform(&plate(1.0), pressure(1.0)).unwrap();
    within(c.deflection.value, 0.0015046, QUOTED_CLAMPED);
}

/// With equal stiffness in all directions the moments are those of the thin plate and the shear deflection is theirs:
/// `w = w_b + (Mx + My)/((1 + ν) S)`, term by term.
#[test]
fn shear_deflection_is_sum_of_moments() {
    let at = |s: f64, load: &PlateLoad| {
        let stiffness = PlateStiffness::isotropic(rigidity(1.0), share(0.3), force(s));
        // Not the centre, and a loose tolerance: both series are cut at the same terms, so the identity holds all the same.
        Plate::new(m(1.0), m(1.4), stiffness).unwrap().at(load, [m(0.3), m(0.6)], share(0.5)).unwrap()
    };
    let patch = PlateLoad::Patch {
        force: skinspan::units::Force::new::<uom::si::force::newton>(1.0),
        centre: [m(0.4), m(0.5)],
        size: [m(0.3), m(0.4)],
    };
    for load in [PlateLoad::Uniform(pressure(1.0)), patch] {
        let (thin, thick) = (at(1e14, &load), at(7.0, &load));
        let due = thin.deflection.value + (thin.mx.value + thin.my.value) / (1.3 * 7.0);
        within(thick.deflection.value, due, 1e-10);
        within(thick.mx.value, thin.mx.value, 1e-10);
        within(thick.qx.value, thin.qx.value, 1e-10);
    }
}

/// The eigenvalues have a closed form for equal stiffness in all directions.
#[test]
fn frequency_and_buckling_isotropic_closed_form() {
    use std::f64::consts::{PI, TAU};
    let (d, s, b) = (1.0, 1.0 / PHI, 0.7);
    let g = PI * PI * (1.0 + 1.0 / (b * b));
    let mass = ArealMassDensity::new::<kilogram_per_square_meter>(3.0);
    let f = plate(b).first_frequency(mass).unwrap();
    within(f.value, (d * g * g / 3.0 / (1.0 + d * g / s)).sqrt() / TAU, 1e-12);
    let due = (1..40)
        .map(|w| {
            let al2 = (f64::from(w) * PI).powi(2);
            let g = al2 + (PI / b).powi(2);
            d * g * g / al2 / (1.0 + d * g / s)
        })
        .fold(f64::INFINITY, f64::min);
    within(plate(b).buckling_along_x().load.value, due, 1e-12);
    // Weak core: crimping, in ever shorter waves.
    let weak = Plate::new(m(1.0), m(1.0), PlateStiffness::isotropic(rigidity(1.0), share(0.3), force(5.0))).unwrap();
    let crimp = weak.buckling_along_x();
    within(crimp.load.value, 5.0, 1e-6);
}
