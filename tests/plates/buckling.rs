//! First buckling.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use skinspan::{
    closed_form::plate::{Plate as Rectangle, PlateStiffness},
    finite_element::{Buckling, Degree, Fields, Held, Load, NoMode, Plate},
    laminate::{Forces, Resultants},
    units::{Curvature, Ratio, per_width},
};

use crate::kit::{Grid, isotropic, m, n, per_m, point, pressed, steps};

/// What is left of the mesh.
const FINE_MESH: f64 = 1e-5;

const D: f64 = 4500.0;
const NU: f64 = 0.3;

/// Pulling positive.
fn forces(x: f64, y: f64, xy: f64) -> Forces {
    Forces { x: per_m(x), y: per_m(y), xy: per_m(xy) }
}

fn supported(length: f64, counts: [usize; 2], degree: Degree, shear: f64) -> Plate {
    let grid = Grid::new(&steps(0.0, length, counts[0]), &steps(0.0, 1.0, counts[1]));
    grid.plate(degree, &isotropic(D, NU, shear), &grid.simply_supported(), &[])
}

fn buckling(plate: &Plate, all: Forces) -> Buckling {
    plate.first_buckling(&|_| all).unwrap()
}

/// Force on the mode of so many half waves: `D g²/(1 + D g/S)`.
fn stiffness([alpha, beta]: [f64; 2], shear: f64) -> f64 {
    let g = alpha * alpha + beta * beta;
    D * g * g / (1.0 + D * g / shear)
}

/// `N = 4π² D/b²` for a thin square and for two of them, less with shear.
#[test]
fn pressed_along_its_length() {
    for (length, waves) in [(1.0, 1), (2.0, 2), (1.5, 2)] {
        for shear in [1e9, 3e5] {
            let plate = supported(length, [6, 4], Degree::Four, shear);
            let found = buckling(&plate, forces(-1.0, 0.0, 0.0)).factor.value;
            let sandwich = PlateStiffness::isotropic(per_width(n(D) * m(1.0)), Ratio::from(NU), per_m(shear));
            let exact = Rectangle::new(m(length), m(1.0), sandwich).unwrap().buckling_along_x();
            if shear > 1e8 {
                assert_eq!(exact.half_waves, Some(waves));
                if length.fract() == 0.0 {
                    assert_relative_eq!(exact.load.value, 4.0 * PI * PI * D, max_relative = 2e-4);
                }
            }
            // Thin plates of equal fields lock a little on coarse meshes.
            let tolerance = if shear > 1e8 { 1e-3 } else { 1e-4 };
            assert_relative_eq!(found, exact.load.value, max_relative = tolerance);
        }
    }
}

/// As with frequencies, twice as fast as the fields.
#[test]
fn factor_falls_to_the_exact_at_twice_the_degree() {
    let shear = 1e4;
    let exact = stiffness([PI; 2], shear) / (2.0 * PI * PI);
    for (degree, p, [coarse, fine]) in
        [(Degree::Two, 2.0, [6, 12]), (Degree::Three, 3.0, [4, 8]), (Degree::Four, 4.0, [3, 6])]
    {
        let [coarse, fine] = [coarse, fine].map(|count| {
            let found = buckling(&supported(1.0, [count; 2], degree, shear), forces(-1.0, -1.0, 0.0));
            assert!(
                found.at_least < found.factor && found.at_least > found.factor * (1.0 - 2e-5),
                "the search ends at a residual of 1e-5"
            );
            found.factor.value / exact - 1.0
        });
        let rate = (coarse / fine).log2();
        assert!(fine > 0.0 && rate > 2.0 * p - 0.5, "{degree:?}: {coarse:e}, {fine:e}, rate {rate}");
    }
}

/// Pulled across more strongly than it is pressed: the modes that the pull would lift are by far the largest, and not asked
/// for. `N (α² − 3 β²) = D g²/(1 + D g/S)`, least over the half waves.
#[test]
fn pulled_across_while_pressed_along() {
    let shear = 2e6;
    let exact = (1..9)
        .map(|waves| [f64::from(waves) * PI / 2.0, PI])
        .filter(|[alpha, beta]| alpha * alpha > 3.0 * beta * beta)
        .map(|[alpha, beta]| stiffness([alpha, beta], shear) / (alpha * alpha - 3.0 * beta * beta))
        .fold(f64::INFINITY, f64::min);
    let plate = supported(2.0, [12, 3], Degree::Four, shear);
    let found = buckling(&plate, forces(-1.0, 3.0, 0.0));
    assert_relative_eq!(found.factor.value, exact, max_relative = 1e-4);
}

/// Sheared, a thin square: `k` = 9.34 (Timoshenko and Gere, *Theory of Elastic Stability*, from memory; its series was cut
/// short), either way round.
#[test]
fn sheared_square() {
    const SERIES_CUT_SHORT: f64 = 3e-3;
    let plate = supported(1.0, [6, 6], Degree::Four, 1e9);
    let [one, other] = [1.0, -1.0].map(|sign| buckling(&plate, forces(0.0, 0.0, sign)).factor.value);
    assert_relative_eq!(one, other, max_relative = 1e-9);
    assert_relative_eq!(one / (PI * PI * D), 9.34, max_relative = SERIES_CUT_SHORT);
    // Shear is a push and a pull at 45 degrees: a sixth of it beside the pull of its own size never buckles.
    assert_eq!(plate.first_buckling(&|_| forces(1.0, 1.0, 1.0)).err(), Some(NoMode::OnlyPulled));
    assert!(plate.first_buckling(&|_| forces(1.0, 1.0, 2.0)).is_ok());
}

#[test]
fn what_only_pulls_does_not_buckle() {
    let plate = supported(1.0, [2, 2], Degree::Three, 1e5);
    for pull in [forces(1.0, 0.0, 0.0), forces(0.0, 0.0, 0.0), forces(2.0, 2.0, 1.0)] {
        assert_eq!(plate.first_buckling(&|_| pull).err(), Some(NoMode::OnlyPulled));
    }
    assert_eq!(plate.first_buckling(&|_| forces(f64::NAN, 0.0, 0.0)).err(), Some(NoMode::NotFinite));
}

/// Warmed between edges that do not yield, it is pressed evenly by what holds it flat; the field comes from the solution.
#[test]
fn warmed_between_fixed_edges() {
    let shear = 1e5;
    let a = 2e6;
    let membrane = [[a, NU * a, 0.0], [NU * a, a, 0.0], [0.0, 0.0, 0.5 * (1.0 - NU) * a]];
    let shell = isotropic(D, NU, shear).with_membrane(membrane.map(|row| row.map(per_m)));
    let edges = steps(0.0, 1.0, 4);
    let grid = Grid::new(&edges, &edges);
    let held: Vec<_> = grid
        .simply_supported()
        .into_iter()
        .map(|(line, held)| (line, Held { displacements: [true; 2], ..held }))
        .collect();
    let plate = grid.with(Degree::Four, Fields::BendingAndStretching, &|_| shell, &held, &[]);
    let held_flat = Resultants { force: forces(1000.0, 1000.0, 0.0), ..Resultants::default() };
    let warm = plate.solve(&[Load::none(&plate).heated(&plate, &|_| held_flat)]).remove(0);
    let found = plate.first_buckling(&|triangle| plate.mean_membrane(triangle, &warm)).unwrap();
    assert_relative_eq!(
        found.factor.value,
        stiffness([PI; 2], shear) / (2.0 * PI * PI) / 1000.0,
        max_relative = FINE_MESH
    );
    let middle = grid.state(&plate, &found.shape, point(0.5, 0.5), point(0.4, 0.3));
    assert_relative_eq!(middle.deflection.value, 1.0, epsilon = 1e-9);
}

/// The mean of the membrane forces of a crowned shell against the mean of many small pieces of the triangle.
#[test]
fn mean_membrane_is_the_mean() {
    const PIECES: i32 = 60;
    let a = 2e6;
    let membrane = [[a, NU * a, 0.0], [NU * a, a, 0.0], [0.0, 0.0, 0.5 * (1.0 - NU) * a]];
    let crown = [0.3, 0.1].map(|c| Curvature::from(Ratio::from(c) / m(1.0)));
    let shell = isotropic(D, NU, 1e5).with_membrane(membrane.map(|row| row.map(per_m))).with_crown(crown);
    let grid = Grid::new(&[0.0, 0.6, 1.0], &[0.0, 0.3, 0.8]);
    let plate = grid.with(Degree::Three, Fields::BendingAndStretching, &|_| shell, &grid.simply_supported(), &[]);
    let solution = pressed(&plate, 1000.0);
    let mut shares = Vec::new();
    let at = |i: i32, by: f64| (f64::from(i) + by) / f64::from(PIECES);
    for i in 0..PIECES {
        for j in 0..PIECES - i {
            shares.push([at(i, 1.0 / 3.0), at(j, 1.0 / 3.0)]);
            if i + j + 1 < PIECES {
                shares.push([at(i, 2.0 / 3.0), at(j, 2.0 / 3.0)]);
            }
        }
    }
    for triangle in 0..plate.triangles() {
        let states = plate.states(triangle, &shares, &solution);
        let sums = states.iter().map(|state| state.resultants.force);
        let fine = sums.fold([0.0; 3], |[x, y, xy], force| [x + force.x.value, y + force.y.value, xy + force.xy.value]);
        let found = plate.mean_membrane(triangle, &solution);
        let scale = fine[0].hypot(fine[1]).hypot(fine[2]) / f64::from(PIECES * PIECES);
        for (sum, mean) in fine.into_iter().zip([found.x, found.y, found.xy]) {
            assert_relative_eq!(mean.value, sum / f64::from(PIECES * PIECES), epsilon = 1e-3 * scale);
        }
    }
}
