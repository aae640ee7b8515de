//! How each layer is drawn: widths and dashes that tell them apart in black on white.

use crate::plan::{LayerKind, LineKind};

/// A stroke: its width and its dashes, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stroke {
    pub(super) width: f64,
    /// Dash, gap, and so on; a full line where empty.
    pub(super) dashes: &'static str,
    /// The name of the nearest line type that every DXF reader has.
    pub(super) line_type: &'static str,
}

const fn stroke(width: f64, dashes: &'static str, line_type: &'static str) -> Stroke {
    Stroke { width, dashes, line_type }
}

/// The stroke of a line on a layer.
pub(super) const fn of(layer: LayerKind, line: LineKind) -> Stroke {
    match (layer, line) {
        (_, LineKind::Centre) => stroke(0.15, "14 2 2 2", "CENTER"),
        (_, LineKind::Inner) => stroke(0.15, "1.5 1.5", "DOT"),
        (LayerKind::Outline | LayerKind::Openings, _) => stroke(0.7, "", "CONTINUOUS"),
        (LayerKind::Moulded, _) => stroke(0.35, "12 4", "DASHED"),
        (LayerKind::CoreEdge, _) => stroke(0.25, "5 2.5", "DASHED"),
        (LayerKind::Middle, _) => stroke(0.18, "20 3 3 3", "CENTER"),
        (LayerKind::Backings, _) => stroke(0.4, "9 2 2 2 2 2", "DIVIDE"),
        (LayerKind::Conduits, _) => stroke(0.35, "4 1.5", "HIDDEN"),
        (LayerKind::NoDrill, _) => stroke(0.5, "0.6 1.6", "DOT"),
        (LayerKind::Pipes, _) => stroke(0.25, "8 3", "HIDDEN"),
        (LayerKind::Posts | LayerKind::Seats, _) => stroke(0.35, "6 1.5 1 1.5", "DASHDOT"),
        (LayerKind::Footings, _) => stroke(0.3, "3 1.5", "DASHED"),
        (LayerKind::Fixings | LayerKind::Dimensions, _) => stroke(0.2, "", "CONTINUOUS"),
    }
}

/// Length of the strokes of a cross to either side of the place.
pub(super) const fn cross(layer: LayerKind) -> f64 {
    match layer {
        LayerKind::Fixings => 8.0,
        _ => 6.0,
    }
}
