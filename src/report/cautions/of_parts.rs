//! Cautions about parts that do each other harm, or are there twice.

use super::super::words::point;
use crate::{
    geometry::Band,
    material::MaterialTable,
    section::Skin,
    top::{Backing, Schedule, Top},
    units::{Length, show},
};

/// From this share of its length on a backing lies on another, and does not merely meet or cross it.
const ON: f64 = 0.5;

/// Places along a backing at which this is looked for.
const PLACES: u32 = 32;

/// So many diameters wide a seat on a pipe is a flange of its own.
const WIDE: f64 = 3.0;

/// Metals that lie on carbon, with what the table says of the couple.
pub(super) fn carbon(top: &Top, table: &MaterialTable) -> Vec<String> {
    let has_carbon = |schedule: &Schedule| schedule.layers().iter().any(|layer| layer.carbon);
    let mut metals: Vec<(&str, Vec<&str>)> = Vec::new();
    let mut add = |family: &'static str, name| match metals.iter_mut().find(|(known, _)| *known == family) {
        Some((_, names)) => names.push(name),
        None => metals.push((family, vec![name])),
    };
    let metal = |family: &str| ["aluminium", "steel", "stainless steel"].into_iter().find(|metal| *metal == family);
    if has_carbon(top.skin(Skin::Inner)) {
        for support in &top.supports {
            let alloy = support.pipe().and_then(|pipe| pipe.alloy.as_ref());
            if let Some(family) = alloy.and_then(|alloy| metal(&alloy.family)) {
                add(family, support.name.as_str());
            }
        }
    }
    if Skin::BOTH.into_iter().any(|skin| has_carbon(top.skin(skin))) {
        for backing in &top.backings {
            if let Some(family) = metal(&backing.board.family) {
                add(family, backing.name.as_str());
            }
        }
    }
    let words = metals.into_iter().filter_map(|(family, names)| {
        let couple = table.couple(family, "carbon")?;
        Some(format!(
            "{family} against a carbon skin ({}): in salt water the metal corrodes, {}. Part them everywhere by a ply of glass \
             and sealant, pipes and seats too.",
            names.join(", "),
            couple.severity
        ))
    });
    words.map(|words| crate::report::words::capital(&words)).collect()
}

/// Backings that lie on one another.
pub(super) fn doubled(top: &Top) -> Option<String> {
    let all = top.backings.iter().enumerate();
    let pairs = all.flat_map(|(number, one)| top.backings[number + 1..].iter().map(move |other| (one, other)));
    let doubled: Vec<String> = pairs
        .filter(|(one, other)| lies_on(one, other) || lies_on(other, one))
        .map(|(one, other)| format!("{} and {}", one.name, other.name))
        .collect();
    (!doubled.is_empty()).then(|| {
        format!(
            "Backings lie on one another: {}. Where they do, both are weighed and ordered, and the checks see the first of the \
             file alone: end one where the other begins, or leave one out.",
            doubled.join("; ")
        )
    })
}

/// Conduits that cross or meet in the core.
pub(super) fn crossing_conduits(top: &Top) -> Option<String> {
    let all = top.conduits.iter().enumerate();
    let pairs = all.flat_map(|(number, one)| top.conduits[number + 1..].iter().map(move |other| (one, other)));
    let crossing: Vec<String> = pairs
        .filter_map(|(one, other)| {
            let at = *one.along.meets(&other.along).first()?;
            let left = (top.core.thickness - one.diameter - other.diameter).max(Length::default());
            Some(format!(
                "{} and {} at {}, {} of the core left there",
                one.name,
                other.name,
                point(at, top.report),
                show(left, top.report)
            ))
        })
        .collect();
    (!crossing.is_empty()).then(|| {
        format!(
            "Conduits cross or meet: {}, if one lies over the other. The checks see each of them alone: keep people, gear and \
             pipes away from there.",
            crossing.join("; ")
        )
    })
}

fn lies_on(one: &Backing, other: &Backing) -> bool {
    let band = Band { line: &other.along, width: other.width };
    let within = (0..PLACES).filter(|k| {
        let at = one.along.at(one.along.length() * ((f64::from(*k) + 0.5) / f64::from(PLACES)));
        let along = other.along.place(at).along;
        band.side_distance(at) > Length::default() && along > Length::default() && along < other.along.length()
    });
    #[expect(clippy::cast_precision_loss, reason = "some dozens")]
    let share = within.count() as f64 / f64::from(PLACES);
    share >= ON
}

/// Seats that are much wider than their pipe.
pub(super) fn wide_seats(top: &Top) -> Option<String> {
    let wide =
        top.supports.iter().filter(|support| support.pipe().is_some_and(|pipe| support.seat > pipe.outside * WIDE));
    let wide: Vec<String> =
        wide.map(|support| format!("{} ({})", support.name, show(support.seat, top.report))).collect();
    (!wide.is_empty()).then(|| {
        format!(
            "Seats far wider than their pipes: {}. All of a seat is counted as pressing evenly and as lying below the top: that \
             takes flanges too stiff to bend, which nothing here checks.",
            wide.join(", ")
        )
    })
}
