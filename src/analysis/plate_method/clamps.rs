//! What the joint of a clamped wall must take: the moment that the panel hands over along it.

use super::{envelope::Solved, lifting::Part};
use crate::{
    finite_element::Sampler,
    geometry::Point,
    laminate::Moments,
    units::{Length, MomentPerWidth, Ratio},
};

/// The most moment per length of a clamped joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClampMoment {
    /// The moment about the wall's line, either way.
    pub moment: MomentPerWidth,
    /// Where.
    pub at: Point,
    /// Where the person or the hand is that causes it.
    pub under: Option<Point>,
    /// What it may be off by, from the same mesh at two degrees.
    pub error: Ratio,
}

/// Samples on the line of a clamped wall at one place.
struct Station {
    support: usize,
    at: Point,
    /// Across the line, to its left.
    across: [f64; 2],
    /// Those of triangles on its left, and on its right; none beyond the rim.
    sides: [Vec<usize>; 2],
    /// Stations over which the moment is averaged, as the panel does over its own depth.
    near: Vec<usize>,
}

/// The worst so far of a top's clamped walls.
///
/// ```text
/// m = | n·M_l·n − n·M_r·n |
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `m` | moment per length that the joint takes |
/// | `n` | across the wall's line, in plan |
/// | `M_l`, `M_r` | moments of the panel on its left and on its right; none beyond the rim |
///
/// # Validity
/// The mean over a length of the panel's depth, since the moment grows without bound at the end of a clamped line in a panel. What
/// turns the joint along its line is not in it.
///
/// # Source
/// [`DERIVED`](crate::source::DERIVED): balance of a narrow piece of panel over the joint.
pub(super) struct Clamps {
    stations: Vec<Station>,
    /// By support, the most so far: the moment, its station and the load that moves.
    worst: Vec<Option<(MomentPerWidth, usize, Option<usize>)>>,
}

impl Clamps {
    pub(super) fn new(solved: &Solved<'_>) -> Self {
        let mut stations: Vec<Station> = Vec::new();
        let (net, top) = (solved.net, solved.top);
        let clamped = || net.stretches.iter().filter(|stretch| top.supports[stretch.pipe].clamps());
        if clamped().next().is_some() {
            let hair = net.disc * 1e-3;
            for (number, (at, triangle)) in solved.reader.sampler().places().enumerate() {
                for stretch in clamped() {
                    let nodes = net.mesh.nodes();
                    let mut pieces = stretch.corners.windows(2).map(|pair| [nodes[pair[0]], nodes[pair[1]]]);
                    let Some([from, to]) = pieces.find(|piece| on(*piece, at, hair)) else { continue };
                    let length = from.distance(to);
                    let across = [-((to.y - from.y) / length).value, ((to.x - from.x) / length).value];
                    let middle = net.middle(triangle);
                    let left = (middle.x - from.x) * across[0] + (middle.y - from.y) * across[1] > Length::default();
                    let known = |station: &Station| station.support == stretch.pipe && station.at.distance(at) < hair;
                    let station = match stations.iter().position(known) {
                        Some(known) => known,
                        None => {
                            let (support, sides) = (stretch.pipe, [Vec::new(), Vec::new()]);
                            stations.push(Station { support, at, across, sides, near: Vec::new() });
                            stations.len() - 1
                        }
                    };
                    stations[station].sides[usize::from(!left)].push(number);
                }
            }
        }
        // Of a line within the top both sides count: a place that one triangle alone looks at says nothing.
        let hair = net.disc * 1e-3;
        stations.retain(|station| {
            station.sides.iter().all(|side| !side.is_empty()) || top.outline.within_by(station.at) < hair
        });
        for station in 0..stations.len() {
            let near = |other: &Station| {
                other.support == stations[station].support && other.at.distance(stations[station].at) <= net.disc
            };
            stations[station].near = (0..stations.len()).filter(|&other| near(&stations[other])).collect();
        }
        Self { stations, worst: vec![None; top.supports.len()] }
    }

    /// What acts together.
    pub(super) fn take(&mut self, sampler: &Sampler, parts: &[Part<'_>], under: Option<usize>) {
        let about = |station: &Station| -> MomentPerWidth {
            let [x, y] = station.across;
            let of_side = |samples: &[usize]| -> MomentPerWidth {
                let of = |sample: &usize| -> MomentPerWidth {
                    let acting = parts.iter().map(|(seen, times, _)| {
                        let Moments { x: mx, y: my, xy } = sampler.state(&seen.sampled, *sample).resultants.moment;
                        (mx * (x * x) + my * (y * y) + xy * (2.0 * x * y)) * *times
                    });
                    acting.sum()
                };
                let count = samples.len().max(1);
                #[allow(clippy::cast_precision_loss, reason = "a handful of samples")]
                let mean = samples.iter().map(of).sum::<MomentPerWidth>() / count as f64;
                mean
            };
            of_side(&station.sides[0]) - of_side(&station.sides[1])
        };
        let moments: Vec<MomentPerWidth> = self.stations.iter().map(about).collect();
        for (number, station) in self.stations.iter().enumerate() {
            #[allow(clippy::cast_precision_loss, reason = "a handful of stations")]
            let mean =
                station.near.iter().map(|&near| moments[near]).sum::<MomentPerWidth>() / station.near.len() as f64;
            let worst = &mut self.worst[station.support];
            if worst.is_none_or(|(known, ..)| mean.abs() > known) {
                *worst = Some((mean.abs(), number, under));
            }
        }
    }

    /// Takes in what came later.
    pub(super) fn merge(&mut self, other: &Self) {
        for (own, other) in self.worst.iter_mut().zip(&other.worst) {
            if let Some(other) = other
                && own.is_none_or(|(known, ..)| other.0 > known)
            {
                *own = Some(*other);
            }
        }
    }

    /// By support; none of what clamps nothing.
    pub(super) fn done(self, load_at: &dyn Fn(Option<usize>) -> Option<Point>) -> Vec<Option<ClampMoment>> {
        let placed = self.worst.iter().map(|worst| {
            let (moment, station, under) = (*worst)?;
            let at = self.stations[station].at;
            Some(ClampMoment { moment, at, under: load_at(under), error: Ratio::default() })
        });
        placed.collect()
    }
}

/// Whether a place lies on a piece of a line.
fn on([from, to]: [Point; 2], at: Point, hair: Length) -> bool {
    from.distance(at) + at.distance(to) <= from.distance(to) + hair * 0.1
}
