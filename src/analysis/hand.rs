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
    still::{Field, Still},
};
use crate::{
    closed_form::{
        effective_width::Spread,
        strip::{Envelope, Strip, StripError},
    },
    load::weight::gravity,
    load_case::{Held, LoadCase, State},
    top::Top,
    units::{Force, Length, Ratio},
};

/// Parts that each bay and each overhang is divided into: places where people are tried and forces are listed.
pub const DIVISIONS: usize = 8;

/// A strip with a share of its core's stiffness left.
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
    let left = |state: State| {
        let known = knockdowns.iter().find(|(known, _)| *known == state);
        known.map_or_else(|| Ratio::new::<ratio>(1.0), |(_, knockdowns)| knockdowns.core_stiffness())
    };
    let acting: Vec<(usize, &LoadCase, Ratio)> = cases
        .iter()
        .enumerate()
        .filter(|(_, case)| case.held == held)
        .map(|(number, case)| (number, case, left(case.state)))
        .collect();
    let nothing = || Field::nothing(&laid);
    let mut memory = Memory { still: Vec::with_capacity(3), bounds: [nothing(), nothing()] };
    let mut forces = Vec::with_capacity(acting.len());
    // The stiffness of the core is all that a state changes of a strip: states that leave the same of it share one.
    for (at, &(.., left)) in acting.iter().enumerate() {
        let alike = |(.., other): &&(usize, &LoadCase, Ratio)| *other == left;
        if acting[..at].iter().any(|other| alike(&other)) {
            continue;
        }
        let ready = Ready::new(&laid, left)?;
        let mut known = Known::new(&ready);
        for &(number, case, _) in acting[at..].iter().filter(alike) {
            forces.push(known.under(index, (number, case), &mut memory)?);
        }
    }
    forces.sort_by_key(|forces| forces.case);
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

    fn moved(&self, load: PatchLoad, walk: Walk) -> Result<Moved, StripError> {
        let places = match walk {
            Walk::Anywhere => self.stood_on(load.side),
            Walk::Tips => self.tips(load.side),
        };
        let patches = patches(self.laid.line, &self.strip, &self.spread, places.iter().copied(), load);
        let envelope = self.strip.envelope(load.side.min(self.strip.length()), &patches)?;
        Ok(Moved { load, walk, envelope, places })
    }

    /// Free ends of the strip that hang over; where the top ends before the strip does, its rim there.
    fn tips(&self, side: Length) -> Vec<Length> {
        let (line, length) = (self.laid.line, self.strip.length());
        let rim = |end: Length| {
            if self.can_stand(end, side) {
                return Some(end);
            }
            let mut on_top = self.stood_on(side).into_iter();
            if end == length { on_top.next_back() } else { on_top.next() }
        };
        let mut tips = Vec::with_capacity(2);
        if line.seats.first().is_some_and(|seat| seat.at > Length::default()) {
            tips.extend(rim(Length::default()));
        }
        if line.role != Role::EndOverhang && line.seats.last().is_some_and(|seat| seat.at < length) {
            tips.extend(rim(length));
        }
        tips
    }
}

/// What is known of a strip: loads that were laid on it once serve every case that has them.
struct Known<'r> {
    still: Still<'r>,
    moved: Vec<Moved>,
}

/// Memory that serves every case on a line.
struct Memory {
    /// What stays, in each way in which a case may act.
    still: Vec<Field>,
    bounds: [Field; 2],
}

impl<'r> Known<'r> {
    fn new(ready: &'r Ready<'r>) -> Self {
        Self { still: Still::new(ready), moved: Vec::new() }
    }

    fn under(
        &mut self,
        line: usize,
        (number, case): (usize, &LoadCase),
        memory: &mut Memory,
    ) -> Result<StripForces, StripError> {
        let moving = self.moving(case)?;
        let ways = self.still.lay(case, &mut memory.still)?;
        let mut sum = Sum::new(self.still.ready, line, number);
        for still in ways {
            if moving.is_empty() {
                sum.add(case, still, None, &mut memory.bounds);
            }
            for &Moves { moved, sign, alone } in &moving {
                let moving = Moving { moved: &self.moved[moved], sign, alone };
                sum.add(case, still, Some(&moving), &mut memory.bounds);
            }
        }
        Ok(sum.done())
    }

    /// People anywhere, one of them up to all, or a hand at a free edge.
    fn moving(&mut self, case: &LoadCase) -> Result<Vec<Moves>, StripError> {
        let criteria = &self.still.ready.laid.top.criteria;
        if let Some(people) = case.people {
            return (1..=people.count)
                .map(|count| {
                    let load = PatchLoad {
                        force: people.each,
                        at_rest: people.at_rest,
                        side: criteria.standing_footprint.value,
                        many: u32::try_from(count).unwrap_or(u32::MAX),
                        spacing: criteria.people_spacing.value,
                    };
                    Ok(Moves { moved: self.move_over(load, Walk::Anywhere)?, sign: 1.0, alone: count == 1 })
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
            return Ok(vec![Moves { moved: self.move_over(load, Walk::Tips)?, sign, alone: false }]);
        }
        Ok(Vec::new())
    }

    /// The place in the list of a load that moves over the strip; what pulls does as what pushes, the other way.
    fn move_over(&mut self, load: PatchLoad, walk: Walk) -> Result<usize, StripError> {
        if let Some(at) = self.moved.iter().position(|known| known.load == load && known.walk == walk) {
            return Ok(at);
        }
        self.moved.push(self.still.ready.moved(load, walk)?);
        Ok(self.moved.len() - 1)
    }
}

/// Where a load that moves is tried.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Walk {
    /// At every station that carries load.
    Anywhere,
    /// At the free ends that hang over.
    Tips,
}

/// A load that was moved over a strip.
pub(super) struct Moved {
    pub(super) load: PatchLoad,
    walk: Walk,
    pub(super) envelope: Envelope,
    pub(super) places: Vec<Length>,
}

/// A load that moves in a case.
struct Moves {
    /// As its place in the list.
    moved: usize,
    sign: f64,
    alone: bool,
}

/// A load that moves over a strip.
pub(super) struct Moving<'m> {
    pub(super) moved: &'m Moved,
    pub(super) sign: f64,
    /// Whether it is one person alone: the one who feels how soft the top is.
    pub(super) alone: bool,
}

/// What gear on an overhang does to the strip that carries the overhang, over the same gear on the strip.
fn handed_gear(line: &Line, gear: &GearOnLine) -> f64 {
    line.carries.map_or(1.0, |overhang| 1.0 + (gear.beyond / overhang.back_span).get::<ratio>())
}
