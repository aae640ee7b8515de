//! The worst of very many states, region by region: what checks then look at closely.

use super::{
    sampled::{NUMBERS, Sampled, state_of},
    sampler::{Sampler, Sharp, Use},
    solution::State,
};
use crate::{
    geometry::Point,
    units::{ForcePerWidth, Length, si},
};

/// How a state can be the worst of its region.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Worst {
    /// Most moment along x, sagging.
    SaggingX,
    /// Most moment along x, hogging.
    HoggingX,
    /// Most moment along y, sagging.
    SaggingY,
    /// Most moment along y, hogging.
    HoggingY,
    /// Most twisting moment, either way.
    Twist,
    /// The outer skin most pressed in any direction.
    OuterPressed,
    /// The outer skin most pulled.
    OuterPulled,
    /// The inner skin most pressed.
    InnerPressed,
    /// The inner skin most pulled.
    InnerPulled,
    /// Most shear in any direction.
    Shear,
}

impl Worst {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::SaggingX,
        Self::HoggingX,
        Self::SaggingY,
        Self::HoggingY,
        Self::Twist,
        Self::OuterPressed,
        Self::OuterPulled,
        Self::InnerPressed,
        Self::InnerPulled,
        Self::Shear,
    ];

    /// What ranks a state, in the order of [`Worst::ALL`]: the larger, the worse.
    fn ranks(numbers: &[f64; NUMBERS], lever: f64) -> [f64; 10] {
        let [_, nx, ny, nxy, mx, my, mxy, ..] = *numbers;
        let face = |sign: f64| {
            principal([0.5 * nx + sign * mx / lever, 0.5 * ny + sign * my / lever], 0.5 * nxy + sign * mxy / lever)
        };
        let (outer, inner) = (face(-1.0), face(1.0));
        [mx, -mx, my, -my, mxy.abs(), -outer[0], outer[1], -inner[0], inner[1], size(numbers)]
    }
}

/// Size of the shear.
fn size(numbers: &[f64; NUMBERS]) -> f64 {
    (numbers[7] * numbers[7] + numbers[8] * numbers[8]).sqrt()
}

/// Least and most of a plane state.
fn principal([x, y]: [f64; 2], xy: f64) -> [f64; 2] {
    let (middle, half) = (0.5 * (x + y), 0.5 * (x - y));
    let radius = (half * half + xy * xy).sqrt();
    [middle - radius, middle + radius]
}

/// A state that is the worst of its region in some way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// In which way.
    pub worst: Worst,
    /// The state.
    pub state: State,
    /// Where.
    pub at: Point,
    /// Which of the loads that move causes it, by the number that was given.
    pub under: Option<usize>,
    rank: f64,
}

/// How a deflection is judged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Judged {
    /// The group whose deflections count together.
    pub group: usize,
    /// Samples against which it is taken, with their shares; shares of none for one against what does not move.
    pub against: [(usize, f64); 2],
    /// The distance over which it counts: the worst is the largest share of it.
    pub over: Length,
}

/// The worst deflection of a group of samples, as a share of the distance over which it counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Deflected {
    /// The deflection, downwards positive.
    pub deflection: Length,
    /// The distance over which it counts.
    pub over: Length,
    /// Where.
    pub at: Point,
    /// Which load causes it.
    pub under: Option<usize>,
    rank: f64,
}

/// Where the samples belong.
#[derive(Clone, Debug)]
pub struct Grouping {
    /// By sample: its region.
    pub regions: Vec<usize>,
    /// By region: the distance of the middles of the skins.
    pub levers: Vec<Length>,
    /// By sample: a further group whose worst states are wanted, counted on behind the regions.
    pub edges: Vec<Option<usize>>,
    /// How many of those there are.
    pub edge_groups: usize,
    /// By sample: how its deflection is judged.
    pub deflections: Vec<Vec<Judged>>,
    /// By disc: its middle.
    pub discs: Vec<Point>,
}

/// What lies of a disc in a region: the region, the sum and the number of its shears, the numbers of the largest.
type OnDisc = (usize, f64, u32, [f64; NUMBERS]);

/// The worst of many states.
#[derive(Clone, Debug)]
pub struct Envelope<'a> {
    sampler: &'a Sampler,
    grouping: &'a Grouping,
    peaks: Vec<[Option<Peak>; 10]>,
    /// What ranks each of them.
    ranks: Vec<[f64; 10]>,
    deflected: Vec<Option<Deflected>>,
}

impl<'a> Envelope<'a> {
    /// Nothing seen yet.
    #[must_use]
    pub fn new(sampler: &'a Sampler, grouping: &'a Grouping) -> Self {
        let groups = grouping.deflections.iter().flatten().map(|judged| judged.group + 1).max().unwrap_or(0);
        Self {
            sampler,
            grouping,
            peaks: vec![[None; 10]; grouping.levers.len() + grouping.edge_groups],
            ranks: vec![[0.0; 10]; grouping.levers.len() + grouping.edge_groups],
            deflected: vec![None; groups],
        }
    }

    /// Looks at a sum of solutions, each times a factor for strength and one for deflection, at every sample; `under`
    /// names the load that moves. Within the discs `beside` loads the shear of a region is not looked at: it is that of
    /// punching, whose peak no plate theory shows. A further group keeps its shear, which acts on the edge there all the same.
    pub fn take(&mut self, parts: &[(&Sampled, f64, f64)], under: Option<usize>, beside: &[Sharp]) {
        let punched = |place: Point| beside.iter().any(|load| load.holds(place));
        let deflection =
            |sample: usize| parts.iter().map(|(sampled, _, factor)| factor * sampled.0[sample][0]).sum::<f64>();
        // What of each disc lies in a region has its own mean: beside a stiff piece the shear jumps.
        let mut discs: Vec<Vec<OnDisc>> = vec![Vec::new(); self.sampler.discs];
        for (number, sample) in self.sampler.samples.iter().enumerate() {
            let mut sum = [0.0; NUMBERS];
            for (sampled, factor, _) in parts {
                for (own, value) in sum.iter_mut().zip(&sampled.0[number]) {
                    *own += factor * value;
                }
            }
            if let Use::OnDisc(disc) = sample.good_for {
                let shear = size(&sum);
                let region = self.grouping.regions[number];
                match discs[disc].iter_mut().find(|(known, ..)| *known == region) {
                    Some((_, total, count, largest)) => {
                        *total += shear;
                        *count += 1;
                        if shear > size(largest) {
                            *largest = sum;
                        }
                    }
                    None => discs[disc].push((region, shear, 1, sum)),
                }
                continue;
            }
            self.deflection(number, &deflection, sample.place, under);
            let region = self.grouping.regions[number];
            let lever = self.grouping.levers[region].value;
            let ranks = Worst::ranks(&sum, lever);
            let edge = self.grouping.edges[number].map(|edge| self.grouping.levers.len() + edge);
            // Most states are the worst in no way.
            if self.is_none_worse(region, &ranks) && edge.is_none_or(|edge| self.is_none_worse(edge, &ranks)) {
                continue;
            }
            let punched = punched(sample.place);
            for (worst, rank) in Worst::ALL.into_iter().zip(ranks) {
                if worst == Worst::Shear && sample.good_for == Use::WithoutShear {
                    continue;
                }
                if worst != Worst::Shear || !punched {
                    self.raise(region, worst, rank, &sum, sample.place, under);
                }
                if let Some(edge) = edge {
                    self.raise(edge, worst, rank, &sum, sample.place, under);
                }
            }
        }
        for (disc, of_regions) in discs.iter().enumerate() {
            let at = self.grouping.discs[disc];
            for &(region, total, count, mut largest) in of_regions {
                if punched(at) {
                    continue;
                }
                // The mean size, in the direction of the largest.
                let (mean, size) = (total / f64::from(count), size(&largest));
                if size > 0.0 {
                    largest[7] *= mean / size;
                    largest[8] *= mean / size;
                    self.raise(region, Worst::Shear, mean, &largest, at, under);
                }
            }
        }
    }

    fn deflection(&mut self, sample: usize, of: &dyn Fn(usize) -> f64, at: Point, under: Option<usize>) {
        for judged in &self.grouping.deflections[sample] {
            let against = judged.against.iter().filter(|(_, share)| *share != 0.0);
            let deflection = of(sample) - against.map(|(sample, share)| share * of(*sample)).sum::<f64>();
            let rank = deflection.abs() / judged.over.value;
            let known = &mut self.deflected[judged.group];
            if rank.is_nan() || known.is_none_or(|known| rank > known.rank) {
                *known = Some(Deflected { deflection: si(deflection), over: judged.over, at, under, rank });
            }
        }
    }

    fn raise(
        &mut self,
        region: usize,
        worst: Worst,
        rank: f64,
        numbers: &[f64; NUMBERS],
        at: Point,
        under: Option<usize>,
    ) {
        let known = &mut self.peaks[region][worst as usize];
        // What is not a number must be seen.
        if rank > 0.0 && known.as_ref().is_none_or(|known| rank > known.rank) || rank.is_nan() {
            *known = Some(Peak { worst, state: state_of(numbers), at, under, rank });
            self.ranks[region][worst as usize] = rank;
        }
    }

    fn is_none_worse(&self, region: usize, ranks: &[f64; 10]) -> bool {
        let known = &self.ranks[region];
        // What is not a number must be seen.
        ranks.iter().zip(known).all(|(rank, known)| rank <= known)
    }

    /// Takes in what another envelope of the same samples has seen after it.
    pub fn merge(&mut self, later: &Self) {
        for (own, other) in self.peaks.iter_mut().flatten().zip(later.peaks.iter().flatten()) {
            if let Some(other) = other
                && own.is_none_or(|own| other.rank > own.rank || other.rank.is_nan())
            {
                *own = Some(*other);
            }
        }
        for (own, other) in self.ranks.iter_mut().flatten().zip(later.ranks.iter().flatten()) {
            *own = own.max(*other);
        }
        for (own, other) in self.deflected.iter_mut().zip(&later.deflected) {
            if let Some(other) = other
                && own.is_none_or(|own| other.rank > own.rank || other.rank.is_nan())
            {
                *own = Some(*other);
            }
        }
    }

    /// The worst states, by region, then by further group.
    #[must_use]
    pub fn peaks(&self) -> Vec<Vec<Peak>> {
        self.peaks.iter().map(|region| region.iter().flatten().copied().collect()).collect()
    }

    /// The largest deflections, by group.
    #[must_use]
    pub fn deflected(&self) -> &[Option<Deflected>] {
        &self.deflected
    }
}

impl Peak {
    /// Size of the shear.
    #[must_use]
    pub fn shear(&self) -> ForcePerWidth {
        self.state.shear_size()
    }
}
