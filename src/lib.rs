//! Sandwich-panel mechanics for fibreglass hardtops, safe in its units.

pub mod advice;
pub mod analysis;
pub mod check;
pub mod choice;
pub mod closed_form;
pub mod command;
pub mod criteria;
pub mod fastening;
pub mod finite_element;
pub mod geometry;
pub mod input;
pub mod laminate;
pub mod load;
pub mod load_case;
pub mod material;
pub mod mesh;
pub mod plan;
pub mod report;
pub mod section;
pub mod service;
pub mod source;
pub mod strength;
pub mod top;
pub mod units;
