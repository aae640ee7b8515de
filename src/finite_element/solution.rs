//! What a solved plate does at its places.

use nalgebra::DVector;

use super::{
    beam::{BeamForces, BeamLine, Push},
    element::strain_terms,
    load::add,
    plate::{Plate, point},
};
use crate::{
    geometry::Point,
    laminate::{Forces, Moments, Resultants},
    units::{Force, ForcePerWidth, Length, Pressure, si},
};

/// Unknowns of a plate under a load.
#[derive(Clone, Debug, PartialEq)]
pub struct Solution {
    pub(super) values: Vec<f64>,
    pub(super) inner: Vec<f64>,
    pub(super) held: Vec<[f64; 6]>,
}

/// What a plate does at a place.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct State {
    /// Deflection, downwards.
    pub deflection: Length,
    /// Forces and moments per width.
    pub resultants: Resultants,
    /// Transverse shears per width, on faces across x and across y.
    pub shear: [ForcePerWidth; 2],
}

impl State {
    /// Size of the shear, in its own direction.
    #[must_use]
    pub fn shear_size(&self) -> ForcePerWidth {
        self.shear[0].hypot(self.shear[1])
    }
}

impl Solution {
    pub(super) fn new(values: Vec<f64>, inner: Vec<f64>, held: Vec<[f64; 6]>) -> Self {
        Self { values, inner, held }
    }

    /// What holds a triangle flat that heat would strain.
    pub(super) fn held(&self, triangle: usize) -> [f64; 6] {
        self.held.get(triangle).copied().unwrap_or_default()
    }

    /// A sum of solutions of one plate, each times a factor.
    #[must_use]
    pub fn sum(parts: &[(&Self, f64)]) -> Option<Self> {
        let (first, _) = parts.first()?;
        let mut sum =
            Self { values: vec![0.0; first.values.len()], inner: vec![0.0; first.inner.len()], held: Vec::new() };
        for &(part, factor) in parts {
            for (own, value) in sum.values.iter_mut().zip(&part.values) {
                *own += factor * value;
            }
            for (own, value) in sum.inner.iter_mut().zip(&part.inner) {
                *own += factor * value;
            }
            add(&mut sum.held, &part.held, factor);
        }
        Some(sum)
    }
}

impl Plate {
    /// What the plate does at places within a triangle, given by their shares of its second and third corner.
    #[must_use]
    pub fn states(&self, triangle: usize, shares: &[[f64; 2]], solution: &Solution) -> Vec<State> {
        let (fields, degree) = (self.assembly.fields(), self.assembly.numbering().degree);
        let (count, first) = (fields.count(), 5 - fields.count());
        let mut numbers = self.no_numbers();
        self.numbers(triangle, solution, &mut numbers);
        let [dx, dy] = self.assembly.numbering().triangles[triangle].slopes();
        let shell = &self.shells[triangle];
        let mut rows = [Vec::new(), Vec::new(), Vec::new()];
        let held = solution.held(triangle);
        shares
            .iter()
            .map(|&share| {
                degree.shape().at(share, &mut rows);
                // Value, slope along x and slope along y of each field.
                let mut fields_at = [[0.0; 3]; 5];
                for node in 0..degree.in_triangle() {
                    let (value, xi, eta) = (rows[0][node], rows[1][node], rows[2][node]);
                    let operators = [value, xi * dx[0] + eta * dx[1], xi * dy[0] + eta * dy[1]];
                    for field in first..5 {
                        let number = numbers[node * count + field - first];
                        for (sum, operator) in fields_at[field].iter_mut().zip(operators) {
                            *sum += operator * number;
                        }
                    }
                }
                let mut strains = [0.0; 8];
                for (strain, field, operator, factor) in strain_terms(shell.crown) {
                    strains[strain] += factor * fields_at[field][operator];
                }
                let mut all = shell.resultants(&strains);
                for (own, held) in all.iter_mut().zip(held) {
                    *own -= held;
                }
                state(fields_at[2][0], &all)
            })
            .collect()
    }

    /// Deflection at a place within a triangle.
    #[must_use]
    pub fn place(&self, triangle: usize, share: [f64; 2]) -> Point {
        point(self.assembly.numbering().triangles[triangle].place(share))
    }

    /// Shares of a place in a triangle's second and third corner.
    #[must_use]
    pub fn share(&self, triangle: usize, place: Point) -> [f64; 2] {
        self.assembly.numbering().triangles[triangle].reference([place.x.value, place.y.value])
    }

    /// What the plate presses on a bed with, node by node.
    #[must_use]
    pub fn pushes(&self, bed: usize, solution: &Solution) -> Vec<Push> {
        let springs = self.springs.iter().filter(|spring| spring.line == bed);
        springs.map(|spring| spring.push(spring.force(&solution.values))).collect()
    }

    /// What the beam below a bed bears.
    #[must_use]
    pub fn beam_forces(&self, bed: usize, solution: &Solution) -> BeamForces {
        let pushes = |line: usize| {
            let springs = self.springs.iter().filter(|spring| spring.line == line);
            springs.map(|spring| spring.force(&solution.values)).collect()
        };
        BeamLine::forces(&self.beams, bed, &solution.values, &pushes)
    }

    /// Work of a load on a solution, twice the energy where the solution is its own.
    #[must_use]
    pub fn work(&self, load: &super::Load, solution: &Solution) -> crate::units::Torque {
        let sides: f64 = load.values.iter().zip(&solution.values).map(|(a, b)| a * b).sum();
        si(sides + self.inner_work(&load.inner, &solution.inner))
    }

    fn inner_work(&self, a: &[f64], b: &[f64]) -> f64 {
        self.assembly.inner_product(a, b)
    }

    /// Area of a triangle times a pressure: what it bears.
    #[must_use]
    pub fn carried(&self, triangle: usize, pressure: Pressure) -> Force {
        si(0.5 * self.assembly.numbering().triangles[triangle].jacobian() * pressure.value)
    }
}

pub(super) fn state(deflection: f64, all: &[f64; 8]) -> State {
    let v = DVector::from_column_slice(all);
    let mut state = State {
        deflection: Length::default(),
        resultants: Resultants {
            force: Forces::from_vector(v.fixed_rows::<3>(0).into_owned()),
            moment: Moments::from_vector(v.fixed_rows::<3>(3).into_owned()),
        },
        shear: [ForcePerWidth::default(); 2],
    };
    state.deflection.value = deflection;
    (state.shear[0].value, state.shear[1].value) = (all[6], all[7]);
    state
}
