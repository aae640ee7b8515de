//! The sandwich: outer skin, core, inner skin, and everything about it that does not depend on span or load.

mod bending;
mod core_layer;
mod sandwich;
mod shear;
mod shear_flow;
mod skin_load;
mod thermal;
mod unit_response;
mod validity;
mod width;

pub use crate::geometry::Axis;
pub use bending::Bending;
pub use core_layer::{CoreLayer, InvalidCore};
pub use sandwich::{Section, Skin};
pub use shear::SkinShear;
pub use shear_flow::ShearFlow;
pub use skin_load::SkinStress;
pub use thermal::{HeldFlat, Temperatures};
pub use unit_response::{NoStrength, PlyPlace, Residual, UnitResponse};
pub use validity::SkinCheck;
pub use width::Width;
