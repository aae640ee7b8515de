//! Internal forces by the hand method: strips over the pipes, plates where pipes hold four sides.

mod at_place;
mod bay;
mod below;
mod by_hand;
mod design_value;
mod forces;
mod gear_action;
mod hand;
mod laid;
mod layout;
mod line;
mod mount;
mod moving;
mod on_plate;
mod overlay;
mod pipe_load;
mod plate_method;
mod sections;
mod sideways;
mod spread;
mod standing;
mod still;

pub use bay::{BackingPiece, Bay, BayForces, Cover, EdgePush, PipeLoad, SagBounds, bay_frequency};
pub use below::below_footing;
pub use design_value::{Knockdowns, Shares, core_shear_factor};
pub(crate) use forces::LARGER;
pub use forces::{EdgeForces, Peak, RegionForces, Sag, SeatForces, StripForces};
pub use gear_action::GearAction;
pub use hand::DIVISIONS;
pub use laid::swinging_strip;
pub use layout::{Layout, NoLayout, StripLayout};
pub use line::{GearOnLine, Line, Overhang, Piece, Region, Role, Seat, handed_on};
pub use mount::{
    FixingPlace, InBacking, Mount, MountForces, MountOn, OpenMount, WholeFoot, held_lengths, mounts, screw_thread,
};
pub use pipe_load::LineLoad;
pub use plate_method::{
    AllOver, Asked, ClampMoment, Cut, EvenPush, FieldPeak, FieldSag, Fineness, HeldDown, NoPlate, NumericalError,
    PipeForces, PipeModel, PipeMoment, PlateForces, PlateMethod, PostForces, Pressed, RegionPeaks, Softest,
};
pub use sections::{Bent, FirstPly, ModulusShares, PressedSkin, RegionSection, Sections, ply_factor};
pub use sideways::Sideways;
pub use spread::Spread;
pub use still::thermal_curvature;

use uom::si::ratio::ratio;

use crate::{
    closed_form::effective_width::rim_twist,
    geometry::Axis,
    laminate::Component,
    load::weight::gravity,
    load_case::{Duration, HotTop, LoadCase, OnGear, RuledOut, State, hot_top, load_cases},
    section::Skin,
    strength::{Denting, SkinOnCore, foundation_modulus},
    top::{Scope, Top},
    units::{ForcePerWidth, Length, Pressure, Ratio, per_width},
};

/// Push in the plane of the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Push {
    /// Over the whole width.
    pub even: ForcePerWidth,
    /// Over a length of edge.
    pub local: ForcePerWidth,
    /// That length.
    pub length: Length,
}

/// A top with its load cases and the forces in it.
#[derive(Clone, Debug)]
pub struct Analysis<'a> {
    /// The top.
    pub top: &'a Top,
    /// Its load cases.
    pub cases: Vec<LoadCase>,
    /// Load cases that could not be looked at, since a material has no value in their state, with the reason.
    pub open_cases: Vec<(LoadCase, String)>,
    /// What the design file rules out.
    pub ruled_out: Vec<RuledOut>,
    /// How the frame carries it.
    pub layout: Layout,
    /// Temperatures in the sun.
    pub sun: Option<HotTop>,
    /// Knock-downs by state.
    pub knockdowns: Vec<(State, Knockdowns<'a>)>,
    /// Sections by region.
    pub sections: Sections,
    /// Strips that were looked at.
    pub lines: Vec<Line>,
    /// Forces by strip and case.
    pub strips: Vec<StripForces>,
    /// Bays that stand on four sides.
    pub bays: Vec<Bay>,
    /// Forces by bay and case.
    pub plates: Vec<BayForces>,
    /// What lies between the skins below the middle of each gear.
    pub below_gear: Vec<Region>,
    /// Fixings in their places.
    pub mounts: Vec<Mount<'a>>,
    /// Forces by mount and case.
    pub mount_forces: Vec<MountForces>,
    /// Mounts that could not be looked at.
    pub open_mounts: Vec<OpenMount>,
    /// Loads by stretch of pipe beside bays and case.
    pub pipe_loads: Vec<PipeLoad>,
    /// Forces by the plate method, or why there are none; none where it was not asked for.
    pub whole: Option<Result<PlateMethod, NoPlate>>,
}

impl<'a> Analysis<'a> {
    /// Analyses a top; `divisions` of each bay are places where people are tried and forces are listed.
    ///
    /// # Errors
    ///
    /// Says in words why the hand method cannot be used on this top. Then nothing has been checked, and nothing passes.
    pub fn new(top: &'a Top, divisions: usize) -> Result<Self, String> {
        let mut analysis = Self::unsolved(top, &|_| true)?;
        analysis.forces(divisions)?;
        analysis.mounts = mount::mounts(top);
        analysis.fixing_forces();
        Ok(analysis)
    }

    /// What the hand method stands on, under some load cases alone, before any force is known.
    ///
    /// # Errors
    ///
    /// As for [`Analysis::new`].
    pub fn unsolved(top: &'a Top, wanted: &dyn Fn(&LoadCase) -> bool) -> Result<Self, String> {
        let least = top.outline.length().min(top.outline.width());
        let (mut cases, ruled_out) = load_cases(&top.service, &top.criteria, least, on_gear(top));
        if top.scope == Scope::Patch {
            cases.retain(LoadCase::works_on_gear);
        }
        cases.retain(wanted);
        let (layout, lines) = laid_out(top)?;
        Ok(Self { ruled_out, ..Self::before_forces(top, (layout, lines), cases)? })
    }

    /// Analyses the top without its fixings under load cases of the caller's own.
    ///
    /// # Errors
    ///
    /// As for [`Analysis::new`].
    pub fn under_cases(top: &'a Top, divisions: usize, cases: Vec<LoadCase>) -> Result<Self, String> {
        let mut analysis = Self::before_forces(top, laid_out(top)?, cases)?;
        analysis.forces(divisions)?;
        Ok(analysis)
    }

    /// Analyses the top without its fixings under load cases of the caller's own by the plate method alone, which asks for no
    /// pipes that run side by side.
    ///
    /// # Errors
    ///
    /// Says in words which section cannot be made. Why there is no plate solution stands in [`Analysis::whole`].
    pub fn by_plate_alone(top: &'a Top, cases: Vec<LoadCase>) -> Result<Self, String> {
        Self::without_forces(top, cases).map(Self::with_plate_method)
    }

    /// A top with load cases of the caller's own, its sections and what its materials keep in them; no forces yet.
    ///
    /// # Errors
    ///
    /// As for [`Analysis::by_plate_alone`].
    pub fn without_forces(top: &'a Top, cases: Vec<LoadCase>) -> Result<Self, String> {
        Self::before_forces(top, (Layout::Patch, Vec::new()), cases)
    }

    fn before_forces(top: &'a Top, (layout, lines): (Layout, Vec<Line>), cases: Vec<LoadCase>) -> Result<Self, String> {
        let sun = hot_top(top.service.sun, &top.criteria);
        let mut knockdowns: Vec<(State, Knockdowns<'a>)> = Vec::with_capacity(8);
        let mut open_cases = Vec::new();
        let mut known_cases = Vec::with_capacity(cases.len());
        for case in cases {
            if knockdowns.iter().any(|(state, _)| *state == case.state) {
                known_cases.push(case);
                continue;
            }
            match Knockdowns::new(top, case.state, sun) {
                Ok(of_state) => {
                    knockdowns.push((case.state, of_state));
                    known_cases.push(case);
                }
                Err(reason) => open_cases.push((case, reason)),
            }
        }
        let sections = Sections::new(top, &Axis::BOTH).map_err(|invalid| invalid.to_string())?;
        let bays = match &layout {
            Layout::FourSides { lengthwise, across } => bay::bays(top, lengthwise, across),
            Layout::Patch | Layout::Strips(_) => Vec::new(),
        };
        Ok(Self {
            top,
            cases: known_cases,
            open_cases,
            ruled_out: Vec::new(),
            layout,
            sun,
            knockdowns,
            sections,
            lines,
            strips: Vec::new(),
            bays,
            plates: Vec::new(),
            below_gear: top.gear.iter().map(|gear| line::region_at(top, gear.at)).collect(),
            mounts: Vec::new(),
            mount_forces: Vec::new(),
            open_mounts: Vec::new(),
            pipe_loads: Vec::new(),
            whole: None,
        })
    }

    /// All that lies between the skins somewhere in a bay: core, and every conduit and backing that crosses it.
    #[must_use]
    pub fn regions_of(&self, bay: &Bay) -> Vec<Region> {
        let conduits = self.top.conduits.iter().enumerate();
        let crossing = conduits.filter(|(_, conduit)| !bay.covered_by(&conduit.along, conduit.diameter).is_empty());
        let mut regions = vec![Region::Field];
        regions.extend(crossing.map(|(index, _)| Region::Conduit(index)));
        let backing =
            (0..self.top.backings.len()).filter(|&index| bay.backing.iter().any(|piece| piece.backing == index));
        regions.extend(backing.map(Region::Backing));
        regions
    }

    /// What twist adds to the shear of a strip beside a free end at one of its seats: only the outer pipes lie at a rim.
    #[must_use]
    pub fn rim_twist(&self, line: &Line, seat: &Seat) -> Ratio {
        let skins = self.sections.field.lever(line.axis);
        if !matches!(line.role, Role::Edge | Role::Field) {
            return Ratio::new::<ratio>(1.0);
        }
        // Hands press on the widest patch.
        let gap = (line.to_free_end - self.top.criteria.hand_length.value / 2.0).max(Length::default());
        rim_twist(seat.at.min(line.length() - seat.at), gap, skins, seat.width)
    }

    /// What may lie between the skins under a straight pipe: the backing that covers its seat from end to end, or else
    /// core and every backing that reaches under it.
    #[must_use]
    pub fn under_pipe(&self, pipe: usize) -> Vec<Region> {
        bay::under_pipe(self.top, pipe)
    }

    /// Where pressure alone makes a bay sag most: between which bounds that sag lies.
    #[must_use]
    pub fn sag_bounds(&self) -> Option<SagBounds> {
        let most = |a: &&BayForces, b: &&BayForces| a.sag_by_pressure.value.total_cmp(&b.sag_by_pressure.value);
        let forces = self.plates.iter().max_by(most)?;
        bay::sag_bounds(&self.bays[forces.bay], &self.sections, forces, self.core_left(forces.case))
    }

    /// Knock-downs of a state.
    ///
    /// # Panics
    ///
    /// Never for the state of one of the analysis's own cases: all of them are there.
    #[must_use]
    pub fn knockdowns(&self, state: State) -> &Knockdowns<'a> {
        let at = self.knockdowns.iter().position(|(known, _)| *known == state).unwrap_or(0);
        &self.knockdowns[at].1
    }

    /// What is left of the core's stiffness while something swings: a load of seconds, on a hot day if there are any.
    #[must_use]
    pub fn swinging_stiffness(&self) -> Ratio {
        let hot = self.sun.is_some();
        [Duration::Instant, Duration::Short]
            .into_iter()
            .map(|duration| State { hot, duration })
            .find(|state| self.knockdowns.iter().any(|(known, _)| known == state))
            .map_or_else(|| Ratio::from(1.0), |state| self.knockdowns(state).core_stiffness())
    }

    /// Push in the plane of the top under a case.
    #[must_use]
    pub fn push(&self, case: usize) -> Push {
        let (top, case) = (self.top, &self.cases[case]);
        let length = top.criteria.hand_length.value;
        // Braking: every part is pushed by what lies behind it, half of the top at the middle of a seat on both ends.
        let weight: Pressure = top.field_mass() * (gravity() * case.in_plane);
        let even: ForcePerWidth = per_width(weight * top.outline.length().max(top.outline.width()));
        let local = case.hand.map_or_else(ForcePerWidth::default, |hand| per_width(hand.abs() / length));
        Push { even, local, length }
    }

    /// The outer skin on its core, both skins denting towards each other.
    #[must_use]
    pub fn skin_on_core(&self, case: usize) -> SkinOnCore {
        let core = &self.top.core.material;
        let skin = self.sections.field.section.skin(Skin::Outer);
        let stiffness = skin.stiffness();
        let d = |i| stiffness.bending_free(i, i);
        // The weaker direction of the skin; its contraction hardly matters to a dent.
        let rigidity = if d(Component::X) < d(Component::Y) { d(Component::X) } else { d(Component::Y) };
        let modulus = core.compressive_modulus.value * self.core_left(case);
        SkinOnCore {
            skin_rigidity: rigidity,
            poisson: skin.in_plane_constants().nuxy,
            foundation: foundation_modulus(modulus, self.top.core.thickness, Denting::BothSkins),
        }
    }

    /// What is left of the core's stiffness in a case.
    #[must_use]
    pub fn core_left(&self, case: usize) -> Ratio {
        self.cases
            .get(case)
            .map_or_else(|| Ratio::new::<ratio>(1.0), |case| self.knockdowns(case.state).core_stiffness())
    }
}

/// How the frame carries a top, and the strips of it that are looked at.
fn laid_out(top: &Top) -> Result<(Layout, Vec<Line>), String> {
    let layout = layout::layout(top).map_err(|none| none.to_string())?;
    let mut lines = match &layout {
        Layout::Patch => Vec::new(),
        Layout::Strips(strips) => line::lines(top, strips),
        Layout::FourSides { lengthwise, across } => {
            let mut lines = line::rim_overhangs(top, lengthwise);
            lines.extend(line::rim_overhangs(top, across));
            lines
        }
    };
    if top.scope == Scope::Whole {
        lines.push(line::carried(top));
    }
    Ok((layout, lines))
}

fn on_gear(top: &Top) -> OnGear {
    OnGear {
        grabbed: top.gear.iter().any(|gear| gear.grab_height.is_some()),
        given: top.gear.iter().map(|gear| gear.given.len()).max().unwrap_or(0),
        limber: top.gear.iter().any(|gear| gear.limber),
    }
}
