//! The loads of a case that stay where they are on a strip.

use uom::si::{force::newton, length::meter, pressure::pascal, ratio::ratio};

use super::{
    gear_action::GearAction,
    hand::Ready,
    laid::Laid,
    line::Role,
    moving::{PatchLoad, patches},
    sections::RegionSection,
};
use crate::{
    closed_form::strip::{self, Action, StripError},
    geometry::Axis,
    load::weight::gravity,
    load_case::LoadCase,
    section::Temperatures,
    units::{Curvature, Force, ForcePerWidth, Length, MomentPerWidth, Pressure, Torque, per_width, plain},
};

/// Loads that stay where they are. A strip answers in proportion: each load is laid on it once, at one unit, and a case is a
/// sum of what the units do.
pub(super) struct Still<'r> {
    pub(super) ready: &'r Ready<'r>,
    units: Vec<(Unit, strip::StripForces<'r>)>,
}

/// One unit of a load that stays where it is.
#[derive(Clone, Copy, PartialEq)]
enum Unit {
    /// Own weight under one gravity.
    Weight,
    /// One pascal on all that carries load.
    Pressure,
    /// One pascal on zones of a length at the ends.
    AtEnds(Length),
    /// One pascal between them.
    BetweenEnds(Length),
    /// A free curvature of one per metre.
    Warmth,
    /// A moment of one newton.
    Moment(Length),
}

/// What loads do at the stations of a strip whose forces are those of the top, and at its seats.
#[derive(Clone)]
pub(super) struct Field {
    pub(super) stations: Vec<AtStation>,
    pub(super) reactions: Vec<ForcePerWidth>,
}

/// What loads do at a station.
#[derive(Clone, Copy, Default)]
pub(super) struct AtStation {
    pub(super) moment: MomentPerWidth,
    /// On its left and on its right.
    pub(super) shears: [ForcePerWidth; 2],
    pub(super) sink: Length,
}

impl Field {
    pub(super) fn nothing(laid: &Laid<'_>) -> Self {
        Self {
            stations: vec![AtStation::default(); laid.stations.len()],
            reactions: vec![ForcePerWidth::default(); laid.line.seats.len()],
        }
    }

    fn clear(&mut self) {
        self.stations.fill(AtStation::default());
        self.reactions.fill(ForcePerWidth::default());
    }

    /// Takes the place of what was there.
    pub(super) fn set(&mut self, other: &Self) {
        self.stations.copy_from_slice(&other.stations);
        self.reactions.copy_from_slice(&other.reactions);
    }

    /// Adds so many units.
    fn add(&mut self, unit: &strip::StripForces<'_>, times: f64) {
        for (sum, station) in self.stations.iter_mut().zip(unit.stations()) {
            sum.moment += station.moment_left * times;
            sum.shears[0] += station.shear_left * times;
            sum.shears[1] += station.shear_right * times;
            sum.sink += station.deflection * times;
        }
        for (sum, reaction) in self.reactions.iter_mut().zip(unit.reactions()) {
            *sum += reaction.force * times;
        }
    }
}

impl<'r> Still<'r> {
    pub(super) fn new(ready: &'r Ready<'r>) -> Self {
        Self { ready, units: Vec::with_capacity(8) }
    }

    /// What a case does, one field for each way in which it may: wind and roll, which put moments into footings, come from two
    /// sides, and a hand has one piece of gear at a time.
    pub(super) fn lay<'f>(&mut self, case: &LoadCase, fields: &'f mut Vec<Field>) -> Result<&'f [Field], StripError> {
        let mut sum = fields.pop().unwrap_or_else(|| Field::nothing(self.ready.laid));
        sum.clear();
        for (unit, times) in self.loads(case) {
            if !times.is_finite() {
                return Err(StripError::Load { what: "its size is not a number" });
            }
            if times != 0.0 {
                let at = self.known(unit)?;
                sum.add(&self.units[at].1, times);
            }
        }
        let mut laid = 0;
        for overturning in self.gear_moments(case) {
            for side in [1.0, -1.0] {
                if laid == fields.len() {
                    fields.push(sum.clone());
                }
                fields[laid].set(&sum);
                for &(at, moment) in &overturning {
                    let known = self.known(Unit::Moment(at))?;
                    fields[laid].add(&self.units[known].1, side * (moment / one_newton()).get::<ratio>());
                }
                laid += 1;
            }
        }
        if laid == 0 {
            laid = 1;
            fields.insert(0, sum);
        } else {
            fields.push(sum);
        }
        Ok(&fields[..laid])
    }

    /// What a case has of each unit.
    fn loads(&self, case: &LoadCase) -> [(Unit, f64); 5] {
        let line = self.ready.laid.line;
        let gravity = (Unit::Weight, case.gravity.get::<ratio>());
        if line.role == Role::Carried {
            // Whatever the strip passes, it carries its share of the whole top and nothing else.
            return [gravity, (Unit::Weight, 0.0), (Unit::Weight, 0.0), (Unit::Weight, 0.0), (Unit::Weight, 0.0)];
        }
        let pascals = |pressure: Pressure| (pressure / one_pascal()).get::<ratio>();
        let (wind, loaded) = (case.wind, self.ready.laid.loaded());
        let corner = line.role == Role::EndOverhang || line.to_outline < case.zone;
        let (ends, between) = if corner { (wind.corner, wind.edge) } else { (wind.edge, wind.interior) };
        let zone = case.zone.min(if line.role == Role::EndOverhang { loaded } else { loaded / 2.0 });
        let warmth = case.temperatures.as_ref().map_or_else(Curvature::default, |rise| {
            thermal_curvature(&self.ready.laid.sections.field, line.axis, rise)
        });
        [
            gravity,
            (Unit::Pressure, pascals(case.pressure)),
            (Unit::AtEnds(zone), pascals(ends)),
            (Unit::BetweenEnds(zone), pascals(between)),
            (Unit::Warmth, (warmth / one_per_metre()).get::<ratio>()),
        ]
    }

    /// The place in the list of what a unit does.
    fn known(&mut self, unit: Unit) -> Result<usize, StripError> {
        if let Some(at) = self.units.iter().position(|(known, _)| *known == unit) {
            return Ok(at);
        }
        let forces = self.ready.strip.solve(&self.ready.actions(unit))?;
        self.units.push((unit, forces));
        Ok(self.units.len() - 1)
    }

    /// Moments that wind, roll and hands put into the footings of gear on the strip, from one side, in each way in which they
    /// may.
    fn gear_moments(&self, case: &LoadCase) -> Vec<Vec<(Length, MomentPerWidth)>> {
        let Ready { laid, strip, spread, .. } = self.ready;
        let on_strip = |moments: Vec<Torque>| -> Vec<(Length, MomentPerWidth)> {
            let tipped = laid.line.gear.iter().filter_map(|on_line| {
                let (gear, moment) = (&laid.top.gear[on_line.gear], moments[on_line.gear]);
                if moment == Torque::default() {
                    return None;
                }
                let load = PatchLoad::resting(moment / gear.footing(), gear.footing());
                let per = patches(laid.line, strip, spread, std::iter::once(on_line.at), load).first()?.sagging;
                Some((on_line.at, per_width(plain(per) * gear.footing())))
            });
            tipped.collect()
        };
        let ways = GearAction::overturning(laid.top, case).into_iter().map(on_strip);
        ways.filter(|moments| !moments.is_empty()).collect()
    }
}

impl Ready<'_> {
    fn actions(&self, unit: Unit) -> Vec<Action> {
        let (line, strip, loaded) = (self.laid.line, &self.strip, self.laid.loaded());
        let handed = 1.0 + self.handed.get::<ratio>();
        let (nothing, pressure) = (Length::default(), one_pascal() * handed);
        let stretch = |from: Length, to: Length| Action::Uniform { from, to, pressure };
        let both_ends = line.role != Role::EndOverhang;
        match unit {
            Unit::Weight if line.role == Role::Carried => {
                let (top, one) = (self.laid.top, gravity());
                vec![Action::uniform_all(strip, top.weight().bare * one / top.outline.area())]
            }
            Unit::Weight => self.weight(handed),
            Unit::Pressure => vec![stretch(nothing, loaded)],
            Unit::AtEnds(zone) if both_ends => vec![stretch(nothing, zone), stretch(loaded - zone, loaded)],
            Unit::AtEnds(zone) => vec![stretch(nothing, zone)],
            Unit::BetweenEnds(zone) => vec![stretch(zone, if both_ends { loaded - zone } else { loaded })],
            Unit::Warmth => vec![Action::curvature_all(strip, one_per_metre())],
            Unit::Moment(at) => vec![Action::Moment { at, moment: one_newton() }],
        }
    }

    /// What the strip and the rim at its ends weigh under one gravity.
    fn weight(&self, handed: f64) -> Vec<Action> {
        let (top, line, loaded) = (self.laid.top, self.laid.line, self.laid.loaded());
        let mut actions = Vec::with_capacity(line.pieces.len() + 2);
        let mut from = Length::default();
        for (piece, &mass) in line.pieces.iter().zip(&self.laid.masses) {
            let to = from + piece.length;
            if from < loaded {
                let pressure: Pressure = mass * gravity() * handed;
                actions.push(Action::Uniform { from, to: to.min(loaded), pressure });
            }
            from = to;
        }
        let rim = per_width(top.edge_mass() * gravity()) * handed;
        if rim != ForcePerWidth::default() {
            actions.push(Action::Point { at: Length::default(), force: rim });
            if line.role != Role::EndOverhang {
                actions.push(Action::Point { at: self.strip.length(), force: rim });
            }
        }
        actions
    }
}

fn one_pascal() -> Pressure {
    Pressure::new::<pascal>(1.0)
}

fn one_newton() -> MomentPerWidth {
    per_width(Force::new::<newton>(1.0))
}

fn one_per_metre() -> Curvature {
    1.0 / Length::new::<meter>(1.0)
}

/// Curvature that a strip takes of itself when its skins differ in temperature and its neighbours keep it from curling
/// the other way; sagging positive, so a hot outer skin gives a negative one.
#[must_use]
pub fn thermal_curvature(field: &RegionSection, axis: Axis, rise: &Temperatures) -> Curvature {
    let held = field.section.thermal_flat(rise).moment;
    let held = match axis {
        Axis::X => held.x,
        Axis::Y => held.y,
    };
    -(plain(held) / plain(field.rigidity(axis)))
}
