//! Lines of the drawing as straight strokes, to see what they cross.

use uom::si::length::millimeter;

use super::{Template, style, view::OnPaper};
use crate::{
    geometry::{Contour, Point},
    plan::{LayerKind, Line, Shape},
    units::Length,
};

/// Chords of arcs lie so near to them, in millimetres.
const CHORDS_WITHIN: f64 = 0.5;

/// All lines, circles and crosses as strokes on the paper.
pub(super) fn of_lines(template: &Template<'_>) -> Vec<[OnPaper; 2]> {
    let view = template.view;
    let mut all = Vec::new();
    let mut chain = |points: &[Point], closed: bool| {
        let next = points.iter().cycle().skip(1);
        let count = if closed { points.len() } else { points.len().saturating_sub(1) };
        all.extend(points.iter().zip(next).take(count).map(|(from, to)| [view.place(*from), view.place(*to)]));
    };
    for layer in template.plan.layers.iter().filter(|layer| layer.kind != LayerKind::Dimensions) {
        for shape in layer.items.iter().flat_map(|item| &item.shapes) {
            match shape {
                Shape::Line(line) => chain(&chords(line), line.closed),
                Shape::Circle { centre, diameter } => {
                    if let Ok(circle) = Contour::circle(*centre, *diameter) {
                        chain(&circle.flattened(Length::new::<millimeter>(CHORDS_WITHIN)), true);
                    }
                }
                Shape::Cross { at } => {
                    let half = Length::new::<millimeter>(style::cross(layer.kind));
                    chain(&[Point { x: at.x - half, ..*at }, Point { x: at.x + half, ..*at }], false);
                    chain(&[Point { y: at.y - half, ..*at }, Point { y: at.y + half, ..*at }], false);
                }
                Shape::Label(_) | Shape::Dimension(_) => {}
            }
        }
    }
    all
}

/// Arcs as chords; lines with arcs are closed.
fn chords(line: &Line) -> Vec<Point> {
    let straight = || line.vertices.iter().map(|vertex| vertex.at).collect();
    if !line.closed {
        return straight();
    }
    let ring = Contour::new(line.vertices.clone());
    ring.map_or_else(|_| straight(), |ring| ring.flattened(Length::new::<millimeter>(CHORDS_WITHIN)))
}
