//! Bays that pipes hold on four sides: plate series, with the clamped bound for what the pipes see.

use uom::si::ratio::ratio;

use super::{layout::StripLayout, sections::RegionSection};
use crate::{
    closed_form::plate::{Plate, PlateFault, PlateLoad, clamped_plate_uniform},
    geometry::{Axis, Point},
    load::weight::gravity,
    load_case::LoadCase,
    top::Top,
    units::{Acceleration, Force, ForcePerWidth, Frequency, Length, MomentPerWidth, Pressure, Ratio, per_width},
};

/// Error that the series is summed to.
fn tolerance() -> Ratio {
    Ratio::new::<ratio>(2e-3)
}

/// A bay between four pipes.
#[derive(Clone, Debug, PartialEq)]
pub struct Bay {
    /// Its corner with the smallest coordinates.
    pub from: Point,
    /// Its sides along the length and across.
    pub sides: [Length; 2],
    /// The pipes that hold it: two along the length, two across.
    pub pipes: [usize; 4],
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
    /// Moments over the pipes if the bay is clamped there, hogging positive.
    pub over_pipes: [MomentPerWidth; 2],
    /// Shear at the pipes or beside a person.
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
    for x in at_x.windows(2) {
        for y in at_y.windows(2) {
            bays.push(Bay {
                from: Point { x: x[0].0, y: y[0].0 },
                sides: [x[1].0 - x[0].0, y[1].0 - y[0].0],
                pipes: [y[0].1, y[1].1, x[0].1, x[1].1],
            });
        }
    }
    bays
}

/// A bay as a plate, with a share of the core's shear modulus left.
///
/// # Errors
///
/// [`PlateFault`] where its sides or stiffnesses make no plate.
pub fn plate_of(bay: &Bay, field: &RegionSection, core_left: Ratio) -> Result<Plate, PlateFault> {
    Plate::new(bay.sides[0], bay.sides[1], field.plate_stiffness(Axis::X, core_left))
}

/// What a bay does under one pascal, and under the people of the service, in one state of the core.
#[derive(Clone, Debug, PartialEq)]
struct Unit {
    middle: [MomentPerWidth; 2],
    over_pipes: [MomentPerWidth; 2],
    shear: ForcePerWidth,
    sag: Length,
    numerical_error: Ratio,
}

/// Places along a quarter of each side where a person is tried; the bay mirrors them.
const TRIED: u32 = 6;

/// Forces of a bay under every case that acts on the frame.
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
    let mut known: Vec<(Ratio, Plate, Unit)> = Vec::new();
    let mut forces = Vec::with_capacity(cases.len());
    for (number, case) in cases.iter().enumerate().filter(|(_, case)| case.held == crate::load_case::Held::OnFrame) {
        let left = core_left(case);
        let at = match known.iter().position(|(share, ..)| *share == left) {
            Some(at) => at,
            None => {
                let plate = plate_of(bay, field, left)?;
                let unit = under_unit_pressure(bay, &plate)?;
                known.push((left, plate, unit));
                known.len() - 1
            }
        };
        let (_, plate, unit) = &known[at];
        let acceleration: Acceleration = gravity() * case.gravity;
        // The edge pressure of the wind is taken all over: a bay that reaches the edge zone is not cut in two.
        let wind = if case.wind.edge.abs() > case.wind.interior.abs() { case.wind.edge } else { case.wind.interior };
        let pressure: Pressure = top.field_mass() * acceleration + case.pressure + wind;
        let times = pressure.get::<uom::si::pressure::pascal>();
        let mut here = BayForces {
            bay: index,
            case: number,
            middle: unit.middle.map(|moment| moment * times),
            over_pipes: unit.over_pipes.map(|moment| (moment * times).abs()),
            shear: (unit.shear * times).abs(),
            sag: (unit.sag * times).abs(),
            under_load: Length::default(),
            numerical_error: unit.numerical_error,
        };
        let mut loads: Vec<([Force; 2], Length)> = Vec::new();
        if let Some(people) = case.people {
            let count = f64::from(u32::try_from(people.count).unwrap_or(1));
            loads.push(([people.each * count, people.at_rest * count], top.criteria.standing_footprint.value));
        }
        for load in &loads {
            add_moving(&mut here, bay, plate, *load, None)?;
        }
        if case.with_gear {
            for gear in top.gear.iter().filter(|gear| bay.holds(gear.at)) {
                let at = [gear.at.x - bay.from.x, gear.at.y - bay.from.y];
                add_moving(&mut here, bay, plate, ([gear.mass * acceleration; 2], gear.footing), Some(at))?;
            }
        }
        forces.push(here);
    }
    Ok(forces)
}

impl Bay {
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

fn under_unit_pressure(bay: &Bay, plate: &Plate) -> Result<Unit, PlateFault> {
    let pascal = Pressure::new::<uom::si::pressure::pascal>(1.0);
    let load = PlateLoad::Uniform(pascal);
    let middle = plate.at(&load, [bay.sides[0] / 2.0, bay.sides[1] / 2.0], tolerance())?;
    let (shear, error) = plate.edge_shear(&load, tolerance())?;
    let clamped = clamped_plate_uniform(plate, pascal)?;
    Ok(Unit {
        middle: [middle.mx, middle.my],
        over_pipes: [clamped.edge_x.abs(), clamped.edge_y.abs()],
        shear,
        sag: middle.deflection,
        numerical_error: error.max(middle.numerical_error.deflection).max(clamped.numerical_error),
    })
}

/// Adds a load on a square, at a place or at the worst of many.
fn add_moving(
    forces: &mut BayForces,
    bay: &Bay,
    plate: &Plate,
    ([force, at_rest], side): ([Force; 2], Length),
    at: Option<[Length; 2]>,
) -> Result<(), PlateFault> {
    let patch = |centre: [Length; 2]| {
        let half: Length = side / 2.0;
        let inside = [0, 1].map(|i| centre[i].max(half).min(bay.sides[i] - half));
        (PlateLoad::Patch { force, centre: inside, size: [side; 2] }, inside)
    };
    let places: Vec<[Length; 2]> = match at {
        Some(at) => vec![at],
        None => {
            let steps = || (1..=TRIED).map(|step| f64::from(step) / f64::from(TRIED) / 2.0);
            steps()
                .flat_map(|x| steps().map(move |y| (x, y)))
                .map(|(x, y)| [bay.sides[0] * x, bay.sides[1] * y])
                .collect()
        }
    };
    let coarse = Ratio::new::<ratio>(2e-2);
    let mut worst = [MomentPerWidth::default(); 2];
    let mut sink = Length::default();
    for centre in places {
        let (load, inside) = patch(centre);
        let here = plate.at(&load, inside, coarse)?;
        worst[0] = if here.mx.abs() > worst[0].abs() { here.mx } else { worst[0] };
        worst[1] = if here.my.abs() > worst[1].abs() { here.my } else { worst[1] };
        sink = sink.max(here.deflection.abs());
        forces.numerical_error = forces.numerical_error.max(here.numerical_error.moment);
    }
    // Flush with the middle of each pipe, nearly all of the load goes to that pipe.
    let (x, y) = (bay.sides[0] / 2.0, bay.sides[1] / 2.0);
    let mut shear = ForcePerWidth::default();
    let beside = at.map_or_else(|| vec![[Length::default(), y], [x, Length::default()]], |at| vec![at]);
    for centre in beside {
        let (load, _) = patch(centre);
        shear = shear.max(plate.edge_shear(&load, coarse)?.0);
    }
    for (i, worst) in worst.into_iter().enumerate() {
        forces.middle[i] += worst;
        forces.over_pipes[i] += clamped_strip_moment(force.abs(), side, bay.sides[i]);
    }
    forces.shear += shear;
    let still: Length = sink * (at_rest / force).abs();
    forces.sag += still;
    if at.is_none() {
        forces.under_load = forces.under_load.max(still);
    }
    Ok(())
}

/// Moment over a pipe from a load in the bay, if the bay is clamped there: the worst place along a strip.
///
/// ```text
/// m = max over x of  P x (L − x)² / (L² b(x))        b = 1.72 x (1 − x/L) + a
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *P*, *a* | force, and the side of the square that it presses on |
/// | *L*, *x* | span, and distance of the load from the pipe |
/// | *b* | width of a continuous strip that carries the load |
///
/// # Validity
///
/// A bound: no pipe clamps the top wholly, and the other two pipes take their share.
///
/// # Source
///
/// Beam clamped at both ends, [`DERIVED`](crate::source::DERIVED); width by
/// [`IS_456_2000`](crate::source::IS_456_2000), clause 24.3.2.1, for continuous slabs (from memory).
fn clamped_strip_moment(force: Force, side: Length, span: Length) -> MomentPerWidth {
    let steps = 40;
    (1..steps)
        .map(|step| {
            let x: Length = span * f64::from(step) / f64::from(steps);
            let left: Ratio = (span - x) / span;
            let width: Length = x * 1.72 * left + side;
            per_width(force * (x / width) * left * left)
        })
        .fold(MomentPerWidth::default(), MomentPerWidth::max)
}

/// First natural frequency of a bay, its mass with the gear that stands on it spread over it.
///
/// # Errors
///
/// [`PlateFault`] as for [`Plate::new`].
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
