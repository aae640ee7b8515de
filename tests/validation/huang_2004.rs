//! Plate on a bed of springs under a disc. Huang, *Pavement Analysis and Design*, 2nd ed., example 4.2, with
//! Westergaard's formulas: slab 10 in, *E* = 4 × 10⁶ psi, *ν* = 0.15, *k* = 100 pci, 10 000 lb on a radius of 6 in.
//! The inputs were read in a public copy of the problem, the printed results are from memory.
//!
//! Westergaard's stress with its second term, as Ioannides, Thompson and Barenberg restated it in 1985, was read in a
//! public reprint.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use skinspan::{
    strength::{DiscLoad, SkinOnCore, plate_modulus},
    units::{Force, Length, Pressure, Ratio, per_width},
};
use uom::si::{force::newton, length::meter, pressure::pascal};

const INCH: f64 = 0.0254;
const POUND: f64 = 0.45359237 * 9.80665;
const PSI: f64 = POUND / (INCH * INCH);
const EULER: f64 = 0.577_215_664_901_532_9;

/// 42.97 in: four digits.
const LENGTH_DIGITS: f64 = 0.0002;
/// 143.7 psi: the formula of the book has coefficients of three digits and stops after the first term.
const STRESS_COEFFICIENTS: f64 = 0.003;
/// 0.0067 in: two digits.
const DEFLECTION_DIGITS: f64 = 0.01;

fn slab() -> SkinOnCore {
    let thickness = Length::new::<meter>(10.0 * INCH);
    let e = plate_modulus(Pressure::new::<pascal>(4e6 * PSI), Ratio::from(0.15));
    SkinOnCore {
        skin_rigidity: per_width(e * thickness * thickness * thickness / 12.0),
        poisson: Ratio::from(0.15),
        foundation: Pressure::new::<pascal>(100.0 * PSI) / Length::new::<meter>(INCH),
    }
}

fn wheel(radius_in_inches: f64) -> DiscLoad {
    DiscLoad { force: Force::new::<newton>(10_000.0 * POUND), radius: Length::new::<meter>(radius_in_inches * INCH) }
}

/// 6 *M*/*h*² in psi.
fn stress(radius_in_inches: f64) -> f64 {
    6.0 * slab().skin_moment(wheel(radius_in_inches)).value / (10.0 * INCH).powi(2) / PSI
}

#[test]
fn spread_length_huang_2004_example_4_1() {
    assert_relative_eq!(slab().spread_length().value / INCH, 42.97, max_relative = LENGTH_DIGITS);
}

#[test]
fn skin_moment_huang_2004_example_4_2() {
    // A radius below 1.724 h is replaced by √(1.6 a² + h²) − 0.675 h, here 5.804 in.
    let radius = (1.6f64 * 36.0 + 100.0).sqrt() - 6.75;
    assert_relative_eq!(radius, 5.804, max_relative = 1e-4); // four digits
    assert_relative_eq!(stress(radius), 143.7, max_relative = STRESS_COEFFICIENTS);
}

#[test]
fn dent_huang_2004_example_4_2() {
    assert_relative_eq!(slab().dent(wheel(6.0)).value / INCH, 0.0067, max_relative = DEFLECTION_DIGITS);
}

#[test]
fn skin_moment_ioannides_1985_equation_1a() {
    // σ = 3P(1+ν)/(2πh²) [ln(2ℓ/a) + 0.5 − γ] + 3P(1+ν)/(64h²) (a/ℓ)²; the next term is of the order (a/ℓ)⁴.
    for ratio in [0.05, 0.1, 0.2, 0.4] {
        let radius = ratio * slab().spread_length().value / INCH;
        let first = 3.0 * 1e4 * 1.15 / (2.0 * PI * 100.0) * ((2.0 / ratio).ln() + 0.5 - EULER);
        let second = 3.0 * 1e4 * 1.15 / (64.0 * 100.0) * ratio * ratio;
        let next_term = ratio.powi(4) / 30.0;
        assert_relative_eq!(stress(radius), first + second, max_relative = next_term);
        assert!((stress(radius) - first).abs() / first > next_term, "the second term is not seen");
    }
}

#[test]
fn dent_westergaard_1926_series() {
    // w = P/(8 k ℓ²) {1 + (1/2π)[ln(a/2ℓ) + γ − 5/4](a/ℓ)²} (from memory); the next term is of the order (a/ℓ)⁴.
    let l = slab().spread_length().value;
    for ratio in [0.02, 0.1, 0.3] {
        let point = 1e4 * POUND / (8.0 * slab().foundation.value * l * l);
        let factor = 1.0 + ((ratio / 2.0f64).ln() + EULER - 1.25) * ratio * ratio / (2.0 * PI);
        let dent = slab().dent(wheel(ratio * l / INCH)).value;
        assert_relative_eq!(dent, point * factor, max_relative = ratio.powi(4) / 30.0 + 1e-9);
    }
}
