//! Mounts: fixings of gear and of pipes in their places, and the forces in them under every case.

mod gear;
mod mirrors;
mod place;
mod row;
mod thread;

pub use place::{FixingPlace, InBacking};
pub use row::held_lengths;
pub use thread::screw_thread;

use crate::{
    closed_form::fixing_group::FixingGroup,
    load_case::{Held, LoadCase, State},
    section::Skin,
    top::{Fastened, Top},
    units::{Force, ForcePerWidth, Pressure, Ratio, Torque},
};

use self::{gear::Sides, mirrors::Mirrors};
use super::design_value::Knockdowns;

/// What fixings hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum MountOn {
    /// Gear on the top, as its place in the list.
    Gear(usize),
    /// The top on a pipe, as its place in the list.
    Pipe(usize),
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
}

/// Largest forces in the fixings of one mount under one case, as they act, without factors.
#[derive(Clone, Debug, PartialEq)]
pub struct MountForces {
    /// The mount, as its place in the list.
    pub mount: usize,
    /// The case, as its place in the list.
    pub case: usize,
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
pub(super) fn mounts(top: &Top) -> Vec<Mount<'_>> {
    let gear = top.gear.iter().enumerate().filter_map(|(index, gear)| {
        let fastened = gear.fastened.as_ref()?;
        let at = fastened.laid.round(gear.at);
        Some(Mount { on: MountOn::Gear(index), fastened, near: Skin::Outer, places: place::places(top, &at) })
    });
    let pipes = top.pipes.iter().enumerate().filter_map(|(index, pipe)| {
        let fastened = pipe.fastened.as_ref()?;
        let places = place::places(top, &fastened.laid.along(&pipe.along));
        Some(Mount { on: MountOn::Pipe(index), fastened, near: Skin::Inner, places })
    });
    gear.chain(pipes).collect()
}

/// What could not be said about a mount.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpenMount {
    /// The mount, as its place in the list.
    pub mount: usize,
    /// Why.
    pub reason: String,
}

/// What speaks against the forces in the fixings of a mount.
pub(super) fn doubt(top: &Top, mount: &Mount<'_>) -> Option<String> {
    match mount.on {
        MountOn::Gear(index) => gear::doubt(top, &top.gear[index], mount.fastened),
        MountOn::Pipe(_) => None,
    }
}

/// What lifts the top off a pipe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pull {
    /// Per length of pipe.
    pub per_length: ForcePerWidth,
    /// All of it, where it comes from a hand or from people and not from all over the top.
    pub most: Option<Force>,
}

/// Forces of every case in the fixings of one mount; `pull` is what lifts the top off a pipe under a case, where known.
pub(super) fn forces(
    top: &Top,
    (number, mount): (usize, &Mount<'_>),
    cases: &[LoadCase],
    knockdowns: &[(State, Knockdowns<'_>)],
    pull: impl Fn(usize, usize) -> Option<Pull>,
) -> Result<Vec<MountForces>, OpenMount> {
    let open = |reason: String| OpenMount { mount: number, reason };
    match mount.on {
        MountOn::Pipe(pipe) => (0..cases.len())
            .filter(|case| cases[*case].held == Held::OnFrame)
            .map(|case| {
                let pull = pull(pipe, case).ok_or_else(|| {
                    open("the hand method does not count on this pipe: its pull is not known".to_owned())
                })?;
                Ok(row::forces(top, (pipe, mount), (number, case), &cases[case], pull))
            })
            .collect(),
        MountOn::Gear(index) => {
            let gear = &top.gear[index];
            let mut groups: Vec<(State, FixingGroup)> = Vec::with_capacity(4);
            let (mirrors, sides) = (Mirrors::of(&mount.fastened.laid.about_middle()), Sides::all());
            let mut all = Vec::with_capacity(cases.len());
            for (case_number, case) in cases.iter().enumerate().filter(|(_, case)| case.works_on_gear()) {
                let known = groups.iter().position(|(state, _)| *state == case.state);
                let at = match (known, knockdowns.iter().find(|(state, _)| *state == case.state)) {
                    (Some(at), _) => at,
                    (None, Some((state, left))) => {
                        groups.push((*state, gear::group(top, gear, mount.fastened, left).map_err(open)?));
                        groups.len() - 1
                    }
                    // A case whose material has no value in its state is open as a whole.
                    (None, None) => continue,
                };
                let fixings = (&groups[at].1, &mirrors, &sides);
                all.push(gear::forces(top, gear, fixings, (number, case_number), case).map_err(open)?);
            }
            Ok(all)
        }
    }
}
