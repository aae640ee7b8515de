//! Contours by their usual descriptions.

use uom::si::ratio::ratio;

use super::{Contour, InvalidContour, Vertex};
use crate::{
    geometry::Point,
    units::{Length, Ratio},
};

/// Share of a side by which two roundings may overlap: the rounding of their sum.
const ROUNDING: f64 = 1e-9;

/// A corner of a polygon and its rounding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Where its sides meet, or would without the rounding.
    pub at: Point,
    /// Radius of the arc that touches both sides; zero for a sharp corner.
    pub radius: Length,
}

/// A corner between its sides.
struct Turn {
    /// Tangent of half the angle by which the line turns, without sign.
    half: f64,
    /// Tangent of a quarter of it, anticlockwise positive.
    quarter: f64,
    /// From the corner to where the rounding begins.
    cut: Length,
}

impl Contour {
    /// A polygon, its corners rounded.
    ///
    /// ```text
    /// t = r tan(φ/2)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | *t* | from the corner to where its rounding begins |
    /// | *r*, *φ* | its radius; the angle by which the line turns |
    ///
    /// # Errors
    ///
    /// Every reason of [`InvalidContour`].
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): the tangents from the corner to the circle.
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::{geometry::{Contour, Corner, Point}, units::Length};
    /// use uom::si::{area::square_meter, length::meter};
    /// let m = Length::new::<meter>;
    /// let corner = |x: f64, y: f64, radius: f64| Corner { at: Point { x: m(x), y: m(y) }, radius: m(radius) };
    /// // 3-4-5, with its inscribed circle of radius 1 in the right angle: a rounding takes 1 − π/4.
    /// let contour = Contour::polygon(&[corner(0.0, 0.0, 1.0), corner(4.0, 0.0, 0.0), corner(0.0, 3.0, 0.0)]);
    /// assert!((contour.expect("a radius that fits").area().get::<square_meter>() - 5.785_398).abs() < 1e-6);
    /// ```
    pub fn polygon(corners: &[Corner]) -> Result<Self, InvalidContour> {
        let count = corners.len();
        let next = |corner: usize| (corner + 1) % count;
        let side = |corner: usize| corners[corner].at.distance(corners[next(corner)].at);
        if let Some(before) = (0..count).find(|&corner| side(corner) == Length::default()) {
            return Err(InvalidContour::Repeated { corner: next(before) });
        }
        let turns: Vec<Turn> = (0..count)
            .map(|corner| {
                let before = corners[(corner + count - 1) % count].at;
                turn(before, corners[corner], corners[next(corner)].at)
            })
            .collect();
        for corner in 0..count {
            let (one, other) = (&turns[corner], &turns[next(corner)]);
            let side = side(corner);
            if one.cut + other.cut > side * (1.0 + ROUNDING) {
                let corner = if one.cut > other.cut { corner } else { next(corner) };
                let before = (corner + count - 1) % count;
                let free = |neighbour: usize, side: Length| side - turns[neighbour].cut;
                let room = free(before, corners[before].at.distance(corners[corner].at))
                    .min(free(next(corner), corners[corner].at.distance(corners[next(corner)].at)));
                let most = room.max(Length::default()) / turns[corner].half;
                return Err(InvalidContour::RadiusDoesNotFit { corner, most });
            }
        }
        let mut vertices = Vec::with_capacity(2 * count);
        for (index, (corner, turn)) in corners.iter().zip(&turns).enumerate() {
            if turn.cut > Length::default() {
                let from = towards(corner.at, corners[(index + count - 1) % count].at, turn.cut);
                vertices.push(Vertex { at: from, bulge: Ratio::new::<ratio>(turn.quarter) });
            }
            let at = towards(corner.at, corners[next(index)].at, turn.cut);
            vertices.push(Vertex { at, bulge: Ratio::default() });
        }
        Self::new(vertices)
    }

    /// A rectangle from the origin, its corners rounded: at the origin first, then anticlockwise.
    ///
    /// # Errors
    ///
    /// As [`Contour::polygon`].
    pub fn rectangle(length: Length, width: Length, radii: [Length; 4]) -> Result<Self, InvalidContour> {
        let zero = Length::default();
        let places = [(zero, zero), (length, zero), (length, width), (zero, width)];
        let corners: Vec<Corner> =
            places.into_iter().zip(radii).map(|((x, y), radius)| Corner { at: Point { x, y }, radius }).collect();
        Self::polygon(&corners)
    }

    /// A circle.
    ///
    /// # Errors
    ///
    /// As [`Contour::new`].
    pub fn circle(centre: Point, diameter: Length) -> Result<Self, InvalidContour> {
        let end = |out: Length| Vertex { at: Point { x: centre.x + out, ..centre }, bulge: Ratio::new::<ratio>(1.0) };
        Self::new(vec![end(-0.5 * diameter), end(0.5 * diameter)])
    }
}

fn turn(before: Point, corner: Corner, after: Point) -> Turn {
    let (x, y) = (corner.at.x - before.x, corner.at.y - before.y);
    let (out_x, out_y) = (after.x - corner.at.x, after.y - corner.at.y);
    let angle = (x * out_y - y * out_x).value.atan2((x * out_x + y * out_y).value);
    let half = (0.5 * angle.abs()).tan();
    Turn { half, quarter: (0.25 * angle).tan(), cut: corner.radius * half }
}

fn towards(from: Point, to: Point, by: Length) -> Point {
    let share = by / from.distance(to);
    Point { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }
}
