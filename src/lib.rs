//! Sandwich-panel mechanics for fibreglass hardtops, safe in its units.

pub mod laminate;
pub mod material;
pub mod section;
pub mod source;
pub mod units;
