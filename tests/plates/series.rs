//! Simply supported rectangles against exact series, and the rates at which they are approached.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use skinspan::{
    closed_form::plate::{Plate as Rectangle, PlateLoad, PlateStiffness},
    finite_element::{Degree, Load, Plate},
    geometry::Point,
    units::{Ratio, per_width},
};

use crate::kit::{DEGREES, Grid, isotropic, m, n, numbers, pa, per_m, point, pressed, six, steps};

/// Of the series, whose tail is cut: a hundredth of the least that is asserted.
const SERIES: f64 = 1e-5;

#[test]
fn the_usual_mesh_has_the_deflection_to_a_thousandth_and_forces_to_a_hundredth() {
    let (d, nu) = (4500.0, 0.3);
    for shear in [1.2e6, 1e5] {
        let stiffness = PlateStiffness::isotropic(per_width(n(d) * m(1.0)), Ratio::from(nu), per_m(shear));
        let exact = Rectangle::new(m(1.0), m(0.7), stiffness).unwrap();
        let load = PlateLoad::Uniform(pa(1000.0));
        let middle = exact.at(&load, [m(0.5), m(0.35)], Ratio::from(SERIES)).unwrap();
        let (edge, _) = exact.edge_shear(&load, Ratio::from(1e-3)).unwrap();
        let grid = Grid::new(&steps(0.0, 1.0, 8), &steps(0.0, 0.7, 8));
        let plate = grid.plate(Degree::Four, &isotropic(d, nu, shear), &grid.simply_supported(), &[]);
        let solution = pressed(&plate, 1000.0);
        let [w, .., mx, my, _, _, _] = numbers(&grid.state(&plate, &solution, point(0.5, 0.35), point(0.4, 0.3)));
        let [.., q] = numbers(&grid.state(&plate, &solution, point(0.5, 0.0), point(0.4, 0.3)));
        assert_relative_eq!(w, middle.deflection.value, max_relative = 1e-4);
        assert_relative_eq!(mx, middle.mx.value, max_relative = 1e-3);
        assert_relative_eq!(my, middle.my.value, max_relative = 1e-3);
        // Downwards inside the edge at y = 0: the plate hangs on it.
        assert_relative_eq!(q, edge.value, max_relative = 1e-2);
    }
}

/// From four cells a side to eight the rate is not yet that of the limit.
const STILL_COARSE: f64 = 0.35;

/// A pressure of one half-wave each way on a rectangle has the shape of itself: the exact solution is one term.
struct Wave {
    a: f64,
    b: f64,
    pressure: f64,
    deflection: f64,
    /// Shears at the middles of the edges.
    shear: [f64; 2],
}

impl Wave {
    fn new(a: f64, b: f64, d: f64, s: f64, pressure: f64) -> Self {
        // Isotropic: D ∇⁴ of the bending part is the load, S ∇² of the shear part is less it.
        let (alpha, beta) = (PI / a, PI / b);
        let waves = alpha * alpha + beta * beta;
        let shear = [alpha, beta].map(|own| pressure * own / waves);
        Self { a, b, pressure, deflection: pressure / (d * waves * waves) + pressure / (s * waves), shear }
    }

    fn phases(&self, at: Point) -> [f64; 2] {
        [PI * at.x.value / self.a, PI * at.y.value / self.b]
    }

    fn shear(&self, at: Point) -> [f64; 2] {
        let [x, y] = self.phases(at);
        [self.shear[0] * x.cos() * y.sin(), self.shear[1] * x.sin() * y.cos()]
    }
}

/// Shares and weights within a triangle (of its area); exact to degree `2 n − 2` for rules of `n` points.
fn within(rule: &[(f64, f64)]) -> Vec<([f64; 2], f64)> {
    let pairs = rule.iter().flat_map(|&first| rule.iter().map(move |&second| (first, second)));
    pairs.map(|((x, v), (y, w))| ([x, y * (1.0 - x)], 2.0 * v * w * (1.0 - x))).collect()
}

struct Errors {
    /// Of the deflection's mean, weighted by the load: twice the energy.
    weighted_deflection: f64,
    /// Root of the mean square.
    deflection: f64,
    shear: f64,
}

fn errors(degree: Degree, count: usize) -> Errors {
    let (d, nu, s) = (4500.0, 0.3, 1e5);
    let wave = Wave::new(1.0, 0.7, d, s, 1000.0);
    let grid = Grid::new(&steps(0.0, wave.a, count), &steps(0.0, wave.b, count));
    let plate = grid.plate(degree, &isotropic(d, nu, s), &grid.simply_supported(), &[]);
    let places = within(&six());
    let each = |plate: &Plate| (0..plate.triangles()).collect::<Vec<_>>();
    let load = each(&plate).into_iter().fold(Load::none(&plate), |load, triangle| {
        places.iter().fold(load, |load, &(share, weight)| {
            let place = plate.place(triangle, share);
            let [x, y] = wave.phases(place);
            let pressure = wave.pressure * x.sin() * y.sin() * weight;
            load.with_force(&plate, triangle, place, plate.carried(triangle, pa(pressure)))
        })
    });
    let solution = plate.solve(std::slice::from_ref(&load)).remove(0);
    let work = wave.pressure * wave.deflection * wave.a * wave.b / 4.0;
    let (mut of_deflection, mut of_shear) = (0.0, 0.0);
    for triangle in each(&plate) {
        let shares: Vec<_> = places.iter().map(|&(share, _)| share).collect();
        for (state, &(share, weight)) in plate.states(triangle, &shares, &solution).iter().zip(&places) {
            let at = plate.place(triangle, share);
            let [x, y] = wave.phases(at);
            let area = plate.carried(triangle, pa(weight)).value;
            let exact = wave.shear(at);
            of_deflection += area * (state.deflection.value - wave.deflection * x.sin() * y.sin()).powi(2);
            of_shear += area * (0..2).map(|i| (state.shear[i].value - exact[i]).powi(2)).sum::<f64>();
        }
    }
    Errors {
        weighted_deflection: 1.0 - plate.work(&load, &solution).value / work,
        deflection: of_deflection.sqrt() / wave.deflection,
        shear: of_shear.sqrt() / wave.shear[1],
    }
}

#[test]
fn errors_fall_at_the_rates_of_theory() {
    // Smooth exact solution, fields of degree p: the energy norm, and with it shear, goes with h^p; a mean that is
    // weighted by the load with its square; the mean square of the deflection with h^(p + 1).
    for degree in DEGREES {
        let p = match degree {
            Degree::Two => 2.0,
            Degree::Three => 3.0,
            Degree::Four => 4.0,
        };
        let all = [2, 4, 8].map(|count| errors(degree, count));
        let rate = |of: fn(&Errors) -> f64| (of(&all[1]) / of(&all[2])).log2();
        let found = [rate(|e| e.shear), rate(|e| e.deflection), rate(|e| e.weighted_deflection)];
        for (found, theory) in found.into_iter().zip([p, p + 1.0, 2.0 * p]) {
            assert!(found > theory - STILL_COARSE, "{degree:?}: rate {found}, of theory {theory}");
        }
        // From the soft side: displacements approach from below.
        assert!(all.iter().all(|errors| errors.weighted_deflection > 0.0));
    }
}
