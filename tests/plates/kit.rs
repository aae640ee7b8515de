//! Plates on regular and disturbed meshes.

use skinspan::{
    finite_element::{Bed, Degree, Fields, Held, Load, Mechanism, Model, Plate, ShellStiffness, Solution, State},
    geometry::Point,
    units::{Force, ForcePerWidth, Length, Pressure, per_width},
};
use uom::si::{force::newton, length::meter, pressure::pascal};

pub fn m(x: f64) -> Length {
    Length::new::<meter>(x)
}

pub fn pa(x: f64) -> Pressure {
    Pressure::new::<pascal>(x)
}

pub fn n(x: f64) -> Force {
    Force::new::<newton>(x)
}

pub fn per_m(x: f64) -> ForcePerWidth {
    per_width(n(x) / m(1.0))
}

pub fn point(x: f64, y: f64) -> Point {
    Point { x: m(x), y: m(y) }
}

/// An isotropic plate.
pub fn isotropic(d: f64, nu: f64, shear: f64) -> ShellStiffness {
    orthotropic([[d, nu * d, 0.0], [nu * d, d, 0.0], [0.0, 0.0, 0.5 * (1.0 - nu) * d]], [shear; 2])
}

pub fn orthotropic(d: [[f64; 3]; 3], shear: [f64; 2]) -> ShellStiffness {
    let rigidity = d.map(|row| row.map(|value| per_width(n(value) * m(1.0))));
    ShellStiffness::of_plate(rigidity, shear.map(per_m))
}

/// A rectangle cut into triangles along given coordinates.
#[derive(Clone)]
pub struct Grid {
    pub corners: Vec<Point>,
    pub triangles: Vec<[usize; 3]>,
    xs: Vec<f64>,
    ys: Vec<f64>,
}

pub fn steps(from: f64, to: f64, count: usize) -> Vec<f64> {
    (0..=count).map(|k| from + (to - from) * k as f64 / count as f64).collect()
}

impl Grid {
    /// The diagonals run by turns, so that the grid is its own mirror image where the coordinates are.
    pub fn new(xs: &[f64], ys: &[f64]) -> Self {
        let at = |i: usize, j: usize| j * xs.len() + i;
        let corners = ys.iter().flat_map(|&y| xs.iter().map(move |&x| point(x, y))).collect();
        let mut triangles = Vec::new();
        for j in 1..ys.len() {
            for i in 1..xs.len() {
                let [a, b, c, d] = [at(i - 1, j - 1), at(i, j - 1), at(i, j), at(i - 1, j)];
                if (i + j) % 2 == 0 {
                    triangles.extend([[a, b, c], [a, c, d]]);
                } else {
                    triangles.extend([[a, b, d], [b, c, d]]);
                }
            }
        }
        Self { corners, triangles, xs: xs.to_vec(), ys: ys.to_vec() }
    }

    /// Moves the corners inside, by a share of a step, in a fixed disorder.
    pub fn disturbed(mut self, share: f64) -> Self {
        let columns = self.xs.len();
        for j in 1..self.ys.len() - 1 {
            for i in 1..columns - 1 {
                let step = (self.xs[i + 1] - self.xs[i]).min(self.ys[j + 1] - self.ys[j]);
                let (p, q) = ((7 * i + 13 * j) as f64, (11 * i + 5 * j) as f64);
                let corner = &mut self.corners[j * columns + i];
                corner.x += m(share * step * p.sin());
                corner.y += m(share * step * q.cos());
            }
        }
        self
    }

    /// Corners along a line of constant `y`, from one `x` to another.
    pub fn along_x(&self, y: f64, [from, to]: [f64; 2]) -> Vec<usize> {
        let j = self.ys.iter().position(|&own| (own - y).abs() < 1e-9).unwrap();
        let within = |x: f64| x > from - 1e-9 && x < to + 1e-9;
        (0..self.xs.len()).filter(|&i| within(self.xs[i])).map(|i| j * self.xs.len() + i).collect()
    }

    pub fn along_y(&self, x: f64, [from, to]: [f64; 2]) -> Vec<usize> {
        let i = self.xs.iter().position(|&own| (own - x).abs() < 1e-9).unwrap();
        let within = |y: f64| y > from - 1e-9 && y < to + 1e-9;
        (0..self.ys.len()).filter(|&j| within(self.ys[j])).map(|j| j * self.xs.len() + i).collect()
    }

    /// The four edges: at least y, most y, least x, most x.
    pub fn edges(&self) -> [Vec<usize>; 4] {
        let [x, y] = [&self.xs, &self.ys].map(|list| [list[0], list[list.len() - 1]]);
        [self.along_x(y[0], x), self.along_x(y[1], x), self.along_y(x[0], y), self.along_y(x[1], y)]
    }

    /// Edges held against deflection and against turning along the edge.
    pub fn simply_supported(&self) -> Vec<(Vec<usize>, Held)> {
        let [low, high, left, right] = self.edges();
        let along_x = Held { deflection: true, rotations: [true, false], ..Held::default() };
        let along_y = Held { deflection: true, rotations: [false, true], ..Held::default() };
        vec![(low, along_x), (high, along_x), (left, along_y), (right, along_y)]
    }

    pub fn plate(&self, degree: Degree, shell: &ShellStiffness, held: &[(Vec<usize>, Held)], beds: &[Bed]) -> Plate {
        self.with(degree, Fields::Bending, &|_| *shell, held, beds)
    }

    pub fn with(
        &self,
        degree: Degree,
        fields: Fields,
        shells: &dyn Fn(usize) -> ShellStiffness,
        held: &[(Vec<usize>, Held)],
        beds: &[Bed],
    ) -> Plate {
        self.tried(degree, fields, shells, held, beds).unwrap()
    }

    pub fn tried(
        &self,
        degree: Degree,
        fields: Fields,
        shells: &dyn Fn(usize) -> ShellStiffness,
        held: &[(Vec<usize>, Held)],
        beds: &[Bed],
    ) -> Result<Plate, Mechanism> {
        let model = Model { corners: &self.corners, triangles: &self.triangles, degree, fields, shells, held, beds };
        Plate::new(&model)
    }

    /// A load along a line of the mesh, even on it, exact for what the fields of any degree can do.
    pub fn pushed_along(&self, plate: &Plate, line: &[usize], per_length: f64) -> Load {
        line.windows(2).fold(Load::none(plate), |load, side| {
            let triangle =
                self.triangles.iter().position(|own| side.iter().all(|corner| own.contains(corner))).unwrap();
            let [a, b] = [side[0], side[1]].map(|corner| self.corners[corner]);
            let length = a.distance(b).value;
            gauss().into_iter().fold(load, |load, (at, weight)| {
                let place = Point { x: a.x + at * (b.x - a.x), y: a.y + at * (b.y - a.y) };
                load.with_force(plate, triangle, place, n(per_length * length * weight))
            })
        })
    }

    /// Middle of a triangle.
    pub fn middle(&self, triangle: usize) -> [f64; 2] {
        let corners = self.triangles[triangle].map(|corner| self.corners[corner]);
        [
            corners.iter().map(|corner| corner.x.value).sum::<f64>() / 3.0,
            corners.iter().map(|c| c.y.value).sum::<f64>() / 3.0,
        ]
    }

    pub fn xs(&self) -> &[f64] {
        &self.xs
    }

    pub fn ys(&self) -> &[f64] {
        &self.ys
    }

    /// The triangle that holds a place; where several meet, the one whose middle lies nearest to `towards`.
    pub fn holding(&self, place: Point, towards: Point) -> usize {
        let within = |triangle: &usize| {
            let [a, b, c] = self.triangles[*triangle].map(|corner| self.corners[corner]);
            let turn = |from: Point, to: Point| {
                (to.x - from.x).value * (place.y - from.y).value - (to.y - from.y).value * (place.x - from.x).value
            };
            [turn(a, b), turn(b, c), turn(c, a)].into_iter().all(|twice_area| twice_area > -1e-9)
        };
        let far = |triangle: usize| {
            let [x, y] = self.middle(triangle);
            (x - towards.x.value).hypot(y - towards.y.value)
        };
        (0..self.triangles.len()).filter(within).min_by(|&a, &b| far(a).total_cmp(&far(b))).unwrap()
    }

    /// What the plate does at a place, in the triangle that [`holding`](Self::holding) finds.
    pub fn state(&self, plate: &Plate, solution: &Solution, place: Point, towards: Point) -> State {
        let triangle = self.holding(place, towards);
        plate.states(triangle, &[plate.share(triangle, place)], solution)[0]
    }
}

/// Rounding of some thousand unknowns.
pub const ROUNDING: f64 = 1e-9;

/// The plate under an even pressure.
pub fn pressed(plate: &Plate, pressure: f64) -> Solution {
    plate.solve(&[Load::none(plate).pressed(plate, &|_| pa(pressure))]).remove(0)
}

pub const DEGREES: [Degree; 3] = [Degree::Two, Degree::Three, Degree::Four];

/// Points from 0 to 1 and their weights: exact to degree 5.
pub fn gauss() -> [(f64, f64); 3] {
    let off = 0.5 * 0.6_f64.sqrt();
    [(0.5 - off, 5.0 / 18.0), (0.5, 4.0 / 9.0), (0.5 + off, 5.0 / 18.0)]
}

/// Six points: exact to degree 11. Digits from memory; that they are right shows in the rates.
pub fn six() -> [(f64, f64); 6] {
    let half = [
        (0.2386191860831969, 0.467913934572691),
        (0.6612093864662645, 0.3607615730481386),
        (0.932469514203152, 0.1713244923791703),
    ];
    std::array::from_fn(|k| {
        let (at, weight) = half[k / 2];
        (0.5 * (1.0 + if k % 2 == 0 { -at } else { at }), 0.5 * weight)
    })
}

/// The nine numbers of a state: deflection, forces, moments, shears.
pub fn numbers(state: &State) -> [f64; 9] {
    let (force, moment) = (state.resultants.force, state.resultants.moment);
    [
        state.deflection.value,
        force.x.value,
        force.y.value,
        force.xy.value,
        moment.x.value,
        moment.y.value,
        moment.xy.value,
        state.shear[0].value,
        state.shear[1].value,
    ]
}

/// Corners, middles of sides and a place inside of every triangle, with what the plate does there.
pub fn everywhere(plate: &Plate, solution: &Solution) -> Vec<([f64; 2], [f64; 9])> {
    let shares = [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [0.5, 0.0], [0.5, 0.5], [0.0, 0.5], [0.3, 0.4]];
    let of = |triangle: usize| {
        let states = plate.states(triangle, &shares, solution);
        shares.into_iter().zip(states).map(move |(share, state)| (plate.place(triangle, share), numbers(&state)))
    };
    (0..plate.triangles()).flat_map(of).map(|(place, numbers)| ([place.x.value, place.y.value], numbers)).collect()
}

/// Every number of two lists alike, within a share of the largest of its kind; `scales` where the exact one is nothing.
pub fn assert_alike(found: &[[f64; 9]], exact: &[[f64; 9]], share: f64, scales: [f64; 9]) {
    assert_eq!(found.len(), exact.len());
    for kind in 0..9 {
        let largest = exact.iter().map(|numbers| numbers[kind].abs()).fold(scales[kind], f64::max);
        for (own, other) in found.iter().zip(exact) {
            let off = (own[kind] - other[kind]).abs();
            assert!(off <= share * largest, "number {kind}: {} beside {}, largest {largest}", own[kind], other[kind]);
        }
    }
}

pub fn bed(corners: Vec<usize>, stiffness: f64) -> Bed {
    Bed { corners, stiffness: pa(stiffness), beam: None }
}

pub fn sandwich() -> ShellStiffness {
    isotropic(4500.0, 0.3, 1.2e6)
}

/// Pressure and a force off the middle.
pub fn lopsided(grid: &Grid, plate: &Plate) -> Load {
    let place = point(0.37, 0.66);
    Load::none(plate).pressed(plate, &|_| pa(1000.0)).with_force(plate, grid.holding(place, place), place, n(700.0))
}

/// Force, and its moments about the axes.
pub fn sums(forces: impl Iterator<Item = (f64, Point)>) -> [f64; 3] {
    forces.fold([0.0; 3], |[all, x, y], (force, at)| [all + force, x + force * at.x.value, y + force * at.y.value])
}
