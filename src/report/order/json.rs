//! The order for machines: the same content as the text, each quantity with its unit.

use serde_json::{Value, json};
use uom::si::ratio::ratio;

use super::{Ordered, answer, buy, core, notes, words};
use crate::{
    check::{CHECKS, Measure},
    geometry::{Axis, Point},
    order::{CorePlan, LiftCheck, LiftOn, Lifting, Order},
    report::{
        explain::criterion_json,
        json::{measure, number, quantity},
        not_for_building::not_for_building,
    },
    section::Skin,
    top::Top,
    units::{Length, System},
};

/// The order as one JSON value.
///
/// # Format, version 1
///
/// Within a version keys are only added; what a key means never changes. A quantity is `{"value": 12.3, "unit": "lb"}`, in
/// the units of the report's system; a pure number is a number; what is not known is null. Top level:
///
/// | key | content |
/// |---|---|
/// | `format` | `{"name": "skinspan-order", "version": 1}` |
/// | `title`, `units` | title of the design; `"us"` or `"si"` |
/// | `not_for_building` | what speaks against building it, by the checks of the hand method; null where nothing does |
/// | `answer` | the answer in sentences |
/// | `buy` | `kind` (`"fabric"`, `"resin"`, `"coat"`, `"core"`, `"board"`, `"putty"`, `"filling"`, `"conduit"`, `"fixing"`), `item`, `count`, `length`, `area`, `volume`, `mass`, `note`; waste and spares with them |
/// | `fabrics` | `fabric` (id), `parts` (dry mass per area), `plies`, `slanted`, `net` area, `breadths`, `length`, `area`, `mass` to buy, `length_along` (null where nothing is slanted), `in_top` (dry) |
/// | `resin` | `name`, `hardener` (`"catalyst"` or `"hardener"`), `resin_mass`, `hardener_mass`, `layers` (`skin`: `"outer"`, `"inner"` or null, `layer`, `times`, `per_area` (of one), `in_top`, `bought`) |
/// | `core` | `reason` alone where there is no plan; else `sheet` (length, width), `along` (`"x"` or `"y"`), `sheets`, `area`, `offcut`, `sold_so_thick`, `pieces` (`x`, `y`, `length`, `width`, `area`, `cut_out`, `sheet` from one, `sheet_at`, `sheet_size`, `turned`), `seams` (`from`, `to`, `length`, `breaks`: `where`, `length`) |
/// | `backing` | `name`, `board`, `length`, `straight`, `width`, `thickness`, `mass` |
/// | `fixings` | `name`, `what`, `holds`, `set`, `bought`, `shortest`, `foot_counted`, `grade` (null of rivets), `with`, `parts` (`what`, `count` to buy) |
/// | `weight` | `items` (`name`, `mass`, `x`, `y`, `z`), `bare` and `total` (`mass`, `x`, `y`, `z`), `area` |
/// | `forward` | where the bow lies, seen from above with *x* to the right and *y* upwards: `"right"` or `"left"` |
/// | `moments` | `x`, `y` of the middle of the frame, `bare` and `total` (`across`, `along`, `sideways`: for each g) |
/// | `lifting` | `slings` (`x`, `y`, `backing`, `conduit`), `pad`, `weight`, `factor`, `legs`, `angle`, `leg`, `inwards`, `passes`, `reason` where nothing was checked, `checks` (`check`, `demand`, `allowable`, `utilisation`, `passes`, `x`, `y`, `slings`: numbers of those that bear then), `open` (`check`, `reason`); null where no places were found, which is no pass |
/// | `criteria` | the criteria that were used, with source and mark |
/// | `cautions` | texts |
#[must_use]
pub fn order_to_json(order: &Order, top: &Top) -> Value {
    let ordered = Ordered { order, top };
    let system = ordered.system();
    json!({
        "format": { "name": "skinspan-order", "version": 1 },
        "title": top.title,
        "units": match system { System::Us => "us", System::Si => "si" },
        "not_for_building": not_for_building(&order.standing),
        "answer": answer::sentences(ordered),
        "buy": bought(ordered),
        "fabrics": fabrics(ordered),
        "resin": resin(ordered),
        "core": match &order.core {
            Ok(plan) => planned(plan, system),
            Err(none) => json!({ "reason": core::reason(none, ordered) }),
        },
        "backing": backing(ordered),
        "fixings": fixings(ordered),
        "weight": weight(ordered),
        "forward": ordered.top.bow().word(),
        "moments": moments(ordered),
        "lifting": order.lifting.as_ref().map(|lifting| lifted(lifting, system)),
        "criteria": notes::records(ordered).into_iter().map(criterion_json).collect::<Vec<_>>(),
        "cautions": notes::cautions(ordered),
    })
}

fn bought(ordered: Ordered<'_>) -> Vec<Value> {
    let system = ordered.system();
    let rows = buy::rows(ordered).into_iter().map(|row| {
        json!({
            "kind": row.kind,
            "item": row.item,
            "count": row.count,
            "length": row.length.map(|q| quantity(q, system)),
            "area": row.area.map(|q| quantity(q, system)),
            "volume": row.volume.map(|q| quantity(q, system)),
            "mass": row.mass.map(|q| quantity(q, system)),
            "note": row.note,
        })
    });
    rows.collect()
}

fn fabrics(ordered: Ordered<'_>) -> Vec<Value> {
    let system = ordered.system();
    let lines = ordered.order.fabrics.iter().map(|line| {
        json!({
            "fabric": line.id,
            "parts": line.parts.iter().map(|part| quantity(*part, system)).collect::<Vec<_>>(),
            "plies": line.plies,
            "slanted": line.slanted,
            "net": quantity(line.net, system),
            "breadths": line.breadths,
            "length": quantity(line.length, system),
            "area": quantity(line.area, system),
            "mass": quantity(line.mass, system),
            "length_along": line.along.map(|along| quantity(along, system)),
            "in_top": quantity(line.in_top, system),
        })
    });
    lines.collect()
}

fn resin(ordered: Ordered<'_>) -> Value {
    let (resins, system) = (&ordered.order.resins, ordered.system());
    let layers = resins.lines.iter().map(|line| {
        json!({
            "skin": line.skin.map(|skin| match skin { Skin::Outer => "outer", Skin::Inner => "inner" }),
            "layer": line.layer,
            "times": line.times,
            "per_area": quantity(line.per_area, system),
            "in_top": quantity(line.in_top, system),
            "bought": quantity(line.bought, system),
        })
    });
    json!({
        "name": resins.name,
        "hardener": words::hardener(resins.mix.kind),
        "resin_mass": quantity(resins.mix.resin, system),
        "hardener_mass": quantity(resins.mix.hardener, system),
        "layers": layers.collect::<Vec<_>>(),
    })
}

fn point(at: Point, system: System) -> Value {
    json!({ "x": quantity(at.x, system), "y": quantity(at.y, system) })
}

fn sizes(of: [Length; 2], system: System) -> Value {
    json!(of.map(|size| quantity(size, system)))
}

fn planned(plan: &CorePlan, system: System) -> Value {
    let pieces = plan.pieces.iter().map(|piece| {
        json!({
            "x": quantity(piece.at.x, system),
            "y": quantity(piece.at.y, system),
            "length": quantity(piece.length, system),
            "width": quantity(piece.width, system),
            "area": quantity(piece.area, system),
            "cut_out": piece.cut_out,
            "sheet": piece.from.sheet,
            "sheet_at": sizes(piece.from.at, system),
            "sheet_size": sizes(piece.from.size, system),
            "turned": piece.from.turned,
        })
    });
    let seams = plan.seams.iter().map(|seam| {
        let breaks = seam.breaks.iter();
        let breaks =
            breaks.map(|(rule, length)| json!({ "where": words::rule(rule), "length": quantity(*length, system) }));
        json!({
            "from": point(seam.from, system),
            "to": point(seam.to, system),
            "length": quantity(seam.length, system),
            "breaks": breaks.collect::<Vec<_>>(),
        })
    });
    json!({
        "sheet": sizes(plan.sheet, system),
        "along": match plan.along { Axis::X => "x", Axis::Y => "y" },
        "sheets": plan.sheets,
        "area": quantity(plan.area, system),
        "offcut": number(plan.offcut.get::<ratio>()),
        "sold_so_thick": plan.sold_so_thick,
        "pieces": pieces.collect::<Vec<_>>(),
        "seams": seams.collect::<Vec<_>>(),
    })
}

fn backing(ordered: Ordered<'_>) -> Vec<Value> {
    let system = ordered.system();
    let pieces = ordered.order.backings.iter().map(|piece| {
        json!({
            "name": piece.name,
            "board": piece.board,
            "length": quantity(piece.length, system),
            "straight": piece.straight,
            "width": quantity(piece.width, system),
            "thickness": quantity(piece.thickness, system),
            "mass": quantity(piece.mass, system),
        })
    });
    pieces.collect()
}

fn fixings(ordered: Ordered<'_>) -> Vec<Value> {
    let system = ordered.system();
    let lines = ordered.order.fixings.iter().map(|line| {
        let parts = line.with.iter().filter(|part| part.counted());
        let parts = parts.map(|part| json!({ "what": words::part(part, system), "count": line.bought }));
        json!({
            "name": line.name,
            "what": line.what,
            "holds": line.holds,
            "set": line.set,
            "bought": line.bought,
            "shortest": line.shortest.map(|shortest| quantity(shortest, system)),
            "foot_counted": line.foot_counted,
            "grade": line.grade,
            "with": line.with.iter().map(|part| words::part(part, system)).collect::<Vec<_>>(),
            "parts": parts.collect::<Vec<_>>(),
        })
    });
    lines.collect()
}

fn weight(ordered: Ordered<'_>) -> Value {
    let (weight, system) = (&ordered.order.weight, ordered.system());
    let of = |name: Option<&str>, mass, at: Point, height: Length| {
        let mut one = json!({
            "mass": quantity(mass, system),
            "x": quantity(at.x, system),
            "y": quantity(at.y, system),
            "z": quantity(height, system),
        });
        if let Some(name) = name {
            one["name"] = name.into();
        }
        one
    };
    json!({
        "items": weight.items.iter().map(|item| of(Some(&item.name), item.mass, item.at, item.height)).collect::<Vec<_>>(),
        "bare": of(None, weight.bare, weight.bare_centre, weight.bare_height),
        "total": of(None, weight.total, weight.centre, weight.height),
        "area": quantity(ordered.order.area, system),
    })
}

fn moments(ordered: Ordered<'_>) -> Value {
    let (moments, system) = (&ordered.order.moments, ordered.system());
    let [bare, total] = moments.of.map(|of| {
        json!({
            "across": quantity(of.across, system),
            "along": quantity(of.along, system),
            "sideways": quantity(of.sideways, system),
        })
    });
    json!({
        "x": quantity(moments.about.x, system),
        "y": quantity(moments.about.y, system),
        "bare": bare,
        "total": total,
    })
}

fn lifted(lifting: &Lifting, system: System) -> Value {
    let shown = |of: Measure| measure(of, system);
    let (checks, open, reason) = match &lifting.check {
        LiftCheck::NotMade(reason) => (Vec::new(), Vec::new(), Some(reason)),
        LiftCheck::Made { outcomes, open } => {
            let checks = outcomes.iter().map(|outcome| {
                json!({
                    "check": CHECKS[outcome.check].id(),
                    "demand": shown(outcome.demand),
                    "allowable": shown(outcome.allowable),
                    "utilisation": number(outcome.used.get::<ratio>()),
                    "passes": outcome.passes,
                    "x": outcome.at.map(|at| quantity(at.x, system)),
                    "y": outcome.at.map(|at| quantity(at.y, system)),
                    "slings": match outcome.on {
                        LiftOn::All => vec![1, 2, 3, 4],
                        LiftOn::Diagonal(two) => two.map(|sling| sling + 1).to_vec(),
                    },
                })
            });
            let open = open.iter().map(|(check, reason)| json!({ "check": CHECKS[*check].id(), "reason": reason }));
            (checks.collect(), open.collect::<Vec<_>>(), None)
        }
    };
    let slings = lifting.slings.iter().map(|sling| {
        json!({
            "x": quantity(sling.at.x, system),
            "y": quantity(sling.at.y, system),
            "backing": sling.backing,
            "conduit": sling.conduit,
        })
    });
    json!({
        "slings": slings.collect::<Vec<_>>(),
        "pad": quantity(lifting.pad, system),
        "weight": quantity(lifting.weight, system),
        "factor": number(lifting.factor.get::<ratio>()),
        "legs": number(lifting.legs.get::<ratio>()),
        "angle": quantity(lifting.angle, system),
        "leg": quantity(lifting.leg, system),
        "inwards": quantity(lifting.inwards, system),
        "passes": lifting.check.passes(),
        "reason": reason,
        "checks": checks,
        "open": open,
    })
}
