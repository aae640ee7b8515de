//! Peaks of the forces in a strip: what stays, with what moves laid over it.

use uom::si::ratio::ratio;

use super::{
    forces::{Peak, RegionForces, Sag, SeatForces, StripForces},
    gear_action::GearAction,
    hand::{Moving, Ready},
    laid::Spot,
};
use crate::{
    closed_form::strip::{self, Envelope, Extreme},
    load_case::LoadCase,
    units::{ForcePerWidth, Length, MomentPerWidth},
};

/// Largest forces over the actions that stay and the places of the load that moves.
pub(super) struct Sum<'r, 'a> {
    ready: &'r Ready<'a>,
    forces: StripForces,
}

/// A range of values, and the places of the moving load that make its ends.
struct Range<Q> {
    low: (Q, Option<Length>),
    high: (Q, Option<Length>),
}

impl<'r, 'a> Sum<'r, 'a> {
    pub(super) fn new(ready: &'r Ready<'a>, line: usize, case: usize) -> Self {
        let laid = ready.laid;
        let nothing = |&region| RegionForces {
            region,
            sagging: Peak::default(),
            hogging: Peak::default(),
            shear: Peak::default(),
        };
        let regions = laid.regions.iter().map(nothing).collect();
        let seats = vec![SeatForces::default(); laid.line.seats.len()];
        let sags =
            laid.spans.iter().map(|span| Sag { peak: Peak::default(), over: span.over, tip: span.tip }).collect();
        let forces = StripForces { line, case, regions, seats, sags, under_load: Peak::default() };
        Self { ready, forces }
    }

    pub(super) fn done(self) -> StripForces {
        self.forces
    }

    pub(super) fn add(&mut self, case: &LoadCase, still: &strip::StripForces<'_>, moving: Option<&Moving>) {
        let gear = if case.with_gear { self.ready.gear.as_slice() } else { &[] };
        let (top, line) = (self.ready.laid.top, self.ready.laid.line);
        let parts: Vec<Part<'_>> = gear
            .iter()
            .zip(&line.gear)
            .map(|(envelope, on_line)| {
                let gear = &top.gear[on_line.gear];
                let by = GearAction::of(top, gear, case).push_over_weight(gear).get::<ratio>();
                Part { envelope, places: None, by, alone: false }
            })
            .chain(moving.map(|moving| Part {
                envelope: &moving.envelope,
                places: Some(&moving.places),
                by: moving.sign,
                alone: moving.alone,
            }))
            .collect();
        let mut lists: Vec<_> = parts
            .iter()
            .map(|part| {
                (
                    part,
                    part.envelope.moments(),
                    part.envelope.shears_left(),
                    part.envelope.shears_right(),
                    part.envelope.deflections(),
                )
            })
            .collect();
        for (station, spot) in still.stations().zip(&self.ready.laid.spots) {
            let mut moment = Range::still(station.moment_left);
            let (mut left, mut right) = (Range::still(station.shear_left), Range::still(station.shear_right));
            let mut sink = Range::still(station.deflection);
            for (part, moments, shears_left, shears_right, deflections) in &mut lists {
                moment.widen(part, moments.next());
                left.widen(part, shears_left.next());
                right.widen(part, shears_right.next());
                let own = deflections.next();
                sink.widen(part, own);
                if let (Some(own), true) = (own, part.alone) {
                    self.forces.under_load.raise(own.max.max(-own.min), station.at, part.place(own.max_from));
                }
            }
            self.see(spot, station.at, (&moment, [&left, &right], &sink));
        }
        let mut reactions: Vec<_> = parts.iter().map(|part| (part, part.envelope.reactions())).collect();
        for (seat, (still, kept)) in
            self.ready.laid.line.seats.iter().zip(still.reactions().zip(&mut self.forces.seats))
        {
            let mut force = Range::still(still.force);
            for (part, reactions) in &mut reactions {
                force.widen(part, reactions.next());
            }
            kept.push.raise(force.high.0, seat.at, force.high.1);
            kept.pull.raise(-force.low.0, seat.at, force.low.1);
        }
    }

    fn see(
        &mut self,
        spot: &Spot,
        at: Length,
        (moment, shears, sink): (&Range<MomentPerWidth>, [&Range<ForcePerWidth>; 2], &Range<Length>),
    ) {
        let [left, right] = spot.beside;
        let regions = &mut self.forces.regions;
        regions[left].sagging.raise(moment.high.0, at, moment.high.1);
        regions[left].hogging.raise(-moment.low.0, at, moment.low.1);
        if right != left {
            regions[right].sagging.raise(moment.high.0, at, moment.high.1);
            regions[right].hogging.raise(-moment.low.0, at, moment.low.1);
        }
        for (region, shear) in [left, right].into_iter().zip(shears).take(if spot.goes_on { 2 } else { 1 }) {
            regions[region].shear.raise(shear.high.0, at, shear.high.1);
            regions[region].shear.raise(-shear.low.0, at, shear.low.1);
        }
        if let Some(span) = spot.span {
            let peak = &mut self.forces.sags[span].peak;
            peak.raise(sink.high.0, at, sink.high.1);
            peak.raise(-sink.low.0, at, sink.low.1);
        }
    }
}

/// A load that is laid over what stays.
struct Part<'e> {
    envelope: &'e Envelope,
    /// Where it is tried; none for gear, which stays and is only laid over since its width differs by effect.
    places: Option<&'e Vec<Length>>,
    by: f64,
    alone: bool,
}

impl Part<'_> {
    fn place(&self, index: usize) -> Option<Length> {
        self.places.and_then(|places| places.get(index)).copied()
    }
}

impl<Q: Copy + Default + PartialOrd + std::ops::Add<Output = Q> + std::ops::Mul<f64, Output = Q>> Range<Q> {
    fn still(value: Q) -> Self {
        Self { low: (value, None), high: (value, None) }
    }

    fn widen(&mut self, part: &Part<'_>, own: Option<Extreme<Q>>) {
        let Some(own) = own else { return };
        let (min, max) = (own.min * part.by, own.max * part.by);
        let ((low, low_from), (high, high_from)) = if part.by < 0.0 {
            ((max, own.max_from), (min, own.min_from))
        } else {
            ((min, own.min_from), (max, own.max_from))
        };
        if low < Q::default() {
            self.low = (self.low.0 + low, part.place(low_from).or(self.low.1));
        }
        if high > Q::default() {
            self.high = (self.high.0 + high, part.place(high_from).or(self.high.1));
        }
    }
}
