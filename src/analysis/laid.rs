//! A line laid out as a strip: its segments, its stations, and what lies beside them.

use std::ops::RangeInclusive;

use uom::si::{length::micrometer, ratio::ratio};

use super::{
    line::{Line, Region, Role, handed_on},
    moving::end_width,
    sections::Sections,
};
use crate::{
    closed_form::{
        effective_width::Spread,
        strip::{Segment, Strip, StripError, Support},
    },
    top::Top,
    units::{ArealMassDensity, Length, Ratio},
};

/// A line as a strip, whatever the state of its core.
pub(super) struct Laid<'a> {
    pub(super) top: &'a Top,
    pub(super) sections: &'a Sections,
    pub(super) line: &'a Line,
    pub(super) strip: Strip,
    /// Mass of each piece of the line.
    pub(super) masses: Vec<ArealMassDensity>,
    /// Regions that it passes.
    pub(super) regions: Vec<Region>,
    /// Bays and overhangs.
    pub(super) spans: Vec<Span>,
    /// Stations whose forces are those of the top.
    pub(super) stations: Vec<Length>,
    /// What lies between them.
    pub(super) stretches: Vec<Stretch>,
    /// Stations where core ends and a backing begins, with the backing.
    pub(super) edges: Vec<(usize, usize)>,
}

/// A bay or an overhang.
#[derive(Clone, Copy)]
pub(super) struct Span {
    from: Length,
    to: Length,
    /// What sag is measured against: the span of a bay, the reach of an overhang.
    pub(super) over: Length,
    pub(super) tip: bool,
}

/// Stations of one region, its ends among them.
pub(super) struct Stretch {
    /// The region, as its place in the list of regions.
    pub(super) region: usize,
    pub(super) stations: RangeInclusive<usize>,
}

impl<'a> Laid<'a> {
    /// Lays out a line; `divisions` of each bay and each overhang are stations.
    ///
    /// # Errors
    ///
    /// [`StripError`] where the line and its seats make no strip.
    pub(super) fn new(
        top: &'a Top,
        sections: &'a Sections,
        line: &'a Line,
        divisions: usize,
    ) -> Result<Self, StripError> {
        let masses = masses(top, line);
        let segments = segments(sections, line, &masses, Ratio::new::<ratio>(1.0));
        let strip = Strip::new(&segments, &supports(line), &beside_pipes(top, line), divisions)?;
        let mut regions: Vec<Region> = Vec::with_capacity(4);
        for piece in &line.pieces {
            if !regions.contains(&piece.region) {
                regions.push(piece.region);
            }
        }
        let spans = spans(line, strip.length());
        let (stations, stretches, edges) = (Vec::new(), Vec::new(), Vec::new());
        let mut laid = Self { top, sections, line, strip, masses, regions, spans, stations, stretches, edges };
        let loaded = laid.loaded();
        laid.stations = laid.strip.stations().take_while(|at| *at <= loaded).collect();
        laid.stretches = laid.stretches();
        laid.edges = laid.edges();
        Ok(laid)
    }

    /// The strip with a share of its core's modulus left.
    pub(super) fn in_state(&self, core_left: Ratio) -> Result<Strip, StripError> {
        self.strip.with_sections(&segments(self.sections, self.line, &self.masses, core_left))
    }

    /// The part of the strip that carries load: of a strip over an end, what hangs over.
    pub(super) fn loaded(&self) -> Length {
        match self.line.role {
            Role::EndOverhang => self.line.seats[0].at,
            Role::Field | Role::Edge | Role::Carried => self.strip.length(),
        }
    }

    /// What lies behind the root of an end overhang stands for the field there and is not a strip of its own: of a region
    /// that begins at the root the moment counts, the shear does not.
    fn stretches(&self) -> Vec<Stretch> {
        let (hair, last): (Length, _) = (self.strip.length() * 1e-9, self.stations.len() - 1);
        let mut stretches = Vec::with_capacity(self.line.pieces.len());
        let (mut from, mut end) = (0, Length::default());
        for (number, piece) in self.line.pieces.iter().enumerate() {
            if number > 0 && end > self.stations[last] + hair {
                break;
            }
            end += piece.length;
            let to = self.stations.partition_point(|at| *at < end - hair).min(last);
            let region = self.regions.iter().position(|region| *region == piece.region).unwrap_or(0);
            stretches.push(Stretch { region, stations: from..=to });
            from = to;
        }
        stretches
    }

    fn edges(&self) -> Vec<(usize, usize)> {
        let of = |stretch: &Stretch| self.regions[stretch.region];
        let joint = |pair: &[Stretch]| match (of(&pair[0]), of(&pair[1])) {
            (Region::Field, Region::Backing(backing)) | (Region::Backing(backing), Region::Field) => {
                Some((*pair[1].stations.start(), backing))
            }
            _ => None,
        };
        self.stretches.windows(2).filter_map(joint).collect()
    }

    /// Stations of a bay or an overhang.
    pub(super) fn stations_of(&self, span: &Span) -> RangeInclusive<usize> {
        let from = self.stations.partition_point(|at| *at < span.from);
        from..=self.stations.partition_point(|at| *at <= span.to).saturating_sub(1)
    }
}

/// A line as a strip that swings: with the mass of the overhang that it carries.
///
/// # Errors
///
/// [`StripError`] where the line and its seats make no strip.
pub fn swinging_strip(top: &Top, sections: &Sections, line: &Line, core_left: Ratio) -> Result<Strip, StripError> {
    let spread = Spread::new(&sections.field.plate_stiffness(line.axis, core_left));
    let times = Ratio::new::<ratio>(1.0) + handed(line, &spread);
    let masses: Vec<ArealMassDensity> = masses(top, line).into_iter().map(|mass| mass * times).collect();
    Strip::new(&segments(sections, line, &masses, core_left), &supports(line), &[], 1)
}

/// What the overhang that a line carries adds, over the line's own load.
pub(super) fn handed(line: &Line, spread: &Spread) -> Ratio {
    line.carries.map_or_else(Ratio::default, |overhang| handed_on(overhang, end_width(line, spread)))
}

fn masses(top: &Top, line: &Line) -> Vec<ArealMassDensity> {
    let field = top.field_mass();
    line.pieces
        .iter()
        .map(|piece| match piece.region {
            Region::Backing(index) => top.backing_mass(&top.backings[index]),
            Region::Field | Region::Conduit(_) => field,
        })
        .collect()
}

fn segments(sections: &Sections, line: &Line, masses: &[ArealMassDensity], core_left: Ratio) -> Vec<Segment> {
    line.pieces
        .iter()
        .zip(masses)
        .map(|(piece, &mass)| {
            let section = sections.of(piece.region);
            let left = match piece.region {
                Region::Backing(_) => Ratio::new::<ratio>(1.0),
                Region::Field | Region::Conduit(_) => core_left,
            };
            Segment {
                length: piece.length,
                rigidity: section.rigidity(line.axis),
                shear: section.shear_stiffness(line.axis, left),
                mass,
            }
        })
        .collect()
}

fn supports(line: &Line) -> Vec<Support> {
    line.seats.iter().map(|seat| Support::pipe(seat.at)).collect()
}

/// Close beside a pipe a foot shears the core most: it is tried there, and not only at even steps.
fn beside_pipes(top: &Top, line: &Line) -> Vec<Length> {
    let length = line.length();
    let foot: Length = top.criteria.standing_footprint.value / 2.0;
    let beside = line.seats.iter().flat_map(|seat| [seat.at - foot, seat.at + foot]);
    beside.filter(|at| *at > Length::default() && *at < length).collect()
}

/// Bays and overhangs of a line; of a strip over an end, the overhang alone.
fn spans(line: &Line, length: Length) -> Vec<Span> {
    let (seats, hair) = (&line.seats, Length::new::<micrometer>(1.0));
    let first = seats.first().map(|seat| Span { from: Length::default(), to: seat.at, over: seat.at, tip: true });
    let last = seats.last().map(|seat| Span { from: seat.at, to: length, over: length - seat.at, tip: true });
    let bays = seats.windows(2).map(|pair| {
        let (from, to) = (pair[0].at, pair[1].at);
        Span { from, to, over: to - from, tip: false }
    });
    let over_end = line.role == Role::EndOverhang;
    let behind = bays.chain(last).filter(|_| !over_end);
    first.into_iter().chain(behind).filter(|span| span.to - span.from > hair).collect()
}
