//! Seams between pieces of core, and where they should not be.

use uom::si::{length::millimeter, ratio::ratio};

use super::{grid::Cell, region::Region};
use crate::{
    geometry::{Axis, Band, Point},
    top::Top,
    units::{Length, Ratio},
};

/// Millimetres between the places at which a seam is looked at.
const STEP: f64 = 20.0;

/// Where no seam should be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Rule {
    /// Half way between two supports.
    MidSpan,
    /// Beside or across a conduit, by its name.
    Conduit(String),
    /// At the end of a backing, by its name.
    BackingEnd(String),
}

/// A seam between pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct Seam {
    /// Its first place in core.
    pub from: Point,
    /// Its last.
    pub to: Point,
    /// How much of it runs through core.
    pub length: Length,
    /// Rules that it breaks, each with how far.
    pub breaks: Vec<(Rule, Length)>,
}

/// Share of a seam up to which it crosses what it should be clear of; above it runs along that.
const CROSSES: f64 = 0.25;

impl Seam {
    /// Whether so much of it runs along something, and does not just cross it.
    #[must_use]
    pub fn runs_along(&self, length: Length) -> bool {
        length > self.length * CROSSES
    }
}

/// Seams of a plan.
pub(super) fn seams(top: &Top, region: &Region, cells: &[Cell]) -> Vec<Seam> {
    let mut seams = Vec::new();
    for axis in Axis::BOTH {
        for (at, [low, high]) in lines(cells, axis) {
            seams.extend(seam(top, region, axis, at, [low, high]));
        }
    }
    seams
}

/// Lines along an axis on which two cells meet: where across it, from where to where along it; stretches that follow on each
/// other are one.
fn lines(cells: &[Cell], axis: Axis) -> Vec<(Length, [Length; 2])> {
    let across = axis.other();
    let near = Length::new::<uom::si::length::micrometer>(1.0);
    let mut all: Vec<(Length, [Length; 2])> = Vec::new();
    for one in cells {
        for other in cells {
            let at = one.sheet[1].along(across);
            let low = one.sheet[0].along(axis).max(other.sheet[0].along(axis));
            let high = one.sheet[1].along(axis).min(other.sheet[1].along(axis));
            if (other.sheet[0].along(across) - at).abs() < near && low < high - near {
                all.push((at, [low, high]));
            }
        }
    }
    all.sort_by(|a, b| a.0.value.total_cmp(&b.0.value).then(a.1[0].value.total_cmp(&b.1[0].value)));
    let mut joined: Vec<(Length, [Length; 2])> = Vec::new();
    for (at, [low, high]) in all {
        match joined.last_mut().filter(|(known, [_, end])| (*known - at).abs() < near && (*end - low).abs() < near) {
            Some((_, [_, end])) => *end = high,
            None => joined.push((at, [low, high])),
        }
    }
    joined
}

/// What of a line runs through core.
fn seam(top: &Top, region: &Region, axis: Axis, at: Length, [low, high]: [Length; 2]) -> Option<Seam> {
    let step = Length::new::<millimeter>(STEP);
    let (low, high) = (low.max(region.bounds[0].along(axis)), high.min(region.bounds[1].along(axis)));
    let steps: Ratio = (high - low) / step;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "some hundreds of steps")]
    let steps = steps.get::<ratio>().ceil().clamp(1.0, 1e5) as u32;
    let each = (high - low) / f64::from(steps);
    let mut found: Option<Seam> = None;
    for number in 0..steps {
        let along = low + each * (f64::from(number) + 0.5);
        let place = match axis {
            Axis::X => Point { x: along, y: at },
            Axis::Y => Point { x: at, y: along },
        };
        if !region.holds(place) {
            continue;
        }
        let own =
            found.get_or_insert_with(|| Seam { from: place, to: place, length: Length::default(), breaks: Vec::new() });
        own.to = place;
        own.length += each;
        for rule in broken(top, place) {
            match own.breaks.iter_mut().find(|(known, _)| *known == rule) {
                Some((_, length)) => *length += each,
                None => own.breaks.push((rule, each)),
            }
        }
    }
    found
}

/// Rules that a seam at a place breaks.
fn broken(top: &Top, place: Point) -> Vec<Rule> {
    let criteria = &top.criteria;
    let clear = criteria.order_seam_clear.value;
    let mut rules = Vec::new();
    let mut near: Vec<Length> = top.supports.iter().map(|support| support.distance(place)).collect();
    near.sort_by(|a, b| a.value.total_cmp(&b.value));
    if let [first, second, ..] = near[..]
        && second - first < (first + second) * criteria.order_seam_off_mid_span.value
    {
        rules.push(Rule::MidSpan);
    }
    for conduit in &top.conduits {
        let band = Band { line: &conduit.along, width: conduit.diameter };
        if band.clearance(place) < clear {
            rules.push(Rule::Conduit(conduit.name.clone()));
        }
    }
    for backing in &top.backings {
        let band = Band { line: &backing.along, width: backing.width };
        let past = -band.end_distance(place);
        if past > -clear && past < clear && band.side_distance(place) > -clear {
            rules.push(Rule::BackingEnd(backing.name.clone()));
        }
    }
    rules
}

/// Length of seams where none should be, in millimetres.
pub(super) fn against_rules(seams: &[Seam]) -> u64 {
    millimetres(seams.iter().flat_map(|seam| &seam.breaks).map(|(_, length)| *length).sum())
}

/// Length of all seams, in millimetres.
pub(super) fn length(seams: &[Seam]) -> u64 {
    millimetres(seams.iter().map(|seam| seam.length).sum())
}

fn millimetres(length: Length) -> u64 {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a length of no more than some kilometres"
    )]
    let whole = length.get::<millimeter>().round().clamp(0.0, 1e12) as u64;
    whole
}
