//! What the skins bear when they are bent by themselves, and the one comparison.

use std::f64::consts::PI;

use crate::{
    analysis::{Analysis, Bent, Region, local_ply_factor},
    check::{
        Finding, Outcomes, Part, Place,
        fixing::skin_alone::{Bendable, bendable, rigidity},
    },
    geometry::Axis,
    laminate::Ply,
    material::Basis,
    section::{PlyPlace, Skin, Width},
    strength::{Denting, DiscLoad, LocalBending, PressedPanel, SkinBending, foundation_modulus},
    units::{FlexuralRigidity, Force, ForcePerWidth, Length, MomentPerWidth, Pressure, Ratio, per_width},
};

const NO_STRENGTH: &str = "a ply of the skins has no strength in the table";

/// Skins of a top, each by itself.
pub(super) struct Skins<'a> {
    pub(super) analysis: &'a Analysis<'a>,
    basis: [Basis; 2],
    bears: [[Option<Bendable>; 2]; 2],
    rigidity: [[FlexuralRigidity; 2]; 2],
}

/// Skins bent along an axis at a place.
#[derive(Clone, Copy)]
pub(super) struct Local {
    pub(super) case: usize,
    pub(super) axis: Axis,
    /// By skin.
    pub(super) moments: [MomentPerWidth; 2],
    /// By skin: what the bending of the whole panel uses of it, with the factor.
    pub(super) used: [Ratio; 2],
    pub(super) place: Place,
}

impl<'a> Skins<'a> {
    pub(super) fn new(analysis: &'a Analysis<'_>) -> Self {
        let of = |skin| analysis.sections.field.section.skin(skin);
        let factor = |ply: &Ply, mode| local_ply_factor(&analysis.top.criteria, ply, mode);
        Self {
            analysis,
            basis: [analysis.top.outer.basis(), analysis.top.inner.basis()],
            bears: Skin::BOTH.map(|skin| Axis::BOTH.map(|axis| bendable(of(skin), axis, factor))),
            rigidity: Skin::BOTH.map(|skin| Axis::BOTH.map(|axis| rigidity(of(skin), axis))),
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
        let (even, edge) =
            (panel.over_even_seat(push, seat), panel.beside_hard_edge(push.min(shear), self.off(Skin::Inner)));
        let mix = |even: MomentPerWidth, edge: MomentPerWidth| even * (1.0 - hard.value) + edge * hard.value;
        LocalBending { pressed: mix(even.pressed, edge.pressed), far: mix(even.far, edge.far) }
    }

    /// A person's foot as a disc of the area of the footprint.
    pub(super) fn sole(&self, force: Force) -> DiscLoad {
        DiscLoad { force, radius: self.analysis.top.criteria.standing_footprint.value / PI.sqrt() }
    }

    /// Shear beside the rim of a square footing that is rigid.
    pub(super) fn beside_footing(&self, force: Force, side: Length) -> ForcePerWidth {
        per_width(force / (side * 4.0) / self.analysis.top.criteria.plug_evenness.value)
    }

    /// What a moment of the whole panel uses of each skin, with its factor; none where a ply has no strength.
    pub(super) fn used(&self, region: Region, axis: Axis, bent: Bent, moment: MomentPerWidth) -> [Ratio; 2] {
        let first = self.analysis.sections.of(region).first_ply(axis, bent);
        first.map(|first| first.map_or_else(Ratio::default, |first| moment / first.moment * first.factor))
    }

    pub(super) fn compare(&self, outcomes: &mut Outcomes<'_>, local: &Local, terms: impl Fn(Finding) -> Finding) {
        let knockdowns = self.analysis.knockdowns(self.analysis.cases[local.case].state);
        for skin in Skin::BOTH {
            let number = index(skin);
            let Some(bears) = self.bears[number][local.axis.index()] else {
                outcomes.cannot(None, Part::Whole, NO_STRENGTH);
                continue;
            };
            let left = knockdowns.skin_strength(skin, self.basis[number]).product();
            let panel: Ratio = local.used[number] / bears.factor;
            let moment = local.moments[number];
            let share: Ratio = moment / bears.moment + panel;
            outcomes.compare(Some(local.case), share / left * bears.factor, || {
                let finding =
                    Finding::compare(bears.stress * share, bears.stress * left, bears.factor, self.basis[number])
                        .term("g", panel)
                        .term("m", moment)
                        .term("m_u", bears.moment);
                let (ply, surface) = bears.ply;
                let place = local.place.in_ply(PlyPlace { skin, ply, surface });
                (place, terms(finding).term("k", left))
            });
        }
    }
}

/// Moments of a pressed skin and of the other one, by skin.
pub(super) fn by_skin(local: LocalBending, pressed: Skin) -> [MomentPerWidth; 2] {
    match pressed {
        Skin::Outer => [local.pressed, local.far],
        Skin::Inner => [local.far, local.pressed],
    }
}

/// The worse of each.
pub(super) fn worse(a: [Ratio; 2], b: [Ratio; 2]) -> [Ratio; 2] {
    [a[0].max(b[0]), a[1].max(b[1])]
}

/// The lesser of each.
pub(super) fn lesser(a: [Ratio; 2], b: [Ratio; 2]) -> [Ratio; 2] {
    [a[0].min(b[0]), a[1].min(b[1])]
}

fn other(skin: Skin) -> Skin {
    if skin == Skin::Outer { Skin::Inner } else { Skin::Outer }
}

fn index(skin: Skin) -> usize {
    usize::from(skin == Skin::Inner)
}
