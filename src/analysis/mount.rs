//! Mounts: fixings of gear and of pipes in their places, and the forces in them under every case.

mod gear;
mod mirrors;
mod place;
mod row;
mod thread;

pub use place::{FixingPlace, InBacking};
pub use row::held_lengths;
pub(super) use row::{forces_on_plate, held_stretches};
pub use thread::screw_thread;

use crate::{
    closed_form::fixing_group::FixingGroup,
    load_case::{Held, LoadCase, State},
    section::Skin,
    top::{Fastened, Top},
    units::{Force, ForcePerWidth, Pressure, Ratio, Stiffness, Torque},
};

use self::{
    gear::{Footing, Sides},
    mirrors::Mirrors,
};
use super::design_value::Knockdowns;

/// What fixings hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum MountOn {
    /// Gear on the top, as its place in the list.
    Gear(usize),
    /// The top on a support, as its place in the list.
    Support(usize),
}

/// Fixings in their places.
#[derive(Clone, Debug, PartialEq)]
pub struct Mount<'a> {
    /// What they hold.
    pub on: MountOn,
    /// The fixings.
    pub fastened: &'a Fastened,
    /// The skin that they go in by.
    pub near: Skin,
    /// What lies round each.
    pub places: Vec<FixingPlace>,
    /// Where the middle of a footing lies in the backing that holds it, or in the one that it misses least; none of a pipe.
    pub below: Option<InBacking>,
}

/// Largest forces in the fixings of one mount under one case, as they act, without factors.
#[derive(Clone, Debug, PartialEq)]
pub struct MountForces {
    /// The mount, as its place in the list.
    pub mount: usize,
    /// The case, as its place in the list.
    pub case: usize,
    /// Whether the plate method found the pulls, not the hand method; only those of rows along pipes.
    pub on_plate: bool,
    /// Largest pull of each fixing.
    pub pulls: Vec<Force>,
    /// Largest shear of each fixing. It need not come from the side that the largest pull comes from.
    pub shears: Vec<Force>,
    /// Largest pressure of the foot on the skin.
    pub pressure: Pressure,
    /// Of the footing as a whole.
    pub whole: WholeFoot,
    /// What is left over when the forces of the fixings and the bed are set against what acts, over what acts.
    pub numerical_error: Ratio,
    /// What acts sideways on gear is tried from sixteen sides only: by how much it is raised on each, so that what lies
    /// between two of them is covered too. One of rows, and where nothing acts sideways.
    pub raised: Ratio,
}

/// What acts on a footing as a whole.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct WholeFoot {
    /// Pull away from the panel.
    pub lift: Force,
    /// Push into the panel.
    pub push: Force,
    /// In the plane of the skin.
    pub side: Force,
    /// Overturning moment at the skin.
    pub moment: Torque,
    /// About the axis square to the skin.
    pub twist: Torque,
}

/// The mounts of a top: gear that says how it is held, then pipes.
#[must_use]
pub fn mounts(top: &Top) -> Vec<Mount<'_>> {
    let gear = top.gear.iter().enumerate().filter_map(|(index, gear)| {
        let fastened = gear.fastened.as_ref()?;
        let at = fastened.laid.round(gear.at);
        let (places, below) = (place::places(top, &at), InBacking::at(top, gear.at));
        Some(Mount { on: MountOn::Gear(index), fastened, near: Skin::Outer, places, below })
    });
    let pipes = top.supports.iter().enumerate().filter_map(|(index, pipe)| {
        let fastened = pipe.fastened.as_ref()?;
        let places = place::places(top, &pipe.fixing_places());
        Some(Mount { on: MountOn::Support(index), fastened, near: Skin::Inner, places, below: None })
    });
    gear.chain(pipes).collect()
}

/// What could not be said about a mount, or what speaks against the forces in its fixings.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpenMount {
    /// The mount, as its place in the list.
    pub mount: usize,
    /// Why.
    pub reason: String,
}

/// What lifts the top off a pipe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pull {
    /// Per length of pipe.
    pub per_length: ForcePerWidth,
    /// All of it, where it comes from a hand or from people and not from all over the top.
    pub most: Option<Force>,
}

/// Forces of every case in the fixings of one mount, and what is open about them; `pull` is what lifts the top off a pipe
/// under a case, where known.
pub(super) fn forces(
    top: &Top,
    (number, mount): (usize, &Mount<'_>),
    cases: &[LoadCase],
    knockdowns: &[(State, Knockdowns<'_>)],
    pull: impl Fn(usize, usize) -> Option<Pull>,
) -> (Vec<MountForces>, Vec<OpenMount>) {
    let open = |reason: String| OpenMount { mount: number, reason };
    let (forces, doubt) = match mount.on {
        // Places of a pad are not along a line, and no strip runs over it.
        MountOn::Support(pad) if top.supports[pad].is_pad() => (
            Err("the hand method does not count on pads, and there is no plate solution: its pull is not known"
                .to_owned()),
            None,
        ),
        MountOn::Support(pipe) => {
            let on_frame = (0..cases.len()).filter(|case| cases[*case].held == Held::OnFrame);
            let word = top.supports[pipe].word();
            let forces = on_frame.map(|case| {
                let pull = pull(pipe, case)
                    .ok_or_else(|| format!("the hand method does not count on this {word}: its pull is not known"))?;
                Ok(row::forces(top, (pipe, mount), (number, case), &cases[case], pull))
            });
            (forces.collect(), None)
        }
        MountOn::Gear(index) => {
            let footing = Footing::new(top, &top.gear[index], mount);
            (of_gear(&footing, number, cases, knockdowns), footing.doubt())
        }
    };
    let (forces, failed) = match forces {
        Ok(forces) => (forces, None),
        Err(reason) => (Vec::new(), Some(reason)),
    };
    (forces, failed.into_iter().chain(doubt).map(open).collect())
}

/// Forces of every case in the fixings of a footing.
fn of_gear(
    footing: &Footing<'_>,
    number: usize,
    cases: &[LoadCase],
    knockdowns: &[(State, Knockdowns<'_>)],
) -> Result<Vec<MountForces>, String> {
    // States that leave the same of the core below it have one group.
    let mut groups: Vec<(Ratio, FixingGroup)> = Vec::with_capacity(4);
    let (mirrors, sides) = (Mirrors::of(footing.at()), Sides::all());
    let mut all = Vec::with_capacity(cases.len());
    for (case_number, case) in cases.iter().enumerate().filter(|(_, case)| case.works_on_gear()) {
        // A case whose material has no value in its state is open as a whole.
        let Some((_, left)) = knockdowns.iter().find(|(state, _)| *state == case.state) else { continue };
        let left = footing.core_left(left);
        let at = match groups.iter().position(|(known, _)| *known == left) {
            Some(at) => at,
            None => {
                groups.push((left, footing.group(left)?));
                groups.len() - 1
            }
        };
        let fixings = (&groups[at].1, &mirrors, &sides);
        all.push(footing.forces(fixings, (number, case_number), case)?);
    }
    Ok(all)
}

/// Pull of a fixing over its give, on a backing or on the core with a share of its stiffness left.
pub(super) fn fixing_stiffness(top: &Top, fastened: &Fastened, backing: Option<usize>, core_left: Ratio) -> Stiffness {
    let below = backing.map_or_else(|| gear::Below::core(top, core_left), |backing| gear::Below::board(top, backing));
    below.stiffness(top, fastened)
}
