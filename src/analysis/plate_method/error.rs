//! What a solution may be off by, from the same mesh at two degrees.

use super::{PipeForces, PlateForces, RegionPeaks, pipe_forces::raise};
use crate::units::{Force, Ratio};

/// What is taken to be left beyond the higher degree where the lower one's values count: as much again as the step to it.
pub(super) const AS_MUCH_AGAIN: f64 = 2.0;

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

/// The same loads at both degrees, on the core of another state.
pub(super) struct Lent {
    /// The lower degree, with what the higher makes of it for its error.
    settled: PlateForces,
    /// As it was.
    lower: PlateForces,
}

impl PlateForces {
    /// Compares with the same at another degree: what was worse there for a post or a fixing stands.
    pub(super) fn settle(&mut self, other: &Self) {
        self.error = NumericalError::between(other, self);
        if let (Some(own), Some(other)) = (&mut self.softest, &other.softest) {
            own.settle(other);
        }
        self.pipes.iter_mut().zip(&other.pipes).for_each(|(own, other)| own.settle(other));
    }

    /// Takes over what the lower degree is off by from the same loads on another core.
    pub(super) fn settle_as(&mut self, Lent { settled, lower }: &Lent) {
        self.error = settled.error.as_much_again();
        let find = |all: &[RegionPeaks], own: &RegionPeaks| {
            all.iter().find(|other| other.region == own.region).map_or(settled.error, |other| other.error)
        };
        for (own, lent) in [(&mut self.regions, &settled.regions), (&mut self.edges, &settled.edges)] {
            for own in own {
                own.error = find(lent, own).as_much_again();
            }
        }
        for ((own, settled), lower) in self.pipes.iter_mut().zip(&settled.pipes).zip(&lower.pipes) {
            own.settle_as(settled, lower);
        }
    }
}

impl Lent {
    pub(super) fn new(lower: PlateForces, higher: &PlateForces) -> Self {
        let mut settled = lower.clone();
        settled.settle(higher);
        Self { settled, lower }
    }

    pub(super) const fn case(&self) -> usize {
        self.lower.case
    }
}

impl PipeForces {
    /// The same, with what the higher degree adds to the forces of posts, joints and fixings.
    fn settle_as(&mut self, settled: &Self, lower: &Self) {
        let again = |error: Ratio| error * AS_MUCH_AGAIN;
        self.along_error = settled.along_error.map(again);
        if let (Some(own), Some(settled)) = (&mut self.clamp, &settled.clamp) {
            own.error = again(settled.error);
        }
        self.bent.error = again(settled.bent.error);
        self.bent_at_weld.error = again(settled.bent_at_weld.error);
        self.fixings_error = again(settled.fixings_error);
        for (own, settled, lower) in
            [(&mut self.posts, &settled.posts, &lower.posts), (&mut self.joints, &settled.joints, &lower.joints)]
        {
            for own in own {
                let at = |all: &[super::PostForces]| all.iter().find(|other| other.at == own.at).copied();
                if let (Some(settled), Some(lower)) = (at(settled), at(lower)) {
                    own.push += settled.push - lower.push;
                    own.pull += settled.pull - lower.pull;
                }
            }
        }
        for (own, (settled, lower)) in self.fixings.iter_mut().zip(settled.fixings.iter().zip(&lower.fixings)) {
            *own += (*settled - *lower).max(Force::default());
        }
    }

    /// Compares with the same at another degree.
    fn settle(&mut self, other: &Self) {
        self.along_error = [off(other.push.value, self.push.value), off(other.pull.value, self.pull.value)];
        if let (Some(own), Some(other)) = (&mut self.clamp, &other.clamp) {
            own.error = off(other.moment.value, own.moment.value);
        }
        self.bent.error = off(other.bent.moment.value, self.bent.moment.value);
        self.bent_at_weld.error = off(other.bent_at_weld.moment.value, self.bent_at_weld.moment.value);
        self.fixings_error = off(other.hardest().value, self.hardest().value);
        raise(&mut self.posts, &other.posts);
        raise(&mut self.joints, &other.joints);
        self.raise_fixings(&other.fixings);
    }
}

impl NumericalError {
    /// Of one case: how far another is off the values that count, region by region.
    fn between(other: &PlateForces, own: &mut PlateForces) -> Self {
        let mut all = Self::default();
        for (own, other) in [(&mut own.regions, &other.regions), (&mut own.edges, &other.edges)] {
            for region in own {
                let Some(other) = other.iter().find(|other| other.region == region.region) else { continue };
                region.error = Self {
                    shear: off(other.largest_shear(), region.largest_shear()),
                    moment: off(other.largest_moment(), region.largest_moment()),
                    ..Self::default()
                };
            }
        }
        // Edges are parts of the field, and their peaks parts of its own.
        for region in &own.regions {
            all.shear = all.shear.max(region.error.shear);
            all.moment = all.moment.max(region.error.moment);
        }
        all.sag = off(other.largest_sag(), own.largest_sag());
        all.bow = off(other.largest_bow(), own.largest_bow());
        all
    }

    fn as_much_again(self) -> Self {
        let again = |error: Ratio| error * AS_MUCH_AGAIN;
        Self { shear: again(self.shear), moment: again(self.moment), sag: again(self.sag), bow: again(self.bow) }
    }
}

/// How far another value is off the one that counts, as a share of that.
fn off(other: f64, counts: f64) -> Ratio {
    if counts > 0.0 { Ratio::from((other / counts - 1.0).abs()) } else { Ratio::default() }
}
