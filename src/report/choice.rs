//! What a choice came to: as text, for machines, for spreadsheets.

use serde_json::{Value, json};
use uom::si::ratio::ratio;

use super::{
    json::{number, quantity},
    page::Page,
    words,
};
use crate::{
    check::CHECKS,
    choice::{Chosen, Found, Space},
    top::{CoreSheet, Schedule, Top},
    units::both,
};

/// What holds and is beaten by no other, as text.
#[must_use]
pub fn choice_to_text(chosen: &Chosen, space: &Space, top: &Top, width: usize) -> String {
    let mut page = Page::new(width);
    if chosen.stopped {
        page.paragraph("", "Stopped before all were looked at.");
    }
    page.paragraph("", &format!("{} of {} combinations hold and are beaten by none.", chosen.found.len(), chosen.of));
    for found in &chosen.found {
        let Some((core, [outer, inner])) = parts(found, space, top) else { continue };
        let system = top.report;
        page.blank();
        page.paragraph(
            "",
            &format!(
                "{} in {} of {} at {}: {}",
                both(found.mass, system),
                both(found.thickness, system),
                core.family.name,
                both(core.material.density, system),
                governs(found)
            ),
        );
        page.paragraph("  outer ", &skin(outer));
        page.paragraph("  inner ", &skin(inner));
    }
    page.done()
}

/// The same for machines.
#[must_use]
pub fn choice_to_json(chosen: &Chosen, space: &Space, top: &Top) -> Value {
    let found = chosen.found.iter().filter_map(|found| {
        let (core, [outer, inner]) = parts(found, space, top)?;
        Some(json!({
            "core": core.family.id,
            "density": quantity(core.material.density, top.report),
            "thickness": quantity(core.thickness, top.report),
            "outer": skin(outer),
            "inner": skin(inner),
            "mass": quantity(found.mass, top.report),
            "governs": found.governs.as_ref().map(|outcome| CHECKS[outcome.check].id()),
            "utilisation": found.governs.as_ref().and_then(|worst| Some(number(worst.utilisation()?.get::<ratio>()))),
        }))
    });
    let found: Vec<Value> = found.collect();
    json!({
        "format": { "name": "skinspan-choose", "version": 1 },
        "of": chosen.of,
        "stopped": chosen.stopped,
        "found": found,
    })
}

/// Those that were found, one to a line under a line of heads.
#[must_use]
pub fn choice_to_csv(chosen: &Chosen, space: &Space, top: &Top) -> String {
    let mut text = "core,density kg/m3,thickness mm,outer,inner,mass kg,used\n".to_owned();
    for found in &chosen.found {
        let Some((core, [outer, inner])) = parts(found, space, top) else { continue };
        let used = found.governs.as_ref().and_then(crate::check::Outcome::utilisation);
        let cells = [
            core.family.id.clone(),
            core.material.density.value.to_string(),
            (core.thickness.value * 1e3).to_string(),
            skin(outer),
            skin(inner),
            found.mass.value.to_string(),
            used.map_or_else(String::new, |used| used.value.to_string()),
        ];
        text.push_str(&cells.map(|cell| format!("\"{}\"", cell.replace('"', "\"\""))).join(","));
        text.push('\n');
    }
    text
}

/// The core and the skins of one that was found.
fn parts<'a>(found: &Found, space: &'a Space, top: &'a Top) -> Option<(&'a CoreSheet, [&'a Schedule; 2])> {
    let Some(candidate) = found.candidate else { return Some((&top.core, [&top.outer, &top.inner])) };
    let skins = [space.outer.get(candidate.outer)?, space.inner.get(candidate.inner)?];
    Some((space.cores.get(candidate.core)?, skins))
}

fn skin(skin: &Schedule) -> String {
    skin.layers().iter().map(|layer| layer.text.as_str()).collect::<Vec<_>>().join("; ")
}

fn governs(found: &Found) -> String {
    let Some(worst) = &found.governs else { return "nothing could be checked".to_owned() };
    format!("{} governs, {} used", CHECKS[worst.check].title(), words::used(worst))
}
