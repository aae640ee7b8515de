//! How conduits soften triangles.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use uom::si::length::millimeter;

use super::*;
use crate::{
    geometry::Axis,
    input::{NamedText, read_design, read_tables},
};

/// Points that count a share: 24 by 24 of them.
const COUNTED: f64 = 0.02;

/// A conduit of 20 mm in a core of 50 mm, 20 mm above the leg of a right triangle of 100 mm: of its 5000 mm² it takes
/// 20 × 100 − (30² − 10²)/2 = 1600, and there leaves 0.6 of the stiffness: 1/(1 + 0.32 (1/0.6 − 1)) = 0.8242.
#[test]
fn a_conduit_softens_by_its_share_of_the_triangle() {
    let path = format!("{}/examples/kelp-harvester.toml", env!("CARGO_MANIFEST_DIR"));
    let file = NamedText { name: "kelp-harvester.toml".to_owned(), text: std::fs::read_to_string(path).unwrap() };
    let mut top = read_design(&file, &read_tables(&[]).unwrap(), None).unwrap();
    let mm = Length::new::<millimeter>;
    top.conduits.truncate(1);
    top.conduits[0].diameter = mm(20.0);
    top.core.thickness = mm(50.0);
    let sections = Sections::new(&top, &Axis::BOTH).unwrap();
    let from = top.conduits[0].along.points()[0];
    let at = |x: f64, y: f64| Point { x: from.x + mm(500.0 + x), y: from.y + mm(y - 20.0) };
    let left = core_left(&top, &sections, [at(0.0, 0.0), at(100.0, 0.0), at(0.0, 100.0)]);
    assert!((left.value / 0.8242 - 1.0).abs() < COUNTED, "{left:?}");
    let clear = core_left(&top, &sections, [at(0.0, 100.0), at(100.0, 100.0), at(0.0, 200.0)]);
    assert!((clear.value - 1.0).abs() < 1e-12, "{clear:?}");
    assert_eq!(conduit_at(&top, at(50.0, 20.0)), Some(0));
    assert_eq!(conduit_at(&top, at(50.0, 31.0)), None);
}
