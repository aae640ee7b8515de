//! Fixings in their places.

use std::sync::Arc;

use uom::si::ratio::ratio;

use super::Fixing;
use crate::{
    geometry::{Pattern, Point, Polyline},
    units::{Angle, Length},
};

/// Fixings of one kind in their places.
#[derive(Clone, Debug, PartialEq)]
pub struct Fastened {
    /// The kind.
    pub fixing: Arc<Fixing>,
    /// How they are laid out.
    pub laid: Laid,
    /// Thickness of the foot or the tab that they clamp, where known.
    pub clamped: Option<Length>,
    /// Whether the foot is metal, as thick as the bolt, so that it does not pry.
    pub stiff: bool,
    /// From a fixing to the body that pulls at the foot, where known.
    pub to_body: Option<Length>,
    /// From a fixing to the edge of the foot beyond it, where known.
    pub to_edge: Option<Length>,
}

/// How fixings are laid out.
#[derive(Clone, Debug, PartialEq)]
pub enum Laid {
    /// In a pattern about the middle of a footing.
    Pattern {
        /// The pattern.
        pattern: Pattern,
        /// How far it is turned, from the length of the top towards its width.
        turned: Angle,
    },
    /// One by one about the middle of a footing.
    Points(Vec<Point>),
    /// Evenly along a pipe.
    Along {
        /// How far the first and the last stand from its ends.
        end: Length,
        /// How far apart neighbours stand at most.
        spacing: Length,
    },
}

/// Most fixings along one pipe: a file that asks for more has a slip in its units.
pub const MOST_ALONG: f64 = 400.0;

impl Laid {
    /// Places from the middle of a footing; none along a pipe.
    #[must_use]
    pub fn about_middle(&self) -> Vec<Point> {
        match self {
            Self::Pattern { pattern, turned } => {
                let (sin, cos) = turned.value.sin_cos();
                let turn = |at: Point| Point { x: at.x * cos - at.y * sin, y: at.x * sin + at.y * cos };
                pattern.points().into_iter().map(turn).collect()
            }
            Self::Points(points) => points.clone(),
            Self::Along { .. } => Vec::new(),
        }
    }

    /// Places round the middle of a footing, in plan; none along a pipe.
    #[must_use]
    pub fn round(&self, middle: Point) -> Vec<Point> {
        let place = |from: Point| Point { x: middle.x + from.x, y: middle.y + from.y };
        self.about_middle().into_iter().map(place).collect()
    }

    /// Places along a pipe, in plan; none about a footing.
    #[must_use]
    pub fn along(&self, pipe: &Polyline) -> Vec<Point> {
        let Self::Along { end, spacing } = self else { return Vec::new() };
        let clear: Length = pipe.length() - *end * 2.0;
        let gaps = (clear / *spacing).get::<ratio>().ceil().clamp(1.0, MOST_ALONG);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 1 and 400")]
        let count = gaps as u32;
        (0..=count).map(|index| pipe.at(*end + clear / gaps * f64::from(index))).collect()
    }
}
