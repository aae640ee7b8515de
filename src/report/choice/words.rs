//! Words and units that all forms of the answer share.

use uom::si::ratio::ratio;

use super::super::words;
use crate::{
    check::{CHECKS, Outcome, Verdict},
    choice::{Found, Measures, Open, Order, Space},
    top::Schedule,
    units::{Dimensioned, Ratio, System, show_in},
};

/// The one unit of each column, whatever its values are.
pub(super) struct Units {
    pub(super) length: &'static str,
    pub(super) mass: &'static str,
    pub(super) areal: &'static str,
    pub(super) density: &'static str,
}

pub(super) const fn units(system: System) -> Units {
    match system {
        System::Us => Units { length: "in", mass: "lb", areal: "lb/ft2", density: "lb/ft3" },
        System::Si => Units { length: "mm", mass: "kg", areal: "kg/m2", density: "kg/m3" },
    }
}

/// The value in a unit that a column has.
pub(in crate::report) fn in_unit<Q: Dimensioned>(value: Q, unit: &str) -> f64 {
    Q::ENTRY.unit(unit).map_or(f64::NAN, |unit| unit.of_si(value.si()))
}

/// A unit of a column as it is printed.
pub(super) fn symbol<Q: Dimensioned>(unit: &'static str) -> &'static str {
    Q::ENTRY.unit(unit).map_or(unit, |unit| unit.symbol)
}

/// The value in a unit that a column has, without its symbol.
pub(super) fn bare<Q: Dimensioned>(value: Q, unit: &str, decimals: usize) -> String {
    let shown = show_in(value, unit, decimals);
    shown.split(' ').next().unwrap_or_default().to_owned()
}

/// The layers that carry, outside first: as the file writes them, and how often one follows upon itself.
pub(super) fn runs(skin: &Schedule) -> Vec<(&str, usize)> {
    let mut runs: Vec<(&str, usize)> = Vec::new();
    for layer in skin.layers().iter().filter(|layer| layer.carries()) {
        match runs.last_mut() {
            Some((text, times)) if *text == layer.text => *times += 1,
            _ => runs.push((&layer.text, 1)),
        }
    }
    runs
}

/// A skin in one line.
pub(super) fn skin(skin: &Schedule) -> String {
    let run = |(text, times): (&str, usize)| if times == 1 { text.to_owned() } else { format!("{times} × {text}") };
    runs(skin).into_iter().map(run).collect::<Vec<_>>().join(" + ")
}

pub(super) const fn order(order: Order) -> &'static str {
    match order {
        Order::Weight => "weight",
        Order::Thickness => "thickness",
        Order::Sag => "sag",
        Order::Cost => "cost",
    }
}

/// What those found do not beat one another in.
pub(super) const fn measures(space: &Space) -> &'static str {
    match (space.prices.is_some(), space.order.measures()) {
        (true, Measures::Sizes) => "weight, thickness and cost",
        (false, Measures::Sizes) => "weight and thickness",
        (true, Measures::SizesAndSag) => "weight, thickness, cost and sag",
        (false, Measures::SizesAndSag) => "weight, thickness and sag",
    }
}

/// Not beaten in any measure.
pub(super) const fn as_good(space: &Space) -> &'static str {
    match (space.prices.is_some(), space.order.measures()) {
        (true, Measures::Sizes) => "as light, as thin and as cheap",
        (false, Measures::Sizes) => "as light and as thin",
        (true, Measures::SizesAndSag) => {
            "as light, as thin and as cheap, and sags no more, or by hand at most a quarter more"
        }
        (false, Measures::SizesAndSag) => "as light and as thin, and sags no more, or by hand at most a quarter more",
    }
}

/// Names of checks that could not be made.
pub(super) fn checks(open: &[Open]) -> Vec<String> {
    let name = |open: &Open| match open {
        Open::Check { check, .. } => Some(format!("the {}", CHECKS[*check].title())),
        Open::Case { .. } => None,
    };
    open.iter().filter_map(name).collect()
}

/// Title, used and margin of what governs.
pub(super) fn governing(found: &Found) -> [String; 3] {
    let none = || "—".to_owned();
    found.governs.as_ref().map_or_else(
        || ["nothing could be checked".to_owned(), none(), none()],
        |worst| {
            let left = margin_of(worst).map_or_else(none, |left| words::margin(left.get::<ratio>()));
            [CHECKS[worst.check].title().to_owned(), words::used(worst), left]
        },
    )
}

/// The margin of a comparison.
pub(super) fn margin_of(outcome: &Outcome) -> Option<Ratio> {
    match &outcome.verdict {
        Verdict::Compared(finding) => Some(finding.margin()),
        Verdict::NotEvaluated(_) => None,
    }
}

/// The margin that a utilisation leaves; none where that is not known.
pub(super) fn left_by(utilisation: Ratio) -> Option<Ratio> {
    utilisation.is_finite().then(|| 1.0 / utilisation - Ratio::from(1.0))
}

/// A margin, where there is one.
pub(super) fn margin(of: Option<Ratio>) -> String {
    of.map_or_else(|| "—".to_owned(), |left| words::margin(left.get::<ratio>()))
}

/// Whether it holds, in the words of `check`.
pub(super) fn holds(found: &Found) -> &'static str {
    match &found.governs {
        _ if found.holds => "holds",
        Some(worst) if worst.passes() && !found.fails.is_empty() => "holds but for what fails whatever is laid up",
        Some(worst) if worst.passes() => "holds by all checks that can be made here",
        Some(worst) if worst.utilisation().is_some() => "does not hold",
        _ => "is not shown to hold",
    }
}
