//! Where rings and lines of straight pieces meet.

use crate::{
    geometry::Point,
    units::{Area, Length},
};

/// A straight piece.
type Span = (Point, Point);

/// The pieces of a ring.
pub(super) fn spans(ring: &[Point]) -> Vec<Span> {
    ring.iter().zip(ring.iter().cycle().skip(1)).map(|(from, to)| (*from, *to)).collect()
}

/// The first place, in the order of the ring, where it crosses or touches itself or turns back on itself.
pub(super) fn of_itself(ring: &[Point]) -> Option<Point> {
    let spans = spans(ring);
    let last = spans.len() - 1;
    let neighbours = |i: usize, j: usize| j - i == 1 || i == 0 && j == last;
    first(pairs(&spans).filter_map(|(i, j)| {
        let place = if neighbours(i, j) {
            let (before, behind) = if j - i == 1 { (spans[i], spans[j]) } else { (spans[j], spans[i]) };
            turns_back(before, behind).then_some(before.1)
        } else {
            meeting(spans[i], spans[j])
        };
        place.map(|place| ((i, j), place))
    }))
}

/// The first place, in the order of one ring, where it crosses or touches another.
pub(super) fn of_two(ring: &[Point], other: &[Point]) -> Option<Point> {
    let (mut all, count) = (spans(ring), ring.len());
    all.extend(spans(other));
    first(
        pairs(&all)
            .filter(|(i, j)| *i < count && *j >= count)
            .filter_map(|(i, j)| meeting(all[i], all[j]).map(|place| ((i, j), place))),
    )
}

fn first(found: impl Iterator<Item = ((usize, usize), Point)>) -> Option<Point> {
    found.min_by_key(|(pair, _)| *pair).map(|(_, place)| place)
}

/// Pairs of pieces, the lower index first, whose ranges along both directions overlap.
fn pairs(spans: &[Span]) -> impl Iterator<Item = (usize, usize)> + '_ {
    let x = move |i: usize| range(spans[i].0.x, spans[i].1.x);
    let y = move |i: usize| range(spans[i].0.y, spans[i].1.y);
    let mut order: Vec<usize> = (0..spans.len()).collect();
    order.sort_by(|&i, &j| x(i).0.value.total_cmp(&x(j).0.value));
    (0..order.len()).flat_map(move |at| {
        let one = order[at];
        let beside: Vec<(usize, usize)> = order[at + 1..]
            .iter()
            .take_while(|&&other| x(other).0 <= x(one).1)
            .filter(|&&other| y(other).0 <= y(one).1 && y(one).0 <= y(other).1)
            .map(|&other| (one.min(other), one.max(other)))
            .collect();
        beside
    })
}

fn range(a: Length, b: Length) -> (Length, Length) {
    (a.min(b), a.max(b))
}

fn cross(from: Point, to: Point, point: Point) -> Area {
    (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x)
}

/// Whether a piece runs back over the one before it.
fn turns_back(before: Span, behind: Span) -> bool {
    let along: Area =
        (before.1.x - before.0.x) * (behind.1.x - behind.0.x) + (before.1.y - before.0.y) * (behind.1.y - behind.0.y);
    // The rounding of coordinates, with a margin.
    along < Area::default() && cross(before.0, before.1, behind.1).abs() <= -along * 1e-12
}

/// Where two pieces have a point in common; of a stretch in common, one end of it.
pub(super) fn meeting(one: Span, other: Span) -> Option<Point> {
    let zero = Area::default();
    let [a, b] = [cross(other.0, other.1, one.0), cross(other.0, other.1, one.1)];
    let [c, d] = [cross(one.0, one.1, other.0), cross(one.0, one.1, other.1)];
    if a == zero && b == zero {
        // In one line, and their ranges may overlap.
        let on = |point: Point, span: Span| {
            let within = |p: Length, s: Length, e: Length| p >= s.min(e) && p <= s.max(e);
            within(point.x, span.0.x, span.1.x) && within(point.y, span.0.y, span.1.y)
        };
        return [one.0, one.1]
            .into_iter()
            .find(|point| on(*point, other))
            .or_else(|| on(other.0, one).then_some(other.0));
    }
    if (a > zero && b > zero) || (a < zero && b < zero) || (c > zero && d > zero) || (c < zero && d < zero) {
        return None;
    }
    let share = a / (a - b);
    Some(Point { x: one.0.x + (one.1.x - one.0.x) * share, y: one.0.y + (one.1.y - one.0.y) * share })
}
