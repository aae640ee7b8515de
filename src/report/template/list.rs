//! The holes as a list for a spreadsheet and for programs: one line for each drill of each fixing.

use serde_json::{Value, json};
use uom::si::length::{inch, millimeter};

use super::{Template, words};
use crate::{
    plan::FixingMark,
    report::choice::csv::{digits, line},
    section::Skin,
    units::{Length, System},
};

/// Heads of the table; sizes in millimetres or inches, by the units of the template.
fn heads(system: System) -> [String; 14] {
    let unit = unit(system);
    [
        "hole".to_owned(),
        "holds".to_owned(),
        "fixing".to_owned(),
        "from".to_owned(),
        format!("x ({unit})"),
        format!("y ({unit})"),
        "step".to_owned(),
        "drill".to_owned(),
        format!("diameter ({unit})"),
        format!("depth ({unit})"),
        "through".to_owned(),
        "tap".to_owned(),
        "near conduit".to_owned(),
        "not for building".to_owned(),
    ]
}

const fn unit(system: System) -> &'static str {
    match system {
        System::Us => "in",
        System::Si => "mm",
    }
}

fn size(of: Length, system: System) -> f64 {
    match system {
        System::Us => of.get::<inch>(),
        System::Si => of.get::<millimeter>(),
    }
}

const fn from(mark: &FixingMark) -> &'static str {
    match mark.near {
        Skin::Outer => "above",
        Skin::Inner => "below",
    }
}

pub(super) fn csv(template: &Template<'_>) -> String {
    let system = template.top.report;
    let mut text = line(&heads(system));
    // A list is sorted and cut up: each line says it.
    let warning = template.not_for_building().unwrap_or_default();
    for mark in &template.plan.fixings {
        let cells = |step: usize, drill: Option<&crate::advice::Drill>| {
            let number = |of: Option<Length>| of.map_or_else(String::new, |of| digits(size(of, system)));
            [
                mark.number.to_string(),
                mark.held.clone(),
                format!("{}, {} {}", mark.fixing, mark.hold, mark.size),
                from(mark).to_owned(),
                number(Some(mark.at.x)),
                number(Some(mark.at.y)),
                step.to_string(),
                drill.map_or_else(|| "none".to_owned(), |drill| words::drill_alone(drill.diameter)),
                number(drill.map(|drill| drill.diameter)),
                number(drill.and_then(|drill| drill.depth)),
                drill.map_or_else(String::new, |drill| drill.what.clone()),
                mark.tap.clone().unwrap_or_default(),
                mark.in_band.as_ref().map_or_else(String::new, |near| near.conduit.clone()),
                warning.to_owned(),
            ]
        };
        if mark.drills.is_empty() {
            text.push_str(&line(&cells(0, None)));
        }
        for (drill, step) in mark.drills.iter().zip(1..) {
            text.push_str(&line(&cells(step, Some(drill))));
        }
    }
    text
}

pub(super) fn json(template: &Template<'_>) -> Value {
    let system = template.top.report;
    let quantity = |of: Length| json!({ "value": size(of, system), "unit": unit(system) });
    let holes = template.plan.fixings.iter().map(|mark| {
        let drills = mark.drills.iter().map(|drill| {
            json!({
                "drill": words::drill_alone(drill.diameter),
                "diameter": quantity(drill.diameter),
                "depth": drill.depth.map(quantity),
                "through": drill.what,
            })
        });
        json!({
            "hole": mark.number,
            "holds": mark.held,
            "fixing": mark.fixing,
            "hold": mark.hold,
            "size": mark.size,
            "from": from(mark),
            "x": quantity(mark.at.x),
            "y": quantity(mark.at.y),
            "drills": drills.collect::<Vec<_>>(),
            "tap": mark.tap,
            "near_conduit": mark.in_band.as_ref().map(|near| near.conduit.as_str()),
        })
    });
    json!({
        "format": { "name": "skinspan-holes", "version": 1 },
        "title": template.top.title,
        "not_for_building": template.not_for_building,
        "units": match system { System::Us => "us", System::Si => "si" },
        "forward": template.top.bow().word(),
        "holes": holes.collect::<Vec<_>>(),
    })
}
