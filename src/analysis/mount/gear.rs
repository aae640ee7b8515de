//! What gear does to its footing, and the footing to its fixings.

use std::f64::consts::{PI, TAU};

use uom::si::ratio::ratio;

use super::{MountForces, WholeFoot};
use crate::{
    analysis::{
        design_value::Knockdowns,
        line::{Region, region_at},
    },
    closed_form::fixing_group::{FixingGroup, FootingAction},
    load::{weight::inertia_force, wind::gear_drag},
    load_case::LoadCase,
    top::{Fastened, Gear, Hold, Top},
    units::{Area, Force, FoundationModulus, Length, Pressure, Ratio, Stiffness, Torque},
};

/// Sides that wind, roll and people come from.
const SIDES: u32 = 16;

/// What acts on a footing from one side, at the outer skin; the side itself is still open.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub(super) struct FromASide {
    up: Force,
    side: Force,
    moment: Torque,
    twist: Torque,
}

impl FromASide {
    /// What acts on a piece of gear under a case.
    pub(super) fn of(top: &Top, gear: &Gear, case: &LoadCase) -> Self {
        let criteria = &top.criteria;
        let mut sum = Self::default();
        if !case.with_gear {
            return sum;
        }
        sum.up -= inertia_force(gear.mass, case.gear_gravity);
        let swing = if gear.limber { criteria.whip_resonance.value } else { Ratio::from(1.0) };
        sum.push(inertia_force(gear.mass, case.gear_sideways) * swing, gear.cg_height);
        sum.push(gear_drag(case.gear_wind, gear.drag, gear.wind_area), gear.wind_height);
        if case.wind.interior < Pressure::default() {
            sum.up += gear_drag(case.gear_wind, gear.lift, gear.wind_area);
        }
        if let (Some(grab), Some(height)) = (case.grab, gear.grab_height) {
            sum.push(grab, height);
        }
        if case.snagged && gear.limber {
            // Never above its own tip, twice as high as its middle.
            sum.push(criteria.whip_snag_force.value, criteria.whip_snag_height.value.min(gear.cg_height * 2.0));
        }
        for given in gear.given.iter().filter(|_| case.given) {
            sum.up += given.up;
            sum.twist += given.twist;
            sum.push(given.side, given.height);
        }
        sum
    }

    fn push(&mut self, force: Force, height: Length) {
        let moment: Torque = (force * height).into();
        self.side += force;
        self.moment += moment;
    }

    /// From each of the sides. The sides stand on a polygon about the circle of all sides, so that what lies between
    /// two of them is covered.
    fn sides(self) -> impl Iterator<Item = FootingAction> {
        let still = self.side == Force::default() && self.moment == Torque::default();
        let count = if still { 1 } else { SIDES };
        let raised = if still { 1.0 } else { 1.0 / (PI / f64::from(SIDES)).cos() };
        (0..count).map(move |index| {
            let (sin, cos) = (TAU * f64::from(index) / f64::from(SIDES)).sin_cos();
            let (sin, cos) = (sin * raised, cos * raised);
            FootingAction {
                pull: self.up,
                side: [self.side * cos, self.side * sin],
                // A force along x above the skin turns about y, one along y turns about x the other way.
                moment: [-self.moment * sin, self.moment * cos],
                twist: self.twist,
            }
        })
    }

    /// As what acts on the footing as a whole.
    fn whole(self) -> WholeFoot {
        WholeFoot {
            lift: self.up.max(Force::default()),
            push: (-self.up).max(Force::default()),
            side: self.side,
            moment: self.moment,
            twist: self.twist.abs(),
        }
    }
}

/// The fixings of gear as a group on what lies below its footing.
pub(super) fn group(top: &Top, gear: &Gear, fastened: &Fastened, left: &Knockdowns<'_>) -> Result<FixingGroup, String> {
    let below = Below::of(top, gear, left);
    FixingGroup::new(fastened.laid.about_middle(), gear.foot, below.stiffness(top, fastened), below.bed())
        .map_err(|error| error.to_string())
}

/// What lies between the skins below a footing.
struct Below {
    compressive_modulus: Pressure,
    shear_modulus: Pressure,
    depth: Length,
}

impl Below {
    fn of(top: &Top, gear: &Gear, left: &Knockdowns<'_>) -> Self {
        let depth = top.core.thickness;
        match region_at(top, gear.at) {
            Region::Backing(index) => {
                let board = &top.backings[index].board;
                Self {
                    compressive_modulus: board.compressive_modulus.value,
                    shear_modulus: board.shear_modulus.value,
                    depth,
                }
            }
            Region::Field | Region::Conduit(_) => {
                let (core, left) = (&top.core.material, left.core_stiffness());
                Self {
                    compressive_modulus: core.compressive_modulus.value * left,
                    shear_modulus: core.shear_modulus.value * left,
                    depth,
                }
            }
        }
    }

    /// It gives way evenly over its depth.
    fn bed(&self) -> FoundationModulus {
        self.compressive_modulus / self.depth
    }

    /// Force per give of one fixing: of a bolt as a rod through the panel, on the column that its washer presses
    /// together at 45 degrees; of one that ends in the panel by the shear round it, which has died away at its depth.
    fn stiffness(&self, top: &Top, fastened: &Fastened) -> Stiffness {
        let fixing = &fastened.fixing;
        let diameter = fixing.diameter();
        if let Hold::ThroughBolt { bolt, washer, .. } = &fixing.hold {
            let skins = top.outer.laminate().thickness() + top.inner.laminate().thickness();
            let shank: Area = PI / 4.0 * bolt.thread.major.value * bolt.thread.major.value;
            let rod: Stiffness = bolt.grade.modulus.value * (shank / (self.depth + skins));
            let spread: Length = washer.outside + self.depth;
            let column: Stiffness = self.bed() * (PI / 4.0 * spread * spread);
            return rod * (column / (rod + column)).get::<ratio>();
        }
        let held = fixing.depth().unwrap_or(diameter).min(self.depth);
        let reach = (2.0 * held / diameter).get::<ratio>().max(2.0);
        self.shear_modulus * (TAU / reach.ln() * held)
    }
}

/// Largest forces in the fixings of gear under a case.
pub(super) fn forces(
    top: &Top,
    gear: &Gear,
    group: &FixingGroup,
    (mount, case_number): (usize, usize),
    case: &LoadCase,
) -> Result<MountForces, String> {
    let from_a_side = FromASide::of(top, gear, case);
    let count = group.at().len();
    let mut found = MountForces {
        mount,
        case: case_number,
        pulls: vec![Force::default(); count],
        shears: vec![Force::default(); count],
        pressure: Pressure::default(),
        whole: from_a_side.whole(),
        numerical_error: Ratio::default(),
    };
    for action in from_a_side.sides() {
        let held = group.pulls(&action).map_err(|error| error.to_string())?;
        for (largest, pull) in found.pulls.iter_mut().zip(&held.pulls) {
            *largest = largest.max(*pull);
        }
        for (largest, [x, y]) in found.shears.iter_mut().zip(group.shears(&action).map_err(|error| error.to_string())?)
        {
            *largest = largest.max(x.hypot(y));
        }
        found.pressure = found.pressure.max(held.pressure);
        found.numerical_error = found.numerical_error.max(held.residual);
    }
    Ok(found)
}
