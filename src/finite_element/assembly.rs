//! From the matrices of triangles, beams and springs to one sparse matrix; what lies inside a triangle is eliminated there.

use std::{borrow::Borrow, ops::Range, sync::Arc};

use nalgebra::{DMatrix, DVector, DVectorView};
use rayon::prelude::*;

use super::{
    element::{Fields, ShellStiffness},
    factor::{NotDefinite, Order, Pattern},
    numbering::Numbering,
    solution::Solution,
};

/// Triangles whose matrices are made at a time.
const AT_ONCE: usize = 256;

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

/// Unknowns of a plate with its beams, and how they hang together, whatever their stiffness.
#[derive(Clone, Debug)]
pub(super) struct Layout {
    pub(super) numbering: Numbering,
    pub(super) fields: Fields,
    /// Unknowns that are held.
    held: Vec<bool>,
    /// First unknown of the beams.
    beams: usize,
    /// Groups of unknowns (a node, or one unknown of a beam) that a column of groups reaches up to.
    reached: Vec<Vec<usize>>,
    /// By triangle, by pair of nodes on its sides: where in a column of the second the rows of the first begin.
    begin: Vec<u32>,
    pub(super) pattern: Pattern,
}

impl Layout {
    /// `extra`: number of unknowns of beams, which come after those of the shared nodes.
    pub(super) fn new(numbering: Numbering, fields: Fields, extra: usize, held: &[usize], parts: &[Part]) -> Self {
        let beams = numbering.shared * fields.count();
        let size = beams + extra;
        let mut is_held = vec![false; size];
        for &unknown in held {
            is_held[unknown] = true;
        }
        let groups = numbering.shared + extra;
        let mut new = Self {
            fields,
            held: is_held,
            beams,
            reached: vec![Vec::new(); groups],
            begin: Vec::new(),
            pattern: Pattern { columns: Vec::with_capacity(size + 1), rows: Vec::new() },
            numbering,
        };
        new.lay_out(parts);
        new.begin = new.rows_of_nodes();
        new
    }

    /// The order of elimination of its unknowns.
    pub(super) fn order(&self) -> Result<Order, NotDefinite> {
        let mut groups = Pattern { columns: vec![0], rows: Vec::new() };
        for list in &self.reached {
            groups.rows.extend(list);
            groups.columns.push(groups.rows.len());
        }
        let count = self.fields.count();
        self.pattern.order(&groups, |group| match group.checked_sub(self.numbering.shared) {
            None => group * count..(group + 1) * count,
            Some(of_beams) => self.beams + of_beams..self.beams + of_beams + 1,
        })
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
        let on_sides = self.on_sides();
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
        let pattern = &mut self.pattern;
        pattern.columns.push(0);
        for (group, list) in self.reached.iter().enumerate() {
            let width = if group < self.numbering.shared { count } else { 1 };
            for own in 0..width {
                for &row in list {
                    if row < self.numbering.shared {
                        let within = if row == group { own + 1 } else { count };
                        pattern.rows.extend((0..within).map(|field| row * count + field));
                    } else {
                        pattern.rows.push(self.beams + row - self.numbering.shared);
                    }
                }
                pattern.columns.push(pattern.rows.len());
            }
        }
    }

    fn on_sides(&self) -> usize {
        self.numbering.degree.in_triangle() - self.numbering.degree.inside()
    }

    /// Looked for once, since every state of the material asks for it again.
    fn rows_of_nodes(&self) -> Vec<u32> {
        let on_sides = self.on_sides();
        let mut begin = Vec::with_capacity(self.numbering.triangles.len() * on_sides * on_sides);
        for triangle in 0..self.numbering.triangles.len() {
            let nodes = &self.numbering.nodes_of(triangle)[..on_sides];
            for &column in nodes {
                let list = &self.reached[column];
                #[expect(clippy::cast_possible_truncation, reason = "a column has some hundreds of rows")]
                begin.extend(nodes.iter().map(|row| (self.before(list, list.binary_search(row).unwrap_or(0))) as u32));
            }
        }
        begin
    }

    /// Adds the matrix of a triangle's sides to the values of the sparse one.
    fn add_triangle(&self, triangle: usize, matrix: &DMatrix<f64>, values: &mut [f64]) {
        let (count, on_sides) = (self.fields.count(), self.on_sides());
        let nodes = &self.numbering.nodes_of(triangle)[..on_sides];
        let begin = &self.begin[triangle * on_sides * on_sides..(triangle + 1) * on_sides * on_sides];
        for ((j, &column), begin) in nodes.iter().enumerate().zip(begin.chunks_exact(on_sides)) {
            for own in 0..count {
                let unknown = column * count + own;
                if self.held[unknown] {
                    continue;
                }
                let start = self.pattern.columns[unknown];
                let of_column = matrix.column(j * count + own);
                for ((i, &row), &begin) in nodes.iter().enumerate().zip(begin) {
                    if row > column {
                        continue;
                    }
                    let rows = if row == column { own + 1 } else { count };
                    let (place, first) = (start + begin as usize, row * count);
                    let held = &self.held[first..first + rows];
                    let own = &of_column.as_slice()[i * count..i * count + rows];
                    for ((value, own), held) in values[place..place + rows].iter_mut().zip(own).zip(held) {
                        *value += if *held { 0.0 } else { *own };
                    }
                }
            }
        }
    }

    /// Adds a small matrix to the values of the sparse one.
    fn add(&self, Part { unknowns, matrix }: &Part, values: &mut [f64]) {
        for (j, &column) in unknowns.iter().enumerate().filter(|(_, column)| !self.held[**column]) {
            let bounds = self.pattern.columns[column]..self.pattern.columns[column + 1];
            let rows = &self.pattern.rows[bounds.clone()];
            let upper = unknowns.iter().enumerate().filter(|(_, row)| **row <= column && !self.held[**row]);
            for (i, row) in upper {
                if let Ok(place) = rows.binary_search(row) {
                    values[bounds.start + place] += matrix[(i, j)];
                }
            }
        }
    }

    fn sides_of(&self, triangle: usize) -> Vec<usize> {
        let (count, on_sides) = (self.fields.count(), self.on_sides());
        let nodes = &self.numbering.nodes_of(triangle)[..on_sides];
        nodes.iter().flat_map(|&node| (0..count).map(move |field| node * count + field)).collect()
    }
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
        let Inside { inverse: _, from_sides } = &self.inside[triangle];
        let inside = load.rows(sides.len(), load.len() - sides.len());
        let carried = from_sides.tr_mul(&inside);
        for (k, &unknown) in sides.iter().enumerate() {
            if !self.layout.held[unknown] {
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
        self.layout.numbering.triangles.len() * self.layout.numbering.degree.inside() * self.layout.fields.count()
    }

    /// All unknowns of a triangle from a solution and the load inside it.
    pub(super) fn of_triangle(&self, triangle: usize, solution: &[f64], inner: &[f64], into: &mut DVector<f64>) {
        let count = self.layout.fields.count();
        let Inside { inverse, from_sides } = &self.inside[triangle];
        let (inside, on_sides) = (inverse.nrows(), from_sides.ncols());
        let nodes = self.layout.numbering.nodes_of(triangle);
        for (chunk, &node) in into.as_mut_slice()[..on_sides].chunks_exact_mut(count).zip(nodes) {
            chunk.copy_from_slice(&solution[node * count..(node + 1) * count]);
        }
        let (sides, mut within) = into.rows_range_pair_mut(..on_sides, on_sides..);
        within.gemv(-1.0, from_sides, &sides, 0.0);
        let load = DVectorView::from_slice(&inner[triangle * inside..(triangle + 1) * inside], inside);
        if load.iter().any(|load| *load != 0.0) {
            within.gemv(1.0, inverse, &load, 1.0);
        }
    }

    /// The numbers on a triangle's sides, a column for each solution.
    pub(super) fn on_sides<S: Borrow<Solution>>(&self, triangle: usize, solutions: &[S]) -> DMatrix<f64> {
        let count = self.layout.fields.count();
        let on_sides = self.inside[triangle].from_sides.ncols();
        let nodes = &self.layout.numbering.nodes_of(triangle)[..on_sides / count];
        let mut all = Vec::with_capacity(on_sides * solutions.len());
        for solution in solutions {
            let values = &solution.borrow().values;
            for &node in nodes {
                all.extend_from_slice(&values[node * count..(node + 1) * count]);
            }
        }
        DMatrix::from_vec(on_sides, solutions.len(), all)
    }

    /// What is read of the inside of a triangle, as read of its sides where no load lies inside.
    pub(super) fn without_inside(&self, triangle: usize, inside: &DMatrix<f64>, of_sides: &mut DMatrix<f64>) {
        of_sides.gemm(-1.0, inside, &self.inside[triangle].from_sides, 1.0);
    }

    /// How far what lies inside a triangle moves by itself; none where no load lies there.
    pub(super) fn moved_inside(&self, triangle: usize, solution: &Solution) -> Option<DVector<f64>> {
        let inverse = &self.inside[triangle].inverse;
        let size = inverse.nrows();
        let load = &solution.inner[triangle * size..(triangle + 1) * size];
        load.iter().any(|load| *load != 0.0).then(|| inverse * DVectorView::from_slice(load, size))
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
    let from_sides = &inverse * part(sides..size, 0..sides);
    let mut condensed = part(0..sides, 0..sides);
    condensed.gemm(-1.0, &part(0..sides, sides..size), &from_sides, 1.0);
    (condensed, Inside { inverse, from_sides })
}
