//! What the skins and the core of a sandwich top can bear: one failure mode in each file, as pure functions.
//!
//! A function takes quantities and gives a stress, a load or a utilisation; it knows no design file and no material
//! table. Factors of safety and knock-downs belong to the caller. Compression is positive wherever a sign matters.

// `MPa` and `GPa` are units, not names of code.
#![allow(clippy::doc_markdown)]

mod conduit;
mod core_crush;
mod core_shear;
mod core_shear_exact;
mod deep_core;
mod dimpling;
mod disbond;
mod hoff_mautner;
mod kelvin;
mod local_stiffness;
mod panel_buckling;
mod plate_buckling;
mod plate_modulus;
mod punching;
mod shear_crimping;
mod skin_bending;
mod skin_beside_support;
mod skin_indentation;
mod skin_indentation_line;
mod thermal_bow;
mod wrinkling;
mod wrinkling_interaction;

pub use conduit::{ConduitFillsCore, core_shear_beside_conduit};
pub use core_crush::{Pad, line_pressure, pad_pressure, round_pad_pressure};
pub use core_shear::{core_shear_stress, core_shear_with_crush, resultant_core_shear};
pub use core_shear_exact::{EqualSkins, core_shear_at_centre, core_shear_at_skin};
pub use deep_core::{DeepCore, bonded_core_modulus};
pub use dimpling::{cell_dimpling_stress, void_stress_across, void_stress_along};
pub use disbond::{disbond_size, disbond_stress};
pub use hoff_mautner::{Branch, Wrinkle, hoff_mautner_wrinkle};
pub use local_stiffness::{SpringStiffness, local_stiffness};
pub use panel_buckling::{euler_load, wide_column_load};
pub use plate_buckling::{IsotropicPlate, PlateBuckling, plate_buckling};
pub use plate_modulus::plate_modulus;
pub use punching::{PeakShear, RoundFoot, punching_peak, punching_shear_at, punching_stress, strip_edge_shear_at};
pub use shear_crimping::{crimping_load, crimping_stress};
pub use skin_bending::SkinBending;
pub use skin_beside_support::{skin_moment_at_edge, skin_moment_at_round_edge};
pub use skin_indentation::{Denting, DiscLoad, SkinOnCore, foundation_modulus};
pub use skin_indentation_line::StripLoad;
pub use thermal_bow::{SkinExpansion, free_bow, free_curvature};
pub use wrinkling::{
    DESIGN_FACTOR, HOFF_MAUTNER_FACTOR, PLANTEMA_FACTOR, WrinklingModuli, bending_modulus, wrinkling_stress,
};
pub use wrinkling_interaction::{wrinkling_under_biaxial_compression, wrinkling_under_compression_and_shear};
