//! Whether the theory of the hand method holds for this top.

use uom::si::ratio::ratio;

use super::{Check, Finding, Outcomes, Part, Place};
use crate::{
    analysis::{Analysis, Role},
    geometry::{Axis, Point},
    material::Basis,
    section::Width,
    source::{ALLEN_1969, Citation, Mark},
    units::{Length, Ratio, show},
};

pub(super) struct FirstOrder;

/// Below this the thick-skin formula leaves the plain one by more than 5 % of the shear part.
const LEAST_THETA: f64 = 20.0;

impl Check for FirstOrder {
    fn id(&self) -> &'static str {
        "first-order"
    }

    fn title(&self) -> &'static str {
        "theory holds"
    }

    fn what(&self) -> &'static str {
        "the skins are so thick, or the core so soft, that the skins bend on their own and the other results mean little"
    }

    fn formula(&self) -> &'static str {
        "20 ≤ θ,  θ = (L/2) √(S D/(D_0 D_f)), with the core's stiffness as the case leaves it"
    }

    fn limits(&self) -> &'static str {
        "bays between pipes; above 20 the shear part of the sag is within 5 %. On short overhangs the skins carry part of \
         the shear, so that the results there are on the safe side. A load case that rests on a formula used outside its \
         tests counts as not checked"
    }

    fn citation(&self) -> Citation {
        Citation { work: ALLEN_1969, locator: "ch. 2, thick faces; limit computed", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let mut spans: Vec<(Axis, Length, Point)> = analysis
            .lines
            .iter()
            .filter(|line| matches!(line.role, Role::Field | Role::Edge))
            .flat_map(|line| {
                let bays = line.seats.windows(2);
                bays.map(|pair| (line.axis, pair[1].at - pair[0].at, line.place((pair[0].at + pair[1].at) / 2.0)))
            })
            .collect();
        spans.extend(
            analysis.bays.iter().flat_map(|bay| Axis::BOTH.map(|axis| (axis, bay.sides[axis.index()], bay.middle()))),
        );
        for (number, case) in analysis.cases.iter().enumerate() {
            if let Some(doubt) = &case.doubt {
                outcomes.cannot(Some(number), Part::Whole, doubt.clone());
            }
        }
        // The softest state counts: in the others the theory holds better.
        let softest = analysis
            .knockdowns
            .iter()
            .map(|(_, knockdowns)| knockdowns.core_stiffness())
            .fold(Ratio::from(1.0), |a, b| if b < a { b } else { a });
        let least = Ratio::new::<ratio>(LEAST_THETA);
        for (axis, span, middle) in spans {
            let section = &analysis.sections.field.section;
            let theta = section.theta(axis, Width::Wide, span) * softest.get::<ratio>().sqrt();
            if theta < least || theta.is_nan() {
                outcomes.cannot(
                    None,
                    Part::Bay,
                    format!(
                        "θ is {:.1} and ought to be {LEAST_THETA} or more over a span of {}: the skins bend on their own, \
                         the results of this report do not hold there",
                        theta.get::<ratio>(),
                        show(span, analysis.top.report)
                    ),
                );
            } else {
                outcomes.compare(None, least / theta, || {
                    let finding = Finding::compare(least, theta, Ratio::from(1.0), Basis::Typical).term("L", span);
                    (Place::of(Part::Bay, Some(middle)), finding)
                });
            }
        }
    }
}
