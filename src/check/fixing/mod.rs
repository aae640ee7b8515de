//! Checks of fixings: what lets go when gear is pulled off the top, or the top off its pipes.

mod fastener_combined;
mod fastener_shear;
mod fastener_tension;
mod in_backing;
mod steel;

pub(super) use fastener_combined::FastenerCombined;
pub(super) use fastener_shear::FastenerShear;
pub(super) use fastener_tension::FastenerTension;
pub(super) use in_backing::FixingInBacking;

use super::{Finding, Part, Place};
use crate::{
    analysis::{Analysis, FixingPlace, Knockdowns, Mount, MountForces},
    top::{Fixing, Top},
    units::{Force, Ratio},
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

    /// Pull, with what a soft foot adds by prying.
    fn pull(&self) -> Force {
        self.forces.pulls[self.number] * self.prying()
    }

    fn prying(&self) -> Ratio {
        if self.mount.fastened.stiff { Ratio::from(1.0) } else { self.top.criteria.prying_factor.value }
    }

    fn shear(&self) -> Force {
        self.forces.shears[self.number]
    }

    /// A factor with that for fittings, which no calculation shares out fairly.
    fn factor(&self, factor: Ratio) -> Ratio {
        factor * self.top.criteria.fitting_factor.value
    }

    fn place(&self) -> Place {
        Place::of(Part::Fixing { on: self.mount.on, number: self.number }, Some(self.around().at))
    }

    /// Adds what every reader of a pull needs.
    fn pulled(&self, finding: Finding) -> Finding {
        finding.term("T", self.forces.pulls[self.number]).term("q", self.prying())
    }
}

/// Looks at every fixing of every mount under every case.
fn each<'a>(analysis: &'a Analysis<'_>, mut look: impl FnMut(Held<'a>)) {
    for forces in &analysis.mount_forces {
        let mount = &analysis.mounts[forces.mount];
        let knockdowns = analysis.knockdowns(analysis.cases[forces.case].state);
        for number in 0..mount.places.len() {
            look(Held { top: analysis.top, mount, forces, knockdowns, number, case: forces.case });
        }
    }
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
fn each_mount<'a>(analysis: &'a Analysis<'_>, mut look: impl FnMut(Held<'a>)) {
    each(analysis, |held| {
        if held.number == 0 {
            look(held);
        }
    });
}
