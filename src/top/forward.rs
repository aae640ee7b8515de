//! Which way is forward.

use super::Top;
use crate::{
    geometry::Axis,
    units::{Length, Torque},
};

/// Where the bow lies in the plan, seen from above with *x* to the right and *y* upwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Forward {
    /// To the right: *x* counts forward and *y* to port, as in the axes of ships and of road vehicles.
    Right,
    /// To the left: *x* counts aft and *y* to starboard, from the foremost corner on the port side.
    Left,
}

impl Forward {
    /// The word of the design file.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Right => "right",
            Self::Left => "left",
        }
    }

    /// The other way.
    #[must_use]
    pub const fn turned(self) -> Self {
        match self {
            Self::Right => Self::Left,
            Self::Left => Self::Right,
        }
    }

    /// The name of a side: that towards greater or lesser *x* or *y*.
    #[must_use]
    pub const fn side(self, axis: Axis, greater: bool) -> &'static str {
        match (axis, greater == matches!(self, Self::Right)) {
            (Axis::X, true) => "the bow",
            (Axis::X, false) => "the stern",
            (Axis::Y, true) => "port",
            (Axis::Y, false) => "starboard",
        }
    }

    /// The side that something tips to, by its moment towards greater *x* or *y*.
    #[must_use]
    pub fn tips(self, axis: Axis, moment: Torque) -> &'static str {
        self.side(axis, moment >= Torque::default())
    }
}

impl Top {
    /// Where the bow lies; to the right where the file does not say.
    #[must_use]
    pub const fn bow(&self) -> Forward {
        match self.forward {
            Some(forward) => forward,
            None => Forward::Right,
        }
    }

    /// How far a place lies aft of the foremost edge of the outline.
    #[must_use]
    pub fn aft_of_fore_edge(&self, x: Length) -> Length {
        match self.bow() {
            Forward::Right => self.outline.length() - x,
            Forward::Left => x,
        }
    }

    /// How far a place lies off the middle of the width, and on which side, where it does.
    #[must_use]
    pub fn off_middle(&self, y: Length) -> (Length, &'static str) {
        let off: Length = y - 0.5 * self.outline.width();
        (off.abs(), self.bow().side(Axis::Y, off > Length::default()))
    }
}
