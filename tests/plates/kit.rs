//! Plates on regular and disturbed meshes.

use skinspan::{
    finite_element::{Bed, Degree, Fields, Held, Load, Model, Plate, ShellStiffness, Solution, State},
    geometry::Point,
    units::{Force, ForcePerWidth, Length, MomentPerWidth, Pressure, per_width},
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

    pub fn plate(&self, degree: Degree, shell: ShellStiffness, held: &[(Vec<usize>, Held)], beds: &[Bed]) -> Plate {
        self.with(degree, Fields::Bending, &|_| shell, held, beds)
    }

    pub fn with(
        &self,
        degree: Degree,
        fields: Fields,
        shells: &dyn Fn(usize) -> ShellStiffness,
        held: &[(Vec<usize>, Held)],
        beds: &[Bed],
    ) -> Plate {
        let model = Model { corners: &self.corners, triangles: &self.triangles, degree, fields, shells, held, beds };
        Plate::new(&model).unwrap()
    }

    /// What the plate does at a place: in the triangle whose middle lies nearest to `towards`, where several meet.
    pub fn state(&self, plate: &Plate, solution: &Solution, place: Point, towards: Point) -> State {
        let holds = |triangle: &usize| {
            let [xi, eta] = plate.share(*triangle, place);
            xi > -1e-9 && eta > -1e-9 && xi + eta < 1.0 + 1e-9
        };
        let middle = |triangle: usize| plate.place(triangle, [1.0 / 3.0; 2]);
        let triangle = (0..self.triangles.len())
            .filter(holds)
            .min_by(|&a, &b| middle(a).distance(towards).value.total_cmp(&middle(b).distance(towards).value))
            .unwrap();
        plate.states(triangle, &[plate.share(triangle, place)], solution)[0]
    }
}

/// The plate under an even pressure.
pub fn pressed(plate: &Plate, pressure: f64) -> Solution {
    plate.solve(&[Load::none(plate).pressed(plate, &|_| pa(pressure))]).remove(0)
}

pub fn moment(x: MomentPerWidth) -> f64 {
    x.value
}
