//! Sandwich-panel mechanics for fibreglass hardtops, safe in its units.

pub mod material;
pub mod source;
pub mod strength;
pub mod units;
