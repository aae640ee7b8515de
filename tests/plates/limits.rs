//! Limits: thin plates and thick ones of the tables, and plates that only shear.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use skinspan::finite_element::{Degree, Held};

use crate::kit::{Grid, isotropic, numbers, point, pressed};

/// Unit side, unit pressure, unit rigidity: the tables' coefficients. Graded towards the edges.
fn unit(length: f64) -> Grid {
    let along =
        |length: f64| [0.0, 0.05, 0.15, 0.275, 0.4, 0.5, 0.6, 0.725, 0.85, 0.95, 1.0].map(|share| share * length);
    Grid::new(&along(length), &along(1.0))
}

fn middle(grid: &Grid, shear: f64, held: &[(Vec<usize>, Held)], length: f64) -> [f64; 9] {
    let plate = grid.plate(Degree::Four, &isotropic(1.0, 0.3, shear), held, &[]);
    let place = point(0.5 * length, 0.5);
    numbers(&grid.state(&plate, &pressed(&plate, 1.0), place, place))
}

const THIN: f64 = 1e6;

#[test]
fn thin_plates_of_the_tables() {
    // Roark's formulas, table 11.4, case 1a, quoted: w = α q b⁴/(E t³), σ = β q b²/t²; so α = 12 (1 − ν²) w, β = 6 M.
    // The table is within 0.5 % of the series in α, within 0.1 % in β.
    for (length, alpha, beta) in [(1.0, 0.0444, 0.2874), (1.4, 0.0770, 0.4530), (2.0, 0.1110, 0.6102)] {
        let grid = unit(length);
        let all = middle(&grid, THIN, &grid.simply_supported(), length);
        assert_relative_eq!(12.0 * 0.91 * all[0], alpha, max_relative = 5e-3);
        assert_relative_eq!(6.0 * all[5], beta, max_relative = 1e-3);
    }
    // Clamped: Timoshenko's 0.00126 and 0.00220 from memory, with more digits from a series in cosines.
    for (length, w) in [(1.0, 0.0012653), (1.5, 0.0021965)] {
        let grid = unit(length);
        let clamped = Held { deflection: true, rotations: [true; 2], ..Held::default() };
        let all = middle(&grid, THIN, &grid.edges().map(|line| (line, clamped)), length);
        assert_relative_eq!(all[0], w, max_relative = 1e-3);
    }
}

#[test]
fn thin_squares_with_free_edges() {
    let grid = unit(1.0);
    let [_, _, left, right] = grid.edges();
    let along_y = Held { deflection: true, rotations: [false, true], ..Held::default() };
    let all = middle(&grid, THIN, &[(left, along_y), (right, along_y)], 1.0);
    // Timoshenko's table, from memory: 0.01309 and 0.1225, to its digits.
    assert_relative_eq!(all[0], 0.01309, max_relative = 1e-3);
    assert_relative_eq!(all[4], 0.1225, max_relative = 1e-3);
    // On its corners: 0.0255, from memory, the value of finite elements of thin plates to its digits. Timoshenko's own
    // 0.0249 is not met.
    let [low, high, ..] = grid.edges();
    let held = Held { deflection: true, ..Held::default() };
    let corners = [low[0], low[low.len() - 1], high[0], high[high.len() - 1]].map(|corner| (vec![corner], held));
    assert_relative_eq!(middle(&grid, THIN, &corners, 1.0)[0], 0.0255, max_relative = 2e-3);
}

#[test]
fn plates_a_tenth_as_thick_as_wide() {
    // 0.0042728 and 0.0015046 q a⁴/D, from memory. Shear coefficient 5/6 and ν 0.3:
    // S a²/D = (5/6) 12 (1 − ν²)/(2 (1 + ν)) (a/h)² = 350.
    let grid = unit(1.0);
    let shear = 350.0;
    assert_relative_eq!(middle(&grid, shear, &grid.simply_supported(), 1.0)[0], 0.0042728, max_relative = 2e-5);
    let clamped = Held { deflection: true, rotations: [true; 2], ..Held::default() };
    let held = grid.edges().map(|line| (line, clamped));
    assert_relative_eq!(middle(&grid, shear, &held, 1.0)[0], 0.00150462, max_relative = 1e-4);
}

#[test]
fn a_square_that_only_shears_is_a_membrane() {
    // D beyond bounds: no curvature, and edges that hold the turning along them leave no turning at all, so S ∇²w = −q.
    // By one series: w(middle) = q a²/S [1/8 − (4/π³) Σ (−1)^((k−1)/2)/(k³ cosh(k π/2)), k odd] = 0.0736714 q a²/S.
    let series: f64 = (0..8)
        .map(|j| (f64::from(2 * j + 1), if j % 2 == 0 { 1.0 } else { -1.0 }))
        .map(|(k, sign)| sign / (k.powi(3) * (0.5 * k * PI).cosh()))
        .sum();
    let exact = 0.125 - 4.0 / PI.powi(3) * series;
    let grid = unit(1.0);
    let shear = 1e-7;
    assert_relative_eq!(shear * middle(&grid, shear, &grid.simply_supported(), 1.0)[0], exact, max_relative = 1e-5);
}
