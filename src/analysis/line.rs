//! One strip of the top: what it crosses, what carries it, what hangs on its end.

mod crossed;
mod over_end;

pub use crossed::{backing_at, region_at};
pub use over_end::{handed_on, rim_overhangs};

use self::{crossed::pieces, over_end::end_overhang};
use super::layout::{StripLayout, carriers};
use crate::{
    geometry::{Axis, Point},
    top::Top,
    units::{Length, Ratio},
};

/// What lies between the skins.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Region {
    /// Core.
    Field,
    /// A backing, as its place in the list.
    Backing(usize),
    /// A conduit, as its place in the list.
    Conduit(usize),
}

/// A stretch of a strip within one region.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Its length along the strip.
    pub length: Length,
    /// What lies between the skins.
    pub region: Region,
}

/// Where a pipe carries a strip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// Place along the strip.
    pub at: Length,
    /// The pipe, as its place in the list; none where the top is held by hand.
    pub pipe: Option<usize>,
    /// Width of the bearing along the strip.
    pub width: Length,
    /// Length of pipe over the width of strip that it carries.
    pub obliqueness: Ratio,
}

impl Seat {
    /// A seat that is no pipe: a hand, or where the top itself holds on.
    fn without_pipe(at: Length) -> Self {
        Self { at, pipe: None, width: Length::default(), obliqueness: Ratio::from(1.0) }
    }
}

/// What kind of strip it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Role {
    /// Away from the free ends of the top.
    Field,
    /// Beside a free end, or beside an overhang that it carries.
    Edge,
    /// From the free end of the top to beyond the ends of the pipes.
    EndOverhang,
    /// The whole top, carried by two edges.
    Carried,
}

/// An overhang beyond the ends of the pipes, which hands its load to the strip beside it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Overhang {
    /// How far it reaches.
    pub length: Length,
    /// Span behind it over which its moment dies away.
    pub back_span: Length,
}

/// Gear that a strip carries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GearOnLine {
    /// The gear, as its place in the list.
    pub gear: usize,
    /// Its place along the strip.
    pub at: Length,
    /// How far it stands out on an overhang that the strip carries; zero where it stands on the strip.
    pub beyond: Length,
}

/// One strip of unit width.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What kind of strip it is.
    pub role: Role,
    /// Direction that it runs in.
    pub axis: Axis,
    /// Its coordinate in the other direction.
    pub station: Length,
    /// Coordinate of its station 0 in its own direction.
    pub origin: Length,
    /// Whether it runs from the far side to the near side.
    pub reversed: bool,
    /// Its stretches, from station 0.
    pub pieces: Vec<Piece>,
    /// What carries it.
    pub seats: Vec<Seat>,
    /// Distance from its middle to the free end beside it.
    pub to_free_end: Length,
    /// Distance to the outline beside it, for the zones of the wind.
    pub to_outline: Length,
    /// The overhang that it carries, where it carries one.
    pub carries: Option<Overhang>,
    /// Gear that it carries.
    pub gear: Vec<GearOnLine>,
}

impl Line {
    /// The place on the top of a station of the strip.
    #[must_use]
    pub fn place(&self, at: Length) -> Point {
        let along = if self.reversed { self.origin - at } else { self.origin + at };
        match self.axis {
            Axis::X => Point { x: along, y: self.station },
            Axis::Y => Point { x: self.station, y: along },
        }
    }

    /// What lies between the skins at a station.
    #[must_use]
    pub fn region_at(&self, at: Length) -> Region {
        let mut end = Length::default();
        for piece in &self.pieces {
            end += piece.length;
            if at <= end {
                return piece.region;
            }
        }
        Region::Field
    }

    /// Whether it can swing by itself slower than the bays do: a short overhang without gear cannot, since a cantilever of
    /// half a bay swings faster than the bay, 3.52/(L/2)² against π²/L².
    #[must_use]
    pub fn swings(&self) -> bool {
        match self.role {
            Role::Carried => false,
            Role::Field | Role::Edge => true,
            Role::EndOverhang => {
                let (overhang, behind) = (self.seats[0].at, self.seats[1].at - self.seats[0].at);
                overhang > behind / 2.0 || !self.gear.is_empty()
            }
        }
    }

    /// Whether another strip is this one without its load at the end, and so cannot swing slower.
    #[must_use]
    pub fn swings_no_faster_than(&self, other: &Self) -> bool {
        other.gear.is_empty() && self.pieces == other.pieces && self.seats == other.seats
    }

    /// Its length.
    #[must_use]
    pub fn length(&self) -> Length {
        self.pieces.iter().map(|piece| piece.length).sum()
    }

    /// The widest distance between neighbouring seats.
    #[must_use]
    pub fn widest_bay(&self) -> Length {
        self.seats.windows(2).map(|pair| pair[1].at - pair[0].at).fold(Length::default(), Length::max)
    }
}

/// The strips of a layout: beside both free ends, at every change, half way between changes, and through gear; then
/// the overhangs beyond the ends of the pipes.
#[must_use]
pub fn lines(top: &Top, layout: &StripLayout) -> Vec<Line> {
    let mut stations: Vec<Length> = layout.changes.clone();
    stations.extend(layout.changes.windows(2).map(|pair| (pair[0] + pair[1]) / 2.0));
    let side = layout.axis.other();
    stations
        .extend(top.gear.iter().map(|gear| gear.at.along(side)).filter(|at| *at >= layout.from && *at <= layout.to));
    stations.sort_by(|a, b| a.value.total_cmp(&b.value));
    stations.dedup();
    let mut lines: Vec<Line> = Vec::new();
    for station in stations {
        let line = across(top, layout, station);
        // Strips that differ in nothing but their station need looking at once.
        if !lines.iter().any(|known| same_but_for_station(known, &line)) {
            lines.push(line);
        }
    }
    let back_span =
        lines.iter().map(Line::widest_bay).fold(Length::default(), Length::max).min(layout.to - layout.from);
    let (before, behind) = (layout.from, top.outline.size(side) - layout.to);
    for line in lines.iter_mut().filter(|line| line.role == Role::Edge) {
        let length = if line.station == layout.from { before } else { behind };
        line.carries = (length > shortest()).then_some(Overhang { length, back_span });
    }
    for (length, reversed) in [(before, false), (behind, true)] {
        if length > shortest() {
            lines.push(end_overhang(top, layout, Overhang { length, back_span }, reversed));
        }
    }
    lines.dedup_by(|a, b| a.role == Role::Edge && same_but_for_station(a, b));
    lines
}

/// The whole top, carried by its two short edges.
#[must_use]
pub fn carried(top: &Top) -> Line {
    let axis = if top.outline.length() >= top.outline.width() { Axis::X } else { Axis::Y };
    let length = top.outline.size(axis);
    Line {
        role: Role::Carried,
        axis,
        station: top.outline.size(axis.other()) / 2.0,
        origin: Length::default(),
        reversed: false,
        pieces: vec![Piece { length, region: Region::Field }],
        seats: vec![Seat::without_pipe(Length::default()), Seat::without_pipe(length)],
        to_free_end: top.outline.size(axis.other()) / 2.0,
        to_outline: top.outline.size(axis.other()) / 2.0,
        carries: None,
        gear: Vec::new(),
    }
}

/// Overhangs shorter than this are edges.
fn shortest() -> Length {
    Length::new::<uom::si::length::millimeter>(1.0)
}

fn same_but_for_station(a: &Line, b: &Line) -> bool {
    a.role == b.role
        && a.pieces == b.pieces
        && a.seats == b.seats
        && a.carries == b.carries
        && a.gear.is_empty()
        && b.gear.is_empty()
        && (a.role != Role::Field || (a.to_free_end - b.to_free_end).abs() < shortest())
}

fn across(top: &Top, layout: &StripLayout, station: Length) -> Line {
    let side = layout.axis.other();
    let seats: Vec<Seat> = carriers(top, &layout.pipes, layout.axis, station)
        .into_iter()
        .map(|(pipe, met)| Seat {
            at: met.at,
            pipe: Some(pipe),
            width: top.supports[pipe].seat * met.obliqueness,
            obliqueness: met.obliqueness,
        })
        .collect();
    let at_end = station == layout.from || station == layout.to;
    // Gear is carried by a strip of some width: all that stands so near counts whole.
    let bay = seats.windows(2).map(|pair| pair[1].at - pair[0].at).fold(Length::default(), Length::max);
    let gear = top
        .gear
        .iter()
        .enumerate()
        .filter_map(|(index, gear)| {
            let beside = gear.at.along(side);
            let beyond = (layout.from - beside).max(beside - layout.to).max(Length::default());
            let near = (beside - station).abs() < bay * top.criteria.gear_share_of_bay.value + gear.footing() / 2.0;
            // Gear on an overhang beyond the pipes rests on the strip beside the overhang.
            let handed = at_end && beyond > Length::default() && (beside - station).abs() <= beyond + shortest();
            (near || handed).then_some(GearOnLine { gear: index, at: gear.at.along(layout.axis), beyond })
        })
        .collect();
    Line {
        role: if at_end { Role::Edge } else { Role::Field },
        axis: layout.axis,
        station,
        origin: Length::default(),
        reversed: false,
        pieces: pieces(top, layout.axis, station),
        seats,
        to_free_end: (station - layout.from).min(layout.to - station),
        to_outline: station.min(top.outline.size(side) - station),
        carries: None,
        gear,
    }
}
