//! The answer in a few sentences: what it weighs, what is bought, whether it can be lifted.

use super::{Ordered, words};
use uom::si::length::millimeter;

use crate::{
    check::CHECKS,
    geometry::Point,
    order::LiftCheck,
    report::{not_for_building::not_for_building, page::Page, said::counted, words as shared, words::capital},
    units::{ArealMassDensity, Length, both, show},
};

pub(super) fn answer(page: &mut Page, ordered: Ordered<'_>) {
    page.paragraph("", &ordered.top.title);
    page.blank();
    for sentence in sentences(ordered) {
        page.paragraph("  ", &sentence);
    }
}

/// The same for every form of the order.
pub(super) fn sentences(ordered: Ordered<'_>) -> Vec<String> {
    let mut all: Vec<String> = not_for_building(&ordered.order.standing).into_iter().collect();
    all.extend([weight(ordered), centre(ordered), bought(ordered), lift(ordered)]);
    all
}

fn weight(ordered: Ordered<'_>) -> String {
    let (weight, system) = (&ordered.order.weight, ordered.system());
    let areal: ArealMassDensity = weight.bare / ordered.order.area;
    let gear =
        if ordered.top.gear.is_empty() { String::new() } else { format!(", {} with gear", both(weight.total, system)) };
    format!(
        "The finished top weighs {} bare{gear}: {} on {}.",
        both(weight.bare, system),
        both(areal, system),
        words::area(ordered.order.area, system)
    )
}

/// Where the centre of gravity lies on the boat.
fn centre(ordered: Ordered<'_>) -> String {
    let (top, weight, system) = (ordered.top, &ordered.order.weight, ordered.system());
    let lies = |at: Point| {
        let (off, side) = top.off_middle(at.y);
        let aft = show(top.aft_of_fore_edge(at.x), system);
        // Nobody measures less than that.
        if off < Length::new::<millimeter>(0.5) {
            return format!("{aft} aft of the fore edge, in the middle of the width");
        }
        format!("{aft} aft of the fore edge, {} to {side} of the middle", show(off, system))
    };
    let gear = if top.gear.is_empty() { String::new() } else { format!("; with gear {}", lies(weight.centre)) };
    format!("Its centre of gravity lies {} bare{gear}.", lies(weight.bare_centre))
}

fn bought(ordered: Ordered<'_>) -> String {
    let (order, system) = (ordered.order, ordered.system());
    let rolls: Length = order.fabrics.iter().map(|line| line.length).sum();
    let core = match &order.core {
        Ok(plan) => format!("{} of core", counted(plan.sheets, "sheet")),
        Err(reason) => format!("core that could not be laid out: {reason}"),
    };
    format!(
        "It takes {} of fabric off the roll in {}, {} of mixed resin, and {core}.",
        words::run(rolls, system),
        counted(order.fabrics.len(), "kind"),
        words::both_masses(order.resins.bought(), ordered)
    )
}

/// Why there are no slings, and what helps.
pub(super) fn no_slings(ordered: Ordered<'_>) -> String {
    let (system, centre) = (ordered.system(), ordered.order.weight.bare_centre);
    format!(
        "No four places for slings were found: they stand alike about the centre of gravity of the bare top, {}, and a square of {} has to \
         lie on the top at each. Carry it on two boards or a frame right below it, which needs no such places, or make `sling-pad` smaller.",
        shared::point(centre, system),
        show(ordered.top.criteria.sling_pad.value, system)
    )
}

/// Whether it can be lifted, in one sentence.
pub(super) fn lift(ordered: Ordered<'_>) -> String {
    let Some(lifting) = &ordered.order.lifting else {
        return format!("{} So lifting was not looked at: that is not a pass.", no_slings(ordered));
    };
    match &lifting.check {
        LiftCheck::NotMade(reason) => format!("Lifting could not be checked, which is not a pass: {reason}."),
        LiftCheck::Made { outcomes, open } => {
            let leg = show(lifting.leg, ordered.system());
            let upright = show(lifting.leg * lifting.angle.get::<uom::si::angle::radian>().cos(), ordered.system());
            let slant = show(lifting.angle, ordered.system());
            if let Some(worst) = outcomes.first().filter(|worst| !worst.passes) {
                return format!(
                    "It does NOT bear being lifted in four slings: {}, {} used. Carry it on a board or a frame.",
                    CHECKS[worst.check].title(),
                    shared::percent(worst.used.value)
                );
            }
            if let Some((check, reason)) = open.first() {
                return format!(
                    "Whether it bears being lifted in four slings is not known: {} could not be checked ({reason}).",
                    CHECKS[*check].title()
                );
            }
            outcomes.first().map_or_else(
                || "Lifting could not be checked, which is not a pass.".to_owned(),
                |worst| {
                    format!(
                        "Bare it can be lifted at four places by slings hung upright from a spreader, {upright} in each ({leg} if they \
                         slant by {slant}): {} governs, {} used.",
                        capital(CHECKS[worst.check].title()),
                        shared::percent(worst.used.value)
                    )
                },
            )
        }
    }
}
