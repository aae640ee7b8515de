//! Buckling of the top between pipes when it is pushed in its plane.

use super::{Check, Finding, Method, OnPlate, Outcomes, Part, Place, on_plate::limits_on_plate};
use crate::{
    analysis::{Analysis, PlateMethod, Role},
    closed_form::columns::{engesser, euler},
    geometry::Axis,
    material::Basis,
    source::{ALLEN_1969, Citation, DERIVED, Mark},
    units::{ForcePerWidth, Length, Ratio},
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
        "pushed in its plane, the top buckles between two pipes or as a whole"
    }

    fn formula(&self) -> &'static str {
        "N · factor ≤ N_E/(1 + N_E/S),  N_E = π² k_D D/L²,  S by k_c G_c; k_D what is counted of the stiffness of the skins: \
         basis, heat and time, water being in the factor"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "(N_p + N_c)(1 + ε) · factor ≤ k_D N_cr,  N_p the push by braking and hands; N_cr the even push from all sides at once \
             at which the whole top buckles on its frame, core at its softest; N_c the largest compression of a crowned top by \
             loads that do not move about, or N_cr/λ where that comes near to what it bears: λ times its own forces, \
             as they are, buckle it; k_D what is counted of all that holds it, the lesser share of the skins (basis, heat and \
             time, water being in the factor) and of the core (basis; the rest is in N_cr)",
            limits: limits_on_plate!(
                "push by braking and hands taken as even all over and from all sides, and added to that of the crown as shares of what each alone would do, which is safe; people and tipped gear left out of what presses a crown; a shallow crown may snap earlier; skins soften by heat as the strengths do that hang on their resin, though fibres keep more, and pipes, which do not soften, are counted as if they did: safe"
            ),
            citation: Citation {
                work: DERIVED,
                locator: "least of xᵀ K x over the work of the push, by elements",
                mark: Mark::Derived,
            },
        })
    }

    fn rests_on_modes(&self) -> bool {
        true
    }

    fn limits(&self) -> &'static str {
        "by hand a wide strip hinged at the pipes; pipes along the other two sides would help and are not counted. As a plate: \
         push by braking and hands taken as even all over and from all sides, and added to that of the crown as shares of what \
         each alone would do, which is safe; small deflections until it buckles, so that a shallow \
         crown may snap earlier; people and tipped gear left out of what presses a crown. The skins soften by heat as the \
         strengths do that hang on their resin, though fibres keep more, which is safe"
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
            let knockdowns = analysis.knockdowns(case.state);
            let (left, skins) = (knockdowns.core_modulus(modulus.basis).product(), knockdowns.rigidity(top).product());
            for (axis, span) in &spans {
                // A hand's push spreads at 45 degrees to the middle of the first bay.
                let spread: ForcePerWidth = push.local * (push.length / (push.length + *span)).value;
                let acting = push.even + spread;
                if acting == ForcePerWidth::default() {
                    continue;
                }
                let section = &analysis.sections.field;
                let (rigidity, shear) = (section.rigidity(*axis), section.shear_stiffness(*axis, left));
                let bearable = engesser(euler(rigidity * skins.value, *span), shear);
                let factor = top.criteria.buckling_factor.value;
                outcomes.compare(Some(number), acting / bearable * factor, || {
                    let finding = Finding::compare(acting, bearable, factor, basis(analysis))
                        .term("D", rigidity)
                        .term("k_D", skins)
                        .term("S", shear)
                        .term("G_c", modulus.value)
                        .term("k_c", left)
                        .term("L", *span);
                    (Place::of(Part::Bay, None), finding)
                });
            }
        }
        outcomes.by(Method::Plate);
        if let Some(Ok(method)) = &analysis.whole {
            on_plate(analysis, method, &spans, outcomes);
        }
    }
}

/// Push by braking and hands, and what presses a crown, as if all of it were even all over the top and from all sides.
fn on_plate(analysis: &Analysis<'_>, method: &PlateMethod, spans: &[(Axis, Length)], outcomes: &mut Outcomes<'_>) {
    let Some(even) = method.even_push else { return };
    let factor = analysis.top.criteria.buckling_factor.value;
    let span = spans.iter().map(|(_, span)| *span).reduce(Length::min);
    for forces in &method.cases {
        let push = analysis.push(forces.case);
        // A hand's push spreads at 45 degrees to the middle of the first bay.
        let push = push.even + span.map_or(push.local, |span| push.local * (push.length / (push.length + span)).value);
        let pressed = method.pressed.iter().find(|pressed| pressed.case == forces.case);
        let crown = match (pressed, even.bears) {
            (Some(pressed), Ok(bears)) => pressed.as_even(bears),
            (Some(pressed), Err(_)) => pressed.most,
            (None, _) => ForcePerWidth::default(),
        };
        let acting: ForcePerWidth = push + crown;
        if acting == ForcePerWidth::default() {
            continue;
        }
        match even.bears {
            Ok(bears) => {
                let off: ForcePerWidth =
                    pressed.map_or_else(ForcePerWidth::default, |pressed| crown * pressed.error.value);
                let error: Ratio = even.error + off / acting;
                let demand = acting * (1.0 + error.value);
                let left = analysis.knockdowns(analysis.cases[forces.case].state).whole_top(analysis.top);
                let bearable: ForcePerWidth = bears * left.value;
                outcomes.compare(Some(forces.case), demand / bearable * factor, || {
                    let finding = Finding::compare(demand, bearable, factor, basis(analysis))
                        .term("N_cr", bears)
                        .term("k_D", left)
                        .term("N_p", push)
                        .term("N_c", crown)
                        .term("ε", error);
                    let finding = match pressed.and_then(|pressed| pressed.buckles_at) {
                        Some(times) => finding.term("λ", times),
                        None => finding,
                    };
                    (Place::of(Part::Whole, pressed.map(|pressed| pressed.at)), finding)
                });
            }
            Err(reason) => outcomes.cannot(Some(forces.case), Part::Whole, reason.to_string()),
        }
    }
}

/// The weakest basis of the moduli that hold the top.
fn basis(analysis: &Analysis<'_>) -> Basis {
    let top = analysis.top;
    top.core.material.shear_modulus.basis.max(top.outer.stiffness_basis()).max(top.inner.stiffness_basis())
}

/// The widest span in each direction that a strip or a bay has.
fn spans(analysis: &Analysis<'_>) -> Vec<(Axis, Length)> {
    let strips = analysis
        .lines
        .iter()
        .filter(|line| matches!(line.role, Role::Field | Role::Edge))
        .map(|line| (line.axis, line.widest_bay()));
    let bays = analysis.bays.iter().flat_map(|bay| Axis::BOTH.map(|axis| (axis, bay.sides[axis.index()])));
    let mut widest: Vec<(Axis, Length)> = Vec::new();
    for (axis, span) in strips.chain(bays) {
        match widest.iter_mut().find(|(known, _)| *known == axis) {
            Some((_, known)) => *known = known.max(span),
            None => widest.push((axis, span)),
        }
    }
    widest
}
