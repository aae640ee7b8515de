//! Invariants under random input: identities, symmetry, scaling, equilibrium, monotony.

mod closed_form;
mod load;
mod units;
mod laminate;
mod section;
mod strength;
