//! `[choose.prices]`: what materials cost.

use std::ops::Range;

use toml::{Spanned, de::DeValue};

use super::{
    problem::{Problem, Sink},
    reader::{Given, Room},
};
use crate::{
    choice::{Money, Per, Price, Prices, Unpriced},
    top::{CoreSheet, Schedule, Top},
    units::{self, Area, Mass, Volume},
};

/// What something may be sold by.
#[derive(Clone, Copy, PartialEq, Eq)]
enum By {
    Mass,
    Area,
    Volume,
}

/// Prices of a file, with the place of their header.
pub(super) struct AskedPrices {
    prices: Prices,
    place: Range<usize>,
}

const BY_MASS: (&[By], &str) = (&[By::Mass], "4.20 / kg");
const FABRIC: (&[By], &str) = (&[By::Mass, By::Area], "7.50 / m2");
const SOLID: (&[By], &str) = (&[By::Mass, By::Volume], "1450 / m3");

pub(super) fn read_prices(room: &Room<'_>) -> Option<AskedPrices> {
    let prices = room.room("prices")?;
    let currency = prices.text("currency");
    prices.missing("currency", "\"USD\"");
    let resin = prices.value("resin").and_then(|value| price(&prices, ("resin", value), BY_MASS));
    prices.missing("resin", "\"4.20 / kg\"");
    let fabric = prices.value("fabric").and_then(|value| price(&prices, ("fabric", value), FABRIC));
    let layers = table(&prices, "layers", FABRIC);
    let cores = table(&prices, "cores", SOLID);
    let boards = table(&prices, "boards", SOLID);
    let place = prices.place();
    prices.close();
    let prices = Prices { currency: currency?.value, resin: resin?, fabric, layers, cores, boards };
    Some(AskedPrices { prices, place })
}

/// Prices by name.
fn table(room: &Room<'_>, key: &'static str, (by, example): (&[By], &str)) -> Vec<(String, Price)> {
    let Some(named) = room.room(key) else { return Vec::new() };
    let entries = named.entries();
    entries
        .filter_map(|(name, value)| Some((name.value.clone(), price(&named, (&name.value, value), (by, example))?)))
        .collect()
}

/// A price such as `4.20 / kg` or `4.20 per kg`.
fn price(room: &Room<'_>, (key, value): (&str, &Spanned<DeValue<'_>>), (by, example): (&[By], &str)) -> Option<Price> {
    let read = match value.get_ref() {
        DeValue::String(text) => split(text).and_then(|(money, unit)| per(unit, by).map(|per| Price { money, per })),
        _ => None,
    };
    if read.is_none() {
        room.report(
            Problem::at(value.span(), format!("the price of `{key}` is a number of the currency for so much of it"))
                .help(format!("write for example \"{example}\"{}", others(by))),
        );
    }
    read
}

fn others(by: &[By]) -> &'static str {
    match by {
        [By::Mass, By::Area] => ", or by mass as \"9 / kg\" or \"4 / lb\"",
        [By::Mass, By::Volume] => ", or by mass as \"18 / kg\" or \"8 / lb\"",
        _ => " or \"1.90 / lb\"",
    }
}

/// The money and the unit that it is for.
fn split(text: &str) -> Option<(Money, &str)> {
    let (money, unit) = text.split_once('/').or_else(|| text.split_once(" per "))?;
    let money: f64 = money.trim().parse().ok()?;
    (money.is_finite() && money >= 0.0).then(|| (Money::new(money), unit.trim()))
}

fn per(unit: &str, by: &[By]) -> Option<Per> {
    let one = format!("1 {unit}");
    by.iter().find_map(|by| match by {
        By::Mass => units::parse::<Mass>(&one).ok().map(Per::Mass),
        By::Area => units::parse::<Area>(&one).ok().map(Per::Area),
        By::Volume => units::parse::<Volume>(&one).ok().map(Per::Volume),
    })
}

impl AskedPrices {
    /// The prices, where all that may be chosen has one; what has none is reported.
    pub(super) fn prices(
        self,
        tops: &[&Top],
        cores: &[CoreSheet],
        skins: [&[Schedule]; 2],
        sink: &Sink,
    ) -> Option<Prices> {
        let Self { prices, place } = self;
        let Some(first) = tops.first() else { return Some(prices) };
        let [outer, inner] = skins;
        let with_core = cores.iter().map(|core| Top { core: core.clone(), ..(*first).clone() });
        let with_outer = outer.iter().map(|outer| Top { outer: outer.clone(), ..(*first).clone() });
        let with_inner = inner.iter().map(|inner| Top { inner: inner.clone(), ..(*first).clone() });
        let all = tops.iter().map(|top| (*top).clone()).chain(with_core).chain(with_outer).chain(with_inner);
        let mut missing: Vec<Unpriced> = Vec::new();
        for unpriced in all.filter_map(|top| prices.missing(&top)) {
            if !missing.contains(&unpriced) {
                missing.push(unpriced);
            }
        }
        for unpriced in &missing {
            let (message, help) = match unpriced {
                Unpriced::Layer(text) => (
                    format!("there is no price of \"{text}\", which may be chosen"),
                    "give `fabric = \"9 / kg\"` for all fabrics, or a price of its own in `layers`".to_owned(),
                ),
                Unpriced::Core(id) => (
                    format!("there is no price of `{id}`, which may be chosen"),
                    format!("give `cores = {{ \"{id}\" = \"1450 / m3\" }}`, or leave it out of `cores` of `[choose]`"),
                ),
                Unpriced::Board(id) => (
                    format!("there is no price of the board `{id}`, which the top has"),
                    format!("give `boards = {{ \"{id}\" = \"1450 / m3\" }}`"),
                ),
            };
            sink.report(Problem::at(place.clone(), message).help(help));
        }
        missing.is_empty().then_some(prices)
    }
}

/// Money that a file allows at most: a plain number, in the currency of its prices.
pub(super) fn read_most_cost(room: &Room<'_>) -> Option<Given<Money>> {
    let value = room.value("most_cost")?;
    let text = match value.get_ref() {
        DeValue::Integer(digits) => super::reader::decimal(digits),
        DeValue::Float(number) => number.to_string(),
        _ => String::new(),
    };
    let money = text.parse::<f64>().ok().filter(|money| money.is_finite() && *money > 0.0);
    if money.is_none() {
        room.report(
            Problem::at(value.span(), "`most_cost` is a number of the currency of `[choose.prices]`, more than none")
                .help("write for example `most_cost = 800`"),
        );
    }
    Some(Given { value: Money::new(money?), text, range: value.span() })
}
