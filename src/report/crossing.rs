//! Where straight strokes on paper cross.

/// Whether a stroke crosses a rectangle or lies in it.
pub(super) fn crosses([from, to]: [[f64; 2]; 2], low: [f64; 2], size: [f64; 2]) -> bool {
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for k in 0..2 {
        let (start, way, low, size) = (from[k], to[k] - from[k], low[k], size[k]);
        if way == 0.0 {
            if start < low || start > low + size {
                return false;
            }
            continue;
        }
        let (one, other) = ((low - start) / way, (low + size - start) / way);
        enters = enters.max(one.min(other));
        leaves = leaves.min(one.max(other));
    }
    enters <= leaves
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stroke_that_passes_a_corner_does_not_cross_the_rectangle() {
        let crosses = |from, to| crosses([from, to], [0.0, 0.0], [10.0, 10.0]);
        assert!(crosses([-5.0, 5.0], [15.0, 5.0]) && crosses([2.0, 2.0], [3.0, 3.0]));
        assert!(crosses([-1.0, 9.0], [1.0, 11.0]));
        assert!(!crosses([-0.2, 9.9], [0.8, 10.9]) && !crosses([11.0, 0.0], [11.0, 5.0]));
    }
}
