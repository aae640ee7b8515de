//! What a bay does under unit loads, in one state of its core.

use uom::si::{force::newton, pressure::pascal, ratio::ratio};

use super::{Bay, worst::worst_places};
use crate::{
    closed_form::plate::{HalfWaves, HeldEdge, HeldEdges, Plate, PlateFault, PlateLoad, PlateSeries},
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
        self.sag += other.sag;
        self.numerical_error = self.numerical_error.max(other.numerical_error);
    }
}

/// A bay in one state of its core, with the effects that have been asked for.
pub(super) struct BayState<'a> {
    top: &'a Top,
    bay: &'a Bay,
    plate: Plate,
    pressed: Effect,
    /// Under one newton of each gear that stands on the bay.
    gear: Option<Vec<(Mass, Effect)>>,
    /// Under one newton on the footprint of a person, anywhere.
    person: Option<Effect>,
}

impl<'a> BayState<'a> {
    pub fn new(top: &'a Top, bay: &'a Bay, plate: Plate) -> Result<Self, PlateFault> {
        let pressed = pressed(bay, &plate)?;
        Ok(Self { top, bay, plate, pressed, gear: None, person: None })
    }

    /// Under one pascal.
    pub fn pressed(&self) -> &Effect {
        &self.pressed
    }

    /// Under one newton of each gear.
    pub fn gear(&mut self) -> Result<&[(Mass, Effect)], PlateFault> {
        let gear = if let Some(known) = self.gear.take() { known } else { self.standing_gear()? };
        Ok(self.gear.insert(gear))
    }

    fn standing_gear(&self) -> Result<Vec<(Mass, Effect)>, PlateFault> {
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
                Ok((gear.mass, patch_at(bay, (&series, &held), gear.footing(), at)?))
            })
            .collect()
    }

    /// Under one newton of a person, at the worst place for each result.
    pub fn person(&mut self) -> Result<&Effect, PlateFault> {
        let person = if let Some(known) = self.person.take() {
            known
        } else {
            let (bay, footing) = (self.bay, self.top.criteria.standing_footprint.value);
            anywhere(bay, &self.series(PERSON_TERMS, footing), footing)?
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

fn pressed(bay: &Bay, plate: &Plate) -> Result<Effect, PlateFault> {
    let [a, b] = bay.sides;
    let shorter = a.min(b);
    let series =
        plate.series([a, b].map(|side| count(PRESSURE_TERMS * (side / shorter).get::<ratio>())), HalfWaves::Odd);
    let load = PlateLoad::Uniform(one_pascal());
    let centre = series.at(&load, [a / 2.0, b / 2.0])?;
    let mut middle = [centre.mx, centre.my];
    let mut numerical_error = centre.numerical_error.moment.max(centre.numerical_error.deflection);
    // In a long bay the smaller moment is largest off the middle.
    for step in 1..ALONG_MIDDLE {
        let share = f64::from(step) / f64::from(ALONG_MIDDLE) / 2.0;
        for point in [[a * share, b / 2.0], [a / 2.0, b * share]] {
            let here = series.at(&load, point)?;
            middle = [middle[0].max(here.mx), middle[1].max(here.my)];
        }
    }
    let held = series.held(bay.holds).at(&load)?;
    let ends = [series.at(&load, [Length::default(), b / 2.0])?, series.at(&load, [a / 2.0, Length::default()])?];
    numerical_error = numerical_error.max(ends[0].numerical_error.shear).max(ends[1].numerical_error.shear);
    Ok(Effect {
        middle,
        over_pipes: held.map(|edge| edge.hogging),
        shear: (ends[0].qx + held[0].added_shear).max(ends[1].qy + held[1].added_shear),
        sag: centre.deflection,
        numerical_error,
    })
}

/// A patch of one newton, moved in and cut down until it lies on the bay.
fn patch(bay: &Bay, footing: Length, at: [Length; 2]) -> (PlateLoad, [Length; 2]) {
    let size = bay.sides.map(|side| footing.min(side));
    let centre = [0, 1].map(|i| at[i].max(size[i] / 2.0).min(bay.sides[i] - size[i] / 2.0));
    (PlateLoad::Patch { force: one_newton(), centre, size }, centre)
}

fn patch_at(
    bay: &Bay,
    (series, edges): (&PlateSeries, &HeldEdges<'_>),
    footing: Length,
    at: [Length; 2],
) -> Result<Effect, PlateFault> {
    let (load, centre) = patch(bay, footing, at);
    let own = series.at(&load, centre)?;
    // The held edges are those at zero; the nearer edge sees more.
    let near = [0, 1].map(|i| centre[i].min(bay.sides[i] - centre[i]));
    let (mirrored, _) = patch(bay, footing, near);
    let held = edges.at(&mirrored)?;
    let (shear, error) = edge_shear(series, &mirrored, near, &held)?;
    Ok(Effect {
        middle: [own.mx, own.my],
        // Without sign: a soft core, softer in one direction, may turn the moment of a patch round.
        over_pipes: held.map(|edge| edge.hogging.abs()),
        shear,
        sag: own.deflection,
        numerical_error: own.numerical_error.moment.max(error),
    })
}

/// Shear at the edges that the patch is nearer to, with what a hold adds.
fn edge_shear(
    series: &PlateSeries,
    load: &PlateLoad,
    [x, y]: [Length; 2],
    held: &[HeldEdge; 2],
) -> Result<(ForcePerWidth, Ratio), PlateFault> {
    let ends = [series.at(load, [Length::default(), y])?, series.at(load, [x, Length::default()])?];
    let shear = (ends[0].qx + held[0].added_shear).max(ends[1].qy + held[1].added_shear);
    Ok((shear, ends[0].numerical_error.shear.max(ends[1].numerical_error.shear)))
}

fn anywhere(bay: &Bay, series: &PlateSeries, footing: Length) -> Result<Effect, PlateFault> {
    let size = bay.sides.map(|side| footing.min(side));
    let held = series.held(bay.holds);
    let places = [0, 1].map(|i| (size[i] / 2.0, bay.sides[i] / 2.0));
    let force = one_newton();
    let [sag, mx, my] = worst_places(places, |xs, ys| {
        let under = series.under_patch(force, size, xs, ys)?;
        Ok(under.iter().map(|under| [under.deflection.value, under.mx.value, under.my.value]).collect())
    })?;
    let [over_x, over_y] = worst_places(places, |xs, ys| {
        let over = held.under_patch(force, size, xs, ys)?;
        Ok(over.iter().map(|over| over.each_ref().map(|edge| edge.hogging.value.abs())).collect())
    })?;
    // The shear is largest with the patch beside a pipe, unless a hold draws more to it from further off.
    let mut shear = ForcePerWidth::default();
    let mut numerical_error = Ratio::default();
    for away in [0.5, 1.0, 1.5] {
        let middle = [bay.sides[0] / 2.0, bay.sides[1] / 2.0];
        for at in [[size[0] * away, middle[1]], [middle[0], size[1] * away]] {
            let (load, centre) = patch(bay, footing, at);
            let (here, error) = edge_shear(series, &load, centre, &held.at(&load)?)?;
            if here > shear {
                (shear, numerical_error) = (here, error);
            }
        }
    }
    for (worst, is_moment) in [(&sag, false), (&mx, true), (&my, true)] {
        let (load, centre) = patch(bay, footing, worst.place);
        let error = series.at(&load, centre)?.numerical_error;
        let error = if is_moment { error.moment } else { error.deflection };
        numerical_error = numerical_error.max(error + worst.missed);
    }
    numerical_error = numerical_error.max(over_x.missed).max(over_y.missed);
    Ok(Effect {
        middle: [mx.value(), my.value()],
        over_pipes: [over_x.value(), over_y.value()],
        shear,
        sag: sag.value(),
        numerical_error,
    })
}
