//! Invariants under random input: identities, symmetry, scaling, equilibrium, monotony.

mod strength;
