//! From the matrices of triangles, beams and springs to one sparse matrix; what lies inside a triangle is eliminated there.

use std::{borrow::Borrow, ops::Range, sync::Arc};

use nalgebra::{DMatrix, DVector, DVectorView};
use rayon::prelude::*;

use super::{
    element::{Fields, ShellStiffness},
    layout::{Layout, Part},
    numbering::Numbering,
    solution::Solution,
};

/// Triangles whose matrices are made at a time.
const AT_ONCE: usize = 256;

/// What the inside of a triangle needs in order to be found again from its sides.
#[derive(Clone, Debug)]
struct Inside {
    /// `Kii⁻¹`.
    inverse: DMatrix<f64>,
    /// `Ksi Kii⁻¹`: a column for each number inside, few of which most loads touch.
    to_sides: DMatrix<f64>,
}

/// A plate's matrix.
#[derive(Clone, Debug)]
pub(super) struct Assembly {
    pub(super) layout: Arc<Layout>,
    inside: Vec<Inside>,
    /// By place of the pattern.
    pub(super) values: Vec<f64>,
}

impl Assembly {
    pub(super) fn new(layout: Arc<Layout>, parts: &[Part], shells: &[ShellStiffness]) -> Self {
        let mut values = vec![0.0; layout.pattern.rows.len()];
        let mut inside = Vec::with_capacity(shells.len());
        let size = layout.numbering.degree.in_triangle() * layout.fields.count();
        for (chunk, shells) in shells.chunks(AT_ONCE).enumerate() {
            let made: Vec<_> = shells
                .par_iter()
                .enumerate()
                .map_init(
                    || DMatrix::zeros(size, size),
                    |whole, (number, shell)| condensed(&layout, chunk * AT_ONCE + number, shell, whole),
                )
                .collect();
            for (matrix, own) in made {
                layout.add_triangle(inside.len(), &matrix, &mut values);
                inside.push(own);
            }
        }
        for part in parts {
            layout.add(part, &mut values);
        }
        for unknown in (0..layout.held.len()).filter(|&unknown| layout.held[unknown]) {
            // The diagonal is the last of its column.
            values[layout.pattern.columns[unknown + 1] - 1] = 1.0;
        }
        Self { layout, inside, values }
    }

    pub(super) fn numbering(&self) -> &Numbering {
        &self.layout.numbering
    }

    pub(super) fn size(&self) -> usize {
        self.layout.held.len()
    }

    pub(super) fn is_held(&self, unknown: usize) -> bool {
        self.layout.held[unknown]
    }

    pub(super) fn fields(&self) -> Fields {
        self.layout.fields
    }

    /// Adds a load on the nodes of a triangle (numbers of a node side by side) to a right-hand side; `inner` takes what
    /// falls inside triangles.
    pub(super) fn load(&self, triangle: usize, load: &DVector<f64>, into: &mut [f64], inner: &mut [f64]) {
        let sides = self.layout.sides_of(triangle);
        let (on_sides, inside) = load.as_slice().split_at(sides.len());
        let mut carried = on_sides.to_vec();
        let to_sides = self.inside[triangle].to_sides.as_slice().chunks_exact(sides.len());
        for (force, to_sides) in inside.iter().zip(to_sides).filter(|(force, _)| **force != 0.0) {
            carried.iter_mut().zip(to_sides).for_each(|(carried, share)| *carried -= force * share);
        }
        for (unknown, force) in sides.zip(carried) {
            if !self.layout.held[unknown] {
                into[unknown] += force;
            }
        }
        let start = triangle * inside.len();
        for (own, value) in inner[start..start + inside.len()].iter_mut().zip(inside) {
            *own += value;
        }
    }

    /// Numbers that lie inside triangles, all of them.
    pub(super) fn inner_size(&self) -> usize {
        self.layout.numbering.triangles.len() * self.layout.numbering.degree.inside() * self.layout.fields.count()
    }

    /// All unknowns of a triangle from a solution and the load inside it.
    pub(super) fn of_triangle(&self, triangle: usize, solution: &[f64], inner: &[f64], into: &mut DVector<f64>) {
        let count = self.layout.fields.count();
        let Inside { inverse, to_sides } = &self.inside[triangle];
        let (on_sides, inside) = to_sides.shape();
        let nodes = self.layout.numbering.nodes_of(triangle);
        for (chunk, &node) in into.as_mut_slice()[..on_sides].chunks_exact_mut(count).zip(nodes) {
            chunk.copy_from_slice(&solution[node * count..(node + 1) * count]);
        }
        let (sides, mut within) = into.rows_range_pair_mut(..on_sides, on_sides..);
        within.gemv_tr(-1.0, to_sides, &sides, 0.0);
        let load = DVectorView::from_slice(&inner[triangle * inside..(triangle + 1) * inside], inside);
        if load.iter().any(|load| *load != 0.0) {
            within.gemv(1.0, inverse, &load, 1.0);
        }
    }

    /// Deflections of a triangle's nodes.
    pub(super) fn deflections(&self, triangle: usize, solution: &Solution, into: &mut DVector<f64>) {
        let (count, field) = (self.layout.fields.count(), self.layout.fields.deflection());
        let Inside { inverse, to_sides } = &self.inside[triangle];
        let (on_sides, inside) = to_sides.shape();
        let nodes = &self.layout.numbering.nodes_of(triangle)[..on_sides / count];
        for (own, &node) in into.iter_mut().zip(nodes) {
            *own = solution.values[node * count + field];
        }
        let load = &solution.inner[triangle * inside..][..inside];
        for (node, number) in (nodes.len()..).zip((field..inside).step_by(count)) {
            let by_load: f64 = inverse.column(number).iter().zip(load).map(|(moves, load)| moves * load).sum();
            let by_sides = to_sides.column(number);
            let by_nodes = nodes.iter().zip(by_sides.as_slice().chunks_exact(count)).map(|(&node, of_node)| {
                let numbers = &solution.values[node * count..][..count];
                of_node.iter().zip(numbers).map(|(share, number)| share * number).sum::<f64>()
            });
            into[node] = by_load - by_nodes.sum::<f64>();
        }
    }

    /// Fields of a triangle at its nodes: a column for each field of each solution.
    pub(super) fn fields_of<S: Borrow<Solution>>(&self, triangle: usize, solutions: &[S]) -> DMatrix<f64> {
        let count = self.layout.fields.count();
        let Inside { inverse, to_sides } = &self.inside[triangle];
        let (on_sides, inside) = to_sides.shape();
        let nodes = self.layout.numbering.nodes_of(triangle);
        let mut sides = Vec::with_capacity(on_sides * solutions.len());
        for solution in solutions {
            let values = &solution.borrow().values;
            nodes[..on_sides / count]
                .iter()
                .for_each(|&node| sides.extend_from_slice(&values[node * count..][..count]));
        }
        let sides = DMatrix::from_vec(on_sides, solutions.len(), sides);
        // Products of whole matrices are far faster than those by a transposed one.
        let mut within = -to_sides.transpose() * &sides;
        for (mut within, solution) in within.column_iter_mut().zip(solutions) {
            let load = DVectorView::from_slice(&solution.borrow().inner[triangle * inside..][..inside], inside);
            if load.iter().any(|load| *load != 0.0) {
                within.gemv(1.0, inverse, &load, 1.0);
            }
        }
        let mut fields = DMatrix::zeros(nodes.len(), count * solutions.len());
        let of_solutions = fields.as_mut_slice().chunks_exact_mut(nodes.len() * count);
        for (number, of_solution) in of_solutions.enumerate() {
            let (sides, within) = (sides.column(number), within.column(number));
            let by_node = sides.as_slice().chunks_exact(count).chain(within.as_slice().chunks_exact(count));
            for (node, own) in by_node.enumerate() {
                for (field, value) in own.iter().enumerate() {
                    of_solution[field * nodes.len() + node] = *value;
                }
            }
        }
        fields
    }

    /// `Kii⁻¹ b` over the insides of all triangles: how far loads move them while their sides are held.
    pub(super) fn inner_moves(&self, b: &[f64]) -> Vec<f64> {
        let count = self.layout.numbering.degree.inside() * self.layout.fields.count();
        if count == 0 {
            return Vec::new();
        }
        let mut moves = Vec::with_capacity(b.len());
        for (own, Inside { inverse, .. }) in b.chunks_exact(count).zip(&self.inside) {
            moves.extend((inverse * DVectorView::from_slice(own, count)).iter());
        }
        moves
    }

    /// `a Kii⁻¹ b` over the insides of all triangles: the work that does not show on their sides.
    pub(super) fn inner_product(&self, a: &[f64], b: &[f64]) -> f64 {
        a.iter().zip(self.inner_moves(b)).map(|(a, b)| a * b).sum()
    }
}

/// Stiffness on the sides of a triangle, with what finds its inside again; `whole` is room for all of it.
fn condensed(
    layout: &Layout,
    triangle: usize,
    shell: &ShellStiffness,
    whole: &mut DMatrix<f64>,
) -> (DMatrix<f64>, Inside) {
    let (size, sides) = (whole.nrows(), layout.on_sides() * layout.fields.count());
    layout.numbering.triangles[triangle].stiffness(layout.numbering.degree, layout.fields, shell, whole);
    let part = |rows: Range<usize>, columns: Range<usize>| {
        let mut values = Vec::with_capacity(rows.len() * columns.len());
        for column in columns.clone() {
            values.extend_from_slice(&whole.as_slice()[column * size..][rows.clone()]);
        }
        DMatrix::from_vec(rows.len(), columns.len(), values)
    };
    // An element with its sides held is stiff against all that its inside can do.
    let inverse = part(sides..size, sides..size).cholesky();
    let inverse = inverse.map_or_else(|| DMatrix::zeros(size - sides, size - sides), |factor| factor.inverse());
    let to_sides = part(0..sides, sides..size) * &inverse;
    let mut condensed = part(0..sides, 0..sides);
    condensed.gemm(-1.0, &to_sides, &part(sides..size, 0..sides), 1.0);
    (condensed, Inside { inverse, to_sides })
}
