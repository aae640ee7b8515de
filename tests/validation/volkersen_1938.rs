//! Shear of a bond line. Volkersen, *Luftfahrtforschung* 15, 1938 (from memory): peak over mean of a lap of equal sheets
//! (*x*/2) coth(*x*/2); and the two sheets and the glue as chains of springs.

use skinspan::{
    fastening::BondLine,
    units::{Force, per_width},
};
use uom::si::force::newton;

use crate::kit::{m, pressure, within};

/// Two forms of one function.
const ROUNDING: f64 = 1e-12;
/// Differences of second order at 1/4000 of the length.
const DIFFERENCES: f64 = 2e-4;

fn bond(first: f64, second: f64) -> BondLine {
    BondLine {
        first: per_width(pressure(first) * m(1.0)),
        second: per_width(pressure(second) * m(1.0)),
        glue_thickness: m(0.0005),
        glue_shear_modulus: pressure(400e6),
    }
}

fn peak(bond: &BondLine, length: f64) -> f64 {
    bond.peak_shear(Force::new::<newton>(2000.0), m(0.1), m(length)).value
}

#[test]
fn equal_sheets_volkersen_1938() {
    let lap = bond(24e6, 24e6);
    for length in [0.001, 0.01, 0.05, 1.0, 100.0] {
        let x: f64 = length / lap.transfer_length().value;
        within(peak(&lap, length) / (20e3 / length), x / 2.0 / (x / 2.0).tanh(), ROUNDING);
    }
}

#[test]
fn rigid_backing_exact() {
    let stuck = bond(24e6, f64::INFINITY);
    within(stuck.transfer_length().value, (24e6f64 * 0.0005 / 400e6).sqrt(), ROUNDING);
    for length in [0.001, 0.01, 0.05, 100.0] {
        let x: f64 = length / stuck.transfer_length().value;
        within(peak(&stuck, length), 20e3 / (stuck.transfer_length().value * x.tanh()), ROUNDING);
    }
}

/// Peak shear from N″ = (G/η)(N/A₁ − (V − N)/A₂), N(0) = V, N(L) = 0, by elimination.
fn by_differences(first: f64, second: f64, length: f64) -> f64 {
    const N: usize = 4000;
    #[allow(clippy::cast_precision_loss)] // 4000 places
    let h = length / N as f64;
    let (glue, v) = (400e6 / 0.0005, 20e3);
    let diagonal = -2.0 - h * h * glue * (1.0 / first + 1.0 / second);
    let load = -h * h * glue * v / second;
    let (mut upper, mut right) = (vec![0.0; N + 1], vec![0.0; N + 1]);
    right[0] = v;
    for i in 1..N {
        let pivot = diagonal - upper[i - 1];
        upper[i] = 1.0 / pivot;
        right[i] = (load - right[i - 1]) / pivot;
    }
    let mut n = vec![0.0; N + 1];
    n[0] = v;
    for i in (1..N).rev() {
        n[i] = right[i] - upper[i] * n[i + 1];
    }
    let start = (3.0 * n[0] - 4.0 * n[1] + n[2]) / (2.0 * h);
    let end = (4.0 * n[N - 1] - n[N - 2]) / (2.0 * h);
    start.max(end)
}

#[test]
fn unequal_sheets_equal_their_differences() {
    for (first, second) in [(24e6, 24e6), (24e6, 300e6), (300e6, 24e6), (10e6, 15e6)] {
        for length in [0.005, 0.02, 0.05] {
            within(peak(&bond(first, second), length), by_differences(first, second, length), DIFFERENCES);
        }
    }
}
