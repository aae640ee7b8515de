//! The hand method: every case on every strip.

use uom::si::{length::micrometer, ratio::ratio};

use super::{
    design_value::Knockdowns,
    forces::StripForces,
    line::{GearOnLine, Line, Region, Role, handed_on},
    moving::{PatchLoad, end_width, patches},
    overlay::Sum,
    sections::{RegionSection, Sections},
};
use crate::{
    closed_form::{
        effective_width::Spread,
        strip::{Action, Envelope, Segment, Strip, StripError, Support},
    },
    geometry::Axis,
    load::weight::gravity,
    load_case::{Held, LoadCase, State},
    section::Temperatures,
    top::Top,
    units::{
        Acceleration, ArealMassDensity, Curvature, Force, ForcePerWidth, Length, MomentPerWidth, Pressure, Ratio,
        per_width, plain,
    },
};

/// Parts that each bay and each overhang is divided into: places where people are tried and forces are listed.
pub const DIVISIONS: usize = 8;

/// A strip in one state of the material.
pub(super) struct Ready<'a> {
    top: &'a Top,
    sections: &'a Sections,
    pub(super) line: &'a Line,
    spread: Spread,
    pub(super) strip: Strip,
    /// Region on the left and on the right of each station.
    pub(super) sides: Vec<(Region, Region)>,
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
    let mut ready: Vec<(State, Ready<'_>)> = Vec::with_capacity(4);
    let mut forces = Vec::with_capacity(cases.len());
    for (number, case) in cases.iter().enumerate().filter(|(_, case)| case.held == held) {
        let at = match ready.iter().position(|(state, _)| *state == case.state) {
            Some(at) => at,
            None => {
                let left = knockdowns
                    .iter()
                    .find(|(state, _)| *state == case.state)
                    .map_or_else(|| Ratio::new::<ratio>(1.0), |(_, knockdowns)| knockdowns.core_stiffness());
                ready.push((case.state, Ready::new(top, sections, line, left, divisions)?));
                ready.len() - 1
            }
        };
        forces.push(ready[at].1.under(index, number, case)?);
    }
    Ok(forces)
}

/// A line as a strip that swings: with the mass of the overhang that it carries.
///
/// # Errors
///
/// [`StripError`] where the line and its seats make no strip.
pub fn swinging_strip(top: &Top, sections: &Sections, line: &Line, core_left: Ratio) -> Result<Strip, StripError> {
    let spread = Spread::new(&sections.field.plate_stiffness(line.axis, core_left));
    let handed = line.carries.map_or_else(Ratio::default, |overhang| handed_on(overhang, end_width(line, &spread)));
    strip(top, sections, line, (core_left, Ratio::new::<ratio>(1.0) + handed), (&[], 1))
}

/// A line as a strip in one state of its core, its mass multiplied; results at `stations` and at `divisions` of each bay.
///
/// # Errors
///
/// [`StripError`] where the line and its seats make no strip.
fn strip(
    top: &Top,
    sections: &Sections,
    line: &Line,
    (core_left, mass_times): (Ratio, Ratio),
    (stations, divisions): (&[Length], usize),
) -> Result<Strip, StripError> {
    let segments: Vec<Segment> = line
        .pieces
        .iter()
        .map(|piece| {
            let section = sections.of(piece.region);
            let (left, mass) = match piece.region {
                Region::Backing(index) => (Ratio::new::<ratio>(1.0), top.backing_mass(&top.backings[index])),
                Region::Field | Region::Conduit(_) => (core_left, top.field_mass()),
            };
            Segment {
                length: piece.length,
                rigidity: section.rigidity(line.axis),
                shear: section.shear_stiffness(line.axis, left),
                mass: mass * mass_times,
            }
        })
        .collect();
    let supports: Vec<Support> = line.seats.iter().map(|seat| Support::pipe(seat.at)).collect();
    Strip::new(&segments, &supports, stations, divisions)
}

/// Close beside a pipe a foot shears the core most: it is tried there, and not only at even steps.
fn beside_pipes(top: &Top, line: &Line) -> Vec<Length> {
    let length = line.length();
    let foot: Length = top.criteria.standing_footprint.value / 2.0;
    let beside = line.seats.iter().flat_map(|seat| [seat.at - foot, seat.at + foot]);
    beside.filter(|at| *at > Length::default() && *at < length).collect()
}

impl<'a> Ready<'a> {
    fn new(
        top: &'a Top,
        sections: &'a Sections,
        line: &'a Line,
        core_left: Ratio,
        divisions: usize,
    ) -> Result<Self, StripError> {
        let stations = (beside_pipes(top, line), divisions);
        let strip = strip(top, sections, line, (core_left, Ratio::new::<ratio>(1.0)), (&stations.0, stations.1))?;
        let sides = sides(line, &strip);
        let spread = Spread::new(&sections.field.plate_stiffness(line.axis, core_left));
        let mut ready = Self { top, sections, line, spread, strip, sides, gear: Vec::new() };
        for on_line in &line.gear {
            let gear = &top.gear[on_line.gear];
            let load = PatchLoad::resting(gear.mass * gravity() * handed_gear(line, on_line), gear.footing);
            let patches = patches(line, &ready.strip, &ready.spread, std::iter::once(on_line.at), load);
            ready.gear.push(ready.strip.envelope(gear.footing, &patches)?);
        }
        Ok(ready)
    }

    fn under(&self, line: usize, number: usize, case: &LoadCase) -> Result<StripForces, StripError> {
        let moving = self.moving(case)?;
        let mut sum = Sum::new(self, line, number);
        for overturning in self.gear_moments(case) {
            let mut actions = self.actions(case);
            actions.extend(overturning);
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

    /// Everything that stays where it is.
    fn actions(&self, case: &LoadCase) -> Vec<Action> {
        let line = self.line;
        if line.role == Role::Carried {
            // Whatever the strip passes, it carries its share of the whole top.
            let even: Pressure = self.top.weight().bare * (gravity() * case.gravity) / self.top.outline.area();
            return vec![Action::uniform_all(&self.strip, even)];
        }
        let handed = line
            .carries
            .map_or_else(|| 1.0, |overhang| 1.0 + handed_on(overhang, end_width(line, &self.spread)).get::<ratio>());
        let loaded = self.loaded();
        let mut actions = Vec::with_capacity(line.pieces.len() + 6);
        let mut from = Length::default();
        for piece in &line.pieces {
            let to = from + piece.length;
            let mass = match piece.region {
                Region::Backing(index) => self.top.backing_mass(&self.top.backings[index]),
                Region::Field | Region::Conduit(_) => self.top.field_mass(),
            };
            if from < loaded {
                let pressure = (weight(mass, case.gravity) + case.pressure) * handed;
                actions.push(Action::Uniform { from, to: to.min(loaded), pressure });
            }
            from = to;
        }
        for (from, to, pressure) in self.wind(case) {
            actions.push(Action::Uniform { from, to, pressure: pressure * handed });
        }
        let rim = per_width(self.top.edge_mass() * gravity()) * case.gravity.get::<ratio>() * handed;
        if rim != ForcePerWidth::default() {
            actions.push(Action::Point { at: Length::default(), force: rim });
            if line.role != Role::EndOverhang {
                actions.push(Action::Point { at: self.strip.length(), force: rim });
            }
        }
        if let Some(rise) = &case.temperatures {
            actions.push(Action::curvature_all(&self.strip, thermal_curvature(&self.sections.field, line.axis, rise)));
        }
        actions
    }

    /// The part of the strip that carries load: of a strip over an end, what hangs over.
    fn loaded(&self) -> Length {
        match self.line.role {
            Role::EndOverhang => self.line.seats[0].at,
            Role::Field | Role::Edge | Role::Carried => self.strip.length(),
        }
    }

    /// Wind by zones along the strip.
    fn wind(&self, case: &LoadCase) -> Vec<(Length, Length, Pressure)> {
        let wind = case.wind;
        let (length, zone) = (self.loaded(), case.zone.min(self.loaded() / 2.0));
        let beside = self.line.to_outline < case.zone;
        match self.line.role {
            Role::Carried => Vec::new(),
            Role::EndOverhang => {
                let zone = case.zone.min(length);
                vec![(Length::default(), zone, wind.corner), (zone, length, wind.edge)]
            }
            Role::Field | Role::Edge => {
                let (ends, middle) = if beside { (wind.corner, wind.edge) } else { (wind.edge, wind.interior) };
                vec![(Length::default(), zone, ends), (zone, length - zone, middle), (length - zone, length, ends)]
            }
        }
        .into_iter()
        .filter(|(from, to, pressure)| to > from && *pressure != Pressure::default())
        .collect()
    }

    /// Moments that wind and roll put into the footings of gear: none, or both ways, since they come from either side.
    fn gear_moments(&self, case: &LoadCase) -> Vec<Vec<Action>> {
        let still = case.gear_wind == Pressure::default() && case.gear_sideways == Ratio::default();
        if !case.with_gear || self.gear.is_empty() || still {
            return vec![Vec::new()];
        }
        [1.0, -1.0]
            .into_iter()
            .map(|side| {
                let moments = self.line.gear.iter().filter_map(|on_line| {
                    let gear = &self.top.gear[on_line.gear];
                    let drag: Force = case.gear_wind * gear.wind_area * gear.drag;
                    let roll: Force = gear.mass * (gravity() * case.gear_sideways);
                    let load = PatchLoad::resting(drag + roll, gear.footing);
                    let at = std::iter::once(on_line.at);
                    let per = patches(self.line, &self.strip, &self.spread, at, load).first()?.sagging;
                    let moment: MomentPerWidth = per_width(plain(per) * gear.cg_height) * side;
                    Some(Action::Moment { at: on_line.at, moment })
                });
                moments.collect()
            })
            .collect()
    }

    /// People anywhere, one of them up to all, or a hand at a free edge.
    fn moving(&self, case: &LoadCase) -> Result<Vec<Moving>, StripError> {
        let criteria = &self.top.criteria;
        let loaded = self.loaded();
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
        let patches = patches(self.line, &self.strip, &self.spread, places.iter().copied(), load);
        let envelope = self.strip.envelope(load.side.min(self.strip.length()), &patches)?;
        Ok(Moving { envelope, places, sign, alone })
    }

    /// Free ends of the strip that hang over.
    fn tips(&self) -> Vec<Length> {
        let (seats, length) = (&self.line.seats, self.strip.length());
        let mut tips = Vec::with_capacity(2);
        if seats.first().is_some_and(|seat| seat.at > Length::default()) {
            tips.push(Length::default());
        }
        if self.line.role != Role::EndOverhang && seats.last().is_some_and(|seat| seat.at < length) {
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

fn weight(mass: ArealMassDensity, multiple: Ratio) -> Pressure {
    let acceleration: Acceleration = gravity() * multiple;
    mass * acceleration
}

/// Region on both sides of each station of a strip.
fn sides(line: &Line, strip: &Strip) -> Vec<(Region, Region)> {
    let mut ends = Vec::with_capacity(line.pieces.len());
    let mut at = Length::default();
    for piece in &line.pieces {
        at += piece.length;
        ends.push((at, piece.region));
    }
    let last = ends.len() - 1;
    let hair: Length = strip.length() * 1e-9;
    strip
        .stations()
        .map(|station| {
            let left = ends.iter().position(|(end, _)| *end > station - hair).unwrap_or(last);
            let right = ends.iter().position(|(end, _)| *end > station + hair).unwrap_or(last);
            (ends[left].1, ends[right].1)
        })
        .collect()
}

impl Ready<'_> {
    /// The last station whose forces are those of the top.
    pub(super) fn last_station(&self) -> Length {
        self.loaded()
    }

    /// Bays and overhangs: from, to, the length that sag is measured against, whether it is an overhang.
    pub(super) fn spans(&self) -> impl Iterator<Item = (Length, Length, Length, bool)> + '_ {
        let (seats, length) = (&self.line.seats, self.strip.length());
        let hair = Length::new::<micrometer>(1.0);
        let first = seats.first().map(|seat| (Length::default(), seat.at, seat.at, true));
        let last = seats.last().map(|seat| (seat.at, length, length - seat.at, true));
        let bays = seats.windows(2).map(|pair| (pair[0].at, pair[1].at, pair[1].at - pair[0].at, false));
        let over_end = self.line.role == Role::EndOverhang;
        first
            .into_iter()
            .chain(bays.filter(move |_| !over_end))
            .chain(last.filter(move |_| !over_end))
            .filter(move |(from, to, ..)| *to - *from > hair)
    }
}
