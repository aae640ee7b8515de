//! Skins: how they are laid, those of the top, and those that one may choose.

use std::ops::Range;

use uom::si::ratio::ratio;

use super::{
    layer::{Layup, Process, not_a_fibre_content, read_layer},
    problem::Problem,
    reader::{Given, Room},
    unknown_name,
};
use crate::{
    laminate::InvalidLaminate,
    material::MaterialTable,
    top::Schedule,
    units::{Ratio, Sign},
};

/// What all layers of a top share.
pub(super) fn read_layup<'t>(room: &Room<'_>, table: &'t MaterialTable) -> Layup<'t> {
    let process =
        room.choice("process", &[("hand", Process::Hand), ("bag", Process::Bag), ("infusion", Process::Infusion)]);
    room.missing_or("process", "\"hand\"", ", or `\"bag\"` or `\"infusion\"`");
    let resin = room.text("resin").and_then(|given| match table.resin(&given.value) {
        Ok(resin) => Some(resin),
        Err(name) => {
            unknown_name(room, &given, &name);
            None
        }
    });
    room.missing_or("resin", "\"polyester\"", ", or `\"vinylester\"` or `\"epoxy\"`");
    let fibre_fraction = room.quantity::<Ratio>("fibre", Sign::Positive).and_then(|given| {
        if given.value < Ratio::new::<ratio>(1.0) {
            return Some(given.value);
        }
        room.report(not_a_fibre_content(&given.text, given.range));
        None
    });
    Layup { table, resin, process: process.map(|given| given.value), fibre_fraction }
}

/// The outer and the inner skin of a top.
pub(super) fn read_own_skins(room: &Room<'_>, layup: &Layup<'_>) -> [Option<Schedule>; 2] {
    ["outer", "inner"].map(|key| {
        room.missing(key, "[\"mat 1.5 oz/ft2\", \"biaxial 600 g/m2 @ 45 deg\"]");
        let range = room.value(key)?.span();
        read_skin(room, (key, range), &room.texts(key)?, layup)
    })
}

/// A skin of layers; what is wrong with it is reported at its place.
pub(super) fn read_skin(
    room: &Room<'_>,
    (side, range): (&str, Range<usize>),
    layers: &[Option<Given<String>>],
    layup: &Layup<'_>,
) -> Option<Schedule> {
    let layers: Vec<_> = layers.iter().map(|text| read_layer(room, text.as_ref()?, layup)).collect();
    // A layer that could not be read has been reported; without it nothing can be said of the skin.
    let layers: Vec<_> = layers.into_iter().collect::<Option<Vec<_>>>()?.concat();
    let bare = if layers.is_empty() { "is empty" } else { "is of coats alone, and a coat carries nothing" };
    let error = match Schedule::new(layers) {
        Ok(schedule) => return Some(schedule),
        Err(InvalidLaminate::Empty) => format!("the {side} skin {bare}"),
        Err(error) => format!("the {side} skin cannot be: {error}"),
    };
    room.report(Problem::at(range, error).help("add a fabric such as \"biaxial 600 g/m2 @ 45 deg\""));
    None
}
