//! Sizes over all.

use super::{Dimension, Item, Shape};
use crate::{
    geometry::{Axis, Point},
    top::Top,
    units::Length,
};

pub(super) fn over_all(top: &Top) -> Vec<Item> {
    let zero = Length::default();
    let origin = Point { x: zero, y: zero };
    let (length, width) = (top.outline.length(), top.outline.width());
    let item = |name: &str, to: Point, axis: Axis| {
        let size = top.outline.size(axis);
        let shapes = vec![Shape::Dimension(Dimension { from: origin, to, axis, size })];
        Item { name: name.to_owned(), shapes }
    };
    vec![
        item("length over all", Point { x: length, y: zero }, Axis::X),
        item("width over all", Point { x: zero, y: width }, Axis::Y),
    ]
}
