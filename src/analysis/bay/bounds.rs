//! Between which bounds the sag of a bay lies.

use super::{Bay, BayForces, plate_of};
use crate::{
    analysis::sections::Sections,
    closed_form::plate::clamped_plate_uniform,
    units::{Length, Ratio},
};

/// Bounds of the sag that the pressure all over a bay causes. Pipes hold its edges neither loosely nor wholly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SagBounds {
    /// The bay, as its place in the list.
    pub bay: usize,
    /// The case, as its place in the list.
    pub case: usize,
    /// With edges that turn freely: what is checked.
    pub supported: Length,
    /// With edges that cannot turn.
    pub clamped: Length,
}

/// The bounds under the pressure of a case; none where the equations of the clamped plate cannot be solved.
pub fn sag_bounds(bay: &Bay, sections: &Sections, forces: &BayForces, core_left: Ratio) -> Option<SagBounds> {
    let plate = plate_of(bay, sections, core_left).ok()?;
    let clamped = clamped_plate_uniform(&plate, forces.pressure).ok()?.deflection.abs();
    Some(SagBounds { bay: forces.bay, case: forces.case, supported: forces.sag_by_pressure, clamped })
}
