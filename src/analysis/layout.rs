//! Which way the strips run, and where they stand.

use uom::si::length::micrometer;

use crate::{
    geometry::{Axis, Crossing, Point},
    top::{Scope, Support, Top},
    units::{Length, System, both},
};

/// How the frame carries the top.
#[derive(Clone, Debug, PartialEq)]
pub enum Layout {
    /// Strips run in one direction over pipes that run in the other.
    Strips(StripLayout),
    /// A patch: nothing is known of what carries it.
    Patch,
    /// Every bay is held on four sides by straight pipes.
    FourSides {
        /// Strips along the length, over the pipes that cross it.
        lengthwise: StripLayout,
        /// Strips across, over the pipes that run along the length.
        across: StripLayout,
    },
}

/// Strips in one direction.
#[derive(Clone, Debug, PartialEq)]
pub struct StripLayout {
    /// Direction that the strips run in.
    pub axis: Axis,
    /// Pipes that carry them, as places in the list of pipes.
    pub pipes: Vec<usize>,
    /// First station at which two pipes carry the strip.
    pub from: Length,
    /// Last such station.
    pub to: Length,
    /// Stations at which the set of pipes or the direction of one changes or two of them meet, `from` and `to` among them.
    pub changes: Vec<Length>,
}

/// Why the hand method cannot carry the top.
#[derive(Clone, Debug, PartialEq)]
pub enum NoLayout {
    /// Fewer than two pipes or walls run side by side anywhere.
    TooFewPipes,
    /// The top stands on pads alone.
    PadsAlone,
    /// Between two stations only one pipe or none carries the strip, with two on both sides of the gap.
    Gap {
        /// Direction of the strips.
        axis: Axis,
        /// Names of the pipes and walls.
        pipes: Vec<String>,
    },
    /// Two pipes meet where nothing else carries the strip.
    Meet {
        /// Their names.
        pipes: [String; 2],
        /// Where.
        at: Point,
        /// Units of the report.
        units: System,
    },
}

impl std::fmt::Display for NoLayout {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::TooFewPipes => f.write_str(
                "nowhere do two pipes run side by side, so there is no span to check: add a pipe that runs beside another along \
                 the same part of the top; a wall counts as a pipe, a pad does not",
            ),
            Self::PadsAlone => f.write_str(
                "the top stands on pads alone, which the hand method does not count: it carries its strips by pipes or walls \
                 that run side by side, two or more of them",
            ),
            Self::Gap { axis, pipes } => write!(
                f,
                "strips {} over {} lose their second pipe part of the way; the hand method cannot carry them there",
                axis.words(),
                pipes.join(", ")
            ),
            Self::Meet { pipes: [one, other], at, units } => write!(
                f,
                "{one} and {other} meet at x {}, y {}, and nothing else carries the top there, so that a strip tips over that \
                 one place: lead another pipe past it, or lead the two apart by half the sum of their diameters or more; where \
                 one pipe is bent, write it as one `[[pipe]]` with all its corners",
                both(at.x, *units),
                both(at.y, *units)
            ),
        }
    }
}

impl std::error::Error for NoLayout {}

/// Finds the layout of a top.
///
/// A wall carries as a rigid pipe does; a pad is not counted. Strips run across the direction that more pipes run in. Where both directions have two pipes or more, all straight
/// and square to the outline, and each reaches the outer pipes of the other direction, the bays stand on four sides.
///
/// # Errors
///
/// [`NoLayout`] where the hand method has nothing to stand on.
pub fn layout(top: &Top) -> Result<Layout, NoLayout> {
    if top.scope == Scope::Patch {
        return Ok(Layout::Patch);
    }
    if top.supports.iter().all(Support::is_pad) && !top.supports.is_empty() {
        return Err(NoLayout::PadsAlone);
    }
    let running = |axis: Axis| -> Vec<usize> {
        let runs = |support: &Support| !support.is_pad() && support.along.main_axis() == axis;
        (0..top.supports.len()).filter(|&pipe| runs(&top.supports[pipe])).collect()
    };
    let (lengthwise_pipes, cross_pipes) = (running(Axis::X), running(Axis::Y));
    if is_grid(&top.supports, &lengthwise_pipes, &cross_pipes) {
        return Ok(Layout::FourSides {
            lengthwise: strips(top, Axis::X, cross_pipes)?,
            across: strips(top, Axis::Y, lengthwise_pipes)?,
        });
    }
    let (axis, pipes) =
        if lengthwise_pipes.len() >= cross_pipes.len() { (Axis::Y, lengthwise_pipes) } else { (Axis::X, cross_pipes) };
    Ok(Layout::Strips(strips(top, axis, pipes)?))
}

fn strips(top: &Top, axis: Axis, pipes: Vec<usize>) -> Result<StripLayout, NoLayout> {
    let line = axis.other();
    let mut changes: Vec<Length> =
        pipes.iter().flat_map(|&pipe| top.supports[pipe].along.points()).map(|point| point.along(line)).collect();
    for (place, &pipe) in pipes.iter().enumerate() {
        let beside = pipes[..place].iter().map(|&other| &top.supports[other].along);
        changes.extend(beside.flat_map(|other| other.meets(&top.supports[pipe].along)).map(|at| at.along(line)));
    }
    changes.sort_by(|a, b| a.value.total_cmp(&b.value));
    changes.dedup_by(|a, b| (*a - *b).abs() < Length::new::<micrometer>(1.0));
    let carried = |station: Length| {
        pipes.iter().map(|&pipe| top.supports[pipe].along.crossings(axis, station).len()).sum::<usize>() >= 2
    };
    let intervals: Vec<bool> = changes.windows(2).map(|pair| carried((pair[0] + pair[1]) / 2.0)).collect();
    let first = intervals.iter().position(|carried| *carried).ok_or(NoLayout::TooFewPipes)?;
    let last = intervals.iter().rposition(|carried| *carried).ok_or(NoLayout::TooFewPipes)?;
    if intervals[first..=last].contains(&false) {
        let names = pipes.iter().map(|&pipe| top.supports[pipe].name.clone()).collect();
        return Err(NoLayout::Gap { axis, pipes: names });
    }
    let changes = changes[first..=last + 1].to_vec();
    // Between changes pipes draw nearer evenly: they are nearest at one.
    for &station in &changes {
        let (apart, all) = (carriers(top, &pipes, axis, station), met_by(top, &pipes, axis, station));
        if let ([_], [(one, met), (other, _), ..]) = (apart.as_slice(), all.as_slice()) {
            let name = |pipe: &usize| top.supports[*pipe].name.clone();
            let at = match axis {
                Axis::X => Point { x: met.at, y: station },
                Axis::Y => Point { x: station, y: met.at },
            };
            let pipes = [one.min(other), one.max(other)].map(name);
            return Err(NoLayout::Meet { pipes, at, units: top.report });
        }
    }
    Ok(StripLayout { axis, pipes, from: changes[0], to: changes[changes.len() - 1], changes })
}

/// What carries a strip at a station, from its near end. Pipes that meet there carry it once: of two that touch, the one
/// with the narrower seat, whose share is the greater pressure.
pub(super) fn carriers(top: &Top, pipes: &[usize], axis: Axis, station: Length) -> Vec<(usize, Crossing)> {
    let mut apart: Vec<(usize, Crossing)> = Vec::new();
    for (pipe, met) in met_by(top, pipes, axis, station) {
        let [thickness, width] = [top.supports[pipe].thickness(), top.supports[pipe].seat * met.obliqueness];
        match apart.last_mut() {
            Some((known, last))
                if *known != pipe && met.at - last.at < (top.supports[*known].thickness() + thickness) / 2.0 =>
            {
                if width < top.supports[*known].seat * last.obliqueness {
                    (*known, *last) = (pipe, met);
                }
            }
            _ => apart.push((pipe, met)),
        }
    }
    apart
}

/// Every place where a strip meets a pipe, from its near end.
fn met_by(top: &Top, pipes: &[usize], axis: Axis, station: Length) -> Vec<(usize, Crossing)> {
    let met = |&pipe: &usize| top.supports[pipe].along.crossings(axis, station).into_iter().map(move |met| (pipe, met));
    let mut all: Vec<(usize, Crossing)> = pipes.iter().flat_map(met).collect();
    all.sort_by(|(_, a), (_, b)| a.at.value.total_cmp(&b.at.value));
    all
}

/// Whether pipes in both directions bound every bay on four sides.
fn is_grid(pipes: &[Support], lengthwise: &[usize], cross: &[usize]) -> bool {
    let reaches = |these: &[usize], those: &[usize], axis: Axis| {
        let at = |pipe: usize| pipes[pipe].along.extent(axis).0;
        let (low, high) = those
            .iter()
            .fold((at(those[0]), at(those[0])), |(low, high), &pipe| (low.min(at(pipe)), high.max(at(pipe))));
        these.iter().all(|&pipe| {
            let (from, to) = pipes[pipe].along.extent(axis);
            let (side_from, side_to) = pipes[pipe].along.extent(axis.other());
            let reach = pipes[pipe].thickness();
            side_to - side_from < Length::new::<uom::si::length::millimeter>(1.0)
                && from <= low + reach
                && to >= high - reach
        })
    };
    lengthwise.len() >= 2
        && cross.len() >= 2
        && reaches(lengthwise, cross, Axis::X)
        && reaches(cross, lengthwise, Axis::Y)
}
