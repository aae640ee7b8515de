//! Places, causes and measures in plain words.

use super::page::Tone;
use crate::{
    analysis::{Analysis, MountOn, Region},
    check::{Measure, Outcome, Part, Place, Verdict},
    geometry::Point,
    load_case::{Duration, State},
    material::Basis,
    section::Skin,
    top::{Scope, Top},
    units::{Dimensioned, System, show, show_as},
};

/// A text without the wide gaps that part the lines of a formula on a page.
pub(super) fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A measure in a system of units.
pub(super) fn measure(value: Measure, system: System) -> String {
    match value {
        Measure::Pressure(q) => show(q, system),
        Measure::Length(q) => show(q, system),
        Measure::Area(q) => show(q, system),
        Measure::Force(q) => show(q, system),
        Measure::Torque(q) => show(q, system),
        Measure::ForcePerWidth(q) => show(q, system),
        Measure::MomentPerWidth(q) => show(q, system),
        Measure::Rigidity(q) => show(q, system),
        Measure::Curvature(q) => show(q, system),
        Measure::Frequency(q) => show(q, system),
        Measure::Warmth(q) => show(q, system),
        Measure::ArealMass(q) => show(q, system),
        Measure::Ratio(q) => {
            let value = q.get::<uom::si::ratio::ratio>();
            if value.abs() >= 100.0 { format!("{value:.0}") } else { format!("{value:.3}") }
        }
    }
}

/// Demand and allowable in one unit, that of the larger.
pub(super) fn side_by_side(demand: Measure, allowable: Measure, system: System) -> [String; 2] {
    fn both<Q: Dimensioned>(one: Q, other: Q, system: System) -> [String; 2] {
        let larger = if one.si().abs() > other.si().abs() { one } else { other };
        [one, other].map(|quantity| show_as(quantity, larger, system))
    }
    match (demand, allowable) {
        (Measure::Pressure(one), Measure::Pressure(other)) => both(one, other, system),
        (Measure::Force(one), Measure::Force(other)) => both(one, other, system),
        (Measure::Torque(one), Measure::Torque(other)) => both(one, other, system),
        (Measure::ForcePerWidth(one), Measure::ForcePerWidth(other)) => both(one, other, system),
        // These have one unit, whatever their size.
        _ => [demand, allowable].map(|value| measure(value, system)),
    }
}

/// A place in plan.
pub(super) fn point(place: Point, system: System) -> String {
    format!("x {}, y {}", show(place.x, system), show(place.y, system))
}

/// The part of the top that a place is about.
pub(super) fn part(analysis: &Analysis<'_>, part: Part) -> String {
    let top = analysis.top;
    match part {
        Part::Region(Region::Field) => "field".to_owned(),
        Part::Region(Region::Backing(index)) => top.backings[index].name.clone(),
        Part::Region(Region::Conduit(index)) => format!("conduit {}", top.conduits[index].name),
        Part::Support(index) => top.supports[index].name.clone(),
        Part::Weld(index) => format!("{} beside a weld", top.supports[index].name),
        Part::Bay if top.supports.iter().all(|support| support.pipe().is_some()) => "bay between pipes".to_owned(),
        Part::Bay => "bay".to_owned(),
        Part::Tip => "tip of an overhang".to_owned(),
        Part::Foot => "under a foot".to_owned(),
        Part::Gear(index) => format!("under {}", top.gear[index].name),
        Part::Fixing { on, number } => format!("fixing {} of {}", number + 1, held(analysis.top, on)),
        Part::Fixings(both) => {
            let [one, other] = both.map(|(on, number)| format!("fixing {} of {}", number + 1, held(analysis.top, on)));
            format!("{one} and {other}")
        }
        Part::Mount(on) => format!("mount of {}", held(analysis.top, on)),
        Part::Hand => "at the edge".to_owned(),
        Part::Whole => whole(analysis.top).to_owned(),
    }
}

/// All that a file describes.
pub(super) const fn whole(top: &Top) -> &'static str {
    match top.scope {
        Scope::Whole => "whole top",
        Scope::Patch => "whole patch",
    }
}

/// What a mount holds, by its name.
pub(super) fn held(top: &Top, on: MountOn) -> &str {
    match on {
        MountOn::Gear(index) => &top.gear[index].name,
        MountOn::Support(index) => &top.supports[index].name,
    }
}

/// A place in one line.
pub(super) fn place(analysis: &Analysis<'_>, place: &Place, system: System) -> String {
    let mut words = part(analysis, place.part);
    if let Some(skin) = place.skin {
        words = match place.part {
            Part::Fixing { .. } => format!("{} at {words}", skin_words(skin)),
            Part::Mount(_) => format!("{} at the {words}", skin_words(skin)),
            Part::Foot | Part::Gear(_) => format!("{} {words}", skin_words(skin)),
            _ => format!("{} of the {words}", skin_words(skin)),
        };
        if let Some(ply) = place.ply {
            let schedule = match ply.skin {
                Skin::Outer => &analysis.top.outer,
                Skin::Inner => &analysis.top.inner,
            };
            if let Some(layer) = schedule.layer_of_ply(ply.ply) {
                words = format!("{} in the {words}", layer.text);
            }
        }
    }
    if let Some(at) = place.at {
        words = format!("{words} at {}", point(at, system));
    }
    if let Some(load_at) = place.load_at {
        words = format!("{words}; load at {}", point(load_at, system));
    }
    words
}

pub(super) const fn skin_words(skin: Skin) -> &'static str {
    match skin {
        Skin::Outer => "outer skin",
        Skin::Inner => "inner skin",
    }
}

/// A name within a sentence: without its capital, unless it begins with a short form.
pub(super) fn within(name: &str) -> String {
    let mut letters = name.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if second.is_lowercase() => first.to_lowercase().chain(letters).collect(),
        _ => name.to_owned(),
    }
}

/// A name at the beginning of a sentence.
pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// The case of an outcome, in words.
pub(super) fn case(analysis: &Analysis<'_>, outcome: &Outcome) -> String {
    outcome.case.map_or_else(|| "at all times".to_owned(), |case| analysis.cases[case].title.clone())
}

pub(super) const fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Measured => "measured",
        Basis::Minimum => "minimum",
        Basis::Characteristic => "characteristic",
        Basis::Typical => "typical",
        Basis::Estimate => "estimate",
    }
}

/// A basis in the width of a column.
pub(super) const fn short_basis(of: Basis) -> &'static str {
    match of {
        Basis::Characteristic => "5 %",
        other => basis(other),
    }
}

/// A state of the material.
pub(super) fn state(state: State) -> String {
    let duration = match state.duration {
        Duration::Instant => "seconds",
        Duration::Short => "minutes to hours",
        Duration::Long => "days to weeks",
        Duration::Permanent => "years",
    };
    if state.hot { format!("{duration}, hot") } else { duration.to_owned() }
}

/// Whether something holds, in one word.
pub(super) fn verdict(outcome: &Outcome) -> (&'static str, Tone) {
    match (&outcome.verdict, outcome.passes()) {
        (Verdict::NotEvaluated(_), _) => ("OPEN", Tone::Open),
        (_, true) => ("pass", Tone::Good),
        (_, false) => ("FAIL", Tone::Bad),
    }
}

/// How far something is used.
pub(super) fn used(outcome: &Outcome) -> String {
    match &outcome.verdict {
        // Something acts and nothing bears it.
        Verdict::Compared(finding) if finding.utilisation.is_infinite() => ">9999 %".to_owned(),
        Verdict::Compared(finding) => percent(finding.utilisation.get::<uom::si::ratio::ratio>()),
        Verdict::NotEvaluated(_) => "—".to_owned(),
    }
}

/// Beyond this a utilisation is as bad as any.
const MOST: f64 = 99.99;

pub(super) fn percent(utilisation: f64) -> String {
    if !utilisation.is_finite() {
        return "not known".to_owned();
    }
    // So many digits say no more.
    if utilisation > MOST {
        return ">9999 %".to_owned();
    }
    let hundredths = utilisation * 100.0;
    // Rounding must not make a failure read as a pass.
    if hundredths > 100.0 && hundredths < 101.0 { format!("{hundredths:.1} %") } else { format!("{hundredths:.0} %") }
}

/// A margin of safety.
pub(super) fn margin(margin: f64) -> String {
    if margin.is_nan() {
        "—".to_owned()
    } else if margin.is_infinite() || margin >= 100.0 {
        "> 99".to_owned()
    } else if margin < 0.0 {
        // Truncated away from zero, so that no failure reads as −0.00.
        format!("−{:.2}", (-margin * 100.0).ceil() / 100.0)
    } else {
        format!("+{:.2}", (margin * 100.0).floor() / 100.0)
    }
}
