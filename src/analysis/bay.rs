//! Bays that pipes hold on four sides: plate series, with what neighbours and overhangs
//! hold over the pipes.

mod backing;
mod both;
mod bounds;
mod edge;
mod effect;
mod frequency;
mod person;
mod pipe;
mod worst;

pub use backing::{Cover, under_pipe};
pub use bounds::{SagBounds, sag_bounds};
pub use frequency::bay_frequency;
pub use pipe::{OnPipe, PipeLoad, pipe_loads};

use both::{Both, overturn};
use effect::{BayState, Effect, one_newton, one_pascal};

use super::{gear_action::GearAction, layout::StripLayout, sections::Sections, still::thermal_curvature};
use crate::{
    closed_form::plate::{EdgeHold, Plate, PlateFault, PlateStiffness},
    geometry::{Axis, Point, Polyline},
    load::weight::gravity,
    load_case::{Held, LoadCase},
    top::Top,
    units::{
        Acceleration, ArealMassDensity, ForcePerWidth, Length, Mass, MomentPerWidth, Pressure, Ratio, per_width, plain,
    },
};

/// A straight piece of a backing in a bay.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BackingPiece {
    /// The backing, as its place in the list.
    pub backing: usize,
    /// What it covers.
    pub cover: Cover,
}

/// A bay between four pipes.
#[derive(Clone, Debug, PartialEq)]
pub struct Bay {
    /// Its corner with the smallest coordinates.
    pub from: Point,
    /// Its sides along the length and across.
    pub sides: [Length; 2],
    /// The pipes that hold it: two along the length, two across; of each two the one with the smaller coordinate first.
    pub pipes: [usize; 4],
    /// The stiffer of the holds at its two ends along the length, and across.
    pub holds: [EdgeHold; 2],
    /// The backing in it.
    pub backing: Vec<BackingPiece>,
}

/// Push on one of the pipes of a bay; negative where it lifts.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct EdgePush {
    /// By all that stays where it is.
    pub still: ForcePerWidth,
    /// By a person beside the pipe.
    pub moving: ForcePerWidth,
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
    /// Push on each of its pipes.
    pub push: [EdgePush; 4],
    /// Sag in the middle, up or down.
    pub sag: Length,
    /// Pressure all over the bay, down positive: own weight of the field, wind, water.
    pub pressure: Pressure,
    /// Sag by it alone, up or down.
    pub sag_by_pressure: Length,
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
            pipes.iter().map(|&pipe| (top.supports[pipe].along.extent(axis).0, pipe)).collect();
        pipes.sort_by(|a, b| a.0.value.total_cmp(&b.0.value));
        pipes
    };
    let (at_x, at_y) = (ordered(&lengthwise.pipes, Axis::X), ordered(&across.pipes, Axis::Y));
    let mut bays = Vec::new();
    for (i, x) in at_x.windows(2).enumerate() {
        for (j, y) in at_y.windows(2).enumerate() {
            let mut bay = Bay {
                holds: [hold(&at_x, i, top.outline.size(Axis::X)), hold(&at_y, j, top.outline.size(Axis::Y))],
                from: Point { x: x[0].0, y: y[0].0 },
                sides: [x[1].0 - x[0].0, y[1].0 - y[0].0],
                pipes: [y[0].1, y[1].1, x[0].1, x[1].1],
                backing: Vec::new(),
            };
            let pieces = top.backings.iter().enumerate().flat_map(|(backing, of)| {
                let covers = bay.covered_by(&of.along, of.width);
                covers.into_iter().map(move |cover| BackingPiece { backing, cover })
            });
            bay.backing = pieces.collect();
            bays.push(bay);
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
/// Backing in the bay counts where it makes the plate softer, and then as if it lay all over the bay; what it adds to the
/// stiffness is left out, which gives more sag. As in strips, heat and time take nothing off the stiffness of a board.
///
/// # Errors
///
/// [`PlateFault`] where its sides or stiffnesses make no plate.
pub fn plate_of(bay: &Bay, sections: &Sections, core_left: Ratio) -> Result<Plate, PlateFault> {
    let field = sections.field.plate_stiffness(Axis::X, core_left);
    let softest = bay.backing.iter().fold(field, |softest, piece| {
        softer(&softest, &sections.backings[piece.backing].plate_stiffness(Axis::X, Ratio::from(1.0)))
    });
    Plate::new(bay.sides[0], bay.sides[1], softest)
}

/// A plate that is nowhere stiffer than either of two.
fn softer(a: &PlateStiffness, b: &PlateStiffness) -> PlateStiffness {
    PlateStiffness {
        d11: a.d11.min(b.d11),
        d12: a.d12.min(b.d12),
        d22: a.d22.min(b.d22),
        d66: a.d66.min(b.d66),
        shear_x: a.shear_x.min(b.shear_x),
        shear_y: a.shear_y.min(b.shear_y),
    }
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
    sections: &Sections,
    bay: (usize, &Bay),
    cases: &[LoadCase],
    core_left: impl Fn(&LoadCase) -> Ratio,
) -> Result<Vec<BayForces>, PlateFault> {
    let (index, bay) = bay;
    let field = &sections.field;
    let skins = field.lever(Axis::X).max(field.lever(Axis::Y));
    let mut known: Vec<(Ratio, BayState<'_>)> = Vec::new();
    let mut forces = Vec::with_capacity(cases.len());
    for (number, case) in cases.iter().enumerate().filter(|(_, case)| case.held == Held::OnFrame) {
        let left = core_left(case);
        let at = known.iter().position(|(share, _)| *share == left);
        let at = if let Some(at) = at {
            at
        } else {
            known.push((left, BayState::new(top, bay, plate_of(bay, sections, left)?, skins)?));
            known.len() - 1
        };
        let state = &mut known[at].1;
        let acceleration: Acceleration = gravity() * case.gravity;
        // The edge pressure of the wind is taken all over: a bay that reaches the edge zone is not cut in two.
        let wind = if case.wind.edge.abs() > case.wind.interior.abs() { case.wind.edge } else { case.wind.interior };
        let pressure: Pressure = top.field_mass() * acceleration + case.pressure + wind;
        let still = state.pressed().times(pressure / one_pascal());
        let still_sag = still.sag.abs();
        let mut both = Both { down: still, up: still };
        for (mass, effect) in state.backing() {
            both.add(effect, *mass * acceleration);
        }
        if case.with_gear {
            let standing = top.gear.iter().filter(|gear| bay.holds(gear.at));
            for (gear, effect) in standing.zip(state.gear()?) {
                both.add(effect, -GearAction::of(top, gear, case).up);
            }
        }
        overturn(&mut both, top, bay, case);
        let Both { mut down, up } = both;
        if let Some(rise) = &case.temperatures {
            // Fixings that hold the top flat put this moment in everywhere: it presses the hot outer skin.
            for axis in Axis::BOTH {
                let curvature = thermal_curvature(field, axis, rise).abs();
                down.middle[axis.index()] += per_width(plain(field.rigidity(axis)) * curvature);
            }
        }
        let resting = down.push;
        let mut moving = [ForcePerWidth::default(); 4];
        let mut under_load = Length::default();
        if let Some(people) = case.people {
            let count = f64::from(u32::try_from(people.count).unwrap_or(1));
            let effect = state.person()?;
            let stepping = effect.times(people.each * count / one_newton());
            let at_rest = effect.times(people.at_rest * count / one_newton()).sag;
            under_load = effect.times(people.at_rest / one_newton()).sag.abs();
            moving = stepping.push;
            down.add(&Effect { sag: at_rest, ..stepping });
        }
        let as_forces = |effect: &Effect, still: [ForcePerWidth; 4], moving: [ForcePerWidth; 4]| BayForces {
            bay: index,
            case: number,
            middle: effect.middle,
            over_pipes: effect.over_pipes.map(MomentPerWidth::abs),
            shear: effect.shear.abs(),
            push: std::array::from_fn(|edge| EdgePush { still: still[edge], moving: moving[edge] }),
            sag: effect.sag.abs(),
            pressure,
            sag_by_pressure: still_sag,
            under_load,
            numerical_error: effect.numerical_error,
        };
        forces.push(as_forces(&down, resting, moving));
        if up != down {
            forces.push(as_forces(&up, up.push, [ForcePerWidth::default(); 4]));
        }
    }
    Ok(forces)
}

impl Bay {
    /// What a band about a polyline covers of it, piece by piece.
    #[must_use]
    pub fn covered_by(&self, along: &Polyline, width: Length) -> Vec<Cover> {
        backing::covers(along, width, (self.from, self.sides))
    }

    /// Its middle.
    #[must_use]
    pub fn middle(&self) -> Point {
        Point { x: self.from.x + self.sides[0] / 2.0, y: self.from.y + self.sides[1] / 2.0 }
    }

    /// The middle of one of its edges, in the order of its pipes.
    fn on_edge(&self, edge: usize) -> Point {
        let Point { x, y } = self.middle();
        let [a, b] = self.sides;
        match edge {
            0 => Point { x, y: y - b / 2.0 },
            1 => Point { x, y: y + b / 2.0 },
            2 => Point { x: x - a / 2.0, y },
            _ => Point { x: x + a / 2.0, y },
        }
    }

    /// What its backing weighs more than core in its place, spread over it; less than nothing where it is lighter.
    #[must_use]
    pub fn backing_mass(&self, top: &Top) -> ArealMassDensity {
        let more = self.backing.iter().fold(Mass::default(), |sum, piece| sum + beyond_core(top, piece));
        more / (self.sides[0] * self.sides[1])
    }

    fn holds(&self, place: Point) -> bool {
        place.x >= self.from.x
            && place.x <= self.from.x + self.sides[0]
            && place.y >= self.from.y
            && place.y <= self.from.y + self.sides[1]
    }
}

/// What a piece of backing weighs more than core in its place.
fn beyond_core(top: &Top, piece: &BackingPiece) -> Mass {
    (top.backing_mass(&top.backings[piece.backing]) - top.field_mass()) * piece.cover.area
}
