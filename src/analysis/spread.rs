//! A quantity all over the top, for drawings.

use crate::geometry::Point;

/// A quantity all over the top: its largest value at places that small triangles join.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread {
    /// Places; where a backing ends twice, as the field and as the backing see them.
    pub places: Vec<Point>,
    /// Value at each.
    pub values: Vec<f64>,
    /// Triangles, anticlockwise, as numbers of places.
    pub triangles: Vec<[usize; 3]>,
    /// Which case, as its place in [`Analysis::cases`](super::Analysis::cases), makes the value at each place.
    pub cases: Vec<usize>,
}

impl Spread {
    /// The same with the mean over the small triangles round each place in place of its value: shear, a degree rougher than
    /// moments, jumps from triangle to triangle.
    ///
    /// ```text
    /// v_i = Σ over triangles at i of (v_a + v_b + v_c)/3, over how many these are
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `v_i` | value at a place |
    /// | `v_a`, `v_b`, `v_c` | values at the corners of a triangle |
    ///
    /// # Validity
    ///
    /// For drawings: a peak narrower than the triangles round it comes out lower.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): means.
    #[must_use]
    pub fn smoothed(self) -> Self {
        let mut sums = vec![(0.0, 0.0); self.values.len()];
        for corners in &self.triangles {
            let mean = corners.iter().map(|corner| self.values[*corner]).sum::<f64>() / 3.0;
            for corner in corners {
                let (sum, count) = &mut sums[*corner];
                (*sum, *count) = (*sum + mean, *count + 1.0);
            }
        }
        let values =
            sums.iter().zip(&self.values).map(|((sum, count), own)| if *count > 0.0 { sum / count } else { *own });
        Self { values: values.collect(), ..self }
    }

    /// The place at which the value is largest.
    #[must_use]
    pub fn largest(&self) -> Option<usize> {
        (0..self.values.len()).reduce(|a, b| if self.values[b] > self.values[a] { b } else { a })
    }
}

#[cfg(test)]
mod tests {
    use super::Spread;
    use crate::{geometry::Point, units::Length};

    #[test]
    fn smoothing_takes_the_mean_of_the_triangles_round_a_place() {
        let zero = Length::default();
        let places = vec![Point { x: zero, y: zero }; 4];
        // Two triangles that share a side; the last place is in one of them alone.
        let triangles = vec![[0, 1, 2], [1, 3, 2]];
        let spread = Spread { places, values: vec![0.0, 3.0, 6.0, 9.0], triangles, cases: vec![0; 4] };
        assert_eq!(spread.largest(), Some(3));
        assert_eq!(spread.smoothed().values, [3.0, 4.5, 4.5, 6.0]);
    }
}
