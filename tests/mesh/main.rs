//! Meshes of plans: what holds for each of them, what lines and rims may do, what is refused.

mod faults;
mod lines;
mod plans;
mod random;
mod shape;
mod sound;
