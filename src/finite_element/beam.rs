//! Beams and beds along lines of the mesh.

use std::collections::BTreeMap;

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
    /// By node, the unknown of the beam's deflection; none where it does not move.
    deflections: Vec<usize>,
    /// By node, the unknowns of the slope before and after it: at a sharp bend one each.
    slopes: Vec<[usize; 2]>,
    /// Nodes, by their place in the line, where posts stand.
    posts: Vec<usize>,
    /// Nodes, by their place in the line, at which other beams are joined to it: which, and their places there.
    joints: Vec<(usize, Vec<(usize, usize)>)>,
    /// Nodes, by their place in the line, that do not move with it: on posts, or on beams that are held themselves.
    firm: Vec<usize>,
}

impl BeamLine {
    /// `known` has the deflections of beams before it, by node: where it meets one of them, it deflects alike.
    fn new(bed: &Bed, numbering: &Numbering, next: &mut usize, known: &mut BTreeMap<usize, usize>) -> Option<Self> {
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
        let (mut deflections, mut slopes) = (Vec::new(), Vec::new());
        if bed.beam.is_some() {
            let mut another = || {
                *next += 1;
                *next - 1
            };
            for &node in &nodes {
                deflections.push(*known.entry(node).or_insert_with(&mut another));
                slopes.push([another(); 2]);
            }
            for bend in bends {
                slopes[bend][1] = another();
            }
        }
        let posts = bed.beam.iter().flat_map(|beam| &beam.posts);
        let posts: Vec<usize> = posts.filter_map(|post| nodes.iter().position(|node| node == post)).collect();
        let rigidity = bed.beam.as_ref().map_or(0.0, |beam| beam.rigidity.value);
        let (stiffness, firm) = (bed.stiffness.value, posts.clone());
        Some(Self { nodes, at, weights, stiffness, rigidity, deflections, slopes, posts, joints: Vec::new(), firm })
    }

    /// The lines of all beds; their beams count their unknowns on from `next`. None where a line leaves the sides of the mesh.
    pub(super) fn all(beds: &[Bed], numbering: &Numbering, next: &mut usize) -> Option<Vec<Self>> {
        let mut known = BTreeMap::new();
        let lines = beds.iter().map(|bed| Self::new(bed, numbering, next, &mut known));
        let mut lines = lines.collect::<Option<Vec<Self>>>()?;
        join(&mut lines);
        Some(lines)
    }

    /// Unknowns of the beam that posts hold.
    pub(super) fn held(&self) -> Vec<usize> {
        self.posts.iter().filter_map(|&post| self.deflections.get(post).copied()).collect()
    }

    /// How the beam can move as a whole at a node, straight and unbent: by a drop and by tipping. Where it is held at two
    /// places or more, or does not move, not at all.
    pub(super) fn loose(&self, node: usize) -> [f64; 2] {
        let at = self.at[node];
        match self.firm.first() {
            _ if self.deflections.is_empty() || self.is_held() => [0.0; 2],
            None => [1.0, at],
            Some(&only) => [0.0, at - self.at[only]],
        }
    }

    /// Whether two places or more hold it.
    fn is_held(&self) -> bool {
        self.firm.iter().any(|place| *place != self.firm[0])
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
                below: self.deflections.get(k).copied(),
                stiffness: self.stiffness * self.weights[k],
            })
            .collect()
    }

    /// Unknowns of the piece that ends at a node: deflection and slope at both its ends.
    fn of_piece(&self, k: usize) -> [usize; 4] {
        [self.deflections[k - 1], self.slopes[k - 1][1], self.deflections[k], self.slopes[k][0]]
    }

    /// Pieces of the beam between neighbouring nodes, exact for a cubic deflection.
    pub(super) fn parts(&self) -> Vec<Part> {
        (1..self.deflections.len())
            .map(|k| {
                let matrix = piece(self.rigidity, self.at[k] - self.at[k - 1]);
                let unknowns = self.of_piece(k).to_vec();
                Part { unknowns, matrix: DMatrix::from_column_slice(4, 4, matrix.as_slice()) }
            })
            .collect()
    }

    /// Moment at both ends of every piece, and what the beam hands down at each node, under pushes at its nodes.
    fn bent(&self, values: &[f64], pushes: &[f64]) -> (Vec<(Length, Torque)>, Vec<f64>) {
        let (mut moments, mut handed) = (Vec::new(), pushes.to_vec());
        for k in 1..self.deflections.len() {
            let numbers = nalgebra::Vector4::from(self.of_piece(k).map(|unknown| values[unknown]));
            let ends = piece(self.rigidity, self.at[k] - self.at[k - 1]) * numbers;
            handed[k - 1] -= ends[0];
            handed[k] -= ends[2];
            for (at, moment) in [(self.at[k - 1], ends[1]), (self.at[k], -ends[3])] {
                moments.push((metres(at), si(moment)));
            }
        }
        (moments, handed)
    }

    /// What a line's beam bears under pushes at the nodes of the lines.
    pub(super) fn forces(
        lines: &[Self],
        line: usize,
        values: &[f64],
        pushes: &dyn Fn(usize) -> Vec<f64>,
    ) -> BeamForces {
        let own = &lines[line];
        if own.deflections.is_empty() {
            return BeamForces::default();
        }
        let (moments, handed) = own.bent(values, &pushes(line));
        let place = |node: usize| metres(own.at[node]);
        // A post where others are joined bears what they hand down too.
        let others = |node: usize| own.joints.iter().filter(move |(joint, _)| *joint == node).flat_map(|(_, all)| all);
        let theirs = |node: usize| others(node).map(|&(other, at)| lines[other].bent(values, &pushes(other)).1[at]);
        let posts = own.posts.iter();
        let posts = posts.map(|&post| (place(post), si(handed[post] + theirs(post).sum::<f64>()))).collect();
        let joints = own.joints.iter().map(|(joint, _)| *joint).filter(|joint| !own.posts.contains(joint));
        let joints = joints.map(|joint| (place(joint), si(handed[joint]))).collect();
        BeamForces { moments, posts, joints }
    }
}

/// Finds where beams meet, and what that holds: a beam on two posts or more is held, and so is one on a post or none that two
/// such beams or more carry, and so on.
fn join(lines: &mut [BeamLine]) {
    let mut at_nodes: BTreeMap<usize, Vec<(usize, usize)>> = BTreeMap::new();
    for (number, line) in lines.iter().enumerate().filter(|(_, line)| !line.deflections.is_empty()) {
        for (place, &node) in line.nodes.iter().enumerate() {
            at_nodes.entry(node).or_default().push((number, place));
        }
    }
    for meet in at_nodes.values() {
        for &(line, place) in meet {
            let others: Vec<(usize, usize)> = meet.iter().copied().filter(|other| *other != (line, place)).collect();
            if !others.is_empty() {
                lines[line].joints.push((place, others));
            }
        }
    }
    loop {
        let held: Vec<bool> = lines.iter().map(BeamLine::is_held).collect();
        for line in lines.iter_mut().filter(|line| !line.is_held()) {
            let carried = line.joints.iter().filter(|(_, others)| others.iter().any(|(other, _)| held[*other]));
            line.firm = line.posts.iter().copied().chain(carried.map(|(place, _)| *place)).collect();
        }
        if lines.iter().zip(held).all(|(line, held)| line.is_held() == held) {
            return;
        }
    }
}

fn metres(value: f64) -> Length {
    Length::new::<uom::si::length::meter>(value)
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
    /// What it hands down to other beams where they are joined and no post of its own stands, by distance from the start.
    pub joints: Vec<(Length, Force)>,
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
        let length = metres(self.length);
        Push {
            place: point(self.place),
            along: metres(self.at),
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

#[cfg(test)]
mod tests;
