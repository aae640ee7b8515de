//! Loads that act on a bay both ways.

use super::{
    Bay,
    effect::{Effect, one_newton},
};
use crate::{
    analysis::GearAction,
    load_case::LoadCase,
    top::Top,
    units::{Force, ForcePerWidth, MomentPerWidth, Ratio, per_width},
};

/// All that bends a bay down, and all that bends it up.
pub(super) struct Both {
    pub down: Effect,
    pub up: Effect,
}

impl Both {
    /// Adds a load of some newtons to the side that it bends the bay to.
    pub fn add(&mut self, of_one: &Effect, force: Force) {
        let side = if force < Force::default() { &mut self.up } else { &mut self.down };
        side.add(&of_one.times(force / one_newton()));
    }
}

/// Adds what wind and roll do to the footings of gear on a bay, from either side: a moment splits into two halves beside
/// the footing and leaves as a couple of shears, which presses one pipe and lifts another. On the safe side: nothing
/// spreads beyond the footing's own width.
pub(super) fn overturn(both: &mut Both, top: &Top, bay: &Bay, case: &LoadCase) {
    for gear in top.gear.iter().filter(|gear| case.with_gear && bay.holds(gear.at)) {
        let action = GearAction::of(top, gear, case);
        let force = action.side;
        let arm: Ratio = action.height() / gear.footing();
        let moment: MomentPerWidth = per_width(force * arm / 2.0);
        let shear: ForcePerWidth = per_width(force * arm / gear.footing());
        for (effect, press) in [(&mut both.down, shear), (&mut both.up, -shear)] {
            for middle in &mut effect.middle {
                *middle += if *middle < MomentPerWidth::default() { -moment } else { moment };
            }
            effect.shear += if effect.shear < ForcePerWidth::default() { -shear } else { shear };
            for push in &mut effect.push {
                *push += press;
            }
        }
    }
}
