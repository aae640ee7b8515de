//! Invariants under random input: identities, symmetry, scaling, equilibrium, monotony.

mod laminate;
mod section;
mod units;
