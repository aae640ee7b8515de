//! How many triangles, of what shape, and the same each time.

use skinspan::mesh::{Mesh, Plan};
use uom::si::{angle::degree, length::millimeter};

use crate::{
    plans::{MERGE, bare, mm, point, points, usual},
    sound,
};

fn usual_mesh() -> Mesh {
    let plan = usual();
    let mesh = Mesh::new(&plan).expect("the usual top");
    sound::check(&plan, &mesh);
    mesh
}

#[test]
fn usual_top_has_few_triangles_of_good_shape() {
    let mesh = usual_mesh();
    let count = mesh.triangles().len();
    assert!((400..=900).contains(&count), "{count}");
    // The band of 32 mm: right-angled triangles three times as long as wide, atan(1/3).
    let angle = mesh.least_angle().get::<degree>();
    assert!(angle > 18.0, "{angle}");
}

#[test]
fn narrow_band_does_not_force_small_triangles() {
    let mesh = usual_mesh();
    let inside = |corner: usize| {
        let (x, y) = sound::xy(mesh.nodes()[corner]);
        (149.0..2651.0).contains(&x) && (633.0..667.0).contains(&y)
    };
    let count = mesh.triangles().iter().filter(|corners| corners.iter().all(|corner| inside(*corner))).count();
    // 2 · 2500/(3 · 32) = 52, and what rounding up adds.
    assert!((40..=64).contains(&count), "{count}");
}

#[test]
fn sides_are_about_as_long_as_asked() {
    let plan = bare();
    let mesh = Mesh::new(&plan).expect("a bare top");
    sound::check(&plan, &mesh);
    assert!(mesh.least_angle().get::<degree>() > 21.9);
    let nodes = mesh.nodes();
    let long = |[a, b, c]: &[usize; 3]| {
        let sides = [(a, b), (b, c), (c, a)].map(|(p, q)| nodes[*p].distance(nodes[*q]).get::<millimeter>());
        sides.into_iter().fold(0.0, f64::max)
    };
    let longest = mesh.triangles().iter().map(long).fold(0.0, f64::max);
    assert!((200.0..=280.0 + 1e-6).contains(&longest), "{longest}");
    // Equilateral triangles of 200 mm would be 2800 · 1900 / (0.433 · 200²) = 307.
    assert!((230..=500).contains(&mesh.triangles().len()), "{}", mesh.triangles().len());
}

#[test]
fn same_plan_gives_the_same_mesh() {
    let (one, other) = (usual_mesh(), usual_mesh());
    assert_eq!(format!("{one:?}"), format!("{other:?}"));
}

#[test]
fn place_has_its_triangle() {
    let mesh = usual_mesh();
    for off in [(-1.0, 900.0), (2801.0, 900.0), (5.0, 5.0), (1e9, 900.0), (1400.0, -1e9), (f64::NAN, 0.0)] {
        assert_eq!(mesh.holding(point(off)), None, "{off:?}");
    }
    for on in [(0.0, 900.0), (2800.0, 900.0), (1400.0, 0.0), (1400.0, 1900.0), (1234.0, 350.0)] {
        assert!(mesh.holding(point(on)).is_some(), "{on:?}");
    }
}

#[test]
fn sharp_angle_of_the_plan_does_not_force_small_triangles() {
    let mut plan = bare();
    // 0.7° and 1.8°.
    for (from, to) in [((100.0, 300.0), (2500.0, 330.0)), ((100.0, 880.0), (2500.0, 955.0))] {
        plan.lines.push(vec![point(from), point((2500.0, from.1))]);
        plan.lines.push(vec![point(from), point(to)]);
    }
    let mesh = Mesh::new(&plan).expect("lines at a sharp angle");
    sound::check(&plan, &mesh);
    // Refinement to its own end would make several times as many.
    assert!(mesh.triangles().len() < 1500, "{}", mesh.triangles().len());
}

#[test]
fn place_by_a_side_is_held_where_it_lies() {
    let plan = Plan {
        outline: points(&[(0.0, 0.0), (1000.0, 0.0), (1000.0, 1000.0), (0.0, 1000.0)]),
        holes: Vec::new(),
        lines: vec![points(&[(0.0, 0.0), (1000.0, 1000.0)])],
        size: &|_| mm(2000.0),
        merge: mm(MERGE),
    };
    let mesh = Mesh::new(&plan).expect("two triangles");
    // Nearer to the diagonal than rounding is allowed for: both triangles may hold the place.
    let near = 2e-7;
    assert_eq!(mesh.holding(point((500.0 + near, 500.0 - near))), mesh.holding(point((900.0, 100.0))));
    assert_eq!(mesh.holding(point((500.0 - near, 500.0 + near))), mesh.holding(point((100.0, 900.0))));
}
