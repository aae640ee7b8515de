//! From the matrices of triangles, beams and springs to one sparse matrix; what lies inside a triangle is eliminated there.

use nalgebra::{DMatrix, DVector};

use super::{
    element::{Fields, ShellStiffness},
    factor::SymmetricSparse,
    numbering::Numbering,
};

/// A small matrix on a few unknowns: a beam, a spring.
#[derive(Clone, Debug)]
pub(super) struct Part {
    pub(super) unknowns: Vec<usize>,
    pub(super) matrix: DMatrix<f64>,
}

/// What the inside of a triangle needs in order to be found again from its sides.
#[derive(Clone, Debug)]
struct Inside {
    /// `Kii⁻¹`.
    inverse: DMatrix<f64>,
    /// `Kii⁻¹ Kis`.
    from_sides: DMatrix<f64>,
}

/// Unknowns of a plate with its beams, and how they hang together.
#[derive(Clone, Debug)]
pub(super) struct Assembly {
    pub(super) numbering: Numbering,
    pub(super) fields: Fields,
    inside: Vec<Inside>,
    /// Unknowns that are held.
    held: Vec<bool>,
    /// First unknown of the beams.
    beams: usize,
    /// Groups of unknowns (a node, or one unknown of a beam) that a column of groups reaches up to, with its start.
    reached: Vec<Vec<usize>>,
    starts: Vec<usize>,
    pub(super) matrix: SymmetricSparse,
}

impl Assembly {
    /// `extra`: number of unknowns of beams, which come after those of the shared nodes.
    pub(super) fn new(
        numbering: Numbering,
        fields: Fields,
        extra: usize,
        held: &[usize],
        parts: &[Part],
        shells: &dyn Fn(usize) -> ShellStiffness,
    ) -> Self {
        let count = fields.count();
        let beams = numbering.shared * count;
        let size = beams + extra;
        let mut is_held = vec![false; size];
        for &unknown in held {
            is_held[unknown] = true;
        }
        let groups = numbering.shared + extra;
        let mut new = Self {
            fields,
            inside: Vec::with_capacity(numbering.triangles.len()),
            held: is_held,
            beams,
            reached: vec![Vec::new(); groups],
            starts: Vec::with_capacity(groups + 1),
            matrix: SymmetricSparse { columns: Vec::with_capacity(size + 1), rows: Vec::new(), values: Vec::new() },
            numbering,
        };
        new.lay_out(parts);
        for triangle in 0..new.numbering.triangles.len() {
            let (matrix, inside) = new.condensed(triangle, &shells(triangle));
            new.inside.push(inside);
            let sides = new.sides_of(triangle);
            new.add(&sides, &matrix);
        }
        for part in parts {
            new.add(&part.unknowns, &part.matrix);
        }
        for unknown in (0..size).filter(|&unknown| new.held[unknown]) {
            // The diagonal is the last of its column.
            let last = new.matrix.columns[unknown + 1] - 1;
            new.matrix.values[last] = 1.0;
        }
        new
    }

    pub(super) fn size(&self) -> usize {
        self.held.len()
    }

    fn group(&self, unknown: usize) -> usize {
        if unknown < self.beams { unknown / self.fields.count() } else { self.numbering.shared + unknown - self.beams }
    }

    /// Unknowns before a place in a list of groups.
    fn before(&self, list: &[usize], place: usize) -> usize {
        let nodes = list[..place].partition_point(|&group| group < self.numbering.shared);
        nodes * self.fields.count() + (place - nodes)
    }

    fn lay_out(&mut self, parts: &[Part]) {
        let mut pairs: Vec<(usize, usize)> = Vec::new();
        let mut all = |list: &[usize]| {
            for &a in list {
                pairs.extend(list.iter().filter(|&&b| b <= a).map(|&b| (a, b)));
            }
        };
        let on_sides = self.numbering.degree.in_triangle() - self.numbering.degree.inside();
        for triangle in 0..self.numbering.triangles.len() {
            all(&self.numbering.nodes_of(triangle)[..on_sides]);
        }
        for part in parts {
            let mut groups: Vec<usize> = part.unknowns.iter().map(|&unknown| self.group(unknown)).collect();
            groups.sort_unstable();
            groups.dedup();
            all(&groups);
        }
        // Every unknown stands on the diagonal, also one that nothing reaches.
        pairs.extend((0..self.reached.len()).map(|group| (group, group)));
        pairs.sort_unstable();
        pairs.dedup();
        for (column, row) in pairs {
            self.reached[column].push(row);
        }
        let count = self.fields.count();
        let matrix = &mut self.matrix;
        matrix.columns.push(0);
        for (group, list) in self.reached.iter().enumerate() {
            self.starts.push(matrix.rows.len());
            let width = if group < self.numbering.shared { count } else { 1 };
            for own in 0..width {
                for &row in list {
                    if row < self.numbering.shared {
                        let within = if row == group { own + 1 } else { count };
                        matrix.rows.extend((0..within).map(|field| row * count + field));
                    } else {
                        matrix.rows.push(self.beams + row - self.numbering.shared);
                    }
                }
                matrix.columns.push(matrix.rows.len());
            }
        }
        matrix.values = vec![0.0; matrix.rows.len()];
    }

    fn add(&mut self, unknowns: &[usize], matrix: &DMatrix<f64>) {
        let count = self.fields.count();
        // Neighbouring unknowns mostly belong to one node: its block is looked for once.
        let (mut known, mut offset) = ((usize::MAX, usize::MAX), 0);
        for (j, &column) in unknowns.iter().enumerate() {
            for (i, &row) in unknowns.iter().enumerate() {
                if row > column || self.held[row] || self.held[column] {
                    continue;
                }
                let (group, above) = (self.group(column), self.group(row));
                if known != (group, above) {
                    known = (group, above);
                    let list = &self.reached[group];
                    let place = list.binary_search(&above).unwrap_or(0);
                    offset = self.before(list, place);
                }
                let field = if above < self.numbering.shared { row % count } else { 0 };
                let start = self.matrix.columns[column];
                self.matrix.values[start + offset + field] += matrix[(i, j)];
            }
        }
    }

    fn sides_of(&self, triangle: usize) -> Vec<usize> {
        let on_sides = self.numbering.degree.in_triangle() - self.numbering.degree.inside();
        let count = self.fields.count();
        let nodes = &self.numbering.nodes_of(triangle)[..on_sides];
        nodes.iter().flat_map(|&node| (0..count).map(move |field| node * count + field)).collect()
    }

    fn condensed(&self, triangle: usize, shell: &ShellStiffness) -> (DMatrix<f64>, Inside) {
        let degree = self.numbering.degree;
        let whole = self.numbering.triangles[triangle].stiffness(degree, self.fields, shell);
        let inside = degree.inside() * self.fields.count();
        let sides = whole.nrows() - inside;
        let kii = whole.view((sides, sides), (inside, inside)).into_owned();
        let kis = whole.view((sides, 0), (inside, sides)).into_owned();
        // An element with its sides held is stiff against all that its inside can do.
        let inverse = kii.cholesky().map_or_else(|| DMatrix::zeros(inside, inside), |factor| factor.inverse());
        let from_sides = &inverse * &kis;
        let mut condensed = whole.view((0, 0), (sides, sides)).into_owned();
        condensed.gemm_tr(-1.0, &kis, &from_sides, 1.0);
        (condensed, Inside { inverse, from_sides })
    }

    /// Adds a load on the nodes of a triangle (numbers of a node side by side) to a right-hand side; `inner` takes what
    /// falls inside triangles.
    pub(super) fn load(&self, triangle: usize, load: &DVector<f64>, into: &mut [f64], inner: &mut [f64]) {
        let sides = self.sides_of(triangle);
        let Inside { inverse: _, from_sides } = &self.inside[triangle];
        let inside = load.rows(sides.len(), load.len() - sides.len());
        let carried = from_sides.tr_mul(&inside);
        for (k, &unknown) in sides.iter().enumerate() {
            if !self.held[unknown] {
                into[unknown] += load[k] - carried[k];
            }
        }
        let start = triangle * inside.len();
        for (own, value) in inner[start..start + inside.len()].iter_mut().zip(inside.iter()) {
            *own += value;
        }
    }

    /// Numbers that lie inside triangles, all of them.
    pub(super) fn inner_size(&self) -> usize {
        self.numbering.triangles.len() * self.numbering.degree.inside() * self.fields.count()
    }

    /// All unknowns of a triangle from a solution and the load inside it.
    pub(super) fn of_triangle(&self, triangle: usize, solution: &[f64], inner: &[f64], into: &mut DVector<f64>) {
        let sides = self.sides_of(triangle);
        let Inside { inverse, from_sides } = &self.inside[triangle];
        let inside = inverse.nrows();
        for (k, &unknown) in sides.iter().enumerate() {
            into[k] = solution[unknown];
        }
        let on_sides = into.rows(0, sides.len()).into_owned();
        let load = DVector::from_column_slice(&inner[triangle * inside..(triangle + 1) * inside]);
        let found = inverse * load - from_sides * on_sides;
        into.rows_mut(sides.len(), inside).copy_from(&found);
    }

    /// The numbers on the sides of a triangle, and the loads inside it.
    pub(super) fn numbers_of(
        &self,
        triangle: usize,
        solution: &[f64],
        inner: &[f64],
        sides: &mut DVector<f64>,
        inside: &mut DVector<f64>,
    ) {
        let count = self.fields.count();
        let within = self.numbering.degree.inside() * count;
        let on_sides = self.numbering.degree.in_triangle() - self.numbering.degree.inside();
        sides.resize_vertically_mut(on_sides * count, 0.0);
        for (chunk, &node) in sides.as_mut_slice().chunks_exact_mut(count).zip(self.numbering.nodes_of(triangle)) {
            chunk.copy_from_slice(&solution[node * count..(node + 1) * count]);
        }
        inside.resize_vertically_mut(within, 0.0);
        inside.copy_from_slice(&inner[triangle * within..(triangle + 1) * within]);
    }

    /// What maps all numbers of a triangle, split into what maps those on its sides and what maps the loads inside it.
    pub(super) fn split_rows(&self, triangle: usize, all: &DMatrix<f64>) -> (DMatrix<f64>, DMatrix<f64>) {
        let Inside { inverse, from_sides } = &self.inside[triangle];
        let split = all.ncols() - inverse.nrows();
        let inner = all.columns(split, inverse.nrows());
        (all.columns(0, split) - inner * from_sides, inner * inverse)
    }

    /// `a Kii⁻¹ b` over the insides of all triangles: the work that does not show on their sides.
    pub(super) fn inner_product(&self, a: &[f64], b: &[f64]) -> f64 {
        let count = self.numbering.degree.inside() * self.fields.count();
        let of =
            |list: &[f64], triangle: usize| DVector::from_column_slice(&list[triangle * count..(triangle + 1) * count]);
        self.inside.iter().enumerate().map(|(t, Inside { inverse, .. })| of(a, t).dot(&(inverse * of(b, t)))).sum()
    }
}
