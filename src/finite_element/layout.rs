//! Unknowns of a plate and how they hang together, whatever their stiffness.

use nalgebra::DMatrix;

use super::{
    element::Fields,
    factor::{NotDefinite, Order, Pattern},
    numbering::Numbering,
};

/// A small matrix on a few unknowns: a beam, a spring.
#[derive(Clone, Debug)]
pub(super) struct Part {
    pub(super) unknowns: Vec<usize>,
    pub(super) matrix: DMatrix<f64>,
}

/// Unknowns of a plate with its beams, and how they hang together, whatever their stiffness.
#[derive(Clone, Debug)]
pub(super) struct Layout {
    pub(super) numbering: Numbering,
    pub(super) fields: Fields,
    /// Unknowns that are held.
    pub(super) held: Vec<bool>,
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
        let shared = self.numbering.shared;
        let width = |group: usize| if group < shared { count } else { 1 };
        // Room for all of them at once: a list that grows is copied again and again.
        let rows =
            |(group, list): (usize, &Vec<usize>)| width(group) * list.iter().map(|&row| width(row)).sum::<usize>();
        let most = self.reached.iter().enumerate().map(rows).sum();
        let pattern = &mut self.pattern;
        pattern.rows.reserve_exact(most);
        pattern.columns.push(0);
        for (group, list) in self.reached.iter().enumerate() {
            for own in 0..width(group) {
                for &row in list {
                    if row < shared {
                        let within = if row == group { own + 1 } else { count };
                        pattern.rows.extend((0..within).map(|field| row * count + field));
                    } else {
                        pattern.rows.push(self.beams + row - shared);
                    }
                }
                pattern.columns.push(pattern.rows.len());
            }
        }
    }

    pub(super) fn on_sides(&self) -> usize {
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
    pub(super) fn add_triangle(&self, triangle: usize, matrix: &DMatrix<f64>, values: &mut [f64]) {
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
    pub(super) fn add(&self, Part { unknowns, matrix }: &Part, values: &mut [f64]) {
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

    pub(super) fn sides_of(&self, triangle: usize) -> impl ExactSizeIterator<Item = usize> {
        let count = self.fields.count();
        let nodes = &self.numbering.nodes_of(triangle)[..self.on_sides()];
        (0..nodes.len() * count).map(move |number| nodes[number / count] * count + number % count)
    }
}
