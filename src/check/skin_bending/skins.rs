//! What the skins bear when they are bent by themselves on top of the panel's bending, and the one comparison.

use std::f64::consts::PI;

use crate::{
    analysis::{Analysis, Bent, Region, ply_factor},
    check::{
        Finding, Outcomes, Part, Place,
        fixing::skin_alone::{Bendable, bendable, bent_alone, rigidity},
        ply_failure::governing,
    },
    geometry::Axis,
    laminate::{Ply, PlyStress, Resultants, TsaiWu},
    material::Basis,
    section::{PlyPlace, Skin, UnitResponse, Width},
    strength::{Denting, DiscLoad, LocalBending, PressedPanel, SkinBending, foundation_modulus, tipping_shear},
    units::{
        FlexuralRigidity, Force, ForcePerWidth, Length, MomentPerWidth, Pressure, Ratio, TemperatureInterval, Torque,
        per_width, plain,
    },
};

const NO_STRENGTH: &str = "a ply of the skins has no strength in the table";

/// Skins of a top, each by itself.
pub(super) struct Skins<'a> {
    pub(super) analysis: &'a Analysis<'a>,
    basis: [Basis; 2],
    rigidity: [[FlexuralRigidity; 2]; 2],
    bears: [[Option<Bendable>; 2]; 2],
    /// None where a ply has no strength.
    sides: Option<Vec<Side<'a>>>,
    responses: Vec<(Region, UnitResponse)>,
}

/// A side of a ply.
struct Side<'a> {
    ply: &'a Ply,
    criterion: TsaiWu,
    /// Its stress at one newton-metre per metre of its skin by itself, by axis.
    alone: [PlyStress; 2],
}

/// Skins bent along an axis at a place.
#[derive(Clone, Copy)]
pub(super) struct Local<'s> {
    pub(super) case: usize,
    pub(super) axis: Axis,
    /// By skin, sagging positive: the moments that it may have by itself.
    pub(super) moments: [[MomentPerWidth; 2]; 2],
    /// What bounds the panel there, each by itself.
    pub(super) panel: &'s [PanelState],
    pub(super) place: Place,
}

/// The panel as a whole at a place.
pub(super) struct PanelState {
    /// Its section.
    pub(super) section: Region,
    /// What may act there, in full or in part.
    pub(super) states: Vec<Resultants>,
    /// By skin: no less than what they use of it, with its factor.
    pub(super) used: [Ratio; 2],
    /// What the plate method's states may be off by, which is in them; none by hand.
    pub(super) error: Option<Ratio>,
}

impl PanelState {
    /// Takes in what else may act there.
    pub(super) fn join(&mut self, other: Self) {
        self.states.extend(other.states);
        for (own, other) in self.used.iter_mut().zip(other.used) {
            *own = own.max(other);
        }
    }
}

/// The worst side of a ply.
struct WorstSide {
    used: Ratio,
    place: PlyPlace,
    factor: Ratio,
    /// Stress that its way of failing is named for: of all, and of the panel's bending.
    stress: [Pressure; 2],
    moment: MomentPerWidth,
    reserve: Ratio,
}

impl<'a> Skins<'a> {
    pub(super) fn new(analysis: &'a Analysis<'_>) -> Self {
        let of = |skin| analysis.sections.field.section.skin(skin);
        let backings = (0..analysis.top.backings.len()).map(Region::Backing);
        let response = |region| (region, analysis.sections.of(region).section.unit_response());
        Self {
            analysis,
            basis: [analysis.top.outer.basis(), analysis.top.inner.basis()],
            rigidity: Skin::BOTH.map(|skin| Axis::BOTH.map(|axis| rigidity(of(skin), axis))),
            bears: Skin::BOTH.map(|skin| Axis::BOTH.map(|axis| bendable(of(skin), axis, analysis.top))),
            sides: sides(analysis),
            responses: std::iter::once(Region::Field).chain(backings).map(response).collect(),
        }
    }

    pub(super) fn rigidity(&self, skin: Skin, axis: Axis) -> FlexuralRigidity {
        self.rigidity[index(skin)][axis.index()]
    }

    /// How near to an edge a skin is looked at: nearer than half its thickness it is no plate.
    pub(super) fn off(&self, skin: Skin) -> Length {
        self.analysis.sections.field.section.skin(skin).thickness() / 2.0
    }

    /// The panel with the core as a case leaves it, bent along an axis.
    pub(super) fn panel(&self, case: usize, region: Region, axis: Axis) -> SkinBending {
        let own = self.analysis.sections.of(region);
        let bending = own.section.bending(axis, Width::Wide);
        SkinBending {
            flanges: bending.skin_membranes,
            skins: bending.skins_alone,
            shear: own.shear_stiffness(axis, self.analysis.core_left(case)),
        }
    }

    pub(super) fn pressed(&self, case: usize, region: Region, axis: Axis, skin: Skin) -> PressedPanel {
        let top = self.analysis.top;
        let modulus: Pressure = match region {
            Region::Backing(index) => top.backings[index].board.compressive_modulus.value,
            Region::Field | Region::Conduit(_) => top.core.material.compressive_modulus.value,
        };
        let modulus = modulus * self.analysis.core_left(case);
        PressedPanel {
            panel: self.panel(case, region, axis),
            pressed: self.rigidity(skin, axis),
            far: self.rigidity(other(skin), axis),
            poisson: self.analysis.sections.field.section.skin(skin).in_plane_constants().nuxy,
            core: foundation_modulus(modulus, top.core.thickness, Denting::FarSkinHeld),
        }
    }

    /// Over a pipe's seat, so much of it hard as the criterion says.
    pub(super) fn over_seat(
        &self,
        panel: &PressedPanel,
        (push, shear): (ForcePerWidth, ForcePerWidth),
        seat: Length,
    ) -> LocalBending {
        let hard = self.analysis.top.criteria.seat_edge_share.value;
        let even = panel.over_even_seat(push, seat);
        let edge = panel.beside_hard_edge(push.min(shear), self.off(Skin::Inner));
        let mix = |even: MomentPerWidth, edge: MomentPerWidth| even * (1.0 - hard.value) + edge * hard.value;
        let [pressed, far] = [0, 1].map(|skin| mix(even.together[skin], edge.together[skin]));
        LocalBending { together: [pressed, far], dent: mix(even.dent, edge.dent) }
    }

    /// A person's foot as a disc of the area of the footprint.
    pub(super) fn sole(&self, force: Force) -> DiscLoad {
        DiscLoad { force, radius: self.analysis.top.criteria.standing_footprint.value / PI.sqrt() }
    }

    /// Shear beside the rim of a square footing that is rigid, where it is tipped most.
    pub(super) fn beside_footing(&self, force: Force, moment: Torque, side: Length) -> ForcePerWidth {
        let even: ForcePerWidth = per_width(force / (side * 4.0));
        let most: ForcePerWidth = even + tipping_shear(moment, side);
        per_width(plain(most) / self.analysis.top.criteria.plug_evenness.value)
    }

    /// A section bent along an axis by moments, whichever way.
    pub(super) fn bent(&self, section: Region, axis: Axis, moments: &[(Bent, MomentPerWidth)]) -> PanelState {
        let own = self.analysis.sections.of(section);
        let mut state =
            PanelState { section, states: Vec::with_capacity(moments.len()), used: Default::default(), error: None };
        for &(bent, moment) in moments.iter().filter(|(_, moment)| *moment > MomentPerWidth::default()) {
            let sign = if bent == Bent::Sagging { 1.0 } else { -1.0 };
            state.states.push(own.section.bent(axis, Width::Wide, moment * sign));
            for (used, first) in state.used.iter_mut().zip(own.first_ply(axis, bent)) {
                *used = used.max(first.map_or_else(Ratio::default, |first| moment / first.moment * first.factor));
            }
        }
        state
    }

    pub(super) fn compare(&self, outcomes: &mut Outcomes<'_>, local: &Local<'_>, terms: impl Fn(Finding) -> Finding) {
        let Some(sides) = &self.sides else {
            outcomes.cannot(None, Part::Whole, NO_STRENGTH);
            return;
        };
        let knockdowns = self.analysis.knockdowns(self.analysis.cases[local.case].state);
        let criteria = &self.analysis.top.criteria;
        let factors = [criteria.ply_failure_factor.value, criteria.ply_cracking_factor.value];
        let apart = factors[0].max(factors[1]) / factors[0].min(factors[1]);
        for skin in Skin::BOTH {
            let number = index(skin);
            let left = knockdowns.skin_strength(skin, self.basis[number]).product();
            let most = local.moments[number].map(MomentPerWidth::abs);
            let most = most[0].max(most[1]);
            // The criterion is convex: no sum uses more than its parts do, each by itself. A mode has its own factor.
            let alone = self.bears[number][local.axis.index()];
            let alone = alone.map_or_else(Ratio::default, |bears| most / bears.moment * bears.factor);
            let panel = local.panel.iter().map(|panel| panel.used[number]).fold(Ratio::default(), Ratio::max);
            if !outcomes.keeps(Some(local.case), (panel + alone) * apart / left) {
                continue;
            }
            let bounds = local.panel.iter().filter_map(|panel| self.worst(sides, local, panel, skin));
            let Some(worst) = bounds.reduce(|a, b| if b.used < a.used { b } else { a }) else { continue };
            outcomes.compare(Some(local.case), worst.used / left, || {
                let [stress, of_panel] = worst.stress;
                let bearable: Pressure = stress * worst.reserve * left;
                let finding = Finding::compare(stress, bearable, worst.factor, self.basis[number])
                    .term("s_g", of_panel)
                    .term("m", worst.moment.abs())
                    .term("T", worst.reserve);
                let finding = terms(finding).term("k", left);
                let error = local.panel.iter().filter_map(|panel| panel.error).reduce(Ratio::max);
                let finding = match error {
                    Some(error) => finding.term("ε", error),
                    None => finding,
                };
                (local.place.in_ply(worst.place), finding)
            });
        }
    }

    /// With all of each state of the panel and with nothing of it: in between it is no worse.
    fn worst(&self, sides: &[Side<'_>], local: &Local<'_>, panel: &PanelState, skin: Skin) -> Option<WorstSide> {
        let section = if let Region::Conduit(_) = panel.section { Region::Field } else { panel.section };
        let (_, response) = self.responses.iter().find(|(known, _)| *known == section)?;
        let nothing = Resultants::default();
        let mut worst: Option<WorstSide> = None;
        for state in panel.states.iter().chain([&nothing]) {
            for (side, (place, panel)) in sides.iter().zip(response.stresses(state)) {
                if place.skin != skin {
                    continue;
                }
                for moment in local.moments[index(skin)] {
                    let sum = panel + side.alone[local.axis.index()] * moment.value;
                    let reserve = side.criterion.reserve(&sum, &PlyStress::default());
                    let factor = ply_factor(&self.analysis.top.criteria, side.ply, &reserve);
                    let used: Ratio = factor / reserve.factor;
                    if worst.as_ref().is_none_or(|known| used > known.used || used.is_nan()) {
                        let stress = [governing(reserve.mode, &sum), governing(reserve.mode, &panel)];
                        worst = Some(WorstSide { used, place, factor, stress, moment, reserve: reserve.factor });
                    }
                }
            }
        }
        worst
    }
}

/// Sides of the plies of both skins, in the order of a section's response.
fn sides<'a>(analysis: &'a Analysis<'_>) -> Option<Vec<Side<'a>>> {
    let mut all = Vec::with_capacity(32);
    for skin in Skin::BOTH {
        let laminate = analysis.sections.field.section.skin(skin);
        let alone = Axis::BOTH.map(|axis| {
            let bent = laminate.deformation(&bent_alone(laminate, axis));
            laminate.ply_stresses(bent, TemperatureInterval::default())
        });
        let [along_x, along_y] = alone;
        for ((ply, _, x), (.., y)) in along_x.zip(along_y) {
            let ply = laminate.plies().nth(ply)?;
            all.push(Side { ply, criterion: TsaiWu::new(&ply.strength?), alone: [x, y] });
        }
    }
    Some(all)
}

/// Moments of a pressed skin and of the other one by skin, for a panel that bends one way there.
pub(super) fn by_skin(local: LocalBending, pressed: Skin, way: Bent) -> [[MomentPerWidth; 2]; 2] {
    let sign = if way == Bent::Sagging { 1.0 } else { -1.0 };
    let back = local.dent * -sign;
    let (own, far) = ([local.pressed() * sign, back], [local.together[1] * sign, back]);
    if pressed == Skin::Outer { [own, far] } else { [far, own] }
}

fn other(skin: Skin) -> Skin {
    if skin == Skin::Outer { Skin::Inner } else { Skin::Outer }
}

fn index(skin: Skin) -> usize {
    usize::from(skin == Skin::Inner)
}
