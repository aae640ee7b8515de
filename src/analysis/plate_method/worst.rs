//! The worst of one case so far.

use std::collections::BTreeSet;

use super::{
    FieldPeak, NumericalError, PlateForces, RegionPeaks, Softest,
    clamps::Clamps,
    envelope::{FieldSag, Solved},
    lifting::Part,
    pipes::{OnBed, PipesWorst},
};
use crate::{
    analysis::line::Region,
    finite_element::{Deflected, Envelope, Peak, Sampled, Sharp},
    geometry::Point,
    units::{Force, Length, Ratio},
};

pub(super) struct Worst<'a> {
    solved: &'a Solved<'a>,
    envelope: Envelope<'a>,
    pipes: PipesWorst<'a>,
    clamps: Clamps,
    /// How far the top gives way under one person, and which.
    softest: Option<(Length, usize)>,
}

impl<'a> Worst<'a> {
    pub(super) fn new(solved: &'a Solved<'a>) -> Self {
        let envelope = Envelope::new(solved.reader.sampler(), solved.grouping);
        Self { solved, envelope, pipes: PipesWorst::new(solved.top), clamps: Clamps::new(solved), softest: None }
    }

    /// What acts together; `under` names the load that moves, `pulls` those of the fixings where these are known.
    pub(super) fn take(
        &mut self,
        parts: &[Part<'_>],
        pulls: Option<&[Vec<Force>]>,
        under: Option<usize>,
        beside: &[Sharp],
    ) {
        let states: Vec<(&Sampled, f64, f64)> =
            parts.iter().map(|(seen, times, at_rest)| (&seen.sampled, *times, *at_rest)).collect();
        self.envelope.take(&states, under, beside);
        let beds: Vec<(&[OnBed], f64)> = parts.iter().map(|(seen, times, _)| (&seen.beds[..], *times)).collect();
        self.pipes.take(self.solved.net, &beds, pulls, under);
        self.clamps.take(self.solved.reader.sampler(), parts, under);
    }

    pub(super) fn gives(&mut self, sag: Option<Length>, under: usize) {
        if let Some(sag) = sag
            && self.softest.is_none_or(|(known, _)| sag > known)
        {
            self.softest = Some((sag, under));
        }
    }

    pub(super) fn merge(&mut self, other: Self) {
        other.softest.into_iter().for_each(|(sag, under)| self.gives(Some(sag), under));
        self.envelope.merge(&other.envelope);
        self.pipes.merge(other.pipes);
        self.clamps.merge(&other.clamps);
    }

    pub(super) fn done(self, case: usize, load_at: &dyn Fn(Option<usize>) -> Option<Point>) -> PlateForces {
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
        let sags = |group: usize| -> Vec<FieldSag> {
            let deflected = self.envelope.deflected();
            let own = [deflected.get(2 * group), deflected.get(2 * group + 1)];
            let own = own.into_iter().filter_map(|deflected| deflected.copied().flatten());
            own.map(|deflected| sag(deflected, load_at)).collect()
        };
        let mut pipes = self.pipes.done(load_at);
        pipes.iter_mut().zip(self.clamps.done(load_at)).for_each(|(pipe, clamp)| pipe.clamp = clamp);
        PlateForces {
            case,
            regions,
            edges,
            between: sags(0),
            tip: sags(1),
            bow: Vec::new(),
            pipes,
            softest: self
                .softest
                .and_then(|(sag, under)| Some(Softest { sag, at: load_at(Some(under))?, error: Ratio::default() })),
            error: NumericalError::default(),
            under: BTreeSet::new(),
        }
    }
}

fn sag(deflected: Deflected, load_at: &dyn Fn(Option<usize>) -> Option<Point>) -> FieldSag {
    let Deflected { deflection, over, at, under, .. } = deflected;
    FieldSag { sag: deflection, at, load_at: load_at(under), over }
}

fn placed(peaks: &[Peak], load_at: &dyn Fn(Option<usize>) -> Option<Point>) -> Vec<FieldPeak> {
    let placed = |&Peak { worst, state, at, under, .. }: &Peak| FieldPeak { worst, state, at, load_at: load_at(under) };
    peaks.iter().map(placed).collect()
}
