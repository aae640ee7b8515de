//! Cleavage and block shear: a piece of skin that goes with its bolts, torn on one side and sheared on another.

use crate::units::{Force, Ratio};

/// Load at which a block of skin tears out with its bolts.
///
/// ```text
///   V = max(S, N) + κ min(S, N)
/// ```
///
/// | symbol | meaning                                                                        | argument   |
/// |--------|--------------------------------------------------------------------------------|------------|
/// | *S*    | what the sheared planes bear: [`shear_out_capacity`](super::shear_out_capacity), half of it for cleavage on one plane | `sheared` |
/// | *N*    | what the torn section bears: [`net_section_capacity`](super::net_section_capacity) | `torn` |
/// | *κ*    | how much of the weaker part still acts when the stronger one fails: 1 if both yield, 0 if both are brittle | `together` |
///
/// # Validity
///
/// Load straight towards the edge and through the middle of the block.
///
/// # Source
///
/// [`EN_1993_1_8`](crate::source::EN_1993_1_8), 3.10.2, block tearing of steel: the sum (from memory). That a brittle
/// block bears at least its stronger part is [`DERIVED`](crate::source::DERIVED): the weaker one has then failed.
///
/// # Examples
///
/// 4800 N and 3600 N: 8400 N if both yield, 4800 N if brittle.
///
/// ```
/// use skinspan::{fastening::block_capacity, units::{Force, Ratio}};
/// use uom::si::force::newton;
/// let n = Force::new::<newton>;
/// let v = |together: f64| block_capacity(n(4800.0), n(3600.0), Ratio::from(together)).get::<newton>();
/// assert!((v(1.0) - 8400.0).abs() < 1e-9 && (v(0.0) - 4800.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn block_capacity(sheared: Force, torn: Force, together: Ratio) -> Force {
    sheared.max(torn) + together * sheared.min(torn)
}
