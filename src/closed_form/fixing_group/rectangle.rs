//! A rectangle on its bed: the part below a sloping plane is a polygon of three to five corners.

use super::{
    foot::Bed,
    sums::{Plane, Sums},
};

/// A corner of the pressed part, from the origin of the plane.
#[derive(Clone, Copy, Default)]
struct Corner {
    x: f64,
    y: f64,
    w: f64,
}

/// Integrals over the whole rectangle of these half sides.
pub(super) fn whole([a, b]: [f64; 2]) -> Sums {
    let area = 4.0 * a * b;
    Sums { moments: [area, 0.0, 0.0, area * a * a / 3.0, 0.0, area * b * b / 3.0], force: [0.0; 3] }
}

/// Integrals over the part of the rectangle where *w* < 0.
pub(super) fn bed([a, b]: [f64; 2], plane: &Plane) -> Bed {
    let corner = |x: f64, y: f64| Corner { x: x - plane.origin[0], y: y - plane.origin[1], w: plane.lift([x, y]) };
    let corners = [corner(-a, -b), corner(a, -b), corner(a, b), corner(-a, b)];
    let mut bed = Bed::default();
    let mut pressed = [Corner::default(); 5];
    let mut count = 0;
    for (from, to) in corners.iter().zip(corners.iter().cycle().skip(1)) {
        if from.w < 0.0 {
            pressed[count] = *from;
            count += 1;
            bed.depth = bed.depth.max(-from.w);
        }
        if (from.w < 0.0) != (to.w < 0.0) {
            let t = from.w / (from.w - to.w);
            pressed[count] = Corner { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y), w: 0.0 };
            count += 1;
        }
    }
    if count >= 3 {
        let first = pressed[0];
        for pair in pressed[1..count].windows(2) {
            add_triangle(&mut bed.sums, [first, pair[0], pair[1]]);
        }
    }
    bed
}

/// ∫ *fg* over a triangle is *A*/12 (Σ*f* Σ*g* + Σ *fᵢ gᵢ*) for linear *f* and *g*.
fn add_triangle(sums: &mut Sums, [p, q, r]: [Corner; 3]) {
    let area = 0.5 * ((q.x - p.x) * (r.y - p.y) - (r.x - p.x) * (q.y - p.y));
    let [x, y, w] = [[p.x, q.x, r.x], [p.y, q.y, r.y], [p.w, q.w, r.w]];
    let total = |f: [f64; 3]| f[0] + f[1] + f[2];
    let product =
        |f: [f64; 3], g: [f64; 3]| area / 12.0 * (total(f) * total(g) + f[0] * g[0] + f[1] * g[1] + f[2] * g[2]);
    let mean = |f: [f64; 3]| area / 3.0 * total(f);
    let moments = [area, mean(x), mean(y), product(x, x), product(x, y), product(y, y)];
    sums.moments.iter_mut().zip(moments).for_each(|(sum, part)| *sum += part);
    let force = [mean(w), product(w, x), product(w, y)];
    sums.force.iter_mut().zip(force).for_each(|(sum, part)| *sum += part);
}
