//! The part of a backing that a footing or a fixing works on, and what acts on it.

use super::{Held, Outcomes, each};
use crate::{
    analysis::{Analysis, InBacking, MountOn, WholeFoot},
    check::{Part, Place},
    fastening::bond_length_under_foot,
    geometry::Axis,
    top::{Backing, Gear},
    units::Length,
};

#[derive(Clone, Copy)]
pub(super) struct Patch<'a> {
    pub(super) backing: &'a Backing,
    pub(super) around: InBacking,
    /// What presses or pulls: the footing along the backing and across it, or one fixing.
    pub(super) foot: [Length; 2],
    pub(super) load: WholeFoot,
    /// Whether that is the load of one fixing, whose own forces every reader needs then; else that of a footing as a whole, as it acts.
    pub(super) alone: bool,
    pub(super) place: Place,
    /// Distance to the next fixing, which has its own patch.
    neighbour: Option<Length>,
}

impl Patch<'_> {
    /// Length and width of the backing that take part, spread at 45 degrees, as far as it reaches on the shorter side.
    pub(super) fn spread(&self, thickness: Length) -> [Length; 2] {
        let left: Length = self.around.half_length - self.around.along;
        let beside: Length = self.backing.width / 2.0 - self.around.across;
        [(self.foot[0], left), (self.foot[1], beside)].map(|(foot, reach)| {
            let spread = bond_length_under_foot(foot, thickness, 2.0 * reach);
            self.neighbour.map_or(spread, |neighbour| spread.min(neighbour))
        })
    }

    /// Length of the backing.
    pub(super) fn length(&self) -> Length {
        2.0 * self.around.half_length
    }
}

/// Gear and where it lies in the backing below the middle of its footing.
pub(super) fn gear_on_backing<'a>(held: &Held<'a>) -> Option<(&'a Gear, InBacking)> {
    let MountOn::Gear(index) = held.mount.on else { return None };
    let gear = &held.top.gear[index];
    held.mount.below.filter(|around| around.holds(held.top)).map(|around| (gear, around))
}

/// Footing of gear along the backing below it and across.
pub(super) fn foot_on(gear: &Gear, backing: &Backing) -> [Length; 2] {
    let [x, y] = gear.foot.sizes();
    match backing.along.main_axis() {
        Axis::X => [x, y],
        Axis::Y => [y, x],
    }
}

/// Looks at every patch of backing below a footing, and at those of single fixings of other mounts that stand in backing.
pub(super) fn each_patch<'a, 'o>(
    analysis: &'a Analysis<'_>,
    outcomes: &mut Outcomes<'o>,
    mut look: impl FnMut(Held<'a>, Patch<'a>, &mut Outcomes<'o>),
) {
    each(analysis, outcomes, |held, outcomes| {
        let whole = gear_on_backing(&held);
        if let Some((gear, around)) = whole.filter(|_| held.number == 0) {
            let backing = &held.top.backings[around.backing];
            let place = Place::of(Part::Mount(held.mount.on), Some(gear.at));
            let foot = foot_on(gear, backing);
            look(
                held,
                Patch { backing, around, foot, load: held.forces.whole, alone: false, place, neighbour: None },
                outcomes,
            );
        }
        let Some(around) = held.around().backing.filter(|around| around.holds(held.top)) else { return };
        if whole.is_some_and(|(_, below)| below.backing == around.backing) {
            return;
        }
        let size = held.fixing().diameter();
        let load = WholeFoot { lift: held.pull(), side: held.shear(), ..WholeFoot::default() };
        let (backing, neighbour) = (&held.top.backings[around.backing], held.around().neighbour);
        let patch = Patch { backing, around, foot: [size; 2], load, alone: true, place: held.place(), neighbour };
        look(held, patch, outcomes);
    });
}
