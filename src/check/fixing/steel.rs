//! What the fastener itself is: the section that is pulled and sheared, and its steel.

use uom::si::pressure::megapascal;

use crate::{
    analysis::screw_thread,
    fastening::{HEAD_FACTOR, SHEAR_FACTOR, SHEAR_FACTOR_HARD_THREAD, round_area, shear_capacity, tensile_capacity},
    material::{Basis, Fastener},
    top::Hold,
    units::{Area, Force, Pressure, Ratio},
};

/// Bolt, machine screw or screw: all but a rivet, whose standard gives loads.
#[derive(Clone, Copy)]
pub(super) struct Steel<'a> {
    pub(super) grade: &'a Fastener,
    /// Stress area of a thread, root area of a screw.
    pub(super) area: Area,
}

impl<'a> Steel<'a> {
    pub(super) fn of(hold: &'a Hold) -> Option<Self> {
        match hold {
            Hold::BlindRivet { .. } => None,
            Hold::Screw { screw, grade, .. } => Some(Self { grade, area: round_area(screw.root.value) }),
            Hold::ThroughBolt { bolt, .. }
            | Hold::TappedScrew { bolt, .. }
            | Hold::BlindInsert { bolt, .. }
            | Hold::PottedInsert { bolt, .. }
            | Hold::BondedStud { bolt, .. } => {
                Some(Self { grade: &bolt.grade, area: screw_thread(&bolt.thread).stress_area() })
            }
        }
    }

    pub(super) fn strength(&self) -> Pressure {
        self.grade.ultimate_stress.value
    }

    pub(super) fn basis(&self) -> Basis {
        self.grade.ultimate_stress.basis
    }

    pub(super) fn tension(&self) -> Force {
        tensile_capacity(self.strength(), self.area, HEAD_FACTOR)
    }

    pub(super) fn shear(&self) -> Force {
        shear_capacity(self.strength(), self.area, self.shear_factor())
    }

    /// Share of the strength that the thread bears in shear. Of steel the classes that are cold-worked (4.8, 5.8, 6.8)
    /// or very hard (10.9) have less; so has aluminium.
    pub(super) fn shear_factor(&self) -> Ratio {
        let (strength, proof) = (self.strength(), self.grade.proof_stress.value);
        let cold_worked = strength < Pressure::new::<megapascal>(700.0) && proof > strength * 0.7;
        let very_hard = strength >= Pressure::new::<megapascal>(1000.0);
        let brittle = match self.grade.family.as_str() {
            "steel" => cold_worked || very_hard,
            "aluminium" => true,
            _ => false,
        };
        if brittle { SHEAR_FACTOR_HARD_THREAD } else { SHEAR_FACTOR }
    }
}
