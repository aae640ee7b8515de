//! A material value with everything a reader needs to dispute it.

use std::sync::Arc;

use crate::source::Mark;

/// How good a value is, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Deserialize, serde::Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Basis {
    /// From the shop's own coupons, reduced to a characteristic value.
    Measured,
    /// Guaranteed minimum, or the minimum that a rule formula grants.
    Minimum,
    /// Value that 95 % of the material reaches.
    Characteristic,
    /// Mean or nominal value of a class of material.
    Typical,
    /// Judgement; only a test can settle it.
    Estimate,
}

/// Where a value stands and under which condition it holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Origin {
    /// Row of the table, `core pvc-foam`.
    pub row: String,
    /// Name of the property within the row, `shear_strength`.
    pub property: String,
    /// The value as the source writes it, in the source's own unit.
    pub as_written: String,
    /// Key in the list of sources.
    pub source: String,
    /// Page, table or clause.
    pub locator: String,
    /// How the value came to us.
    pub mark: Mark,
    /// Temperature, wetness, duration, where they matter.
    pub condition: Option<String>,
    /// The table that won: the built-in one, or a user's file.
    pub table: String,
}

/// A value with its basis and origin.
#[derive(Clone, Debug, PartialEq)]
pub struct Property<Q> {
    /// The value itself.
    pub value: Q,
    /// How good it is.
    pub basis: Basis,
    /// Where it comes from.
    pub origin: Arc<Origin>,
}
