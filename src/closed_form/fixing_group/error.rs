use std::{error::Error, fmt};

use uom::si::ratio::ratio;

use crate::units::Ratio;

/// Why a group of fixings cannot be built, or gives no forces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GroupError {
    /// No fixing was given.
    Empty,
    /// A size or a stiffness is not a positive number.
    NotPositive {
        /// Which one.
        what: &'static str,
    },
    /// A fixing does not stand within the foot.
    Outside {
        /// Which fixing, from 0.
        index: usize,
    },
    /// Two fixings stand in one place.
    SamePlace {
        /// The two, from 0.
        pair: [usize; 2],
    },
    /// A force or a moment on the footing is not a number.
    Action,
    /// A single fixing can not hold a twist about itself.
    Twist,
    /// The balance of the foot was not found.
    Unbalanced {
        /// What was missing, as a share of all that acts on the foot.
        residual: Ratio,
    },
}

impl fmt::Display for GroupError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "the footing has no fixing: it needs at least one"),
            Self::NotPositive { what } => write!(f, "the {what} of the footing must be a positive number"),
            Self::Outside { index } => {
                write!(
                    f,
                    "fixing {} does not stand within the foot: it needs some of the foot on every side",
                    index + 1
                )
            }
            Self::SamePlace { pair: [first, second] } => {
                write!(f, "fixings {} and {} stand in one place", first + 1, second + 1)
            }
            Self::Action => write!(f, "a force or a moment on the footing is not a number"),
            Self::Twist => write!(f, "a single fixing does not hold a twist: the footing needs two or more"),
            Self::Unbalanced { residual } => write!(
                f,
                "the forces below the foot do not balance: {:.1e} of them is missing; is one of the stiffnesses \
                 far from the other?",
                residual.get::<ratio>()
            ),
        }
    }
}

impl Error for GroupError {}
