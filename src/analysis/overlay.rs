//! Peaks of the forces in a strip: what stays, with what moves laid over it.

use std::ops::{AddAssign, Mul};

use uom::si::ratio::ratio;

use super::{
    forces::{EdgeForces, LARGER, Peak, RegionForces, Sag, SeatForces, StripForces},
    gear_action::GearAction,
    hand::{Moving, Ready},
    still::Field,
};
use crate::{
    closed_form::strip::{Envelope, Extreme},
    load_case::LoadCase,
    units::Length,
};

/// Largest forces over the actions that stay and the places of the load that moves.
pub(super) struct Sum<'r, 'a> {
    ready: &'r Ready<'a>,
    forces: StripForces,
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
        let edge = |&(_, backing)| EdgeForces {
            backing,
            sagging: Peak::default(),
            hogging: Peak::default(),
            shear: Peak::default(),
        };
        let edges = laid.edges.iter().map(edge).collect();
        let forces = StripForces { line, case, regions, edges, seats, sags, under_load: Peak::default() };
        Self { ready, forces }
    }

    pub(super) fn done(self) -> StripForces {
        self.forces
    }

    /// Takes in what stays with what moves over it; `bounds` is memory for their lowest and their highest values.
    pub(super) fn add(&mut self, case: &LoadCase, still: &Field, moving: Option<&Moving<'_>>, bounds: &mut [Field; 2]) {
        let laid = self.ready.laid;
        // What gear does is laid over what stays, though it stays itself: its width differs by effect.
        let gear = if case.with_gear { self.ready.gear.as_slice() } else { &[] };
        if gear.is_empty() && moving.is_none() {
            return self.raise([still, still], None);
        }
        for bound in &mut *bounds {
            bound.set(still);
        }
        for (envelope, on_line) in gear.iter().zip(&laid.line.gear) {
            let gear = &laid.top.gear[on_line.gear];
            let by = GearAction::of(laid.top, gear, case).push_over_weight(gear).get::<ratio>();
            widen(bounds, envelope, by);
        }
        if let Some(moving) = moving {
            widen(bounds, &moving.moved.envelope, moving.sign);
            if moving.alone {
                self.feel(moving);
            }
        }
        let [low, high] = &*bounds;
        self.raise([low, high], moving);
    }

    /// How far one person sinks in under the own feet, up to the last station that the places reach.
    fn feel(&mut self, alone: &Moving<'_>) {
        let (side, stations) = (alone.moved.load.side, &self.ready.laid.stations);
        let near = |station: usize| {
            let (from, to) = (station.saturating_sub(1), (station + 1).min(stations.len() - 1));
            stations[from..=to].iter().any(|&at| self.ready.can_stand(at, side))
        };
        let felt = alone.moved.envelope.deflections().zip(stations).enumerate();
        for (own, &at) in felt.filter(|(station, _)| near(*station)).map(|(_, felt)| felt) {
            let sunk = own.max.max(-own.min);
            if sunk > self.forces.under_load.value {
                let load_at = alone.moved.places.get(own.max_from).copied();
                // Where the station lies off the top, by the place that the person stands on.
                let at = if self.ready.can_stand(at, side) { at } else { load_at.unwrap_or(at) };
                self.forces.under_load = Peak { value: sunk, at, load_at };
            }
        }
    }

    /// Raises the peaks to what lies between bounds.
    fn raise(&mut self, [low, high]: [&Field; 2], moving: Option<&Moving<'_>>) {
        let Self { ready, forces } = self;
        let (laid, at) = (ready.laid, &ready.laid.stations);
        let cause = |end: End, station: usize, result: OfStation| moving?.cause(end, station, result);
        for stretch in &laid.stretches {
            let region = &mut forces.regions[stretch.region];
            let (from, to) = (*stretch.stations.start(), *stretch.stations.end());
            let (mut sagging, mut hogging) = (Climb::from(&region.sagging), Climb::from(&region.hogging));
            let mut shear = Climb::from(&region.shear);
            for (station, (low, high)) in (from..).zip(low.stations[from..=to].iter().zip(&high.stations[from..=to])) {
                sagging.see(high.moment, (End::High, station, OfStation::Moment));
                hogging.see(-low.moment, (End::Low, station, OfStation::Moment));
                // At the ends of the stretch the shear on one side only is its own.
                if station > from {
                    shear.see(high.shears[0], (End::High, station, OfStation::ShearLeft));
                    shear.see(-low.shears[0], (End::Low, station, OfStation::ShearLeft));
                }
                if station < to {
                    shear.see(high.shears[1], (End::High, station, OfStation::ShearRight));
                    shear.see(-low.shears[1], (End::Low, station, OfStation::ShearRight));
                }
            }
            sagging.raise(&mut region.sagging, at, cause);
            hogging.raise(&mut region.hogging, at, cause);
            shear.raise(&mut region.shear, at, cause);
        }
        for (&(station, _), edge) in laid.edges.iter().zip(&mut forces.edges) {
            let (low, high) = (&low.stations[station], &high.stations[station]);
            let (mut sagging, mut hogging) = (Climb::from(&edge.sagging), Climb::from(&edge.hogging));
            let mut shear = Climb::from(&edge.shear);
            sagging.see(high.moment, (End::High, station, OfStation::Moment));
            hogging.see(-low.moment, (End::Low, station, OfStation::Moment));
            // What lies behind the last station is no strip of its own.
            shear.see(high.shears[0], (End::High, station, OfStation::ShearLeft));
            shear.see(-low.shears[0], (End::Low, station, OfStation::ShearLeft));
            if station + 1 < at.len() {
                shear.see(high.shears[1], (End::High, station, OfStation::ShearRight));
                shear.see(-low.shears[1], (End::Low, station, OfStation::ShearRight));
            }
            sagging.raise(&mut edge.sagging, at, cause);
            hogging.raise(&mut edge.hogging, at, cause);
            shear.raise(&mut edge.shear, at, cause);
        }
        for (span, sag) in laid.spans.iter().zip(&mut forces.sags) {
            let mut sink = Climb::from(&sag.peak);
            for station in laid.stations_of(span) {
                sink.see(high.stations[station].sink, (End::High, station, OfStation::Sink));
                sink.see(-low.stations[station].sink, (End::Low, station, OfStation::Sink));
            }
            sink.raise(&mut sag.peak, at, cause);
        }
        for (number, (seat, kept)) in laid.line.seats.iter().zip(&mut forces.seats).enumerate() {
            let at = &[seat.at];
            let cause = |end: End, _: usize, ()| moving?.made(end, moving?.moved.envelope.reactions().nth(number)?);
            let (mut push, mut pull) = (Climb::from(&kept.push), Climb::from(&kept.pull));
            push.see(high.reactions[number], (End::High, 0, ()));
            pull.see(-low.reactions[number], (End::Low, 0, ()));
            push.raise(&mut kept.push, at, cause);
            pull.raise(&mut kept.pull, at, cause);
        }
    }
}

/// An end of a range of values.
#[derive(Clone, Copy, PartialEq, Eq)]
enum End {
    Low,
    High,
}

/// What is looked at, at a station.
#[derive(Clone, Copy)]
enum OfStation {
    Moment,
    ShearLeft,
    ShearRight,
    Sink,
}

/// A peak while it is sought, and where it was found: at which end of a range, at which station, in which result.
struct Climb<Q, R> {
    to_beat: Q,
    found: Option<(Q, (End, usize, R))>,
}

impl<Q: Copy + PartialOrd + Mul<f64, Output = Q>, R> Climb<Q, R> {
    fn from(known: &Peak<Q>) -> Self {
        Self { to_beat: known.value * (1.0 + LARGER), found: None }
    }

    #[inline]
    fn see(&mut self, value: Q, place: (End, usize, R)) {
        if value > self.to_beat {
            (self.to_beat, self.found) = (value * (1.0 + LARGER), Some((value, place)));
        }
    }

    fn raise(self, peak: &mut Peak<Q>, at: &[Length], cause: impl FnOnce(End, usize, R) -> Option<Length>) {
        if let Some((value, (end, station, result))) = self.found {
            *peak = Peak { value, at: at[station], load_at: cause(end, station, result) };
        }
    }
}

impl Moving<'_> {
    /// Where it stands when it makes an end of a result's range at a station, if it has a part in that.
    fn cause(&self, end: End, station: usize, result: OfStation) -> Option<Length> {
        let envelope = &self.moved.envelope;
        match result {
            OfStation::Moment => self.made(end, envelope.moments().nth(station)?),
            OfStation::ShearLeft => self.made(end, envelope.shears_left().nth(station)?),
            OfStation::ShearRight => self.made(end, envelope.shears_right().nth(station)?),
            OfStation::Sink => self.made(end, envelope.deflections().nth(station)?),
        }
    }

    fn made<Q: Default + PartialEq>(&self, end: End, own: Extreme<Q>) -> Option<Length> {
        let lowest = (end == End::Low) != (self.sign < 0.0);
        let (part, from) = if lowest { (own.min, own.min_from) } else { (own.max, own.max_from) };
        if part == Q::default() { None } else { self.moved.places.get(from).copied() }
    }
}

/// Lays over bounds what a load does at its lowest and its highest.
fn widen([low, high]: &mut [Field; 2], envelope: &Envelope, by: f64) {
    fn add<Q: AddAssign + Mul<f64, Output = Q>>(low: &mut Q, high: &mut Q, own: Extreme<Q>, by: f64) {
        let (least, most) = if by < 0.0 { (own.max, own.min) } else { (own.min, own.max) };
        *low += least * by;
        *high += most * by;
    }
    let shears = envelope.shears_left().zip(envelope.shears_right());
    let own = envelope.moments().zip(shears).zip(envelope.deflections());
    for ((low, high), ((moment, (left, right)), sink)) in low.stations.iter_mut().zip(&mut high.stations).zip(own) {
        add(&mut low.moment, &mut high.moment, moment, by);
        add(&mut low.shears[0], &mut high.shears[0], left, by);
        add(&mut low.shears[1], &mut high.shears[1], right, by);
        add(&mut low.sink, &mut high.sink, sink, by);
    }
    for ((low, high), own) in low.reactions.iter_mut().zip(&mut high.reactions).zip(envelope.reactions()) {
        add(low, high, own, by);
    }
}
