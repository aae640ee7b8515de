//! Plates by finite elements: patch tests, rates, exact series, published cases, reference solutions.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
#![allow(clippy::cast_precision_loss, reason = "some dozen cells, some hundred triangles")]

mod buckling;
mod contact;
mod frequency;
mod heat;
mod invariants;
mod kit;
mod limits;
mod modes_reference;
mod pads;
mod patch;
mod pipes;
mod reference;
mod rows;
mod series;
mod supports;
mod top_frequency;
mod tops;
mod walls;
