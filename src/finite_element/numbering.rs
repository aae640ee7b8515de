//! Nodes of a mesh of triangles: its corners, then nodes within sides, then nodes inside triangles.

use std::collections::BTreeMap;

use super::{
    element::Triangle,
    shape::{self, Degree},
};

/// The nodes of every triangle.
#[derive(Clone, Debug)]
pub(super) struct Numbering {
    pub(super) degree: Degree,
    pub(super) triangles: Vec<Triangle>,
    /// Nodes that triangles may share; those inside one triangle come after them.
    pub(super) shared: usize,
    pub(super) places: Vec<[f64; 2]>,
    of_triangles: Vec<usize>,
    /// First node within a side, by its lower and higher corner, in the direction from the lower to the higher.
    sides: BTreeMap<(usize, usize), usize>,
}

impl Numbering {
    pub(super) fn new(corners: &[[f64; 2]], triangles: &[[usize; 3]], degree: Degree) -> Self {
        let (in_side, inside) = (degree.in_side(), degree.inside());
        let mut sides = BTreeMap::new();
        let mut shared = corners.len();
        for triangle in triangles {
            for side in 0..3 {
                sides.entry(ordered(triangle[side], triangle[(side + 1) % 3])).or_insert_with(|| {
                    shared += in_side;
                    shared - in_side
                });
            }
        }
        let mut places = corners.to_vec();
        places.resize(shared + triangles.len() * inside, [0.0; 2]);
        let mut of_triangles = Vec::with_capacity(triangles.len() * degree.in_triangle());
        let mut shapes = Vec::with_capacity(triangles.len());
        let reference = shape::nodes(degree);
        for (number, triangle) in triangles.iter().enumerate() {
            let geometry = Triangle { corners: triangle.map(|corner| corners[corner]) };
            let start = of_triangles.len();
            of_triangles.extend(triangle);
            for side in 0..3 {
                let (from, to) = (triangle[side], triangle[(side + 1) % 3]);
                let first = sides[&ordered(from, to)];
                of_triangles.extend((0..in_side).map(|k| if from < to { first + k } else { first + in_side - 1 - k }));
            }
            of_triangles.extend((0..inside).map(|k| shared + number * inside + k));
            for (&node, &at) in of_triangles[start..].iter().zip(&reference).skip(3) {
                places[node] = geometry.place(at);
            }
            shapes.push(geometry);
        }
        Self { degree, triangles: shapes, shared, places, of_triangles, sides }
    }

    pub(super) fn nodes_of(&self, triangle: usize) -> &[usize] {
        let count = self.degree.in_triangle();
        &self.of_triangles[triangle * count..(triangle + 1) * count]
    }

    /// The nodes along a side, both corners among them.
    pub(super) fn along(&self, from: usize, to: usize) -> Option<Vec<usize>> {
        let first = *self.sides.get(&ordered(from, to))?;
        let within = first..first + self.degree.in_side();
        let mut nodes = vec![from];
        if from < to {
            nodes.extend(within);
        } else {
            nodes.extend(within.rev());
        }
        nodes.push(to);
        Some(nodes)
    }
}

fn ordered(a: usize, b: usize) -> (usize, usize) {
    (a.min(b), a.max(b))
}
