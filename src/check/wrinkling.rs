//! Wrinkling of the pressed skin: short waves into and out of the core.

use uom::si::{force::newton, ratio::ratio};

use super::{Check, Finding, Method, OnPlate, Outcomes, Part, Place, on_plate::limits_on_plate};
use crate::{
    analysis::{Analysis, Bent, ModulusShares, Region},
    geometry::Axis,
    load_case::{LoadCase, State},
    material::{Basis, Property},
    section::{Skin, Temperatures},
    source::{Citation, LR_SSC, Mark},
    strength::wrinkling_under_biaxial_compression,
    units::{Force, MomentPerWidth, Pressure, Ratio, per_width},
};

pub(super) struct Wrinkling;

impl Check for Wrinkling {
    fn id(&self) -> &'static str {
        "wrinkling"
    }

    fn title(&self) -> &'static str {
        "skin wrinkling"
    }

    fn what(&self) -> &'static str {
        "the pressed skin buckles in short waves into or away from the core"
    }

    fn formula(&self) -> &'static str {
        "s · factor ≤ s/u,  s_w = 0.5 (k_f E_f k_c E_c k_c G_c)^(1/3) along and across, k_f and k_c what is counted of the \
         moduli of skin and core: basis, heat, water and time; u from (s_x/(u s_wx))³ + s_y/(u s_wy) = 1, x the \
         direction that is used more"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "s (1 + ε) · factor ≤ s/u,  u from (s_1/(u s_w))³ + s_2/(u s_w) = 1 with s_1 and s_2 the principal stresses of the \
             skin and s_w = 0.5 (k_f E_f k_c E_c k_c G_c)^(1/3) in the weaker of its directions, k_f and k_c what is counted of \
             the moduli of skin and core: basis, heat, water and time",
            limits: limits_on_plate!(
                "flat skins, sound bond; 0.5 covers the waviness of a well-laid skin, not a disbond or an unfilled core joint; a \
                 core thinner than the wave is deep would hold the skin better, which is not counted; a skin softens by heat as the \
                 strengths do that hang on its resin, though fibres keep more, which is safe"
            ),
            citation: Citation {
                work: LR_SSC,
                locator: "Pt 8, Ch 7, 3.2.2 for s_w; u after NASA/CR-1999-208994, from memory; stresses by finite elements, derived",
                mark: Mark::Quoted,
            },
        })
    }

    fn limits(&self) -> &'static str {
        "flat skins, sound bond; 0.5 covers the waviness of a well-laid skin, not a disbond or an unfilled core joint; a \
         strip is not sheared in its plane, so no shear is laid over it; a core thinner than the wave is deep would hold \
         the skin better, which is not counted; a skin softens by heat as the strengths do that hang on its resin, though \
         fibres keep more, which is safe"
    }

    fn citation(&self) -> Citation {
        Citation { work: LR_SSC, locator: "Pt 8, Ch 7, 3.2.2", mark: Mark::Quoted }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let held = HeldByState::new(analysis);
        for forces in &analysis.strips {
            let line = &analysis.lines[forces.line];
            let held = held.under(&analysis.cases[forces.case]);
            for region in &forces.regions {
                let Some(held) = held.iter().find(|held| held.region == region.region) else { continue };
                for (bent, peak) in [(Bent::Sagging, region.sagging), (Bent::Hogging, region.hogging)] {
                    let unit = analysis.sections.of(region.region).pressed(line.axis, bent);
                    let times = in_units(peak.value);
                    let pressed = Pressed {
                        skin: bent.pressed(),
                        axis: line.axis,
                        along: unit.along * times,
                        across: unit.across * times,
                    };
                    let place = || {
                        Place::of(Part::Region(region.region), Some(line.place(peak.at)))
                            .under(peak.load_at.map(|at| line.place(at)))
                            .in_skin(bent.pressed())
                    };
                    compare(analysis, outcomes, forces.case, (held, pressed), place);
                }
            }
        }
        bays(analysis, outcomes, &held);
        outcomes.by(Method::Plate);
        on_plate(analysis, outcomes, &held);
    }
}

/// Both skins at the worst places of the plate method, by their principal stresses.
fn on_plate(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>, held: &HeldByState) {
    for forces in analysis.fields() {
        let held = held.under(&analysis.cases[forces.case]);
        for region in &forces.regions {
            let Some(held) = held.iter().find(|held| held.region == region.region) else { continue };
            let section = &analysis.sections.of(region.region).section;
            let error = Ratio::new::<ratio>(1.0) + region.error.moment;
            for peak in &region.peaks {
                let deformation = section.deformation(&peak.state.resultants);
                for skin in Skin::BOTH {
                    let stress = section.skin_stress(skin, &deformation, &Temperatures::default());
                    let (middle, half) = ((stress.x + stress.y) * 0.5, (stress.x - stress.y) * 0.5);
                    let radius = half.hypot(stress.xy);
                    let axis = if held.at(skin, Axis::X) < held.at(skin, Axis::Y) { Axis::X } else { Axis::Y };
                    // The weaker direction of the skin holds whichever way it is pressed.
                    let weaker = held.at(skin, axis);
                    let (most, other): (Pressure, Pressure) = ((radius - middle) * error, (-middle - radius) * error);
                    let used = wrinkling_under_biaxial_compression(most / weaker, other / weaker);
                    let factor = analysis.top.criteria.wrinkling_factor.value;
                    outcomes.compare(Some(forces.case), used * factor, || {
                        let allowable: Pressure = if used > Ratio::default() { most / used } else { weaker };
                        let finding = Finding::compare(most, allowable, factor, held.basis)
                            .term("s_1", most)
                            .term("s_2", other)
                            .term("ε", region.error.moment)
                            .term("s_w", weaker);
                        let finding = held.moduli(analysis, finding, skin, axis);
                        (Place::on_plate(region.region, peak).in_skin(skin), finding)
                    });
                }
            }
        }
    }
}

/// A bay bends both ways at once: each direction adds to the stress along the other.
fn bays(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>, held: &HeldByState) {
    for forces in &analysis.plates {
        let bay = &analysis.bays[forces.bay];
        let regions = analysis.regions_of(bay);
        let held = held.under(&analysis.cases[forces.case]);
        for held in held.iter().filter(|held| regions.contains(&held.region)) {
            let section = analysis.sections.of(held.region);
            for moments in [forces.middle, forces.over_pipes] {
                for bent in Bent::BOTH {
                    let sign = if bent == Bent::Sagging { 1.0 } else { -1.0 };
                    // Clamped moments hold either way round: the load may come from above or from below.
                    let moment = |axis: Axis| {
                        let moment = moments[axis.index()];
                        if moments == forces.over_pipes {
                            moment.abs()
                        } else {
                            (moment * sign).max(MomentPerWidth::default())
                        }
                    };
                    let (x, y) = (section.pressed(Axis::X, bent), section.pressed(Axis::Y, bent));
                    let (mx, my) = (in_units(moment(Axis::X)), in_units(moment(Axis::Y)));
                    let pressed = Pressed {
                        skin: bent.pressed(),
                        axis: Axis::X,
                        along: x.along * mx + y.across * my,
                        across: x.across * mx + y.along * my,
                    };
                    let place = || Place::in_bay(bay, held.region).in_skin(bent.pressed());
                    compare(analysis, outcomes, forces.case, (held, pressed), place);
                }
            }
        }
    }
}

fn in_units(moment: MomentPerWidth) -> f64 {
    (moment / per_width(Force::new::<newton>(1.0))).get::<ratio>()
}

/// Stress in a pressed skin, compression positive.
#[derive(Clone, Copy)]
struct Pressed {
    skin: Skin,
    axis: Axis,
    along: Pressure,
    across: Pressure,
}

/// What holds the skins of a region against wrinkling in a state: by skin and axis, the stress at which it lets go.
struct Held {
    region: Region,
    stress: [[Pressure; 2]; 2],
    through: Pressure,
    shares: [ModulusShares; 2],
    basis: Basis,
}

/// What holds the skins of each region, by state.
struct HeldByState(Vec<(State, Vec<Held>)>);

impl HeldByState {
    fn new(analysis: &Analysis<'_>) -> Self {
        let states = analysis.knockdowns.iter().map(|(state, _)| *state);
        Self(states.map(|state| (state, Held::of_all(analysis, state))).collect())
    }

    fn under(&self, case: &LoadCase) -> &[Held] {
        self.0.iter().find(|(state, _)| *state == case.state).map_or(&[], |(_, held)| held)
    }
}

impl Held {
    fn of_all(analysis: &Analysis<'_>, state: State) -> Vec<Self> {
        let regions = std::iter::once(Region::Field)
            .chain((0..analysis.top.backings.len()).map(Region::Backing))
            .chain((0..analysis.top.conduits.len()).map(Region::Conduit));
        regions.map(|region| Self::of(analysis, state, region)).collect()
    }

    fn of(analysis: &Analysis<'_>, state: State, region: Region) -> Self {
        let knockdowns = analysis.knockdowns(state);
        let (through, shear): (&Property<Pressure>, &Property<Pressure>) = match region {
            Region::Backing(index) => {
                let board = &analysis.top.backings[index].board;
                (&board.compressive_modulus, &board.shear_modulus)
            }
            Region::Field | Region::Conduit(_) => {
                let core = &analysis.top.core.material;
                (&core.compressive_modulus, &core.shear_modulus)
            }
        };
        let basis = through.basis.max(shear.basis);
        let core = knockdowns.core_modulus(basis).product();
        let of_skins = [analysis.top.outer.stiffness_basis(), analysis.top.inner.stiffness_basis()];
        let skins = [Skin::Outer, Skin::Inner];
        let shares = skins
            .map(|skin| ModulusShares { skin: knockdowns.skin_modulus(skin, of_skins[index(skin)]).product(), core });
        let section = analysis.sections.of(region);
        let stress = skins.map(|skin| {
            Axis::BOTH.map(|axis| section.wrinkling_stress(skin, axis, through.value, shares[index(skin)]))
        });
        Self { region, stress, through: through.value, shares, basis: of_skins.into_iter().fold(basis, Basis::max) }
    }

    fn at(&self, skin: Skin, axis: Axis) -> Pressure {
        self.stress[index(skin)][axis.index()]
    }

    /// The moduli along a direction and what is counted of them, so that the stress can be redone.
    fn moduli(&self, analysis: &Analysis<'_>, finding: Finding, skin: Skin, axis: Axis) -> Finding {
        let section = analysis.sections.of(self.region);
        let shares = self.shares[index(skin)];
        finding
            .term("E_f", section.skin_modulus(skin, axis))
            .term("k_f", shares.skin)
            .term("E_c", self.through)
            .term("G_c", section.section.core().shear_modulus(axis))
            .term("k_c", shares.core)
    }
}

fn index(skin: Skin) -> usize {
    usize::from(skin == Skin::Inner)
}

fn compare(
    analysis: &Analysis<'_>,
    outcomes: &mut Outcomes<'_>,
    case: usize,
    (held, pressed): (&Held, Pressed),
    place: impl FnOnce() -> Place,
) {
    let Pressed { skin, axis, along, across } = pressed;
    let (first, second) = (held.at(skin, axis), held.at(skin, axis.other()));
    let (used_along, used_across): (Ratio, Ratio) = (along / first, across / second);
    let used = wrinkling_under_biaxial_compression(used_along, used_across);
    let factor = analysis.top.criteria.wrinkling_factor.value;
    outcomes.compare(Some(case), used * factor, || {
        // A skin that is not pressed at all has nothing to divide by.
        let (acting, along_strip) = if used_along >= used_across { (along, true) } else { (across, false) };
        let bearable = if along_strip { first } else { second };
        let allowable: Pressure = if used > Ratio::default() { acting / used } else { bearable };
        let finding = Finding::compare(acting, allowable, factor, held.basis)
            .term("s along", along)
            .term("s across", across)
            .term("s_w along", first)
            .term("s_w across", second);
        (place(), held.moduli(analysis, finding, skin, axis))
    });
}
