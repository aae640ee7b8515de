//! Sparse symmetric matrices and their Cholesky factors: the one place that knows the solver.

use faer::{
    MatMut, Side,
    linalg::solvers::Solve,
    sparse::{
        SparseColMatRef, SymbolicSparseColMatRef,
        linalg::{
            LltError,
            solvers::{Llt, SymbolicLlt},
        },
    },
};

/// Where the upper triangle of a symmetric matrix has values: column by column, rows in order.
#[derive(Clone, Debug)]
pub(super) struct Pattern {
    pub(super) columns: Vec<usize>,
    pub(super) rows: Vec<usize>,
}

/// A matrix that has no Cholesky factor: something can move without resistance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct NotDefinite;

impl Pattern {
    fn size(&self) -> usize {
        self.columns.len() - 1
    }

    /// The order of elimination, good for every matrix of the pattern.
    pub(super) fn order(&self) -> Result<Order, NotDefinite> {
        SymbolicLlt::try_new(self.view(), Side::Upper).map(Order).map_err(|_| NotDefinite)
    }

    /// A matrix, given by the values at the places of the pattern, times numbers.
    pub(super) fn times(&self, values: &[f64], numbers: &[f64], into: &mut [f64]) {
        into.fill(0.0);
        for (column, (bounds, number)) in self.columns.windows(2).zip(numbers).enumerate() {
            let (rows, values) = (&self.rows[bounds[0]..bounds[1]], &values[bounds[0]..bounds[1]]);
            let mut sum = 0.0;
            for (&row, value) in rows.iter().zip(values) {
                // What stands above the diagonal stands below it too.
                sum += value * numbers[row];
                if row != column {
                    into[row] += value * number;
                }
            }
            into[column] += sum;
        }
    }

    fn view(&self) -> SymbolicSparseColMatRef<'_, usize> {
        SymbolicSparseColMatRef::new_checked(self.size(), self.size(), &self.columns, None, &self.rows)
    }

    /// The factor of a matrix, given by the values at the places of the pattern.
    pub(super) fn factor(&self, values: &[f64], order: &Order) -> Result<Factor, NotDefinite> {
        let matrix = SparseColMatRef::new(self.view(), values);
        Llt::try_new_with_symbolic(order.0.clone(), matrix, Side::Upper).map(Factor).map_err(|_: LltError| NotDefinite)
    }
}

/// Order of elimination.
#[derive(Clone, Debug)]
pub(super) struct Order(SymbolicLlt<usize>);

/// Cholesky factor.
#[derive(Clone, Debug)]
pub(super) struct Factor(Llt<usize, f64>);

impl Factor {
    /// Solves for many right-hand sides, one after another in a flat list, in place.
    pub(super) fn solve(&self, right_hand_sides: &mut [f64], size: usize) {
        let count = right_hand_sides.len() / size;
        self.0.solve_in_place(MatMut::from_column_major_slice_mut(right_hand_sides, size, count));
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;

    #[test]
    fn solves_what_can_be_solved_and_says_what_cannot() {
        // [4 1; 1 3] x = (1, 2), (0, 11)
        let pattern = Pattern { columns: vec![0, 1, 3], rows: vec![0, 0, 1] };
        let order = pattern.order().unwrap();
        let mut sides = [1.0, 2.0, 0.0, 11.0];
        pattern.factor(&[4.0, 1.0, 3.0], &order).unwrap().solve(&mut sides, 2);
        for (found, exact) in sides.iter().zip([1.0 / 11.0, 7.0 / 11.0, -1.0, 4.0]) {
            assert!((found - exact).abs() < 1e-15);
        }
        assert_eq!(pattern.factor(&[4.0, 1.0, 0.0], &order).err(), Some(NotDefinite));
    }
}
