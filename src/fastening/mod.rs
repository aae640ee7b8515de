//! What a fixing, its thread and what it sits in can bear: one failure mode in each file, as pure functions.
//!
//! A function takes quantities and gives a force, a torque, a stress or a utilisation; it knows no design file and no
//! material table. Strengths are as the caller passes them: what comes out is a mean, a minimum or an allowable value
//! as the strength was. Factors of safety and knock-downs belong to the caller. Pull is away from the panel.

mod blind_insert;
mod board_strip;
mod bolt_bending;
mod bolt_fatigue;
mod bolt_load;
mod bonded_stud;
mod engagement;
mod foot_plate;
mod interaction;
mod laminate_fatigue;
mod potted_insert_bond;
mod preload_at_yield;
mod prying;
mod screw_thread;
mod shear;
mod tee_stub;
mod tension;
mod thread_strip;
mod tightening;
mod withdrawal;

pub use blind_insert::{InsertFlange, insert_pull_out, insert_push_out};
pub use board_strip::{board_strip_capacity, thread_shape_factor};
pub use bolt_bending::{BoltEnd, bolt_bending_stress};
pub use bolt_fatigue::{BOLT_THREAD_CATEGORY, bolt_fatigue_range};
pub use bolt_load::{bolt_load, separation_load};
pub use bonded_stud::{stud_bond_shear, stud_bond_tension};
pub use engagement::effective_engagement;
pub use foot_plate::foot_plate_stress;
pub use interaction::Interaction;
pub use laminate_fatigue::laminate_fatigue_share;
pub use potted_insert_bond::insert_bond_capacity;
pub use preload_at_yield::preload_at_yield;
pub use prying::elastic_prying_factor;
pub use screw_thread::{ScrewThread, ThreadForm, round_area};
pub use shear::{SHEAR_FACTOR, SHEAR_FACTOR_HARD_THREAD, SHEAR_FACTOR_YIELD, shear_capacity};
pub use tee_stub::{TeeStub, TeeStubCapacity, TeeStubMode};
pub use tension::{HEAD_FACTOR, HEAD_FACTOR_COUNTERSUNK, tensile_capacity};
pub use thread_strip::{ThreadMating, engagement_needed, strip_capacity};
pub use tightening::{PreloadRange, nut_factor, preload_range, tightening_torque, torque_within};
pub use withdrawal::{WithdrawalBasis, lag_screw_withdrawal, wood_screw_withdrawal};
