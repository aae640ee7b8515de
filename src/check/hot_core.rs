//! Hot core: foam under a dark skin goes soft.

use super::{Check, Finding, Outcomes, Part, Place};
use crate::{
    analysis::Analysis,
    load::temperature::difference,
    service::Sun,
    source::{Citation, DERIVED, Mark},
    units::Ratio,
};

pub(super) struct HotCore;

impl Check for HotCore {
    fn id(&self) -> &'static str {
        "hot-core"
    }

    fn title(&self) -> &'static str {
        "hot core"
    }

    fn what(&self) -> &'static str {
        "the sun heats the core past what it bears; it goes soft, blisters or lets go of the skin"
    }

    fn formula(&self) -> &'static str {
        "T_core − T_flat ≤ T_limit − T_flat,  T_limit the highest temperature that the core bears for a short time"
    }

    fn limits(&self) -> &'static str {
        "temperatures are assumed, by colour; a measured one may be put in their place; gas from a foam that is laid too \
         fresh is not in it"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: DERIVED,
            locator: "comparison of temperatures; values in the material table",
            mark: Mark::Assumed,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let (top, Some(sun)) = (analysis.top, analysis.sun) else { return };
        let core = &top.core.material;
        if top.service.sun == Sun::Dark && !core.under_dark_paint {
            outcomes.cannot(
                None,
                Part::Whole,
                format!("{} is not laid under dark paint: choose a light finish or another core", core.name),
            );
        }
        for (case, reason) in &analysis.open_cases {
            outcomes.cannot(None, Part::Whole, format!("the case \"{}\" could not be looked at: {reason}", case.title));
        }
        let flat = top.criteria.sun_flat.value;
        let (rise, bearable) = (difference(sun.core, flat), difference(core.service_temperature.value, flat));
        outcomes.compare(None, rise / bearable, || {
            let finding = Finding::compare(rise, bearable, Ratio::from(1.0), core.service_temperature.basis);
            (Place::of(Part::Whole, None), finding)
        });
    }
}
