//! What to mind before anything is cut or drilled by the template.

use super::{
    Template,
    holes::listed,
    view::{End, Face},
    words,
};
use crate::{
    geometry::Axis,
    plan::FixingMark,
    report::without_fixings,
    top::Scope,
    units::{Length, show_in},
};

/// The cautions, the general ones first.
pub(super) fn cautions(template: &Template<'_>) -> Vec<String> {
    let mut all = vec![
        "Measure the scale bars before you drill or cut: print at 100 %, \"actual size\", never \"fit to page\"."
            .to_owned(),
        if template.top.scope == Scope::Patch {
            "A patch: its outline is no edge of the panel. Measure to what is there before you drill.".to_owned()
        } else {
            "The finished top may differ from the file: lay the finished outline on its edges and measure from them before \
             you drill."
                .to_owned()
        },
    ];
    all.extend(crown(template));
    all.extend(hands(template));
    all.extend(conduits(template));
    all.extend(template.plan.fixings.iter().filter_map(|mark| near(template, mark)));
    all.extend(blind(template));
    all.extend(other_face(template));
    all.extend(silent(template));
    all
}

/// A sheet laid over a crown is too short for it.
fn crown(template: &Template<'_>) -> Option<String> {
    let (crown, width) = (template.top.crown, template.plan.width);
    if crown <= Length::default() {
        return None;
    }
    // 8 f²/(3 w) longer than its chord is a shallow arc.
    let longer: Length = crown * (crown / width) * (8.0 / 3.0);
    Some(format!(
        "The top has a crown and the drawing is flat, as seen square from above: over the whole width the surface is about \
         {} longer than drawn. Lay the sheet on near the holes, not from one edge to the other.",
        words::depth(longer)
    ))
}

fn conduits(template: &Template<'_>) -> Option<String> {
    let names: Vec<&str> = template.top.conduits.iter().map(|conduit| conduit.name.as_str()).collect();
    (!names.is_empty()).then(|| {
        format!(
            "Conduits lie in the core: {}. No hole of up to {} has its middle in a hatched band (`conduit-clearance`, \
             `no-drill-hole`). They may lie otherwise than drawn: find them before you drill.",
            names.join(", "),
            words::depth(template.plan.no_drill_hole)
        )
    })
}

fn near(template: &Template<'_>, mark: &FixingMark) -> Option<String> {
    let found = mark.in_band.as_ref()?;
    let at = |axis| words::place(mark.at.along(axis), template.top.report);
    let how = if found.wall <= Length::default() {
        "its drill meets the conduit: MOVE IT".to_owned()
    } else if found.wall < found.needed {
        format!(
            "only {} stay between hole and conduit, {} are asked for: MOVE IT",
            show_in(found.wall, "mm", 1),
            show_in(found.needed, "mm", 1)
        )
    } else {
        format!(
            "{} stay between hole and conduit, enough for this drill but not for a larger one",
            show_in(found.wall, "mm", 1)
        )
    };
    Some(format!(
        "Hole {} ({}), x {}, y {}, stands in the band beside {}: {how}.",
        mark.number,
        mark.held,
        at(Axis::X),
        at(Axis::Y),
        found.conduit
    ))
}

fn blind(template: &Template<'_>) -> Option<String> {
    let marks = template.plan.fixings.iter().filter(|mark| mark.stop().is_some());
    let numbers: Vec<usize> = marks.map(|mark| mark.number).collect();
    (!numbers.is_empty()).then(|| {
        format!("Blind holes end inside the panel: set a stop on the drill and try it on scrap ({}).", listed(&numbers))
    })
}

fn other_face(template: &Template<'_>) -> Option<String> {
    let marks =
        template.plan.fixings.iter().filter(|mark| !mark.drills.is_empty() && !template.shows_drilled_face(mark));
    let numbers: Vec<usize> = marks.map(|mark| mark.number).collect();
    let (this, way) = match template.view.face {
        Face::Above => ("below", "with `--from below`"),
        Face::Below => ("above", "without `--from below`"),
    };
    (!numbers.is_empty()).then(|| {
        format!(
            "Drilled from {this}, through the skin that this drawing does not show, and drawn with dashes: {}. Print the \
             template {way} for them.",
            listed(&numbers)
        )
    })
}

fn silent(template: &Template<'_>) -> Option<String> {
    let names = without_fixings(template.top);
    (!names.is_empty()).then(|| {
        format!("The file does not say how these are fixed, so none of their holes is here: {}.", names.join(", "))
    })
}

/// Which hand is port, as names have it, against what the drawing shows.
fn hands(template: &Template<'_>) -> Option<String> {
    let view = template.view;
    let (port, bow) = (by_name(template, ["port", "starboard"], Axis::Y), by_name(template, ["fore", "aft"], Axis::X));
    let turn = |end: End| format!("--port {}", end.key());
    match (view.port_side(), port, bow) {
        (Some(shown), Some((named, name)), _) if shown != named => Some(format!(
            "By its name, {name} lies to port; as this is drawn it lies to starboard. If its name is right, add \
             `{}`: the drawing is then turned over.",
            turn(named)
        )),
        (None, Some((named, name)), Some((end, _))) if named != end => Some(format!(
            "By their names, port (as {name}) and bow lie so that this drawing shows the top from the wrong face. Say \
             `--bow {} {}`, and it is turned over.",
            end.key(),
            turn(named)
        )),
        (None, Some((named, name)), None) => Some(format!(
            "The file does not say where the bow is. By its name, {name} lies to port: as this is drawn the bow is then at \
             the {} of the paper. If it is at the other end, say `--bow {} {}`, and the drawing is turned over.",
            named.on_paper(),
            named.opposite().key(),
            turn(named)
        )),
        // Said and named alike, or nothing is named.
        _ => None,
    }
}

/// The side that the first of two words names, by the things that have one of them in front; and such a thing.
fn by_name<'t>(template: &'t Template<'_>, words: [&str; 2], axis: Axis) -> Option<(End, &'t str)> {
    let top = template.top;
    let half = top.outline.size(axis) / 2.0;
    let supports = top.supports.iter().map(|support| (support.name.as_str(), &support.along));
    let backings = top.backings.iter().map(|backing| (backing.name.as_str(), &backing.along));
    supports.chain(backings).find_map(|(name, along)| {
        let first = name.split(|letter: char| !letter.is_alphanumeric()).next()?.to_lowercase();
        let which = words.iter().position(|word| *word == first)?;
        let low = along.at(along.length() / 2.0).along(axis) < half;
        Some((if low == (which == 0) { End::Start } else { End::Far }, name))
    })
}
