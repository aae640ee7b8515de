//! `[top]`, `[[backing]]` and `[[conduit]]`.

// A file says a value, says that there is none, or says nothing readable: three states, and the outer `None` is the fault.
#![allow(clippy::option_option)]

use std::{
    ops::{Range, RangeInclusive},
    sync::Arc,
};

use uom::si::length::millimeter;

use super::{
    drawing::Drawn,
    frame::read_line,
    hole::{beside_holes, clear_of_holes},
    layer::Layup,
    outline::{read_outline, within_panel},
    problem::Problem,
    reader::{Given, Room},
    skin::{read_layup, read_own_skins},
    standing::conduits_apart,
    unknown_name,
    usual::usual,
};
use crate::{
    criteria::Criteria,
    material::{Board, MaterialTable, Resin},
    top::{Backing, Conduit, CoreSheet, Edge, Forward, Outline, Schedule, Scope, Support},
    units::{Length, MassDensity, Ratio, Sign},
};

/// What `[top]` says. What could not be read is absent and reported; the rest of the file is held against what is there.
#[derive(Default)]
pub(super) struct Panel<'t> {
    pub(super) outline: Option<Outline>,
    pub(super) forward: Option<Forward>,
    pub(super) crown: Length,
    /// What its skins share with those that one may choose.
    pub(super) layup: Option<Layup<'t>>,
    pub(super) outer: Option<Schedule>,
    pub(super) inner: Option<Schedule>,
    pub(super) resin: Option<Resin>,
    pub(super) core: Option<CoreSheet>,
    pub(super) core_thickness: Option<Length>,
    /// The inner `None` is a top whose core runs to the rim.
    pub(super) edge: Option<Option<Edge>>,
}

impl Panel<'_> {
    /// Both skins and the core, where all of them could be read.
    pub(super) fn thickness(&self) -> Option<Length> {
        let skins = self.outer.as_ref()?.laminate().thickness() + self.inner.as_ref()?.laminate().thickness();
        Some(skins + self.core_thickness?)
    }
}

/// What lies in the core.
pub(super) struct Inlays {
    pub(super) backings: Vec<Backing>,
    pub(super) conduits: Vec<Conduit>,
}

/// Whether the file describes a whole top or a patch round a mount.
pub(super) fn read_scope(root: &Room<'_>) -> Scope {
    let (whole, patch) = (root.value("top"), root.value("patch"));
    if let (Some(_), Some(patch)) = (whole, patch) {
        root.report(
            Problem::at(patch.span(), "a file has a `[top]` or a `[patch]`, not both")
                .help("`[patch]` is for a mount alone, with nothing known of the top round it"),
        );
    }
    if whole.is_none() && patch.is_some() { Scope::Patch } else { Scope::Whole }
}

pub(super) fn read_panel<'t>(
    root: &Room<'_>,
    (table, criteria): (&'t MaterialTable, &Criteria),
    scope: Scope,
    drawn: &Drawn<'_>,
) -> Panel<'t> {
    let key = match scope {
        Scope::Whole => "top",
        Scope::Patch => "patch",
    };
    let Some(room) = root.room(key) else {
        root.absent_all(
            &["top", "patch"],
            Problem::at(0..0, "there is no `[top]`: nothing says what the top is made of")
                .help("add `[top]` with `outline`, `process`, `resin`, `outer`, `core` and `inner`"),
        );
        return Panel::default();
    };
    let outline = read_outline(root, &room, scope, drawn);
    let forward = read_forward(&room);
    // A patch has no rim and no crown that anything asks for.
    let whole = scope == Scope::Whole;
    let crown = whole.then(|| room.quantity::<Length>("crown", Sign::NotNegative)).flatten();
    let crown = read_crown(&room, crown, outline.as_ref(), criteria.shallow_crown.value);
    let layup = read_layup(&room, table);
    let [outer, inner] = read_own_skins(&room, &layup);
    let resin = layup.resin.cloned();
    let (core, core_thickness) = read_core(&room, table, outline.as_ref());
    let edge = if whole { read_edge(&room, table, outline.as_ref()) } else { Some(None) };
    room.close();
    Panel { outline, forward, crown, layup: Some(layup), outer, inner, resin, core, core_thickness, edge }
}

/// Where the bow lies; a length runs fore and aft, so it is no more than left or right.
fn read_forward(room: &Room<'_>) -> Option<Forward> {
    if let Some(given) = room.value("forward")
        && let Some(word @ ("up" | "down")) = given.get_ref().as_str()
    {
        room.report(Problem::at(given.span(), format!("`forward` is \"{word}\", but the length of a top runs fore and aft")).help(
            "turn the places so that the length, x, runs along the boat; then `forward` is \"right\" where x counts towards the bow, \
             and \"left\" where it counts away from it",
        ));
        return None;
    }
    let words = [Forward::Right, Forward::Left].map(|forward| (forward.word(), forward));
    room.choice("forward", &words).map(|given| given.value)
}

/// The rise of the crown, as far as the top is a shallow shell.
fn read_crown(room: &Room<'_>, crown: Option<Given<Length>>, outline: Option<&Outline>, limit: Ratio) -> Length {
    let Some(crown) = crown else { return Length::default() };
    if let Some(outline) = outline
        && crown.value > outline.width() * limit
    {
        room.report(Problem::at(crown.range, "so high a crown is no shallow one, and nothing here reckons with it").help(
            format!(
                "of a top {} wide it rises by {} at the most, as far as it is looked at (`shallow-crown`); write less, and the top \
                 is taken as flatter than it is",
                room.both(outline.width()),
                room.both(outline.width() * limit)
            ),
        ));
    }
    crown.value
}

/// Lengths in millimetres.
fn lengths(least: f64, most: f64) -> RangeInclusive<Length> {
    Length::new::<millimeter>(least)..=Length::new::<millimeter>(most)
}

/// Thicknesses of cores.
pub(super) fn cores() -> (&'static str, RangeInclusive<Length>) {
    ("the core of a top", lengths(2.0, 150.0))
}

fn read_core(top: &Room<'_>, table: &MaterialTable, outline: Option<&Outline>) -> (Option<CoreSheet>, Option<Length>) {
    top.missing("core", "{ material = \"pvc-foam\", density = \"5 lb/ft3\", thickness = \"1 in\" }");
    let Some(room) = top.room("core") else { return (None, None) };
    let thickness = room.required::<Length>("thickness", Sign::Positive, "\"1 in\"");
    let thickness = usual(&room, "thickness", thickness, cores());
    let thickness = within_panel(&room, thickness, outline);
    let density = room.required::<MassDensity>("density", Sign::Positive, "\"5 lb/ft3\"");
    room.missing("material", "\"pvc-foam\"");
    let family = room.text("material").and_then(|given| match table.core(&given.value) {
        Ok(family) => Some(family.clone()),
        Err(name) => {
            unknown_name(&room, &given, &name);
            None
        }
    });
    room.close();
    let thickness = thickness.map(|given| given.value);
    let sheet = || {
        let (family, density) = (family?, density?);
        match family.at(density.value) {
            Ok(material) => Some(CoreSheet { family, material, thickness: thickness? }),
            Err(out) => {
                top.report(
                    Problem::at(
                        density.range,
                        format!("the material table does not know `{}` at {}", family.id, top.both(out.given)),
                    )
                    .help(format!(
                        "it knows its {} from {} to {}: choose a density between, or another core",
                        out.origin.property.replace('_', " "),
                        top.both(out.low),
                        top.both(out.high)
                    )),
                );
                None
            }
        }
    };
    (sheet(), thickness)
}

fn read_edge(top: &Room<'_>, table: &MaterialTable, outline: Option<&Outline>) -> Option<Option<Edge>> {
    let Some(room) = top.room("edge") else { return Some(None) };
    let setback = room.required::<Length>("setback", Sign::Positive, "\"1.5 in\"");
    let setback = usual(&room, "setback", setback, ("the setback of a core", lengths(1.0, 5000.0)));
    if let (Some(setback), Some(outline)) = (&setback, outline)
        && setback.value > outline.length().min(outline.width()) / 4.0
    {
        room.report(
            Problem::at(setback.range.clone(), "the edge would take more than half of the top")
                .help("the core is usually cut back by about its own thickness"),
        );
    }
    room.missing("fill", "\"putty-polyester-bonding\"");
    let fill = room.text("fill").and_then(|given| match table.filler(&given.value) {
        Ok(fill) => Some(fill.clone()),
        Err(name) => {
            unknown_name(&room, &given, &name);
            None
        }
    });
    room.close();
    Some(Some(Edge { setback: setback?.value, fill: fill? }))
}

/// The boards that hold glue, the lightest first; no metal in place of another kind.
fn boards_beside(table: &MaterialTable, board: &Board) -> Arc<[Board]> {
    let of_use = |other: &&Board| other.bondable && (other.family == board.family || other.family != METAL);
    let mut boards: Vec<Board> = table.boards().iter().filter(of_use).cloned().collect();
    boards.sort_by(|a, b| a.density.value.value.total_cmp(&b.density.value.value));
    boards.into()
}

/// A plate as thick as the core is no board that one would change to.
const METAL: &str = "aluminium";

pub(super) fn read_inlays(
    root: &Room<'_>,
    table: &MaterialTable,
    (outline, supports): (Option<&Outline>, &[Support]),
    core: Option<Length>,
) -> Inlays {
    let backings = root.named_rooms("backing").into_iter().filter_map(|(name, room)| {
        let width = room.required::<Length>("width", Sign::Positive, "\"4 in\"");
        let width = usual(&room, "width", width, ("the width of a backing", lengths(3.0, 20_000.0)));
        let width = within_panel(&room, width, outline);
        room.missing("material", "\"plywood-fir\"");
        let board = room.text("material").and_then(|given| match table.board(&given.value) {
            Ok(board) => Some(board.clone()),
            Err(name) => {
                unknown_name(&room, &given, &name);
                None
            }
        });
        let along = read_line(&room, outline);
        clear_of_holes(&room, along.as_ref(), outline, supports);
        room.close();
        let board = board?;
        let boards = boards_beside(table, &board);
        Some(Backing { name, board, boards, width: width?.value, along: along? })
    });
    let backings = backings.collect();
    let conduits = root.named_rooms("conduit").into_iter().filter_map(|(name, room)| {
        let material = room.text("material");
        let tube = material.as_ref().and_then(|given| match table.conduit(&given.value) {
            Ok(tube) => Some(tube.clone()),
            Err(name) => {
                unknown_name(&room, given, &name);
                None
            }
        });
        let diameter = room.quantity::<Length>("diameter", Sign::Positive);
        let diameter = usual(&room, "diameter", diameter, ("the diameter of a conduit", lengths(1.0, 200.0)));
        let size = diameter.as_ref().map(|given| given.value).or(tube.as_ref().map(|tube| tube.outside.value));
        if let (Some(material), Some(diameter)) = (&material, &diameter) {
            room.report(
                Problem::at(diameter.range.clone(), format!("{name} has a `material` and a `diameter`"))
                    .help(format!("`{}` has its own diameter: leave out one of the two", material.value)),
            );
        }
        room.absent_all(
            &["material", "diameter"],
            room.problem("has neither `material` nor `diameter`")
                .help("write for example `material = \"pvc-1-2-sch40\"` or `diameter = \"0.84 in\"`"),
        );
        if let (Some(size), Some(core)) = (size, core)
            && size >= core
        {
            let range = diameter.map(|given| given.range).or(material.map(|given| given.range)).unwrap_or_default();
            room.report(
                Problem::at(range, format!("{name} is {} and does not fit into the core", room.both(size)))
                    .help(format!("the core is {} thick", room.both(core))),
            );
        }
        let along = read_line(&room, outline);
        let range = room.value("along").map_or(0..0, toml::Spanned::span);
        let clear = clear_of_holes(&room, along.as_ref(), outline, supports);
        if let (true, Some(size), Some(along)) = (clear, size, &along) {
            beside_holes(&room, (&name, along, size), outline);
        }
        room.close();
        Some((Conduit { name, diameter: size?, along: along?, tube }, range))
    });
    let read: Vec<(Conduit, Range<usize>)> = conduits.collect();
    conduits_apart(root, &read);
    Inlays { backings, conduits: read.into_iter().map(|(conduit, _)| conduit).collect() }
}
