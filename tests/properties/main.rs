//! Invariants under random input: identities, symmetry, scaling, equilibrium, monotony.

mod closed_form;
mod contour;
mod fastening;
mod fastening_panel;
mod fixing_group;
mod input;
mod kit;
mod laminate;
mod load;
mod plate;
mod section;
mod strength;
mod units;
