use super::Strip;
use crate::units::{Curvature, ForcePerWidth, Length, MomentPerWidth, Pressure};

/// Something that acts on a strip. Signs are those of the [module](super).
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Action {
    /// Pressure over a stretch.
    Uniform {
        /// Where it begins.
        from: Length,
        /// Where it ends.
        to: Length,
        /// Pressure, down positive.
        pressure: Pressure,
    },
    /// Line load across the strip.
    Point {
        /// Where.
        at: Length,
        /// Force per width, down positive.
        force: ForcePerWidth,
    },
    /// Force spread evenly over a length of strip.
    Patch {
        /// Middle of the patch.
        centre: Length,
        /// Length of the patch along the strip; 0 gives a line load.
        length: Length,
        /// Whole force per width, down positive.
        force: ForcePerWidth,
    },
    /// Moment applied across the strip; raises the sagging moment on its right.
    Moment {
        /// Where.
        at: Length,
        /// Moment per width.
        moment: MomentPerWidth,
    },
    /// Curvature the stretch would take if it were free, such as from unequal warmth of its skins.
    Curvature {
        /// Where it begins.
        from: Length,
        /// Where it ends.
        to: Length,
        /// Free curvature, sagging positive.
        curvature: Curvature,
    },
}

impl Action {
    /// Pressure over the whole strip.
    #[must_use]
    pub fn uniform_all(strip: &Strip, pressure: Pressure) -> Self {
        Self::Uniform { from: Length::default(), to: strip.length(), pressure }
    }

    /// Free curvature over the whole strip.
    #[must_use]
    pub fn curvature_all(strip: &Strip, curvature: Curvature) -> Self {
        Self::Curvature { from: Length::default(), to: strip.length(), curvature }
    }
}
