//! Pieces beside a contour, and what they cut each other into. Bare numbers are metres.

use uom::si::length::meter;

use super::super::piece::Piece;
use crate::{
    geometry::{Axis, Point},
    units::Length,
};

/// Ends nearer than this meet: a hundred times the rounding of places on the largest of tops.
pub(super) const MEETS: f64 = 1e-7;

pub(super) fn xy(at: Point) -> [f64; 2] {
    [at.x.get::<meter>(), at.y.get::<meter>()]
}

pub(super) fn point([x, y]: [f64; 2]) -> Point {
    Point { x: Length::new::<meter>(x), y: Length::new::<meter>(y) }
}

/// A piece beside the contour, before or after it is cut.
#[derive(Clone, Copy)]
pub(super) struct Raw {
    pub(super) from: [f64; 2],
    pub(super) to: [f64; 2],
    pub(super) bulge: f64,
}

impl Raw {
    fn piece(&self) -> Piece {
        Piece { from: point(self.from), to: point(self.to), bulge: self.bulge }
    }

    /// Centre, radius, where it begins as an angle, and how far it turns; none of a straight one.
    fn circle(&self) -> Option<Circle> {
        let piece = self.piece();
        if piece.is_straight() {
            return None;
        }
        let centre = xy(piece.centre());
        let start = (self.from[1] - centre[1]).atan2(self.from[0] - centre[0]);
        Some(Circle { centre, radius: piece.radius().get::<meter>(), start, sweep: 4.0 * self.bulge.atan() })
    }

    /// The place at a share of it.
    pub(super) fn at(&self, share: f64) -> Point {
        point(self.circle().map_or_else(
            || [0, 1].map(|k| self.from[k] + share * (self.to[k] - self.from[k])),
            |circle| circle.at(circle.start + share * circle.sweep),
        ))
    }

    /// The share of it at which a place on it lies.
    fn share(&self, at: [f64; 2]) -> f64 {
        self.circle().map_or_else(
            || {
                let [dx, dy] = [0, 1].map(|k| self.to[k] - self.from[k]);
                ((at[0] - self.from[0]) * dx + (at[1] - self.from[1]) * dy) / (dx * dx + dy * dy)
            },
            |circle| circle.share(at),
        )
    }

    fn length(&self) -> f64 {
        self.piece().length().get::<meter>()
    }

    /// From one share to another.
    fn part(&self, from: f64, to: f64) -> Self {
        let ends = [from, to].map(|share| xy(self.at(share)));
        let bulge = (self.bulge.atan() * (to - from)).tan();
        Self { from: ends[0], to: ends[1], bulge }
    }
}

/// The rectangle round a piece: its lowest and its highest coordinates.
#[derive(Clone, Copy)]
pub(super) struct Bounds([[f64; 2]; 2]);

impl Bounds {
    pub(super) fn of(piece: &Raw) -> Self {
        let ends = Axis::BOTH.map(|axis| piece.piece().extent(axis));
        Self([ends.map(|(low, _)| low.get::<meter>()), ends.map(|(_, high)| high.get::<meter>())])
    }

    /// Whether two overlap, or almost.
    pub(super) fn meets(&self, other: &Self) -> bool {
        (0..2).all(|k| self.0[0][k] <= other.0[1][k] + MEETS && other.0[0][k] <= self.0[1][k] + MEETS)
    }
}

#[derive(Clone, Copy)]
struct Circle {
    centre: [f64; 2],
    radius: f64,
    start: f64,
    sweep: f64,
}

impl Circle {
    fn at(&self, angle: f64) -> [f64; 2] {
        [self.centre[0] + self.radius * angle.cos(), self.centre[1] + self.radius * angle.sin()]
    }

    fn share(&self, at: [f64; 2]) -> f64 {
        let angle = (at[1] - self.centre[1]).atan2(at[0] - self.centre[0]);
        let turned = ((angle - self.start) * self.sweep.signum()).rem_euclid(std::f64::consts::TAU);
        // A trifle before its start is not almost a turn behind it.
        let turned = if turned * self.radius > std::f64::consts::TAU * self.radius - MEETS { 0.0 } else { turned };
        turned / self.sweep.abs()
    }
}

/// What others, those near it at least, cut a piece into.
pub(super) fn pieces_of<'r>(piece: &Raw, near: impl Iterator<Item = &'r Raw>) -> Vec<Raw> {
    let length = piece.length();
    let inside = |share: &f64| share * length > MEETS && (1.0 - share) * length > MEETS;
    let met = near.flat_map(|other| meetings(piece, other));
    let mut cuts: Vec<f64> = met.map(|at| piece.share(at)).filter(inside).collect();
    cuts.extend([0.0, 1.0]);
    cuts.sort_by(f64::total_cmp);
    cuts.dedup_by(|a, b| (*a - *b) * length < MEETS);
    cuts.windows(2).map(|pair| piece.part(pair[0], pair[1])).collect()
}

/// Where the lines and circles of two pieces meet, on both of them.
fn meetings(one: &Raw, other: &Raw) -> Vec<[f64; 2]> {
    let on = |piece: &Raw, at: [f64; 2]| {
        let (share, give) = (piece.share(at), MEETS / piece.length());
        share >= -give && share <= 1.0 + give
    };
    let places = match (one.circle(), other.circle()) {
        (None, None) => line_on_line(one, other),
        (None, Some(circle)) => line_on_circle(one, circle),
        (Some(circle), None) => line_on_circle(other, circle),
        (Some(circle), Some(two)) => circle_on_circle(circle, two),
    };
    places.into_iter().filter(|at| on(one, *at) && on(other, *at)).collect()
}

fn line_on_line(one: &Raw, other: &Raw) -> Vec<[f64; 2]> {
    let ([ax, ay], [bx, by]) = (way(one), way(other));
    let turned = ax * by - ay * bx;
    let [dx, dy] = [other.from[0] - one.from[0], other.from[1] - one.from[1]];
    let share = (dx * by - dy * bx) / turned;
    // Side by side the share is no number.
    if share.is_finite() { vec![[one.from[0] + ax * share, one.from[1] + ay * share]] } else { Vec::new() }
}

fn way(line: &Raw) -> [f64; 2] {
    [line.to[0] - line.from[0], line.to[1] - line.from[1]]
}

fn line_on_circle(line: &Raw, circle: Circle) -> Vec<[f64; 2]> {
    let [dx, dy] = way(line);
    let length = dx.hypot(dy);
    let [ux, uy] = [dx / length, dy / length];
    let [cx, cy] = [circle.centre[0] - line.from[0], circle.centre[1] - line.from[1]];
    let foot = cx * ux + cy * uy;
    let half = half_chord(circle.radius, cx * uy - cy * ux);
    half.map_or_else(Vec::new, |half| {
        [foot - half, foot + half].map(|along| [line.from[0] + ux * along, line.from[1] + uy * along]).to_vec()
    })
}

fn circle_on_circle(one: Circle, other: Circle) -> Vec<[f64; 2]> {
    let [dx, dy] = [other.centre[0] - one.centre[0], other.centre[1] - one.centre[1]];
    let apart = dx.hypot(dy);
    if apart < MEETS {
        return Vec::new();
    }
    let [ux, uy] = [dx / apart, dy / apart];
    let foot = (apart * apart + (one.radius - other.radius) * (one.radius + other.radius)) / (2.0 * apart);
    half_chord(one.radius, foot).map_or_else(Vec::new, |half| {
        let place = |half: f64| [one.centre[0] + ux * foot - uy * half, one.centre[1] + uy * foot + ux * half];
        vec![place(half), place(-half)]
    })
}

/// Half of the chord so far off the middle of a circle; nothing of one that it just misses by rounding.
fn half_chord(radius: f64, off: f64) -> Option<f64> {
    let beyond = off.abs() - radius;
    (beyond <= MEETS).then(|| ((radius - off) * (radius + off)).max(0.0).sqrt())
}
