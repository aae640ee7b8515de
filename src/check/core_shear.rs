//! Core shear: the core tears along lines at 45 degrees, near a pipe or round a foot.

use super::{Check, Finding, Outcomes, Part, Place};
use crate::{
    analysis::{Analysis, Region, core_shear_factor},
    geometry::Axis,
    material::{Basis, Property},
    section::Width,
    source::{ALLEN_1969, Citation, Mark},
    strength::{ConduitFillsCore, RoundFoot, SkinBending, core_shear_beside_conduit, punching_peak},
    units::{Force, ForcePerWidth, Length, Pressure, Ratio},
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
        "t_c · factor ≤ k t_u,  t_c = V/d with the core's own part, times c/(c − w) where a conduit of width w cuts it; \
         round a foot t_c = P C/(2π c) [1/r − K1(ar)/(b K1(ab))] at its peak"
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
            for region in &forces.regions {
                let place = Place::of(Part::Region(region.region), Some(line.place(region.shear.at)))
                    .under(region.shear.load_at.map(|at| line.place(at)));
                let shear = Sheared { region: region.region, axis: line.axis, force: region.shear.value };
                compare(analysis, outcomes, forces.case, shear, place);
            }
        }
        for forces in &analysis.plates {
            let place = Place::of(Part::Bay, Some(analysis.bays[forces.bay].middle()));
            for axis in Axis::BOTH {
                let shear = Sheared { region: Region::Field, axis, force: forces.shear };
                compare(analysis, outcomes, forces.case, shear, place);
            }
        }
        under_feet(analysis, outcomes);
    }
}

/// Shear force on a region of a strip.
#[derive(Clone, Copy)]
struct Sheared {
    region: Region,
    axis: Axis,
    force: ForcePerWidth,
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
    let Sheared { region, axis, force } = shear;
    let section = analysis.sections.of(region);
    let (strength, factor) = strength(analysis, region, axis);
    let whole = section.core_shear(axis, force);
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
        let finding = Finding::compare(stress, bearable, factor, strength.basis)
            .term("V", force)
            .term("d", section.lever(axis))
            .term("c/(c − w)", stress / whole.max(Pressure::new::<uom::si::pressure::pascal>(1e-9)))
            .term("t_u", strength.value)
            .term("k", left);
        (place, finding)
    });
}

/// Shear that a foot or a footing punches into the core round it.
fn under_feet(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
    let top = analysis.top;
    let bending = analysis.sections.field.section.bending(Axis::X, Width::Wide);
    for (number, case) in analysis.cases.iter().enumerate() {
        let mut feet: Vec<(Part, Force, Length, Option<crate::geometry::Point>)> = Vec::new();
        if let Some(people) = case.people {
            feet.push((Part::Foot, people.each, top.criteria.standing_footprint.value, None));
        }
        if case.with_gear {
            let gravity = crate::load::weight::gravity() * case.gravity;
            feet.extend(
                top.gear
                    .iter()
                    .enumerate()
                    .map(|(index, gear)| (Part::Gear(index), (gear.mass * gravity).abs(), gear.footing, Some(gear.at))),
            );
        }
        for (part, force, side, at) in feet {
            let (strength, factor) = strength(analysis, Region::Field, Axis::Y);
            let left = analysis.knockdowns(case.state);
            let panel = SkinBending {
                flanges: bending.skin_membranes,
                skins: bending.skins_alone,
                shear: analysis.sections.field.shear_stiffness(Axis::X, left.core_stiffness()),
            };
            // A disc of the same area as the square.
            let radius: Length = side / std::f64::consts::PI.sqrt();
            let foot = RoundFoot { force, radius, skin_distance: bending.lever };
            let peak = punching_peak(&foot, &panel);
            let share = left.core_strength(strength.basis).product();
            let bearable: Pressure = strength.value * share;
            outcomes.compare(Some(number), peak.stress / bearable * factor, || {
                let finding = Finding::compare(peak.stress, bearable, factor, strength.basis)
                    .term("P", force)
                    .term("b", radius)
                    .term("r", peak.radius)
                    .term("C", panel.core_share())
                    .term("1/a", panel.decay_length())
                    .term("t_u", strength.value)
                    .term("k", share);
                (Place::of(part, at), finding)
            });
        }
    }
}
