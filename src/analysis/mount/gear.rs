//! What gear does to its footing, and the footing to its fixings.

use std::f64::consts::{PI, TAU};

use uom::si::ratio::ratio;

use super::{InBacking, Mount, MountForces, WholeFoot, mirrors::Mirrors};
use crate::{
    analysis::{
        design_value::Knockdowns,
        gear_action::GearAction,
        line::{Region, region_at},
    },
    closed_form::fixing_group::{FixingGroup, FootingAction},
    geometry::{Axis, Foot, Point},
    load_case::LoadCase,
    top::{Fastened, Gear, Hold, Top},
    units::{Area, Force, FoundationModulus, Length, Pressure, Ratio, Stiffness, Torque},
};

/// Sides that wind, roll and people come from.
const SIDES: u32 = 16;

/// The sides, as corners of a polygon about the circle of all sides: what lies between two of them is covered.
#[derive(Clone, Copy)]
pub(super) struct Sides([[f64; 2]; SIDES as usize]);

impl Sides {
    pub(super) fn all() -> Self {
        let mut sides = [[0.0; 2]; SIDES as usize];
        let raised = raised().value;
        for (index, side) in (0..SIDES).zip(&mut sides) {
            let (sin, cos) = (TAU * f64::from(index) / f64::from(SIDES)).sin_cos();
            *side = [cos * raised, sin * raised];
        }
        Self(sides)
    }

    /// The sides that something acts from; one where nothing acts sideways.
    fn of(&self, action: &GearAction) -> &[[f64; 2]] {
        if still(action) { &self.0[..1] } else { &self.0 }
    }
}

/// From the middle of the polygon to its corners, over that to its sides.
fn raised() -> Ratio {
    Ratio::from((PI / f64::from(SIDES)).cos().recip())
}

/// Whether nothing acts sideways.
fn still(action: &GearAction) -> bool {
    action.side == Force::default() && action.moment == Torque::default()
}

/// What acts on a footing from one side.
fn from_side(action: &GearAction, [cos, sin]: [f64; 2]) -> FootingAction {
    FootingAction {
        pull: action.up,
        side: [action.side * cos, action.side * sin],
        // A force along x above the skin turns about y, one along y turns about x the other way.
        moment: [-action.moment * sin, action.moment * cos],
        twist: action.twist,
    }
}

/// As what acts on the footing as a whole.
fn whole(action: GearAction) -> WholeFoot {
    WholeFoot {
        lift: action.up.max(Force::default()),
        push: (-action.up).max(Force::default()),
        side: action.side,
        moment: action.moment,
        twist: action.twist.abs(),
    }
}

/// A footing with its fixings, whatever the state of the core below it.
pub(super) struct Footing<'a> {
    top: &'a Top,
    gear: &'a Gear,
    fastened: &'a Fastened,
    /// Its fixings, about its middle.
    at: Vec<Point>,
    bedded: Bedded,
}

impl<'a> Footing<'a> {
    pub(super) fn new(top: &'a Top, gear: &'a Gear, mount: &Mount<'a>) -> Self {
        let at = mount.fastened.laid.about_middle();
        let bedded = bedded(top, gear, mount.below, &at);
        Self { top, gear, fastened: mount.fastened, at, bedded }
    }

    pub(super) fn at(&self) -> &[Point] {
        &self.at
    }

    /// What is left of the stiffness that its bed gets from the core; all of a board, which keeps its own.
    pub(super) fn core_left(&self, left: &Knockdowns<'_>) -> Ratio {
        if matches!(self.bedded, Bedded::OnBoard(..)) { Ratio::from(1.0) } else { left.core_stiffness() }
    }

    /// The fixings as a group on what lies below the footing.
    pub(super) fn group(&self, core_left: Ratio) -> Result<FixingGroup, String> {
        let (foot, below) = match self.bedded {
            Bedded::OnBoard(foot, backing) => (foot, Below::board(self.top, backing)),
            Bedded::OnCore | Bedded::BesideBoard => (self.gear.foot, Below::core(self.top, core_left)),
        };
        FixingGroup::new(self.at.clone(), foot, below.stiffness(self.top, self.fastened), below.bed())
            .map_err(|error| error.to_string())
    }

    /// Largest forces in the fixings of gear under a case.
    pub(super) fn forces(
        &self,
        (group, mirrors, sides): (&FixingGroup, &Mirrors, &Sides),
        (mount, case_number): (usize, usize),
        case: &LoadCase,
    ) -> Result<MountForces, String> {
        let action = GearAction::of(self.top, self.gear, case);
        let count = group.at().len();
        let mut found = MountForces {
            on_plate: false,
            mount,
            case: case_number,
            pulls: vec![Force::default(); count],
            shears: vec![Force::default(); count],
            pressure: Pressure::default(),
            whole: whole(action),
            numerical_error: Ratio::default(),
            raised: if still(&action) { Ratio::from(1.0) } else { raised() },
        };
        for (number, &side) in sides.of(&action).iter().enumerate() {
            let from_side = from_side(&action, side);
            // Without a twist, and about the middle of the footing, all share alike whatever the side.
            if action.twist != Torque::default() || !mirrors.even() || number == 0 {
                // A twist may come either way round.
                let twists = [from_side.twist, -from_side.twist];
                for &twist in if action.twist == Torque::default() { &twists[..1] } else { &twists } {
                    let shears =
                        group.shears(&FootingAction { twist, ..from_side }).map_err(|error| error.to_string())?;
                    for (largest, [x, y]) in found.shears.iter_mut().zip(shears) {
                        *largest = largest.max(x.hypot(y));
                    }
                }
            }
            if !mirrors.need(side) {
                continue;
            }
            let held = group.pulls(&from_side).map_err(|error| error.to_string())?;
            for (largest, pull) in found.pulls.iter_mut().zip(&held.pulls) {
                *largest = largest.max(*pull);
            }
            found.pressure = found.pressure.max(held.pressure);
            found.numerical_error = found.numerical_error.max(held.residual);
        }
        mirrors.spread(&mut found.pulls);
        Ok(found)
    }

    /// Why the forces in fixings that stand beside the backing of their own footing are too small, where they do.
    pub(super) fn doubt(&self) -> Option<String> {
        matches!(self.bedded, Bedded::BesideBoard).then(|| {
            format!(
                "fixings of {} stand beside the backing that its footing rests on, which pries harder on them than is \
                 counted here: lay a wider backing, or bring them closer",
                self.gear.name
            )
        })
    }
}

/// What a footing is bedded on.
enum Bedded {
    /// A part of it on a backing, as its place in the list.
    OnBoard(Foot, usize),
    /// All of it on core.
    OnCore,
    /// Its middle on a backing, some of its fixings beside that.
    BesideBoard,
}

/// What of a footing is bedded, and on what. One that reaches beyond its backing is bedded on that alone, evenly about its
/// middle.
fn bedded(top: &Top, gear: &Gear, below: Option<InBacking>, at: &[Point]) -> Bedded {
    let Region::Backing(index) = region_at(top, gear.at) else { return Bedded::OnCore };
    let backing = &top.backings[index];
    let Some(around) = below.filter(|around| around.backing == index) else {
        return Bedded::OnBoard(gear.foot, index);
    };
    let reach = [around.half_length - around.along, backing.width / 2.0 - around.across].map(|half: Length| half * 2.0);
    let [along_x, along_y] = match backing.along.main_axis() {
        Axis::X => reach,
        Axis::Y => [reach[1], reach[0]],
    };
    let [length, width] = gear.foot.sizes();
    if length <= along_x && width <= along_y {
        return Bedded::OnBoard(gear.foot, index);
    }
    let foot = match gear.foot {
        Foot::Rectangle { .. } => Foot::Rectangle { length: length.min(along_x), width: width.min(along_y) },
        Foot::Disc { diameter } => Foot::Disc { diameter: diameter.min(along_x).min(along_y) },
    };
    if at.iter().all(|place| foot.holds(*place)) { Bedded::OnBoard(foot, index) } else { Bedded::BesideBoard }
}

/// What lies between the skins below a footing.
pub(super) struct Below {
    compressive_modulus: Pressure,
    shear_modulus: Pressure,
    depth: Length,
}

impl Below {
    pub(super) fn board(top: &Top, backing: usize) -> Self {
        let board = &top.backings[backing].board;
        Self {
            compressive_modulus: board.compressive_modulus.value,
            shear_modulus: board.shear_modulus.value,
            depth: top.core.thickness,
        }
    }

    pub(super) fn core(top: &Top, left: Ratio) -> Self {
        let core = &top.core.material;
        Self {
            compressive_modulus: core.compressive_modulus.value * left,
            shear_modulus: core.shear_modulus.value * left,
            depth: top.core.thickness,
        }
    }

    /// It gives way evenly over its depth.
    fn bed(&self) -> FoundationModulus {
        self.compressive_modulus / self.depth
    }

    /// Force per give of one fixing: of a bolt as a rod through the panel, on the column that its washer presses
    /// together at 45 degrees; of one that ends in the panel by the shear round it, which has died away at its depth.
    pub(super) fn stiffness(&self, top: &Top, fastened: &Fastened) -> Stiffness {
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
