//! Buckling of the top between pipes when it is pushed in its plane.

use super::{Check, Finding, Outcomes, Part, Place};
use crate::{
    analysis::{Analysis, Role},
    closed_form::columns::{engesser, euler},
    source::{ALLEN_1969, Citation, Mark},
    units::{ForcePerWidth, Length},
};

pub(super) struct PanelBuckling;

impl Check for PanelBuckling {
    fn id(&self) -> &'static str {
        "panel-buckling"
    }

    fn title(&self) -> &'static str {
        "buckling in plane"
    }

    fn what(&self) -> &'static str {
        "pushed in its plane, the top buckles between two pipes"
    }

    fn formula(&self) -> &'static str {
        "N · factor ≤ N_E/(1 + N_E/S),  N_E = π² D/L²"
    }

    fn limits(&self) -> &'static str {
        "a wide strip hinged at the pipes; pipes along the other two sides would help and are not counted"
    }

    fn citation(&self) -> Citation {
        Citation { work: ALLEN_1969, locator: "columns with shear, after Engesser", mark: Mark::Memory }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let top = analysis.top;
        let modulus = &top.core.material.shear_modulus;
        let spans = spans(analysis);
        for (number, case) in analysis.cases.iter().enumerate() {
            let push = analysis.push(number);
            let left = analysis.knockdowns(case.state).core_modulus(modulus.basis).product();
            for (axis, span) in &spans {
                // A hand's push spreads at 45 degrees to the middle of the first bay.
                let spread: ForcePerWidth = push.local * (push.length / (push.length + *span)).value;
                let acting = push.even + spread;
                if acting == ForcePerWidth::default() {
                    continue;
                }
                let section = &analysis.sections.field;
                let (rigidity, shear) = (section.rigidity(*axis), section.shear_stiffness(*axis, left));
                let bearable = engesser(euler(rigidity, *span), shear);
                let factor = top.criteria.buckling_factor.value;
                outcomes.compare(Some(number), acting / bearable * factor, || {
                    let finding = Finding::compare(acting, bearable, factor, modulus.basis)
                        .term("D", rigidity)
                        .term("S", shear)
                        .term("L", *span);
                    (Place::of(Part::Bay, None), finding)
                });
            }
        }
    }
}

/// The widest span in each direction that a strip or a bay has.
fn spans(analysis: &Analysis<'_>) -> Vec<(crate::geometry::Axis, Length)> {
    let strips = analysis
        .lines
        .iter()
        .filter(|line| matches!(line.role, Role::Field | Role::Edge))
        .map(|line| (line.axis, line.widest_bay()));
    let bays =
        analysis.bays.iter().flat_map(|bay| crate::geometry::Axis::BOTH.map(|axis| (axis, bay.sides[axis.index()])));
    let mut widest: Vec<(crate::geometry::Axis, Length)> = Vec::new();
    for (axis, span) in strips.chain(bays) {
        match widest.iter_mut().find(|(known, _)| *known == axis) {
            Some((_, known)) => *known = known.max(span),
            None => widest.push((axis, span)),
        }
    }
    widest
}
