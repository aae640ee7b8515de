//! Plates by finite elements: patch tests, rates, exact series, published cases, reference solutions.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod buckling;
mod frequency;
mod kit;
mod modes_reference;
mod series;
mod top_frequency;
mod tops;
