//! What gear stands on.

use super::{Item, Label, Line, LineKind, Shape};
use crate::{
    geometry::{Foot, Point},
    top::Top,
    units::{Angle, Length},
};

pub(super) fn footings(top: &Top) -> Vec<Item> {
    let item = |gear: &crate::top::Gear| {
        let label = Label { at: gear.at, along: Angle::default(), text: gear.name.clone() };
        let shapes = vec![foot(gear.foot, gear.at), Shape::Cross { at: gear.at }, Shape::Label(label)];
        Item { name: gear.name.clone(), shapes }
    };
    top.gear.iter().map(item).collect()
}

/// The edge of a footing.
pub(super) fn foot(foot: Foot, at: Point) -> Shape {
    match foot {
        Foot::Disc { diameter } => Shape::Circle { centre: at, diameter },
        Foot::Rectangle { length, width } => {
            let (x, y): (Length, Length) = (length / 2.0, width / 2.0);
            let corners = [(-x, -y), (x, -y), (x, y), (-x, y)];
            let place = |(x, y): (Length, Length)| Point { x: at.x + x, y: at.y + y };
            Shape::Line(Line::straight(corners.map(place), true, LineKind::Edge))
        }
    }
}
