//! Hand methods: shear-flexible strips, plate series, columns, and the width of strip that carries a point load.
//!
//! Everything here is exact within its theory, or states its own numerical error.

pub mod columns;
pub mod effective_width;
pub mod plate;
mod quantity;
pub mod strip;
