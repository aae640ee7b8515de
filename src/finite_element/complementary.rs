//! Openings of which each is either none, or so large that nothing presses there.

use nalgebra::{DMatrix, DVector};

/// Share of the largest force, or opening, that counts as none.
const NOTHING: f64 = 1e-9;

/// Exchanges of all that are wrong at once, without fewer being wrong, before they are exchanged one by one.
const PATIENCE: usize = 3;

/// Openings `g` with `g ≥ 0`, `w = A g + b ≥ 0` and no `g` where there is a `w`; none where a matrix on what opens is not
/// positive, so that something opens without end.
///
/// Block principal pivoting, which ends for every positive definite matrix: J. J. Júdice and F. M. Pires, *A block
/// principal pivoting algorithm for large-scale strictly monotone linear complementarity problems*, Computers Ops Res. 21
/// (1994) 587 (from memory).
pub(super) fn openings(a: &DMatrix<f64>, b: &DVector<f64>) -> Option<DVector<f64>> {
    let size = b.len();
    let force = NOTHING * b.amax();
    let mut open: Vec<bool> = b.iter().map(|force| *force < 0.0).collect();
    let (mut fewest, mut patience) = (usize::MAX, PATIENCE);
    // One by one, it takes at most as many as there are sets; in practice a few times the size.
    for _ in 0..100 + 20 * size {
        let places: Vec<usize> = (0..size).filter(|&i| open[i]).collect();
        let own = DMatrix::from_fn(places.len(), places.len(), |i, j| a[(places[i], places[j])]);
        let pulled = DVector::from_fn(places.len(), |i, _| -b[places[i]]);
        let found = own.cholesky()?.solve(&pulled);
        let mut g = DVector::zeros(size);
        for (&place, &opening) in places.iter().zip(&found) {
            g[place] = opening;
        }
        let w = a * &g + b;
        let none = NOTHING * g.amax();
        let wrong: Vec<usize> = (0..size).filter(|&i| if open[i] { g[i] < -none } else { w[i] < -force }).collect();
        let Some(&last) = wrong.last() else { return Some(g) };
        let all = wrong.len() < fewest || patience > 0;
        if wrong.len() < fewest {
            (fewest, patience) = (wrong.len(), PATIENCE);
        } else {
            patience = patience.saturating_sub(1);
        }
        for &i in if all { &wrong[..] } else { std::slice::from_ref(&last) } {
            open[i] = !open[i];
        }
    }
    None
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;

    #[test]
    fn each_opens_or_presses() {
        // Numbers without order, and a matrix that has something of each direction.
        let mut seed = 1_u64;
        let mut next = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            f64::from((seed >> 40) as u32) / f64::from(1_u32 << 24) - 0.5
        };
        for size in [1, 2, 5, 12, 40] {
            for _ in 0..20 {
                let half = DMatrix::from_fn(size, size, |_, _| next());
                let a = &half * half.transpose() + DMatrix::identity(size, size) * 0.01;
                let b = DVector::from_fn(size, |_, _| next());
                let g = openings(&a, &b).unwrap();
                let w = &a * &g + &b;
                assert!(g.min() >= -1e-7 && w.min() >= -1e-7, "{g} {w}");
                assert!(g.dot(&w).abs() < 1e-7 * (1.0 + g.amax()));
            }
        }
    }

    #[test]
    fn what_opens_without_end_has_no_openings() {
        assert_eq!(openings(&DMatrix::zeros(1, 1), &DVector::from_element(1, -1.0)), None);
        assert_eq!(openings(&DMatrix::zeros(1, 1), &DVector::from_element(1, 1.0)), Some(DVector::zeros(1)));
    }
}
