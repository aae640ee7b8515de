//! What lies in the core in place of foam: backing and conduits.

use std::sync::Arc;

use crate::{
    geometry::Polyline,
    material::{Board, Conduit as ConduitMaterial},
    units::Length,
};

/// Solid material in place of core, to take fasteners; a strip when long.
#[derive(Clone, Debug, PartialEq)]
pub struct Backing {
    /// Name in the report.
    pub name: String,
    /// The board it is cut from.
    pub board: Board,
    /// Boards that hold glue, the lightest first, so that another can be tried.
    pub boards: Arc<[Board]>,
    /// Width across its line.
    pub width: Length,
    /// Its centre line in plan.
    pub along: Polyline,
}

/// A tube in the core.
#[derive(Clone, Debug, PartialEq)]
pub struct Conduit {
    /// Name in the report.
    pub name: String,
    /// Width and depth that it takes from the core.
    pub diameter: Length,
    /// Its line in plan.
    pub along: Polyline,
    /// The tube itself, where one is named; a plain hole where not.
    pub tube: Option<ConduitMaterial>,
}
