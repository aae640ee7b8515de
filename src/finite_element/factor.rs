//! Sparse symmetric matrices and their Cholesky factors: the one place that knows the solver.

use std::{ops::Range, sync::Arc};

use faer::{
    Conj, MatMut, Par, Side, Spec,
    dyn_stack::{MemBuffer, MemStack},
    linalg::cholesky::llt::factor::LltRegularization,
    perm::PermRef,
    sparse::{
        SparseColMatRef, SymbolicSparseColMatRef,
        linalg::{
            SupernodalThreshold, amd,
            cholesky::{
                CholeskySymbolicParams, LltRef, SymbolicCholesky, SymmetricOrdering, factorize_symbolic_cholesky,
            },
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

    /// The order of elimination, good for every matrix of the pattern: that of groups of unknowns which hang together with
    /// the same others. There are far fewer of them, and an order by minimum degree keeps them together anyway.
    pub(super) fn order(&self, groups: &Self, unknowns: impl Fn(usize) -> Range<usize>) -> Result<Order, NotDefinite> {
        let (many, size) = (groups.size(), self.size());
        let (mut order, mut inverse) = (vec![0; many], vec![0; many]);
        let scratch = amd::order_maybe_unsorted_scratch::<usize>(many, groups.rows.len());
        let mut memory = MemBuffer::try_new(scratch).map_err(|_| NotDefinite)?;
        let control = amd::Control::default();
        amd::order_maybe_unsorted(&mut order, &mut inverse, groups.view(), control, MemStack::new(&mut memory))
            .map_err(|_| NotDefinite)?;
        let forward: Vec<usize> = order.into_iter().flat_map(unknowns).collect();
        let mut backward = vec![0; size];
        for (place, &unknown) in forward.iter().enumerate() {
            backward[unknown] = place;
        }
        let order = SymmetricOrdering::Custom(PermRef::new_checked(&forward, &backward, size));
        // Unknowns come in nodes, so that even the smallest plate has columns alike enough to be eliminated together.
        let params = CholeskySymbolicParams {
            supernodal_flop_ratio_threshold: SupernodalThreshold::FORCE_SUPERNODAL,
            ..CholeskySymbolicParams::default()
        };
        let symbolic = factorize_symbolic_cholesky(self.view(), Side::Upper, order, params);
        symbolic.map(|symbolic| Order(Arc::new(symbolic))).map_err(|_| NotDefinite)
    }

    fn view(&self) -> SymbolicSparseColMatRef<'_, usize> {
        SymbolicSparseColMatRef::new_checked(self.size(), self.size(), &self.columns, None, &self.rows)
    }

    /// The factor of a matrix, given by the values at the places of the pattern.
    pub(super) fn factor(&self, values: &[f64], order: &Order) -> Result<Factor, NotDefinite> {
        let (symbolic, params) = (&order.0, Spec::default());
        let mut of_factor = vec![0.0; symbolic.len_val()];
        let scratch = symbolic.factorize_numeric_llt_scratch::<f64>(Par::Seq, params);
        let mut memory = MemBuffer::try_new(scratch).map_err(|_| NotDefinite)?;
        let (matrix, stack) = (SparseColMatRef::new(self.view(), values), MemStack::new(&mut memory));
        symbolic
            .factorize_numeric_llt(
                &mut of_factor,
                matrix,
                Side::Upper,
                LltRegularization::default(),
                Par::Seq,
                stack,
                params,
            )
            .map_err(|_| NotDefinite)?;
        Ok(Factor { order: order.clone(), values: of_factor })
    }
}

/// Order of elimination, and where the factor has values.
#[derive(Clone, Debug)]
pub(super) struct Order(Arc<SymbolicCholesky<usize>>);

/// Cholesky factor.
#[derive(Clone, Debug)]
pub(super) struct Factor {
    order: Order,
    values: Vec<f64>,
}

impl Factor {
    /// Solves for many right-hand sides, one after another in a flat list, in place.
    pub(super) fn solve(&self, right_hand_sides: &mut [f64], size: usize) {
        let (symbolic, count) = (&self.order.0, right_hand_sides.len() / size);
        let mut memory = MemBuffer::new(symbolic.solve_in_place_scratch::<f64>(count, Par::Seq));
        let sides = MatMut::from_column_major_slice_mut(right_hand_sides, size, count);
        LltRef::new(symbolic, &self.values).solve_in_place_with_conj(
            Conj::No,
            sides,
            Par::Seq,
            MemStack::new(&mut memory),
        );
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
        let order = pattern.order(&pattern, |unknown| unknown..unknown + 1).unwrap();
        let mut sides = [1.0, 2.0, 0.0, 11.0];
        pattern.factor(&[4.0, 1.0, 3.0], &order).unwrap().solve(&mut sides, 2);
        for (found, exact) in sides.iter().zip([1.0 / 11.0, 7.0 / 11.0, -1.0, 4.0]) {
            assert!((found - exact).abs() < 1e-15);
        }
        assert_eq!(pattern.factor(&[4.0, 1.0, 0.0], &order).err(), Some(NotDefinite));
    }
}
