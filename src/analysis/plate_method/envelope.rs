//! The worst of each case: states by region, sags, pushes on pipes.

use super::{layout::Net, loads::Still, people};
use crate::{
    analysis::line::Region,
    finite_element::{Deflected, Envelope, Grouping, Peak, Plate, Sampled, Sampler, Sharp, Solution, State},
    geometry::Point,
    load_case::LoadCase,
    top::Top,
    units::{Force, ForcePerWidth, Length, Torque, per_width},
};

/// A state that is the worst of its region in some way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FieldPeak {
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
    /// Distance between pipes there, or reach of the overhang.
    pub over: Length,
}

/// What a pipe bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PipeForces {
    /// The pipe, as its place in the list.
    pub pipe: usize,
    /// Most push per length, over the depth of the panel.
    pub push: ForcePerWidth,
    /// Where.
    pub push_at: Point,
    /// Where the person is that causes it.
    pub push_under: Option<Point>,
    /// Most pull per length, as a positive number.
    pub pull: ForcePerWidth,
    /// Where.
    pub pull_at: Point,
    /// Most bending moment in the pipe.
    pub moment: Torque,
    /// Most force on a post, pressing positive.
    pub post: Force,
}

/// Forces of a case.
#[derive(Clone, Debug, PartialEq)]
pub struct PlateForces {
    /// The case, as its place in the list.
    pub case: usize,
    /// By region.
    pub regions: Vec<RegionPeaks>,
    /// Largest sag between pipes.
    pub between: Option<FieldSag>,
    /// Largest sag of what hangs over.
    pub tip: Option<FieldSag>,
    /// By pipe.
    pub pipes: Vec<PipeForces>,
}

impl PlateForces {
    /// The largest shear, moment and sag, in SI units: what the numerical error is read from.
    pub(super) fn largest(&self) -> [f64; 3] {
        let peaks = || self.regions.iter().flat_map(|region| &region.peaks);
        let shear = peaks().map(|peak| peak.state.shear_size().value).fold(0.0, f64::max);
        let moment = peaks()
            .map(|peak| {
                let moment = peak.state.resultants.moment;
                moment.x.value.abs().max(moment.y.value.abs())
            })
            .fold(0.0, f64::max);
        let sag = self.between.iter().chain(&self.tip).map(|sag| sag.sag.value.abs()).fold(0.0, f64::max);
        [shear, moment, sag]
    }
}

pub(super) fn envelope(
    top: &Top,
    net: &Net,
    plate: &Plate,
    (sampler, grouping): (&Sampler, &Grouping),
    (cases, numbers): (&[LoadCase], &[usize]),
    still: &[Still],
) -> Vec<PlateForces> {
    // Cases with the same people on them share what those do.
    let mut moving: Vec<(usize, Moved)> = Vec::new();
    for &number in numbers {
        let case = &cases[number];
        let alike = |known: usize| cases[known].people == case.people && cases[known].hand == case.hand;
        if (case.people.is_some() || case.hand.is_some()) && !moving.iter().any(|(known, _)| alike(*known)) {
            moving.push((number, Moved::new(top, net, plate, case)));
        }
    }
    still
        .iter()
        .map(|still| {
            let case = &cases[still.case];
            let alike = |known: usize| cases[known].people == case.people && cases[known].hand == case.hand;
            let moved = moving.iter().find(|(known, _)| alike(*known)).map(|(_, moved)| moved);
            Case { top, net, plate, sampler, grouping }.forces(still, moved)
        })
        .collect()
}

/// What people or a hand do at every place, by themselves.
struct Moved {
    at: Vec<Point>,
    beside: Vec<Vec<Sharp>>,
    at_rest: Vec<f64>,
    solutions: Vec<Solution>,
}

impl Moved {
    fn new(top: &Top, net: &Net, plate: &Plate, case: &LoadCase) -> Self {
        let placed = people::placed(top, net, plate, case);
        let (at, at_rest) = placed.iter().map(|placed| (placed.at, placed.at_rest)).unzip();
        let (loads, beside): (Vec<_>, Vec<_>) = placed.into_iter().map(|placed| (placed.load, placed.beside)).unzip();
        Self { at, beside, at_rest, solutions: plate.solve(&loads) }
    }
}

struct Case<'a> {
    top: &'a Top,
    net: &'a Net,
    plate: &'a Plate,
    sampler: &'a Sampler,
    grouping: &'a Grouping,
}

impl Case<'_> {
    fn forces(&self, still: &Still, moved: Option<&Moved>) -> PlateForces {
        let from: Vec<Sampled> = still.from.iter().map(|solution| self.sampler.sample(self.plate, solution)).collect();
        let mut envelope = Envelope::new(self.sampler, self.grouping);
        let mut pipes = Pipes::new(self);
        // Round a footing the closed form of punching rules.
        let feet: Vec<Sharp> = self
            .top
            .gear
            .iter()
            .map(|gear| Sharp { at: gear.at, radius: gear.footing() * 0.5 + self.net.disc * 3.0 })
            .collect();
        match moved {
            None => {
                for (solution, sampled) in still.from.iter().zip(&from) {
                    envelope.take(&[(sampled, 1.0, 1.0)], None, &feet);
                    pipes.take(&[(solution, 1.0)], None);
                }
            }
            Some(moved) => {
                for (number, solution) in moved.solutions.iter().enumerate() {
                    let own = self.sampler.sample(self.plate, solution);
                    let beside: Vec<Sharp> = feet.iter().chain(&moved.beside[number]).copied().collect();
                    for (base, sampled) in still.from.iter().zip(&from) {
                        let parts = [(sampled, 1.0, 1.0), (&own, 1.0, moved.at_rest[number])];
                        envelope.take(&parts, Some(number), &beside);
                        pipes.take(&[(base, 1.0), (solution, 1.0)], Some(number));
                    }
                }
            }
        }
        let load_at = |under: Option<usize>| under.and_then(|number| moved.map(|moved| moved.at[number]));
        let regions = envelope
            .peaks()
            .into_iter()
            .zip(&self.net.regions)
            .filter(|(peaks, _)| !peaks.is_empty())
            .map(|(peaks, &region)| RegionPeaks { region, peaks: distinct(&peaks, &load_at) })
            .collect();
        let sag = |group: usize| {
            let deflected = envelope.deflected().get(group).copied().flatten()?;
            Some(self.sag(deflected, group == 1, load_at(deflected.under)))
        };
        let (between, tip) = (sag(0), sag(1));
        PlateForces { case: still.case, regions, between, tip, pipes: pipes.done(&load_at) }
    }

    fn sag(&self, deflected: Deflected, tip: bool, load_at: Option<Point>) -> FieldSag {
        let near = self.top.pipes.iter().map(|pipe| pipe.along.distance(deflected.at));
        let near = near.fold(self.top.outline.length, Length::min);
        let over = if tip { near } else { near * 2.0 };
        FieldSag { sag: deflected.deflection, at: deflected.at, load_at, over }
    }
}

/// One state may be the worst in several ways: it is looked at once.
fn distinct(peaks: &[Peak], load_at: &dyn Fn(Option<usize>) -> Option<Point>) -> Vec<FieldPeak> {
    let mut all: Vec<FieldPeak> = Vec::with_capacity(peaks.len());
    for peak in peaks {
        let own = FieldPeak { state: peak.state, at: peak.at, load_at: load_at(peak.under) };
        if !all.contains(&own) {
            all.push(own);
        }
    }
    all
}

/// What the pipes bear at most.
struct Pipes<'a> {
    case: &'a Case<'a>,
    worst: Vec<(PipeForces, Option<usize>)>,
}

impl<'a> Pipes<'a> {
    fn new(case: &'a Case<'a>) -> Self {
        let none = Point { x: Length::default(), y: Length::default() };
        let worst = (0..case.top.pipes.len())
            .map(|pipe| {
                let nothing = PipeForces {
                    pipe,
                    push: ForcePerWidth::default(),
                    push_at: none,
                    push_under: None,
                    pull: ForcePerWidth::default(),
                    pull_at: none,
                    moment: Torque::default(),
                    post: Force::default(),
                };
                (nothing, None)
            })
            .collect();
        Self { case, worst }
    }

    fn take(&mut self, parts: &[(&Solution, f64)], under: Option<usize>) {
        let Some(solution) = (match parts {
            [(one, factor)] if *factor == 1.0 => Some((*one).clone()),
            _ => Solution::sum(parts),
        }) else {
            return;
        };
        for (bed, stretch) in self.case.net.stretches.iter().enumerate() {
            let (worst, pushed_under) = &mut self.worst[stretch.pipe];
            let pushes = self.case.plate.pushes(bed, &solution);
            // The panel spreads a push over its own depth along the pipe.
            let reach = self.case.net.disc;
            for push in &pushes {
                let near = pushes.iter().filter(|other| (other.along - push.along).abs() <= reach);
                let (force, length) = near.fold((Force::default(), Length::default()), |(force, length), other| {
                    (force + other.force, length + other.length)
                });
                let mean: ForcePerWidth = per_width(force / length);
                if mean > worst.push {
                    (worst.push, worst.push_at) = (mean, push.place);
                    *pushed_under = under;
                }
                if -mean > worst.pull {
                    (worst.pull, worst.pull_at) = (-mean, push.place);
                }
            }
            let forces = self.case.plate.beam_forces(bed, &solution);
            for (_, moment) in &forces.moments {
                worst.moment = worst.moment.max(moment.abs());
            }
            for (_, post) in &forces.posts {
                if post.abs() > worst.post.abs() {
                    worst.post = *post;
                }
            }
        }
    }

    fn done(self, load_at: &dyn Fn(Option<usize>) -> Option<Point>) -> Vec<PipeForces> {
        self.worst.into_iter().map(|(forces, under)| PipeForces { push_under: load_at(under), ..forces }).collect()
    }
}
