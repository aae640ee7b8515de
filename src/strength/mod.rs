//! What the skins and the core of a sandwich top, and the pipes below it, can bear: one failure mode in each file, as pure functions.
//!
//! A function takes quantities and gives a stress, a load or a utilisation; it knows no design file and no material
//! table. Factors of safety and knock-downs belong to the caller. Compression is positive wherever a sign matters.

mod conduit;
mod core_crush;
mod deep_core;
mod dimpling;
mod disbond;
mod hoff_mautner;
mod kelvin;
mod plate_modulus;
mod punching;
mod punching_even;
mod shear_crimping;
mod skin_bending;
mod skin_beside_load;
mod skin_beside_support;
mod skin_indentation;
mod skin_indentation_line;
mod thermal_bow;
mod tube_bending;
mod wrinkling;
mod wrinkling_interaction;

pub use conduit::{ConduitFillsCore, core_shear_beside_conduit};
pub use core_crush::{Pad, line_pressure, pad_pressure, round_pad_pressure, tipped_pad_pressure};
pub use deep_core::{DeepCore, bonded_core_modulus};
pub use dimpling::{cell_dimpling_stress, void_stress_across, void_stress_along};
pub use disbond::{disbond_size, disbond_stress};
pub use hoff_mautner::{Branch, Wrinkle, hoff_mautner_wrinkle};
pub use plate_modulus::plate_modulus;
pub use punching::{
    PeakShear, RoundFoot, punching_peak, punching_shear_at, punching_stress, tipping_shear, tipping_stress,
};
pub use punching_even::{even_punching_peak, even_punching_shear_at};
pub use shear_crimping::{crimping_load, crimping_stress};
pub use skin_bending::SkinBending;
pub use skin_beside_load::{LocalBending, PressedPanel};
pub use skin_beside_support::{skin_moment_at_edge, skin_moment_at_round_edge, skin_moment_beside_strip};
pub use skin_indentation::{Denting, DiscLoad, SkinOnCore, foundation_modulus};
pub use skin_indentation_line::StripLoad;
pub use thermal_bow::free_bow;
pub use tube_bending::Tube;
pub use wrinkling::{
    DESIGN_FACTOR, HOFF_MAUTNER_FACTOR, PLANTEMA_FACTOR, WrinklingModuli, bending_modulus, wrinkling_stress,
};
pub use wrinkling_interaction::{wrinkling_under_biaxial_compression, wrinkling_under_compression_and_shear};
