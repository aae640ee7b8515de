//! What to mind before anything is cut or drilled by the template.

use super::{Template, holes::listed, view::Face, words};
use crate::{
    geometry::Axis,
    plan::FixingMark,
    report::{hands, without_fixings},
    top::Scope,
    units::{Length, Ratio, show_in},
};

/// The cautions: that it is not for building, then the general ones.
pub(super) fn cautions(template: &Template<'_>) -> Vec<String> {
    let mut all: Vec<String> = template.not_for_building().map(str::to_owned).into_iter().collect();
    all.extend([
        "Measure the scale bars before you drill or cut: print at 100 %, \"actual size\", never \"fit to page\"."
            .to_owned(),
        if template.top.scope == Scope::Patch {
            "A patch: its outline is no edge of the panel. Measure to what is there before you drill.".to_owned()
        } else {
            "The finished top may differ from the file: lay the finished outline on its edges and measure from them before \
             you drill."
                .to_owned()
        },
    ]);
    all.extend(crown(template));
    all.extend(hands(template.top));
    all.extend(conduits(template));
    all.extend(template.plan.fixings.iter().filter_map(|mark| near(template, mark)));
    all.extend(blind(template));
    all.extend(other_face(template));
    all.extend(silent(template));
    all
}

/// A sheet laid over a crown is too short for it.
fn crown(template: &Template<'_>) -> Option<String> {
    if template.top.crown <= Length::default() {
        return None;
    }
    let longer: Length = template.plan.width * (template.top.along_crown() - Ratio::from(1.0));
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
