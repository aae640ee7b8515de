//! Softness underfoot.

use super::{Check, Finding, Method, OnPlate, Outcomes, Part, Place, on_plate::limits_on_plate};
use crate::{
    analysis::Analysis,
    geometry::Point,
    material::Basis,
    source::{Citation, EN_1995_1_1, Mark},
    strength::DiscLoad,
    units::{Length, Ratio},
};

pub(super) struct Underfoot;

impl Check for Underfoot {
    fn id(&self) -> &'static str {
        "underfoot"
    }

    fn title(&self) -> &'static str {
        "softness underfoot"
    }

    fn what(&self) -> &'static str {
        "the top feels soft where somebody stands: it gives way under the foot"
    }

    fn formula(&self) -> &'static str {
        "w_F + w_d ≤ limit,  w_F the sag under a force F at the softest place, w_d the dent of the outer skin"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "w_F (1 + ε) + w_d ≤ limit,  w_F the sag under a force F at the softest place of the whole top, against the \
             nearest place on a pipe; w_d the dent of the outer skin",
            limits: limits_on_plate!(
                "one person, wherever the top is softest, an overhang's tip included; against the nearest place on a pipe"
            ),
            citation: Citation {
                locator: "7.3.3, sag under 1 kN; the sag by finite elements, derived",
                ..self.citation()
            },
        })
    }

    fn limits(&self) -> &'static str {
        "a limit of comfort for floors; one person, wherever the top is softest, an overhang's tip included"
    }

    fn citation(&self) -> Citation {
        Citation { work: EN_1995_1_1, locator: "7.3.3, sag under 1 kN", mark: Mark::Memory }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let criteria = &analysis.top.criteria;
        let force = criteria.underfoot_force.value;
        let mut softest: Vec<(usize, Length, Option<Point>)> = Vec::new();
        for forces in &analysis.strips {
            let line = &analysis.lines[forces.line];
            softest.push((forces.case, forces.under_load.value, Some(line.place(forces.under_load.at))));
        }
        for forces in &analysis.plates {
            softest.push((forces.case, forces.under_load, Some(analysis.bays[forces.bay].middle())));
        }
        let radius = criteria.standing_footprint.value / std::f64::consts::PI.sqrt();
        let mut dents: Vec<Option<Length>> = vec![None; analysis.cases.len()];
        for (number, sag, at) in softest {
            let Some(people) = analysis.cases[number].people else { continue };
            let under_force: Length = sag * (force / people.at_rest);
            let dent_of = || analysis.skin_on_core(number).dent(DiscLoad { force, radius });
            let dent = *dents[number].get_or_insert_with(dent_of);
            let (acting, limit) = (under_force + dent, criteria.underfoot_sag_limit.value);
            outcomes.compare(Some(number), acting / limit, || {
                let finding = Finding::compare(acting, limit, Ratio::from(1.0), Basis::Typical)
                    .term("F", force)
                    .term("w_F", under_force)
                    .term("w_d", dent);
                (Place::of(Part::Foot, at), finding)
            });
        }
        outcomes.by(Method::Plate);
        for forces in analysis.fields() {
            let (Some(softest), Some(people)) = (forces.softest, analysis.cases[forces.case].people) else { continue };
            let under_force: Length = softest.sag * (force / people.at_rest);
            let dent_of = || analysis.skin_on_core(forces.case).dent(DiscLoad { force, radius });
            let dent = *dents[forces.case].get_or_insert_with(dent_of);
            let acting = under_force * (Ratio::from(1.0) + softest.error) + dent;
            let limit = criteria.underfoot_sag_limit.value;
            outcomes.compare(Some(forces.case), acting / limit, || {
                let finding = Finding::compare(acting, limit, Ratio::from(1.0), Basis::Typical)
                    .term("F", force)
                    .term("w_F", under_force)
                    .term("ε", softest.error)
                    .term("w_d", dent);
                (Place::of(Part::Foot, Some(softest.at)), finding)
            });
        }
    }
}
