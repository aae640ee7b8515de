//! Lines that run along each other, along the rim, out over it and through holes.

use skinspan::mesh::{Mesh, Plan};

use crate::{
    plans::{MERGE, flat, frame, mm, points, rounded},
    sound::{self, EXACT, length, xy},
};

/// A panel 1000 × 600 mm with lines; the size 200 mm.
fn mesh(holes: &[Vec<(f64, f64)>], lines: &[Vec<(f64, f64)>]) -> Mesh {
    let plan = Plan {
        outline: points(&[(0.0, 0.0), (1000.0, 0.0), (1000.0, 600.0), (0.0, 600.0)]),
        holes: holes.iter().map(|hole| points(hole)).collect(),
        lines: lines.iter().map(|line| points(line)).collect(),
        size: &flat,
        merge: mm(MERGE),
    };
    let mesh = Mesh::new(&plan).expect("a plan that can be meshed");
    sound::check(&plan, &mesh);
    mesh
}

fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() < EXACT * expected, "{found} is not {expected}");
}

fn ends(mesh: &Mesh, line: usize) -> Vec<[(f64, f64); 2]> {
    let end = |node: usize| {
        let (x, y) = xy(mesh.nodes()[node]);
        ((x * 1e6).round() / 1e6, (y * 1e6).round() / 1e6)
    };
    mesh.line(line).iter().map(|chain| [end(chain[0]), end(chain[chain.len() - 1])]).collect()
}

#[test]
fn line_that_ends_inside_has_its_length_and_direction() {
    let mesh = mesh(&[], &[vec![(800.0, 500.0), (200.0, 500.0), (200.0, 100.0)]]);
    near(length(&mesh, 0), 1000.0);
    assert_eq!(ends(&mesh, 0), [[(800.0, 500.0), (200.0, 100.0)]]);
    assert!(mesh.line(1).is_empty());
}

#[test]
fn crossing_is_a_corner_of_both_lines() {
    let mesh = mesh(&[], &[vec![(100.0, 100.0), (900.0, 500.0)], vec![(100.0, 500.0), (900.0, 100.0)]]);
    let both: Vec<_> = mesh.line(0)[0].iter().filter(|node| mesh.line(1)[0].contains(node)).collect();
    assert_eq!(both.len(), 1);
    let (x, y) = xy(mesh.nodes()[*both[0]]);
    assert!((x - 500.0).hypot(y - 300.0) < 1e-6);
    near(length(&mesh, 0), 800.0_f64.hypot(400.0));
}

#[test]
fn line_that_crosses_itself_is_one_chain() {
    let mesh = mesh(&[], &[vec![(100.0, 100.0), (900.0, 100.0), (900.0, 500.0), (500.0, 500.0), (500.0, 50.0)]]);
    assert_eq!(mesh.line(0).len(), 1);
    near(length(&mesh, 0), 800.0 + 400.0 + 400.0 + 450.0);
}

#[test]
fn line_out_over_the_rim_is_cut_at_it() {
    let mesh = mesh(
        &[],
        &[vec![(-100.0, 300.0), (1200.0, 300.0)], vec![(300.0, 500.0), (300.0, 900.0), (700.0, 900.0), (700.0, 500.0)]],
    );
    assert_eq!(ends(&mesh, 0), [[(0.0, 300.0), (1000.0, 300.0)]]);
    assert_eq!(ends(&mesh, 1), [[(300.0, 500.0), (300.0, 600.0)], [(700.0, 600.0), (700.0, 500.0)]]);
}

#[test]
fn line_through_a_hole_has_two_chains() {
    let hole = vec![(400.0, 200.0), (600.0, 200.0), (600.0, 400.0), (400.0, 400.0)];
    let mesh = mesh(&[hole], &[vec![(0.0, 300.0), (1000.0, 300.0)], vec![(450.0, 300.0), (550.0, 300.0)]]);
    assert_eq!(ends(&mesh, 0), [[(0.0, 300.0), (400.0, 300.0)], [(600.0, 300.0), (1000.0, 300.0)]]);
    assert!(mesh.line(1).is_empty());
    assert_eq!(mesh.holding(crate::plans::point((500.0, 300.0))), None);
}

#[test]
fn line_along_the_rim_is_the_rim() {
    for offset in [0.0, 1.0, -1.0] {
        let mesh = mesh(&[], &[vec![(200.0, offset), (800.0, offset)]]);
        near(length(&mesh, 0), 600.0);
        assert!(mesh.line(0)[0].iter().all(|node| mesh.rim()[0].contains(node)));
        assert!(mesh.line(0)[0].iter().all(|node| xy(mesh.nodes()[*node]).1.abs() < 1e-9));
    }
}

#[test]
fn line_along_the_whole_rim_and_along_a_hole() {
    let hole = vec![(400.0, 200.0), (600.0, 200.0), (600.0, 400.0), (400.0, 400.0)];
    let lines = [frame((0.5, 999.0), (0.5, 599.0)), frame((399.0, 601.0), (199.0, 401.0))];
    let mesh = mesh(&[hole], &lines);
    near(length(&mesh, 0), 3200.0);
    near(length(&mesh, 1), 800.0);
}

#[test]
fn lines_on_each_other_share_their_corners() {
    let mesh = mesh(&[], &[vec![(100.0, 300.0), (900.0, 300.0)], vec![(700.0, 300.0), (300.0, 300.0)]]);
    near(length(&mesh, 0), 800.0);
    near(length(&mesh, 1), 400.0);
    assert_eq!(ends(&mesh, 1), [[(700.0, 300.0), (300.0, 300.0)]]);
    assert!(mesh.line(1)[0].iter().all(|node| mesh.line(0)[0].contains(node)));
}

#[test]
fn lines_a_millimetre_apart_become_one() {
    let bundle: Vec<Vec<(f64, f64)>> =
        (0..4).map(f64::from).map(|i| vec![(100.0 + 100.0 * i, 300.0 + 0.4 * i), (900.0, 300.0 - 0.3 * i)]).collect();
    let mesh = mesh(&[], &bundle);
    for line in 1..4 {
        assert!(mesh.line(line)[0].iter().all(|node| mesh.line(0)[0].contains(node)), "line {line}");
    }
    assert!(mesh.least_angle().get::<uom::si::angle::degree>() > 20.0);
}

#[test]
fn point_is_a_corner() {
    let mesh = mesh(&[], &[vec![(333.0, 222.0)], vec![(333.0, 700.0)], vec![]]);
    assert_eq!(ends(&mesh, 0), [[(333.0, 222.0); 2]]);
    assert!(mesh.line(1).is_empty() && mesh.line(2).is_empty());
}

#[test]
fn round_hole_is_kept_corner_for_corner() {
    let hole = rounded(300.0, 300.0, 60.0, 6).into_iter().map(|(x, y)| (x + 300.0, y + 150.0)).collect::<Vec<_>>();
    let mesh = mesh(std::slice::from_ref(&hole), &[]);
    let ring: Vec<(f64, f64)> = mesh.rim()[1].iter().map(|node| xy(mesh.nodes()[*node])).collect();
    for corner in hole {
        assert!(ring.iter().any(|(x, y)| (x - corner.0).hypot(y - corner.1) < 1e-9));
    }
}

#[test]
fn places_the_distance_of_merging_apart_come_to_an_end() {
    // 2 mm apart but for rounding, where a line ends at one of them or passes both.
    let mesh = mesh(
        &[],
        &[
            vec![(101.0, 501.0)],
            vec![(400.0, 0.0), (99.0, 501.0)],
            vec![(801.0, 301.0)],
            vec![(0.0, 300.0), (801.0, 299.0)],
        ],
    );
    assert_eq!(mesh.line(1)[0].last(), mesh.line(0)[0].last());
    assert_eq!(mesh.line(3)[0].last(), mesh.line(2)[0].last());
}
