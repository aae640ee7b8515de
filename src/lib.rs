//! Sandwich-panel mechanics for fibreglass hardtops, safe in its units.

pub mod criteria;
pub mod load;
pub mod material;
pub mod source;
pub mod units;
