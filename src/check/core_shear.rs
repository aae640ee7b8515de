//! Core shear: the core tears along lines at 45 degrees, near a pipe or round a foot.

use uom::si::pressure::pascal;

use super::{Check, Finding, Method, OnPlate, Outcomes, Part, Place, on_plate::limits_on_plate};
use crate::{
    analysis::{Analysis, GearAction, Region, core_shear_factor},
    finite_element::State,
    geometry::Axis,
    material::{Basis, Property},
    section::Width,
    source::{ALLEN_1969, Citation, Mark},
    strength::{
        ConduitFillsCore, DiscLoad, SkinBending, core_shear_beside_conduit, even_punching_peak, punching_stress,
        tipping_stress,
    },
    units::{Force, ForcePerWidth, Length, Pressure, Ratio, Torque, plain},
};

pub(super) struct CoreShear;

impl Check for CoreShear {
    fn id(&self) -> &'static str {
        "core-shear"
    }

    fn title(&self) -> &'static str {
        "core shear"
    }

    fn what(&self) -> &'static str {
        "the core tears in shear, at a pipe, beside a conduit or round a foot"
    }

    fn formula(&self) -> &'static str {
        "t_c · factor ≤ k t_u,  t_c = j V/d, j what the exact course over the core adds, times n = c/(c − w) where a conduit \
         of width w cuts it and j_t by twist at a free corner over a pipe at the rim, 1.21 and evenly down to 1 as pipe or load stand off; round a foot, which presses evenly over the radius b, t_c = n P C/(2π d) [1/r − 2 I1(ab) K1(ar)/b] at its peak, round a footing \
         P/(4 a d) + 4 M/(π a² d)"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "√((t_x/t_ux)² + (t_y/t_uy)²) (1 + ε) · factor ≤ k,  t = j n V/d along each axis; at the end of a pipe and at the \
             corner of a backing V is the mean over a disc as wide as the skins are apart; within the same distance of a foot \
             punching rules instead",
            limits: limits_on_plate!(
                "linear core; the peak at the wall of a conduit is not in it, nor is overturning of gear right round its footing"
            ),
            citation: Citation {
                work: ALLEN_1969,
                locator: "ch. 2 for t; V by finite elements, derived; round a foot derived from the plate equations",
                mark: Mark::Memory,
            },
        })
    }

    fn limits(&self) -> &'static str {
        "plane sections, linear core; the peak at the wall of a conduit is not in it; peaks within a few millimetres of \
         a pipe are over-stated, since the skins carry part of the shear there"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: ALLEN_1969,
            locator: "ch. 2; round a foot derived from the plate equations",
            mark: Mark::Memory,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        for forces in &analysis.strips {
            let line = &analysis.lines[forces.line];
            // On the safe side, what twist adds at one seat counts all along the strip.
            let twist = line.seats.iter().map(|seat| analysis.rim_twist(line, seat)).fold(Ratio::from(1.0), Ratio::max);
            for region in &forces.regions {
                let place = Place::of(Part::Region(region.region), Some(line.place(region.shear.at)))
                    .under(region.shear.load_at.map(|at| line.place(at)));
                let shear = Sheared { region: region.region, axis: line.axis, force: region.shear.value, twist };
                compare(analysis, outcomes, forces.case, shear, place);
            }
        }
        for forces in &analysis.plates {
            let bay = &analysis.bays[forces.bay];
            // The shear is largest at the pipes, and any of these may lie there.
            for region in analysis.regions_of(bay) {
                for axis in Axis::BOTH {
                    let shear = Sheared { region, axis, force: forces.shear, twist: Ratio::from(1.0) };
                    compare(analysis, outcomes, forces.case, shear, Place::in_bay(bay, region));
                }
            }
        }
        under_feet(analysis, outcomes);
        outcomes.by(Method::Plate);
        on_plate(analysis, outcomes);
    }
}

/// The vector of shear at the worst places of the plate method.
fn on_plate(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
    for forces in analysis.fields() {
        for region in &forces.regions {
            let own = region.region;
            let error = Ratio::from(1.0) + region.error.shear;
            for peak in region.shears() {
                // A conduit that fills the core is said to be open by the hand method.
                let Some(Vector { along: [x, y], cut, used }) = vector(analysis, forces.case, own, &peak.state) else {
                    continue;
                };
                let section = analysis.sections.of(own);
                let used: Ratio = used * error;
                outcomes.compare(Some(forces.case), used * x.factor, || {
                    // Shown along the axis that is used more.
                    let more_along_x = x.stress / x.strength.value >= y.stress / y.strength.value;
                    let (axis, shown) = if more_along_x { (Axis::X, &x) } else { (Axis::Y, &y) };
                    let bearable: Pressure = shown.strength.value * shown.left;
                    let size = peak.state.shear_size();
                    let mean: Pressure = plain(size) / section.lever(axis);
                    let exact: Ratio = section.core_shear(axis, size) / mean;
                    let finding = Finding::compare(bearable * used, bearable, shown.factor, shown.strength.basis)
                        .term("V_x", peak.state.shear[0])
                        .term("V_y", peak.state.shear[1])
                        .term("d", section.lever(axis))
                        .term("j", exact)
                        .term("n", cut)
                        .term("ε", region.error.shear)
                        .term("t_ux", x.strength.value)
                        .term("t_uy", y.strength.value)
                        .term("k", shown.left);
                    (Place::on_plate(own, peak), finding)
                });
            }
        }
    }
}

/// Stress along an axis, and what bears it.
struct Along<'a> {
    stress: Pressure,
    strength: &'a Property<Pressure>,
    left: Ratio,
    factor: Ratio,
}

/// The vector of shear at a place of the plate: both axes, what a conduit cuts, how much is used without a factor.
struct Vector<'a> {
    along: [Along<'a>; 2],
    cut: Ratio,
    used: Ratio,
}

/// None where a conduit fills the core.
fn vector<'a>(analysis: &'a Analysis<'_>, case: usize, own: Region, state: &State) -> Option<Vector<'a>> {
    let cut = match own {
        Region::Conduit(index) => {
            let (core, conduit) = (analysis.top.core.thickness, analysis.top.conduits[index].diameter);
            let one = Pressure::new::<pascal>(1.0);
            core_shear_beside_conduit(one, core, conduit).ok()? / one
        }
        Region::Field | Region::Backing(_) => Ratio::from(1.0),
    };
    let section = analysis.sections.of(own);
    let along = Axis::BOTH.map(|axis| {
        let (strength, factor) = strength(analysis, own, axis);
        let left = share(analysis, case, own, strength.basis);
        let stress = section.core_shear(axis, state.shear[axis.index()].abs()) * cut;
        Along { stress, strength, left, factor }
    });
    let used = |own: &Along<'_>| own.stress / (own.strength.value * own.left);
    let used = used(&along[0]).hypot(used(&along[1]));
    Some(Vector { along, cut, used })
}

/// How much of the core's shear strength is used at a state of the plate method: the utilisation of the check at that place, its
/// factor in it and its error not.
///
/// ```text
/// used = √((t_x/t_ux)² + (t_y/t_uy)²) factor / k,   t = j n V/d
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `t`, `V` | shear stress in the core, shear per width along an axis | Pa, N/m |
/// | `t_u`, `k` | shear strength; what is left of it in the state of the case | Pa, – |
/// | `j`, `n`, `d` | exact course over the core; what a conduit cuts; distance of the middles of the skins | –, –, m |
///
/// # Validity
/// As the check on the plate; no mean over a disc is taken, nor is what lies beside a foot left out. None where a conduit
/// fills the core.
///
/// # Source
/// That of the check on the plate.
#[must_use]
pub fn core_shear_used(analysis: &Analysis<'_>, case: usize, region: Region, state: &State) -> Option<Ratio> {
    let Vector { along: [x, _], used, .. } = vector(analysis, case, region, state)?;
    Some(used * x.factor)
}

/// Shear force on a region of a strip.
#[derive(Clone, Copy)]
struct Sheared {
    region: Region,
    axis: Axis,
    force: ForcePerWidth,
    /// What twist adds at a free corner whose pipe lies at the rim.
    twist: Ratio,
}

/// Shear strength of what lies between the skins, with its factor.
fn strength<'a>(analysis: &'a Analysis<'_>, region: Region, axis: Axis) -> (&'a Property<Pressure>, Ratio) {
    let (top, criteria) = (analysis.top, &analysis.top.criteria);
    match region {
        // Boards are brittle beside foam.
        Region::Backing(index) => (&top.backings[index].board.shear_strength, criteria.core_shear_brittle_factor.value),
        Region::Field | Region::Conduit(_) => {
            let core = &top.core.material;
            let strength = match axis {
                Axis::X => &core.shear_strength,
                Axis::Y => core.shear_strength_w.as_ref().unwrap_or(&core.shear_strength),
            };
            (strength, core_shear_factor(criteria, core).value)
        }
    }
}

fn share(analysis: &Analysis<'_>, case: usize, region: Region, basis: Basis) -> Ratio {
    let knockdowns = analysis.knockdowns(analysis.cases[case].state);
    match region {
        Region::Backing(_) => knockdowns.board_strength(basis).product(),
        Region::Field | Region::Conduit(_) => knockdowns.core_strength(basis).product(),
    }
}

fn compare(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>, case: usize, shear: Sheared, place: Place) {
    let Sheared { region, axis, force, twist } = shear;
    let section = analysis.sections.of(region);
    let (strength, factor) = strength(analysis, region, axis);
    let whole = section.core_shear(axis, force) * twist;
    let stress = match region {
        Region::Conduit(index) => {
            let (core, conduit) = (analysis.top.core.thickness, analysis.top.conduits[index].diameter);
            match core_shear_beside_conduit(whole, core, conduit) {
                Ok(stress) => stress,
                Err(fills @ ConduitFillsCore { .. }) => {
                    outcomes.cannot(Some(case), place.part, fills.to_string());
                    return;
                }
            }
        }
        Region::Field | Region::Backing(_) => whole,
    };
    let left = share(analysis, case, region, strength.basis);
    let bearable: Pressure = strength.value * left;
    outcomes.compare(Some(case), stress / bearable * factor, || {
        let one = Ratio::from(1.0);
        let mean: Pressure = plain(force) / section.lever(axis);
        let (exact, net) = if mean > Pressure::default() { (whole / mean / twist, stress / whole) } else { (one, one) };
        let finding = Finding::compare(stress, bearable, factor, strength.basis)
            .term("V", force)
            .term("d", section.lever(axis))
            .term("j", exact)
            .term("n", net)
            .term("j_t", twist)
            .term("t_u", strength.value)
            .term("k", left);
        (place, finding)
    });
}

/// Shear that a foot or a footing punches into the core round it. A foot may stand over a conduit.
fn under_feet(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
    let top = analysis.top;
    let bending = analysis.sections.field.section.bending(Axis::X, Width::Wide);
    let (strength, factor) = strength(analysis, Region::Field, Axis::Y);
    let net = analysis.sections.conduits.iter().map(|conduit| conduit.core_left).fold(Ratio::from(1.0), Ratio::min);
    for (number, case) in analysis.cases.iter().enumerate() {
        let left = analysis.knockdowns(case.state);
        let share = left.core_strength(strength.basis).product();
        let bearable: Pressure = strength.value * share;
        if let Some(people) = case.people {
            let panel = SkinBending {
                flanges: bending.skin_membranes,
                skins: bending.skins_alone,
                shear: analysis.sections.field.shear_stiffness(Axis::X, left.core_stiffness()),
            };
            // A disc of the same area as the square.
            let radius: Length = top.criteria.standing_footprint.value / std::f64::consts::PI.sqrt();
            let peak = even_punching_peak(DiscLoad { force: people.each, radius }, bending.lever, &panel);
            let stress: Pressure = peak.stress / net;
            outcomes.compare(Some(number), stress / bearable * factor, || {
                let finding = Finding::compare(stress, bearable, factor, strength.basis)
                    .term("P", people.each)
                    .term("b", radius)
                    .term("r", peak.radius)
                    .term("d", bending.lever)
                    .term("C", panel.core_share())
                    .term("1/a", panel.decay_length())
                    .term("n", Ratio::from(1.0) / net)
                    .term("t_u", strength.value)
                    .term("k", share);
                (Place::of(Part::Foot, None), finding)
            });
        }
        for (index, gear) in top.gear.iter().enumerate().filter(|_| case.with_gear) {
            let action = GearAction::of(top, gear, case);
            let (force, moment): (Force, Torque) = (action.up.abs(), action.moment.abs());
            let stress = punching_stress(force, gear.footing() * 4.0, bending.lever)
                + tipping_stress(moment, gear.footing(), bending.lever);
            outcomes.compare(Some(number), stress / bearable * factor, || {
                let finding = Finding::compare(stress, bearable, factor, strength.basis)
                    .term("P", force)
                    .term("M", moment)
                    .term("a", gear.footing())
                    .term("d", bending.lever)
                    .term("t_u", strength.value)
                    .term("k", share);
                (Place::of(Part::Gear(index), Some(gear.at)), finding)
            });
        }
    }
}
