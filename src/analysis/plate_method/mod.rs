//! Internal forces by the plate method: the whole top as a shear-deformable shell on its own outline, on its pipes.

mod bent;
mod envelope;
mod frequency;
mod layout;
mod loads;
mod masses;
mod people;
mod pipes;
mod shells;

pub use envelope::{FieldPeak, FieldSag, PlateForces, RegionPeaks};
pub use pipes::PipeForces;

use rayon::prelude::*;
use uom::si::ratio::ratio;

use self::{envelope::Solved, layout::Net, loads::StillLoads};
use super::{design_value::Knockdowns, line::Region, sections::Sections};
use crate::{
    finite_element::{Degree, Mechanism, NoMode, Plate},
    geometry::Point,
    load_case::{Held, LoadCase, State},
    mesh::MeshError,
    top::Top,
    units::{Frequency, Length, Ratio},
};

/// What the plate method found.
#[derive(Clone, Debug)]
pub struct PlateMethod {
    /// Forces by case, for those cases in which the top stands on its frame.
    pub cases: Vec<PlateForces>,
    /// First natural frequency, by what is left of the core's stiffness.
    pub frequencies: Vec<(Ratio, Result<Frequency, NoMode>)>,
    /// Regions of the top, as the forces count them.
    pub regions: Vec<Region>,
    /// Triangles of the mesh.
    pub triangles: usize,
    /// Unknowns of the finer solution.
    pub unknowns: usize,
    /// How a pipe was taken.
    pub pipes: Vec<PipeModel>,
    /// Radius of the disc over which shear is averaged at the end of a pipe.
    pub disc: Length,
}

/// How a pipe was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PipeModel {
    /// As a beam on its posts.
    OnPosts,
    /// As rigid: wall, alloy or two posts are not given.
    Rigid,
}

/// What the solution may be off by, from the same mesh at two degrees.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct NumericalError {
    /// Of the largest shears.
    pub shear: Ratio,
    /// Of the largest moments.
    pub moment: Ratio,
    /// Of the largest sags.
    pub sag: Ratio,
}

/// Why there is no plate solution.
#[derive(Clone, Debug, PartialEq)]
pub enum NoPlate {
    /// The plan could not be meshed.
    Mesh(MeshError),
    /// Something can move without resistance.
    Mechanism(Mechanism),
}

impl std::fmt::Display for NoPlate {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Mesh(error) => error.fmt(f),
            Self::Mechanism(error) => error.fmt(f),
        }
    }
}

impl PlateMethod {
    /// Solves a top for all cases.
    ///
    /// # Errors
    ///
    /// [`NoPlate`] where the outline cannot be meshed or something is not held.
    pub fn new(
        top: &Top,
        sections: &Sections,
        cases: &[LoadCase],
        knockdowns: &[(State, Knockdowns<'_>)],
    ) -> Result<Self, NoPlate> {
        let net = Net::new(top, sections).map_err(NoPlate::Mesh)?;
        // Cases whose material is alike share a matrix.
        let mut alike: Vec<(Ratio, Vec<usize>)> = Vec::new();
        for (number, case) in cases.iter().enumerate().filter(|(_, case)| case.held == Held::OnFrame) {
            let state = knockdowns.iter().find(|(state, _)| *state == case.state);
            let left = state.map_or_else(|| Ratio::new::<ratio>(1.0), |(_, of_state)| of_state.core_stiffness());
            match alike.iter_mut().find(|(known, _)| *known == left) {
                Some((_, numbers)) => numbers.push(number),
                None => alike.push((left, vec![number])),
            }
        }
        let solved: Result<Vec<_>, Mechanism> = alike
            .par_iter()
            .map(|(left, numbers)| {
                let solve = |degree, only: Option<&[Point]>| {
                    solve(top, sections, &net, (cases, numbers), (degree, *left), only)
                };
                // The lower degree tries people everywhere; the higher only where that was worst for something.
                let (_, coarse) = solve(Degree::Three, None)?;
                let places: Vec<Point> = coarse.iter().flat_map(PlateForces::load_places).collect();
                let (plate, fine) = solve(Degree::Four, Some(&places))?;
                let frequency = frequency::first_frequency(top, &net, &plate);
                Ok((plate.unknowns(), fine, coarse, (*left, frequency.map(|swinging| swinging.frequency))))
            })
            .collect();
        let mut found = Vec::with_capacity(cases.len());
        let mut unknowns = 0;
        let mut frequencies = Vec::with_capacity(alike.len());
        for (size, mut fine, coarse, frequency) in solved.map_err(NoPlate::Mechanism)? {
            unknowns = unknowns.max(size);
            frequencies.push(frequency);
            for (coarse, fine) in coarse.iter().zip(&mut fine) {
                fine.error = NumericalError::between(coarse, fine);
            }
            found.extend(fine);
        }
        found.sort_by_key(|forces: &PlateForces| forces.case);
        Ok(Self {
            cases: found,
            frequencies,
            regions: net.regions.clone(),
            triangles: net.mesh.triangles().len(),
            unknowns,
            pipes: net.pipe_models(top),
            disc: net.disc,
        })
    }
}

/// The plate, and forces by case.
fn solve(
    top: &Top,
    sections: &Sections,
    net: &Net,
    (cases, numbers): (&[LoadCase], &[usize]),
    (degree, core_left): (Degree, Ratio),
    only: Option<&[Point]>,
) -> Result<(Plate, Vec<PlateForces>), Mechanism> {
    let plate = net.plate(top, sections, degree, core_left)?;
    let sampler = net.sampler(&plate);
    let grouping = net.grouping(top, sections, &sampler);
    let still = StillLoads::new(top, net, &plate).solve(cases, numbers);
    let solved = Solved { top, net, plate: &plate, sampler: &sampler, grouping: &grouping };
    let forces = envelope::envelope(&solved, (cases, numbers), &still, only);
    Ok((plate, forces))
}

impl NumericalError {
    /// Of one case: the differences of the largest values, region by region.
    fn between(coarse: &PlateForces, fine: &mut PlateForces) -> Self {
        let off = |coarse: f64, fine: f64| {
            if fine > 0.0 { Ratio::from((coarse / fine - 1.0).abs()) } else { Ratio::default() }
        };
        let mut all = Self::default();
        for (fine, coarse) in [(&mut fine.regions, &coarse.regions), (&mut fine.edges, &coarse.edges)] {
            for region in fine {
                let Some(other) = coarse.iter().find(|other| other.region == region.region) else { continue };
                region.error = Self {
                    shear: off(other.largest_shear(), region.largest_shear()),
                    moment: off(other.largest_moment(), region.largest_moment()),
                    sag: Ratio::default(),
                };
            }
        }
        // Edges are parts of the field, and their peaks parts of its own.
        for region in &fine.regions {
            all.shear = all.shear.max(region.error.shear);
            all.moment = all.moment.max(region.error.moment);
        }
        all.sag = off(coarse.largest_sag(), fine.largest_sag());
        all
    }
}
