//! What a fixing bears and what the panel round it bears: one failure mode in each file, as pure functions.
//!
//! A function takes quantities and gives a stress, a load or a length; it knows no design file and no material table.
//! Factors of safety and knock-downs belong to the caller.

mod backing_bearing;
mod backing_bond_shear;
mod backing_bond_tension;
mod backing_core_shear;
mod backing_end;
mod bearing;
mod block;
mod compression_sleeve;
mod edge_distance;
mod insert_neighbour;
mod net_section;
mod potted_insert;
mod pull_through;
mod shear_out;
mod skin_stress_at_backing;
mod thermal_slip;
mod washer_pressure;

pub use backing_bearing::{Dowel, DowelBearing, DowelMode, HingeRule, PlateGrip, backing_bearing, plastic_moment};
pub use backing_bond_shear::BondLine;
pub use backing_bond_tension::{bond_length_under_foot, bond_tension};
pub use backing_core_shear::{BackingLoad, core_shear_round_plug};
pub use backing_end::effective_length_near_end;
pub use bearing::{SlenderHole, bearing_capacity};
pub use block::block_capacity;
pub use compression_sleeve::{Sleeve, skins_share_beside_sleeve};
pub use edge_distance::{end_distance_needed, pitch_needed, side_distance_needed};
pub use insert_neighbour::{InsertsTouch, Neighbour, core_shear_beside_free_edge, core_shear_with_neighbour};
pub use net_section::net_section_capacity;
pub use potted_insert::{full_depth_pull, in_plane_load, partly_potted_pull, torsion_capacity};
pub use pull_through::{pull_through_laminate, pull_through_metal};
pub use shear_out::shear_out_capacity;
pub use skin_stress_at_backing::skin_stress_at_backing;
pub use thermal_slip::{thermal_force, thermal_slip};
pub use washer_pressure::{force_at_crush, washer_pressure};
