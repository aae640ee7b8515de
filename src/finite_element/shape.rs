//! Shape functions on the reference triangle, and the integrals of their products.
//!
//! The nodes on a side are Gauss-Lobatto points, so that a bed of springs along a side can be lumped into its nodes with
//! weights that are all positive and integrate exactly to degree `2p − 1`.

use std::sync::LazyLock;

use nalgebra::DMatrix;

/// Degree of the shape functions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Degree {
    /// Quadratic.
    Two,
    /// Cubic.
    Three,
    /// Quartic.
    Four,
}

impl Degree {
    pub(super) const fn number(self) -> usize {
        match self {
            Self::Two => 2,
            Self::Three => 3,
            Self::Four => 4,
        }
    }

    /// Nodes within a side.
    pub(super) const fn in_side(self) -> usize {
        self.number() - 1
    }

    /// Nodes of a triangle.
    pub(super) const fn in_triangle(self) -> usize {
        (self.number() + 1) * (self.number() + 2) / 2
    }

    /// Nodes within a triangle, off its sides.
    pub(super) const fn inside(self) -> usize {
        (self.number() - 1) * (self.number() - 2) / 2
    }

    /// Gauss-Lobatto points along a side, from 0 to 1, with their weights.
    pub(super) fn along_side(self) -> &'static [(f64, f64)] {
        static POINTS: LazyLock<[Vec<(f64, f64)>; 3]> = LazyLock::new(|| {
            let (three, four) = (0.2_f64.sqrt(), (3.0_f64 / 7.0).sqrt());
            [
                vec![(-1.0, 1.0 / 3.0), (0.0, 4.0 / 3.0), (1.0, 1.0 / 3.0)],
                vec![(-1.0, 1.0 / 6.0), (-three, 5.0 / 6.0), (three, 5.0 / 6.0), (1.0, 1.0 / 6.0)],
                vec![(-1.0, 0.1), (-four, 49.0 / 90.0), (0.0, 32.0 / 45.0), (four, 49.0 / 90.0), (1.0, 0.1)],
            ]
            .map(|points| points.into_iter().map(|(at, weight): (f64, f64)| (0.5 * (1.0 + at), 0.5 * weight)).collect())
        });
        &POINTS[self.number() - 2]
    }

    pub(super) fn shape(self) -> &'static Shape {
        static SHAPES: LazyLock<[Shape; 3]> =
            LazyLock::new(|| [Degree::Two, Degree::Three, Degree::Four].map(Shape::new));
        &SHAPES[self.number() - 2]
    }
}

/// A value, or its slope along one of the reference coordinates.
pub(super) const OPERATORS: usize = 3;

/// The Lagrange functions of one degree on the triangle (0, 0), (1, 0), (0, 1).
///
/// Order of the nodes: the three corners; the nodes within the sides 0-1, 1-2, 2-0, each from its first corner to its
/// second; the nodes inside.
#[derive(Debug)]
pub(super) struct Shape {
    powers: Vec<(i32, i32)>,
    /// By power, the coefficients of all functions.
    of_powers: Vec<f64>,
    /// `∫ a(φi) b(φj)` over the reference triangle, for `a`, `b` of value, slope along ξ, slope along η.
    pub(super) products: [[DMatrix<f64>; OPERATORS]; OPERATORS],
    /// `∫ a(φi)` over the reference triangle, for the same `a`.
    pub(super) integrals: [Vec<f64>; OPERATORS],
}

impl Shape {
    fn new(degree: Degree) -> Self {
        let p = i32::try_from(degree.number()).unwrap_or(0);
        let powers: Vec<(i32, i32)> = (0..=p).flat_map(|all| (0..=all).map(move |b| (all - b, b))).collect();
        let nodes = nodes(degree);
        let vandermonde = DMatrix::from_fn(nodes.len(), powers.len(), |i, k| {
            nodes[i][0].powi(powers[k].0) * nodes[i][1].powi(powers[k].1)
        });
        // The nodes are unisolvent, so the inverse exists; were it not so, every test of the element would fail.
        let coefficients = vandermonde.try_inverse().unwrap_or_else(|| DMatrix::zeros(powers.len(), powers.len()));
        let integral = |a: i32, b: i32| factorial(a) * factorial(b) / factorial(a + b + 2);
        let product = |m: Operator, n: Operator| {
            let of_powers = DMatrix::from_fn(powers.len(), powers.len(), |i, j| {
                let ((f, a, b), (g, c, d)) = (m.on(powers[i]), n.on(powers[j]));
                if f * g == 0.0 { 0.0 } else { f * g * integral(a + c, b + d) }
            });
            coefficients.transpose() * of_powers * &coefficients
        };
        let products = Operator::ALL.map(|m| Operator::ALL.map(|n| product(m, n)));
        // All functions together are one.
        let integrals = products
            .each_ref()
            .map(|[with_value, ..]: &[DMatrix<f64>; OPERATORS]| with_value.row_iter().map(|row| row.sum()).collect());
        Self { powers, of_powers: coefficients.transpose().as_slice().to_vec(), products, integrals }
    }

    /// Value, slope along ξ and slope along η of every function at a place; `into` has three rows of one number a node.
    pub(super) fn at(&self, [xi, eta]: [f64; 2], into: &mut [Vec<f64>; OPERATORS]) {
        for (operator, row) in Operator::ALL.into_iter().zip(into) {
            row.clear();
            row.resize(self.powers.len(), 0.0);
            for (&power, coefficients) in self.powers.iter().zip(self.of_powers.chunks_exact(self.powers.len())) {
                let (factor, a, b) = operator.on(power);
                if factor != 0.0 {
                    let value = factor * xi.powi(a) * eta.powi(b);
                    row.iter_mut().zip(coefficients).for_each(|(sum, coefficient)| *sum += coefficient * value);
                }
            }
        }
    }
}

#[derive(Clone, Copy)]
enum Operator {
    Value,
    AlongXi,
    AlongEta,
}

impl Operator {
    const ALL: [Self; OPERATORS] = [Self::Value, Self::AlongXi, Self::AlongEta];

    /// What it makes of ξᵃ ηᵇ: a factor and new powers.
    fn on(self, (a, b): (i32, i32)) -> (f64, i32, i32) {
        match self {
            Self::Value => (1.0, a, b),
            Self::AlongXi => (f64::from(a), (a - 1).max(0), b),
            Self::AlongEta => (f64::from(b), a, (b - 1).max(0)),
        }
    }
}

fn factorial(n: i32) -> f64 {
    (1..=n).map(f64::from).product()
}

/// Places of the nodes on the reference triangle.
pub(super) fn nodes(degree: Degree) -> Vec<[f64; 2]> {
    const CORNERS: [[f64; 2]; 3] = [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0]];
    let mut nodes = CORNERS.to_vec();
    for side in 0..3 {
        let (from, to) = (CORNERS[side], CORNERS[(side + 1) % 3]);
        let within = &degree.along_side()[1..degree.number()];
        nodes
            .extend(within.iter().map(|&(at, _)| [from[0] + at * (to[0] - from[0]), from[1] + at * (to[1] - from[1])]));
    }
    match degree {
        Degree::Two => {}
        Degree::Three => nodes.push([1.0 / 3.0, 1.0 / 3.0]),
        Degree::Four => nodes.extend([[0.25, 0.25], [0.5, 0.25], [0.25, 0.5]]),
    }
    nodes
}

#[cfg(test)]
mod tests {
    use super::*;

    const ALL: [Degree; 3] = [Degree::Two, Degree::Three, Degree::Four];

    #[test]
    fn functions_are_one_at_their_own_node_and_none_at_the_others() {
        for degree in ALL {
            let (nodes, mut rows) = (nodes(degree), [Vec::new(), Vec::new(), Vec::new()]);
            assert_eq!(nodes.len(), degree.in_triangle());
            for (number, &node) in nodes.iter().enumerate() {
                degree.shape().at(node, &mut rows);
                for (function, value) in rows[0].iter().enumerate() {
                    let expected = f64::from(u8::from(function == number));
                    assert!(
                        (value - expected).abs() < 1e-12,
                        "{degree:?}: function {function} at node {number}: {value}"
                    );
                }
            }
        }
    }

    #[test]
    fn functions_add_up_to_one_and_their_integrals_to_the_area() {
        for degree in ALL {
            let mut rows = [Vec::new(), Vec::new(), Vec::new()];
            degree.shape().at([0.21, 0.34], &mut rows);
            for (row, sum) in rows.iter().zip([1.0, 0.0, 0.0]) {
                assert!((row.iter().sum::<f64>() - sum).abs() < 1e-11);
            }
            assert!((degree.shape().integrals[0].iter().sum::<f64>() - 0.5).abs() < 1e-13);
            assert!((degree.shape().products[0][0].sum() - 0.5).abs() < 1e-13);
        }
    }

    #[test]
    fn lumped_weights_along_a_side_integrate_to_degree_2p_less_1() {
        for degree in ALL {
            for power in (0..20_i32).take(2 * degree.number()) {
                let sum: f64 = degree.along_side().iter().map(|&(at, weight)| weight * at.powi(power)).sum();
                assert!((sum - 1.0 / f64::from(power + 1)).abs() < 1e-14, "{degree:?}: power {power}");
            }
        }
    }
}
