//! First natural frequencies.

use std::f64::consts::{PI, TAU};

use approx::assert_relative_eq;
use skinspan::{
    closed_form::plate::{Plate as Rectangle, PlateStiffness},
    finite_element::{Bed, Degree, Fields, Held, Masses, NoMode, Plate, ShellStiffness, Swinging},
    units::{ArealMassDensity, Curvature, Mass, Ratio, per_width},
};
use uom::si::{areal_mass_density::kilogram_per_square_meter, mass::kilogram};

use crate::kit::{Grid, isotropic, m, n, pa, per_m, point, steps};

/// Where the mesh is fine enough: what is left of it.
const FINE_MESH: f64 = 1e-7;
/// The iteration stops at this residual: the bound on the frequency is half as wide.
const RESIDUAL: f64 = 1e-5;
/// Observed rates lie a little below those of the theory on coarse meshes.
const RATE_SLACK: f64 = 0.5;

const D: f64 = 4500.0;
const NU: f64 = 0.3;
const MASS: f64 = 12.0;
const SIDES: [f64; 2] = [1.0, 0.7];

pub fn per_area(mass: f64) -> ArealMassDensity {
    ArealMassDensity::new::<kilogram_per_square_meter>(mass)
}

fn swinging(plate: &Plate) -> Swinging {
    plate.first_frequency(&Masses { per_area: &|_| per_area(MASS), points: &[] }).unwrap()
}

fn rectangle(count: usize) -> Grid {
    Grid::new(&steps(0.0, SIDES[0], count), &steps(0.0, SIDES[1], count))
}

fn supported(degree: Degree, count: usize, shear: f64) -> (Grid, Plate) {
    let grid = rectangle(count);
    let plate = grid.plate(degree, &isotropic(D, NU, shear), &grid.simply_supported(), &[]);
    (grid, plate)
}

fn exact(shear: f64) -> f64 {
    let stiffness = PlateStiffness::isotropic(per_width(n(D) * m(1.0)), Ratio::from(NU), per_m(shear));
    let rectangle = Rectangle::new(m(SIDES[0]), m(SIDES[1]), stiffness).unwrap();
    let found = rectangle.first_frequency(per_area(MASS)).unwrap().value;
    // `ω² = D g²/m/(1 + D g/S)`, g = (π/a)² + (π/b)².
    let g = SIDES.iter().map(|side| (PI / side).powi(2)).sum::<f64>();
    assert_relative_eq!(found, (D * g * g / MASS / (1.0 + D * g / shear)).sqrt() / TAU, max_relative = 1e-12);
    found
}

#[test]
fn simply_supported_rectangle_closed_form() {
    for shear in [1.2e6, 1e5, 1e4] {
        let found = swinging(&supported(Degree::Four, 6, shear).1);
        assert_relative_eq!(found.frequency.value, exact(shear), max_relative = FINE_MESH);
    }
}

/// A frequency comes from above, twice as fast as its fields do: `h²ᵖ`.
#[test]
fn frequency_falls_to_the_exact_at_twice_the_degree() {
    let shear = 1e4;
    for (degree, p, [coarse, fine]) in
        [(Degree::Two, 2.0, [6, 12]), (Degree::Three, 3.0, [4, 8]), (Degree::Four, 4.0, [3, 6])]
    {
        let [coarse, fine] = [coarse, fine]
            .map(|count| swinging(&supported(degree, count, shear).1).frequency.value / exact(shear) - 1.0);
        let rate = (coarse / fine).log2();
        assert!(fine > 0.0 && rate > 2.0 * p - RATE_SLACK, "{degree:?}: {coarse:e}, {fine:e}, rate {rate}");
    }
}

#[test]
fn bound_lies_below_and_near() {
    let found = swinging(&supported(Degree::Three, 3, 1e5).1);
    let width = 1.0 - found.at_least.value / found.frequency.value;
    assert!(width > 0.0 && width <= RESIDUAL, "{width:e}");
}

#[test]
fn mode_is_a_half_wave_each_way_of_one_metre() {
    let (grid, plate) = supported(Degree::Four, 4, 1e5);
    let shape = swinging(&plate).shape;
    for (x, y) in [(0.5, 0.35), (0.25, 0.35), (0.2, 0.6)] {
        let found = grid.state(&plate, &shape, point(x, y), point(x, y)).deflection.value;
        assert_relative_eq!(found, (PI * x / SIDES[0]).sin() * (PI * y / SIDES[1]).sin(), epsilon = 1e-4);
    }
}

/// Thin squares, `ω a² √(m/D)`. Leissa, *The Free Vibration of Rectangular Plates*, 1973, table of squares at ν = 0.3 (from
/// memory): 19.739 supported, 35.99 clamped, 3.492 on one clamped side. The first is 2π² exactly. The others are Ritz's from
/// above, the last with beam functions, which do not fit free sides: later and larger sums come down to 3.471 (from memory).
#[test]
fn thin_squares_of_leissa() {
    const PRINTED: f64 = 2e-4;
    const BEAM_FUNCTIONS: f64 = 7e-3;
    let edges = steps(0.0, 1.0, 8);
    let grid = Grid::new(&edges, &edges);
    let number = |held: &[(Vec<usize>, Held)]| {
        let plate = grid.plate(Degree::Four, &isotropic(D, NU, 1e6 * D), held, &[]);
        TAU * swinging(&plate).frequency.value * (MASS / D).sqrt()
    };
    let clamped = Held { deflection: true, rotations: [true; 2], ..Held::default() };
    let [low, high, left, right] = grid.edges();
    assert_relative_eq!(number(&grid.simply_supported()), 2.0 * PI * PI, max_relative = PRINTED);
    let all_round = [low, high, left.clone(), right].map(|edge| (edge, clamped));
    assert_relative_eq!(number(&all_round), 35.99, max_relative = PRINTED);
    let cantilever = number(&[(left, clamped)]);
    assert!(cantilever < 3.492, "{cantilever}");
    assert_relative_eq!(cantilever, 3.492, max_relative = BEAM_FUNCTIONS);
    assert_relative_eq!(cantilever, 3.471, max_relative = 5e-4);
}

/// Rayleigh: with the mode as it was, `(f₀/f)² = 1 + M φ(p)²/(m ∫ φ²)`, exact to the first order in `M`, and the true `f` is
/// below.
#[test]
fn point_mass_lowers_the_frequency_as_rayleigh_says() {
    let (grid, plate) = supported(Degree::Four, 6, 1e5);
    let modal = MASS * SIDES[0] * SIDES[1] / 4.0;
    let alone = swinging(&plate).frequency.value;
    for (x, y) in [(0.5, 0.35), (0.23, 0.41)] {
        let holds = |triangle: &usize| {
            plate.share(*triangle, point(x, y)).iter().all(|share| *share > -1e-9)
                && plate.share(*triangle, point(x, y)).iter().sum::<f64>() < 1.0 + 1e-9
        };
        let triangle = (0..grid.triangles.len()).find(holds).unwrap();
        let square = ((PI * x / SIDES[0]).sin() * (PI * y / SIDES[1]).sin()).powi(2);
        for (share, second_order) in [(1e-4, 1e-3), (0.3, 1.0)] {
            let points = [(triangle, point(x, y), Mass::new::<kilogram>(share * modal))];
            let with = plate.first_frequency(&Masses { per_area: &|_| per_area(MASS), points: &points }).unwrap();
            let more = (alone / with.frequency.value).powi(2) - 1.0;
            assert!(more > share * square, "{more} {share}");
            assert_relative_eq!(more, share * square, max_relative = second_order);
        }
    }
}

/// The same for mass on a part of the plate: the left quarter has `1/4 − 1/(2π)` of `∫ φ²`.
#[test]
fn mass_counts_where_it_lies() {
    let (_, plate) = supported(Degree::Four, 4, 1e5);
    let alone = swinging(&plate).frequency.value;
    let heavier = |triangle: usize| {
        let left = plate.place(triangle, [1.0 / 3.0; 2]).x < m(SIDES[0] / 4.0);
        per_area(if left { MASS * (1.0 + 1e-4) } else { MASS })
    };
    let with = plate.first_frequency(&Masses { per_area: &heavier, points: &[] }).unwrap();
    let more = (alone / with.frequency.value).powi(2) - 1.0;
    assert_relative_eq!(more, 1e-4 * (0.25 - 0.5 / PI), max_relative = 1e-3);
}

/// A plate that does not bend, on two soft lines: `ω² = Σ k L/(m A)`.
#[test]
fn stiff_plate_on_soft_beds() {
    let grid = rectangle(2);
    let [low, high, ..] = grid.edges();
    let bed = |corners| Bed { corners, stiffness: pa(1e4), beam: None };
    let plate = grid.plate(Degree::Three, &isotropic(1e9, NU, 1e10), &[], &[bed(low), bed(high)]);
    let exact = (2.0 * 1e4 / (MASS * SIDES[1])).sqrt() / TAU;
    assert_relative_eq!(swinging(&plate).frequency.value, exact, max_relative = 1e-5);
}

/// A shallow cylinder on diaphragms (edges that hold it across and along themselves): with inertia of the deflection alone
/// `m ω² = D g²/(1 + D g/S) + E t (α² c)²/g²`, `c` the curvature across `y`, `α` = π/a along the straight sides.
#[test]
fn shallow_cylinder_closed_form() {
    let (et, c, shear) = (2e6, 0.1, 1e5);
    let a = et / (1.0 - NU * NU);
    let membrane = [[a, NU * a, 0.0], [NU * a, a, 0.0], [0.0, 0.0, 0.5 * (1.0 - NU) * a]];
    let crown = [0.0, c].map(|c| Curvature::from(Ratio::from(c) / m(1.0)));
    let shell: ShellStiffness =
        isotropic(D, NU, shear).with_membrane(membrane.map(|row| row.map(per_m))).with_crown(crown);
    let grid = rectangle(4);
    let [low, high, left, right] = grid.edges();
    let on_x = Held { deflection: true, rotations: [true, false], displacements: [true, false] };
    let on_y = Held { deflection: true, rotations: [false, true], displacements: [false, true] };
    let held = [(low, on_x), (high, on_x), (left, on_y), (right, on_y)];
    let plate = grid.with(Degree::Four, Fields::BendingAndStretching, &|_| shell, &held, &[]);
    let [alpha, beta] = SIDES.map(|side| PI / side);
    let g = alpha * alpha + beta * beta;
    let stiffness = D * g * g / (1.0 + D * g / shear) + et * (alpha * alpha * c / g).powi(2);
    let found = swinging(&plate).frequency.value;
    assert_relative_eq!(found, (stiffness / MASS).sqrt() / TAU, max_relative = 1e-5);
}

#[test]
fn no_mass_and_no_number_have_no_frequency() {
    let (_, plate) = supported(Degree::Three, 2, 1e5);
    let of = |mass: f64| plate.first_frequency(&Masses { per_area: &|_| per_area(mass), points: &[] }).err();
    assert_eq!(of(0.0), Some(NoMode::NoMass));
    assert_eq!(of(-1.0), Some(NoMode::NoMass));
    assert_eq!(of(f64::NAN), Some(NoMode::NotFinite));
    assert_eq!(of(f64::INFINITY), Some(NoMode::NotFinite));
    let grid = rectangle(2);
    let all = Held { deflection: true, rotations: [true; 2], ..Held::default() };
    let mut lines = [0.0, 0.35, 0.7].map(|y| (grid.along_x(y, [0.0, 1.0]), all)).to_vec();
    lines.extend([0.0, 0.5, 1.0].map(|x| (grid.along_y(x, [0.0, 0.7]), all)));
    let held = grid.plate(Degree::Two, &isotropic(D, NU, 1e5), &lines, &[]);
    // The diagonals' middles still move.
    assert!(held.first_frequency(&Masses { per_area: &|_| per_area(MASS), points: &[] }).is_ok());
    assert_eq!(swinging(&plate), swinging(&plate));
}
