//! Places of a plate where states are looked at, for very many solutions.

use std::{collections::BTreeMap, f64::consts::TAU};

use nalgebra::DMatrix;

use super::{
    plate::Plate,
    shape::{Degree, OPERATORS},
};
use crate::{geometry::Point, units::Length};

/// Corners, middles of the sides and the middle of a triangle, and between that and the corners.
const SHARES: [[f64; 2]; 10] = [
    [0.0, 0.0],
    [1.0, 0.0],
    [0.0, 1.0],
    [0.5, 0.0],
    [0.5, 0.5],
    [0.0, 0.5],
    [1.0 / 3.0, 1.0 / 3.0],
    [0.2, 0.2],
    [0.6, 0.2],
    [0.2, 0.6],
];

/// Points of a disc: share of its radius, and how many on that ring. Each point stands for the same area.
const RINGS: [(f64, usize); 3] = [(0.327, 6), (0.627, 10), (0.886, 12)];

/// A place where first-order theory has a sharp peak of shear, which grows as the mesh gets finer: the end of a line
/// support, the corner of a stiff piece. The mean over a disc takes its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sharp {
    /// Where.
    pub at: Point,
    /// Radius of the disc.
    pub radius: Length,
}

impl Sharp {
    /// Whether a place lies within the disc: asked for every sample under every load, so without a root.
    pub(super) fn holds(&self, place: Point) -> bool {
        let (x, y) = (place.x - self.at.x, place.y - self.at.y);
        x * x + y * y < self.radius * self.radius
    }
}

/// What a sample is good for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Use {
    /// All that is seen at it.
    Whole,
    /// Within two radii of a sharp place: its shear is not looked at by itself, since the mean over the disc is larger.
    WithoutShear,
    /// One of the points of a disc: its shear goes into the mean.
    OnDisc(usize),
}

/// A place where states are looked at.
#[derive(Clone, Copy, Debug)]
pub(super) struct Sample {
    pub(super) triangle: usize,
    pub(super) place: Point,
    pub(super) good_for: Use,
}

/// Places where states are looked at: the same for every plate of the same mesh and degree.
#[derive(Clone, Debug)]
pub struct Sampler {
    pub(super) samples: Vec<Sample>,
    pub(super) discs: usize,
    /// Shape functions at the same places of every triangle.
    pub(super) everywhere: DMatrix<f64>,
    /// By triangle, those at others that lie in it.
    pub(super) others: Vec<Option<DMatrix<f64>>>,
    /// By place of a triangle, in their order: the sample that it is part of, with its share.
    pub(super) parts: Vec<(usize, f64)>,
    /// By corner of the mesh, a sample there.
    at_corners: BTreeMap<usize, usize>,
}

/// Shape functions at some places: a column for each node, in it the values place by place, then the slopes along ξ, then
/// those along η.
fn functions(degree: Degree, shares: &[[f64; 2]]) -> DMatrix<f64> {
    let (nodes, places) = (degree.in_triangle(), shares.len());
    let mut all = DMatrix::zeros(OPERATORS * places, nodes);
    let mut rows = [Vec::new(), Vec::new(), Vec::new()];
    for (place, &share) in shares.iter().enumerate() {
        degree.shape().at(share, &mut rows);
        for (operator, row) in rows.iter().enumerate() {
            for (node, value) in row.iter().enumerate() {
                all[(operator * places + place, node)] = *value;
            }
        }
    }
    all
}

impl Sampler {
    /// Samples of a plate: over every triangle, over the discs of sharp places, and at `others`; `holding` finds the
    /// triangle that a place lies in. Where triangles meet, what they say is averaged, as in O. C. Zienkiewicz and J. Z.
    /// Zhu, *A simple error estimator and adaptive procedure for practical engineering analysis* (1987, from memory);
    /// not so where the plate changes or something bears it, so that forces may jump: between triangles that are
    /// `parted`.
    #[must_use]
    pub fn new(
        plate: &Plate,
        sharp: &[Sharp],
        others: &[Point],
        holding: &dyn Fn(Point) -> Option<usize>,
        parted: &dyn Fn(Side) -> bool,
    ) -> Self {
        let degree = plate.assembly.numbering().degree;
        let wide: Vec<Sharp> = sharp.iter().map(|sharp| Sharp { radius: sharp.radius * 2.0, ..*sharp }).collect();
        let near = |place: Point| wide.iter().any(|sharp| sharp.holds(place));
        let seen = |place: Point| if near(place) { Use::WithoutShear } else { Use::Whole };
        let mut more: Vec<Vec<(Point, Use)>> = vec![Vec::new(); plate.triangles()];
        for (number, sharp) in sharp.iter().enumerate() {
            for (share, count) in RINGS {
                for k in 0..count {
                    #[expect(clippy::cast_precision_loss, reason = "a dozen points")]
                    let turn = TAU * (k as f64 + 0.5) / count as f64;
                    let place = Point {
                        x: sharp.at.x + sharp.radius * share * turn.cos(),
                        y: sharp.at.y + sharp.radius * share * turn.sin(),
                    };
                    if let Some(triangle) = holding(place) {
                        more[triangle].push((place, Use::OnDisc(number)));
                    }
                }
            }
        }
        for &place in others {
            if let Some(triangle) = holding(place) {
                more[triangle].push((place, seen(place)));
            }
        }
        // Every place as each triangle sees it, then those that are one place as one.
        let mut seen_by = Vec::with_capacity(plate.triangles() * SHARES.len());
        let mut starts = Vec::with_capacity(plate.triangles());
        for (triangle, more) in more.iter().enumerate() {
            starts.push(seen_by.len());
            seen_by.extend(SHARES.iter().map(|&share| {
                let place = plate.place(triangle, share);
                Sample { triangle, place, good_for: seen(place) }
            }));
            seen_by.extend(more.iter().map(|&(place, good_for)| Sample { triangle, place, good_for }));
        }
        let alike = alike(plate, &starts, seen_by.len(), parted);
        let mut parts = vec![(0, 0.0); seen_by.len()];
        let mut samples = Vec::with_capacity(alike.len());
        for alike in &alike {
            #[expect(clippy::cast_precision_loss, reason = "a handful")]
            let share = 1.0 / alike.len() as f64;
            for &part in alike {
                parts[part] = (samples.len(), share);
            }
            samples.push(seen_by[alike[0]]);
        }
        let mut at_corners = BTreeMap::new();
        for (triangle, &start) in starts.iter().enumerate() {
            for (k, &corner) in plate.assembly.numbering().nodes_of(triangle)[..3].iter().enumerate() {
                at_corners.entry(corner).or_insert(parts[start + k].0);
            }
        }
        let others = more
            .iter()
            .enumerate()
            .map(|(triangle, more)| {
                let shares: Vec<[f64; 2]> = more.iter().map(|(place, _)| plate.share(triangle, *place)).collect();
                (!shares.is_empty()).then(|| functions(degree, &shares))
            })
            .collect();
        let everywhere = functions(degree, &SHARES);
        Self { samples, discs: sharp.len(), everywhere, others, parts, at_corners }
    }

    /// A sample at a corner of the mesh.
    #[must_use]
    pub fn at_corner(&self, corner: usize) -> Option<usize> {
        self.at_corners.get(&corner).copied()
    }

    /// Places of the samples, with the triangle that each lies in.
    pub fn places(&self) -> impl Iterator<Item = (Point, usize)> {
        self.samples.iter().map(|sample| (sample.place, sample.triangle))
    }
}

/// A side between two triangles.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Side {
    /// Its corners, the lower first.
    pub corners: [usize; 2],
    /// The triangles.
    pub triangles: [usize; 2],
}

/// Samples that are one place, joined over sides that part nothing.
fn alike(plate: &Plate, starts: &[usize], samples: usize, parted: &dyn Fn(Side) -> bool) -> Vec<Vec<usize>> {
    let numbering = plate.assembly.numbering();
    let mut known: BTreeMap<[usize; 2], (usize, usize)> = BTreeMap::new();
    let mut joined: Vec<usize> = (0..samples).collect();
    for (triangle, &start) in starts.iter().enumerate() {
        let nodes = numbering.nodes_of(triangle);
        for side in 0..3 {
            let (from, to) = (nodes[side], nodes[(side + 1) % 3]);
            let corners = [from.min(to), from.max(to)];
            let Some((other, beside)) = known.insert(corners, (triangle, side)) else { continue };
            if parted(Side { corners, triangles: [other, triangle] }) {
                continue;
            }
            // The other triangle runs through the side the other way.
            join(&mut joined, start + side, starts[other] + (beside + 1) % 3);
            join(&mut joined, start + (side + 1) % 3, starts[other] + beside);
            join(&mut joined, start + 3 + side, starts[other] + 3 + beside);
        }
    }
    let mut alike: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for sample in 0..samples {
        alike.entry(first(&joined, sample)).or_default().push(sample);
    }
    alike.into_values().collect()
}

fn join(joined: &mut [usize], a: usize, b: usize) {
    let (a, b) = (first(joined, a), first(joined, b));
    joined[a.max(b)] = a.min(b);
}

fn first(joined: &[usize], mut sample: usize) -> usize {
    while joined[sample] != sample {
        sample = joined[sample];
    }
    sample
}
