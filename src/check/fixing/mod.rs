//! Checks of fixings: what lets go when gear is pulled off the top, or the top off its pipes.

mod backing_bearing;
mod backing_bond;
mod backing_core_shear;
mod backing_end;
mod backing_kind;
mod backing_slip;
mod between;
mod edge_load;
mod engagement;
mod fastener_combined;
mod fastener_shear;
mod fastener_tension;
mod fatigue;
mod footing_pressure;
mod hold_combined;
mod in_backing;
mod insert_pull_out;
mod lateral_hold;
mod near_conduit;
mod near_other;
mod near_rim;
mod over_support;
mod patch;
mod plug_side;
mod potted_bond;
mod potted_insert;
mod potted_side;
mod prying;
mod pull_through;
mod screw_withdrawal;
pub(super) mod skin_alone;
mod skin_bearing;
mod skin_beside_backing;
mod skin_net_section;
mod skin_shear_out;
mod spacing;
mod steel;
mod stud_bond;
mod thread_hold;
mod thread_strip;
mod tightening;
mod under_washer;
mod washer_crush;

pub(super) use backing_bearing::BackingBearing;
pub(super) use backing_bond::BackingBond;
pub(super) use backing_core_shear::BackingCoreShear;
pub(super) use backing_end::BackingEnd;
pub(super) use backing_slip::BackingSlip;
pub(super) use engagement::Engagement;
pub(super) use fastener_combined::FastenerCombined;
pub(super) use fastener_shear::FastenerShear;
pub(super) use fastener_tension::FastenerTension;
pub(super) use fatigue::FixingFatigue;
pub(super) use footing_pressure::FootingPressure;
pub(super) use hold_combined::HoldCombined;
pub(super) use in_backing::FixingInBacking;
pub(super) use insert_pull_out::InsertPullOut;
pub(super) use near_conduit::FixingNearConduit;
pub(super) use near_other::FixingNearOther;
pub use near_other::{TooNear, mounts_too_near};
pub(super) use near_rim::FixingNearRim;
pub(super) use over_support::FixingOverSupport;
pub(super) use plug_side::PlugSide;
pub(super) use potted_bond::PottedBond;
pub(super) use potted_insert::PottedInsert;
pub(super) use potted_side::PottedSide;
pub use prying::{Prying, prying};
pub(super) use pull_through::PullThrough;
pub(super) use screw_withdrawal::ScrewWithdrawal;
pub(super) use skin_bearing::SkinBearing;
pub(super) use skin_beside_backing::SkinBesideBacking;
pub(super) use skin_net_section::SkinNetSection;
pub(super) use skin_shear_out::SkinShearOut;
pub(super) use spacing::FixingSpacing;
pub(super) use stud_bond::StudBond;
pub(super) use thread_strip::ThreadStrip;
pub(super) use tightening::Tightening;
pub use tightening::{Gives, MostTorque, most_torque};
pub(super) use washer_crush::WasherCrush;

use super::{Finding, Method, Outcomes, Part, Place};
use crate::{
    analysis::{Analysis, FixingPlace, Knockdowns, Mount, MountForces, MountOn, held_lengths},
    geometry::Point,
    material::Basis,
    section::Skin,
    top::{Fixing, Schedule, Top},
    units::{Force, Ratio, per_width},
};

/// One fixing of a mount under one case.
#[derive(Clone, Copy)]
struct Held<'a> {
    top: &'a Top,
    mount: &'a Mount<'a>,
    forces: &'a MountForces,
    knockdowns: &'a Knockdowns<'a>,
    /// Its place in the list of the mount's fixings.
    number: usize,
    case: usize,
}

impl<'a> Held<'a> {
    fn fixing(&self) -> &'a Fixing {
        &self.mount.fastened.fixing
    }

    fn around(&self) -> &'a FixingPlace {
        &self.mount.places[self.number]
    }

    /// Pull, with what a foot that bends adds by prying.
    fn pull(&self) -> Force {
        self.forces.pulls[self.number] * self.prying()
    }

    fn prying(&self) -> Ratio {
        prying(self.top, self.mount, self.number).factor
    }

    fn shear(&self) -> Force {
        self.forces.shears[self.number]
    }

    /// The skin that it goes in by.
    fn near_skin(&self) -> &'a Schedule {
        self.skin(self.mount.near)
    }

    /// The skin on the other side of the panel.
    const fn far(&self) -> Skin {
        match self.mount.near {
            Skin::Outer => Skin::Inner,
            Skin::Inner => Skin::Outer,
        }
    }

    fn skin(&self, skin: Skin) -> &'a Schedule {
        if skin == Skin::Outer { &self.top.outer } else { &self.top.inner }
    }

    /// Factor on what draws a fixing out of what it holds in, by how well that is known.
    fn pull_out_factor(&self, basis: Basis) -> Ratio {
        let criteria = &self.top.criteria;
        self.factor(match basis {
            Basis::Measured => criteria.pull_out_measured_factor.value,
            _ => criteria.pull_out_table_factor.value,
        })
    }

    /// Factor on a glued bond, by how well that is known.
    fn bond_factor(&self, basis: Basis) -> Ratio {
        let criteria = &self.top.criteria;
        self.factor(match basis {
            Basis::Measured => criteria.bond_measured_factor.value,
            _ => criteria.bond_table_factor.value,
        })
    }

    /// A factor with that for fittings, which no calculation shares out fairly.
    fn factor(&self, factor: Ratio) -> Ratio {
        factor * self.top.criteria.fitting_factor.value
    }

    fn place(&self) -> Place {
        Place::of(Part::Fixing { on: self.mount.on, number: self.number }, Some(self.around().at))
    }

    /// Adds what every reader of a shear needs.
    fn sheared(&self, finding: Finding) -> Finding {
        self.raised(finding.term("V", self.shear()))
    }

    /// Adds by how much what acts sideways was raised, since it is tried from sixteen sides only: no force in a fixing, nor
    /// what a footing hands on, can be redone without it.
    fn raised(&self, finding: Finding) -> Finding {
        let said = finding.terms.iter().any(|term| term.symbol == "r_16");
        if said || self.forces.raised == Ratio::from(1.0) { finding } else { finding.term("r_16", self.forces.raised) }
    }

    /// Adds what every reader of a pull needs; of a row, the length of pipe that the fixing holds. A pull of the plate
    /// method has its error in it.
    fn pulled(&self, finding: Finding) -> Finding {
        let pull = self.forces.pulls[self.number];
        let finding = self.raised(finding.term("T", pull).term("q", self.prying()));
        let MountOn::Support(pipe) = self.mount.on else { return finding };
        let places: Vec<Point> = self.mount.places.iter().map(|place| place.at).collect();
        let held = held_lengths(&self.top.supports[pipe].along, &places)[self.number];
        let finding = finding.term("l", held).term("T/l", per_width(pull / held));
        if self.forces.on_plate { finding.term("ε", self.forces.numerical_error) } else { finding }
    }
}

/// Looks at every fixing of every mount under every case.
fn each<'a, 'o>(
    analysis: &'a Analysis<'_>,
    outcomes: &mut Outcomes<'o>,
    mut look: impl FnMut(Held<'a>, &mut Outcomes<'o>),
) {
    for forces in &analysis.mount_forces {
        outcomes.by(if forces.on_plate { Method::Plate } else { Method::Hand });
        let mount = &analysis.mounts[forces.mount];
        let knockdowns = analysis.knockdowns(analysis.cases[forces.case].state);
        for number in 0..mount.places.len() {
            look(Held { top: analysis.top, mount, forces, knockdowns, number, case: forces.case }, outcomes);
        }
    }
    outcomes.by(Method::Hand);
}

/// Looks at every fixing once, for what hangs on its place alone.
fn each_in_place<'a>(analysis: &'a Analysis<'_>, mut look: impl FnMut(Held<'a>)) {
    let mut seen = vec![false; analysis.mounts.len()];
    for forces in &analysis.mount_forces {
        if std::mem::replace(&mut seen[forces.mount], true) {
            continue;
        }
        let mount = &analysis.mounts[forces.mount];
        let knockdowns = analysis.knockdowns(analysis.cases[forces.case].state);
        for number in 0..mount.places.len() {
            look(Held { top: analysis.top, mount, forces, knockdowns, number, case: forces.case });
        }
    }
}

/// Looks at every mount as a whole under every case.
fn each_mount<'a, 'o>(
    analysis: &'a Analysis<'_>,
    outcomes: &mut Outcomes<'o>,
    mut look: impl FnMut(Held<'a>, &mut Outcomes<'o>),
) {
    each(analysis, outcomes, |held, outcomes| {
        if held.number == 0 {
            look(held, outcomes);
        }
    });
}
