//! The fixings of a footing: how a group shares the forces on it, elastically.
//!
//! In the plane of the skin the fixings share by the centroid method; across it the foot is a rigid plate on a bed that
//! only pushes, held by fixings that only pull.

mod action;
mod disc;
mod error;
mod foot;
mod pulls;
mod rectangle;
mod shears;
mod sums;

pub use action::FootingAction;
pub use error::GroupError;
pub use pulls::FootingForces;

use sums::Sums;

use crate::{
    geometry::{Foot, Point},
    units::{FoundationModulus, Stiffness},
};

/// Equal fixings in a rigid foot on an elastic bed.
#[derive(Clone, Debug, PartialEq)]
pub struct FixingGroup {
    at: Vec<Point>,
    foot: Foot,
    fixing_stiffness: Stiffness,
    bed: FoundationModulus,
    /// Of the foot, m: what coordinates are counted in.
    reach: f64,
    /// Sums over all fixings and all of the bed.
    held_everywhere: Sums,
}

impl FixingGroup {
    /// A group of fixings.
    ///
    /// | argument           | meaning                                                                              |
    /// |--------------------|--------------------------------------------------------------------------------------|
    /// | `at`               | where they stand, from the middle of the foot                                        |
    /// | `foot`             | outline of the foot                                                                  |
    /// | `fixing_stiffness` | pull of one fixing over its lengthening, N/m                                         |
    /// | `bed`              | pressure below the foot over its sinking in, N/m³: for a layer of depth *t*, *E*/*t* |
    ///
    /// Every fixing has some of the foot on every side, so there is no way to move a group that neither lengthens a
    /// fixing nor presses the bed: whatever acts on it is held.
    ///
    /// # Errors
    ///
    /// No fixing; a size or a stiffness that is not positive; a fixing that stands on the outline of the foot or beyond
    /// it; two in one place.
    pub fn new(
        at: Vec<Point>,
        foot: Foot,
        fixing_stiffness: Stiffness,
        bed: FoundationModulus,
    ) -> Result<Self, GroupError> {
        let [length, width] = foot.sizes().map(|size| size.value);
        for (what, value) in [
            ("length", length),
            ("width", width),
            ("stiffness of a fixing", fixing_stiffness.value),
            ("bed", bed.value),
        ] {
            if !(value > 0.0 && value.is_finite()) {
                return Err(GroupError::NotPositive { what });
            }
        }
        if at.is_empty() {
            return Err(GroupError::Empty);
        }
        if let Some(index) = at.iter().position(|place| !foot.holds(*place)) {
            return Err(GroupError::Outside { index });
        }
        for (second, place) in at.iter().enumerate() {
            if let Some(first) = at[..second].iter().position(|other| other == place) {
                return Err(GroupError::SamePlace { pair: [first, second] });
            }
        }
        let held_everywhere = Sums::default();
        let mut group = Self { at, foot, fixing_stiffness, bed, reach: foot.reach(), held_everywhere };
        group.held_everywhere = group.sum_everywhere();
        Ok(group)
    }

    /// Where the fixings stand, from the middle of the foot.
    #[must_use]
    pub fn at(&self) -> &[Point] {
        &self.at
    }

    /// The outline of the foot.
    #[must_use]
    pub const fn foot(&self) -> Foot {
        self.foot
    }
}
