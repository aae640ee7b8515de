//! The one matrix operation that has to be total: inverting a stiffness.

use nalgebra::Matrix3;

/// Inverts a positive definite matrix by its adjugate.
///
/// Stiffness matrices of checked plies are positive definite, so there is nothing to fail; `nalgebra` would make
/// every caller carry an `Option` for a case that cannot come.
pub(crate) fn inverse(m: &Matrix3<f64>) -> Matrix3<f64> {
    let cofactor = |i: usize, j: usize| {
        let (r, s) = ((i + 1) % 3, (i + 2) % 3);
        let (p, q) = ((j + 1) % 3, (j + 2) % 3);
        m[(r, p)] * m[(s, q)] - m[(r, q)] * m[(s, p)]
    };
    let adjugate = Matrix3::from_fn(|i, j| cofactor(j, i));
    let determinant = (0..3).map(|j| m[(0, j)] * adjugate[(j, 0)]).sum::<f64>();
    adjugate / determinant
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inverse_times_matrix_is_the_identity() {
        let m = Matrix3::new(9.0, 2.0, -1.0, 2.0, 5.0, 0.5, -1.0, 0.5, 3.0);
        assert!((inverse(&m) * m - Matrix3::identity()).norm() < 1e-15);
    }
}
