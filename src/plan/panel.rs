//! The panel itself: rims, what is trimmed off, where the core ends, its middle.

use super::{Item, Line, LineKind, Shape};
use crate::{
    geometry::{Contour, Point},
    top::{Scope, Top},
    units::Length,
};

fn item(name: &str, contours: &[Contour]) -> Vec<Item> {
    let shapes: Vec<Shape> = contours.iter().map(|contour| Shape::Line(Line::around(contour))).collect();
    if shapes.is_empty() { Vec::new() } else { vec![Item { name: name.to_owned(), shapes }] }
}

/// A patch is cut out of a top and has no edge of its own.
pub(super) fn moulded(top: &Top) -> Vec<Item> {
    let allowance = top.criteria.trim_allowance.value;
    if top.scope == Scope::Patch || allowance == Length::default() {
        return Vec::new();
    }
    // The outermost: a bay that the allowance closes over is trimmed with the rest.
    let lines = top.outline.contour().beside(allowance);
    let outermost = lines.into_iter().max_by(|a, b| a.area().value.total_cmp(&b.area().value));
    item("laid-up edge", outermost.as_slice())
}

pub(super) fn outline(top: &Top) -> Vec<Item> {
    item("outline", std::slice::from_ref(top.outline.contour()))
}

pub(super) fn openings(top: &Top) -> Vec<Item> {
    let holes = top.outline.holes().iter();
    holes.flat_map(|hole| item(&hole.name, std::slice::from_ref(&hole.contour))).collect()
}

/// The core is cut back from every rim, that of a hole too.
pub(super) fn core_edge(top: &Top) -> Vec<Item> {
    let Some(edge) = &top.edge else { return Vec::new() };
    let mut items = item("end of the core", &top.outline.contour().beside(-edge.setback));
    for hole in top.outline.holes() {
        let lines = hole.contour.beside(edge.setback);
        items.extend(item(&format!("end of the core round {}", hole.name), &lines));
    }
    items
}

pub(super) fn middle(top: &Top) -> Vec<Item> {
    let (length, width) = (top.outline.length(), top.outline.width());
    let zero = Length::default();
    let line = |name: &str, from: (Length, Length), to: (Length, Length)| {
        let ends = [from, to].map(|(x, y)| Point { x, y });
        let shapes = vec![Shape::Line(Line::straight(ends, false, LineKind::Centre))];
        Item { name: name.to_owned(), shapes }
    };
    vec![
        line("middle, along", (zero, width / 2.0), (length, width / 2.0)),
        line("middle, across", (length / 2.0, zero), (length / 2.0, width)),
    ]
}
