//! Criteria: every factor, share, limit, coefficient and default of the program, named, sourced, and open to change.
//!
//! They stand in `materials/criteria.toml`, one table for each. No formula holds a number of judgement; it takes it
//! from here, and the report lists all of them with what the user changed.

mod error;
mod list;
mod record;
mod view;

pub use self::{
    error::CriterionError,
    list::Criteria,
    record::{Criterion, Record},
};
