//! What lies in the core: backing and conduits, and where beside a conduit no hole has its middle.

use super::{FixingMark, InBand, Item, Label, Line, LineKind, Shape};
use crate::{
    geometry::{Band, Point, Polyline},
    top::Top,
    units::{Angle, Length},
};

pub(super) fn backings(top: &Top) -> Vec<Item> {
    let item = |backing: &crate::top::Backing| Item {
        name: backing.name.clone(),
        shapes: vec![
            border(&backing.along, backing.width, LineKind::Edge),
            centre(&backing.along),
            label(&backing.name, &backing.along),
        ],
    };
    top.backings.iter().map(item).collect()
}

pub(super) fn conduits(top: &Top) -> Vec<Item> {
    let item = |conduit: &crate::top::Conduit| {
        let band = Band { line: &conduit.along, width: conduit.diameter };
        let mut shapes = vec![centre(&conduit.along)];
        shapes.extend(band.sides().map(|side| Shape::Line(Line::straight(side, false, LineKind::Edge))));
        shapes.push(label(&conduit.name, &conduit.along));
        Item { name: conduit.name.clone(), shapes }
    };
    top.conduits.iter().map(item).collect()
}

/// Widths of the bands beside conduits, for a hole.
pub(super) fn bands(top: &Top, hole: Length) -> Vec<Length> {
    let clear: Length = hole + 2.0 * hole * top.criteria.conduit_clearance.value;
    top.conduits.iter().map(|conduit| conduit.diameter + clear).collect()
}

pub(super) fn no_drill(top: &Top, bands: &[Length]) -> Vec<Item> {
    let item = |(conduit, &width): (&crate::top::Conduit, &Length)| Item {
        name: format!("no hole near {}", conduit.name),
        shapes: vec![border(&conduit.along, width, LineKind::Edge)],
    };
    top.conduits.iter().zip(bands).map(item).collect()
}

/// The conduit in whose band a fixing that is drilled has its middle, the one whose wall is nearest where there are several.
pub(super) fn in_band(top: &Top, fixing: &FixingMark, bands: &[Length]) -> Option<InBand> {
    let hole = fixing.widest()?;
    let near = top.conduits.iter().zip(bands).filter_map(|(conduit, &width)| {
        let distance = conduit.along.distance(fixing.at);
        // What stands exactly on the border of the band is clear, whatever the last digit says.
        let give = Length::new::<uom::si::length::nanometer>(1.0);
        (distance + give < width / 2.0).then(|| InBand {
            conduit: conduit.name.clone(),
            wall: distance - (conduit.diameter + hole) / 2.0,
            needed: hole * top.criteria.conduit_clearance.value,
        })
    });
    near.min_by(|a, b| a.wall.value.total_cmp(&b.wall.value))
}

pub(super) fn border(along: &Polyline, width: Length, kind: LineKind) -> Shape {
    Shape::Line(Line::straight(Band { line: along, width }.border(), true, kind))
}

pub(super) fn centre(along: &Polyline) -> Shape {
    Shape::Line(Line::straight(along.points().to_vec(), false, LineKind::Centre))
}

/// A name at half the length of a line, along it, to be read from below or from the right.
pub(super) fn label(name: &str, along: &Polyline) -> Shape {
    let half = along.length() / 2.0;
    let at = along.at(half);
    let mut passed = Length::default();
    let piece = along.points().windows(2).find(|pair| {
        passed += pair[0].distance(pair[1]);
        passed >= half
    });
    let way = piece.map_or(0.0, |pair: &[Point]| (pair[1].y - pair[0].y).value.atan2((pair[1].x - pair[0].x).value));
    Shape::Label(Label { at, along: upright(way), text: name.to_owned() })
}

/// A direction, or the opposite one if a text along it would stand on its head.
fn upright(radians: f64) -> Angle {
    use std::f64::consts::{FRAC_PI_2, PI};
    // Straight down reads like straight up; a trifle more than straight up is its rounding.
    let turned = if radians <= -FRAC_PI_2 + 1e-9 {
        radians + PI
    } else if radians > FRAC_PI_2 + 1e-9 {
        radians - PI
    } else {
        radians
    };
    Angle::new::<uom::si::angle::radian>(turned)
}
