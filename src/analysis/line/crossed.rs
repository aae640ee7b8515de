//! What a straight line across the top passes.

use super::{Piece, Region, shortest};
use crate::{
    geometry::{Axis, Crossing, Point, Polyline},
    top::Top,
    units::Length,
};

/// What a straight line across the top passes: conduits before backing before core, as the weaker counts.
pub(super) fn pieces(top: &Top, axis: Axis, station: Length) -> Vec<Piece> {
    let length = top.outline.size(axis);
    let conduits = top.conduits.iter().enumerate().flat_map(|(index, conduit)| {
        let bands = bands(&conduit.along, conduit.diameter, axis, station);
        bands.into_iter().map(move |band| (band, Region::Conduit(index)))
    });
    let backings = top.backings.iter().enumerate().flat_map(|(index, backing)| {
        let bands = bands(&backing.along, backing.width, axis, station);
        bands.into_iter().map(move |band| (band, Region::Backing(index)))
    });
    let inlays: Vec<_> = conduits.chain(backings).collect();
    let mut cuts: Vec<Length> =
        inlays.iter().flat_map(|((from, to), _)| [*from, *to]).chain([Length::default(), length]).collect();
    cuts.retain(|at| *at >= Length::default() && *at <= length);
    cuts.sort_by(|a, b| a.value.total_cmp(&b.value));
    cuts.dedup_by(|a, b| *a - *b < shortest() / 10.0);
    cuts.windows(2)
        .map(|pair| {
            let middle = (pair[0] + pair[1]) / 2.0;
            let inside = inlays.iter().find(|((from, to), _)| middle > *from && middle < *to);
            Piece { length: pair[1] - pair[0], region: inside.map_or(Region::Field, |(_, region)| *region) }
        })
        .collect()
}

/// The backing that a place lies on, whatever conduit passes it.
#[must_use]
pub fn backing_at(top: &Top, place: Point) -> Option<usize> {
    top.backings.iter().position(|backing| {
        let bands = bands(&backing.along, backing.width, Axis::Y, place.x);
        bands.iter().any(|(from, to)| place.y > *from && place.y < *to)
    })
}

/// What lies between the skins at a place.
#[must_use]
pub fn region_at(top: &Top, place: Point) -> Region {
    let mut end = Length::default();
    for piece in pieces(top, Axis::Y, place.x) {
        end += piece.length;
        if place.y <= end {
            return piece.region;
        }
    }
    Region::Field
}

/// The stretches that a band about a polyline takes from a straight line.
fn bands(along: &Polyline, width: Length, axis: Axis, station: Length) -> Vec<(Length, Length)> {
    let met = along.crossings(axis, station);
    if !met.is_empty() {
        let half = |met: &Crossing| width * met.obliqueness / 2.0;
        return met.iter().map(|met| (met.at - half(met), met.at + half(met))).collect();
    }
    // A band that runs in the direction of the line holds it over its whole length, or not at all.
    let (low, high) = along.extent(axis.other());
    let half: Length = width / 2.0;
    let flat = high - low < shortest();
    let holds = flat && station > low - half && station < high + half && along.main_axis() == axis;
    if holds { vec![along.extent(axis)] } else { Vec::new() }
}
