//! Thermal bow: the sun lengthens the outer skin and bows the top.

use super::{Check, Finding, Method, OnPlate, Outcomes, Part, Place, on_plate::limits_on_plate};
use crate::{
    analysis::{Analysis, Role, thermal_curvature},
    material::Basis,
    source::{Citation, DERIVED, Mark},
    strength::free_bow,
    units::{Curvature, Length, Ratio},
};

pub(super) struct ThermalBow;

impl Check for ThermalBow {
    fn id(&self) -> &'static str {
        "thermal-bow"
    }

    fn title(&self) -> &'static str {
        "bow in the sun"
    }

    fn what(&self) -> &'static str {
        "a hot outer skin bows the top between its pipes, and pulls at the fixings that hold it down"
    }

    fn formula(&self) -> &'static str {
        "w ≤ limit · L,  w = κ L²/8, κ = (a_o T_o − a_i T_i)/d of the section with the curl across held"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "w (1 + ε) ≤ limit · L,  w by heat alone, without weight, on its pipes, which hold it down as under any load; against the frame at rest and against the line between the two nearest pipes, L of either as for sag between pipes",
            limits: limits_on_plate!("the top grows as it likes in its plane; what hangs over is not looked at"),
            citation: Citation {
                work: DERIVED,
                locator: "laminate theory with thermal strain; w by finite elements",
                mark: Mark::Derived,
            },
        })
    }

    fn limits(&self) -> &'static str {
        "free to bow between two pipes; what the pipes hold down shows as moment and pull in the case of the sun"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "laminate theory with thermal strain", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let limit = analysis.top.criteria.bow_limit.value;
        for (number, case) in analysis.cases.iter().enumerate() {
            let Some(rise) = &case.temperatures else { continue };
            let strips = analysis
                .lines
                .iter()
                .filter(|line| matches!(line.role, Role::Field | Role::Edge))
                .map(|line| (line.axis, line.widest_bay(), line.place(line.length() / 2.0)));
            let bays = analysis
                .bays
                .iter()
                .flat_map(|bay| crate::geometry::Axis::BOTH.map(|axis| (axis, bay.sides[axis.index()], bay.middle())));
            for (axis, span, middle) in strips.chain(bays) {
                let curvature: Curvature = thermal_curvature(&analysis.sections.field, axis, rise).abs();
                let (bow, allowable): (Length, Length) = (free_bow(curvature, span), span * limit);
                outcomes.compare(Some(number), bow / allowable, || {
                    let finding = Finding::compare(bow, allowable, Ratio::from(1.0), Basis::Typical)
                        .term("κ", curvature)
                        .term("L", span)
                        .term("T_o", rise.outer)
                        .term("T_i", rise.inner);
                    (Place::of(Part::Bay, Some(middle)), finding)
                });
            }
        }
        outcomes.by(Method::Plate);
        for forces in analysis.fields() {
            let Some(rise) = &analysis.cases[forces.case].temperatures else { continue };
            for bow in &forces.bow {
                let demand: Length = bow.sag.abs() * (Ratio::from(1.0) + forces.error.bow);
                let allowable: Length = bow.over * limit;
                outcomes.compare(Some(forces.case), demand / allowable, || {
                    let finding = Finding::compare(demand, allowable, Ratio::from(1.0), Basis::Typical)
                        .term("L", bow.over)
                        .term("T_o", rise.outer)
                        .term("T_i", rise.inner)
                        .term("ε", forces.error.bow);
                    (Place::of(Part::Bay, Some(bow.at)), finding)
                });
            }
        }
    }
}
