//! The top cut along a straight line: what lies in it, above and below, in true places and sizes. No paper, no scale.

use super::FixingMark;
use crate::{
    geometry::{Axis, Band, Point},
    top::{Carrier, Top},
    units::{Length, Ratio},
};

/// What lies between the skins, or that nothing does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Filled {
    /// Core.
    Core,
    /// A backing, by its place in the list.
    Backing(usize),
    /// The filling of the edge.
    Edge,
    /// A hole through the top.
    Nothing,
}

/// A stretch of the cut that is alike from end to end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run {
    /// Where it begins and ends.
    pub from: Length,
    /// See `from`.
    pub to: Length,
    /// What lies in it.
    pub filled: Filled,
}

/// Something that the cut crosses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crossed {
    /// Its place in its list.
    pub index: usize,
    /// Where its middle is cut.
    pub at: Length,
    /// How much wider than it is the cut shows it: one where it is cut square.
    pub wider: Ratio,
}

/// The top cut along a line at one station.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// The direction of the line.
    pub axis: Axis,
    /// Its place in the other direction.
    pub station: Length,
    /// Stretches, one behind the other.
    pub runs: Vec<Run>,
    /// Conduits.
    pub conduits: Vec<Crossed>,
    /// Pipes, walls and pads.
    pub supports: Vec<Crossed>,
    /// Fixings whose hole is cut, as places in the list of marks, each with the distance of its middle from the line.
    pub fixings: Vec<(usize, Length)>,
}

impl Cut {
    /// The line that shows most: of all that crosses a fixing, gear, a conduit, a post or the middle of the top, across it
    /// and along it, the one that meets most different things; of those that meet as many, across before along, then the
    /// nearest to the middle.
    #[must_use]
    pub fn telling(top: &Top, fixings: &[FixingMark]) -> Self {
        let middle = Point { x: top.outline.length() / 2.0, y: top.outline.width() / 2.0 };
        let posts = top.supports.iter().flat_map(|support| support.posts().iter().map(|&post| support.along.at(post)));
        let conduits = top.conduits.iter().map(|conduit| conduit.along.at(conduit.along.length() / 2.0));
        let backings = top.backings.iter().map(|backing| backing.along.at(backing.along.length() / 2.0));
        let gear = top.gear.iter().map(|gear| gear.at);
        let all: Vec<Point> = fixings
            .iter()
            .map(|mark| mark.at)
            .chain(gear)
            .chain(conduits)
            .chain(backings)
            .chain(posts)
            .chain([middle])
            .collect();
        let mut best: Option<(usize, Length, Self)> = None;
        for axis in [Axis::Y, Axis::X] {
            for place in &all {
                let station = place.along(axis.other());
                let off = (station - middle.along(axis.other())).abs();
                let cut = Self::at(top, fixings, axis, station);
                let shows = cut.shows(top, fixings);
                let better = |(known, at, of): &(usize, Length, Self)| {
                    shows > *known || shows == *known && of.axis == axis && off < *at
                };
                if best.as_ref().is_none_or(better) {
                    best = Some((shows, off, cut));
                }
            }
        }
        best.map_or_else(|| Self::at(top, fixings, Axis::Y, middle.x), |(_, _, cut)| cut)
    }

    /// The cut along a line in a direction, at a station of the other.
    ///
    /// ```
    /// use skinspan::{geometry::Axis, input::{NamedText, read_design, read_tables}, plan::{Cut, Filled}};
    /// use uom::si::length::inch;
    /// # let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/survey-launch.toml")).unwrap();
    /// # let text = NamedText { name: String::new(), text };
    /// let top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
    /// let cut = Cut::at(&top, &[], Axis::Y, uom::si::f64::Length::new::<inch>(55.0));
    /// // The edge is 2 in wide, core follows up to the port strip, whose middle lies at 9 in and which is 4 in wide.
    /// let ends: Vec<(Filled, f64)> = cut.runs.iter().map(|run| (run.filled, run.to.get::<inch>())).collect();
    /// assert_eq!(ends[..3].iter().map(|(filled, _)| *filled).collect::<Vec<_>>(), [Filled::Edge, Filled::Core, Filled::Backing(0)]);
    /// for (found, expected) in ends.iter().map(|(_, to)| *to).zip([2.0, 7.0, 11.0, 36.0, 40.0, 65.0, 69.0, 74.0, 76.0]) {
    ///     assert!((found - expected).abs() < 1e-3, "{found} {expected}");
    /// }
    /// ```
    #[must_use]
    pub fn at(top: &Top, fixings: &[FixingMark], axis: Axis, station: Length) -> Self {
        let place = |at: Length| match axis {
            Axis::X => Point { x: at, y: station },
            Axis::Y => Point { x: station, y: at },
        };
        let crossed = |index: usize, line: &crate::geometry::Polyline| {
            let found = line.crossings(axis, station).into_iter();
            found
                .map(move |crossing| Crossed { index, at: crossing.at, wider: crossing.obliqueness })
                .collect::<Vec<_>>()
        };
        let conduits = top.conduits.iter().enumerate().flat_map(|(index, conduit)| crossed(index, &conduit.along));
        let supports = top.supports.iter().enumerate().flat_map(|(index, support)| match &support.carrier {
            Carrier::Pad(pad) => {
                let within = (pad.at.along(axis.other()) - station).abs() < support.seat_along(axis.other()) / 2.0;
                let here = Crossed { index, at: pad.at.along(axis), wider: Ratio::from(1.0) };
                within.then_some(here).into_iter().collect()
            }
            Carrier::Pipe(_) | Carrier::Wall(_) => crossed(index, &support.along),
        });
        let near = fixings.iter().enumerate().filter_map(|(index, mark)| {
            let off = (mark.at.along(axis.other()) - station).abs();
            (off < mark.widest()? / 2.0).then_some((index, off))
        });
        Self {
            axis,
            station,
            runs: runs(top.outline.size(axis), &|at| filled(top, place(at))),
            conduits: conduits.collect(),
            supports: supports.collect(),
            fixings: near.collect(),
        }
    }

    /// How many different things it shows.
    fn shows(&self, top: &Top, fixings: &[FixingMark]) -> usize {
        let mut backings: Vec<(&str, Length)> = Vec::new();
        for run in &self.runs {
            if let Filled::Backing(index) = run.filled {
                let backing = &top.backings[index];
                let kind = (backing.board.name.as_str(), backing.width);
                if !backings.contains(&kind) {
                    backings.push(kind);
                }
            }
        }
        let mut conduits: Vec<usize> = self.conduits.iter().map(|crossed| crossed.index).collect();
        conduits.dedup();
        let mut supports: Vec<&str> = self.supports.iter().map(|crossed| top.supports[crossed.index].word()).collect();
        supports.sort_unstable();
        supports.dedup();
        let mut kinds: Vec<&str> = self.fixings.iter().map(|(index, _)| fixings[*index].fixing.as_str()).collect();
        kinds.sort_unstable();
        kinds.dedup();
        let edge = usize::from(self.runs.iter().any(|run| run.filled == Filled::Edge));
        backings.len() + conduits.len() + supports.len() + kinds.len() + edge
    }
}

fn filled(top: &Top, place: Point) -> Option<Filled> {
    if top.outline.hole_at(place).is_some() {
        return Some(Filled::Nothing);
    }
    let within = top.outline.within_by(place);
    if within < Length::default() {
        return None;
    }
    let in_backing = |backing: &crate::top::Backing| {
        let band = Band { line: &backing.along, width: backing.width };
        band.side_distance(place) > Length::default() && band.end_distance(place) > Length::default()
    };
    if let Some(index) = top.backings.iter().position(in_backing) {
        return Some(Filled::Backing(index));
    }
    Some(match &top.edge {
        Some(edge) if within < edge.setback => Filled::Edge,
        _ => Filled::Core,
    })
}

/// Looks so many times along a line; what is shorter than a piece may be missed.
const LOOKS: u32 = 800;
/// Halvings of a piece, to find where it changes: less than a micrometre.
const HALVINGS: u32 = 14;

fn runs(length: Length, of: &dyn Fn(Length) -> Option<Filled>) -> Vec<Run> {
    let at = |k: u32| length * ((f64::from(k) + 0.5) / f64::from(LOOKS));
    let mut found = Vec::new();
    let mut from = Length::default();
    let mut now = of(at(0));
    for k in 1..LOOKS {
        let next = of(at(k));
        if next == now {
            continue;
        }
        let (mut low, mut high) = (at(k - 1), at(k));
        for _ in 0..HALVINGS {
            let middle = (low + high) / 2.0;
            if of(middle) == now { low = middle } else { high = middle }
        }
        found.push((from, high, now));
        (from, now) = (high, next);
    }
    found.push((from, length, now));
    found.into_iter().filter_map(|(from, to, filled)| Some(Run { from, to, filled: filled? })).collect()
}
