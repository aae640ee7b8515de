//! A load near the free end of a beam on springs. Hetényi, *Beams on Elastic Foundation*, 1946 (from memory): four times
//! the deflection of a long beam at the end; and beam elements.

use nalgebra::{DMatrix, DVector};
use skinspan::fastening::effective_length_near_end;

use crate::kit::{m, within};

/// Two forms of one function.
const ROUNDING: f64 = 1e-12;
/// Cubic elements of λh = 0.05.
const ELEMENTS: f64 = 2e-5;
/// The greatest deflection lies off the load there.
const OFF_THE_LOAD: f64 = 0.032;

/// Greatest load per length, over that of a long beam, of a load at λ*a* = 0.05 `place` from the end.
#[allow(clippy::many_single_char_names)]
fn by_elements(place: usize) -> (f64, usize) {
    const N: usize = 240;
    let (h, k) = (0.05, 4.0); // EI = 1, λ = 1
    let bend = [
        [12.0, 6.0 * h, -12.0, 6.0 * h],
        [6.0 * h, 4.0 * h * h, -6.0 * h, 2.0 * h * h],
        [-12.0, -6.0 * h, 12.0, -6.0 * h],
        [6.0 * h, 2.0 * h * h, -6.0 * h, 4.0 * h * h],
    ];
    let bed = [
        [156.0, 22.0 * h, 54.0, -13.0 * h],
        [22.0 * h, 4.0 * h * h, 13.0 * h, -3.0 * h * h],
        [54.0, 13.0 * h, 156.0, -22.0 * h],
        [-13.0 * h, -3.0 * h * h, -22.0 * h, 4.0 * h * h],
    ];
    let mut matrix = DMatrix::<f64>::zeros(2 * N + 2, 2 * N + 2);
    for e in 0..N {
        for p in 0..4 {
            for q in 0..4 {
                matrix[(2 * e + p, 2 * e + q)] += bend[p][q] / (h * h * h) + k * h / 420.0 * bed[p][q];
            }
        }
    }
    let mut load = DVector::<f64>::zeros(2 * N + 2);
    load[2 * place] = 1.0;
    let deflection = matrix.cholesky().expect("a beam on springs is stable").solve(&load);
    // k w over Pλ/2
    (0..=N).map(|i| (k * deflection[2 * i] / 0.5, i)).fold((0.0, 0), |a, b| if b.0 > a.0 { b } else { a })
}

/// What the formula says for λ*a*, with the long beam's *L* = 2/λ = 1.
fn factor(x: f64) -> f64 {
    1.0 / effective_length_near_end(m(1.0), m(x / 2.0)).value
}

#[test]
fn end_hetenyi_1946_four_times() {
    within(factor(0.0), 4.0, ROUNDING);
    within(factor(50.0), 1.0, ROUNDING);
}

#[test]
fn end_equals_beam_elements() {
    for place in 0..60u32 {
        let (greatest, at) = by_elements(place as usize);
        let formula = factor(0.05 * f64::from(place));
        let off = at != 0 && at != place as usize;
        within(formula, greatest, if off { OFF_THE_LOAD } else { ELEMENTS });
        assert!(!off || (14..26).contains(&place), "{place}: greatest at {at}");
    }
}
