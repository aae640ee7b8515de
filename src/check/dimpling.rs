//! Dimpling: the skin buckles into a void that it spans, a conduit or the cell of a honeycomb.

use uom::si::force::newton;

use super::{Check, Finding, Outcomes, Part, Place};
use crate::{
    analysis::{Analysis, Bent, Region},
    geometry::Axis,
    section::Skin,
    source::{Citation, Mark, TIMOSHENKO_1959},
    strength::{cell_dimpling_stress, void_stress_across},
    units::{Force, MomentPerWidth, Pressure, Ratio, per_width},
};

pub(super) struct Dimpling;

impl Check for Dimpling {
    fn id(&self) -> &'static str {
        "dimpling"
    }

    fn title(&self) -> &'static str {
        "skin dimpling"
    }

    fn what(&self) -> &'static str {
        "the pressed skin buckles into a conduit or a cell that it spans"
    }

    fn formula(&self) -> &'static str {
        "s · factor ≤ k π² E_f (t/w)²/12 over a conduit of width w; 2 k E_f (t/w)² over a cell of size w; k \
         what is counted of the modulus: basis, heat, water and time"
    }

    fn limits(&self) -> &'static str {
        "the core above a conduit is not counted: the skin spans the whole width, hinged at the sides; E_f is the \
         bending modulus of the skin as part of a plate, and softens by heat as the strengths do that hang on the resin, though \
         fibres keep more, which is safe"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: TIMOSHENKO_1959,
            locator: "cylindrical bending of a long plate; cells by common form",
            mark: Mark::Memory,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        for forces in &analysis.strips {
            let line = &analysis.lines[forces.line];
            for region in &forces.regions {
                for (bent, peak) in [(Bent::Sagging, region.sagging), (Bent::Hogging, region.hogging)] {
                    let pressed = Pressed { region: region.region, axis: line.axis, bent, moment: peak.value };
                    let place = Place::of(Part::Region(region.region), Some(line.place(peak.at)))
                        .under(peak.load_at.map(|at| line.place(at)))
                        .in_skin(bent.pressed());
                    compare(analysis, outcomes, forces.case, pressed, place);
                }
            }
        }
        for forces in &analysis.plates {
            let bay = &analysis.bays[forces.bay];
            for region in analysis.regions_of(bay) {
                for axis in Axis::BOTH {
                    // Either skin may be pressed: in the middle, or over the pipes the other way round.
                    let moment = forces.middle[axis.index()].abs().max(forces.over_pipes[axis.index()].abs());
                    for bent in Bent::BOTH {
                        let place = Place::in_bay(bay, region).in_skin(bent.pressed());
                        compare(analysis, outcomes, forces.case, Pressed { region, axis, bent, moment }, place);
                    }
                }
            }
        }
    }
}

/// A strip that is bent, so that one of its skins is pressed.
#[derive(Clone, Copy)]
struct Pressed {
    region: Region,
    axis: Axis,
    bent: Bent,
    moment: MomentPerWidth,
}

fn compare(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>, case: usize, pressed: Pressed, place: Place) {
    let Pressed { region, axis, bent, moment } = pressed;
    let top = analysis.top;
    let section = analysis.sections.of(region);
    let laminate = section.section.skin(bent.pressed());
    let modulus = section.skin_modulus(bent.pressed(), axis);
    let (bearable, width) = match (region, &top.core.material.cell_size) {
        (Region::Conduit(index), _) => {
            let width = top.conduits[index].diameter;
            (void_stress_across(modulus, laminate.thickness(), width), width)
        }
        (Region::Field, Some(cell)) => (cell_dimpling_stress(modulus, laminate.thickness(), cell.value), cell.value),
        (Region::Field | Region::Backing(_), _) => return,
    };
    let skin = bent.pressed();
    let basis = if skin == Skin::Outer { top.outer.stiffness_basis() } else { top.inner.stiffness_basis() };
    let left = analysis.knockdowns(analysis.cases[case].state).skin_modulus(skin, basis).product();
    let times: Ratio = moment / per_width(Force::new::<newton>(1.0));
    let stress: Pressure = section.pressed(axis, bent).along * times;
    let allowable: Pressure = bearable * left;
    let factor = top.criteria.dimpling_factor.value;
    outcomes.compare(Some(case), stress / allowable * factor, || {
        let finding = Finding::compare(stress, allowable, factor, basis)
            .term("E_f", modulus)
            .term("t", laminate.thickness())
            .term("w", width)
            .term("k", left);
        (place, finding)
    });
}
