//! What a bay does under unit loads, in one state of its core.

use uom::si::{force::newton, pressure::pascal, ratio::ratio};

use super::{
    Bay, beyond_core,
    edge::{AtEdges, Beside},
    person::anywhere,
};
use crate::{
    closed_form::plate::{HalfWaves, Plate, PlateFault, PlateLoad, PlateSeries},
    top::Top,
    units::{Force, ForcePerWidth, Length, Mass, MomentPerWidth, Pressure, Ratio},
};

pub(super) fn one_pascal() -> Pressure {
    Pressure::new::<pascal>(1.0)
}

pub(super) fn one_newton() -> Force {
    Force::new::<newton>(1.0)
}

/// Half waves along the shorter side for pressure: moments to 1e-4, edge shear to 1e-3.
const PRESSURE_TERMS: f64 = 32.0;
/// Half waves along a side for each footing that fits into it, for gear: in a corner, moments to 3e-3 and deflection
/// to 2e-3.
const GEAR_TERMS: f64 = 7.0;
/// The same for a person, whose worst places for sag and moments lie away from the pipes: there to 2e-3 and 1.5e-3.
const PERSON_TERMS: f64 = 5.0;
/// Fewest and most half waves along a side.
const TERMS: (f64, f64) = (24.0, 256.0);
/// Places along half of each mid-line where the moments of pressure are looked at.
const ALONG_MIDDLE: u32 = 6;

/// Forces by a load; signs as if the load pressed down: sagging, hogging over pipes, and down are positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Effect {
    pub middle: [MomentPerWidth; 2],
    pub over_pipes: [MomentPerWidth; 2],
    pub shear: ForcePerWidth,
    /// Push on its four pipes, in the order of [`Bay::pipes`].
    pub push: [ForcePerWidth; 4],
    pub sag: Length,
    pub numerical_error: Ratio,
}

impl Effect {
    pub fn times(&self, factor: Ratio) -> Self {
        let factor = factor.get::<ratio>();
        Self {
            middle: self.middle.map(|moment| moment * factor),
            over_pipes: self.over_pipes.map(|moment| moment * factor),
            shear: self.shear * factor,
            push: self.push.map(|push| push * factor),
            sag: self.sag * factor,
            numerical_error: self.numerical_error,
        }
    }

    /// Adds the largest of another load, wherever it lies.
    pub fn add(&mut self, other: &Self) {
        for i in 0..2 {
            self.middle[i] += other.middle[i];
            self.over_pipes[i] += other.over_pipes[i];
        }
        self.shear += other.shear;
        for (push, other) in self.push.iter_mut().zip(other.push) {
            *push += other;
        }
        self.sag += other.sag;
        self.numerical_error = self.numerical_error.max(other.numerical_error);
    }
}

/// A bay in one state of its core, with the effects that have been asked for.
pub(super) struct BayState<'a> {
    top: &'a Top,
    bay: &'a Bay,
    plate: Plate,
    /// Distance of the skins.
    skins: Length,
    pressed: Effect,
    /// Under one newton of each piece of backing, with what it weighs more than core, which may be less than nothing.
    backing: Vec<(Mass, Effect)>,
    /// Under one newton of each gear that stands on the bay.
    gear: Option<Vec<Effect>>,
    /// Under one newton on the footprint of a person, anywhere.
    person: Option<Effect>,
}

impl<'a> BayState<'a> {
    pub fn new(top: &'a Top, bay: &'a Bay, plate: Plate, skins: Length) -> Result<Self, PlateFault> {
        let pressed = pressed(bay, &plate, skins)?;
        let mut state = Self { top, bay, plate, skins, pressed, backing: Vec::new(), gear: None, person: None };
        state.backing = state.heavier_backing()?;
        Ok(state)
    }

    fn heavier_backing(&self) -> Result<Vec<(Mass, Effect)>, PlateFault> {
        let (top, bay) = (self.top, self.bay);
        let Some(least) = bay.backing.iter().flat_map(|piece| piece.cover.sides).reduce(Length::min) else {
            return Ok(Vec::new());
        };
        let series = self.series(GEAR_TERMS, least);
        let held = series.held(bay.holds);
        bay.backing
            .iter()
            .map(|piece| {
                let at = [piece.cover.centre.x - bay.from.x, piece.cover.centre.y - bay.from.y];
                let patch = Patch::within(bay, piece.cover.sides, at);
                let beside = Beside { series: &series, held: &held, skins: self.skins };
                Ok((beyond_core(top, piece), patch.effect(bay, beside)?))
            })
            .collect()
    }

    /// Under one pascal.
    pub fn pressed(&self) -> &Effect {
        &self.pressed
    }

    /// Under one newton of each piece of backing, with its mass beyond that of core.
    pub fn backing(&self) -> &[(Mass, Effect)] {
        &self.backing
    }

    /// Under one newton of each gear.
    pub fn gear(&mut self) -> Result<&[Effect], PlateFault> {
        let gear = if let Some(known) = self.gear.take() { known } else { self.standing_gear()? };
        Ok(self.gear.insert(gear))
    }

    fn standing_gear(&self) -> Result<Vec<Effect>, PlateFault> {
        let (top, bay) = (self.top, self.bay);
        let standing: Vec<_> = top.gear.iter().filter(|gear| bay.holds(gear.at)).collect();
        if standing.is_empty() {
            return Ok(Vec::new());
        }
        let least = standing.iter().fold(standing[0].footing(), |least, gear| least.min(gear.footing()));
        let series = self.series(GEAR_TERMS, least);
        let held = series.held(bay.holds);
        standing
            .into_iter()
            .map(|gear| {
                let at = [gear.at.x - bay.from.x, gear.at.y - bay.from.y];
                let patch = Patch::within(bay, [gear.footing(); 2], at);
                patch.effect(bay, Beside { series: &series, held: &held, skins: self.skins })
            })
            .collect()
    }

    /// Under one newton of a person, at the worst place for each result.
    pub fn person(&mut self) -> Result<&Effect, PlateFault> {
        let person = if let Some(known) = self.person.take() {
            known
        } else {
            let (bay, footing) = (self.bay, self.top.criteria.standing_footprint.value);
            anywhere(bay, &self.series(PERSON_TERMS, footing), footing, self.skins)?
        };
        Ok(self.person.insert(person))
    }

    fn series(&self, terms: f64, footing: Length) -> PlateSeries {
        let along = |side: Length| count(terms * (side / footing.min(side)).get::<ratio>());
        self.plate.series(self.bay.sides.map(along), HalfWaves::All)
    }
}

fn count(terms: f64) -> usize {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held to a small range")]
    let count = terms.clamp(TERMS.0, TERMS.1).ceil() as usize;
    count
}

fn pressed(bay: &Bay, plate: &Plate, skins: Length) -> Result<Effect, PlateFault> {
    let [a, b] = bay.sides;
    let shorter = a.min(b);
    let series =
        plate.series([a, b].map(|side| count(PRESSURE_TERMS * (side / shorter).get::<ratio>())), HalfWaves::Odd);
    let load = PlateLoad::Uniform(one_pascal());
    // In a long bay the smaller moment is largest off the middle, where both lines end.
    let half = |side: Length| -> Vec<Length> {
        (1..=ALONG_MIDDLE).map(|step| side / 2.0 * (f64::from(step) / f64::from(ALONG_MIDDLE))).collect()
    };
    let lines = [series.at_grid(&load, &half(a), &[b / 2.0])?, series.at_grid(&load, &[a / 2.0], &half(b))?];
    let centre = lines[0][lines[0].len() - 1];
    let mut middle = [centre.mx, centre.my];
    for here in lines.iter().flatten() {
        middle = [middle[0].max(here.mx), middle[1].max(here.my)];
    }
    let held = series.held(bay.holds);
    let edges = Beside { series: &series, held: &held, skins }.under(&load, [a / 2.0, b / 2.0])?;
    let error = centre.numerical_error.moment.max(centre.numerical_error.deflection);
    Ok(Effect {
        middle,
        over_pipes: edges.hogging,
        shear: edges.shear[0].max(edges.shear[1]),
        push: edges.on_pipes(&edges),
        sag: centre.deflection,
        numerical_error: error.max(edges.error_beside(middle)),
    })
}

/// A patch of one newton on a bay.
pub(super) struct Patch {
    pub load: PlateLoad,
    pub centre: [Length; 2],
}

impl Patch {
    /// Moved in and cut down until it lies on the bay.
    pub fn within(bay: &Bay, sides: [Length; 2], at: [Length; 2]) -> Self {
        let size = [0, 1].map(|i| sides[i].min(bay.sides[i]));
        let centre = [0, 1].map(|i| at[i].max(size[i] / 2.0).min(bay.sides[i] - size[i] / 2.0));
        Self { load: PlateLoad::Patch { force: one_newton(), centre, size }, centre }
    }

    /// Seen from the opposite corner.
    fn turned(&self, bay: &Bay) -> Self {
        let PlateLoad::Patch { size, .. } = self.load else { return Self { ..*self } };
        Self::within(bay, size, [0, 1].map(|i| bay.sides[i] - self.centre[i]))
    }

    fn effect(&self, bay: &Bay, beside: Beside<'_>) -> Result<Effect, PlateFault> {
        let own = beside.series.at(&self.load, self.centre)?;
        // The held edges are those at zero.
        let turned = self.turned(bay);
        let low: AtEdges = beside.under(&self.load, self.centre)?;
        let high = beside.under(&turned.load, turned.centre)?;
        let larger = |i: usize| low.hogging[i].abs().max(high.hogging[i].abs());
        let shears = [low.shear, high.shear].into_iter().flatten();
        let middle = [own.mx, own.my];
        let error = low.error_beside(middle).max(high.error_beside(middle));
        Ok(Effect {
            middle,
            // Without sign: a soft core, softer in one direction, may turn the moment of a patch round.
            over_pipes: [larger(0), larger(1)],
            shear: shears.fold(ForcePerWidth::default(), ForcePerWidth::max),
            push: low.on_pipes(&high),
            sag: own.deflection,
            numerical_error: own.numerical_error.moment.max(error),
        })
    }
}
