//! The worst of each case: states by region, sags, pushes on pipes.

use std::{borrow::Borrow, cell::RefCell, collections::BTreeSet};

use rayon::prelude::*;

use super::{
    NumericalError, Softest,
    layout::Net,
    lifting::{Lifting, Part, Seen},
    loads::Still,
    people::{Moving, Placed},
    pipes::PipeForces,
    softness::give,
    worst::Worst,
};
use crate::{
    analysis::line::Region,
    finite_element::{self, Grouping, LiftsOff, Load, Reader, Sharp, Solution, State},
    geometry::Point,
    load_case::LoadCase,
    top::Top,
    units::Length,
};

/// A state that is the worst of its region in some way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FieldPeak {
    /// In which way it is the worst.
    pub worst: finite_element::Worst,
    /// Forces, moments and shears.
    pub state: State,
    /// Where.
    pub at: Point,
    /// Where the person or the hand is that causes it.
    pub load_at: Option<Point>,
}

/// The worst states of a region.
#[derive(Clone, Debug, PartialEq)]
pub struct RegionPeaks {
    /// What lies between the skins.
    pub region: Region,
    /// By moment, skin force and shear.
    pub peaks: Vec<FieldPeak>,
    /// What they may be off by.
    pub error: NumericalError,
}

/// A largest deflection, as a share of the distance over which it counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FieldSag {
    /// Downwards positive.
    pub sag: Length,
    /// Where.
    pub at: Point,
    /// Where the person is that causes it.
    pub load_at: Option<Point>,
    /// Against what does not move: the width of the largest circle about the place with no rigid pipe and no post in it;
    /// for a tip, the distance to the nearest. Against the pipes, what these sag themselves taken off: the distance of the
    /// two nearest; for a tip, to the nearest. For a tip no less than is judged by millimetres.
    pub over: Length,
}

/// Forces of a case.
#[derive(Clone, Debug, PartialEq)]
pub struct PlateForces {
    /// The case, as its place in the list.
    pub case: usize,
    /// By region.
    pub regions: Vec<RegionPeaks>,
    /// Of the field, where a backing ends: by backing.
    pub edges: Vec<RegionPeaks>,
    /// Largest sags between pipes: against what does not move, and against the pipes themselves.
    pub between: Vec<FieldSag>,
    /// Largest sags of what hangs over, both ways too.
    pub tip: Vec<FieldSag>,
    /// Largest bows between pipes by heat alone, against the same; empty where no heat acts.
    pub bow: Vec<FieldSag>,
    /// By pipe.
    pub pipes: Vec<PipeForces>,
    /// Where the top is softest underfoot; none where nobody stands on it.
    pub softest: Option<Softest>,
    /// Largest difference of shear, moment and sag between the last two degrees, in any region.
    pub error: NumericalError,
    /// The loads that move which cause a worst state, by their numbers among all that were tried.
    pub(super) under: BTreeSet<usize>,
}

impl PlateForces {
    /// The largest sag, in metres.
    pub(super) fn largest_sag(&self) -> f64 {
        self.between.iter().chain(&self.tip).map(|sag| sag.sag.value.abs()).fold(0.0, f64::max)
    }
}

impl RegionPeaks {
    /// The states that are the worst by their shear: what sharp places and punching leave of it.
    pub fn shears(&self) -> impl Iterator<Item = &FieldPeak> {
        self.peaks.iter().filter(|peak| peak.worst == finite_element::Worst::Shear)
    }

    /// The largest shear, in SI units.
    pub(super) fn largest_shear(&self) -> f64 {
        self.shears().map(|peak| peak.state.shear_size().value).fold(0.0, f64::max)
    }

    /// The largest moment along either axis, in SI units.
    pub(super) fn largest_moment(&self) -> f64 {
        let moments = self.peaks.iter().map(|peak| peak.state.resultants.moment);
        moments.map(|moment| moment.x.value.abs().max(moment.y.value.abs())).fold(0.0, f64::max)
    }
}

/// Places that are solved for together.
const AT_ONCE: usize = 32;

/// What lies still in a case, as it is seen.
pub(super) struct Lying {
    pub(super) case: usize,
    /// As of [`Still`].
    pub(super) parts: Vec<Seen>,
    pub(super) heat: Option<Seen>,
    from: Vec<Vec<(usize, f64)>>,
}

/// A factored plate with all that looks at it.
pub(super) struct Solved<'a> {
    pub(super) top: &'a Top,
    pub(super) net: &'a Net,
    pub(super) reader: &'a Reader<'a>,
    pub(super) grouping: &'a Grouping,
    /// Where the top may lift off its pipes.
    pub(super) lifting: Option<&'a Lifting>,
}

impl Lying {
    /// What acts together from a direction.
    fn together(&self, from: &[(usize, f64)]) -> Vec<Part<'_>> {
        from.iter().map(|&(part, times)| (&self.parts[part], times, times)).collect()
    }
}

impl<'a> Solved<'a> {
    fn seen<S: Borrow<Solution>>(&self, solutions: &[S]) -> Vec<Seen> {
        self.net.seen(self.reader, self.lifting, solutions)
    }

    /// How what lies still is seen: all of it at once, which is faster.
    pub(super) fn lying(&self, still: &[Still]) -> Vec<Lying> {
        let solutions: Vec<&Solution> = still.iter().flat_map(|still| still.parts.iter().chain(&still.heat)).collect();
        let mut seen = self.seen(&solutions).into_iter();
        let lying = still.iter().map(|still| Lying {
            case: still.case,
            parts: seen.by_ref().take(still.parts.len()).collect(),
            heat: still.heat.as_ref().and_then(|_| seen.next()),
            from: still.from.clone(),
        });
        lying.collect()
    }

    /// The worst of cases on which the same moves; it is tried everywhere, or where it was the worst for something before.
    pub(super) fn forces(
        &'a self,
        case: &LoadCase,
        moving: &Moving,
        lying: &[Lying],
        before: Option<&[PlateForces]>,
    ) -> Result<Vec<PlateForces>, LiftsOff> {
        let placed = &moving.placed;
        let of_cases = moving.cases.iter();
        let group: Vec<(&Lying, f64)> = of_cases
            .filter_map(|(case, times)| Some((lying.iter().find(|lying| lying.case == *case)?, *times)))
            .collect();
        // Round a footing the closed form of punching rules.
        let feet = self.top.gear.iter();
        let feet: Vec<Sharp> =
            feet.map(|gear| Sharp { at: gear.at, radius: gear.footing() * 0.5 + self.net.disc * 3.0 }).collect();
        let mut worst: Vec<Worst<'a>> = group.iter().map(|_| Worst::new(self)).collect();
        if placed.is_empty() {
            for (worst, (lying, _)) in worst.iter_mut().zip(&group) {
                for from in &lying.from {
                    self.take(worst, lying.together(from), None, &feet)?;
                }
            }
        }
        let known_worst = |number: usize| {
            let mut own =
                before.into_iter().flatten().filter(|own| moving.cases.iter().any(|(case, _)| *case == own.case));
            before.is_none() || own.any(|own| own.under.contains(&number))
        };
        let indexed: Vec<(usize, &Placed)> =
            placed.iter().enumerate().filter(|(number, _)| known_worst(*number)).collect();
        let parts: Result<Vec<Vec<Worst<'a>>>, LiftsOff> = indexed
            .par_chunks(AT_ONCE)
            .map(|chunk| {
                let plate = self.reader.plate();
                let loads: Vec<Load> = chunk.iter().map(|(_, placed)| placed.load(plate)).collect();
                let mut worst: Vec<Worst<'a>> = group.iter().map(|_| Worst::new(self)).collect();
                let solutions = plate.solve(&loads);
                let seen = self.seen(&solutions);
                for ((&(number, placed), solution), own) in chunk.iter().zip(&solutions).zip(&seen) {
                    let mut alone = vec![(solution, 1.0)];
                    if let Some(lifting) = self.lifting.filter(|_| case.people.is_some()) {
                        alone.extend(lifting.opened_under(own)?);
                    }
                    let gives = give(self.net, plate, case, placed, &alone);
                    let beside: Vec<Sharp> = feet.iter().chain(&placed.beside).copied().collect();
                    for (worst, &(lying, times)) in worst.iter_mut().zip(&group) {
                        worst.gives(gives, number);
                        for from in &lying.from {
                            let mut parts = lying.together(from);
                            parts.push((own, times, times * placed.at_rest));
                            self.take(worst, parts, Some(number), &beside)?;
                        }
                    }
                }
                Ok(worst)
            })
            .collect();
        // In their order, so that of two places as bad the first is named, however many threads there were.
        for part in parts? {
            for (worst, part) in worst.iter_mut().zip(part) {
                worst.merge(part);
            }
        }
        let of_case = |((lying, _), worst): (&(&Lying, f64), Worst<'a>)| {
            let under = RefCell::new(BTreeSet::new());
            let load_at = |number: Option<usize>| {
                under.borrow_mut().extend(number);
                number.map(|number| placed[number].at)
            };
            let forces = worst.done(lying.case, &load_at);
            PlateForces { under: under.take(), ..forces }
        };
        Ok(group.iter().zip(worst).map(of_case).collect())
    }

    /// Takes in what acts together, and what opens under it.
    fn take<'b>(
        &'b self,
        worst: &mut Worst<'_>,
        mut parts: Vec<Part<'b>>,
        under: Option<usize>,
        beside: &[Sharp],
    ) -> Result<(), LiftsOff> {
        let pulls = match self.lifting {
            Some(lifting) => {
                let pipes = self.top.supports.len();
                Some(lifting.open(&mut parts, pipes)?)
            }
            None => None,
        };
        worst.take(&parts, pulls.as_deref(), under, beside);
        Ok(())
    }
}
