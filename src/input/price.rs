//! `[choose.prices]`: what materials cost.

use std::ops::Range;

use toml::{Spanned, de::DeValue};

use super::{
    problem::{Problem, Sink, nearest},
    reader::{Given, Room},
    unknown_name,
};
use crate::{
    choice::{Money, Per, Price, Prices, Unpriced},
    material::MaterialTable,
    top::{CoreSheet, Schedule, Top},
    units::{self, Area, Length, Mass, Volume},
};

/// More than anything costs: sums of it are still numbers. Our choice.
const MOST: f64 = 1e9;

/// What something may be sold by.
#[derive(Clone, Copy, PartialEq, Eq)]
enum By {
    Mass,
    Area,
    Volume,
    Length,
}

/// Prices of a file, with the place of their header.
pub(super) struct AskedPrices {
    prices: Prices,
    place: Range<usize>,
    /// Layers that have a price of their own.
    written: Vec<Given<String>>,
}

const BY_MASS: (&[By], &str) = (&[By::Mass], "4.20 / kg");
const FABRIC: (&[By], &str) = (&[By::Mass, By::Area], "7.50 / m2");
const PIPE: (&[By], &str) = (&[By::Length], "30 / m");
const SOLID: (&[By], &str) = (&[By::Mass, By::Volume], "1450 / m3");

pub(super) fn read_prices(room: &Room<'_>, table: &MaterialTable) -> Option<AskedPrices> {
    let prices = room.room("prices")?;
    let currency = prices.text("currency");
    prices.missing("currency", "\"USD\"");
    let resin = prices.value("resin").and_then(|value| price(&prices, ("resin", value), BY_MASS));
    prices.missing("resin", "\"4.20 / kg\"");
    let fabric = prices.value("fabric").and_then(|value| price(&prices, ("fabric", value), FABRIC));
    let pipe = prices.value("pipe").and_then(|value| price(&prices, ("pipe", value), PIPE));
    let layers = named(&prices, "layers", FABRIC, &|_, _| {});
    let cores = named(&prices, "cores", SOLID, &|room, name| {
        if let Err(unknown) = table.core(&name.value) {
            unknown_name(room, name, &unknown);
        }
    });
    let boards = named(&prices, "boards", SOLID, &|room, name| {
        if let Err(unknown) = table.board(&name.value) {
            unknown_name(room, name, &unknown);
        }
    });
    let written = layers.iter().map(|(name, _)| name.clone()).collect();
    let [layers, cores, boards] = [layers, cores, boards]
        .map(|all| all.into_iter().map(|(name, price)| (name.value, price)).collect::<Vec<(String, Price)>>());
    let place = prices.place();
    prices.close();
    let prices = Prices { currency: currency?.value, resin: resin?, fabric, layers, cores, boards, pipe };
    Some(AskedPrices { prices, place, written })
}

/// Prices by name, each name looked at first.
fn named(
    room: &Room<'_>,
    key: &'static str,
    (by, example): (&[By], &str),
    look: &dyn Fn(&Room<'_>, &Given<String>),
) -> Vec<(Given<String>, Price)> {
    let Some(named) = room.room(key) else { return Vec::new() };
    let priced = named.entries().filter_map(|(name, value)| {
        look(&named, &name);
        let price = price(&named, (&name.value, value), (by, example))?;
        Some((name, price))
    });
    priced.collect()
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
        [By::Length] => " or \"9.00 / ft\"",
        _ => " or \"1.90 / lb\"",
    }
}

/// The money and the unit that it is for.
fn split(text: &str) -> Option<(Money, &str)> {
    let (money, unit) = text.split_once('/').or_else(|| text.split_once(" per "))?;
    let money: f64 = money.trim().parse().ok()?;
    (0.0..=MOST).contains(&money).then(|| (Money::new(money), unit.trim()))
}

fn per(unit: &str, by: &[By]) -> Option<Per> {
    let one = format!("1 {unit}");
    by.iter().find_map(|by| match by {
        By::Mass => units::parse::<Mass>(&one).ok().map(Per::Mass),
        By::Area => units::parse::<Area>(&one).ok().map(Per::Area),
        By::Volume => units::parse::<Volume>(&one).ok().map(Per::Volume),
        By::Length => units::parse::<Length>(&one).ok().map(Per::Length),
    })
}

impl AskedPrices {
    /// The prices, where all that may be chosen has one; what has none is reported.
    /// Reports layers with a price that nothing which may be chosen has.
    fn report_idle(written: &[Given<String>], skins: [&[Schedule]; 2], sink: &Sink) -> bool {
        let layers = skins.into_iter().flatten().flat_map(Schedule::layers);
        let known: Vec<&str> = layers.map(|layer| layer.text.as_str()).collect();
        let idle: Vec<&Given<String>> = written.iter().filter(|name| !known.contains(&name.value.as_str())).collect();
        for name in &idle {
            let problem =
                Problem::at(name.range.clone(), format!("no layer that may be chosen reads \"{}\"", name.value));
            sink.report(match nearest(&name.value, known.iter().copied()) {
                Some(meant) => problem.help(format!("did you mean \"{meant}\"?")),
                None => problem.help("write it as `outer` and `inner` do, or leave it out"),
            });
        }
        idle.is_empty()
    }

    pub(super) fn prices(
        self,
        tops: &[&Top],
        cores: &[CoreSheet],
        skins: [&[Schedule]; 2],
        sink: &Sink,
    ) -> Option<Prices> {
        let Self { prices, place, written } = self;
        if !Self::report_idle(&written, skins, sink) {
            return None;
        }
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
                Unpriced::Core(id) if !cores.iter().any(|core| core.family.id == *id) => (
                    format!("there is no price of `{id}`, which the top has"),
                    format!("give `cores = {{ \"{id}\" = \"1450 / m3\" }}`"),
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
