//! States at all samples, for many solutions at a time: each triangle's numbers by one product of matrices.

use std::borrow::Borrow;

use nalgebra::DMatrix;
use rayon::prelude::*;

use super::{
    element::strain_terms,
    plate::Plate,
    sampler::{Functions, Sampler},
    shape::OPERATORS,
    solution::{Solution, State, state},
};

/// Numbers of a state: deflection, three forces, three moments, two shears.
pub(super) const NUMBERS: usize = 9;

/// States at all samples.
#[derive(Clone, Debug)]
pub struct Sampled(pub(super) Vec<[f64; NUMBERS]>);

/// What the numbers of a triangle make of the states at some places: a row for each number of each place, number by number.
#[derive(Clone, Debug)]
struct Reading {
    places: usize,
    /// Of the numbers on its sides, where no load lies inside.
    of_sides: DMatrix<f64>,
    /// Of those inside.
    of_inside: DMatrix<f64>,
}

/// A sampler laid on a plate: what it takes to see the states under any load, worked out once.
#[derive(Clone, Debug)]
pub struct Reader<'a> {
    sampler: &'a Sampler,
    plate: &'a Plate,
    /// By triangle: everywhere, and at what else lies in it.
    readings: Vec<Vec<Reading>>,
}

impl Sampler {
    /// The sampler on a plate of its mesh and degree.
    #[must_use]
    pub fn on<'a>(&'a self, plate: &'a Plate) -> Reader<'a> {
        let of_triangle = |(triangle, others): (usize, &Option<Functions>)| {
            let all = [Some(&self.everywhere), others.as_ref()].into_iter().flatten();
            all.map(|functions| Reading::new(plate, triangle, functions)).collect()
        };
        Reader { sampler: self, plate, readings: self.others.par_iter().enumerate().map(of_triangle).collect() }
    }

    /// The state at a sample.
    #[must_use]
    pub fn state(&self, sampled: &Sampled, number: usize) -> State {
        state_of(&sampled.0[number])
    }
}

impl<'a> Reader<'a> {
    /// The plate.
    #[must_use]
    pub const fn plate(&self) -> &'a Plate {
        self.plate
    }

    /// The sampler.
    #[must_use]
    pub const fn sampler(&self) -> &'a Sampler {
        self.sampler
    }

    /// States at all samples, for each of some solutions.
    #[must_use]
    pub fn sample<S: Borrow<Solution>>(&self, solutions: &[S]) -> Vec<Sampled> {
        let none = || Sampled(vec![[0.0; NUMBERS]; self.sampler.samples.len()]);
        let mut all: Vec<Sampled> = solutions.iter().map(|_| none()).collect();
        let mut parts = &self.sampler.parts[..];
        for (triangle, readings) in self.readings.iter().enumerate() {
            let on_sides = self.plate.assembly.on_sides(triangle, solutions);
            for Reading { places, of_sides, of_inside } in readings {
                let mut seen = of_sides * &on_sides;
                for (mut seen, solution) in seen.column_iter_mut().zip(solutions) {
                    if let Some(moved) = self.plate.assembly.moved_inside(triangle, solution.borrow()) {
                        seen.gemv(1.0, of_inside, &moved, 1.0);
                    }
                }
                let (own, rest) = parts.split_at(*places);
                parts = rest;
                for ((seen, sampled), solution) in seen.column_iter().zip(&mut all).zip(solutions) {
                    // What heat alone would strain the plate by has no forces.
                    let held = solution.borrow().held(triangle);
                    for (place, &(sample, share)) in own.iter().enumerate() {
                        for (number, sum) in sampled.0[sample].iter_mut().enumerate() {
                            *sum += share * seen[number * places + place];
                        }
                        for (sum, held) in sampled.0[sample][1..].iter_mut().zip(held) {
                            *sum -= share * held;
                        }
                    }
                }
            }
        }
        all
    }
}

pub(super) fn state_of(numbers: &[f64; NUMBERS]) -> State {
    state(numbers[0], &std::array::from_fn(|i| numbers[i + 1]))
}

impl Reading {
    fn new(plate: &Plate, triangle: usize, functions: &Functions) -> Self {
        let degree = plate.assembly.numbering().degree;
        let (count, places) = (plate.assembly.fields().count(), functions.places);
        let terms = terms(plate, triangle);
        let of_nodes = |nodes: &[f64], number: usize| {
            let mut all = vec![0.0; NUMBERS * places * number * count];
            let columns = all.chunks_exact_mut(count * NUMBERS * places);
            for (columns, of_node) in columns.zip(nodes.chunks_exact(OPERATORS * places)) {
                let (value, slopes) = of_node.split_at(places);
                let (xi, eta) = slopes.split_at(places);
                for &(number, field, [one, along_xi, along_eta]) in &terms {
                    let start = (field * NUMBERS + number) * places;
                    let own = &mut columns[start..start + places];
                    for (own, ((value, xi), eta)) in own.iter_mut().zip(value.iter().zip(xi).zip(eta)) {
                        *own = one * value + along_xi * xi + along_eta * eta;
                    }
                }
            }
            DMatrix::from_vec(NUMBERS * places, number * count, all)
        };
        let inside = degree.inside();
        let on_sides = degree.in_triangle() - inside;
        let (sides, within) = functions.values.split_at(on_sides * OPERATORS * places);
        let (mut of_sides, of_inside) = (of_nodes(sides, on_sides), of_nodes(within, inside));
        plate.assembly.without_inside(triangle, &of_inside, &mut of_sides);
        Self { places, of_sides, of_inside }
    }
}

/// Of which field's value and slopes along ξ and η each number of a state is made, the plate's first field counted as none.
fn terms(plate: &Plate, triangle: usize) -> Vec<(usize, usize, [f64; OPERATORS])> {
    let first = 5 - plate.assembly.fields().count();
    let all = of_fields(plate, triangle);
    let terms = all.into_iter().enumerate().flat_map(|(number, fields)| {
        let own = fields.into_iter().enumerate().skip(first);
        own.map(move |(field, factors)| (number, field - first, factors))
    });
    terms.filter(|(_, _, factors)| factors.iter().any(|factor| *factor != 0.0)).collect()
}

/// By number of a state, by field: what its value and its slopes along ξ and η make of that number.
fn of_fields(plate: &Plate, triangle: usize) -> [[[f64; OPERATORS]; 5]; NUMBERS] {
    let [dx, dy] = plate.assembly.numbering().triangles[triangle].slopes();
    let shell = &plate.shells[triangle];
    let material = shell.matrix();
    let mut all = [[[0.0; OPERATORS]; 5]; NUMBERS];
    all[0][2][0] = 1.0;
    for (strain, field, operator, factor) in strain_terms(shell.crown) {
        for (own, row) in all[1..].iter_mut().zip(&material) {
            let times = factor * row[strain];
            let own = &mut own[field];
            match operator {
                0 => own[0] += times,
                along => {
                    let slopes = if along == 1 { dx } else { dy };
                    own[1] += times * slopes[0];
                    own[2] += times * slopes[1];
                }
            }
        }
    }
    all
}
