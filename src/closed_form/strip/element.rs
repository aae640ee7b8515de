//! A part of the strip between two stations, with one section.

use super::{Segment, loads::State};

#[derive(Clone, Copy, Debug)]
pub(super) struct Element {
    pub h: f64,
    pub d: f64,
    pub s: f64,
    pub mass: f64,
    /// Rotation and deflection at the far end for unit moment and unit shear at the near end.
    pub psi_m: f64,
    pub psi_v: f64,
    pub w_m: f64,
    pub w_v: f64,
    /// What unit pressure all over it adds at the far end.
    pub pressed: State,
}

impl Element {
    pub fn new(h: f64, section: &Section) -> Self {
        let &Section { d, s, mass } = section;
        let hd = h / d;
        let pressed = State::pressed(h, section);
        let (psi_v, w_v) = (-hd * h / 2.0, h / s - hd * h * h / 6.0);
        Self { h, d, s, mass, psi_m: -hd, psi_v, w_m: psi_v, w_v, pressed }
    }

    pub fn section(&self) -> Section {
        Section { d: self.d, s: self.s, mass: self.mass }
    }
}

/// Rigidity, shear stiffness and mass of a stretch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Section {
    pub d: f64,
    pub s: f64,
    pub mass: f64,
}

impl Section {
    pub fn of(segment: &Segment) -> Self {
        Self { d: segment.rigidity.value, s: segment.shear.value, mass: segment.mass.value }
    }
}
