//! Solutions of a matrix by the factor of another that is not far from it.

use super::factor::{Factor, Pattern};

/// Share of what a load does at first, as the other matrix sees it, below which nothing is left to be done.
const SETTLED: f64 = 1e-6;

/// Steps, far more than matrices need that are alike but for a factor of some parts: with a factor of four each step
/// leaves a third.
const MOST_STEPS: usize = 100;

/// Solves for many right-hand sides, one after another in a flat list, in place; says whether all have settled.
///
/// Conjugate gradients after M. R. Hestenes and E. Stiefel, *Methods of conjugate gradients for solving linear systems*, J. Res.
/// Nat. Bur. Standards 49 (1952) 409 (from memory), made easy by the factor.
pub(super) fn solve(
    (pattern, values): (&Pattern, &[f64]),
    factor: &Factor,
    right_hand_sides: &mut [f64],
    size: usize,
) -> bool {
    let mut left = right_hand_sides.to_vec();
    right_hand_sides.fill(0.0);
    let eased = |left: &[f64]| {
        let mut eased = left.to_vec();
        factor.solve(&mut eased, size);
        eased
    };
    let mut direction = eased(&left);
    let mut sizes: Vec<f64> = by_side(&left, &direction, size);
    let first = sizes.clone();
    let settled = |sizes: &[f64]| sizes.iter().zip(&first).all(|(now, first)| *now <= SETTLED * SETTLED * first);
    let mut moved = vec![0.0; size];
    for _ in 0..MOST_STEPS {
        if settled(&sizes) {
            return true;
        }
        let sides = right_hand_sides.chunks_exact_mut(size).zip(left.chunks_exact_mut(size));
        for ((found, left), (direction, own)) in sides.zip(direction.chunks_exact(size).zip(&sizes)) {
            pattern.times(values, direction, &mut moved);
            let along = dot(direction, &moved);
            // A side with nothing left stands still.
            let step = if along > 0.0 { own / along } else { 0.0 };
            found.iter_mut().zip(direction).for_each(|(found, direction)| *found += step * direction);
            left.iter_mut().zip(&moved).for_each(|(left, moved)| *left -= step * moved);
        }
        let eased = eased(&left);
        let next = by_side(&left, &eased, size);
        let sides = direction.chunks_exact_mut(size).zip(eased.chunks_exact(size));
        for ((direction, eased), (next, before)) in sides.zip(next.iter().zip(&sizes)) {
            let share = if *before > 0.0 { next / before } else { 0.0 };
            direction.iter_mut().zip(eased).for_each(|(direction, eased)| *direction = eased + share * *direction);
        }
        sizes = next;
    }
    settled(&sizes)
}

fn by_side(a: &[f64], b: &[f64], size: usize) -> Vec<f64> {
    a.chunks_exact(size).zip(b.chunks_exact(size)).map(|(a, b)| dot(a, b)).collect()
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;

    #[test]
    fn the_factor_of_another_matrix_leads_to_the_solution_of_this_one() {
        // [4 1 0; 1 3 1; 0 1 5] by the factor of its diagonal; a side of nothing stays so.
        let pattern = Pattern { columns: vec![0, 1, 3, 5], rows: vec![0, 0, 1, 1, 2] };
        let order = pattern.order(&pattern, |unknown| unknown..unknown + 1).unwrap();
        let factor = pattern.factor(&[4.0, 0.0, 3.0, 0.0, 5.0], &order).unwrap();
        let values = [4.0, 1.0, 3.0, 1.0, 5.0];
        let mut sides = [5.0, 5.0, 6.0, 0.0, 0.0, 0.0, 2.0, 0.0, 6.0];
        assert!(solve((&pattern, &values), &factor, &mut sides, 3));
        let exact = [1.0, 1.0, 1.0, 0.0, 0.0, 0.0, 2.0 / 3.0, -2.0 / 3.0, 4.0 / 3.0];
        for (found, exact) in sides.iter().zip(exact) {
            assert!((found - exact).abs() < 1e-6, "{found} {exact}");
        }
        // Without number nothing settles.
        assert!(!solve((&pattern, &values), &factor, &mut [f64::NAN, 0.0, 0.0], 3));
    }
}
