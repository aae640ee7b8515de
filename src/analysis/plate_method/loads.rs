//! Load cases as loads on the plate.

use super::{layout::Net, wind};
use crate::{
    analysis::gear_action::GearAction,
    finite_element::{Load, Plate, Solution},
    geometry::{Foot, Point},
    load::weight::gravity,
    load_case::LoadCase,
    top::Top,
    units::{Acceleration, Area, Force, Length, Pressure, Torque},
};

const SLANTED: f64 = std::f64::consts::FRAC_1_SQRT_2;

/// Directions from which wind, roll and hands tip gear: between two of them at most a twelfth of a peak is missed.
const DIRECTIONS: [(f64, f64); 8] = [
    (1.0, 0.0),
    (SLANTED, SLANTED),
    (0.0, 1.0),
    (-SLANTED, SLANTED),
    (-1.0, 0.0),
    (-SLANTED, -SLANTED),
    (0.0, -1.0),
    (SLANTED, -SLANTED),
];

/// Points that an area is divided into, along each side.
const POINTS: usize = 6;

/// A case without what moves: one solution for each direction from which wind and roll may come.
#[derive(Clone, Debug)]
pub(super) struct Still {
    pub(super) case: usize,
    pub(super) from: Vec<Solution>,
}

pub(super) struct StillLoads<'a> {
    top: &'a Top,
    net: &'a Net,
    plate: &'a Plate,
}

impl<'a> StillLoads<'a> {
    pub(super) const fn new(top: &'a Top, net: &'a Net, plate: &'a Plate) -> Self {
        Self { top, net, plate }
    }

    pub(super) fn solve(&self, cases: &[LoadCase], numbers: &[usize]) -> Vec<Still> {
        let loads: Vec<Load> = numbers
            .iter()
            .flat_map(|&number| {
                let case = &cases[number];
                [self.still(case), self.overturning(case, Side::X), self.overturning(case, Side::Y)]
            })
            .collect();
        let solved = self.plate.solve(&loads);
        numbers
            .iter()
            .zip(solved.chunks_exact(3))
            .map(|(&case, parts)| {
                let tips = self
                    .top
                    .gear
                    .iter()
                    .any(|gear| GearAction::of(self.top, gear, &cases[case]).moment != Torque::default());
                let from = if tips {
                    DIRECTIONS
                        .iter()
                        .filter_map(|&(x, y)| Solution::sum(&[(&parts[0], 1.0), (&parts[1], x), (&parts[2], y)]))
                        .collect()
                } else {
                    vec![parts[0].clone()]
                };
                Still { case, from }
            })
            .collect()
    }

    /// Weight, wind and pressure. Heat is not among it: how far the pipes hold down a top that would bow hangs on the play
    /// of its fixings, which a line that holds all along does not have.
    fn still(&self, case: &LoadCase) -> Load {
        let masses = self.net.masses(self.top);
        let acceleration: Acceleration = gravity() * case.gravity;
        let pressure = |triangle: usize| {
            let weight: Pressure = masses[self.net.of_triangle[triangle]] * acceleration;
            weight + case.pressure + wind::on_triangle(self.top, case, self.plate.corners(triangle))
        };
        let mut load = Load::none(self.plate).pressed(self.plate, &pressure);
        for (place, mass) in self.net.rim_masses(self.top) {
            load = self.at(load, place, mass * acceleration);
        }
        for gear in &self.top.gear {
            let force: Force = -GearAction::of(self.top, gear, case).up;
            if force != Force::default() {
                let points = self.foot(gear.at, &gear.foot);
                let each = force / count(&points);
                load = points.iter().fold(load, |load, &place| self.at(load, place, each));
            }
        }
        load
    }

    /// Overturning moments at the footings, from one side.
    fn overturning(&self, case: &LoadCase, side: Side) -> Load {
        let mut load = Load::none(self.plate);
        for gear in &self.top.gear {
            let moment = GearAction::of(self.top, gear, case).moment;
            if moment == Torque::default() {
                continue;
            }
            let points = self.foot(gear.at, &gear.foot);
            let arm = |place: Point| match side {
                Side::X => place.x - gear.at.x,
                Side::Y => place.y - gear.at.y,
            };
            let mean = points.iter().map(|&place| arm(place)).fold(Length::default(), |a, b| a + b) / count(&points);
            let squares: Area = points.iter().map(|&place| (arm(place) - mean) * (arm(place) - mean)).sum();
            if squares > Area::default() {
                for &place in &points {
                    load = self.at(load, place, moment * ((arm(place) - mean) / squares));
                }
            }
        }
        load
    }

    /// Points of a footing that lie on the top, each for the same area; from the outer skin it spreads at 45 degrees to the
    /// mid-plane.
    pub(super) fn foot(&self, at: Point, foot: &Foot) -> Vec<Point> {
        let spread = self.net.disc * 2.0;
        let wider = match *foot {
            Foot::Rectangle { length, width } => Foot::Rectangle { length: length + spread, width: width + spread },
            Foot::Disc { diameter } => Foot::Disc { diameter: diameter + spread },
        };
        let [length, width] = wider.sizes();
        square(at, length, width)
            .into_iter()
            .filter(|place| wider.holds(Point { x: place.x - at.x, y: place.y - at.y }))
            .filter(|place| self.net.mesh.holding(*place).is_some())
            .collect()
    }

    fn at(&self, load: Load, place: Point, force: Force) -> Load {
        match self.net.mesh.holding(place) {
            Some(triangle) => load.with_force(self.plate, triangle, place, force),
            None => load,
        }
    }
}

#[derive(Clone, Copy)]
enum Side {
    X,
    Y,
}

#[expect(clippy::cast_precision_loss, reason = "a dozen points")]
pub(super) fn count(points: &[Point]) -> f64 {
    points.len().max(1) as f64
}

/// Points of a rectangle, each in the middle of its share.
pub(super) fn square(at: Point, length: Length, width: Length) -> Vec<Point> {
    let mut points = Vec::with_capacity(POINTS * POINTS);
    for i in 0..POINTS {
        for j in 0..POINTS {
            #[expect(clippy::cast_precision_loss, reason = "four")]
            let share = |k: usize| (k as f64 + 0.5) / POINTS as f64 - 0.5;
            points.push(Point { x: at.x + length * share(i), y: at.y + width * share(j) });
        }
    }
    points
}
