use std::{error::Error, fmt};

use uom::si::length::{meter, millimeter};

use crate::{geometry::Point, units::Length};

/// A ring of the rim of a plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ring {
    /// The outline.
    Outline,
    /// A hole, from 0.
    Hole(usize),
}

/// Why a plan cannot be meshed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MeshError {
    /// The distance at which places become one is not a positive number.
    Merge,
    /// A coordinate is not a number.
    NotFinite,
    /// A ring has fewer than three corners that stand apart.
    Corners {
        /// Which ring.
        ring: Ring,
    },
    /// A ring crosses itself, or two of its sides come as near as places that become one.
    MeetsItself {
        /// Which ring.
        ring: Ring,
        /// Where.
        place: Point,
    },
    /// A hole crosses or touches the outline or another hole.
    Meet {
        /// The two rings.
        rings: [Ring; 2],
        /// Where.
        place: Point,
    },
    /// A hole lies outside the outline, or in another hole.
    Outside {
        /// The hole, from 0.
        hole: usize,
        /// One of its corners.
        place: Point,
    },
    /// The size of triangles is not positive at a place.
    Size {
        /// Where.
        place: Point,
        /// What was given.
        size: Length,
    },
    /// The sizes ask for more corners of triangles than can be borne.
    TooFine {
        /// Where it was noticed.
        place: Point,
    },
    /// Lines lie so close about a place that snapping them together came to no end.
    Tangled {
        /// Where.
        place: Point,
    },
}

impl fmt::Display for Ring {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Outline => write!(f, "the outline"),
            Self::Hole(index) => write!(f, "hole {}", index + 1),
        }
    }
}

/// A place in the words of a message.
struct At(Point);

impl fmt::Display for At {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "x = {:.3} m, y = {:.3} m", self.0.x.get::<meter>(), self.0.y.get::<meter>())
    }
}

impl fmt::Display for MeshError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Merge => write!(f, "the distance at which places become one must be a positive number"),
            Self::NotFinite => write!(f, "a coordinate of the plan is not a number"),
            Self::Corners { ring } => write!(f, "{ring} needs three corners that stand apart"),
            Self::MeetsItself { ring, place } => write!(f, "{ring} crosses or touches itself at {}", At(place)),
            Self::Meet { rings: [one, other], place } => write!(f, "{one} meets {other} at {}", At(place)),
            Self::Outside { hole, place } => {
                write!(f, "{} does not lie in the panel: see {}", Ring::Hole(hole), At(place))
            }
            Self::Size { place, size } => write!(
                f,
                "the size of triangles must be a positive length; it is {} mm at {}",
                size.get::<millimeter>(),
                At(place)
            ),
            Self::TooFine { place } => {
                write!(f, "the triangles would be too many: the size is too small near {}", At(place))
            }
            Self::Tangled { place } => write!(f, "the lines lie too close together near {}", At(place)),
        }
    }
}

impl Error for MeshError {}
