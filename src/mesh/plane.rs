//! Straight pieces in the plane, in metres.

/// A place, x and y.
pub(super) type Spot = [f64; 2];

pub(super) fn minus(p: Spot, q: Spot) -> Spot {
    [p[0] - q[0], p[1] - q[1]]
}

pub(super) fn dot(p: Spot, q: Spot) -> f64 {
    p[0] * q[0] + p[1] * q[1]
}

/// Twice the area of the triangle from the origin; above zero where `q` lies to the left of `p`.
pub(super) fn cross(p: Spot, q: Spot) -> f64 {
    p[0] * q[1] - p[1] * q[0]
}

pub(super) fn distance(p: Spot, q: Spot) -> f64 {
    (p[0] - q[0]).hypot(p[1] - q[1])
}

/// The place at a share of the way from one to the other.
pub(super) fn between(p: Spot, q: Spot, share: f64) -> Spot {
    [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])]
}

/// Twice the area of a triangle, above zero where its corners turn anticlockwise.
pub(super) fn turn([a, b, c]: [Spot; 3]) -> f64 {
    cross(minus(b, a), minus(c, a))
}

/// Share of the way along a piece at which it is nearest to a place.
pub(super) fn nearest([a, b]: [Spot; 2], place: Spot) -> f64 {
    let way = minus(b, a);
    let long = dot(way, way);
    if long > 0.0 { (dot(minus(place, a), way) / long).clamp(0.0, 1.0) } else { 0.0 }
}

/// Distance of a place from a piece.
pub(super) fn off(piece: [Spot; 2], place: Spot) -> f64 {
    distance(between(piece[0], piece[1], nearest(piece, place)), place)
}

/// Where two pieces cross, each inside: the share of the way along the first.
pub(super) fn crossing([a, b]: [Spot; 2], [c, d]: [Spot; 2]) -> Option<f64> {
    let (from_c, from_d) = (turn([a, b, c]), turn([a, b, d]));
    let (from_a, from_b) = (turn([c, d, a]), turn([c, d, b]));
    let across = |p: f64, q: f64| p > 0.0 && q < 0.0 || p < 0.0 && q > 0.0;
    (across(from_c, from_d) && across(from_a, from_b)).then(|| from_a / (from_a - from_b))
}

/// Distance of two pieces: at the end of one, if they do not cross.
pub(super) fn apart(one: [Spot; 2], other: [Spot; 2]) -> f64 {
    if crossing(one, other).is_some() {
        return 0.0;
    }
    let ends = [off(one, other[0]), off(one, other[1]), off(other, one[0]), off(other, one[1])];
    ends.into_iter().fold(f64::INFINITY, f64::min)
}

/// Whether boxes about two pieces, the first drawn out by a distance, meet.
pub(super) fn boxes_meet(one: [Spot; 2], other: [Spot; 2], by: f64) -> bool {
    (0..2).all(|i| {
        one[0][i].min(one[1][i]) - by <= other[0][i].max(other[1][i])
            && other[0][i].min(other[1][i]) <= one[0][i].max(one[1][i]) + by
    })
}

/// Centre of the circle through three places.
pub(super) fn centre([a, b, c]: [Spot; 3]) -> Spot {
    let (p, q) = (minus(b, a), minus(c, a));
    let (pp, qq, twice) = (dot(p, p), dot(q, q), 2.0 * cross(p, q));
    [a[0] + (q[1] * pp - p[1] * qq) / twice, a[1] + (p[0] * qq - q[0] * pp) / twice]
}

/// Smallest angle of a triangle, rad, and the corner that has it. Opposite the shortest side.
pub(super) fn least_angle(corners: [Spot; 3]) -> (f64, usize) {
    let side = |i: usize| distance(corners[(i + 1) % 3], corners[(i + 2) % 3]);
    let at = if side(0) <= side(1) && side(0) <= side(2) {
        0
    } else if side(1) <= side(2) {
        1
    } else {
        2
    };
    let (p, q) = (minus(corners[(at + 1) % 3], corners[at]), minus(corners[(at + 2) % 3], corners[at]));
    (cross(p, q).atan2(dot(p, q)), at)
}

/// Twice the area that a closed ring encloses, above zero where it turns anticlockwise.
pub(super) fn ring_turn(ring: &[Spot]) -> f64 {
    let Some(first) = ring.first() else { return 0.0 };
    ring.windows(2).map(|pair| turn([*first, pair[0], pair[1]])).sum()
}

/// Whether a place lies within a closed ring: a ray towards +x leaves it an odd number of times.
pub(super) fn within(ring: &[Spot], place: Spot) -> bool {
    let sides = ring.iter().zip(ring.iter().cycle().skip(1));
    sides.fold(false, |inside, (a, b)| {
        let spans = (a[1] > place[1]) != (b[1] > place[1]);
        let leaves = spans && place[0] < a[0] + (place[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0]);
        inside != leaves
    })
}
