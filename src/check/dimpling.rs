//! Dimpling: the skin buckles into a void that it spans, a conduit or the cell of a honeycomb.

use super::{Check, Finding, Outcomes, Part, Place};
use crate::{
    analysis::{Analysis, Bent, Region},
    source::{Citation, Mark, TIMOSHENKO_1959},
    strength::{cell_dimpling_stress, void_stress_across},
    units::{MomentPerWidth, Pressure, Ratio},
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
        "s · factor ≤ k π² E_f (t/w)²/12 over a conduit of width w; 2 k E_f (t/w)² over a cell of size w"
    }

    fn limits(&self) -> &'static str {
        "the core above a conduit is not counted: the skin spans the whole width, hinged at the sides; E_f is the \
         bending modulus of the skin as part of a plate"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: TIMOSHENKO_1959,
            locator: "cylindrical bending of a long plate; cells by common form",
            mark: Mark::Memory,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let top = analysis.top;
        let cell = top.core.material.cell_size.as_ref();
        for forces in &analysis.strips {
            let line = &analysis.lines[forces.line];
            for region in &forces.regions {
                let section = analysis.sections.of(region.region);
                for (bent, peak) in [(Bent::Sagging, region.sagging), (Bent::Hogging, region.hogging)] {
                    let laminate = section.section.skin(bent.pressed());
                    let modulus = section.skin_modulus(bent.pressed(), line.axis);
                    let (bearable, width) = match (region.region, cell) {
                        (Region::Conduit(index), _) => {
                            let width = top.conduits[index].diameter;
                            (void_stress_across(modulus, laminate.thickness(), width), width)
                        }
                        (Region::Field, Some(cell)) => {
                            (cell_dimpling_stress(modulus, laminate.thickness(), cell.value), cell.value)
                        }
                        (Region::Field | Region::Backing(_), _) => continue,
                    };
                    let left = analysis.knockdowns(analysis.cases[forces.case].state).skin_modulus();
                    let times: Ratio = peak.value / MomentPerWidth { value: 1.0, ..peak.value };
                    let stress: Pressure = section.pressed(line.axis, bent).along * times;
                    let allowable: Pressure = bearable * left;
                    let factor = top.criteria.dimpling_factor.value;
                    outcomes.compare(Some(forces.case), stress / allowable * factor, || {
                        let finding = Finding::compare(stress, allowable, factor, crate::material::Basis::Typical)
                            .term("E_f", modulus)
                            .term("t", laminate.thickness())
                            .term("w", width)
                            .term("k", left);
                        let place = Place::of(Part::Region(region.region), Some(line.place(peak.at)))
                            .under(peak.load_at.map(|at| line.place(at)))
                            .in_skin(bent.pressed());
                        (place, finding)
                    });
                }
            }
        }
    }
}
