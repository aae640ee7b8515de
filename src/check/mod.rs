//! Checks: one failure mode in one small file, a registry, and the one way to compare a demand with an allowable.

mod measure;
mod verdict;

pub use measure::Measure;
pub use verdict::{Finding, Term, Verdict};
