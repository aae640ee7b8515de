//! Invariants under random input: identities, symmetry, scaling, equilibrium, monotony.

mod units;
mod laminate;
mod section;
