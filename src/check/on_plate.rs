//! What a check says of itself where it looks at the forces of the plate method.

use crate::source::Citation;

/// A check on the forces of the plate method: another formula, with limits and a source of its own.
#[derive(Clone, Copy, Debug)]
pub struct OnPlate {
    /// The formula, with the symbols that the findings list.
    pub formula: &'static str,
    /// Where it holds, and what it leaves out.
    pub limits: &'static str,
    /// Where it is published.
    pub citation: Citation,
}

/// Limits of a check on the plate: those of the plate method itself, then those of the check.
macro_rules! limits_on_plate {
    ($own:literal) => {
        concat!(
            "the top a shell that yields to shear, on its own outline, held down by its fixings, or all along pipes and walls \
             whose fixings are not given, pads and clamped edges; walls and pads rigid; small deflections; ε \
             what degree 3 on the same mesh makes of it; ",
            $own
        )
    };
}

pub(super) use limits_on_plate;
