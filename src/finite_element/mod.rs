//! Shear-deformable sandwich plates of any shape by finite elements: straight-sided triangles of degree 2 to 4 for every
//! field, integrated exactly, on which beams and beds of springs may lie.
//!
//! `z` points inwards, as in [`crate::section`]: a deflection and a pressure are positive downwards.

mod assembly;
mod beam;
mod buckling;
mod complementary;
mod contact;
mod element;
mod envelope;
mod factor;
mod frequency;
mod layout;
mod load;
mod modes;
mod numbering;
mod plate;
mod rigid;
mod sampled;
mod sampler;
mod shape;
mod solution;
mod steps;

pub use beam::{BeamForces, Push};
pub use buckling::Buckling;
pub use contact::{Contact, LiftsOff, Loose};
pub use element::{Fields, ShellStiffness};
pub use envelope::{Deflected, Envelope, Grouping, Judged, Peak, Worst};
pub use frequency::{Masses, Swinging};
pub use load::Load;
pub use modes::NoMode;
pub use plate::{Beam, Bed, Held, Mechanism, Model, Plate};
pub use sampled::{Reader, Sampled};
pub use sampler::{Sampler, Sharp, Side};
pub use shape::Degree;
pub use solution::{Solution, State};
pub use steps::{Assembled, Ordered};
