//! Loads: each file is one chapter of pure formulas, from what the user knows to what acts on the top.
//!
//! Coefficients, factors and presets are data with sources (`materials/criteria.toml`); the functions take them as
//! arguments, so that no number of judgement hides in a formula.

pub mod gear;
pub mod people;
pub mod ponding;
pub mod slam;
pub mod temperature;
pub mod weight;
pub mod wind;
