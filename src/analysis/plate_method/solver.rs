//! A top at one degree, in all the states of its material.

use std::borrow::Cow;

use super::{
    EvenPush, PlateForces, Pressed, buckling,
    envelope::Solved,
    frequency, heat,
    layout::Net,
    lifting::Lifting,
    loads::{Still, StillLoads},
    people::Moving,
    wind::Winds,
};
use crate::{
    analysis::sections::Sections,
    finite_element::{Degree, Grouping, LiftsOff, Mechanism, NoMode, Plate, Reader, Sampler},
    load_case::LoadCase,
    top::Top,
    units::{Frequency, Length, Ratio},
};

/// Forces of the cases of a state, and what presses a crown in them.
pub(super) type OfState = (Vec<PlateForces>, Vec<Pressed>);

/// First natural frequency and even push at which the top buckles.
pub(super) type Modes = (Option<Result<Frequency, NoMode>>, Option<EvenPush>);

/// A top at one degree: what all its states share, and what looks at it.
pub(super) struct Solver<'a> {
    top: &'a Top,
    sections: &'a Sections,
    net: &'a Net,
    degree: Degree,
    /// Those plates that are asked for more than once, by the share of the core's stiffness; the first leads the others.
    plates: Vec<(Ratio, Plate)>,
    pub(super) sampler: Sampler,
    grouping: Grouping,
}

impl<'a> Solver<'a> {
    pub(super) fn new(
        top: &'a Top,
        sections: &'a Sections,
        (net, alike): (&'a Net, &[(Ratio, Vec<Moving>)]),
        degree: Degree,
        (leading, asked_again): (Ratio, &[Ratio]),
    ) -> Result<Self, Mechanism> {
        let plate = net.plate(top, sections, (degree, leading), None)?;
        let moving = alike.iter().flat_map(|(_, moving)| moving).flat_map(|moving| &moving.placed);
        let sampler = net.sampler(top, &plate, moving.map(|placed| placed.at));
        let grouping = net.grouping(top, sections, &sampler);
        let mut new = Self { top, sections, net, degree, plates: vec![(leading, plate)], sampler, grouping };
        for &left in asked_again {
            if let Cow::Owned(plate) = new.state(left)? {
                new.plates.push((left, plate));
            }
        }
        Ok(new)
    }

    pub(super) fn leading(&self) -> &Plate {
        &self.plates[0].1
    }

    /// The plate with a share of the core's stiffness left.
    pub(super) fn state(&self, left: Ratio) -> Result<Cow<'_, Plate>, Mechanism> {
        if let Some((_, plate)) = self.plates.iter().find(|(known, _)| *known == left) {
            return Ok(Cow::Borrowed(plate));
        }
        let like = Some(self.leading());
        self.net.plate(self.top, self.sections, (self.degree, left), like).map(Cow::Owned)
    }

    /// First frequency and even push, where they are sought.
    pub(super) fn modes(&self, swinging: Option<Ratio>, softest: Option<Ratio>) -> Result<Modes, Mechanism> {
        let frequency = || -> Result<Option<Result<Frequency, NoMode>>, Mechanism> {
            let Some(left) = swinging else { return Ok(None) };
            let plate = self.state(left)?;
            Ok(Some(frequency::first_frequency(self.top, self.net, &plate).map(|swinging| swinging.frequency)))
        };
        let buckled = || -> Result<Option<EvenPush>, Mechanism> {
            let Some(softest) = softest else { return Ok(None) };
            let higher = self.state(softest)?;
            // For a first look a bound from above is enough.
            if self.degree == Degree::Two {
                return Ok(Some(buckling::most_even_push(&higher)));
            }
            let below = self.net.plate(self.top, self.sections, (Degree::Two, softest), None)?;
            Ok(Some(buckling::even_push(&below, &higher)))
        };
        let (frequency, even_push) = rayon::join(frequency, buckled);
        Ok((frequency?, even_push?))
    }

    pub(super) fn still(&self, plate: &Plate, (cases, moving): (&[LoadCase], &[Moving]), winds: &Winds) -> Vec<Still> {
        let numbers = moving.iter().flat_map(|moving| &moving.cases).map(|(case, _)| *case);
        StillLoads::new(self.top, self.net, plate).solve(self.sections, (cases, &numbers.collect::<Vec<_>>()), winds)
    }

    /// Looks for the mode of what presses a crown as it is.
    pub(super) fn look_closer(
        &self,
        pressed: &mut Pressed,
        (cases, alike): (&[LoadCase], &[(Ratio, Vec<Moving>)]),
        winds: &Winds,
    ) -> Result<(), Mechanism> {
        let has_case = |moving: &Moving| moving.cases.iter().any(|(case, _)| *case == pressed.case);
        let state = alike.iter().find(|(_, moving)| moving.iter().any(has_case));
        let Some((left, _)) = state else { return Ok(()) };
        let plate = self.state(*left)?;
        let still = StillLoads::new(self.top, self.net, &plate).solve(self.sections, (cases, &[pressed.case]), winds);
        for still in &still {
            pressed.look_closer(&plate, still);
        }
        Ok(())
    }

    /// Forces by case, and what presses a crown; what moves is tried everywhere, or where it was the worst before.
    pub(super) fn forces(
        &self,
        (reader, lifting): (&Reader<'_>, Option<&Lifting>),
        still: &[Still],
        (cases, moving): (&[LoadCase], &[Moving]),
        before: Option<&[PlateForces]>,
    ) -> Result<OfState, LiftsOff> {
        let solved = Solved { top: self.top, net: self.net, reader, grouping: &self.grouping, lifting };
        let (lying, mut all) = (solved.lying(still), Vec::with_capacity(still.len()));
        for moving in moving {
            all.extend(solved.forces(&cases[moving.cases[0].0], moving, &lying, before)?);
        }
        all.sort_by_key(|forces: &PlateForces| forces.case);
        for lying in &lying {
            if let Some(own) = all.iter_mut().find(|own| own.case == lying.case) {
                own.bow = heat::bows(&solved, lying)?;
            }
        }
        let crowned = lying.iter().filter(|_| self.top.crown > Length::default());
        let pressed = crowned.filter_map(|lying| buckling::pressed(&self.sampler, lying)).collect();
        Ok((all, pressed))
    }
}
