//! What holds for every mesh.

use std::collections::{BTreeMap, BTreeSet};

use skinspan::{
    geometry::Point,
    mesh::{Mesh, Plan},
};
use uom::si::{area::square_millimeter, length::millimeter};

use crate::plans::{MERGE, point};

/// Rounding of sums over some thousand triangles, as a share.
pub const EXACT: f64 = 1e-9;

pub fn xy(point: Point) -> (f64, f64) {
    (point.x.get::<millimeter>(), point.y.get::<millimeter>())
}

fn turn(a: Point, b: Point, c: Point) -> f64 {
    ((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y)).get::<square_millimeter>()
}

/// Area of a closed ring, mm², whichever way it turns.
pub fn area(ring: &[Point]) -> f64 {
    let parts = (1..ring.len() - 1).map(|i| turn(ring[0], ring[i], ring[i + 1]));
    0.5 * parts.sum::<f64>().abs()
}

pub fn mesh_area(mesh: &Mesh) -> f64 {
    let nodes = mesh.nodes();
    mesh.triangles().iter().map(|[a, b, c]| 0.5 * turn(nodes[*a], nodes[*b], nodes[*c])).sum()
}

/// Length of all chains of a line, mm.
pub fn length(mesh: &Mesh, line: usize) -> f64 {
    let nodes = mesh.nodes();
    let sides = mesh.line(line).iter().flat_map(|chain| chain.windows(2));
    sides.map(|pair| nodes[pair[0]].distance(nodes[pair[1]]).get::<millimeter>()).sum()
}

fn sides(mesh: &Mesh) -> BTreeMap<(usize, usize), usize> {
    let mut sides = BTreeMap::new();
    for [a, b, c] in mesh.triangles() {
        for side in [(*a, *b), (*b, *c), (*c, *a)] {
            *sides.entry(side).or_insert(0) += 1;
        }
    }
    sides
}

/// Euler's formula, two triangles at every inner side and one at every side of the rim, chains of sides, area.
pub fn check(plan: &Plan<'_>, mesh: &Mesh) {
    let sides = sides(mesh);
    assert!(sides.values().all(|count| *count == 1), "triangles overlap");
    let alone: BTreeSet<(usize, usize)> =
        sides.keys().filter(|(a, b)| !sides.contains_key(&(*b, *a))).copied().collect();
    let round = |ring: &Vec<usize>| (0..ring.len()).map(|i| (ring[i], ring[(i + 1) % ring.len()])).collect::<Vec<_>>();
    let rim: Vec<(usize, usize)> = mesh.rim().iter().flat_map(round).collect();
    assert_eq!(alone.len(), rim.len());
    assert_eq!(alone, rim.into_iter().collect(), "the rim is where triangles stand alone");

    let used: BTreeSet<usize> = mesh.triangles().iter().flatten().copied().collect();
    assert_eq!(used.len(), mesh.nodes().len(), "corners without a triangle");
    let (v, t) = (mesh.nodes().len(), mesh.triangles().len());
    // Inner sides are met from two triangles.
    let inner = (sides.len() - alone.len()) / 2;
    let e = inner + alone.len();
    assert_eq!(v + t + plan.holes.len(), e + 1, "Euler");

    let nodes = mesh.nodes();
    assert!(mesh.triangles().iter().all(|[a, b, c]| turn(nodes[*a], nodes[*b], nodes[*c]) > 0.0), "flat triangle");
    let expected = area(&plan.outline) - plan.holes.iter().map(|hole| area(hole)).sum::<f64>();
    let found = mesh_area(mesh);
    assert!((found / expected - 1.0).abs() < EXACT, "area {found} is not {expected}");

    for (index, line) in plan.lines.iter().enumerate() {
        for pair in mesh.line(index).iter().flat_map(|chain| chain.windows(2)) {
            let here = (pair[0], pair[1]);
            assert!(sides.contains_key(&here) || sides.contains_key(&(here.1, here.0)), "no side along line {index}");
        }
        follows(plan, mesh, index, line);
    }
    for (index, corners) in mesh.triangles().iter().enumerate() {
        let [a, b, c] = corners.map(|corner| nodes[corner]);
        let middle = Point { x: (a.x + b.x + c.x) / 3.0, y: (a.y + b.y + c.y) / 3.0 };
        assert_eq!(mesh.holding(middle), Some(index));
    }
}

/// Chains stay by their line, and what of the line lies well on the panel has a chain by it. Snapping moves a line by
/// less than the distance of merging at a time; it may be moved to a place that was moved itself.
fn follows(plan: &Plan<'_>, mesh: &Mesh, index: usize, line: &[Point]) {
    let moved = 3.0 * MERGE;
    for node in mesh.line(index).iter().flatten() {
        let away = off(line, mesh.nodes()[*node]);
        assert!(away < moved, "line {index} strays by {away} mm");
    }
    let chains: Vec<Vec<Point>> =
        mesh.line(index).iter().map(|chain| chain.iter().map(|node| mesh.nodes()[*node]).collect()).collect();
    let rings: Vec<Vec<Point>> = std::iter::once(&plan.outline)
        .chain(&plan.holes)
        .map(|ring| ring.iter().chain(ring.first()).copied().collect())
        .collect();
    for pair in line.windows(2) {
        for i in 0..=40 {
            let share = f64::from(i) / 40.0;
            let place = Point {
                x: pair[0].x + (pair[1].x - pair[0].x) * share,
                y: pair[0].y + (pair[1].y - pair[0].y) * share,
            };
            if mesh.holding(place).is_some() && rings.iter().all(|ring| off(ring, place) > moved) {
                let away = chains.iter().map(|chain| off(chain, place)).fold(f64::INFINITY, f64::min);
                assert!(away < moved, "no chain by line {index} at {:?}", xy(place));
            }
        }
    }
}

/// Distance of a place from a line, mm.
fn off(line: &[Point], place: Point) -> f64 {
    let (x, y) = xy(place);
    let piece = |pair: &[Point]| {
        let ((ax, ay), (bx, by)) = (xy(pair[0]), xy(pair[1]));
        let (dx, dy) = (bx - ax, by - ay);
        let long = dx * dx + dy * dy;
        let share = if long > 0.0 { (((x - ax) * dx + (y - ay) * dy) / long).clamp(0.0, 1.0) } else { 0.0 };
        point((ax + share * dx, ay + share * dy)).distance(place).get::<millimeter>()
    };
    let alone = line.first().map_or(f64::INFINITY, |first| first.distance(place).get::<millimeter>());
    line.windows(2).map(piece).fold(alone, f64::min)
}
