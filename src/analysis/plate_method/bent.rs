//! Which way a worst state is bent.

use super::FieldPeak;
use crate::{analysis::sections::Bent, finite_element::Worst, geometry::Axis};

impl FieldPeak {
    /// Whether it was kept for a moment or a skin force of a panel that is bent some way; most twist is of both.
    #[must_use]
    pub const fn is_worst_bent(&self, bent: Bent) -> bool {
        match self.worst {
            Worst::SaggingX | Worst::SaggingY | Worst::OuterPressed | Worst::InnerPulled => {
                matches!(bent, Bent::Sagging)
            }
            Worst::HoggingX | Worst::HoggingY | Worst::OuterPulled | Worst::InnerPressed => {
                matches!(bent, Bent::Hogging)
            }
            Worst::Twist => true,
            Worst::Shear => false,
        }
    }

    /// Whether it was kept for its hogging moment along an axis.
    #[must_use]
    pub const fn is_worst_hogging(&self, axis: Axis) -> bool {
        matches!((self.worst, axis), (Worst::HoggingX, Axis::X) | (Worst::HoggingY, Axis::Y))
    }
}
