//! Patch tests: what elements of every degree must do exactly, on a mesh in disorder.

use skinspan::{
    finite_element::{Degree, Fields, Held, Load, Plate, ShellStiffness, Solution},
    geometry::Point,
    laminate::{Curvatures, Deformation, Elastic, Ply, Stiffness, Strains},
    units::{Angle, Curvature, Length, Pressure, Ratio, TemperatureCoefficient},
};
use uom::{
    ConstZero,
    si::{angle, length::millimeter, pressure::gigapascal},
};

use crate::kit::{
    DEGREES, Grid, assert_alike, bed, everywhere, isotropic, m, n, orthotropic, pa, per_m, pressed, steps,
};

/// Rounding of some hundred unknowns, with fields whose stiffnesses lie five powers of ten apart.
const ROUNDING: f64 = 1e-9;

const SIDES: [f64; 2] = [1.1, 0.8];

fn disorder() -> Grid {
    Grid::new(&steps(0.0, SIDES[0], 4), &steps(0.0, SIDES[1], 3)).disturbed(0.2)
}

fn per_metre(x: f64) -> Curvature {
    1.0 / m(1.0) * x
}

fn ply(thickness: f64, turned: f64) -> Ply {
    let gpa = Pressure::new::<gigapascal>;
    let none = TemperatureCoefficient::ZERO;
    let elastic =
        Elastic { e1: gpa(36.0), e2: gpa(9.0), g12: gpa(3.0), nu12: Ratio::from(0.27), alpha1: none, alpha2: none };
    Ply {
        elastic,
        strength: None,
        thickness: Length::new::<millimeter>(thickness),
        angle: Angle::new::<angle::degree>(turned),
    }
}

/// Every entry of A, B and D differs from nought.
fn askew() -> Stiffness {
    Stiffness::of_stack([ply(4.0, 20.0), ply(7.0, -65.0)], Length::new::<millimeter>(5.5))
}

/// Three corners that hold the plate against dropping and tipping, and against nothing else.
fn on_three_corners(grid: &Grid) -> Vec<(Vec<usize>, Held)> {
    let [low, high, ..] = grid.edges();
    let held = Held { deflection: true, ..Held::default() };
    [low[0], low[low.len() - 1], high[0]].map(|corner| (vec![corner], held)).to_vec()
}

fn even(strain: [f64; 3], curvature: [f64; 3]) -> Deformation {
    let [x, y, xy] = strain.map(Ratio::from);
    let [kx, ky, kxy] = curvature.map(per_metre);
    Deformation { strain: Strains { x, y, xy }, curvature: Curvatures { x: kx, y: ky, xy: kxy } }
}

/// A plate that would strain evenly were it free, and is free, has no stress and the shape of that strain.
fn assert_free(section: &Stiffness, crown: [f64; 2], deformation: &Deformation) {
    let shear = [1.2e6, 0.7e6];
    let shell = ShellStiffness::new(section, shear.map(per_m), crown.map(per_metre));
    let held_flat = section.resultants(deformation);
    let (force, moment) = (held_flat.force, held_flat.moment);
    let [kx, ky, kxy] = [deformation.curvature.x, deformation.curvature.y, deformation.curvature.xy].map(|k| k.value);
    let bow = |[x, y]: [f64; 2]| -0.5 * (kx * x * x + ky * y * y + kxy * x * y);
    let [along_x, along_y] = [bow([SIDES[0], 0.0]) / SIDES[0], bow([0.0, SIDES[1]]) / SIDES[1]];
    let largest = |list: [f64; 3]| list.into_iter().fold(0.0, |most: f64, x| most.max(x.abs()));
    let n = largest([force.x.value, force.y.value, force.xy.value]);
    let m = largest([moment.x.value, moment.y.value, moment.xy.value]);
    let q = largest([kx, ky, kxy]).max(1e-3) * shear[0];
    for degree in DEGREES {
        let grid = disorder();
        let plate = grid.with(degree, Fields::BendingAndStretching, &|_| shell, &on_three_corners(&grid), &[]);
        // Heat in parts is heat: as a sum of loads, and of solutions.
        let heated = Load::none(&plate).heated(&plate, &|_| held_flat);
        let in_parts = Load::none(&plate).plus(&heated, 2.5).plus(&heated, -1.5);
        let solution = plate.solve(&[in_parts]).remove(0);
        let solution = Solution::sum(&[(&solution, 0.25), (&solution, 0.75)]).unwrap();
        let (places, found): (Vec<_>, Vec<_>) = everywhere(&plate, &solution).into_iter().unzip();
        let exact = places
            .iter()
            .map(|&[x, y]| [bow([x, y]) - along_x * x - along_y * y, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0]);
        assert_alike(&found, &exact.collect::<Vec<_>>(), ROUNDING, [0.01, n, n, n, m, m, m, q, q]);
    }
}

#[test]
fn even_curvature_and_stretch_with_every_coupling() {
    assert_free(&askew(), [0.0; 2], &even([1e-3, -4e-4, 7e-4], [0.02, -0.013, 0.017]));
}

#[test]
fn even_stretch_of_a_crowned_shell() {
    assert_free(&askew(), [0.11, -0.07], &even([1e-3, -4e-4, 7e-4], [0.0; 3]));
}

#[test]
fn even_shear_with_a_moment_that_grows_along() {
    // A strip built in at x = 0 without Poisson's ratio: w = P x/S + P (3 L x² - x³)/(6 D). Held against turning all
    // over, w = P x/S: what fields of degree 2 can do.
    let (d, s, p, l) = (1e5, 1.2e6, 700.0, SIDES[0]);
    for degree in DEGREES {
        let grid = disorder();
        let [.., root, tip] = grid.edges();
        let bends = degree != Degree::Two;
        let turns = Held { rotations: [true; 2], ..Held::default() };
        let mut held = vec![(root, Held { deflection: true, ..turns })];
        if !bends {
            held.extend(grid.triangles.iter().map(|&[a, b, c]| (vec![a, b, c, a], turns)));
        }
        let plate = grid.plate(degree, &isotropic(d, 0.0, s), &held, &[]);
        let solution = plate.solve(&[grid.pushed_along(&plate, &tip, p)]).remove(0);
        let (places, found): (Vec<_>, Vec<_>) = everywhere(&plate, &solution).into_iter().unzip();
        let exact = places.iter().map(|&[x, _]| {
            let bow = if bends { p * (3.0 * l * x * x - x.powi(3)) / (6.0 * d) } else { 0.0 };
            let moment = if bends { -p * (l - x) } else { 0.0 };
            [p * x / s + bow, 0.0, 0.0, 0.0, moment, 0.0, 0.0, p, 0.0]
        });
        let m = if bends { 0.0 } else { p * l };
        assert_alike(&found, &exact.collect::<Vec<_>>(), ROUNDING, [0.0, p, p, p, m, p * l, p * l, 0.0, p]);
    }
}

#[test]
fn a_plane_of_reference_elsewhere_changes_nothing() {
    // About another plane the same symmetric section has B = -s A and D = D0 + s² A; free in its plane, it bends as it did.
    let symmetric =
        Stiffness::of_stack([ply(3.0, 30.0), ply(5.0, -50.0), ply(3.0, 30.0)], Length::new::<millimeter>(5.5));
    let shell = |inwards: f64| {
        ShellStiffness::new(
            &symmetric.shifted(Length::new::<millimeter>(inwards)),
            [per_m(1.2e6); 2],
            [per_metre(0.0); 2],
        )
    };
    // Turned so that the far corner lies straight along x: what holds it in its plane must not point along x as well.
    let diagonal = SIDES[0].hypot(SIDES[1]);
    let [c, s] = SIDES.map(|side| side / diagonal);
    for degree in DEGREES {
        let mut grid = disorder();
        for corner in &mut grid.corners {
            *corner = Point { x: corner.x * c + corner.y * s, y: corner.y * c - corner.x * s };
        }
        let beds: Vec<_> = grid.edges().into_iter().map(|line| bed(line, 2e6)).collect();
        let solved = |fields: Fields, inwards: f64| {
            let plate = grid.with(degree, fields, &|_| shell(inwards), &[], &beds);
            let load = Load::none(&plate).pressed(&plate, &|triangle| pa(1000.0 + 300.0 * (triangle % 5) as f64));
            everywhere(&plate, &plate.solve(&[load])[0]).into_iter().map(|(_, numbers)| numbers).collect::<Vec<_>>()
        };
        let (about_middle, elsewhere) = (solved(Fields::Bending, 0.0), solved(Fields::BendingAndStretching, 17.0));
        // N = A e + B k is a difference of numbers of that size.
        let n = about_middle.iter().map(|numbers| numbers[4].abs()).fold(0.0, f64::max) / 1e-3;
        assert_alike(&elsewhere, &about_middle, ROUNDING, [0.0, n, n, n, 0.0, 0.0, 0.0, 0.0, 0.0]);
    }
}

#[test]
fn moving_as_a_whole_strains_nothing_flat_or_crowned() {
    // On beds, pushed at each node by what the bed gives there: the plate drops or tips as a whole, and if it is crowned
    // it slides along itself as it drops.
    let membrane = [[6e7, 2e7, 0.0], [2e7, 6e7, 0.0], [0.0, 0.0, 2e7]].map(|row| row.map(per_m));
    let d = [[4500.0, 1350.0, 0.0], [1350.0, 4500.0, 0.0], [0.0, 0.0, 1575.0]];
    for crown in [[0.0, 0.0], [0.11, 0.3], [-0.05, 0.2]] {
        let shell = orthotropic(d, [1.2e6, 0.8e6]).with_membrane(membrane).with_crown(crown.map(per_metre));
        for degree in DEGREES {
            let (grid, stiffness) = (disorder(), 1e6);
            let beds: Vec<_> = grid.edges().into_iter().map(|line| bed(line, stiffness)).collect();
            let plate = grid.with(degree, Fields::BendingAndStretching, &|_| shell, &[], &beds);
            let movements: [fn([f64; 2]) -> f64; 3] = [|_| 1e-3, |[x, _]| 1e-3 * x, |[_, y]| 1e-3 * y];
            for movement in movements {
                let solution = plate.solve(&[given_way(&grid, &plate, stiffness, movement)]).remove(0);
                let (places, found): (Vec<_>, Vec<_>) = everywhere(&plate, &solution).into_iter().unzip();
                let exact: Vec<_> =
                    places.iter().map(|&at| [movement(at), 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0]).collect();
                // Stiffness times the movement, along a metre.
                let (n, m, q) = (6e4 * 0.1, 4.5, 1.2e3);
                assert_alike(&found, &exact, ROUNDING, [0.0, n, n, n, m, m, m, q, q]);
            }
        }
    }
}

/// What beds along the edges push back with when the plate has moved.
fn given_way(grid: &Grid, plate: &Plate, stiffness: f64, movement: fn([f64; 2]) -> f64) -> Load {
    let any = pressed(plate, 1.0);
    let pushes = (0..4).flat_map(|line| plate.pushes(line, &any));
    pushes.fold(Load::none(plate), |load, push| {
        let at = [push.place.x.value, push.place.y.value];
        let force = n(stiffness * push.length.value * movement(at));
        load.with_force(plate, grid.holding(push.place, push.place), push.place, force)
    })
}
