//! Hand methods: shear-flexible strips, plate series, columns, the width of strip that carries a
//! point load, and the fixings of a footing.
//!
//! Everything here is exact within its theory, or states its own numerical error.

pub mod columns;
pub mod effective_width;
pub mod fixing_group;
pub mod plate;
pub mod strip;
