//! The worst of each case: states by region, sags, pushes on pipes.

use rayon::prelude::*;

use super::{
    NumericalError,
    layout::Net,
    loads::Still,
    people::{self, Placed},
    pipes::{OnBed, PipeForces, PipesWorst},
    softness::{Softest, give},
};
use crate::{
    analysis::line::Region,
    finite_element::{
        Deflected, Envelope, Grouping, Load, Peak, Plate, Sampled, Sampler, Sharp, Solution, State, Worst,
    },
    geometry::Point,
    load_case::LoadCase,
    top::Top,
    units::{Force, Length, Ratio},
};

/// A state that is the worst of its region in some way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FieldPeak {
    /// In which way it is the worst.
    pub worst: Worst,
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

/// A largest deflection.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FieldSag {
    /// Downwards positive.
    pub sag: Length,
    /// Where.
    pub at: Point,
    /// Where the person is that causes it.
    pub load_at: Option<Point>,
    /// Twice the distance to the nearest support that does not move, a rigid pipe or a post; for a tip, once.
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
    /// Largest sag between pipes.
    pub between: Option<FieldSag>,
    /// Largest sag of what hangs over.
    pub tip: Option<FieldSag>,
    /// By pipe.
    pub pipes: Vec<PipeForces>,
    /// Where the top is softest underfoot; none where nobody stands on it.
    pub softest: Option<Softest>,
    /// Largest difference of shear, moment and sag between the last two degrees, in any region.
    pub error: NumericalError,
}

impl PlateForces {
    /// Where loads that move cause a worst state.
    pub(super) fn load_places(&self) -> impl Iterator<Item = Point> {
        let peaks =
            self.regions.iter().chain(&self.edges).flat_map(|region| region.peaks.iter().map(|peak| peak.load_at));
        let sags = self.between.iter().chain(&self.tip).map(|sag| sag.load_at);
        peaks
            .chain(sags)
            .flatten()
            .chain(self.softest.map(|softest| softest.at))
            .chain(self.pipes.iter().flat_map(PipeForces::load_places))
    }

    /// The largest sag, in metres.
    pub(super) fn largest_sag(&self) -> f64 {
        self.between.iter().chain(&self.tip).map(|sag| sag.sag.value.abs()).fold(0.0, f64::max)
    }
}

impl RegionPeaks {
    /// The states that are the worst by their shear: what sharp places and punching leave of it.
    pub fn shears(&self) -> impl Iterator<Item = &FieldPeak> {
        self.peaks.iter().filter(|peak| peak.worst == Worst::Shear)
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
const AT_ONCE: usize = 16;

/// The worst of each case; what moves is tried at every place, or at places that are known to matter.
pub(super) fn envelope(
    solved: &Solved<'_>,
    (cases, numbers): (&[LoadCase], &[usize]),
    still: &[Still],
    only: Option<&[Point]>,
) -> Vec<PlateForces> {
    // Cases with the same people on them share what those do; a hand up does what a hand down does, the other way.
    let mut groups: Vec<(&LoadCase, Vec<(&Still, f64)>)> = Vec::new();
    for still in still {
        let case = &cases[still.case];
        let over = |known: &LoadCase| {
            let hands = known.hand.zip(case.hand).filter(|(known, _)| *known != Force::default());
            match hands {
                Some((known_hand, hand)) => Some((hand / known_hand).value),
                None => (known.hand == case.hand).then_some(1.0),
            }
            .filter(|_| known.people == case.people)
        };
        match groups.iter_mut().find_map(|(known, group)| over(known).map(|times| (times, group))) {
            Some((times, group)) => group.push((still, times)),
            None => groups.push((case, vec![(still, 1.0)])),
        }
    }
    let mut all: Vec<PlateForces> = groups.iter().flat_map(|(case, group)| solved.forces(case, group, only)).collect();
    all.sort_by_key(|forces| numbers.iter().position(|number| *number == forces.case));
    all
}

/// A factored plate with all that looks at it.
pub(super) struct Solved<'a> {
    pub(super) top: &'a Top,
    pub(super) net: &'a Net,
    pub(super) plate: &'a Plate,
    pub(super) sampler: &'a Sampler,
    pub(super) grouping: &'a Grouping,
}

/// What a solution does: states at all samples, and forces on the pipes.
struct Seen {
    sampled: Sampled,
    beds: Vec<OnBed>,
}

impl Solved<'_> {
    fn seen(&self, solution: &Solution) -> Seen {
        let beds = 0..self.net.stretches.len();
        Seen {
            sampled: self.sampler.sample(self.plate, solution),
            beds: beds.map(|bed| (self.plate.pushes(bed, solution), self.plate.beam_forces(bed, solution))).collect(),
        }
    }

    /// Cases on which the same moves, in each of them so many times.
    fn forces(&self, case: &LoadCase, group: &[(&Still, f64)], only: Option<&[Point]>) -> Vec<PlateForces> {
        let mut placed = people::placed(self.top, self.net, self.plate, case);
        if let Some(only) = only {
            placed.retain(|placed| only.contains(&placed.at));
        }
        // Round a footing the closed form of punching rules.
        let feet = self.top.gear.iter();
        let feet: Vec<Sharp> =
            feet.map(|gear| Sharp { at: gear.at, radius: gear.footing() * 0.5 + self.net.disc * 3.0 }).collect();
        let still: Vec<Vec<Seen>> =
            group.iter().map(|(still, _)| still.from.iter().map(|solution| self.seen(solution)).collect()).collect();
        let mut worst: Vec<WorstOf<'_>> = group.iter().map(|_| WorstOf::new(self)).collect();
        if placed.is_empty() {
            for (worst, from) in worst.iter_mut().zip(&still) {
                for seen in from {
                    worst.take(seen, None, &feet);
                }
            }
        }
        let indexed: Vec<(usize, &Placed)> = placed.iter().enumerate().collect();
        let parts: Vec<Vec<WorstOf<'_>>> = indexed
            .par_chunks(AT_ONCE)
            .map(|chunk| {
                let loads: Vec<&Load> = chunk.iter().map(|(_, placed)| &placed.load).collect();
                let mut worst: Vec<WorstOf<'_>> = group.iter().map(|_| WorstOf::new(self)).collect();
                for ((number, placed), solution) in chunk.iter().zip(self.plate.solve(&loads)) {
                    let own = self.seen(&solution);
                    let gives = give(self.net, self.plate, case, placed, &solution);
                    let beside: Vec<Sharp> = feet.iter().chain(&placed.beside).copied().collect();
                    for ((worst, from), (_, times)) in worst.iter_mut().zip(&still).zip(group) {
                        worst.gives(gives, *number);
                        for seen in from {
                            let moved = Moved { number: *number, seen: &own, times: *times, at_rest: placed.at_rest };
                            worst.take(seen, Some(moved), &beside);
                        }
                    }
                }
                worst
            })
            .collect();
        // In their order, so that of two places as bad the first is named, however many threads there were.
        for part in parts {
            for (worst, part) in worst.iter_mut().zip(part) {
                worst.merge(part);
            }
        }
        let load_at = |under: Option<usize>| under.map(|number| placed[number].at);
        group.iter().zip(worst).map(|((still, _), worst)| worst.done(still.case, &load_at)).collect()
    }

    fn sag(&self, deflected: Deflected, tip: bool, load_at: Option<Point>) -> FieldSag {
        let near = self.net.to_support(self.top, deflected.at);
        let over = if tip { near } else { near * 2.0 };
        FieldSag { sag: deflected.deflection, at: deflected.at, load_at, over }
    }
}

fn placed(peaks: &[Peak], load_at: &dyn Fn(Option<usize>) -> Option<Point>) -> Vec<FieldPeak> {
    let placed = |&Peak { worst, state, at, under, .. }: &Peak| FieldPeak { worst, state, at, load_at: load_at(under) };
    peaks.iter().map(placed).collect()
}

/// A load that moves, at one place.
#[derive(Clone, Copy)]
struct Moved<'a> {
    number: usize,
    seen: &'a Seen,
    times: f64,
    /// Share of it that is there when sag is judged.
    at_rest: f64,
}

/// The worst of one case so far.
struct WorstOf<'a> {
    solved: &'a Solved<'a>,
    envelope: Envelope<'a>,
    pipes: PipesWorst<'a>,
    /// How far the top gives way under one person, and which.
    softest: Option<(Length, usize)>,
}

impl<'a> WorstOf<'a> {
    fn new(solved: &'a Solved<'a>) -> Self {
        let envelope = Envelope::new(solved.sampler, solved.grouping);
        Self { solved, envelope, pipes: PipesWorst::new(solved.top), softest: None }
    }

    /// What is still, with one load that moves.
    fn take(&mut self, still: &Seen, moved: Option<Moved<'_>>, beside: &[Sharp]) {
        let under = moved.map(|moved| moved.number);
        match moved {
            Some(Moved { seen, times, at_rest, .. }) => {
                let parts = [(&still.sampled, 1.0, 1.0), (&seen.sampled, times, times * at_rest)];
                self.envelope.take(&parts, under, beside);
            }
            None => self.envelope.take(&[(&still.sampled, 1.0, 1.0)], under, beside),
        }
        let own = moved.map(|moved| (&moved.seen.beds[..], moved.times));
        self.pipes.take(self.solved.net, &still.beds, own, under);
    }

    fn gives(&mut self, sag: Option<Length>, under: usize) {
        if let Some(sag) = sag
            && self.softest.is_none_or(|(known, _)| sag > known)
        {
            self.softest = Some((sag, under));
        }
    }

    fn merge(&mut self, other: Self) {
        other.softest.into_iter().for_each(|(sag, under)| self.gives(Some(sag), under));
        self.envelope.merge(&other.envelope);
        self.pipes.merge(other.pipes);
    }

    fn done(self, case: usize, load_at: &dyn Fn(Option<usize>) -> Option<Point>) -> PlateForces {
        let regions = &self.solved.net.regions;
        let backings = (0..self.solved.top.backings.len()).map(Region::Backing);
        let own = |(peaks, region): (Vec<Peak>, Region)| RegionPeaks {
            region,
            peaks: placed(&peaks, load_at),
            error: NumericalError::default(),
        };
        let mut all = self.envelope.peaks().into_iter().zip(regions.iter().copied().chain(backings)).map(own);
        let regions = all.by_ref().take(regions.len()).filter(|own| !own.peaks.is_empty()).collect();
        let edges = all.filter(|own| !own.peaks.is_empty()).collect();
        let sag = |group: usize| {
            let deflected = self.envelope.deflected().get(group).copied().flatten()?;
            Some(self.solved.sag(deflected, group == 1, load_at(deflected.under)))
        };
        PlateForces {
            case,
            regions,
            edges,
            between: sag(0),
            tip: sag(1),
            pipes: self.pipes.done(load_at),
            softest: self
                .softest
                .and_then(|(sag, under)| Some(Softest { sag, at: load_at(Some(under))?, error: Ratio::default() })),
            error: NumericalError::default(),
        }
    }
}
