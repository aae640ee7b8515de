//! Plans to mesh.

use std::f64::consts::{FRAC_PI_2, PI};

use skinspan::{geometry::Point, mesh::Plan, units::Length};
use uom::si::length::millimeter;

/// Places nearer than this become one, mm.
pub const MERGE: f64 = 2.0;

pub fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

pub fn point((x, y): (f64, f64)) -> Point {
    Point { x: mm(x), y: mm(y) }
}

pub fn points(corners: &[(f64, f64)]) -> Vec<Point> {
    corners.iter().copied().map(point).collect()
}

/// Sides of length `x` and `y` along the axes, from the origin; each corner an arc of so many chords.
pub fn rounded(x: f64, y: f64, radius: f64, chords: u32) -> Vec<(f64, f64)> {
    let centres = [
        (x - radius, radius, -FRAC_PI_2),
        (x - radius, y - radius, 0.0),
        (radius, y - radius, FRAC_PI_2),
        (radius, radius, PI),
    ];
    let arc = |(cx, cy, from): (f64, f64, f64)| {
        (0..=chords).map(move |i| {
            let angle = from + FRAC_PI_2 * f64::from(i) / f64::from(chords);
            (cx + radius * angle.cos(), cy + radius * angle.sin())
        })
    };
    centres.into_iter().flat_map(arc).collect()
}

/// The four sides of a rectangle as a line that comes back to its start.
pub fn frame(x: (f64, f64), y: (f64, f64)) -> Vec<(f64, f64)> {
    vec![(x.0, y.0), (x.1, y.0), (x.1, y.1), (x.0, y.1), (x.0, y.0)]
}

/// A usual top: three pipes lengthwise on strips 100 mm wide, a pad, a conduit 32 mm wide.
pub fn usual() -> Plan<'static> {
    let mut lines = Vec::new();
    for y in [350.0, 950.0, 1550.0] {
        lines.extend([y, y - 50.0, y + 50.0].map(|y| points(&[(-50.0, y), (2850.0, y)])));
    }
    lines.push(points(&frame((1500.0, 1850.0), (1050.0, 1400.0))));
    lines.push(points(&frame((150.0, 2650.0), (634.0, 666.0))));
    let outline = points(&rounded(2800.0, 1900.0, 150.0, 7));
    Plan { outline, holes: Vec::new(), lines, size: &usual_size, merge: mm(MERGE) }
}

/// The same without lines.
pub fn bare() -> Plan<'static> {
    Plan { lines: Vec::new(), size: &flat, ..usual() }
}

/// 100 mm at the pipes of the usual top, 300 mm away from them.
fn usual_size(place: Point) -> Length {
    let off = [350.0, 950.0, 1550.0].map(|y| (place.y - mm(y)).abs()).into_iter().fold(mm(1e6), Length::min);
    (mm(100.0) + 0.8 * off).min(mm(300.0))
}

/// 200 mm everywhere.
pub fn flat(_: Point) -> Length {
    mm(200.0)
}
