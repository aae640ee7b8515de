//! Loads on a plate.

use nalgebra::DVector;

use super::{element::strain_terms, plate::Plate};
use crate::{
    geometry::Point,
    laminate::Resultants,
    units::{Force, Pressure},
};

/// Loads that act together, as forces on the unknowns of one plate.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    pub(super) values: Vec<f64>,
    pub(super) inner: Vec<f64>,
    /// What holds each triangle flat that heat would strain; nothing where there is no heat.
    pub(super) held: Vec<[f64; 6]>,
}

impl Load {
    /// Nothing yet.
    #[must_use]
    pub fn none(plate: &Plate) -> Self {
        Self {
            values: vec![0.0; plate.assembly.size()],
            inner: vec![0.0; plate.assembly.inner_size()],
            held: Vec::new(),
        }
    }

    /// Adds a pressure that is even over each triangle, downwards positive.
    #[must_use]
    pub fn pressed(mut self, plate: &Plate, pressure: &dyn Fn(usize) -> Pressure) -> Self {
        let assembly = &plate.assembly;
        let (degree, count) = (assembly.numbering().degree, assembly.fields().count());
        let mut load = DVector::zeros(degree.in_triangle() * count);
        for (number, triangle) in assembly.numbering().triangles.iter().enumerate() {
            let all = pressure(number).value * triangle.jacobian();
            for (node, weight) in degree.shape().integrals[0].iter().enumerate() {
                load[node * count + assembly.fields().deflection()] = weight * all;
            }
            assembly.load(number, &load, &mut self.values, &mut self.inner);
        }
        self
    }

    /// Adds a force at a place within a triangle, downwards positive. Only many of them, spread over an area, make a
    /// load whose effects are finite everywhere.
    #[must_use]
    pub fn with_force(mut self, plate: &Plate, triangle: usize, place: Point, force: Force) -> Self {
        let assembly = &plate.assembly;
        let (degree, count) = (assembly.numbering().degree, assembly.fields().count());
        let geometry = &assembly.numbering().triangles[triangle];
        let mut rows = [Vec::new(), Vec::new(), Vec::new()];
        degree.shape().at(geometry.reference([place.x.value, place.y.value]), &mut rows);
        let mut load = DVector::zeros(degree.in_triangle() * count);
        for (node, value) in rows[0].iter().enumerate() {
            load[node * count + assembly.fields().deflection()] = value * force.value;
        }
        assembly.load(triangle, &load, &mut self.values, &mut self.inner);
        self
    }

    /// Adds heat: what holds each triangle flat when it would grow and bow (see
    /// [`Section::thermal_resultants`](crate::section::Section::thermal_resultants)).
    #[must_use]
    pub fn heated(mut self, plate: &Plate, held_flat: &dyn Fn(usize) -> Resultants) -> Self {
        let assembly = &plate.assembly;
        let (degree, count) = (assembly.numbering().degree, assembly.fields().count());
        let first = 5 - count;
        let mut all_held = Vec::with_capacity(assembly.numbering().triangles.len());
        for (number, triangle) in assembly.numbering().triangles.iter().enumerate() {
            let held = held_flat(number);
            let (n, m) = (held.force, held.moment);
            let all = [n.x.value, n.y.value, n.xy.value, m.x.value, m.y.value, m.xy.value];
            let integrals = triangle.integrals(degree);
            let mut load = DVector::zeros(degree.in_triangle() * count);
            for (strain, field, operator, factor) in strain_terms(plate.shells[number].crown) {
                if strain >= 6 || field < first {
                    continue;
                }
                for (node, integral) in integrals[operator].iter().enumerate() {
                    load[node * count + field - first] += factor * integral * all[strain];
                }
            }
            assembly.load(number, &load, &mut self.values, &mut self.inner);
            all_held.push(all);
        }
        add(&mut self.held, &all_held, 1.0);
        self
    }

    /// Adds another load, times a factor.
    #[must_use]
    pub fn plus(mut self, other: &Self, factor: f64) -> Self {
        for (own, value) in self.values.iter_mut().zip(&other.values) {
            *own += factor * value;
        }
        for (own, value) in self.inner.iter_mut().zip(&other.inner) {
            *own += factor * value;
        }
        add(&mut self.held, &other.held, factor);
        self
    }
}

/// Adds what holds triangles flat, times a factor, to what holds them already.
pub(super) fn add(held: &mut Vec<[f64; 6]>, more: &[[f64; 6]], factor: f64) {
    if held.is_empty() {
        held.resize(more.len(), [0.0; 6]);
    }
    for (own, more) in held.iter_mut().flatten().zip(more.iter().flatten()) {
        *own += factor * more;
    }
}
