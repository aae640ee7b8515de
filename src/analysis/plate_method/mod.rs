//! Internal forces by the plate method: the whole top as a shear-deformable shell on its own outline, on its pipes.

mod buckling;
mod envelope;
mod frequency;
mod layout;
mod loads;
mod masses;
mod people;
mod pipe_forces;
mod pipes;
mod row;
mod shells;
mod softness;

pub use buckling::{EvenPush, Pressed};
pub use envelope::{FieldPeak, FieldSag, PlateForces, RegionPeaks};
pub use pipes::{PipeForces, PipeMoment, PostForces};
pub use softness::Softest;

use rayon::prelude::*;
use uom::si::ratio::ratio;

use self::{
    envelope::Solved,
    layout::Net,
    loads::{Still, StillLoads},
};
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
    /// Even push in its plane at which the top buckles, with the core as soft as it gets; none where nothing pushes it.
    pub even_push: Option<EvenPush>,
    /// What presses a crowned top in its plane, case by case; empty for a flat one.
    pub pressed: Vec<Pressed>,
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
        let all = || alike.iter().flat_map(|(_, numbers)| numbers);
        let pushed = all().any(|&number| buckling::is_pushed(&cases[number]));
        let crowned = top.crown > Length::default();
        let softest = alike.iter().map(|(left, _)| *left).fold(Ratio::from(f64::INFINITY), Ratio::min);
        let solved: Result<Vec<_>, Mechanism> = alike
            .par_iter()
            .map(|(left, numbers)| {
                let solve = |degree, only: Option<&[Point]>| {
                    solve(top, sections, &net, (cases, numbers), (degree, *left), only)
                };
                // The lower degree tries people everywhere; the higher only where that was worst for something.
                let (coarse_plate, coarse_still, coarse) = solve(Degree::Three, None)?;
                let places: Vec<Point> = coarse.iter().flat_map(PlateForces::load_places).collect();
                let (plate, _, fine) = solve(Degree::Four, Some(&places))?;
                let frequency = frequency::first_frequency(top, &net, &plate);
                let pressed: Vec<Pressed> = coarse_still
                    .iter()
                    .filter(|_| crowned)
                    .filter_map(|still| buckling::pressed(&net, &coarse_plate, still))
                    .collect();
                // The softest core counts for all: a search for the mode takes longer than all people of a case.
                let push = (*left == softest && (pushed || crowned)).then(|| {
                    let lower = net.plate(top, sections, Degree::Two, *left)?;
                    Ok(buckling::even_push(&lower, &coarse_plate))
                });
                let frequency = (*left, frequency.map(|swinging| swinging.frequency));
                Ok((plate.unknowns(), fine, coarse, frequency, (push.transpose()?, pressed)))
            })
            .collect();
        let mut found = Vec::with_capacity(cases.len());
        let mut unknowns = 0;
        let mut frequencies = Vec::with_capacity(alike.len());
        let (mut even_push, mut pressed) = (None, Vec::new());
        for (size, mut fine, coarse, frequency, (push, own_pressed)) in solved.map_err(NoPlate::Mechanism)? {
            unknowns = unknowns.max(size);
            frequencies.push(frequency);
            even_push = even_push.or(push);
            pressed.extend(own_pressed);
            for (coarse, fine) in coarse.iter().zip(&mut fine) {
                fine.error = NumericalError::between(coarse, fine);
                fine.pipes.iter_mut().zip(&coarse.pipes).for_each(|(fine, coarse)| fine.settle(coarse));
                if let (Some(fine), Some(coarse)) = (&mut fine.softest, &coarse.softest) {
                    fine.settle(coarse);
                }
            }
            found.extend(fine);
        }
        found.sort_by_key(|forces: &PlateForces| forces.case);
        Ok(Self {
            cases: found,
            frequencies,
            even_push,
            pressed,
            regions: net.regions.clone(),
            triangles: net.mesh.triangles().len(),
            unknowns,
            pipes: net.pipe_models(top),
            disc: net.disc,
        })
    }
}

/// The plate, what lies still on it, and forces by case.
fn solve(
    top: &Top,
    sections: &Sections,
    net: &Net,
    (cases, numbers): (&[LoadCase], &[usize]),
    (degree, core_left): (Degree, Ratio),
    only: Option<&[Point]>,
) -> Result<(Plate, Vec<Still>, Vec<PlateForces>), Mechanism> {
    let plate = net.plate(top, sections, degree, core_left)?;
    let sampler = net.sampler(&plate);
    let grouping = net.grouping(top, sections, &sampler);
    let still = StillLoads::new(top, net, &plate).solve(cases, numbers);
    let solved = Solved { top, net, plate: &plate, sampler: &sampler, grouping: &grouping };
    let forces = envelope::envelope(&solved, (cases, numbers), &still, only);
    Ok((plate, still, forces))
}

impl NumericalError {
    /// Of one case: the differences of the largest values, region by region.
    fn between(coarse: &PlateForces, fine: &mut PlateForces) -> Self {
        let off = |coarse: f64, fine: f64| {
            if fine > 0.0 { Ratio::from((coarse / fine - 1.0).abs()) } else { Ratio::default() }
        };
        let mut all = Self::default();
        for region in &mut fine.regions {
            let Some(other) = coarse.regions.iter().find(|other| other.region == region.region) else { continue };
            region.error = Self {
                shear: off(other.largest_shear(), region.largest_shear()),
                moment: off(other.largest_moment(), region.largest_moment()),
                sag: Ratio::default(),
            };
            all.shear = all.shear.max(region.error.shear);
            all.moment = all.moment.max(region.error.moment);
        }
        all.sag = off(coarse.largest_sag(), fine.largest_sag());
        all
    }
}
