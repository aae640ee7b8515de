//! The hand method: every case on every strip.

use uom::si::ratio::ratio;

use super::{
    design_value::Knockdowns,
    forces::StripForces,
    laid::{Laid, handed},
    line::{GearOnLine, Line, Role},
    moving::{PatchLoad, patches},
    overlay::Sum,
    sections::Sections,
};
use crate::{
    closed_form::{
        effective_width::Spread,
        strip::{Action, Envelope, Strip, StripError},
    },
    load::weight::gravity,
    load_case::{Held, LoadCase, State},
    top::Top,
    units::{Force, Length, Ratio},
};

/// Parts that each bay and each overhang is divided into: places where people are tried and forces are listed.
pub const DIVISIONS: usize = 8;

/// A strip in one state of the material.
pub(super) struct Ready<'a> {
    pub(super) laid: &'a Laid<'a>,
    pub(super) spread: Spread,
    pub(super) strip: Strip,
    /// What the overhang that it carries adds to its load.
    pub(super) handed: Ratio,
    /// Each gear at one gravity.
    pub(super) gear: Vec<Envelope>,
}

/// Forces of every case that acts on a line.
///
/// # Errors
///
/// [`StripError`] where the line and its seats make no strip.
pub fn strip_forces(
    top: &Top,
    sections: &Sections,
    line: (usize, &Line),
    cases: &[LoadCase],
    knockdowns: &[(State, Knockdowns<'_>)],
    divisions: usize,
) -> Result<Vec<StripForces>, StripError> {
    let (index, line) = line;
    let held = if line.role == Role::Carried { Held::AtItsEnds } else { Held::OnFrame };
    let laid = Laid::new(top, sections, line, divisions)?;
    let mut ready: Vec<(State, Ready<'_>)> = Vec::with_capacity(knockdowns.len());
    let mut forces = Vec::with_capacity(cases.len());
    for (number, case) in cases.iter().enumerate().filter(|(_, case)| case.held == held) {
        let at = match ready.iter().position(|(state, _)| *state == case.state) {
            Some(at) => at,
            None => {
                let left = knockdowns
                    .iter()
                    .find(|(state, _)| *state == case.state)
                    .map_or_else(|| Ratio::new::<ratio>(1.0), |(_, knockdowns)| knockdowns.core_stiffness());
                ready.push((case.state, Ready::new(&laid, left)?));
                ready.len() - 1
            }
        };
        forces.push(ready[at].1.under(index, number, case)?);
    }
    Ok(forces)
}

impl<'a> Ready<'a> {
    fn new(laid: &'a Laid<'a>, core_left: Ratio) -> Result<Self, StripError> {
        let (top, line) = (laid.top, laid.line);
        let strip = laid.in_state(core_left)?;
        let spread = Spread::new(&laid.sections.field.plate_stiffness(line.axis, core_left));
        let handed = handed(line, &spread);
        let mut ready = Self { laid, spread, strip, handed, gear: Vec::with_capacity(line.gear.len()) };
        for on_line in &line.gear {
            let gear = &top.gear[on_line.gear];
            let load = PatchLoad::resting(gear.mass * gravity() * handed_gear(line, on_line), gear.footing());
            let patches = patches(line, &ready.strip, &ready.spread, std::iter::once(on_line.at), load);
            ready.gear.push(ready.strip.envelope(gear.footing(), &patches)?);
        }
        Ok(ready)
    }

    fn under(&self, line: usize, number: usize, case: &LoadCase) -> Result<StripForces, StripError> {
        let moving = self.moving(case)?;
        let mut sum = Sum::new(self, line, number);
        let mut actions = self.actions(case);
        let (overturning, stay) = (self.gear_moments(case), actions.len());
        // Wind and roll come from either side.
        let sides: &[f64] = if overturning.is_empty() { &[1.0] } else { &[1.0, -1.0] };
        for &side in sides {
            actions.truncate(stay);
            actions.extend(overturning.iter().map(|&(at, moment)| Action::Moment { at, moment: moment * side }));
            let still = self.strip.solve(&actions)?;
            if moving.is_empty() {
                sum.add(case, &still, None);
            }
            for moving in &moving {
                sum.add(case, &still, Some(moving));
            }
        }
        Ok(sum.done())
    }

    /// People anywhere, one of them up to all, or a hand at a free edge.
    fn moving(&self, case: &LoadCase) -> Result<Vec<Moving>, StripError> {
        let criteria = &self.laid.top.criteria;
        let loaded = self.laid.loaded();
        if let Some(people) = case.people {
            let places: Vec<Length> = self.strip.stations().filter(|at| *at <= loaded).collect();
            return (1..=people.count)
                .map(|count| {
                    let load = PatchLoad {
                        force: people.each,
                        at_rest: people.at_rest,
                        side: criteria.standing_footprint.value,
                        many: u32::try_from(count).unwrap_or(u32::MAX),
                        spacing: criteria.people_spacing.value,
                    };
                    self.moved(load, places.clone(), 1.0, count == 1)
                })
                .collect();
        }
        if let Some(hand) = case.hand {
            let load = PatchLoad {
                force: hand.abs(),
                // A grab is over at once: it is judged by strength alone.
                at_rest: Force::default(),
                ..PatchLoad::resting(hand.abs(), criteria.hand_length.value)
            };
            let sign = if hand < Force::default() { -1.0 } else { 1.0 };
            return Ok(vec![self.moved(load, self.tips(), sign, false)?]);
        }
        Ok(Vec::new())
    }

    fn moved(&self, load: PatchLoad, places: Vec<Length>, sign: f64, alone: bool) -> Result<Moving, StripError> {
        let patches = patches(self.laid.line, &self.strip, &self.spread, places.iter().copied(), load);
        let envelope = self.strip.envelope(load.side.min(self.strip.length()), &patches)?;
        Ok(Moving { envelope, places, sign, alone })
    }

    /// Free ends of the strip that hang over.
    fn tips(&self) -> Vec<Length> {
        let (line, length) = (self.laid.line, self.strip.length());
        let mut tips = Vec::with_capacity(2);
        if line.seats.first().is_some_and(|seat| seat.at > Length::default()) {
            tips.push(Length::default());
        }
        if line.role != Role::EndOverhang && line.seats.last().is_some_and(|seat| seat.at < length) {
            tips.push(length);
        }
        tips
    }
}

/// A load that moves over a strip.
pub(super) struct Moving {
    pub(super) envelope: Envelope,
    pub(super) places: Vec<Length>,
    pub(super) sign: f64,
    /// Whether it is one person alone: the one who feels how soft the top is.
    pub(super) alone: bool,
}

/// What gear on an overhang does to the strip that carries the overhang, over the same gear on the strip.
fn handed_gear(line: &Line, gear: &GearOnLine) -> f64 {
    line.carries.map_or(1.0, |overhang| 1.0 + (gear.beyond / overhang.back_span).get::<ratio>())
}
