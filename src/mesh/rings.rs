//! The rim: rings made clean, and what is wrong with them.

use super::{
    error::{MeshError, Ring},
    plane::{Spot, apart, between, boxes_meet, distance, nearest, off, ring_turn, within},
    spots,
};
use crate::geometry::Point;

/// The outline anticlockwise, then the holes clockwise: the panel lies to the left of each side. Corners nearer than
/// `spacing` to the one before are left out.
pub(super) fn rings(outline: &[Point], holes: &[Vec<Point>], spacing: f64) -> Result<Vec<Vec<Spot>>, MeshError> {
    let mut found = vec![ring(outline, Ring::Outline, spacing)?];
    for (index, hole) in holes.iter().enumerate() {
        found.push(ring(hole, Ring::Hole(index), spacing)?);
    }
    for (index, one) in found.iter().enumerate().skip(1) {
        for (before, other) in found[..index].iter().enumerate() {
            if let Some(place) = meeting(one, other, spacing) {
                return Err(MeshError::Meet { rings: [name(before), name(index)], place });
            }
            // Rings that do not meet lie within each other or apart, as one corner does.
            let astray = if before == 0 { !within(other, one[0]) } else { within(other, one[0]) };
            let around = before > 0 && within(one, other[0]);
            if astray || around {
                let hole = if astray { index - 1 } else { before - 1 };
                return Err(MeshError::Outside { hole, place: super::point(found[hole + 1][0]) });
            }
        }
    }
    Ok(found)
}

const fn name(index: usize) -> Ring {
    if index == 0 { Ring::Outline } else { Ring::Hole(index - 1) }
}

/// One ring, its turn set right.
fn ring(corners: &[Point], name: Ring, spacing: f64) -> Result<Vec<Spot>, MeshError> {
    let mut kept: Vec<Spot> = Vec::new();
    for corner in spots(corners)? {
        if kept.last().is_none_or(|last| distance(*last, corner) >= spacing) {
            kept.push(corner);
        }
    }
    while kept.len() > 1 && distance(kept[0], kept[kept.len() - 1]) < spacing {
        kept.pop();
    }
    if kept.len() < 3 {
        return Err(MeshError::Corners { ring: name });
    }
    if let Some(place) = self_meeting(&kept, spacing) {
        return Err(MeshError::MeetsItself { ring: name, place });
    }
    if (ring_turn(&kept) > 0.0) != (name == Ring::Outline) {
        kept.reverse();
    }
    Ok(kept)
}

fn sides(ring: &[Spot]) -> Vec<[Spot; 2]> {
    ring.iter().zip(ring.iter().cycle().skip(1)).map(|(a, b)| [*a, *b]).collect()
}

/// Where a side comes near a corner that is none of its ends, or crosses another side.
fn self_meeting(ring: &[Spot], spacing: f64) -> Option<Point> {
    let sides = sides(ring);
    let count = sides.len();
    for (i, side) in sides.iter().enumerate() {
        for (j, corner) in ring.iter().enumerate() {
            if j != i && j != (i + 1) % count && off(*side, *corner) < spacing {
                return Some(super::point(*corner));
            }
        }
        for (j, other) in sides.iter().enumerate().skip(i + 2) {
            if (j + 1) % count != i && apart(*side, *other) <= 0.0 {
                return Some(middle(*side, *other));
            }
        }
    }
    None
}

/// Where two rings come nearer than `spacing`.
fn meeting(one: &[Spot], other: &[Spot], spacing: f64) -> Option<Point> {
    let others = sides(other);
    sides(one).into_iter().find_map(|side| {
        let met = |other: &&[Spot; 2]| boxes_meet(side, **other, spacing) && apart(side, **other) < spacing;
        others.iter().find(met).map(|other| middle(side, *other))
    })
}

/// Where two pieces meet, or the end of the second that is nearest to the first.
fn middle(one: [Spot; 2], other: [Spot; 2]) -> Point {
    let place = match super::plane::crossing(one, other) {
        Some(share) => between(one[0], one[1], share),
        None => {
            let ends = other.map(|end| between(one[0], one[1], nearest(one, end)));
            if distance(ends[0], other[0]) <= distance(ends[1], other[1]) { ends[0] } else { ends[1] }
        }
    };
    super::point(place)
}
