//! Beams below a plate, and what does not hold it.

use approx::assert_relative_eq;
use skinspan::{
    finite_element::{Beam, Bed, Degree, Fields, Mechanism, Plate},
    units::BeamRigidity,
};

use crate::kit::{Grid, ROUNDING, bed, lopsided, m, n, point, sandwich, steps, sums};

fn rigidity(ei: f64) -> BeamRigidity {
    n(ei) * m(1.0) * m(1.0)
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

/// Two rails along x and a bar across them in the middle, which stands on nothing of its own.
fn carried(posts: &[f64]) -> (Grid, Result<Plate, Mechanism>) {
    let grid = Grid::new(&[0.0, 0.2, 0.5, 1.0, 1.5, 1.8, 2.0], &[0.0, 0.2, 0.5, 0.8, 1.0]);
    let beam = |posts| Some(Beam { rigidity: rigidity(5e4), posts });
    let rail = |y: f64| {
        let posts = posts.iter().map(|&x| grid.along_x(y, [x, x])[0]).collect();
        Bed { beam: beam(posts), ..bed(grid.along_x(y, [0.2, 1.8]), 5e8) }
    };
    let bar = Bed { beam: beam(Vec::new()), ..bed(grid.along_y(1.0, [0.2, 0.8]), 5e8) };
    let beds = [rail(0.2), rail(0.8), bar];
    let plate = grid.tried(Degree::Three, Fields::Bending, &|_| sandwich(), &[], &beds);
    (grid, plate)
}

#[test]
fn a_bar_hands_on_what_it_is_given_to_the_beams_that_carry_it() {
    for posts in [&[0.2, 1.8][..], &[0.2, 1.0, 1.8]] {
        let (grid, plate) = carried(posts);
        let plate = plate.unwrap();
        let solution = plate.solve(&[lopsided(&grid, &plate)]).remove(0);
        let given = |line: usize| plate.pushes(line, &solution);
        let [port, starboard, bar] = [0, 1, 2].map(|line| plate.beam_forces(line, &solution));
        // What the plate gives it, with its moment about the rails.
        let of_bar = sums(given(2).iter().map(|push| (push.force.value, push.place)));
        assert_eq!((bar.posts.len(), bar.joints.len()), (0, 2));
        let handed = [0, 1].map(|joint| bar.joints[joint].1.value);
        let borne = sums(handed.into_iter().zip([0.2, 0.8]).map(|(force, y)| (force, point(1.0, y))));
        for i in 0..3 {
            assert_relative_eq!(of_bar[i], borne[i], max_relative = ROUNDING);
        }
        assert!(handed.iter().all(|force| *force > 10.0), "{handed:?}");
        let mut all = [0.0; 3];
        for ((line, rail, y), handed) in [(0, &port, 0.2), (1, &starboard, 0.8)].into_iter().zip(handed) {
            let stands: Vec<_> = rail.posts.iter().map(|(along, force)| (force.value, along.value + 0.2)).collect();
            // Where a post stands below the joint, all of it is the post's.
            let known: Vec<f64> = rail.joints.iter().map(|(_, force)| force.value).collect();
            match posts.len() {
                2 => assert_relative_eq!(known[0], -handed, max_relative = 1e-9),
                _ => assert!(known.is_empty()),
            }
            let sum = sums(stands.iter().map(|&(force, x)| (force, point(x, y))));
            (0..3).for_each(|i| all[i] += sum[i]);
            for (along, moment) in &rail.moments {
                let x = along.value + 0.2;
                let lever = |force: f64, at: f64| force * (x - at).max(0.0);
                let up: f64 = stands.iter().map(|&(force, at)| lever(force, at)).sum();
                let down: f64 = given(line).iter().map(|push| lever(push.force.value, push.place.x.value)).sum();
                assert_relative_eq!(moment.value, up - down - lever(handed, 1.0), epsilon = 1e-6 * all[0]);
            }
        }
        let exact = [2700.0, 2000.0 + 700.0 * 0.37, 1000.0 + 700.0 * 0.66];
        for (found, exact) in all.into_iter().zip(exact) {
            assert_relative_eq!(found, exact, max_relative = ROUNDING);
        }
    }
}

#[test]
fn beams_that_only_carry_each_other_are_not_held() {
    assert!(matches!(carried(&[]).1, Err(Mechanism::WholeMoves { .. })));
    assert!(matches!(carried(&[0.2]).1, Err(Mechanism::WholeMoves { .. })));
}

/// The top on two rails and two bars that meet four times, and stand on nothing.
#[test]
fn a_ring_of_beams_without_posts_holds_nothing() {
    let grid = Grid::new(&[0.0, 0.2, 1.0, 1.8, 2.0], &[0.0, 0.2, 0.5, 0.8, 1.0]);
    let beam = |line: Vec<usize>, posts: &[usize]| {
        let posts = posts.iter().map(|&post| line[post]).collect();
        Bed { beam: Some(Beam { rigidity: rigidity(5e4), posts }), ..bed(line, 5e8) }
    };
    let on = |posts: &[usize]| {
        let rails = [0.2, 0.8].map(|y| beam(grid.along_x(y, [0.2, 1.8]), posts));
        let bars = [0.2, 1.8].map(|x| beam(grid.along_y(x, [0.2, 0.8]), &[]));
        let beds: Vec<Bed> = rails.into_iter().chain(bars).collect();
        grid.tried(Degree::Three, Fields::Bending, &|_| sandwich(), &[], &beds)
    };
    assert!(matches!(on(&[]).err(), Some(Mechanism::WholeMoves { .. })));
    assert!(on(&[0, 2]).is_ok());
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

/// A beam that turns by a right angle: nothing of its bending goes round, and what it is given still goes down by its posts.
#[test]
fn a_sharp_bend_passes_no_bending() {
    let grid = Grid::new(&steps(0.0, 2.0, 8), &steps(0.0, 1.0, 4));
    let mut line = grid.along_y(0.25, [0.0, 0.75]);
    line.extend(grid.along_x(0.75, [0.25, 1.75]).into_iter().skip(1));
    line.extend(grid.along_y(1.75, [0.0, 0.75]).into_iter().rev().skip(1));
    // Two posts on each leg; the rest of it hangs over and carries the bow across.
    let posts = [(0.25, 0.0), (0.25, 0.5), (1.75, 0.0), (1.75, 0.5)].map(|(x, y)| grid.along_x(y, [x, x])[0]).to_vec();
    let bow = Bed { beam: Some(Beam { rigidity: rigidity(5e4), posts }), ..bed(line, 5e8) };
    let plate = grid.tried(Degree::Three, Fields::Bending, &|_| sandwich(), &[], &[bow]).unwrap();
    let solution = plate.solve(&[lopsided(&grid, &plate)]).remove(0);
    let forces = plate.beam_forces(0, &solution);
    let most = forces.moments.iter().map(|(_, moment)| moment.value.abs()).fold(0.0, f64::max);
    for corner in [0.75, 2.25] {
        let own = forces.moments.iter().filter(|(along, _)| (along.value - corner).abs() < 1e-9);
        let own: Vec<f64> = own.map(|(_, moment)| moment.value.abs()).collect();
        assert_eq!(own.len(), 2);
        assert!(own.iter().all(|moment| *moment < 1e-6 * most), "{own:?} {most}");
    }
    let given: f64 = plate.pushes(0, &solution).iter().map(|push| push.force.value).sum();
    let borne: f64 = forces.posts.iter().map(|(_, force)| force.value).sum();
    assert_relative_eq!(given, borne, max_relative = 1e-6);
}
