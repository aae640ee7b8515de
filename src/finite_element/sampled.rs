//! States at all samples, for many solutions at a time: each triangle's fields by one product of matrices.

use std::borrow::Borrow;

use nalgebra::DMatrix;

use super::{
    element::strain_terms,
    plate::Plate,
    sampler::Sampler,
    shape::OPERATORS,
    solution::{Solution, State, state},
};

/// Numbers of a state: deflection, three forces, three moments, two shears.
pub(super) const NUMBERS: usize = 9;

/// States at all samples.
#[derive(Clone, Debug)]
pub struct Sampled(pub(super) Vec<[f64; NUMBERS]>);

/// A sampler laid on a plate, to see the states under any load.
#[derive(Clone, Copy, Debug)]
pub struct Reader<'a> {
    sampler: &'a Sampler,
    plate: &'a Plate,
}

impl Sampler {
    /// The sampler on a plate of its mesh and degree.
    #[must_use]
    pub const fn on<'a>(&'a self, plate: &'a Plate) -> Reader<'a> {
        Reader { sampler: self, plate }
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
        for (triangle, others) in self.sampler.others.iter().enumerate() {
            let of_nodes = self.plate.assembly.fields_of(triangle, solutions);
            let law = law(self.plate, triangle);
            for functions in [Some(&self.sampler.everywhere), others.as_ref()].into_iter().flatten() {
                let places = functions.nrows() / OPERATORS;
                let numbers =
                    by_operator(&(functions * &of_nodes), [law.nrows() / OPERATORS, places, solutions.len()]) * &law;
                let (own, rest) = parts.split_at(places);
                parts = rest;
                for (start, (sampled, solution)) in (0..).step_by(places).zip(all.iter_mut().zip(solutions)) {
                    // What heat alone would strain the plate by has no forces.
                    let held = solution.borrow().held(triangle);
                    for (row, &(sample, share)) in (start..).zip(own) {
                        let sums = &mut sampled.0[sample];
                        sums.iter_mut().zip(numbers.row(row).iter()).for_each(|(sum, number)| *sum += share * number);
                        sums[1..].iter_mut().zip(held).for_each(|(sum, held)| *sum -= share * held);
                    }
                }
            }
        }
        all
    }
}

/// From a column for each field of each solution, with the places operator by operator, to a column for each operator of
/// each field, with the places solution by solution.
fn by_operator(fields: &DMatrix<f64>, [count, places, solutions]: [usize; 3]) -> DMatrix<f64> {
    let mut all = Vec::with_capacity(fields.len());
    for (field, operator) in (0..count).flat_map(|field| (0..OPERATORS).map(move |operator| (field, operator))) {
        for column in fields.as_slice().chunks_exact(fields.nrows()).skip(field).step_by(count) {
            all.extend_from_slice(&column[operator * places..][..places]);
        }
    }
    DMatrix::from_vec(places * solutions, count * OPERATORS, all)
}

pub(super) fn state_of(numbers: &[f64; NUMBERS]) -> State {
    state(numbers[0], &std::array::from_fn(|i| numbers[i + 1]))
}

/// What value and slopes along ξ and η of each field make of the numbers of a state: a column for each number.
fn law(plate: &Plate, triangle: usize) -> DMatrix<f64> {
    let count = plate.assembly.fields().count();
    let first = 5 - count;
    let [dx, dy] = plate.assembly.numbering().triangles[triangle].slopes();
    let shell = &plate.shells[triangle];
    let material = shell.matrix();
    let mut law = DMatrix::zeros(count * OPERATORS, NUMBERS);
    law[((2 - first) * OPERATORS, 0)] = 1.0;
    for (strain, field, operator, factor) in strain_terms(shell.crown) {
        let Some(row) = field.checked_sub(first).map(|field| field * OPERATORS) else { continue };
        for (number, of_number) in material.iter().enumerate() {
            let times = factor * of_number[strain];
            match operator {
                0 => law[(row, number + 1)] += times,
                along => {
                    let slopes = if along == 1 { dx } else { dy };
                    law[(row + 1, number + 1)] += times * slopes[0];
                    law[(row + 2, number + 1)] += times * slopes[1];
                }
            }
        }
    }
    law
}
