//! Slings, what is in them, and whether the top bears it.

use super::{Ordered, answer, heading};
use crate::{
    check::{CHECKS, Measure},
    order::{LiftCheck, LiftOn, LiftOutcome},
    report::{
        page::{Page, named, right},
        words,
        words::capital,
    },
    units::{both, show},
};

pub(super) fn lifting(page: &mut Page, ordered: Ordered<'_>) {
    heading(page, "Lifting the bare top");
    let system = ordered.system();
    let Some(lifting) = &ordered.order.lifting else {
        page.paragraph("  ", &answer::lift(ordered));
        return;
    };
    for (number, sling) in lifting.slings.iter().enumerate() {
        let on = sling.backing.as_ref().map_or_else(|| "below core".to_owned(), |name| format!("below {name}"));
        let conduit = sling
            .conduit
            .as_ref()
            .map_or_else(String::new, |name| format!("; NOT clear of conduit {name}: bridge it with a board"));
        page.paragraph(
            &format!("  sling {} ", number + 1),
            &format!("{}, {on}{conduit}", words::point(sling.at, system)),
        );
    }
    page.paragraph(
        "  ",
        &format!(
            "Each bears on a square of {} from below. {} at rest, times {:.2} for the jerk, on {:.0} of four legs at {} from \
             upright: {} in a leg. The checks take all four to bear so hard, then either diagonal alone. A leg so slanted pulls inwards \
             by {}: the checks take that in at the lower face, over the width of a pad. Not evaluated: how slings crush a rim that \
             they go round, and what keeps a pad from sliding inwards. So lay two beams below, across the top at these places and \
             longer than it is wide, with a pad at each place; sling the ends of the beams upright from a spreader, and lash the top \
             to them.",
            show(lifting.pad, system),
            both(lifting.weight, system),
            lifting.times(),
            lifting.legs.value,
            show(lifting.angle, system),
            both(lifting.leg, system),
            show(lifting.inwards, system)
        ),
    );
    page.paragraph("  ", &answer::lift(ordered));
    let LiftCheck::Made { outcomes, open } = &lifting.check else { return };
    let names = 34.min(page.width().saturating_sub(39));
    let row = |name: &str, cells: [&str; 3]| {
        let [demand, allowable, used] = cells;
        named("  ", name, names, &format!("{}{}{}", right(demand, 14), right(allowable, 14), right(used, 9)))
    };
    page.line(&row("by the plate method", ["demand", "allowable", "used"]));
    for outcome in outcomes {
        let LiftOutcome { check, demand, allowable, used, passes, on, .. } = outcome;
        let shown = |measure: Measure| words::measure(measure, system);
        let verdict = if *passes { "pass" } else { "FAIL" };
        let name = format!("{verdict} {}{}", CHECKS[*check].title(), self::on(*on));
        page.line(&row(&name, [&shown(*demand), &shown(*allowable), &words::percent(used.value)]));
    }
    for (check, reason) in open {
        page.paragraph("  ", &format!("NOT MADE {}: {reason}", capital(CHECKS[*check].title())));
    }
}

/// Which slings bear, where these are not all.
pub(super) fn on(on: LiftOn) -> String {
    match on {
        LiftOn::All => String::new(),
        LiftOn::Diagonal([one, other]) => format!(", on {} and {}", one + 1, other + 1),
    }
}
