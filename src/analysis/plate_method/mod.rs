//! Internal forces by the plate method: the whole top as a shear-deformable shell on its own outline, on its pipes.

mod all_over;
mod bent;
mod buckling;
mod clamps;
mod conduits;
mod envelope;
mod frequency;
mod gauges;
mod heat;
mod layout;
mod lifting;
mod loads;
mod masses;
mod people;
mod pipe_forces;
mod pipes;
mod row;
mod sags;
mod shells;
mod softness;
mod solver;
mod wind;
mod worst;

pub use all_over::AllOver;
pub use buckling::{EvenPush, Pressed};
pub use clamps::ClampMoment;
pub use envelope::{FieldPeak, FieldSag, PlateForces, RegionPeaks};
pub use pipes::{PipeForces, PipeMoment, PostForces};
pub use softness::Softest;

use rayon::prelude::*;
use uom::si::ratio::ratio;

use self::{
    layout::Net,
    lifting::Lifting,
    people::Moving,
    solver::{OfState, Solver},
    wind::Winds,
};
use super::{design_value::Knockdowns, line::Region, sections::Sections};
use crate::{
    finite_element::{Degree, LiftsOff, Mechanism, NoMode},
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
    /// First natural frequency; none where it was not sought.
    pub frequency: Option<Result<Frequency, NoMode>>,
    /// Even push in its plane at which the top buckles, with the core as soft as it gets; none where nothing pushes it.
    pub even_push: Option<EvenPush>,
    /// What presses a crowned top in its plane, case by case; empty for a flat one.
    pub pressed: Vec<Pressed>,
    /// Regions of the top, as the forces count them.
    pub regions: Vec<Region>,
    /// The triangles.
    pub cut: Cut,
    /// Finer triangles, with the cases that were solved anew on them.
    pub finer: Option<(Cut, Vec<usize>)>,
    /// How a pipe was taken.
    pub pipes: Vec<PipeModel>,
    /// How the top is held down on each pipe.
    pub holds: Vec<HeldDown>,
    /// Radius of the disc over which shear is averaged at the end of a pipe.
    pub disc: Length,
}

/// How finely a top is solved: the triangles' sides over the usual ones, and two degrees, whose difference is the error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fineness {
    /// Sides of triangles, over the usual ones.
    pub sides: Ratio,
    /// The lower degree and the higher, whose values count.
    pub degrees: [Degree; 2],
}

impl Fineness {
    /// What answers are given from.
    #[must_use]
    pub fn usual() -> Self {
        Self { sides: Ratio::from(1.0), degrees: [Degree::Three, Degree::Four] }
    }

    /// Where the usual does not settle: twice as many triangles.
    #[must_use]
    pub fn finer() -> Self {
        Self { sides: Ratio::from(0.7), ..Self::usual() }
    }

    /// A first look, at a fraction of the cost.
    #[must_use]
    pub fn rough() -> Self {
        Self { degrees: [Degree::Two, Degree::Three], ..Self::usual() }
    }
}

/// How a top was cut into triangles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// Sides of the triangles, over the usual ones.
    pub sides: Ratio,
    /// How many there are.
    pub triangles: usize,
    /// Unknowns of the higher degree.
    pub unknowns: usize,
}

impl Cut {
    /// Whether the triangles are finer than the usual ones.
    #[must_use]
    pub fn is_finer(&self) -> bool {
        self.sides < Ratio::from(1.0)
    }
}

/// What is asked of the plate.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// Forces under these cases; under all of them where none are named.
    pub cases: Option<&'a [usize]>,
    /// The first frequency, with the share of the core's stiffness that counts as it swings.
    pub swinging: Option<Ratio>,
    /// How it buckles, where something presses it.
    pub buckling: bool,
}

/// How a pipe was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PipeModel {
    /// As a beam on its posts, and on other pipes that carry it.
    Beam,
    /// As rigid: a wall, a pad, or a pipe of which wall or alloy are not given, or what holds it.
    Rigid,
}

/// How a pipe holds the top down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeldDown {
    /// By its fixings, between which the top may lift off.
    ByFixings,
    /// All along: its fixings are not given, or it is clamped or a pad.
    AllAlong,
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
    /// Of the largest bow by heat.
    pub bow: Ratio,
}

/// Why there is no plate solution.
#[derive(Clone, Debug, PartialEq)]
pub enum NoPlate {
    /// The plan could not be meshed.
    Mesh(MeshError),
    /// Something can move without resistance.
    Mechanism(Mechanism),
    /// Nothing holds it down.
    LiftsOff(LiftsOff),
}

impl From<Mechanism> for NoPlate {
    fn from(mechanism: Mechanism) -> Self {
        Self::Mechanism(mechanism)
    }
}

impl From<LiftsOff> for NoPlate {
    fn from(lifts_off: LiftsOff) -> Self {
        Self::LiftsOff(lifts_off)
    }
}

impl std::fmt::Display for NoPlate {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Mesh(error) => error.fmt(f),
            Self::Mechanism(error) => error.fmt(f),
            Self::LiftsOff(error) => error.fmt(f),
        }
    }
}

impl PlateMethod {
    /// Solves a top.
    ///
    /// # Errors
    ///
    /// [`NoPlate`] where the outline cannot be meshed or something is not held.
    pub fn new(
        top: &Top,
        sections: &Sections,
        (cases, knockdowns): (&[LoadCase], &[(State, Knockdowns<'_>)]),
        Asked { cases: only, swinging, buckling }: Asked<'_>,
        Fineness { sides, degrees: [lower, higher] }: Fineness,
    ) -> Result<Self, NoPlate> {
        let net = Net::new(top, sections, sides).map_err(NoPlate::Mesh)?;
        // Cases whose material is alike share a matrix; that of swinging may be one of no case.
        let mut alike: Vec<(Ratio, Vec<usize>)> = swinging.map(|left| (left, Vec::new())).into_iter().collect();
        let asked = |number: usize| only.is_none_or(|only| only.contains(&number));
        let standing = cases.iter().enumerate().filter(|(_, case)| case.held == Held::OnFrame);
        for (number, case) in standing.filter(|(number, _)| asked(*number)) {
            let state = knockdowns.iter().find(|(state, _)| *state == case.state);
            let left = state.map_or_else(|| Ratio::new::<ratio>(1.0), |(_, of_state)| of_state.core_stiffness());
            match alike.iter_mut().find(|(known, _)| *known == left) {
                Some((_, numbers)) => numbers.push(number),
                None => alike.push((left, vec![number])),
            }
        }
        let pushed = alike.iter().flat_map(|(_, numbers)| numbers).any(|&number| buckling::is_pushed(&cases[number]));
        let crowned = top.crown > Length::default();
        let softest = alike.iter().map(|(left, _)| *left).fold(Ratio::from(f64::INFINITY), Ratio::min);
        let alike: Vec<(Ratio, Vec<Moving>)> =
            alike.into_iter().map(|(left, numbers)| (left, people::moving(top, &net, cases, &numbers))).collect();
        // The state in which most is solved for leads the others: where someone moves about.
        let places = |moving: &[Moving]| moving.iter().map(|moving| moving.placed.len()).sum::<usize>();
        let leading = alike.iter().max_by_key(|(_, moving)| places(moving));
        let leading = leading.map_or_else(|| Ratio::from(1.0), |(left, _)| *left);
        let winds = Winds::new(top, &net, cases);
        // The softest core counts for buckling: a search for a mode takes longer than all people of a case.
        let softest = (buckling && (pushed || crowned)).then_some(softest);
        let solver = |degree, asked_again: &[Ratio]| {
            Solver::new(top, sections, (&net, &alike), degree, (leading, asked_again)).map_err(NoPlate::Mechanism)
        };
        let standing: Vec<&(Ratio, Vec<Moving>)> = alike.iter().filter(|(_, moving)| !moving.is_empty()).collect();
        let looked = |solver: &Solver<'_>, (left, moving): &(Ratio, Vec<Moving>), before: Option<&[PlateForces]>| {
            let plate = solver.state(*left)?;
            let still = solver.still(&plate, (cases, moving), &winds);
            let reader = solver.sampler.on(&plate);
            let lifting = Lifting::new(top, &net, &reader, *left);
            Ok(solver.forces((&reader, lifting.as_ref()), &still, (cases, moving), before)?)
        };
        // The lower degree tries people everywhere while the first matrix of the higher is made, on one core.
        let lower_alone = || -> Result<_, NoPlate> {
            let asked_again: Vec<Ratio> = softest.into_iter().chain(swinging).collect();
            let coarse = solver(lower, &asked_again)?;
            let tried: Result<Vec<OfState>, NoPlate> =
                standing.par_iter().map(|state| looked(&coarse, state, None)).collect();
            Ok((coarse, tried?))
        };
        let (lower_alone, fine) = rayon::join(lower_alone, || solver(higher, &[]));
        let ((coarse, tried), fine) = (lower_alone?, fine?);
        // A mode is as good at a degree less as forces are.
        let modes = || -> Result<_, NoPlate> {
            let (frequency, even_push) = coarse.modes(swinging, softest)?;
            let mut pressed: Vec<Pressed> = tried.iter().flat_map(|(_, pressed)| pressed).copied().collect();
            if let Some(EvenPush { bears: Ok(bears), .. }) = even_push {
                let unclear = |pressed: &&mut Pressed| {
                    let state = knockdowns.iter().find(|(state, _)| *state == cases[pressed.case].state);
                    let left = state.map_or_else(|| Ratio::from(1.0), |(_, of_state)| of_state.whole_top(top));
                    pressed.is_unclear(bears * left.value, top.criteria.buckling_factor.value)
                };
                let unclear = pressed.par_iter_mut().filter(unclear);
                unclear.try_for_each(|pressed| coarse.look_closer(pressed, (cases, &alike), &winds))?;
            }
            Ok((frequency, even_push, pressed))
        };
        // The higher tries people only where the lower had them worst for something.
        let settled = |(state, (coarse, _)): (&&(Ratio, Vec<Moving>), &OfState)| -> Result<OfState, NoPlate> {
            let (mut forces, pressed) = looked(&fine, state, Some(coarse))?;
            coarse.iter().zip(&mut forces).for_each(|(coarse, fine)| fine.settle(coarse));
            Ok((forces, pressed))
        };
        let (modes, solved): (_, Result<Vec<OfState>, NoPlate>) =
            rayon::join(modes, || standing.par_iter().zip(&tried).map(settled).collect());
        let ((frequency, even_push, at_lower), solved) = (modes?, solved?);
        let (mut found, mut pressed) = (Vec::with_capacity(cases.len()), Vec::new());
        for (forces, own_pressed) in solved {
            pressed.extend(own_pressed);
            found.extend(forces);
        }
        found.sort_by_key(|forces: &PlateForces| forces.case);
        for pressed in &mut pressed {
            if let Some(lower) = at_lower.iter().find(|lower| lower.case == pressed.case) {
                pressed.settle(lower);
            }
        }
        Ok(Self {
            cases: found,
            frequency,
            even_push,
            pressed,
            regions: net.regions.clone(),
            cut: Cut { sides, triangles: net.mesh.triangles().len(), unknowns: fine.leading().unknowns() },
            finer: None,
            pipes: net.pipe_models(top),
            holds: net.holds(top),
            disc: net.disc,
        })
    }
}

impl PlateMethod {
    /// The same with the forces of some cases from a solution on finer triangles; modes stay.
    pub(super) fn with_finer(mut self, finer: Self) -> Self {
        let mut anew = self.finer.take().map_or_else(Vec::new, |(_, cases)| cases);
        for forces in finer.cases {
            anew.push(forces.case);
            if let Some(own) = self.cases.iter_mut().find(|own| own.case == forces.case) {
                *own = forces;
            }
        }
        anew.sort_unstable();
        self.finer = Some((finer.cut, anew));
        self
    }

    /// The finest triangles that any case was solved on.
    #[must_use]
    pub fn finest(&self) -> Cut {
        self.finer.as_ref().map_or(self.cut, |(cut, _)| *cut)
    }

    /// Whether the forces of a case are those on finer triangles than the usual ones.
    #[must_use]
    pub fn is_finer(&self, case: usize) -> bool {
        self.cut.is_finer() || self.finer.iter().any(|(_, cases)| cases.contains(&case))
    }
}

impl PlateForces {
    /// Compares with the same at a lower degree, which tried people everywhere: what was worse there for a post or a fixing
    /// stands.
    fn settle(&mut self, coarse: &Self) {
        self.error = NumericalError::between(coarse, self);
        if let (Some(fine), Some(coarse)) = (&mut self.softest, &coarse.softest) {
            fine.settle(coarse);
        }
        self.pipes.iter_mut().zip(&coarse.pipes).for_each(|(fine, coarse)| fine.settle(coarse));
    }
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
                    ..Self::default()
                };
            }
        }
        // Edges are parts of the field, and their peaks parts of its own.
        for region in &fine.regions {
            all.shear = all.shear.max(region.error.shear);
            all.moment = all.moment.max(region.error.moment);
        }
        all.sag = off(coarse.largest_sag(), fine.largest_sag());
        all.bow = off(coarse.largest_bow(), fine.largest_bow());
        all
    }
}
