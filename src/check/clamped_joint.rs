//! Clamped joint: the joint of a wall that keeps the top from turning gives way. Nothing says what it bears.

use super::{Check, Method, OnPlate, Outcomes, Part, on_plate::limits_on_plate};
use crate::{
    analysis::{Analysis, ClampMoment},
    geometry::Point,
    source::{Citation, DERIVED, Mark},
    units::{System, both, show},
};

pub(super) struct ClampedJoint;

impl Check for ClampedJoint {
    fn id(&self) -> &'static str {
        "clamped-joint"
    }

    fn title(&self) -> &'static str {
        "clamped joint"
    }

    fn what(&self) -> &'static str {
        "the joint of a clamped wall gives way to the moment that keeps the top from turning"
    }

    fn formula(&self) -> &'static str {
        "m = |M_l - M_r|, the moments per length of the panel across the wall on its left and right, none beyond the rim: what \
         the joint must take; what it bears is not known, so that it is never a pass"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "m (1 + ε), m = |M_l - M_r|, the moments per length of the panel across the wall on its left and right, none beyond \
             the rim: what the joint must take; what it bears is not known, so that it is never a pass",
            limits: limits_on_plate!(
                "the joint does not turn at all; the mean over the depth of the panel, since at the end of a clamped line the moment has no bound; its pull on fixings and its peel are not in their own checks"
            ),
            citation: Citation {
                locator: "balance of a narrow piece of panel over the joint, its moments by finite elements",
                ..self.citation()
            },
        })
    }

    fn limits(&self) -> &'static str {
        "the plate method alone: by hand a wall is hinged, and its joint takes none"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "a hinged wall takes no moment", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        // By hand it is hinged; where there is no plate solution other checks are open.
        let Some(Ok(_)) = &analysis.whole else { return };
        outcomes.by(Method::Plate);
        for (number, support) in analysis.top.supports.iter().enumerate().filter(|(_, support)| support.clamps()) {
            let own = analysis.fields().filter_map(|forces| {
                let pipe = forces.pipes.iter().find(|pipe| pipe.pipe == number)?;
                Some((forces.case, pipe.clamp?))
            });
            let with_error = |clamp: &ClampMoment| clamp.moment * (1.0 + clamp.error.value);
            let worst = own.max_by(|(_, one), (_, other)| with_error(one).value.total_cmp(&with_error(other).value));
            let Some((case, clamp)) = worst else {
                outcomes.cannot(
                    None,
                    Part::Support(number),
                    format!("{}: what its joint must take is not known", support.name),
                );
                continue;
            };
            let system = analysis.top.report;
            let load = clamp.under.map_or_else(String::new, |under| format!(", load at {}", place(under, system)));
            let reason = format!(
                "{}: the joint must take {} about its line ({}, at {}{load}); not evaluated: hold it against a test or its maker's \
                 word, or write `edge = \"hinged\"`",
                support.name,
                both(with_error(&clamp), system),
                analysis.cases[case].title,
                place(clamp.at, system),
            );
            outcomes.cannot(Some(case), Part::Support(number), reason);
        }
    }
}

fn place(at: Point, system: System) -> String {
    format!("x {}, y {}", show(at.x, system), show(at.y, system))
}
