//! Sandwich-panel mechanics for fibreglass hardtops, safe in its units.

pub mod laminate;
pub mod closed_form;
pub mod criteria;
pub mod load;
pub mod material;
pub mod section;
pub mod source;
pub mod strength;
pub mod units;
