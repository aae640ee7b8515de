//! Load cases as loads on the plate.

use super::{heat::heat, layout::Net, wind::Winds};
use crate::{
    analysis::{gear_action::GearAction, sections::Sections},
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

/// How far a place may lie outside a triangle and still be taken as if it lay within, over its height.
const BESIDE: f64 = 0.05;

/// Points that an area is divided into, along each side.
const POINTS: usize = 6;

/// A case without what moves.
#[derive(Clone, Debug)]
pub(super) struct Still {
    pub(super) case: usize,
    /// What lies still, then what tips gear along and across.
    pub(super) parts: Vec<Solution>,
    /// Heat by itself, which is in what lies still too.
    pub(super) heat: Option<Solution>,
    /// Each direction from which wind and roll may come: which parts act, how many times.
    pub(super) from: Vec<Vec<(usize, f64)>>,
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

    pub(super) fn solve(
        &self,
        sections: &Sections,
        (cases, numbers): (&[LoadCase], &[usize]),
        winds: &Winds,
    ) -> Vec<Still> {
        let (mut loads, mut turns) = (Vec::new(), Vec::with_capacity(numbers.len()));
        for &number in numbers {
            let ways = GearAction::overturning(self.top, &cases[number]);
            turns.push(ways.len());
            let still = self.still(&cases[number], &|triangle| winds.on(number, triangle));
            // A strain counts once, whatever multiplies weight and wind.
            let heat = cases[number].temperatures.as_ref().map(|rise| heat(self.net, self.plate, sections, rise));
            loads.push(heat.iter().fold(still, |still, heat| still.plus(heat, 1.0)));
            loads
                .extend(ways.iter().flat_map(|moments| [Side::X, Side::Y].map(|side| self.overturning(moments, side))));
            loads.extend(heat);
        }
        let mut solved = self.plate.solve(&loads).into_iter();
        let mut stills = Vec::with_capacity(numbers.len());
        for (&case, turns) in numbers.iter().zip(turns) {
            let parts: Vec<Solution> = solved.by_ref().take(1 + 2 * turns).collect();
            let heat = cases[case].temperatures.and_then(|_| solved.next());
            let tipped = (0..turns)
                .flat_map(|turn| DIRECTIONS.map(|(x, y)| vec![(0, 1.0), (1 + 2 * turn, x), (2 + 2 * turn, y)]));
            let from = if turns == 0 { vec![vec![(0, 1.0)]] } else { tipped.collect() };
            stills.push(Still { case, parts, heat, from });
        }
        stills
    }

    /// Weight, wind and pressure.
    fn still(&self, case: &LoadCase, wind: &dyn Fn(usize) -> Pressure) -> Load {
        let masses = self.net.masses(self.top);
        let acceleration: Acceleration = gravity() * case.gravity;
        let pressure = |triangle: usize| {
            let weight: Pressure = masses[self.net.of_triangle[triangle]] * acceleration;
            weight + case.pressure + wind(triangle)
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

    /// Overturning moments at the footings, gear by gear, from one side.
    fn overturning(&self, moments: &[Torque], side: Side) -> Load {
        let mut load = Load::none(self.plate);
        for (gear, &moment) in self.top.gear.iter().zip(moments) {
            if moment == Torque::default() {
                continue;
            }
            // Forces in proportion to the distance from a line make the moment, and none about the line across.
            let points = self.foot(gear.at, &gear.foot);
            let Spread { middle, xx, xy, yy } = Spread::of(&points);
            let whole = xx * yy - xy * xy;
            let [along, across] = match side {
                Side::X => [moment * (yy / whole), -moment * (xy / whole)],
                Side::Y => [-moment * (xy / whole), moment * (xx / whole)],
            };
            for &place in &points {
                let force: Force = along * (place.x - middle.x) + across * (place.y - middle.y);
                load = self.at(load, place, force);
            }
        }
        load
    }

    /// Points of a footing that lie on the top, each for the same share of what acts on it: what hangs over the rim or a hole
    /// bears nothing, and the others bear all. From the outer skin a footing spreads at 45 degrees to the mid-plane.
    pub(super) fn foot(&self, at: Point, foot: &Foot) -> Vec<Point> {
        let spread = self.net.disc * 2.0;
        let wider = match *foot {
            Foot::Rectangle { length, width } => Foot::Rectangle { length: length + spread, width: width + spread },
            Foot::Disc { diameter } => Foot::Disc { diameter: diameter + spread },
        };
        let [length, width] = wider.sizes();
        let on_top = |parts: usize| -> Vec<Point> {
            grid(at, [length, width], parts)
                .into_iter()
                .filter(|place| wider.holds(Point { x: place.x - at.x, y: place.y - at.y }))
                .filter(|place| self.net.mesh.holding(*place).is_some())
                .collect()
        };
        // Of a footing that lies on a tip of the top a closer look finds enough to bear a moment.
        let looks = [POINTS, POINTS * 3, POINTS * 9].into_iter().map(on_top);
        looks.into_iter().find(|points| Spread::of(points).bears_moments()).unwrap_or_else(|| {
            let (triangle, _) = self.onto(at);
            self.plate.corners(triangle).to_vec()
        })
    }

    fn at(&self, load: Load, place: Point, force: Force) -> Load {
        let (triangle, place) = self.onto(place);
        load.with_force(self.plate, triangle, place, force)
    }

    /// The triangle that holds a place. Places on a rounded rim lie beside the straight sides of the triangles, by less than
    /// their tolerance: such a one stays where it is, as if the triangle reached so far. One off the top moves to the middle of
    /// the nearest.
    pub(super) fn onto(&self, place: Point) -> (usize, Point) {
        if let Some(triangle) = self.net.mesh.holding(place) {
            return (triangle, place);
        }
        let outside = |triangle: usize| {
            let [second, third] = self.plate.share(triangle, place);
            (-second).max(-third).max(second + third - 1.0)
        };
        let all = (0..self.plate.triangles()).map(|triangle| (triangle, outside(triangle)));
        let nearest = all.min_by(|a, b| a.1.total_cmp(&b.1)).filter(|(_, outside)| *outside < BESIDE);
        if let Some((triangle, _)) = nearest {
            return (triangle, place);
        }
        let middles = (0..self.plate.triangles()).map(|triangle| (triangle, middle(self.plate.corners(triangle))));
        let nearer =
            |a: &(usize, Point), b: &(usize, Point)| a.1.distance(place).value.total_cmp(&b.1.distance(place).value);
        middles.min_by(nearer).unwrap_or((0, place))
    }
}

#[derive(Clone, Copy)]
enum Side {
    X,
    Y,
}

/// How points lie about their middle.
struct Spread {
    middle: Point,
    xx: Area,
    xy: Area,
    yy: Area,
}

impl Spread {
    fn of(points: &[Point]) -> Self {
        let mean = |sum: Length| sum / count(points);
        let middle = Point {
            x: mean(points.iter().map(|place| place.x).sum()),
            y: mean(points.iter().map(|place| place.y).sum()),
        };
        let sum = |product: &dyn Fn(Length, Length) -> Area| -> Area {
            points.iter().map(|place| product(place.x - middle.x, place.y - middle.y)).sum()
        };
        Self { middle, xx: sum(&|x, _| x * x), xy: sum(&|x, y| x * y), yy: sum(&|_, y| y * y) }
    }

    /// Whether they lie off one line by more than a rounding.
    fn bears_moments(&self) -> bool {
        let Self { xx, xy, yy, .. } = *self;
        xx * yy - xy * xy > 1e-6 * (xx * yy)
    }
}

fn middle([a, b, c]: [Point; 3]) -> Point {
    Point { x: (a.x + b.x + c.x) / 3.0, y: (a.y + b.y + c.y) / 3.0 }
}

#[expect(clippy::cast_precision_loss, reason = "some hundreds of points")]
pub(super) fn count<T>(points: &[T]) -> f64 {
    points.len().max(1) as f64
}

/// Points of a rectangle, each in the middle of its share.
pub(super) fn square(at: Point, length: Length, width: Length) -> Vec<Point> {
    grid(at, [length, width], POINTS)
}

fn grid(at: Point, [length, width]: [Length; 2], parts: usize) -> Vec<Point> {
    #[expect(clippy::cast_precision_loss, reason = "some dozens")]
    let share = |k: usize| (k as f64 + 0.5) / parts as f64 - 0.5;
    let places = (0..parts).flat_map(|i| (0..parts).map(move |j| (i, j)));
    places.map(|(i, j)| Point { x: at.x + length * share(i), y: at.y + width * share(j) }).collect()
}

#[cfg(test)]
mod tests;
