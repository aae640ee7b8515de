//! `[choose]`: what one may lay up in place of what `[top]` has.

use std::ops::Range;

use toml::de::DeValue;

use super::{
    arrangement::{AskedArranging, read_arranging},
    layer::Layup,
    outline::within_panel,
    price::{AskedPrices, read_most_cost, read_prices},
    problem::{Problem, Sink},
    reader::{Given, Room},
    skin::read_skin,
    top::cores,
    unknown_name,
    usual::usual,
};
use crate::{
    choice::{Limits, MOST_CANDIDATES, Money, Order, Space},
    material::{CoreFamily, MaterialTable},
    top::{Outline, Schedule, Scope, Top},
    units::{self, Length, Mass, MassDensity, Sign},
};

/// A skin as one could write it.
const SKINS: &str = "[[\"mat 1.5 oz/ft2\", \"biaxial 600 g/m2 @ 45 deg\"], [\"biaxial 900 g/m2 @ 45 deg\"]]";

/// What a file asks to choose from; where it names nothing, all that there is.
pub(super) struct Asked<'t> {
    /// The place of its header; none where it has none.
    place: Option<Range<usize>>,
    families: Vec<&'t CoreFamily>,
    densities: Option<Vec<MassDensity>>,
    thicknesses: Option<Vec<Length>>,
    outer: Option<Vec<Schedule>>,
    inner: Option<Vec<Schedule>>,
    order: Order,
    most_thickness: Option<Given<Length>>,
    most_weight: Option<Given<Mass>>,
    most_cost: Option<Given<Money>>,
    arranging: AskedArranging,
    prices: Option<AskedPrices>,
}

pub(super) fn read_asked<'t>(
    root: &Room<'_>,
    table: &'t MaterialTable,
    scope: Scope,
    (layup, outline): (Option<&Layup<'_>>, Option<&Outline>),
) -> Asked<'t> {
    let mut asked = Asked {
        place: None,
        families: table.cores().iter().collect(),
        densities: None,
        thicknesses: None,
        outer: None,
        inner: None,
        order: Order::default(),
        most_thickness: None,
        most_weight: None,
        most_cost: None,
        arranging: AskedArranging::default(),
        prices: None,
    };
    let Some(room) = root.room("choose") else { return asked };
    if scope == Scope::Patch {
        root.report(nothing_to_choose(room.place()));
        return asked;
    }
    let named = read_families(&room, table);
    let densities = read_list::<MassDensity>(&room, "densities", "\"5 lb/ft3\", \"80 kg/m3\"");
    if let Some(families) = named.unwrap_or_else(|| Some(asked.families.clone())) {
        for density in densities.iter().flatten() {
            report_unknown(&room, density, &families);
        }
        asked.families = families;
    }
    asked.densities = densities.map(|given| once(given.into_iter().map(|given| given.value)));
    let thicknesses = read_list::<Length>(&room, "thicknesses", "\"3/4 in\", \"1 in\"");
    asked.thicknesses = thicknesses.map(|given| {
        let within = given
            .into_iter()
            .filter_map(|given| within_panel(&room, usual(&room, "thicknesses", Some(given), cores()), outline));
        once(within.map(|given| given.value))
    });
    [asked.outer, asked.inner] = ["outer", "inner"].map(|side| read_skins(&room, side, layup));
    asked.arranging = read_arranging(&room, table);
    asked.prices = read_prices(&room, table);
    let orders =
        [("weight", Order::Weight), ("thickness", Order::Thickness), ("sag", Order::Sag), ("cost", Order::Cost)];
    let order = room.choice("order", &orders);
    asked.most_cost = read_most_cost(&room);
    let by_cost = order.as_ref().filter(|order| order.value == Order::Cost).map(|order| order.range.clone());
    for place in by_cost.into_iter().chain(asked.most_cost.as_ref().map(|most| most.range.clone())) {
        if room.value("prices").is_none() {
            room.report(
                Problem::at(place, "what a top costs is not known: the file has no prices").help(
                    "add `[choose.prices]` with `currency`, `resin`, `fabric`, `cores` and, for backing, `boards`",
                ),
            );
        }
    }
    asked.order = order.map(|given| given.value).unwrap_or_default();
    asked.most_thickness = room.quantity("most_thickness", Sign::Positive);
    asked.most_weight = room.quantity("most_weight", Sign::Positive);
    asked.place = Some(room.place());
    room.close();
    asked
}

/// The families that are named; none where the file names none, and none within where it names what there is not.
#[allow(clippy::option_option, reason = "families, none, or some that cannot be read")]
fn read_families<'t>(room: &Room<'_>, table: &'t MaterialTable) -> Option<Option<Vec<&'t CoreFamily>>> {
    report_empty(room, "cores", "name one, `cores = [\"pvc-foam\"]`, or leave `cores` out for all that the table has");
    let given = room.texts("cores")?;
    let known = given.into_iter().map(|given| {
        let given = given?;
        table.core(&given.value).map_err(|name| unknown_name(room, &given, &name)).ok()
    });
    let known: Vec<Option<&CoreFamily>> = known.collect();
    Some(known.into_iter().collect::<Option<Vec<_>>>().map(|known| once(known.into_iter())))
}

fn read_list<Q: units::Dimensioned>(room: &Room<'_>, key: &'static str, example: &str) -> Option<Vec<Given<Q>>> {
    report_empty(room, key, &format!("write for example `{key} = [{example}]`, or leave `{key}` out for what is sold"));
    room.quantities(key, Sign::Positive)
}

/// Reports a density that none of the families comes in.
fn report_unknown(room: &Room<'_>, density: &Given<MassDensity>, families: &[&CoreFamily]) {
    if families.iter().any(|family| family.at(density.value).is_ok()) {
        return;
    }
    let known = families.iter().filter_map(|family| {
        let (low, high) = family.density_range()?;
        (low <= high).then(|| format!("{} from {} to {}", family.id, room.both(low), room.both(high)))
    });
    let known = known.collect::<Vec<_>>().join(", ");
    let message = format!("no core that may be chosen comes in {}", room.both(density.value));
    room.report(Problem::at(density.range.clone(), message).help(format!("the material table knows {known}")));
}

fn read_skins(room: &Room<'_>, side: &'static str, layup: Option<&Layup<'_>>) -> Option<Vec<Schedule>> {
    report_empty(
        room,
        side,
        &format!(
            "write for example `{side} = {SKINS}`, or leave `{side}` out for the {side} skin of `[top]` with fewer and more \
             layers"
        ),
    );
    let given = room.lists_of_texts(side, SKINS)?;
    let layup = layup?;
    let skins = given.into_iter().filter_map(|skin| read_skin(room, (side, skin.range), &skin.value, layup));
    Some(once(skins))
}

fn report_empty(room: &Room<'_>, key: &'static str, help: &str) {
    if let Some(value) = room.value(key)
        && let DeValue::Array(items) = value.get_ref()
        && items.is_empty()
    {
        let message = format!("`{key}` is empty: there is nothing to choose from");
        room.report(Problem::at(value.span(), message).help(help));
    }
}

/// What is written twice counts once.
fn once<T: PartialEq>(all: impl Iterator<Item = T>) -> Vec<T> {
    let mut known = Vec::new();
    for one in all {
        if !known.contains(&one) {
            known.push(one);
        }
    }
    known
}

fn nothing_to_choose(place: Range<usize>) -> Problem {
    Problem::at(
        place,
        "a patch has nothing to choose: the top round it, which core and skins carry, is not in the file",
    )
    .help("describe the whole top in `[top]`, with what it stands on; `skinspan check` looks at a patch as it is")
}

impl Asked<'_> {
    /// Whether the file asks for something.
    pub(super) const fn is_written(&self) -> bool {
        self.place.is_some()
    }

    /// The space of a top without fault; none where there is nothing to choose from, or too much, which is reported.
    pub(super) fn space(self, top: &Top, sink: &Sink) -> Option<Space> {
        let place = self.place.clone().unwrap_or(0..0);
        if top.scope == Scope::Patch {
            sink.report(nothing_to_choose(place));
            return None;
        }
        let cores = Space::sheets(top, self.families, self.thicknesses.as_deref(), self.densities.as_deref());
        let given = [with_own(self.outer, &top.outer), with_own(self.inner, &top.inner)];
        let own = [&top.outer, &top.inner];
        let ways = [0, 1].map(|side| given[side].as_ref().map_or_else(|| Space::ways(own[side]), Vec::len));
        let arrangements = self.arranging.arrangements(top, &place, sink)?;
        let candidates = cores.len().saturating_mul(ways[0]).saturating_mul(ways[1]).saturating_mul(arrangements.len());
        if candidates > MOST_CANDIDATES {
            sink.report(too_many(candidates, (cores.len(), ways, arrangements.len()), place, self.place.is_some()));
            return None;
        }
        let [outer, inner] = given;
        let limits = Limits {
            thickness: self.most_thickness.as_ref().map(|given| given.value),
            mass: self.most_weight.as_ref().map(|given| given.value),
            cost: self.most_cost.as_ref().map(|given| given.value),
        };
        let outer = outer.unwrap_or_else(|| Space::skins(&top.outer));
        let inner = inner.unwrap_or_else(|| Space::skins(&top.inner));
        let prices = match self.prices {
            None => None,
            Some(prices) => {
                let tops: Vec<&Top> = arrangements.iter().map(|known| &known.top).collect();
                Some(prices.prices(&tops, &cores, [&outer, &inner], sink)?)
            }
        };
        let space = Space { arrangements, cores, outer, inner, prices, limits, order: self.order };
        let (mass, thickness, cost) = space.least();
        let thick = self.most_thickness.filter(|most| thickness > most.value);
        let thick = thick.map(|most| out_of_reach(["thin", "thinnest", "thinner"], &most, thickness, sink));
        let heavy = self.most_weight.filter(|most| mass > most.value);
        let heavy = heavy.map(|most| out_of_reach(["light", "lightest", "lighter"], &most, mass, sink));
        let dear = self.most_cost.zip(cost).filter(|(most, cost)| *cost > most.value);
        let dear =
            dear.zip(space.prices.as_ref()).map(|((most, cost), prices)| too_dear(&most, cost, &prices.currency));
        let faults: Vec<Problem> = thick.into_iter().chain(heavy).chain(dear).collect();
        if faults.is_empty() {
            return Some(space);
        }
        for fault in faults {
            sink.report(fault);
        }
        None
    }
}

/// The skins that are named, that of the file among them.
fn with_own(named: Option<Vec<Schedule>>, own: &Schedule) -> Option<Vec<Schedule>> {
    let named = named?;
    let first = if named.contains(own) { None } else { Some(own.clone()) };
    Some(first.into_iter().chain(named).collect())
}

fn too_many(
    candidates: usize,
    (cores, [outer, inner], arrangements): (usize, [usize; 2], usize),
    place: Range<usize>,
    written: bool,
) -> Problem {
    let message =
        format!("there are {candidates} combinations to choose from: at most {MOST_CANDIDATES} are looked at");
    let name = if written { "name fewer in `[choose]`" } else { "add `[choose]` and name fewer in it" };
    let arranged =
        if arrangements == 1 { String::new() } else { format!(" × {arrangements} ways of pipes and backing") };
    Problem::at(place, message).help(format!(
        "they are {cores} cores in their densities and thicknesses × {outer} outer skins × {inner} inner skins{arranged}; {name}: \
         `cores = [\"pvc-foam\"]`, `densities`, `thicknesses`, or the skins themselves in `outer` and `inner`"
    ))
}

/// A limit of cost that nothing keeps.
fn too_dear(most: &Given<Money>, least: Money, currency: &str) -> Problem {
    let message = format!("nothing that may be chosen costs as little as {} {currency}", most.text);
    Problem::at(most.range.clone(), message).help(format!(
        "the cheapest of all costs {:.2} {currency}: allow more, or offer a cheaper core and skins",
        least.amount()
    ))
}

/// A limit that nothing keeps.
fn out_of_reach<Q: units::Dimensioned>(
    [thin, thinnest, thinner]: [&str; 3],
    most: &Given<Q>,
    least: Q,
    sink: &Sink,
) -> Problem {
    let both = |quantity| units::both(quantity, sink.units());
    let message = format!("nothing that may be chosen is as {thin} as {}", both(most.value));
    Problem::at(most.range.clone(), message)
        .help(format!("the {thinnest} of all is {}: allow more, or offer a {thinner} core and skins", both(least)))
}
