//! What a layer is drawn of.

use crate::{
    geometry::{Axis, Contour, Point, Vertex},
    units::{Angle, Length, Ratio},
};

/// One thing on a layer: a backing, a pipe, a hole.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// Its name in the design file, or what it is.
    pub name: String,
    /// What it is drawn of.
    pub shapes: Vec<Shape>,
}

/// One shape in its true place.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A line of straight pieces and arcs.
    Line(Line),
    /// A circle.
    Circle {
        /// Its centre.
        centre: Point,
        /// Its diameter.
        diameter: Length,
    },
    /// A cross of two strokes along both axes that marks a place.
    Cross {
        /// The place.
        at: Point,
    },
    /// A name beside its thing.
    Label(Label),
    /// A size.
    Dimension(Dimension),
}

/// What a line stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LineKind {
    /// An edge.
    Edge,
    /// An edge of something narrower within another, as a seat on a pipe.
    Inner,
    /// The middle of something.
    Centre,
}

/// A line of straight pieces and arcs of circles.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Where each piece begins, with the bulge of the piece; of an open line the last one is its end.
    pub vertices: Vec<Vertex>,
    /// Whether the last vertex is joined to the first.
    pub closed: bool,
    /// What it stands for.
    pub kind: LineKind,
}

/// A name beside its thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// The middle of the text would stand here, were there no other.
    pub at: Point,
    /// Where its line of text runs.
    pub along: Angle,
    /// The name.
    pub text: String,
}

/// A size between two places, measured along an axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension {
    /// From here.
    pub from: Point,
    /// To here.
    pub to: Point,
    /// Along which axis it is measured.
    pub axis: Axis,
    /// The size.
    pub size: Length,
}

impl Line {
    /// A closed line with arcs.
    #[must_use]
    pub fn around(contour: &Contour) -> Self {
        Self { vertices: contour.vertices().to_vec(), closed: true, kind: LineKind::Edge }
    }

    /// A line of straight pieces.
    #[must_use]
    pub fn straight(points: impl IntoIterator<Item = Point>, closed: bool, kind: LineKind) -> Self {
        let vertices = points.into_iter().map(|at| Vertex { at, bulge: Ratio::default() }).collect();
        Self { vertices, closed, kind }
    }

    /// Its pieces: where each begins and ends, and its bulge.
    pub fn pieces(&self) -> impl Iterator<Item = (Point, Point, Ratio)> + '_ {
        let next = self.vertices.iter().cycle().skip(1);
        let count = if self.closed { self.vertices.len() } else { self.vertices.len().saturating_sub(1) };
        self.vertices.iter().zip(next).take(count).map(|(from, to)| (from.at, to.at, from.bulge))
    }
}
