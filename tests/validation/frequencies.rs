//! Natural frequencies of sandwich strips.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use std::f64::consts::{PI, TAU};

use skinspan::{
    closed_form::strip::{Segment, Strip, Support},
    units::ArealMassDensity,
};
use uom::si::areal_mass_density::kilogram_per_square_meter;

use crate::kit::{force, m, rigidity, within};

/// Sandwich cantilever of the literature (from memory): the published theory lets the skins bend on their own, which
/// makes it 0.03 % stiffer than `D` and `S` alone.
const OTHER_THEORY: f64 = 5e-4;
/// Bounds that lie 1e-6 apart are one; the answer is the better of them.
const BOUNDS_MET: f64 = 1e-8;

fn segment(length: f64, d: f64, s: f64, mass: f64) -> Segment {
    Segment {
        length: m(length),
        rigidity: rigidity(d),
        shear: force(s),
        mass: ArealMassDensity::new::<kilogram_per_square_meter>(mass),
    }
}

#[test]
fn frequency_cantilever_sandwich_mode_1() {
    let (e, t, c, g) = (68.9e9, 0.4572e-3, 12.7e-3, 82.68e6);
    let d = c + t;
    let s = segment(0.7112, e * t * d * d / 2.0 + e * t * t * t / 6.0, g * d * d / c, 2.0 * 2680.0 * t + 32.8 * c);
    let strip = Strip::new(&[s], &[Support::clamp(m(0.0))], &[], 1).unwrap();
    within(strip.first_frequency(&[]).unwrap().value, 33.7513, OTHER_THEORY);
}

/// `ω² = (π/L)⁴ D/m/(1 + (π/L)² D/S)`; two and three equal bays swing at the same frequency, bay against bay.
#[test]
fn frequency_equal_bays_closed_form() {
    let (d, s, mass, l) = (3000.0, 60e3, 8.0, 0.9);
    let k = PI / l;
    let due = (k.powi(4) * d / mass / (1.0 + k * k * d / s)).sqrt() / TAU;
    for bays in 1..=3_u32 {
        let n = f64::from(bays);
        let pipes: Vec<_> = (0..=bays).map(|i| Support::pipe(m(l * f64::from(i)))).collect();
        for divisions in [1, 5] {
            let strip = Strip::new(&[segment(n * l, d, s, mass)], &pipes, &[], divisions).unwrap();
            within(strip.first_frequency(&[]).unwrap().value, due, BOUNDS_MET);
        }
    }
}

/// Clamped without shear flexibility: the roots of `cosh β cos β = ∓1`.
#[test]
fn frequency_clamped_closed_form() {
    let (d, mass, l) = (3000.0, 8.0, 0.9);
    let whole = segment(l, d, 1e15, mass);
    for (supports, root) in [
        (vec![Support::clamp(m(0.0))], 1.875_104_068_711_961),
        (vec![Support::clamp(m(0.0)), Support::clamp(m(l))], 4.730_040_744_862_704),
        (vec![Support::pipe(m(0.0)), Support::clamp(m(l))], 3.926_602_312_047_919),
    ] {
        let strip = Strip::new(&[whole], &supports, &[], 3).unwrap();
        let due = (root / l).powi(2) * (d / mass).sqrt() / TAU;
        within(strip.first_frequency(&[]).unwrap().value, due, BOUNDS_MET);
    }
}
