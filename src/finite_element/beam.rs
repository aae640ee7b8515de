//! Beams and beds along lines of the mesh.

use nalgebra::{DMatrix, Matrix4};

use super::{
    element::Fields,
    layout::Part,
    numbering::Numbering,
    plate::{Bed, point},
};
use crate::{
    geometry::Point,
    units::{Force, ForcePerWidth, Length, Torque, per_width, si},
};

/// Nodes along a bed, with the beam below.
#[derive(Clone, Debug)]
pub(super) struct BeamLine {
    /// Nodes of the plate, in order.
    pub(super) nodes: Vec<usize>,
    /// Distance along the line.
    pub(super) at: Vec<f64>,
    /// Length that each node stands for.
    weights: Vec<f64>,
    stiffness: f64,
    rigidity: f64,
    /// First unknown of the beam, deflection and slope by turns; none where it does not move.
    first: Option<usize>,
    /// By node, the unknowns of the slope before and after it: at a sharp bend one each.
    slopes: Vec<[usize; 2]>,
    /// Nodes, by their place in the line, where posts stand.
    posts: Vec<usize>,
}

impl BeamLine {
    pub(super) fn new(bed: &Bed, numbering: &Numbering, next: &mut usize) -> Option<Self> {
        let start = *bed.corners.first()?;
        let (mut nodes, mut at, mut weights) = (vec![start], vec![0.0], vec![0.0]);
        let mut bends = Vec::new();
        for (number, side) in bed.corners.windows(2).enumerate() {
            if let Some(before) = number.checked_sub(1)
                && bends_sharply([bed.corners[before], side[0], side[1]].map(|corner| numbering.places[corner]))
            {
                bends.push(nodes.len() - 1);
            }
            let along = numbering.along(side[0], side[1])?;
            let [a, b] = [side[0], side[1]].map(|corner| numbering.places[corner]);
            let length = (b[0] - a[0]).hypot(b[1] - a[1]);
            let from = at[at.len() - 1];
            for (k, (&node, &(share, weight))) in along.iter().zip(numbering.degree.along_side()).enumerate() {
                if k == 0 {
                    *weights.last_mut()? += weight * length;
                } else {
                    nodes.push(node);
                    at.push(from + share * length);
                    weights.push(weight * length);
                }
            }
        }
        let first = bed.beam.as_ref().map(|_| *next);
        let mut slopes = Vec::new();
        if let Some(first) = first {
            *next += 2 * nodes.len();
            slopes.extend((0..nodes.len()).map(|k| [first + 2 * k + 1; 2]));
            for bend in bends {
                slopes[bend][1] = *next;
                *next += 1;
            }
        }
        let posts = bed.beam.iter().flat_map(|beam| &beam.posts);
        let posts = posts.filter_map(|post| nodes.iter().position(|node| node == post)).collect();
        let rigidity = bed.beam.as_ref().map_or(0.0, |beam| beam.rigidity.value);
        Some(Self { nodes, at, weights, stiffness: bed.stiffness.value, rigidity, first, slopes, posts })
    }

    /// Unknowns of the beam that posts hold.
    pub(super) fn held(&self) -> Vec<usize> {
        self.first.map_or_else(Vec::new, |first| self.posts.iter().map(|post| first + 2 * post).collect())
    }

    /// How the beam can move as a whole at a node, straight and unbent: by a drop and by tipping. On two posts or more,
    /// or where it does not move, not at all.
    pub(super) fn loose(&self, node: usize) -> [f64; 2] {
        let at = self.at[node];
        match self.posts.split_first() {
            _ if self.first.is_none() => [0.0; 2],
            None => [1.0, at],
            Some((post, others)) if others.iter().all(|other| other == post) => [0.0, at - self.at[*post]],
            Some(_) => [0.0; 2],
        }
    }

    pub(super) fn springs(&self, line: usize, numbering: &Numbering, fields: Fields) -> Vec<Spring> {
        let (count, deflection) = (fields.count(), fields.deflection());
        (0..self.nodes.len())
            .map(|k| Spring {
                line,
                place: numbering.places[self.nodes[k]],
                at: self.at[k],
                length: self.weights[k],
                plate: self.nodes[k] * count + deflection,
                below: self.first.map(|first| first + 2 * k),
                stiffness: self.stiffness * self.weights[k],
            })
            .collect()
    }

    /// Unknowns of the piece that ends at a node: deflection and slope at both its ends.
    fn of_piece(&self, first: usize, k: usize) -> [usize; 4] {
        [first + 2 * (k - 1), self.slopes[k - 1][1], first + 2 * k, self.slopes[k][0]]
    }

    /// Pieces of the beam between neighbouring nodes, exact for a cubic deflection.
    pub(super) fn parts(&self) -> Vec<Part> {
        let Some(first) = self.first else { return Vec::new() };
        (1..self.nodes.len())
            .map(|k| {
                let matrix = piece(self.rigidity, self.at[k] - self.at[k - 1]);
                let unknowns = self.of_piece(first, k).to_vec();
                Part { unknowns, matrix: DMatrix::from_column_slice(4, 4, matrix.as_slice()) }
            })
            .collect()
    }

    /// Moment at both ends of every piece, and the force that each post bears, downwards, under pushes at its nodes.
    pub(super) fn forces(&self, values: &[f64], pushes: &[f64]) -> BeamForces {
        let Some(first) = self.first else { return BeamForces::default() };
        let mut forces = BeamForces::default();
        let mut reactions: Vec<f64> = vec![0.0; self.nodes.len()];
        for k in 1..self.nodes.len() {
            let l = self.at[k] - self.at[k - 1];
            let numbers = nalgebra::Vector4::from(self.of_piece(first, k).map(|unknown| values[unknown]));
            let ends = piece(self.rigidity, l) * numbers;
            reactions[k - 1] += ends[0];
            reactions[k] += ends[2];
            for (at, moment) in [(self.at[k - 1], ends[1]), (self.at[k], -ends[3])] {
                let m: Torque = si(moment);
                forces.moments.push((Length::new::<uom::si::length::meter>(at), m));
            }
        }
        for (reaction, push) in reactions.iter_mut().zip(pushes) {
            *reaction -= push;
        }
        for &post in &self.posts {
            let bears: Force = si(-reactions[post]);
            forces.posts.push((Length::new::<uom::si::length::meter>(self.at[post]), bears));
        }
        forces
    }
}

/// Cosine of the turn from which a bend is a hinge: a sixteenth of a bending moment does not pass a bend of 20°, but twists
/// what comes after. What a sharper one passes by twist is left out, which bends the pipe more.
const SHARP: f64 = 0.94;

/// Whether a line through three places bends sharply.
fn bends_sharply([a, b, c]: [[f64; 2]; 3]) -> bool {
    let [p, q] = [[b[0] - a[0], b[1] - a[1]], [c[0] - b[0], c[1] - b[1]]];
    p[0] * q[0] + p[1] * q[1] < SHARP * p[0].hypot(p[1]) * q[0].hypot(q[1])
}

/// A beam of two nodes, deflection and slope at each.
fn piece(rigidity: f64, l: f64) -> Matrix4<f64> {
    let (a, b, c) = (12.0 * rigidity / l.powi(3), 6.0 * rigidity / (l * l), 2.0 * rigidity / l);
    Matrix4::new(a, b, -a, b, b, 2.0 * c, -b, c, -a, -b, a, -b, b, c, -b, 2.0 * c)
}

/// What a beam bears.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BeamForces {
    /// Bending moment along it, sagging positive, by distance from its start.
    pub moments: Vec<(Length, Torque)>,
    /// What each post bears, pressed positive, by distance from the start.
    pub posts: Vec<(Length, Force)>,
}

/// The bed at one node.
#[derive(Clone, Debug)]
pub(super) struct Spring {
    pub(super) line: usize,
    place: [f64; 2],
    at: f64,
    length: f64,
    pub(super) plate: usize,
    pub(super) below: Option<usize>,
    pub(super) stiffness: f64,
}

impl Spring {
    pub(super) fn part(&self) -> Part {
        let k = self.stiffness;
        match self.below {
            Some(below) => {
                Part { unknowns: vec![self.plate, below], matrix: DMatrix::from_row_slice(2, 2, &[k, -k, -k, k]) }
            }
            None => Part { unknowns: vec![self.plate], matrix: DMatrix::from_element(1, 1, k) },
        }
    }

    /// How far the plate is pressed towards what is below.
    pub(super) fn closed(&self, values: &[f64]) -> f64 {
        values[self.plate] - self.below.map_or(0.0, |below| values[below])
    }

    /// Force with which the plate presses.
    pub(super) fn force(&self, values: &[f64]) -> f64 {
        self.stiffness * self.closed(values)
    }

    /// Distance along the line.
    pub(super) const fn along(&self) -> f64 {
        self.at
    }

    pub(super) const fn at_node(&self) -> [f64; 2] {
        self.place
    }

    /// As part of the push along the line.
    pub(super) fn push(&self, force: f64) -> Push {
        let all: Force = si(force);
        let length = Length::new::<uom::si::length::meter>(self.length);
        Push {
            place: point(self.place),
            along: Length::new::<uom::si::length::meter>(self.at),
            length,
            force: all,
            per_length: per_width(all / length),
        }
    }
}

/// What a plate presses on a bed with at a node.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Push {
    /// Where.
    pub place: Point,
    /// Distance along the line.
    pub along: Length,
    /// Length that the node stands for.
    pub length: Length,
    /// Force, pressing positive.
    pub force: Force,
    /// The same per length.
    pub per_length: ForcePerWidth,
}
