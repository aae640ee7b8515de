//! Skins: from fibre and resin to plies, from plies to a laminate, and back from its strain to the stress of each ply.
//!
//! Plies are listed from the outside of the top to its inside. `z` grows in the same direction and is measured from
//! the outer surface; stiffness is held about the mid-plane. A positive moment per width stretches the inside. Angles
//! run from `x` towards `y`.

pub mod engineering_constants;
pub mod fibre_content;
pub mod first_ply;
mod matrix;
pub mod micromechanics;
pub mod ply;
pub mod ply_stress;
mod stack;
pub mod stiffness;

pub use engineering_constants::{FlexuralConstants, InPlaneConstants};
pub use first_ply::{Criterion, Mode, Reserve, TsaiWu, max_stress};
pub use ply::{Elastic, InvalidPly, Ply, Strength};
pub use ply_stress::{PlyStress, Surface};
pub use stack::{InvalidLaminate, Laminate};
pub use stiffness::{Component, Curvatures, Deformation, Forces, Moments, Resultants, Stiffness, Strains};

pub(crate) use matrix::inverse;
pub(crate) use stack::Layer;
pub(crate) use stiffness::Compliance;
