use std::{error::Error, fmt};

use uom::si::length::meter;

use crate::units::Length;

/// Why a strip cannot be built or loaded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StripError {
    /// No segment was given.
    Empty,
    /// A segment's length, rigidity or shear stiffness is not a positive number, or its mass is negative.
    Segment {
        /// Which segment, from 0.
        index: usize,
        /// What about it.
        what: &'static str,
    },
    /// A support, station or load lies outside the strip.
    Outside {
        /// What lies outside.
        what: &'static str,
        /// Where it was put.
        at: Length,
    },
    /// Other segments were offered for a strip, and they are not as long as its own.
    OtherLengths,
    /// Two supports stand on one station.
    SameStation {
        /// Where they stand.
        at: Length,
    },
    /// Fewer than two supports and none clamped: the strip can move freely.
    Mechanism,
    /// A load ends before it begins, or is not a number.
    Load {
        /// What is wrong with it.
        what: &'static str,
    },
    /// Nothing that can move has mass, so there is no frequency.
    NoMass,
}

impl fmt::Display for StripError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let metres = |x: &Length| x.get::<meter>();
        match self {
            Self::Empty => write!(f, "the strip has no length: it needs at least one segment"),
            Self::Segment { index, what } => write!(f, "segment {} of the strip: {what}", index + 1),
            Self::Outside { what, at } => write!(f, "{what} at {} m lies outside the strip", metres(at)),
            Self::OtherLengths => write!(f, "the segments of a strip keep their lengths when their sections change"),
            Self::SameStation { at } => write!(f, "two supports stand at {} m", metres(at)),
            Self::Mechanism => {
                write!(f, "the strip can move freely: it needs two supports, or one that holds its rotation")
            }
            Self::Load { what } => write!(f, "load on the strip: {what}"),
            Self::NoMass => write!(f, "a frequency needs a mass: nothing that can move has one"),
        }
    }
}

impl Error for StripError {}
