//! Bays that pipes hold on four sides: plate series, with what neighbours and overhangs
//! hold over the pipes.

mod effect;
mod worst;

use effect::{BayState, Effect, one_newton, one_pascal};

use super::{layout::StripLayout, sections::RegionSection, still::thermal_curvature};
use crate::{
    closed_form::plate::{EdgeHold, Plate, PlateFault},
    geometry::{Axis, Point, Polyline},
    load::weight::gravity,
    load_case::{Held, LoadCase},
    top::Top,
    units::{Acceleration, Force, ForcePerWidth, Frequency, Length, MomentPerWidth, Pressure, Ratio, per_width, plain},
};

/// A bay between four pipes.
#[derive(Clone, Debug, PartialEq)]
pub struct Bay {
    /// Its corner with the smallest coordinates.
    pub from: Point,
    /// Its sides along the length and across.
    pub sides: [Length; 2],
    /// The pipes that hold it: two along the length, two across.
    pub pipes: [usize; 4],
    /// The stiffer of the holds at its two ends along the length, and across.
    pub holds: [EdgeHold; 2],
}

/// Largest forces of a bay under a case; the moments of one place act together.
#[derive(Clone, Debug, PartialEq)]
pub struct BayForces {
    /// The bay, as its place in the list.
    pub bay: usize,
    /// The case, as its place in the list.
    pub case: usize,
    /// Moments in the middle of the bay or under a person, along the length and across, sagging positive.
    pub middle: [MomentPerWidth; 2],
    /// Largest moments over the pipes that its neighbours and overhangs can hold, without sign.
    pub over_pipes: [MomentPerWidth; 2],
    /// Shear at the pipes, a person beside them.
    pub shear: ForcePerWidth,
    /// Sag in the middle, up or down.
    pub sag: Length,
    /// Deflection that a person causes under the own feet.
    pub under_load: Length,
    /// Largest estimated error of the series, over the result.
    pub numerical_error: Ratio,
}

/// The bays between the pipes of two layouts.
#[must_use]
pub fn bays(top: &Top, lengthwise: &StripLayout, across: &StripLayout) -> Vec<Bay> {
    let ordered = |pipes: &[usize], axis: Axis| {
        let mut pipes: Vec<(Length, usize)> =
            pipes.iter().map(|&pipe| (top.pipes[pipe].along.extent(axis).0, pipe)).collect();
        pipes.sort_by(|a, b| a.0.value.total_cmp(&b.0.value));
        pipes
    };
    let (at_x, at_y) = (ordered(&lengthwise.pipes, Axis::X), ordered(&across.pipes, Axis::Y));
    let mut bays = Vec::new();
    for (i, x) in at_x.windows(2).enumerate() {
        for (j, y) in at_y.windows(2).enumerate() {
            bays.push(Bay {
                holds: [hold(&at_x, i, top.outline.size(Axis::X)), hold(&at_y, j, top.outline.size(Axis::Y))],
                from: Point { x: x[0].0, y: y[0].0 },
                sides: [x[1].0 - x[0].0, y[1].0 - y[0].0],
                pipes: [y[0].1, y[1].1, x[0].1, x[1].1],
            });
        }
    }
    bays
}

/// The stiffer hold of the bay behind a pipe: a neighbour, which by symmetry may clamp it, or the wider overhang.
fn hold(pipes: &[(Length, usize)], bay: usize, size: Length) -> EdgeHold {
    if pipes.len() > 2 {
        return EdgeHold::Clamped;
    }
    EdgeHold::Overhang(pipes[bay].0.max(size - pipes[bay + 1].0).max(Length::default()))
}

/// A bay as a plate, with a share of the core's shear modulus left.
///
/// # Errors
///
/// [`PlateFault`] where its sides or stiffnesses make no plate.
pub fn plate_of(bay: &Bay, field: &RegionSection, core_left: Ratio) -> Result<Plate, PlateFault> {
    Plate::new(bay.sides[0], bay.sides[1], field.plate_stiffness(Axis::X, core_left))
}

/// Forces of a bay under every case that acts on the frame.
///
/// A case in which loads act both ways comes twice: once with all that bends the bay down, once with all that bends it
/// up, each on top of what acts all over.
///
/// # Errors
///
/// [`PlateFault`] where its sides or stiffnesses make no plate.
pub fn bay_forces(
    top: &Top,
    field: &RegionSection,
    bay: (usize, &Bay),
    cases: &[LoadCase],
    core_left: impl Fn(&LoadCase) -> Ratio,
) -> Result<Vec<BayForces>, PlateFault> {
    let (index, bay) = bay;
    let mut known: Vec<(Ratio, BayState<'_>)> = Vec::new();
    let mut forces = Vec::with_capacity(cases.len());
    for (number, case) in cases.iter().enumerate().filter(|(_, case)| case.held == Held::OnFrame) {
        let left = core_left(case);
        let at = known.iter().position(|(share, _)| *share == left);
        let at = if let Some(at) = at {
            at
        } else {
            known.push((left, BayState::new(top, bay, plate_of(bay, field, left)?)?));
            known.len() - 1
        };
        let state = &mut known[at].1;
        let acceleration: Acceleration = gravity() * case.gravity;
        // The edge pressure of the wind is taken all over: a bay that reaches the edge zone is not cut in two.
        let wind = if case.wind.edge.abs() > case.wind.interior.abs() { case.wind.edge } else { case.wind.interior };
        let pressure: Pressure = top.field_mass() * acceleration + case.pressure + wind;
        let still = state.pressed().times(pressure / one_pascal());
        let (mut down, mut up) = (still, still);
        if case.with_gear {
            for (mass, effect) in state.gear()? {
                let weight: Acceleration = gravity() * case.gear_gravity;
                let gear = effect.times(*mass * weight / one_newton());
                // Upward where gravity acts upward, as in a rebound.
                let side = if acceleration < Acceleration::default() { &mut up } else { &mut down };
                side.add(&gear);
            }
        }
        for effect in [&mut down, &mut up] {
            overturn(effect, top, bay, case);
        }
        if let Some(rise) = &case.temperatures {
            // Fixings that hold the top flat put this moment in everywhere: it presses the hot outer skin.
            for axis in Axis::BOTH {
                let curvature = thermal_curvature(field, axis, rise).abs();
                down.middle[axis.index()] += per_width(plain(field.rigidity(axis)) * curvature);
            }
        }
        let mut under_load = Length::default();
        if let Some(people) = case.people {
            let count = f64::from(u32::try_from(people.count).unwrap_or(1));
            let effect = state.person()?;
            let stepping = effect.times(people.each * count / one_newton());
            let at_rest = effect.times(people.at_rest * count / one_newton()).sag;
            under_load = effect.times(people.at_rest / one_newton()).sag.abs();
            down.add(&Effect { sag: at_rest, ..stepping });
        }
        let as_forces = |effect: &Effect| BayForces {
            bay: index,
            case: number,
            middle: effect.middle,
            over_pipes: effect.over_pipes.map(MomentPerWidth::abs),
            shear: effect.shear.abs(),
            sag: effect.sag.abs(),
            under_load,
            numerical_error: effect.numerical_error,
        };
        forces.push(as_forces(&down));
        if up.middle != down.middle {
            forces.push(as_forces(&up));
        }
    }
    Ok(forces)
}

/// Adds what wind and roll do to the footings of gear on a bay, from either side: a moment splits into two halves beside
/// the footing and leaves as a couple of shears. On the safe side: nothing spreads beyond the footing's own width.
fn overturn(effect: &mut Effect, top: &Top, bay: &Bay, case: &LoadCase) {
    for gear in top.gear.iter().filter(|gear| case.with_gear && bay.holds(gear.at)) {
        let drag: Force = case.gear_wind * gear.wind_area * gear.drag;
        let roll: Force = gear.mass * (gravity() * case.gear_sideways);
        let force = drag + roll;
        let arm: Ratio = gear.cg_height / gear.footing;
        let moment: MomentPerWidth = per_width(force * arm / 2.0);
        for middle in &mut effect.middle {
            *middle += if *middle < MomentPerWidth::default() { -moment } else { moment };
        }
        let shear: ForcePerWidth = per_width(force * arm / gear.footing);
        effect.shear += if effect.shear < ForcePerWidth::default() { -shear } else { shear };
    }
}

impl Bay {
    /// Whether a line in plan passes through it.
    #[must_use]
    pub fn is_passed_by(&self, line: &Polyline) -> bool {
        Axis::BOTH.into_iter().all(|axis| {
            let (low, high) = line.extent(axis);
            let from = self.from.along(axis);
            high > from && low < from + self.sides[axis.index()]
        })
    }

    /// Its middle.
    #[must_use]
    pub fn middle(&self) -> Point {
        Point { x: self.from.x + self.sides[0] / 2.0, y: self.from.y + self.sides[1] / 2.0 }
    }

    fn holds(&self, place: Point) -> bool {
        place.x >= self.from.x
            && place.x <= self.from.x + self.sides[0]
            && place.y >= self.from.y
            && place.y <= self.from.y + self.sides[1]
    }
}

/// First natural frequency of a bay, its mass with the gear that stands on it spread over it.
///
/// # Errors
///
/// [`PlateFault`] where its sides or stiffnesses make no plate.
pub fn bay_frequency(top: &Top, field: &RegionSection, bay: &Bay, core_left: Ratio) -> Result<Frequency, PlateFault> {
    let plate = plate_of(bay, field, core_left)?;
    let gear = top
        .gear
        .iter()
        .filter(|gear| bay.holds(gear.at))
        .fold(crate::units::Mass::default(), |sum, gear| sum + gear.mass);
    // Gear in the middle of a simply supported plate moves four times the mean square of the first mode.
    let spread = gear * 4.0 / (bay.sides[0] * bay.sides[1]);
    plate.first_frequency(top.field_mass() + spread)
}
