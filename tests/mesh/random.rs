//! Random lines on random tops.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use proptest::prelude::*;
use skinspan::mesh::{Mesh, Plan};
use uom::si::angle::degree;

use crate::{
    plans::{MERGE, flat, mm, points, rounded},
    sound,
};

type Line = Vec<(f64, f64)>;

fn checked(outline: &[(f64, f64)], holes: &[Line], lines: &[Line]) -> Mesh {
    let plan = Plan {
        outline: points(outline),
        holes: holes.iter().map(|hole| points(hole)).collect(),
        lines: lines.iter().map(|line| points(line)).collect(),
        size: &flat,
        merge: mm(MERGE),
    };
    let mesh = Mesh::new(&plan).unwrap();
    sound::check(&plan, &mesh);
    assert_eq!(format!("{mesh:?}"), format!("{:?}", Mesh::new(&plan).unwrap()));
    mesh
}

fn place() -> impl Strategy<Value = (f64, f64)> {
    (-100.0..1900.0, -100.0..1300.0)
}

/// Coordinates that fall on each other, on the rim, and a millimetre beside.
fn rough() -> impl Strategy<Value = (f64, f64)> {
    let step = |count: i32| (0..=count, -1..=1).prop_map(|(i, beside)| 100.0 * f64::from(i) + f64::from(beside));
    (step(18), step(12))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn any_lines(
        radius in 20.0..500.0,
        chords in 1_u32..9,
        lines in prop::collection::vec(prop::collection::vec(place(), 1..5), 0..8),
    ) {
        checked(&rounded(1800.0, 1200.0, radius, chords), &[], &lines);
    }

    #[test]
    fn lines_that_nearly_meet(
        hole in any::<bool>(),
        lines in prop::collection::vec(prop::collection::vec(rough(), 1..5), 0..10),
    ) {
        let ring: Line = rounded(400.0, 300.0, 50.0, 4).into_iter().map(|(x, y)| (x + 700.0, y + 500.0)).collect();
        checked(&rounded(1800.0, 1200.0, 100.0, 4), if hole { std::slice::from_ref(&ring) } else { &[] }, &lines);
    }

    /// Bands along the axes meet at right angles, so no sharp angle is given.
    #[test]
    fn bands_square_to_each_other(
        bands in prop::collection::vec((any::<bool>(), 0..30_i32, 0..30_i32, 1..30_i32, 1..3_i32), 0..6),
    ) {
        let grid = |i: i32| 40.0 * f64::from(i);
        let lines: Vec<Line> = bands
            .into_iter()
            .map(|(along, x, y, long, wide)| {
                let (a, b) = if along { (long, wide) } else { (wide, long) };
                crate::plans::frame((grid(x), grid(x + a)), (grid(y), grid(y + b)))
            })
            .collect();
        let mesh = checked(&[(0.0, 0.0), (1800.0, 0.0), (1800.0, 1200.0), (0.0, 1200.0)], &[], &lines);
        prop_assert!(mesh.least_angle().get::<degree>() > 13.9, "{}", mesh.least_angle().get::<degree>());
    }
}
