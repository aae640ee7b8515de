//! Maps over the real top: the most that all loads do at every place, by the plate method.

use maud::{Markup, html};
use uom::si::ratio::percent;

use super::drawn_map::{Map, drawn};
use crate::{
    analysis::{AllOver, Analysis, Region, Spread},
    check::{CHECKS, Method, Outcome, PliesUsed, core_shear_used},
    finite_element::State,
    report::{Report, words},
    section::FaceStrains,
    units::{Dimensioned, Length, Ratio, System, usual_unit},
};

/// What a map shows of a state.
type Size<'s> = &'s (dyn Fn(usize, Region, &State) -> Ratio + Sync);

pub(super) fn maps(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    if !matches!(&analysis.whole, Some(Ok(_))) {
        return html! { p { "There is no plate solution to draw maps of: see part 9." } };
    }
    let all = match analysis.all_over() {
        Ok(all) => all,
        Err(reason) => return html! { p { "There are no maps: " (reason) "." } },
    };
    let plies = PliesUsed::new(analysis);
    let faces: Vec<(Region, FaceStrains)> =
        plies.regions().map(|region| (region, analysis.sections.of(region).section.face_strains())).collect();
    let strain = |_: usize, region: Region, state: &State| {
        let own = faces.iter().find(|(own, _)| *own == region);
        own.map_or_else(Ratio::default, |(_, faces)| faces.largest(&state.resultants))
    };
    let shear =
        |case: usize, region: Region, state: &State| core_shear_used(analysis, case, region, state).unwrap_or_default();
    let ply = |case: usize, region: Region, state: &State| plies.most(case, region, state).unwrap_or_default();
    let maps = Maps { report, analysis, all: &all };
    html! {
        p class="note" {
            "By the plate method: at every place the most that any load case does there, people and hands tried everywhere, so that no two "
            "places need have it at once. Lines are drawn where a value is round and bear it; between two the tint is even. The numerical "
            "error that is said below each is the difference to a solution of the next degree; it is not in the values, and the checks add it."
        }
        (maps.sag())
        (maps.one("core-shear", "Core shear, used in %", &shear))
        (maps.one("ply-failure", "Plies of both skins, used in %", &ply))
        (maps.one("strain", "Strain of the skins in %", &strain))
    }
}

/// A spread in the numbers that are printed, with their unit.
pub(super) struct Printed {
    pub(super) spread: Spread,
    pub(super) unit: &'static str,
}

struct Maps<'a> {
    report: &'a Report<'a>,
    analysis: &'a Analysis<'a>,
    all: &'a AllOver,
}

impl Maps<'_> {
    fn sag(&self) -> Markup {
        let shown = printed(self.all.sag(), self.report.top.report);
        let Some(peak) = shown.spread.largest() else { return Markup::default() };
        let case = shown.spread.cases[peak];
        let error = self.error(case, |forces| forces.error.sag);
        let title = format!("Sag ({})", shown.unit);
        let caption = format!(
            "Against the frame at rest, the larger of down and up; people at rest. {}{}",
            self.largest(case),
            said_error(error)
        );
        drawn(&Map { top: self.report.top, id: "sag", title: &title, caption: &caption, shown: &shown, most: None })
    }

    /// What is used, or how far it is strained.
    fn one(&self, name: &'static str, title: &str, size: Size<'_>) -> Markup {
        let spread = self.all.spread(size);
        let mut spread = if name == "core-shear" { spread.smoothed() } else { spread };
        spread.values.iter_mut().for_each(|value| *value = Ratio::from(*value).get::<percent>());
        let shown = Printed { spread, unit: "%" };
        let Some(peak) = shown.spread.largest() else { return Markup::default() };
        let case = shown.spread.cases[peak];
        let own = self.outcome(name);
        let (error, most, largest) = match own {
            Some(outcome) => {
                let error = outcome.numerical_error().unwrap_or_default();
                let counted = outcome.utilisation().unwrap_or_default() / (Ratio::from(1.0) + error);
                let governs =
                    format!("{} governs it in the checks. ", words::capital(&words::case(self.analysis, outcome)));
                // Beyond it lie only peaks that the check does not take as they are.
                (error, (name == "core-shear").then(|| counted.get::<percent>()), governs)
            }
            None => (self.error(case, |forces| forces.error.moment), None, self.largest(case)),
        };
        let caption = format!("{} {largest}{}", note(name), said_error(error));
        drawn(&Map { top: self.report.top, id: name, title, caption: &caption, shown: &shown, most })
    }

    /// What the plate method says of a check.
    fn outcome(&self, check: &str) -> Option<&Outcome> {
        let own = |outcome: &&Outcome| CHECKS[outcome.check].id() == check && outcome.method == Method::Plate;
        self.report.envelope.iter().find(own)
    }

    fn largest(&self, case: usize) -> String {
        format!("The largest is that of {}. ", self.analysis.cases[case].title)
    }

    fn error(&self, case: usize, of: fn(&crate::analysis::PlateForces) -> Ratio) -> Ratio {
        self.analysis.fields().find(|forces| forces.case == case).map(of).unwrap_or_default()
    }
}

fn said_error(error: Ratio) -> String {
    format!("Numerical error {:.1} %.", error.get::<percent>())
}

fn note(name: &str) -> &'static str {
    match name {
        "core-shear" => {
            "All of it is 100 %, the factor in it; each value the mean over a triangle or so. At ends of pipes and corners of backing the theory has sharp peaks, of which the check \
             takes the mean over a disc; beside feet and footings punching rules: the topmost tint means that and more."
        }
        "ply-failure" => "The ply that is used most at each place; all of it is 100 %, the factor in it.",
        _ => {
            "The largest at any face of either skin in any direction, so that no ply is strained more along its fibres; without what heat \
             lengthens freely, and without a skin's own bending beside loads and seats. The checks judge plies by stress, which the map above shows."
        }
    }
}

fn printed(sag: Spread, system: System) -> Printed {
    let most = sag.values.iter().copied().fold(0.0, f64::max);
    let unit = usual_unit(Length::from_si(most), system);
    let values = sag.values.iter().map(|sag| unit.map_or(*sag, |unit| unit.of_si(*sag))).collect();
    Printed { spread: Spread { values, ..sag }, unit: unit.map_or("m", |unit| unit.symbol) }
}
