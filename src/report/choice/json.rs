//! The answer for machines: the same content as the text, each quantity with its unit.

use serde_json::{Value, json};
use uom::si::ratio::ratio;

use super::{
    Choice, always, answer, notes, steps,
    words::{left_by, margin_of, order, runs},
};
use crate::{
    check::{CHECKS, Outcome, Verdict},
    choice::{Chosen, Fate, Found, Grid, LeftOut, Open, Space, Tally},
    report::{
        json::{method, number, quantity},
        without_fixings,
    },
    top::{Schedule, Top},
    units::{Ratio, System},
};

/// The answer as one JSON value.
///
/// # Format, version 1
///
/// Within a version keys are only added; what a key means never changes. A quantity is `{"value": 12.3, "unit": "lb"}`, in
/// the units of the report's system; a pure number is a number; what is not known is null. Checks go by their ids. Top level:
///
/// | key | content |
/// |---|---|
/// | `format` | `{"name": "skinspan-choose", "version": 1}` |
/// | `title`, `units` | title of the design; `"us"` or `"si"` |
/// | `order` | what the answers are ordered by: `"weight"`, `"thickness"`, `"sag"`, `"cost"` |
/// | `limits` | `thickness`, `mass`, `cost` that the file allows at most; null where it does not say |
/// | `currency`, `arrangements` | of all costs, null where there are no prices; ways of pipes and backing, the file's own among them |
/// | `frame_counts` | whether the weight that is compared is that of the bare top and its pipes together: they differ, and what they weigh is known |
/// | `combinations`, `looked_at`, `stopped` | how many there are, how many were looked at, whether the search was stopped |
/// | `cannot` | what cannot be judged, whatever is laid up: `check` (id; null for a load case), `case` (title; null for a check), `reason`; `found` are then those that pass all else |
/// | `always`, `none_holds` | what `[choose]` leaves as it is and what failed in all that were judged for it, whatever is laid up: `check`, `of` (whose fixings; null of pipes), `judged` (how many), and in the one that is used least `method`, `utilisation`, `case`, `at`; `remedies` (`change`, `added_mass`, `utilisation`, `breaks`), or the `nearest`: by the hand method in the first of `found`, or in the file's own. `found`, `grids`, `steps` and `tally` are then without it. Whether each combination was looked at with it and none holds |
/// | `left_out` | parts that are not there since it was stopped: `"grids"`, `"steps"`, `"by both"` (what both methods say of borders of grids, and of steps) |
/// | `answer` | the answer in sentences |
/// | `found` | those that hold by both methods and that no other beats in weight, thickness and, where there are prices, cost; ordered by sag, also larger ones that by hand sag a fifth less, and what was found to sag least |
/// | `own` | the file's own, with the same keys |
/// | `grids` | per family, with the skins of the file: `family`, `densities` of the rows, `thicknesses` of the columns, `cells` row by row (`utilisation`, `holds`, `governs`, `by_both`: whether both methods judged it, else the hand method alone; null where something does not go in) |
/// | `steps` | one step from the first found, or from the file's own: `from` (`"found"`, `"own"`), `utilisation`, `margin` before, by hand; `tried` (`change`, `added_mass`, `utilisation`, `margin`, `holds`, `governs`, `by_both`), by what is added |
/// | `tally` | what became of how many, most first: `fate` (`"shown"`, `"beaten"`, `"over limit"`, `"does not fit"`, `"fails"`, `"open"`, `"may sag less"`, `"not looked at"`), `count`, `check`, `method`, `at_a_glance`, `reason` |
/// | `without_fixings` | gear and pipes whose fixings were not checked, since the file gives none |
/// | `notes`, `cautions` | texts |
///
/// One of `found` has `family` (id), `core` (name), `density`, `core_thickness`, `outer` and `inner` (layers that carry, outside
/// first: `layer`, `times`), `arranged` (what differs from the file in pipes and backing), `cost`, `thickness`, `mass` (bare), `frame_mass` (of its pipes; null where wall or alloy are not given), `mass_per_area`, `added_mass` and `added_thickness` over the file's
/// own, `holds`, `governs`, `method`, `case` (title), `at` (x and y of the place that governs), `utilisation`, `margin`, `not_evaluated` (the reason), `utilisation_hand`,
/// `utilisation_plate`, `sag`, `open` (what could not be judged, as in `cannot`), `fails` (what of `always` fails: `check`, `method`, `utilisation`).
#[must_use]
pub fn choice_to_json(chosen: &Chosen, space: &Space, top: &Top) -> Value {
    let choice = Choice { chosen, space, top };
    let system = choice.system();
    let from = if choice.best().is_some() { "found" } else { "own" };
    let laid_as = choice.best_top();
    let tried: Vec<Value> = steps::sorted(choice)
        .into_iter()
        .map(|one| {
            json!({
                "change": steps::step(&one.to, &laid_as),
                "added_mass": quantity(one.added, system),
                "utilisation": share(Some(one.utilisation)),
                "margin": share(left_by(one.utilisation)),
                "holds": steps::holds(one.utilisation),
                "governs": CHECKS[one.governs].id(),
                "by_both": one.by_both,
            })
        })
        .collect();
    json!({
        "format": { "name": "skinspan-choose", "version": 1 },
        "title": top.title,
        "units": match system { System::Us => "us", System::Si => "si" },
        "order": order(space.order),
        "limits": {
            "thickness": space.limits.thickness.map(|most| quantity(most, system)),
            "mass": space.limits.mass.map(|most| quantity(most, system)),
            "cost": space.limits.cost.map(|most| number(most.amount())),
        },
        "currency": space.prices.as_ref().map(|prices| prices.currency.as_str()),
        "frame_counts": space.frames().is_some(),
        "arrangements": space.arrangements.len(),
        "combinations": chosen.of,
        "looked_at": choice.looked_at(),
        "stopped": chosen.stopped,
        "cannot": chosen.cannot.iter().map(open).collect::<Vec<_>>(),
        "always": chosen.always.iter().map(|own| always::json(choice, own)).collect::<Vec<_>>(),
        "none_holds": chosen.none_holds,
        "left_out": chosen.left_out.iter().copied().map(left_out).collect::<Vec<_>>(),
        "answer": answer::sentences(choice),
        "found": chosen.found.iter().map(|found| one(choice, found)).collect::<Vec<_>>(),
        "own": one(choice, &chosen.own),
        "grids": chosen.grids.iter().map(|own| grid(own, system)).collect::<Vec<_>>(),
        "steps": {
            "from": from,
            "utilisation": share(steps::before(choice)),
            "margin": share(steps::before(choice).and_then(left_by)),
            "tried": tried,
        },
        "tally": chosen.tally.iter().map(tally).collect::<Vec<_>>(),
        "without_fixings": without_fixings(top),
        "notes": notes::notes(choice),
        "cautions": notes::cautions(choice),
    })
}

pub(super) fn share(of: Option<Ratio>) -> Value {
    of.map_or(Value::Null, |of| number(of.get::<ratio>()))
}

fn one(choice: Choice<'_>, found: &Found) -> Value {
    let (system, laid, worst) = (choice.system(), choice.laid(found), found.governs.as_ref());
    let (mass, thickness) = choice.over_own(found);
    let reason = worst.and_then(|worst| match &worst.verdict {
        Verdict::NotEvaluated(reason) => Some(reason.as_str()),
        Verdict::Compared(_) => None,
    });
    json!({
        "family": laid.core.family.id,
        "core": laid.core.material.name,
        "density": quantity(laid.core.material.density, system),
        "core_thickness": quantity(laid.core.thickness, system),
        "outer": layers(laid.outer),
        "inner": layers(laid.inner),
        "arranged": choice.arranged(found),
        "thickness": quantity(found.thickness, system),
        "cost": found.cost.map(|cost| number(cost.amount())),
        "mass": quantity(found.mass, system),
        "frame_mass": found.frame.map(|mass| quantity(mass, system)),
        "mass_per_area": quantity(choice.areal(found), system),
        "added_mass": quantity(mass, system),
        "added_thickness": quantity(thickness, system),
        "holds": found.holds,
        "governs": worst.map(|worst| CHECKS[worst.check].id()),
        "method": worst.map(|worst| method(worst.method)),
        "case": found.case,
        "at": worst.and_then(|worst| worst.place.at).map(|at| [at.x, at.y].map(|along| quantity(along, system))),
        "utilisation": share(worst.and_then(Outcome::utilisation)),
        "margin": share(worst.and_then(margin_of)),
        "not_evaluated": reason,
        "utilisation_hand": share(found.by_hand),
        "utilisation_plate": share(found.by_plate),
        "sag": found.sag.map(|sag| quantity(sag, system)),
        "open": found.open.iter().map(open).collect::<Vec<_>>(),
        "fails": found.fails.iter().map(always::fails).collect::<Vec<_>>(),
    })
}

fn open(open: &Open) -> Value {
    match open {
        Open::Check { check, reason } => json!({ "check": CHECKS[*check].id(), "case": null, "reason": reason }),
        Open::Case { title, reason, .. } => json!({ "check": null, "case": title, "reason": reason }),
    }
}

const fn left_out(part: LeftOut) -> &'static str {
    match part {
        LeftOut::Grids => "grids",
        LeftOut::Steps => "steps",
        LeftOut::ByBoth => "by both",
    }
}

fn layers(skin: &Schedule) -> Vec<Value> {
    runs(skin).into_iter().map(|(layer, times)| json!({ "layer": layer, "times": times })).collect()
}

fn grid(grid: &Grid, system: System) -> Value {
    let row = |row: &Vec<Option<crate::choice::Cell>>| -> Vec<Value> {
        row.iter()
            .map(|cell| {
                cell.as_ref().map_or(Value::Null, |cell| {
                    json!({
                        "utilisation": share(Some(cell.utilisation)),
                        "holds": steps::holds(cell.utilisation),
                        "governs": CHECKS[cell.governs].id(),
                        "by_both": cell.by_both,
                    })
                })
            })
            .collect()
    };
    json!({
        "family": grid.family,
        "densities": grid.densities.iter().map(|density| quantity(*density, system)).collect::<Vec<_>>(),
        "thicknesses": grid.thicknesses.iter().map(|thickness| quantity(*thickness, system)).collect::<Vec<_>>(),
        "cells": grid.cells.iter().map(row).collect::<Vec<_>>(),
    })
}

fn tally(of: &Tally) -> Value {
    let (fate, check, by, at_a_glance, reason) = match &of.fate {
        Fate::Shown => ("shown", None, None, None, None),
        Fate::Beaten => ("beaten", None, None, None, None),
        Fate::OverLimit => ("over limit", None, None, None, None),
        Fate::Misfit(why) => ("does not fit", None, None, None, Some(*why)),
        Fate::Fails { check, method, at_a_glance } => ("fails", Some(*check), Some(*method), Some(*at_a_glance), None),
        Fate::Open(check) => ("open", *check, None, None, None),
        Fate::MaySagLess => ("may sag less", None, None, None, None),
        Fate::NotLookedAt => ("not looked at", None, None, None, None),
    };
    json!({
        "fate": fate,
        "count": of.count,
        "check": check.map(|check| CHECKS[check].id()),
        "method": by.map(method),
        "at_a_glance": at_a_glance,
        "reason": reason,
    })
}
