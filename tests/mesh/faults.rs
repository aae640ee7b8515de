//! Plans that are refused, and where it says they are wrong.

use skinspan::{
    geometry::Point,
    mesh::{Mesh, MeshError, Plan, Ring},
    units::Length,
};

use crate::plans::{flat, mm, point, points};

const PANEL: [(f64, f64); 4] = [(0.0, 0.0), (1000.0, 0.0), (1000.0, 600.0), (0.0, 600.0)];

fn square(x: f64, y: f64, side: f64) -> Vec<(f64, f64)> {
    vec![(x, y), (x + side, y), (x + side, y + side), (x, y + side)]
}

fn fault(outline: &[(f64, f64)], holes: &[Vec<(f64, f64)>]) -> MeshError {
    let holes = holes.iter().map(|hole| points(hole)).collect();
    let plan = Plan { outline: points(outline), holes, lines: Vec::new(), size: &flat, merge: mm(2.0) };
    Mesh::new(&plan).expect_err("a plan that cannot be meshed")
}

fn sized(size: &dyn Fn(Point) -> Length, merge: Length) -> Result<Mesh, MeshError> {
    Mesh::new(&Plan { outline: points(&PANEL), holes: Vec::new(), lines: Vec::new(), size, merge })
}

fn is_at(place: Point, expected: (f64, f64)) {
    assert!(place.distance(point(expected)) < mm(2.5), "{place:?}");
}

#[test]
fn outline_of_too_few_corners() {
    let outline = MeshError::Corners { ring: Ring::Outline };
    assert_eq!(fault(&[], &[]), outline);
    assert_eq!(fault(&PANEL[..2], &[]), outline);
    assert_eq!(fault(&square(0.0, 0.0, 1.0), &[]), outline);
    assert_eq!(fault(&PANEL, &[square(300.0, 300.0, 0.5)]), MeshError::Corners { ring: Ring::Hole(0) });
}

#[test]
fn outline_that_crosses_itself() {
    let bow = [(0.0, 0.0), (1000.0, 600.0), (1000.0, 0.0), (0.0, 600.0)];
    let MeshError::MeetsItself { ring: Ring::Outline, place } = fault(&bow, &[]) else { panic!("another fault") };
    is_at(place, (500.0, 300.0));
    assert!(fault(&bow, &[]).to_string().contains("outline crosses or touches itself at x = 0.500 m, y = 0.300 m"));
    // A slot of no width, and a panel of none.
    let slot = [(0.0, 0.0), (499.5, 0.0), (499.5, 300.0), (500.0, 0.0), (1000.0, 0.0), (1000.0, 600.0), (0.0, 600.0)];
    assert!(matches!(fault(&slot, &[]), MeshError::MeetsItself { .. } | MeshError::Corners { .. }));
    let flat = [(0.0, 0.0), (1000.0, 0.0), (500.0, 1.0)];
    let MeshError::MeetsItself { place, .. } = fault(&flat, &[]) else { panic!("another fault") };
    is_at(place, (500.0, 1.0));
}

#[test]
fn hole_that_meets_the_outline_or_another() {
    let rings = |fault| match fault {
        MeshError::Meet { rings, place } => (rings, place),
        other => panic!("{other}"),
    };
    let (met, place) = rings(fault(&PANEL, &[square(900.0, 200.0, 200.0)]));
    assert_eq!(met, [Ring::Outline, Ring::Hole(0)]);
    assert!((place.x - mm(1000.0)).abs() < mm(1e-6));
    let (met, _) = rings(fault(&PANEL, &[square(1.0, 200.0, 200.0)]));
    assert_eq!(met, [Ring::Outline, Ring::Hole(0)]);
    let (met, _) = rings(fault(&PANEL, &[square(100.0, 200.0, 200.0), square(301.0, 200.0, 200.0)]));
    assert_eq!(met, [Ring::Hole(0), Ring::Hole(1)]);
}

#[test]
fn hole_outside_or_in_a_hole() {
    assert!(matches!(fault(&PANEL, &[square(2000.0, 0.0, 100.0)]), MeshError::Outside { hole: 0, .. }));
    assert!(matches!(fault(&PANEL, &[square(-50.0, -50.0, 2000.0)]), MeshError::Outside { hole: 0, .. }));
    let (large, small) = (square(200.0, 100.0, 300.0), square(300.0, 200.0, 100.0));
    assert!(matches!(fault(&PANEL, &[large.clone(), small.clone()]), MeshError::Outside { hole: 1, .. }));
    assert!(matches!(fault(&PANEL, &[small, large]), MeshError::Outside { hole: 0, .. }));
}

#[test]
fn size_that_is_not_positive() {
    for wrong in [0.0, -10.0, f64::NAN] {
        let size = |place: Point| if place.x > mm(700.0) { mm(wrong) } else { mm(200.0) };
        let Err(MeshError::Size { place, .. }) = sized(&size, mm(2.0)) else { panic!("{wrong} is taken") };
        assert!(place.x > mm(700.0));
    }
    assert!(matches!(sized(&|_| mm(0.001), mm(2.0)), Err(MeshError::TooFine { .. })));
    assert!(sized(&|_| mm(f64::INFINITY), mm(2.0)).is_ok_and(|mesh| mesh.triangles().len() == 2));
}

#[test]
fn merge_and_coordinates_are_numbers() {
    for merge in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(sized(&flat, mm(merge)), Err(MeshError::Merge));
    }
    let mut outline = PANEL;
    outline[1].0 = f64::NAN;
    assert_eq!(fault(&outline, &[]), MeshError::NotFinite);
}
