//! Places of a plate where states are looked at, for very many solutions: a matrix for each triangle, made once.

use std::f64::consts::TAU;

use nalgebra::{DMatrix, DVector};

use super::{
    element::strain_terms,
    plate::Plate,
    solution::{Solution, State, state},
};
use crate::{geometry::Point, units::Length};

/// Numbers of a state: deflection, three forces, three moments, two shears.
pub(super) const NUMBERS: usize = 9;

/// Corners, middles of the sides and the middle of a triangle.
const SHARES: [[f64; 2]; 7] =
    [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [0.5, 0.0], [0.5, 0.5], [0.0, 0.5], [1.0 / 3.0, 1.0 / 3.0]];

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

/// Places where states are looked at.
#[derive(Clone, Debug)]
pub struct Sampler {
    pub(super) samples: Vec<Sample>,
    pub(super) discs: usize,
    /// By triangle: from the numbers on its sides, and from the loads inside it, to its states.
    parts: Vec<(DMatrix<f64>, DMatrix<f64>)>,
}

/// States at all samples.
#[derive(Clone, Debug)]
pub struct Sampled(pub(super) Vec<[f64; NUMBERS]>);

impl Sampler {
    /// Samples of a plate; `holding` finds the triangle that a place lies in.
    #[must_use]
    pub fn new(plate: &Plate, sharp: &[Sharp], holding: &dyn Fn(Point) -> Option<usize>) -> Self {
        let mut of_triangle: Vec<Vec<([f64; 2], Use)>> = (0..plate.triangles())
            .map(|triangle| {
                let near = |share: [f64; 2]| {
                    let place = plate.place(triangle, share);
                    sharp.iter().any(|sharp| sharp.at.distance(place) < sharp.radius * 2.0)
                };
                SHARES.iter().map(|&share| (share, if near(share) { Use::WithoutShear } else { Use::Whole })).collect()
            })
            .collect();
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
                        of_triangle[triangle].push((plate.share(triangle, place), Use::OnDisc(number)));
                    }
                }
            }
        }
        let mut samples = Vec::new();
        let mut parts = Vec::with_capacity(plate.triangles());
        for (triangle, shares) in of_triangle.iter().enumerate() {
            samples.extend(shares.iter().map(|&(share, good_for)| Sample {
                triangle,
                place: plate.place(triangle, share),
                good_for,
            }));
            parts.push(plate.assembly.split_rows(triangle, &rows(plate, triangle, shares)));
        }
        Self { samples, discs: sharp.len(), parts }
    }

    /// States at all samples.
    #[must_use]
    pub fn sample(&self, plate: &Plate, solution: &Solution) -> Sampled {
        let mut all = Vec::with_capacity(self.samples.len());
        let (mut sides, mut inside) = (DVector::zeros(0), DVector::zeros(0));
        let mut out = DVector::zeros(0);
        for (triangle, (from_sides, from_inside)) in self.parts.iter().enumerate() {
            plate.assembly.numbers_of(triangle, &solution.values, &solution.inner, &mut sides, &mut inside);
            out.resize_vertically_mut(from_sides.nrows(), 0.0);
            out.gemv(1.0, from_sides, &sides, 0.0);
            if inside.iter().any(|load| *load != 0.0) {
                out.gemv(1.0, from_inside, &inside, 1.0);
            }
            all.extend(out.as_slice().chunks_exact(NUMBERS).map(|chunk| std::array::from_fn(|i| chunk[i])));
        }
        // What heat alone would strain the plate by has no forces.
        for (triangle, held) in &solution.free {
            let start = self.samples.partition_point(|sample| sample.triangle < *triangle);
            for (sample, numbers) in self.samples[start..].iter().zip(&mut all[start..]) {
                if sample.triangle != *triangle {
                    break;
                }
                for (own, value) in numbers[1..7].iter_mut().zip(held) {
                    *own -= value;
                }
            }
        }
        Sampled(all)
    }

    /// The state at a sample.
    #[must_use]
    pub fn state(&self, sampled: &Sampled, number: usize) -> State {
        state_of(&sampled.0[number])
    }

    /// Places of the samples, with the triangle that each lies in.
    pub fn places(&self) -> impl Iterator<Item = (Point, usize)> {
        self.samples.iter().map(|sample| (sample.place, sample.triangle))
    }
}

pub(super) fn state_of(numbers: &[f64; NUMBERS]) -> State {
    state(numbers[0], &std::array::from_fn(|i| numbers[i + 1]))
}

/// From the numbers of a triangle to its states.
fn rows(plate: &Plate, triangle: usize, shares: &[([f64; 2], Use)]) -> DMatrix<f64> {
    let (fields, degree) = (plate.assembly.fields, plate.assembly.numbering.degree);
    let (count, first) = (fields.count(), 5 - fields.count());
    let [dx, dy] = plate.assembly.numbering.triangles[triangle].slopes();
    let shell = &plate.shells[triangle];
    let material = shell.matrix();
    let nodes = degree.in_triangle();
    let mut all = DMatrix::zeros(shares.len() * NUMBERS, nodes * count);
    let mut values = [Vec::new(), Vec::new(), Vec::new()];
    for (number, (share, _)) in shares.iter().enumerate() {
        degree.shape().at(*share, &mut values);
        for node in 0..nodes {
            let (value, xi, eta) = (values[0][node], values[1][node], values[2][node]);
            let operators = [value, xi * dx[0] + eta * dx[1], xi * dy[0] + eta * dy[1]];
            all[(number * NUMBERS, node * count + fields.deflection())] = value;
            for (strain, field, operator, factor) in strain_terms(shell.crown) {
                if field < first {
                    continue;
                }
                for (result, row) in material.iter().enumerate() {
                    all[(number * NUMBERS + 1 + result, node * count + field - first)] +=
                        row[strain] * factor * operators[operator];
                }
            }
        }
    }
    all
}
