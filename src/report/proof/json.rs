//! The card, and readings against it, for machines.

use serde_json::{Value, json};
use uom::si::ratio::ratio;

use super::{Card, compared, why_no_proof, words};
use crate::{
    check::CHECKS,
    geometry::Point,
    proof::{Cause, Compared, Found, Kind, NoProof, Proof, Slip},
    report::{
        explain::criterion_json,
        json::{measure, number, quantity},
        not_for_building,
    },
    top::Top,
    units::{Ratio, System},
};

/// The card as one JSON value, with what readings say where there are some.
///
/// # Format, version 1
///
/// Within a version keys are only added; what a key means never changes. A quantity is `{"value": 12.3, "unit": "lb"}`, in
/// the units of the report's system; a pure number is a number; what is not known is null. Checks go by their ids. Top level:
///
/// | key | content |
/// |---|---|
/// | `format` | `{"name": "skinspan-proof", "version": 1}` |
/// | `title`, `units` | title of the design; `"us"` or `"si"` |
/// | `no_test` | null; where there is no test, why, and of the other keys only those above |
/// | `not_for_building` | what speaks against building it, by both methods; null where nothing does |
/// | `answer` | the answer in sentences |
/// | `load` | `case`, `check`, `utilisation`, `pressure` or (`x`, `y`), `force` |
/// | `bag`, `bag_size`, `weight`, `of_case`, `lowered` | mass and size of a bag, weight of all, that over the load of the case, whether a check did not allow more |
/// | `heaps` | `x`, `y`, `bags`, in the order in which they are laid |
/// | `steps` | `bags`, `share`, `mass` |
/// | `gauges` | `name`, `at` (words), `x`, `y`, `expected`, `band` (to either side) under all bags, `core`, `skins`: how much more for each time that it gives as much again; `method`: error of the plate method |
/// | `by_hand` | `between`, `tip`: largest sags by the hand method |
/// | `checks` | of the top under all bags: `check`, `demand`, `allowable`, `utilisation` |
/// | `open` | `check`, `reason` |
/// | `readings` | null without readings; else `passes`, `most_bags`, `supports` (null without a gauge on one; `mean`, `bends`: by how much more they went down, and how far from a plane), `gauges` (`name`, `zero`, `read`, `over_expected`, `moved`: what the supports take it down by beyond what was expected, `in_band`, `off_line`, `straight` (null where it was read at less than three loads, as `off_line`), `hysteresis`, `residual`, `springs_back`), `suspect` (the gauge that alone is out, or null), `give_way` (gauges on supports that go down too far), `slips` (`name`, `what`: `"sign turned"` or `"another unit"`, `times`), `causes` (`reason` alone where there are none; `alone`: `cause` (`"core"`, `"skins"`, `"supports"`), `core`, `skins`, `supports`, `left`; `together` the same; `off`; `told_apart`; `likely`) |
/// | `criteria` | the criteria of the test, with source and mark |
#[must_use]
pub fn proof_to_json(proof: &Proof, compared: Option<&Compared>, top: &Top) -> Value {
    let card = Card { proof, top };
    let system = card.system();
    let answer = compared.map_or_else(|| words::sentences(card), |compared| compared::sentences(card, compared));
    let place = |at: Point| json!({ "x": quantity(at.x, system), "y": quantity(at.y, system) });
    let load = &proof.governs;
    let mut about = json!({
        "case": load.case,
        "check": CHECKS[load.check].id(),
        "utilisation": share(load.used),
        "force": quantity(load.force, system),
    });
    match load.kind {
        Kind::Even { pressure } => about["pressure"] = quantity(pressure, system),
        Kind::Place { at } => {
            about["x"] = quantity(at.x, system);
            about["y"] = quantity(at.y, system);
        }
    }
    let heaps = proof.heaps.iter().map(|heap| {
        let mut one = place(heap.at);
        one["bags"] = heap.bags.into();
        one
    });
    let steps = proof
        .steps
        .iter()
        .map(|step| json!({ "bags": step.bags, "share": share(step.share), "mass": quantity(step.mass, system) }));
    let gauges = proof.gauges.iter().map(|gauge| {
        let mut one = place(gauge.at);
        one["name"] = gauge.name.clone().into();
        one["at"] = words::at(top, gauge.on).into();
        one["expected"] = quantity(gauge.reading.expected, system);
        one["band"] = quantity(gauge.reading.band, system);
        one["core"] = quantity(gauge.reading.core, system);
        one["skins"] = quantity(gauge.reading.skin, system);
        one["method"] = quantity(gauge.reading.method, system);
        one
    });
    let checks = proof.checks.iter().map(|check| {
        json!({
            "check": CHECKS[check.check].id(),
            "demand": measure(check.demand, system),
            "allowable": measure(check.allowable, system),
            "utilisation": share(check.used),
        })
    });
    let open = proof.open.iter().map(|(check, reason)| json!({ "check": CHECKS[*check].id(), "reason": reason }));
    let [between, tip] = proof.by_hand.map(|sag| sag.map(|sag| quantity(sag, system)));
    let records = top.criteria.records().into_iter().filter(|record| record.group == "proof");
    json!({
        "format": format(),
        "title": top.title,
        "units": units(system),
        "no_test": null,
        "not_for_building": not_for_building(&Ok(proof.standing.clone())),
        "answer": answer,
        "load": about,
        "bag": quantity(proof.bag, system),
        "bag_size": proof.bag_size.map(|size| quantity(size, system)),
        "weight": quantity(proof.weight, system),
        "of_case": share(proof.of_case),
        "lowered": proof.lowered,
        "heaps": heaps.collect::<Vec<_>>(),
        "steps": steps.collect::<Vec<_>>(),
        "gauges": gauges.collect::<Vec<_>>(),
        "by_hand": { "between": between, "tip": tip },
        "checks": checks.collect::<Vec<_>>(),
        "open": open.collect::<Vec<_>>(),
        "readings": compared.map(|compared| readings(card, compared)),
        "criteria": records.map(criterion_json).collect::<Vec<_>>(),
    })
}

/// That there is no test, and why, as JSON: `format`, `title`, `units` and `no_test` of [`proof_to_json`].
#[must_use]
pub fn no_proof_to_json(none: &NoProof, top: &Top) -> Value {
    json!({ "format": format(), "title": top.title, "units": units(top.report), "no_test": why_no_proof(none) })
}

fn format() -> Value {
    json!({ "name": "skinspan-proof", "version": 1 })
}

const fn units(system: System) -> &'static str {
    match system {
        System::Us => "us",
        System::Si => "si",
    }
}

fn share(of: Ratio) -> Value {
    number(of.get::<ratio>())
}

const fn word(cause: Cause) -> &'static str {
    match cause {
        Cause::Core => "core",
        Cause::Skins => "skins",
        Cause::Supports => "supports",
    }
}

fn readings(card: Card<'_>, compared: &Compared) -> Value {
    let system = card.system();
    let name = |gauge: usize| card.proof.gauges[gauge].name.clone();
    let gauges = compared.gauges.iter().map(|one| {
        json!({
            "name": card.proof.gauges[one.gauge].name,
            "zero": quantity(one.zero, system),
            "read": quantity(one.read, system),
            "over_expected": share(one.over_expected),
            "moved": quantity(one.moved, system),
            "in_band": one.in_band,
            "off_line": one.off_line.map(share),
            "straight": one.straight,
            "hysteresis": one.hysteresis.map(share),
            "residual": one.residual.map(|residual| quantity(residual, system)),
            "springs_back": one.springs_back,
        })
    });
    let found = |found: &Found| {
        json!({
            "core": share(found.core),
            "skins": share(found.skins),
            "supports": quantity(found.supports, system),
            "left": quantity(found.left, system),
        })
    };
    let causes = match &compared.causes {
        Err(reason) => json!({ "reason": reason }),
        Ok(causes) => {
            let alone = causes.alone.iter().map(|(cause, own)| {
                let mut one = found(own);
                one["cause"] = word(*cause).into();
                one
            });
            json!({
                "alone": alone.collect::<Vec<_>>(),
                "together": causes.together.as_ref().map(found),
                "off": causes.off.map(|(core, skins, supports)| json!({
                    "core": share(core),
                    "skins": share(skins),
                    "supports": quantity(supports, system),
                })),
                "told_apart": causes.told_apart,
                "likely": causes.likely.map(word),
            })
        }
    };
    json!({
        "passes": compared.passes(card.proof),
        "most_bags": compared.most_bags,
        "supports": compared.moved.as_ref().map(|moved| json!({
            "mean": quantity(moved.mean, system),
            "bends": quantity(moved.bends, system),
        })),
        "gauges": gauges.collect::<Vec<_>>(),
        "suspect": compared.suspect.map(name),
        "give_way": compared.give_way.iter().copied().map(name).collect::<Vec<_>>(),
        "slips": compared.slips.iter().map(|(gauge, slip)| slipped(card, *gauge, *slip)).collect::<Vec<_>>(),
        "causes": causes,
    })
}

/// A reading that looks as if it had been written down otherwise.
fn slipped(card: Card<'_>, gauge: usize, slip: Slip) -> Value {
    let (what, times) = match slip {
        Slip::Turned => ("sign turned", -1.0),
        Slip::Unit(unit) => ("another unit", unit.times()),
    };
    json!({ "name": card.proof.gauges[gauge].name, "what": what, "times": number(times) })
}
