//! Internal forces by the plate method: the whole top as a shear-deformable shell on its own outline, on its pipes.

mod envelope;
mod layout;
mod loads;
mod people;
mod shells;

pub use envelope::{FieldPeak, FieldSag, PipeForces, PlateForces, RegionPeaks};

use rayon::prelude::*;
use uom::si::ratio::ratio;

use self::{layout::Net, loads::StillLoads};
use super::{design_value::Knockdowns, line::Region, sections::Sections};
use crate::{
    finite_element::{Degree, Mechanism},
    load_case::{Held, LoadCase, State},
    mesh::MeshError,
    top::Top,
    units::{Length, Ratio},
};

/// What the plate method found.
#[derive(Clone, Debug)]
pub struct PlateMethod {
    /// Forces by case, for those cases in which the top stands on its frame.
    pub cases: Vec<PlateForces>,
    /// Regions of the top, as the forces count them.
    pub regions: Vec<Region>,
    /// Triangles of the mesh.
    pub triangles: usize,
    /// Unknowns of the finer solution.
    pub unknowns: usize,
    /// How a pipe was taken.
    pub pipes: Vec<PipeModel>,
    /// Largest difference of shear, moment and sag between the last two degrees, over the largest of each case.
    pub error: NumericalError,
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
        let jobs: Vec<(Degree, Ratio, &[usize])> = alike
            .iter()
            .flat_map(|(left, numbers)| [Degree::Three, Degree::Four].map(|degree| (degree, *left, numbers.as_slice())))
            .collect();
        let solved: Result<Vec<(usize, Vec<PlateForces>)>, Mechanism> =
            jobs.par_iter().map(|&(degree, left, numbers)| solve(top, sections, &net, (cases, numbers), degree, left)).collect();
        let solved = solved.map_err(NoPlate::Mechanism)?;
        let mut found = Vec::with_capacity(cases.len());
        let mut error = NumericalError::default();
        let mut unknowns = 0;
        for pair in solved.chunks_exact(2) {
            unknowns = unknowns.max(pair[1].0);
            for (coarse, fine) in pair[0].1.iter().zip(&pair[1].1) {
                error.widen(coarse, fine);
            }
            found.extend(pair[1].1.iter().cloned());
        }
        found.sort_by_key(|forces: &PlateForces| forces.case);
        Ok(Self {
            cases: found,
            regions: net.regions.clone(),
            triangles: net.mesh.triangles().len(),
            unknowns,
            pipes: net.pipe_models(top),
            error,
            disc: net.disc,
        })
    }
}

/// Unknowns, and forces by case.
fn solve(
    top: &Top,
    sections: &Sections,
    net: &Net,
    (cases, numbers): (&[LoadCase], &[usize]),
    degree: Degree,
    core_left: Ratio,
) -> Result<(usize, Vec<PlateForces>), Mechanism> {
    let plate = net.plate(top, sections, degree, core_left)?;
    let sampler = net.sampler(&plate);
    let grouping = net.grouping(top, sections, &sampler);
    let loads = StillLoads::new(top, sections, net, &plate);
    let still = loads.solve(cases, numbers);
    let forces = envelope::envelope(top, net, &plate, (&sampler, &grouping), (cases, numbers), &still);
    Ok((plate.unknowns(), forces))
}

impl NumericalError {
    fn widen(&mut self, coarse: &PlateForces, fine: &PlateForces) {
        let [shear, moment, sag] = [coarse, fine].map(PlateForces::largest).into_iter().fold(
            [[0.0; 2]; 3].map(|_: [f64; 2]| Vec::with_capacity(2)),
            |mut lists, largest| {
                for (list, value) in lists.iter_mut().zip(largest) {
                    list.push(value);
                }
                lists
            },
        );
        let off = |pair: &[f64]| if pair[1] > 0.0 { Ratio::from((pair[0] / pair[1] - 1.0).abs()) } else { Ratio::from(0.0) };
        self.shear = self.shear.max(off(&shear));
        self.moment = self.moment.max(off(&moment));
        self.sag = self.sag.max(off(&sag));
    }
}
