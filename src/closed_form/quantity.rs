use std::marker::PhantomData;

use uom::si::{Dimension, Quantity, SI};

/// A quantity from its value in SI base units: the way out of matrix code.
pub(crate) fn si<D: Dimension + ?Sized>(value: f64) -> Quantity<D, SI<f64>, f64> {
    Quantity { dimension: PhantomData, units: PhantomData, value }
}
