//! What holds for every plate: balance, symmetry, reciprocity, limits, and what is refused.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use skinspan::{
    finite_element::{Beam, Bed, Degree, Fields, Held, Load, Mechanism, Plate, ShellStiffness, Solution},
    geometry::Point,
    units::BeamRigidity,
};

use crate::kit::{
    Grid, assert_alike, bed, everywhere, isotropic, m, n, numbers, orthotropic, pa, point, pressed, steps,
};

/// Rounding of some thousand unknowns.
const ROUNDING: f64 = 1e-9;

const D: [[f64; 3]; 3] = [[6000.0, 900.0, 0.0], [900.0, 3000.0, 0.0], [0.0, 0.0, 1200.0]];

fn sandwich() -> ShellStiffness {
    isotropic(4500.0, 0.3, 1.2e6)
}

fn rigidity(ei: f64) -> BeamRigidity {
    n(ei) * m(1.0) * m(1.0)
}

/// On two lines that end inside, with an overhang all round; corners inside in disorder if `share` is above nought.
fn on_lines(degree: Degree, share: f64) -> (Grid, Plate) {
    let xs = [0.0, 0.2, 0.5, 1.0, 1.5, 1.8, 2.0];
    let ys = [0.0, 0.2, 0.5, 0.8, 1.0];
    let grid = Grid::new(&xs, &ys).disturbed(share);
    let beds = [0.2, 0.8].map(|y| bed(grid.along_x(y, [0.2, 1.8]), 5e8));
    let plate = grid.plate(degree, sandwich(), &[], &beds);
    (grid, plate)
}

/// Pressure and a force off the middle.
fn lopsided(grid: &Grid, plate: &Plate) -> Load {
    let place = point(0.37, 0.66);
    Load::none(plate).pressed(plate, &|_| pa(1000.0)).with_force(plate, grid.holding(place, place), place, n(700.0))
}

/// Force, and its moments about the axes.
fn sums(forces: impl Iterator<Item = (f64, Point)>) -> [f64; 3] {
    forces.fold([0.0; 3], |[all, x, y], (force, at)| [all + force, x + force * at.x.value, y + force * at.y.value])
}

#[test]
fn what_beds_bear_is_the_load_and_its_moments() {
    for degree in crate::kit::DEGREES {
        let (grid, plate) = on_lines(degree, 0.2);
        let solution = plate.solve(&[lopsided(&grid, &plate)]).remove(0);
        let pushes = (0..2).flat_map(|line| plate.pushes(line, &solution));
        let found = sums(pushes.map(|push| (push.force.value, push.place)));
        let exact = [2000.0 + 700.0, 2000.0 + 700.0 * 0.37, 1000.0 + 700.0 * 0.66];
        for (found, exact) in found.into_iter().zip(exact) {
            assert_relative_eq!(found, exact, max_relative = ROUNDING);
        }
    }
}

#[test]
fn a_plate_is_the_mirror_image_of_its_half() {
    let (grid, plate) = on_lines(Degree::Three, 0.0);
    let solution = pressed(&plate, 1000.0);
    // Signs of deflection, forces, moments and shears in a mirror across x, and in one across y.
    let across_x = [1.0, 1.0, 1.0, -1.0, 1.0, 1.0, -1.0, -1.0, 1.0];
    let across_y = [1.0, 1.0, 1.0, -1.0, 1.0, 1.0, -1.0, 1.0, -1.0];
    for [x, y] in [[0.11, 0.07], [0.33, 0.31], [0.71, 0.44], [0.9, 0.12]] {
        let at = |x: f64, y: f64| numbers(&grid.state(&plate, &solution, point(x, y), point(x, y)));
        let here = at(x, y);
        let seen = |mirror: [f64; 9], there: [f64; 9]| std::array::from_fn(|i| mirror[i] * there[i]);
        assert_alike(
            &[seen(across_x, at(2.0 - x, y)), seen(across_y, at(x, 1.0 - y))],
            &[here; 2],
            ROUNDING,
            [1e-3; 9],
        );
    }
}

#[test]
fn each_load_works_on_the_others_solution_alike() {
    let (grid, plate) = on_lines(Degree::Four, 0.2);
    let at = |x: f64, y: f64, force: f64| {
        let place = point(x, y);
        Load::none(&plate).with_force(&plate, grid.holding(place, place), place, n(force))
    };
    let loads = [at(0.37, 0.66, 700.0), Load::none(&plate).pressed(&plate, &|triangle| pa(100.0 * triangle as f64))];
    let solutions = plate.solve(&loads);
    let [ab, ba] = [(0, 1), (1, 0)].map(|(load, solution)| plate.work(&loads[load], &solutions[solution]).value);
    assert_relative_eq!(ab, ba, max_relative = ROUNDING);
    // A force works by the deflection of its place.
    let deflection = grid.state(&plate, &solutions[1], point(0.37, 0.66), point(0.37, 0.66)).deflection.value;
    assert_relative_eq!(ab, 700.0 * deflection, max_relative = ROUNDING);
    // Loads together do what they do one by one.
    let both = plate.solve(&[loads[0].clone().plus(&loads[1], -2.0)]).remove(0);
    let sum = Solution::sum(&[(&solutions[0], 1.0), (&solutions[1], -2.0)]).unwrap();
    let [both, sum] = [both, sum].map(|s| everywhere(&plate, &s).into_iter().map(|(_, all)| all).collect::<Vec<_>>());
    assert_alike(&both, &sum, ROUNDING, [0.0; 9]);
}

/// Rigidities in axes turned by an angle from `x` towards `y`.
fn turned(d: [[f64; 3]; 3], angle: f64) -> [[f64; 3]; 3] {
    let (s, c) = angle.sin_cos();
    // Curvatures (x, y, twice the twist) in the plate's own axes from those in the turned ones.
    let t = [[c * c, s * s, -s * c], [s * s, c * c, s * c], [2.0 * s * c, -2.0 * s * c, c * c - s * s]];
    std::array::from_fn(|i| {
        std::array::from_fn(|j| (0..3).flat_map(|k| (0..3).map(move |l| t[k][i] * d[k][l] * t[l][j])).sum())
    })
}

#[test]
fn turning_everything_turns_the_answer() {
    let angle = 0.6_f64;
    let (s, c) = angle.sin_cos();
    let straight = Grid::new(&steps(0.0, 1.2, 4), &steps(0.0, 0.8, 3)).disturbed(0.2);
    let turn = |x: f64, y: f64| [c * x - s * y, s * x + c * y];
    let mut askew = straight.clone();
    for corner in &mut askew.corners {
        let [x, y] = turn(corner.x.value, corner.y.value);
        *corner = point(x, y);
    }
    let solved = |grid: &Grid, d: [[f64; 3]; 3]| {
        let beds: Vec<_> = straight.edges().into_iter().map(|line| bed(line, 3e6)).collect();
        let plate = grid.plate(Degree::Three, orthotropic(d, [8e5; 2]), &[], &beds);
        let load = Load::none(&plate).pressed(&plate, &|triangle| pa(1000.0 + 100.0 * (triangle % 7) as f64));
        everywhere(&plate, &plate.solve(&[load])[0]).into_iter().map(|(_, all)| all).collect::<Vec<_>>()
    };
    let back = |[w, _, _, _, mx, my, mxy, qx, qy]: [f64; 9]| {
        [
            w,
            0.0,
            0.0,
            0.0,
            c * c * mx + s * s * my + 2.0 * s * c * mxy,
            s * s * mx + c * c * my - 2.0 * s * c * mxy,
            s * c * (my - mx) + (c * c - s * s) * mxy,
            c * qx + s * qy,
            c * qy - s * qx,
        ]
    };
    let found: Vec<_> = solved(&askew, turned(D, -angle)).into_iter().map(back).collect();
    assert_alike(&found, &solved(&straight, D), ROUNDING, [0.0; 9]);
}

#[test]
fn the_order_of_corners_and_triangles_changes_nothing() {
    let grid = Grid::new(&steps(0.0, 1.2, 4), &steps(0.0, 0.8, 3)).disturbed(0.2);
    let count = grid.corners.len();
    // Seven and twenty have no common divisor, so every corner moves to a place of its own.
    assert_eq!(count, 20);
    let moved = |corner: usize| (7 * corner + 3) % count;
    let mut other = grid.clone();
    for (old, corner) in grid.corners.iter().enumerate() {
        other.corners[moved(old)] = *corner;
    }
    for (number, triangle) in grid.triangles.iter().rev().enumerate() {
        let [a, b, c] = triangle.map(moved);
        other.triangles[number] = [[a, b, c], [b, c, a], [c, a, b]][number % 3];
    }
    let solved = |own: &Grid, numbered: &dyn Fn(usize) -> usize| {
        let beds: Vec<_> =
            grid.edges().into_iter().map(|line| bed(line.into_iter().map(numbered).collect(), 3e6)).collect();
        let plate = own.plate(Degree::Four, orthotropic(D, [8e5, 5e5]), &[], &beds);
        let solution = pressed(&plate, 1000.0);
        let places = [[0.11, 0.07], [0.33, 0.31], [0.71, 0.44], [0.9, 0.12], [1.13, 0.7]];
        places.map(|[x, y]| numbers(&own.state(&plate, &solution, point(x, y), point(x, y))))
    };
    assert_alike(&solved(&other, &moved), &solved(&grid, &|corner| corner), ROUNDING, [0.0; 9]);
}

/// Unit side, unit pressure, unit rigidity: the tables' coefficients. Graded towards the edges.
fn unit(length: f64) -> Grid {
    let along =
        |length: f64| [0.0, 0.05, 0.15, 0.275, 0.4, 0.5, 0.6, 0.725, 0.85, 0.95, 1.0].map(|share| share * length);
    Grid::new(&along(length), &along(1.0))
}

fn middle(grid: &Grid, shear: f64, held: &[(Vec<usize>, Held)], length: f64) -> [f64; 9] {
    let plate = grid.plate(Degree::Four, isotropic(1.0, 0.3, shear), held, &[]);
    let place = point(0.5 * length, 0.5);
    numbers(&grid.state(&plate, &pressed(&plate, 1.0), place, place))
}

const THIN: f64 = 1e6;

#[test]
fn thin_plates_of_the_tables() {
    // Roark, table 11.4, case 1a: w = α q b⁴/(E t³), σ = β q b²/t²; so α = 12 (1 − ν²) w, β = 6 M. The table's own
    // digits: it is within 0.5 % of the series in α.
    for (length, alpha, beta) in [(1.0, 0.0444, 0.2874), (1.4, 0.0770, 0.4530), (2.0, 0.1110, 0.6102)] {
        let grid = unit(length);
        let all = middle(&grid, THIN, &grid.simply_supported(), length);
        assert_relative_eq!(12.0 * 0.91 * all[0], alpha, max_relative = 5e-3);
        assert_relative_eq!(6.0 * all[5], beta, max_relative = 1e-3);
    }
    // Clamped: digits of the double cosine series.
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
    // Timoshenko's table: 0.01309 and 0.1225, to its digits.
    assert_relative_eq!(all[0], 0.01309, max_relative = 1e-3);
    assert_relative_eq!(all[4], 0.1225, max_relative = 1e-3);
    // On its corners: 0.0255, a thin plate's value to the digits that are published.
    let [low, high, ..] = grid.edges();
    let held = Held { deflection: true, ..Held::default() };
    let corners = [low[0], low[low.len() - 1], high[0], high[high.len() - 1]].map(|corner| (vec![corner], held));
    assert_relative_eq!(middle(&grid, THIN, &corners, 1.0)[0], 0.0255, max_relative = 2e-3);
}

#[test]
fn plates_a_tenth_as_thick_as_wide() {
    // Shear coefficient 5/6 and ν 0.3: S a²/D = (5/6) 12 (1 − ν²)/(2 (1 + ν)) (a/h)² = 350. In D, not E h³/12 (1 − ν²).
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

/// On two beams, each on posts at the given places.
fn on_beams(posts: &[f64]) -> (Grid, Result<Plate, Mechanism>) {
    let xs = [0.0, 0.2, 0.5, 1.0, 1.5, 1.8, 2.0];
    let grid = Grid::new(&xs, &[0.0, 0.2, 0.5, 0.8, 1.0]);
    let beds = [0.2, 0.8].map(|y| {
        let posts = posts.iter().map(|&x| grid.along_x(y, [x, x])[0]).collect();
        Bed { beam: Some(Beam { rigidity: rigidity(5e4), posts }), ..bed(grid.along_x(y, [0.2, 1.8]), 5e8) }
    });
    let plate = grid.tried(Degree::Three, Fields::Bending, &|_| sandwich(), &[], &beds);
    (grid, plate)
}

#[test]
fn a_beam_carries_what_the_plate_gives_it() {
    let (grid, plate) = on_beams(&[0.5, 1.5]);
    let plate = plate.unwrap();
    let solution = plate.solve(&[lopsided(&grid, &plate)]).remove(0);
    let mut all = [0.0; 3];
    for (line, y) in [0.2, 0.8].into_iter().enumerate() {
        let (pushes, forces) = (plate.pushes(line, &solution), plate.beam_forces(line, &solution));
        let given = sums(pushes.iter().map(|push| (push.force.value, push.place)));
        let posts: Vec<_> = forces.posts.iter().map(|(along, force)| (force.value, along.value + 0.2)).collect();
        let borne = sums(posts.iter().map(|&(force, x)| (force, point(x, y))));
        for i in 0..3 {
            assert_relative_eq!(given[i], borne[i], max_relative = ROUNDING);
            all[i] += borne[i];
        }
        // Sagging: what the posts bear before a place, less what the plate gives there, times the levers.
        for (along, moment) in &forces.moments {
            let x = along.value + 0.2;
            let lever = |force: f64, at: f64| force * (x - at).max(0.0);
            let from_posts: f64 = posts.iter().map(|&(force, at)| lever(force, at)).sum();
            let from_plate: f64 = pushes.iter().map(|push| lever(push.force.value, push.place.x.value)).sum();
            assert_relative_eq!(moment.value, from_posts - from_plate, epsilon = 1e-6 * given[0]);
        }
        assert!(forces.moments.iter().any(|(_, moment)| moment.value.abs() > 10.0));
    }
    let exact = [2700.0, 2000.0 + 700.0 * 0.37, 1000.0 + 700.0 * 0.66];
    for (found, exact) in all.into_iter().zip(exact) {
        assert_relative_eq!(found, exact, max_relative = ROUNDING);
    }
}

#[test]
fn a_top_on_one_line_can_tip_about_it() {
    let grid = Grid::new(&steps(0.0, 2.0, 4), &steps(0.0, 1.0, 4));
    let one = [bed(grid.along_x(0.25, [0.0, 2.0]), 5e8)];
    match grid.tried(Degree::Three, Fields::Bending, &|_| sandwich(), &[], &one) {
        Err(Mechanism::WholeMoves { about, tips: [along, across] }) => {
            assert_relative_eq!(about.y.value, 0.25, epsilon = 1e-9);
            assert!(along.abs() < 1e-9 * across.abs(), "tips along x by {along}, along y by {across}");
        }
        other => panic!("{:?}", other.err()),
    }
    assert!(matches!(
        grid.tried(Degree::Three, Fields::Bending, &|_| sandwich(), &[], &[]),
        Err(Mechanism::WholeMoves { .. })
    ));
}

#[test]
fn beams_with_one_post_each_roll_about_their_posts() {
    match on_beams(&[0.5]).1 {
        Err(Mechanism::WholeMoves { about, tips: [along, across] }) => {
            assert_relative_eq!(about.x.value, 0.5, epsilon = 1e-9);
            assert!(across.abs() < 1e-9 * along.abs(), "tips along x by {along}, along y by {across}");
        }
        other => panic!("{:?}", other.err()),
    }
    assert!(matches!(on_beams(&[]).1, Err(Mechanism::WholeMoves { .. })));
    // A beam that lies across the other is a third point.
    let grid = Grid::new(&steps(0.0, 2.0, 4), &steps(0.0, 1.0, 4));
    let on_one_post = |line: Vec<usize>, post: usize| {
        let posts = vec![line[post]];
        Bed { beam: Some(Beam { rigidity: rigidity(5e4), posts }), ..bed(line, 5e8) }
    };
    let firm = bed(grid.along_x(0.25, [0.0, 2.0]), 5e8);
    let beds = [firm, on_one_post(grid.along_x(0.75, [0.0, 2.0]), 1)];
    assert!(grid.tried(Degree::Three, Fields::Bending, &|_| sandwich(), &[], &beds).is_ok());
}

#[test]
fn a_line_that_leaves_the_sides_is_refused() {
    let grid = Grid::new(&steps(0.0, 2.0, 4), &steps(0.0, 1.0, 4));
    // Over a corner that lies between.
    let line = grid.along_x(0.25, [0.0, 2.0]);
    let broken = [bed(vec![line[0], line[2]], 5e8), bed(grid.along_x(0.75, [0.0, 2.0]), 5e8)];
    let tried = grid.tried(Degree::Three, Fields::Bending, &|_| sandwich(), &[], &broken);
    assert_eq!(tried.err(), Some(Mechanism::BrokenLine));
}
