//! Maps over the real top: sag, core shear and plies under the loads that govern by the plate method.

use maud::{Markup, html};
use uom::si::{length::meter, ratio::percent};

use super::drawn_map::{Map, drawn};
use crate::{
    analysis::{AllOver, Analysis, LookedAt, Region, Spread},
    check::{CHECKS, Method, Outcome, PliesUsed, core_shear_used},
    finite_element::State,
    report::{Report, words},
    units::{Dimensioned, Length, Ratio, System, usual_unit},
};

/// What a map shows of a state; the worst of all ways in which loads act together is that for which it is largest.
type Size<'s> = &'s dyn Fn(usize, Region, &State) -> Ratio;

pub(super) fn maps(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    if !matches!(&analysis.whole, Some(Ok(_))) {
        return html! { p { "There is no plate solution to draw maps of: see part 8." } };
    }
    let plies = PliesUsed::new(analysis);
    let sag = |_: usize, _: Region, state: &State| Ratio::from(state.deflection.get::<meter>().abs());
    let shear =
        |case: usize, region: Region, state: &State| core_shear_used(analysis, case, region, state).unwrap_or_default();
    let ply = |case: usize, region: Region, state: &State| plies.most(case, region, state).unwrap_or_default();
    let system = report.top.report;
    html! {
        p class="note" {
            "By the plate method, each under the load that is worst for it there. Lines are drawn where a value is round and bear it; between "
            "two the tint is even. Values at a place are those of the whole load at once, people and all."
        }
        (one(report, analysis, ("sag", &["sag", "tip-sag"]), &sag, &|_, all| sags(all, system)))
        (one(report, analysis, ("core-shear", &["core-shear"]), &shear, &|case, all| used(all, case, &shear)))
        (one(report, analysis, ("ply-failure", &["ply-failure"]), &ply, &|case, all| used(all, case, &ply)))
    }
}

/// A spread in the numbers that are printed, with their unit.
pub(super) struct Printed {
    pub(super) spread: Spread<Ratio>,
    pub(super) unit: &'static str,
}

fn one(
    report: &Report<'_>,
    analysis: &Analysis<'_>,
    (name, checks): (&'static str, &[&str]),
    size: Size<'_>,
    printed: &dyn Fn(usize, &AllOver) -> Printed,
) -> Markup {
    let of_check = |outcome: &&Outcome| checks.contains(&CHECKS[outcome.check].id()) && outcome.method == Method::Plate;
    let Some(outcome) = report.envelope.iter().find(of_check) else { return Markup::default() };
    let (Some(case), Some(at)) = (outcome.case, outcome.place.at) else { return Markup::default() };
    let looked = LookedAt { case, load_at: outcome.place.load_at, at, at_rest: name == "sag" };
    let all = match analysis.all_over(looked, &|region, state| size(case, region, state)) {
        Ok(all) => all,
        Err(reason) => return html! { p { "There is no map of " (CHECKS[outcome.check].title()) ": " (reason) "." } },
    };
    let shown = printed(case, &all);
    let counted =
        outcome.utilisation().unwrap_or_default() / (Ratio::from(1.0) + outcome.numerical_error().unwrap_or_default());
    let title = match name {
        "sag" => format!("Sag ({})", shown.unit),
        "core-shear" => "Core shear, used in %".to_owned(),
        _ => "Plies of both skins, used in %".to_owned(),
    };
    let load = looked
        .load_at
        .map_or_else(String::new, |load| format!("; the load at {}", words::point(load, report.top.report)));
    let caption = format!(
        "{}: {}{load}. {}",
        words::capital(CHECKS[outcome.check].title()),
        words::case(analysis, outcome),
        note(name)
    );
    drawn(&Map {
        top: report.top,
        id: name,
        title: &title,
        caption: &caption,
        shown: &shown,
        // Beyond it lie only peaks that the check does not take as they are.
        most: (name == "core-shear").then(|| counted.get::<percent>()),
        load_at: looked.load_at,
    })
}

fn note(name: &str) -> &'static str {
    match name {
        "sag" => "Against the frame at rest, down positive; people at rest; broken lines: upwards.",
        "core-shear" => {
            "All of it is 100 %, the factor in it, without the numerical error. At ends of pipes and corners of backing the theory has \
             sharp peaks, of which the check takes the mean over a disc; beside feet punching rules: the topmost tint means that and more."
        }
        _ => {
            "The ply that is used most at each place; all of it is 100 %, the factor in it, without the numerical error."
        }
    }
}

fn sags(all: &AllOver, system: System) -> Printed {
    let spread = all.spread(|spot| spot.state.deflection);
    let most = spread.values.iter().copied().map(Length::abs).fold(Length::default(), Length::max);
    let unit = usual_unit(most, system);
    let values = spread.values.iter().map(|sag| Ratio::from(unit.map_or(sag.si(), |unit| unit.of_si(sag.si()))));
    Printed {
        spread: Spread { values: values.collect(), places: spread.places, triangles: spread.triangles },
        unit: unit.map_or("m", |unit| unit.symbol),
    }
}

fn used(all: &AllOver, case: usize, size: Size<'_>) -> Printed {
    let spread = all.spread(|spot| Ratio::from(size(case, spot.region, &spot.state).get::<percent>()));
    Printed { spread, unit: "%" }
}
