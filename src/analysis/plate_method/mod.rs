//! Internal forces by the plate method: the whole top as a shear-deformable shell on its own outline, on its pipes.

mod all_over;
mod bent;
mod buckling;
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
mod wind;
mod worst;

pub use all_over::AllOver;
pub use buckling::{EvenPush, Pressed};
pub use envelope::{FieldPeak, FieldSag, PlateForces, RegionPeaks};
pub use pipes::{PipeForces, PipeMoment, PostForces};
pub use softness::Softest;

use std::borrow::Cow;

use rayon::prelude::*;
use uom::si::ratio::ratio;

use self::{
    envelope::Solved,
    layout::{Made, Net},
    lifting::Lifting,
    loads::{Still, StillLoads},
    wind::Winds,
};
use super::{design_value::Knockdowns, line::Region, sections::Sections};
use crate::{
    finite_element::{Degree, Grouping, LiftsOff, Mechanism, NoMode, Plate, Sampler},
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
    /// First natural frequency; none where it was not sought.
    pub frequency: Option<Result<Frequency, NoMode>>,
    /// Even push in its plane at which the top buckles, with the core as soft as it gets; none where nothing pushes it.
    pub even_push: Option<EvenPush>,
    /// What presses a crowned top in its plane, case by case; empty for a flat one.
    pub pressed: Vec<Pressed>,
    /// Regions of the top, as the forces count them.
    pub regions: Vec<Region>,
    /// Triangles of the mesh.
    pub triangles: usize,
    /// Their sides, over the usual ones.
    pub sides: Ratio,
    /// Unknowns of the finer solution.
    pub unknowns: usize,
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

    /// A first look, at a fraction of the cost.
    #[must_use]
    pub fn rough() -> Self {
        Self { degrees: [Degree::Two, Degree::Three], ..Self::usual() }
    }
}

/// How a pipe was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PipeModel {
    /// As a beam on its posts.
    OnPosts,
    /// As rigid: a wall, a pad, or a pipe of which wall, alloy or two posts are not given.
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
    /// Solves a top for all cases. Swinging, the core has a share of its stiffness of its own; without one, no frequency is
    /// sought.
    ///
    /// # Errors
    ///
    /// [`NoPlate`] where the outline cannot be meshed or something is not held.
    pub fn new(
        top: &Top,
        sections: &Sections,
        (cases, knockdowns): (&[LoadCase], &[(State, Knockdowns<'_>)]),
        swinging: Option<Ratio>,
        Fineness { sides, degrees: [lower, higher] }: Fineness,
    ) -> Result<Self, NoPlate> {
        let net = Net::new(top, sections, sides).map_err(NoPlate::Mesh)?;
        // Cases whose material is alike share a matrix; that of swinging may be one of no case.
        let mut alike: Vec<(Ratio, Vec<usize>)> = swinging.map(|left| (left, Vec::new())).into_iter().collect();
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
        // The state in which most is solved for leads the others: where someone moves about.
        let moves = |numbers: &[usize]| numbers.iter().any(|&number| cases[number].moves());
        let leading = alike.iter().find(|(_, numbers)| moves(numbers)).or(alike.first());
        let leading = leading.map_or_else(|| Ratio::from(1.0), |(left, _)| *left);
        let lifts = net.holds(top).contains(&HeldDown::ByFixings);
        let winds = Winds::new(top, &net, cases);
        let first = |degree| Solver::new(top, sections, &net, (degree, leading));
        let (coarse, fine) = rayon::join(|| first(lower), || first(higher));
        let (coarse, fine) = (coarse.map_err(NoPlate::Mechanism)?, fine.map_err(NoPlate::Mechanism)?);
        // The softest core counts for all: a search for a mode takes longer than all people of a case.
        let buckled = || -> Result<Option<EvenPush>, Mechanism> {
            if !pushed && !crowned {
                return Ok(None);
            }
            // For a first look a bound from above is enough.
            if lower == Degree::Two {
                return Ok(Some(buckling::most_even_push(&*coarse.state(softest, true)?)));
            }
            // A mode is as good at a degree less as forces are.
            let below = net.plate(top, sections, (Degree::Two, softest), Made::Anew)?;
            let higher = coarse.state(softest, true)?;
            Ok(Some(buckling::even_push(&below, &higher)))
        };
        let modes = || {
            let frequency = || -> Result<Option<Result<Frequency, NoMode>>, Mechanism> {
                let Some(left) = swinging else { return Ok(None) };
                let plate = coarse.state(left, true)?;
                Ok(Some(frequency::first_frequency(top, &net, &plate).map(|swinging| swinging.frequency)))
            };
            rayon::join(frequency, buckled)
        };
        let solve = || -> Result<Vec<OfState>, NoPlate> {
            alike
                .par_iter()
                .filter(|(_, numbers)| !numbers.is_empty())
                .map(|(left, numbers)| {
                    // The lower degree tries people everywhere; the higher only where that was worst for something.
                    let many = lifts || moves(numbers);
                    let lower = coarse.state(*left, many)?;
                    let still = coarse.still(&lower, (cases, numbers), &winds);
                    let pressed = |plate: &Plate, still: &[Still]| -> Vec<Pressed> {
                        let on_crown = still.iter().filter(|_| crowned);
                        on_crown.filter_map(|still| buckling::pressed(&net, plate, still)).collect()
                    };
                    let pressed_lower = pressed(&lower, &still);
                    let lifting = Lifting::new(top, &net, (&lower, &coarse.sampler), *left);
                    let coarse = coarse.forces((&lower, lifting.as_ref()), &still, (cases, numbers), None)?;
                    let places: Vec<Point> = coarse.iter().flat_map(PlateForces::load_places).collect();
                    let higher = fine.state(*left, many)?;
                    let still = fine.still(&higher, (cases, numbers), &winds);
                    let mut pressed = pressed(&higher, &still);
                    for pressed in &mut pressed {
                        if let Some(lower) = pressed_lower.iter().find(|lower| lower.case == pressed.case) {
                            pressed.settle(lower);
                        }
                    }
                    let lifting = Lifting::new(top, &net, (&higher, &fine.sampler), *left);
                    let mut fine = fine.forces((&higher, lifting.as_ref()), &still, (cases, numbers), Some(&places))?;
                    coarse.iter().zip(&mut fine).for_each(|(coarse, fine)| fine.settle(coarse));
                    Ok((fine, pressed))
                })
                .collect()
        };
        let ((frequency, even_push), solved) = rayon::join(modes, solve);
        let (frequency, even_push) = (frequency?, even_push?);
        let mut found = Vec::with_capacity(cases.len());
        let mut pressed = Vec::new();
        for (forces, own_pressed) in solved? {
            pressed.extend(own_pressed);
            found.extend(forces);
        }
        found.sort_by_key(|forces: &PlateForces| forces.case);
        Ok(Self {
            cases: found,
            frequency,
            even_push,
            pressed,
            regions: net.regions.clone(),
            triangles: net.mesh.triangles().len(),
            sides,
            unknowns: fine.plate.unknowns(),
            pipes: net.pipe_models(top),
            holds: net.holds(top),
            disc: net.disc,
        })
    }
}

/// Forces of the cases of a state, and what presses a crown in them.
type OfState = (Vec<PlateForces>, Vec<Pressed>);

/// A top at one degree, in the state that leads the others: what all its states share, and what looks at it.
struct Solver<'a> {
    top: &'a Top,
    sections: &'a Sections,
    net: &'a Net,
    degree: Degree,
    leading: Ratio,
    plate: Plate,
    sampler: Sampler,
    grouping: Grouping,
}

impl<'a> Solver<'a> {
    fn new(
        top: &'a Top,
        sections: &'a Sections,
        net: &'a Net,
        (degree, leading): (Degree, Ratio),
    ) -> Result<Self, Mechanism> {
        let plate = net.plate(top, sections, (degree, leading), Made::Anew)?;
        let sampler = net.sampler(top, &plate);
        let grouping = net.grouping(top, sections, &sampler);
        Ok(Self { top, sections, net, degree, leading, plate, sampler, grouping })
    }

    /// The plate with a share of the core's stiffness left, for many loads or for a few.
    fn state(&self, left: Ratio, many: bool) -> Result<Cow<'_, Plate>, Mechanism> {
        if left == self.leading {
            return Ok(Cow::Borrowed(&self.plate));
        }
        let made = if many { Made::LikeAnother(&self.plate) } else { Made::Beside(&self.plate) };
        self.net.plate(self.top, self.sections, (self.degree, left), made).map(Cow::Owned)
    }

    fn still(&self, plate: &Plate, cases: (&[LoadCase], &[usize]), winds: &Winds) -> Vec<Still> {
        StillLoads::new(self.top, self.net, plate).solve(self.sections, cases, winds)
    }

    /// Forces by case; what moves is tried everywhere, or at some places only.
    fn forces(
        &self,
        (plate, lifting): (&Plate, Option<&Lifting>),
        still: &[Still],
        (cases, numbers): (&[LoadCase], &[usize]),
        only: Option<&[Point]>,
    ) -> Result<Vec<PlateForces>, LiftsOff> {
        let (sampler, grouping) = (&self.sampler, &self.grouping);
        let solved = Solved { top: self.top, net: self.net, plate, sampler, grouping, lifting };
        let mut all = envelope::envelope(&solved, (cases, numbers), still, only)?;
        for still in still {
            if let Some(own) = all.iter_mut().find(|own| own.case == still.case) {
                own.bow = heat::bows(&solved, still)?;
            }
        }
        Ok(all)
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
