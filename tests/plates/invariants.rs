//! What holds for every plate: balance, symmetry, reciprocity, and what changes nothing.

use approx::assert_relative_eq;
use skinspan::{
    finite_element::{Degree, Envelope, Fields, Grouping, Judged, Load, Model, Plate, Sampler, Solution},
    laminate::{Forces, Moments, Resultants},
    units::per_width,
};

use crate::kit::{
    DEGREES, Grid, ROUNDING, assert_alike, bed, everywhere, lopsided, m, n, numbers, orthotropic, pa, per_m, point,
    pressed, sandwich, steps, sums,
};

const D: [[f64; 3]; 3] = [[6000.0, 900.0, 0.0], [900.0, 3000.0, 0.0], [0.0, 0.0, 1200.0]];

/// On two lines that end inside, with an overhang all round; corners inside in disorder if `share` is above nought.
fn on_lines(degree: Degree, share: f64) -> (Grid, Plate) {
    let xs = [0.0, 0.2, 0.5, 1.0, 1.5, 1.8, 2.0];
    let ys = [0.0, 0.2, 0.5, 0.8, 1.0];
    let grid = Grid::new(&xs, &ys).disturbed(share);
    let beds = [0.2, 0.8].map(|y| bed(grid.along_x(y, [0.2, 1.8]), 5e8));
    let plate = grid.plate(degree, &sandwich(), &[], &beds);
    (grid, plate)
}

#[test]
fn what_beds_bear_is_the_load_and_its_moments() {
    for degree in DEGREES {
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
        let plate = grid.plate(Degree::Three, &orthotropic(d, [8e5; 2]), &[], &beds);
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
        let plate = own.plate(Degree::Four, &orthotropic(D, [8e5, 5e5]), &[], &beds);
        let solution = pressed(&plate, 1000.0);
        let places = [[0.11, 0.07], [0.33, 0.31], [0.71, 0.44], [0.9, 0.12], [1.13, 0.7]];
        places.map(|[x, y]| numbers(&own.state(&plate, &solution, point(x, y), point(x, y))))
    };
    assert_alike(&solved(&other, &moved), &solved(&grid, &|corner| corner), ROUNDING, [0.0; 9]);
}

/// A plate of half the shear stiffness by way of another's order.
#[test]
fn a_plate_made_from_another_is_the_same_as_made_anew() {
    let (xs, ys) = (steps(0.0, 2.0, 6), steps(0.0, 1.0, 4));
    let grid = Grid::new(&xs, &ys).disturbed(0.2);
    let beds = [0.25, 0.75].map(|y| bed(grid.along_x(y, [1.0 / 3.0, 5.0 / 3.0]), 5e8));
    let model = |shells| Model {
        corners: &grid.corners,
        triangles: &grid.triangles,
        degree: Degree::Three,
        fields: Fields::Bending,
        shells,
        held: &[],
        beds: &beds,
    };
    let shell = |left: f64| move |_: usize| orthotropic(D, [8e5 * left, 5e5 * left]);
    let (whole, half) = (shell(1.0), shell(0.5));
    let first = Plate::new(&model(&whole)).unwrap();
    let states = |plate: &Plate| -> Vec<[f64; 9]> {
        let solution = plate.solve(&[Load::none(plate), lopsided(&grid, plate)]).remove(1);
        everywhere(plate, &solution).into_iter().map(|(_, numbers)| numbers).collect()
    };
    let anew = states(&Plate::new(&model(&half)).unwrap());
    assert_alike(&states(&first.of_other_stiffness(&model(&half)).unwrap()), &anew, ROUNDING, [0.0; 9]);
}

#[test]
fn a_sampler_sees_what_a_plate_does() {
    // Crowned, heated and pressed, as a sum of two solutions: all that a state is made of.
    let membrane = [[6e7, 2e7, 0.0], [2e7, 6e7, 0.0], [0.0, 0.0, 2e7]].map(|row| row.map(per_m));
    let shell = orthotropic(D, [8e5, 5e5]).with_membrane(membrane).with_crown([0.11, -0.2].map(|c| 1.0 / m(1.0) * c));
    let grid = Grid::new(&steps(0.0, 1.2, 3), &steps(0.0, 0.8, 2)).disturbed(0.2);
    let beds: Vec<_> = grid.edges().into_iter().map(|line| bed(line, 3e6)).collect();
    let plate = grid.with(Degree::Four, Fields::BendingAndStretching, &|_| shell, &[], &beds);
    let none = Resultants::default();
    let moment = |x: f64| per_width(n(x) * m(1.0) / m(1.0));
    let held_flat = |triangle: usize| Resultants {
        force: Forces { x: per_m(3e3), y: per_m(1e3), ..none.force },
        moment: Moments { x: moment(20.0 + triangle as f64), xy: moment(7.0), ..none.moment },
    };
    let loads = [Load::none(&plate).heated(&plate, &held_flat), Load::none(&plate).pressed(&plate, &|_| pa(1000.0))];
    let solutions = plate.solve(&loads);
    let both = Solution::sum(&[(&solutions[0], 0.5), (&solutions[1], 2.0)]).unwrap();
    let sampler = Sampler::new(&plate, &[], &[], &|_| None, &|_| true);
    let sampled = &sampler.on(&plate).sample(&[&both])[0];
    let (seen, done): (Vec<_>, Vec<_>) = sampler
        .places()
        .enumerate()
        .map(|(number, (place, triangle))| {
            let done = plate.states(triangle, &[plate.share(triangle, place)], &both)[0];
            (numbers(&sampler.state(sampled, number)), numbers(&done))
        })
        .unzip();
    assert!(seen.len() > grid.triangles.len());
    assert_alike(&seen, &done, ROUNDING, [0.0; 9]);
    // And so does the sum of the loads.
    let together = plate.solve(&[Load::none(&plate).plus(&loads[0], 0.5).plus(&loads[1], 2.0)]).remove(0);
    let [one, other] =
        [both, together].map(|s| everywhere(&plate, &s).into_iter().map(|(_, all)| all).collect::<Vec<_>>());
    assert_alike(&one, &other, ROUNDING, [0.0; 9]);
}

#[test]
fn of_deflections_the_largest_share_of_its_span_counts() {
    let (_, plate) = on_lines(Degree::Three, 0.0);
    let solution = pressed(&plate, 1000.0);
    let sampler = Sampler::new(&plate, &[], &[], &|_| None, &|_| false);
    let samples = sampler.places().count();
    // One of them has a span a thousandth of that of the others.
    let judged =
        |number: usize| Judged { group: 0, against: [(0, 0.0); 2], over: m(if number == 7 { 1e-3 } else { 1.0 }) };
    let grouping = Grouping {
        regions: vec![0; samples],
        levers: vec![m(0.02)],
        edges: vec![None; samples],
        edge_groups: 0,
        deflections: (0..samples).map(|number| vec![judged(number)]).collect(),
        discs: Vec::new(),
    };
    let mut envelope = Envelope::new(&sampler, &grouping);
    envelope.take(&[(&sampler.on(&plate).sample(&[&solution])[0], 1.0, 1.0)], None, &[]);
    assert_eq!(envelope.deflected()[0].unwrap().over, m(1e-3));
}

/// Where nothing parts triangles, what they say of one place is averaged; where something does, each has its own say.
#[test]
fn of_a_place_the_mean_of_its_triangles_counts() {
    let grid = Grid::new(&steps(0.0, 1.2, 3), &steps(0.0, 0.8, 2)).disturbed(0.2);
    let beds: Vec<_> = grid.edges().into_iter().map(|line| bed(line, 3e6)).collect();
    let plate = grid.plate(Degree::Three, &orthotropic(D, [8e5, 5e5]), &[], &beds);
    let solution = plate.solve(&[lopsided(&grid, &plate)]).remove(0);
    let seen = |parted: bool| -> Vec<((i64, i64), [f64; 9])> {
        let sampler = Sampler::new(&plate, &[], &[], &|_| None, &|_| parted);
        let sampled = &sampler.on(&plate).sample(&[&solution])[0];
        #[allow(clippy::cast_possible_truncation, reason = "micrometres")]
        let at = |x: f64| (x * 1e6).round() as i64;
        let places = sampler.places().enumerate();
        let keyed = places.map(|(number, (place, _))| {
            ((at(place.x.value), at(place.y.value)), numbers(&sampler.state(sampled, number)))
        });
        keyed.collect()
    };
    let (each, joined) = (seen(true), seen(false));
    assert!(joined.len() < each.len());
    for (place, found) in &joined {
        let own: Vec<_> = each.iter().filter(|(other, _)| other == place).collect();
        let mean: [f64; 9] = std::array::from_fn(|i| own.iter().map(|(_, all)| all[i]).sum::<f64>() / own.len() as f64);
        assert_alike(&[*found], &[mean], 1e-9, [1e-9; 9]);
    }
}
