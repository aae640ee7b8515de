//! Shear that a mount sends out into the panel through the rim of what is stiff below it.

use std::f64::consts::PI;

use super::{
    Held, each,
    patch::{Patch, each_patch, gear_on_backing},
    under_washer::pressing_diameter,
};
use crate::{
    analysis::{Analysis, MountOn, WholeFoot},
    check::{Finding, Outcomes, Part, Place},
    fastening::{BackingLoad, bond_length_under_foot, effective_length_near_end},
    geometry::Foot,
    top::Hold,
    units::{Area, Force, ForcePerWidth, Length, Ratio, Torque, per_width},
};

/// Shear per length at the most loaded place of a rim.
#[derive(Clone, Copy)]
pub(super) struct EdgeLoad {
    pub(super) line: ForcePerWidth,
    pub(super) place: Place,
    force: Force,
    moment: Torque,
    length: Length,
    width: Length,
    evenness: Ratio,
    /// Whether it is the pull of one fixing.
    alone: bool,
}

impl EdgeLoad {
    /// Values of the formula of `q`.
    pub(super) fn terms(&self, held: &Held<'_>, finding: Finding) -> Finding {
        let finding = if self.alone {
            held.raised(finding).term("T", held.forces.pulls[held.number]).term("p", held.prying())
        } else {
            finding
        };
        let finding = finding.term("q", self.line).term("P", self.force).term("M", self.moment);
        finding.term("L", self.length).term("w", self.width).term("e", self.evenness)
    }

    /// Beside a strip, or round a plug when it is short.
    fn of_backing(held: &Held<'_>, patch: &Patch<'_>) -> Self {
        let criteria = &held.top.criteria;
        let (width, whole, foot) = (patch.backing.width, patch.length(), patch.foot[0]);
        let force = patch.load.lift.max(patch.load.push);
        if whole < foot * criteria.backing_strip_length.value {
            let off: Length = patch.around.along.hypot(patch.around.across);
            let moment = patch.load.moment + Torque::from(force * off);
            // A board is not stiff over all of its length: what lies far from the footing takes no part.
            let depth = held.top.core.thickness;
            let sides =
                [bond_length_under_foot(foot, depth, whole), bond_length_under_foot(patch.foot[1], depth, width)];
            return Self::of_plug(sides, (force, moment), criteria.plug_evenness.value, patch.place);
        }
        let moment = patch.load.moment + Torque::from(force * patch.around.across);
        let far_from_end = bond_length_under_foot(foot, held.top.core.thickness, whole);
        let length = effective_length_near_end(far_from_end, patch.around.half_length - patch.around.along);
        // A moment along the strip comes on its sides as a load that rises evenly from the middle: 3 M/L².
        let side = BackingLoad { force, moment, width: width.min(length / 3.0), length };
        Self {
            line: side.line_shear(),
            place: patch.place,
            force,
            moment,
            length,
            width,
            evenness: Ratio::from(1.0),
            alone: false,
        }
    }

    fn of_plug(sides: [Length; 2], (force, moment): (Force, Torque), evenness: Ratio, place: Place) -> Self {
        let [length, width] = sides;
        let least = length.min(width);
        let modulus: Area = length * width + least * least / 3.0;
        let line = force / (2.0 * (length + width)) + moment / modulus;
        Self { line: per_width(line / evenness), place, force, moment, length, width, evenness, alone: false }
    }

    fn of_disc(width: Length, (force, moment): (Force, Torque), place: Place) -> Self {
        let area: Area = PI / 4.0 * width * width;
        let line = per_width(force / (PI * width) + moment / area);
        Self { line, place, force, moment, length: width, width, evenness: Ratio::from(1.0), alone: false }
    }

    fn of_foot(held: &Held<'_>, foot: Foot, load: WholeFoot, place: Place) -> Self {
        let acts = (load.lift.max(load.push), load.moment);
        match foot {
            Foot::Disc { diameter } => Self::of_disc(diameter, acts, place),
            Foot::Rectangle { length, width } => {
                Self::of_plug([length, width], acts, held.top.criteria.plug_evenness.value, place)
            }
        }
    }
}

/// Looks at the rim of every backing, footing and washer that sends load into the panel.
pub(super) fn each_edge<'a, 'o>(
    analysis: &'a Analysis<'_>,
    outcomes: &mut Outcomes<'o>,
    mut look: impl FnMut(Held<'a>, EdgeLoad, &mut Outcomes<'o>),
) {
    each_patch(analysis, outcomes, |held, patch, outcomes| {
        let load = EdgeLoad { alone: patch.alone, ..EdgeLoad::of_backing(&held, &patch) };
        look(held, load, outcomes);
    });
    each(analysis, outcomes, |held, outcomes| {
        if held.number == 0
            && let MountOn::Gear(index) = held.mount.on
            && gear_on_backing(&held).is_none()
        {
            let gear = &held.top.gear[index];
            let place = Place::of(Part::Mount(held.mount.on), Some(gear.at));
            let load = EdgeLoad::of_foot(&held, gear.foot, held.forces.whole, place);
            look(held, load, outcomes);
        }
        let in_foam = !held.around().backing.is_some_and(|around| around.holds(held.top));
        if in_foam && let Hold::ThroughBolt { bolt, washer, .. } = &held.fixing().hold {
            let width = pressing_diameter(held.top, bolt, washer);
            let load = EdgeLoad::of_disc(width, (held.pull(), Torque::default()), held.place());
            look(held, EdgeLoad { alone: true, ..load }, outcomes);
        }
    });
}
