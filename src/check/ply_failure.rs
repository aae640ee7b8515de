//! First ply failure in bending.

use super::{Check, Finding, Method, OnPlate, Outcomes, Part, Place, on_plate::limits_on_plate};
use crate::{
    analysis::{Analysis, Bent, FirstPly, Region, ply_factor},
    finite_element::State,
    geometry::Axis,
    laminate::{Criterion, Mode, PlyStress},
    load_case::LoadCase,
    material::Basis,
    section::{PlyReserve, Skin, UnitResponse},
    source::{Citation, Mark, TSAI_WU_1971},
    units::{MomentPerWidth, Pressure, Ratio},
};

pub(super) struct PlyFailure;

const NO_STRENGTH: &str = "a ply of the skins has no strength in the table";

impl Check for PlyFailure {
    fn id(&self) -> &'static str {
        "ply-failure"
    }

    fn title(&self) -> &'static str {
        "ply failure"
    }

    fn what(&self) -> &'static str {
        "the first ply of a skin cracks or crushes under bending"
    }

    fn formula(&self) -> &'static str {
        "M · factor ≤ k M_1, with M_1 the moment at which F1 s1 + F2 s2 + F11 s1² + F22 s2² + F66 s6² + 2 F12 s1 s2 = 1 \
         in the first ply; shown as its largest stress s against k s(M_1)"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "(1 + ε) factor / R ≤ k,  R the number of times by which N and M may grow until F1 s1 + F2 s2 + F11 s1² + F22 s2² + \
             F66 s6² + 2 F12 s1 s2 = 1 in the first ply; shown as its largest stress s against k R s",
            limits: limits_on_plate!(
                "linear laminate theory; cracks between fibres alone have the smaller of two factors, the larger once half of a failure is anything else; the skin's own bending beside a \
                 pipe, a load or a footing is not in it"
            ),
            citation: Citation {
                work: TSAI_WU_1971,
                locator: "criterion; F12 = −½ √(F11 F22) by convention; N and M by finite elements, derived",
                mark: Mark::Memory,
            },
        })
    }

    fn limits(&self) -> &'static str {
        "linear laminate theory, a strip of a wide panel; cracks between fibres alone have the smaller of two factors, the larger once half of a failure is anything else; a skin bent by itself at a pipe, a foot, a \
         footing or a backing is skin bending"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: TSAI_WU_1971, locator: "criterion; F12 = −½ √(F11 F22) by convention", mark: Mark::Memory
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let strengths = Strengths::new(analysis);
        for forces in &analysis.strips {
            let line = &analysis.lines[forces.line];
            for region in &forces.regions {
                let section = analysis.sections.of(region.region);
                for (bent, peak) in [(Bent::Sagging, region.sagging), (Bent::Hogging, region.hogging)] {
                    for first in section.first_ply(line.axis, bent) {
                        let Some(first) = first else {
                            outcomes.cannot(None, Part::Region(region.region), NO_STRENGTH);
                            continue;
                        };
                        let place = Place::of(Part::Region(region.region), Some(line.place(peak.at)))
                            .under(peak.load_at.map(|at| line.place(at)))
                            .in_ply(first.place);
                        compare(&strengths, outcomes, forces.case, (peak.value, first), place);
                    }
                }
            }
        }
        for forces in &analysis.plates {
            let bay = &analysis.bays[forces.bay];
            for region in analysis.regions_of(bay) {
                for axis in Axis::BOTH {
                    let (middle, over) = (forces.middle[axis.index()], forces.over_pipes[axis.index()]);
                    let sagging = if middle > MomentPerWidth::default() { Bent::Sagging } else { Bent::Hogging };
                    for (bent, moment) in [(sagging, middle.abs()), (Bent::Hogging, over), (Bent::Sagging, over)] {
                        for first in analysis.sections.of(region).first_ply(axis, bent) {
                            let Some(first) = first else {
                                outcomes.cannot(None, Part::Bay, NO_STRENGTH);
                                continue;
                            };
                            let place = Place::in_bay(bay, region).in_ply(first.place);
                            compare(&strengths, outcomes, forces.case, (moment, first), place);
                        }
                    }
                }
            }
        }
        outcomes.by(Method::Plate);
        on_plate(analysis, outcomes);
    }
}

/// All forces and moments at the worst places of the plate method.
fn on_plate(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
    let plies = PliesUsed::new(analysis);
    for forces in analysis.fields() {
        for region in &forces.regions {
            let error = Ratio::from(1.0) + region.error.moment;
            for peak in &region.peaks {
                for used in plies.each(forces.case, region.region, &peak.state) {
                    let OnePly { reserve: PlyReserve { place, stress, reserve }, factor, left } = used;
                    let share = error / reserve.factor;
                    outcomes.compare(Some(forces.case), share / left * factor, || {
                        let acting = governing(reserve.mode, &stress) * error;
                        let bearable: Pressure = acting / share * left;
                        let moment = peak.state.resultants.moment;
                        let basis = plies.strengths.basis[index(place.skin)];
                        let finding = Finding::compare(acting, bearable, factor, basis)
                            .term("M_x", moment.x)
                            .term("M_y", moment.y)
                            .term("M_xy", moment.xy)
                            .term("N_x", peak.state.resultants.force.x)
                            .term("N_y", peak.state.resultants.force.y)
                            .term("R", reserve.factor)
                            .term("ε", region.error.moment)
                            .term("k", left);
                        (Place::on_plate(region.region, peak).in_ply(place), finding)
                    });
                }
            }
        }
    }
}

/// How much of the plies is used at states of the plate method.
pub struct PliesUsed<'a> {
    analysis: &'a Analysis<'a>,
    strengths: Strengths,
    responses: Vec<(Region, UnitResponse)>,
}

/// A ply at a state: its reserve, the factor for how it fails, and what is left of its strength.
struct OnePly {
    reserve: PlyReserve,
    factor: Ratio,
    left: Ratio,
}

impl<'a> PliesUsed<'a> {
    /// Of the regions that the plate method counts.
    #[must_use]
    pub fn new(analysis: &'a Analysis<'a>) -> Self {
        let regions = analysis.whole.iter().flatten().flat_map(|method| &method.regions);
        let response = |&region: &Region| (region, analysis.sections.of(region).section.unit_response());
        Self { analysis, strengths: Strengths::new(analysis), responses: regions.map(response).collect() }
    }

    /// The regions that it knows.
    pub fn regions(&self) -> impl Iterator<Item = Region> {
        self.responses.iter().map(|(region, _)| *region)
    }

    /// Of the ply that is used most: the utilisation of the check at that place, its factor in it and the error of the plate
    /// not.
    ///
    /// ```text
    /// used = max over plies of factor / (R k)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `R` | times by which `N` and `M` may grow until the ply fails |
    /// | `k` | what is left of the strength of its skin in the state of the case |
    ///
    /// # Validity
    /// As the check on the plate. None where no ply has a strength.
    ///
    /// # Source
    /// That of the check on the plate.
    #[must_use]
    pub fn most(&self, case: usize, region: Region, state: &State) -> Option<Ratio> {
        let each = self.each(case, region, state);
        each.map(|ply| ply.factor / (ply.reserve.reserve.factor * ply.left)).reduce(Ratio::max)
    }

    /// A ply without strength is left out: it is said to be open by the hand method.
    fn each(&self, case: usize, region: Region, state: &State) -> impl Iterator<Item = OnePly> {
        let (criteria, section) = (&self.analysis.top.criteria, &self.analysis.sections.of(region).section);
        let response = self.responses.iter().find(|(own, _)| *own == region);
        let reserves = response
            .into_iter()
            .flat_map(|(_, response)| response.reserves(Criterion::TsaiWu, &state.resultants, None));
        reserves.filter_map(move |reserve| {
            let reserve = reserve.ok()?;
            let ply = section.skin(reserve.place.skin).plies().nth(reserve.place.ply)?;
            let factor = ply_factor(criteria, ply, &reserve.reserve);
            let left = self.strengths.left[case][index(reserve.place.skin)];
            Some(OnePly { reserve, factor, left })
        })
    }
}

/// Basis of the strength of each skin, and what is left of it under each case.
struct Strengths {
    basis: [Basis; 2],
    left: Vec<[Ratio; 2]>,
}

impl Strengths {
    fn new(analysis: &Analysis<'_>) -> Self {
        let basis = [analysis.top.outer.basis(), analysis.top.inner.basis()];
        let left = |case: &LoadCase| {
            let knockdowns = analysis.knockdowns(case.state);
            [Skin::Outer, Skin::Inner].map(|skin| knockdowns.skin_strength(skin, basis[index(skin)]).product())
        };
        Self { basis, left: analysis.cases.iter().map(left).collect() }
    }
}

fn index(skin: Skin) -> usize {
    usize::from(skin == Skin::Inner)
}

fn compare(
    strengths: &Strengths,
    outcomes: &mut Outcomes<'_>,
    case: usize,
    (moment, first): (MomentPerWidth, &FirstPly),
    place: Place,
) {
    let skin = index(first.place.skin);
    let (basis, left, factor) = (strengths.basis[skin], strengths.left[case][skin], first.factor);
    let share: Ratio = moment / first.moment;
    outcomes.compare(Some(case), share / left * factor, || {
        let failing = governing(first.mode, &first.stress);
        let (acting, bearable): (Pressure, Pressure) = (failing * share, failing * left);
        let finding = Finding::compare(acting, bearable, factor, basis)
            .term("M", moment)
            .term("M_1", first.moment)
            .term("k", left);
        (place, finding)
    });
}

/// The stress component that a mode of failure is named for.
pub(super) fn governing(mode: Mode, stress: &PlyStress) -> Pressure {
    match mode {
        Mode::FibreTension | Mode::FibreCompression => stress.s1.abs(),
        Mode::TransverseTension | Mode::TransverseCompression => stress.s2.abs(),
        Mode::Shear => stress.s12.abs(),
    }
}
