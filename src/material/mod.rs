//! Materials: a table in which every value has a basis, a source and a place in it.

mod property;

pub use property::{Basis, Origin, Property};
