//! Rim and lines snapped together: places at least `merge` apart, lines that meet at places only.

use std::collections::{BTreeMap, BTreeSet};

use super::{
    error::MeshError,
    plane::{Spot, between, boxes_meet, crossing, distance, nearest, off, within},
    point,
};

/// Rounds of snapping until lines are given up as tangled.
const ROUNDS: usize = 64;

/// Places stand so many times `merge` apart, from each other and from the rim. Above 2/√3 drawing lines to places comes
/// to an end.
pub(super) const SPACING: f64 = 1.2;

/// Two places that are joined, the lower number first.
pub(super) type Join = (usize, usize);

pub(super) const fn join(a: usize, b: usize) -> Join {
    if a < b { (a, b) } else { (b, a) }
}

/// Places, and which of them are joined.
pub(super) struct Arrangement {
    pub(super) places: Vec<Spot>,
    /// The outline anticlockwise, the holes clockwise.
    pub(super) rim: Vec<Vec<usize>>,
    /// For each line, its chains on the panel.
    pub(super) lines: Vec<Vec<Vec<usize>>>,
    /// All that is joined: rim and lines.
    pub(super) joins: BTreeSet<Join>,
}

impl Arrangement {
    /// Corners of the rim stay where they are; what comes near a side of the rim is moved onto it, what comes near a
    /// line draws the line to itself.
    pub(super) fn new(rings: &[Vec<Spot>], lines: &[Vec<Spot>], merge: f64) -> Result<Self, MeshError> {
        let mut snap = Snap::new(rings, merge);
        let mut paths: Vec<Vec<usize>> = Vec::new();
        for line in lines {
            let mut path = Vec::new();
            for corner in line {
                let at = snap.place(*corner);
                if path.last() != Some(&at) {
                    path.push(at);
                }
            }
            paths.push(path);
        }
        snap.settle(&mut paths)?;
        Ok(snap.on_panel(rings, &paths))
    }
}

/// A side of the rim, and the places that came to lie on it.
struct Side {
    ends: [usize; 2],
    /// Share of the way from its first end, and the place.
    on: Vec<(f64, usize)>,
}

struct Snap {
    places: Vec<Spot>,
    rim: Vec<Vec<Side>>,
    /// A line that passes a place nearer than this runs through it.
    merge: f64,
}

impl Snap {
    fn new(rings: &[Vec<Spot>], merge: f64) -> Self {
        let mut places = Vec::new();
        let mut rim = Vec::new();
        for ring in rings {
            let (first, count) = (places.len(), ring.len());
            places.extend_from_slice(ring);
            let side = |i: usize| Side { ends: [first + i, first + (i + 1) % count], on: Vec::new() };
            rim.push((0..count).map(side).collect());
        }
        Self { places, rim, merge }
    }

    /// The number of a place: of one that is near, else a new one, on the rim if that is near.
    fn place(&mut self, spot: Spot) -> usize {
        if let Some(known) = self.known(spot) {
            return known;
        }
        let mut near: Option<(f64, [usize; 2], f64)> = None;
        for (r, ring) in self.rim.iter().enumerate() {
            for (s, side) in ring.iter().enumerate() {
                let piece = side.ends.map(|end| self.places[end]);
                let away = off(piece, spot);
                if away < SPACING * self.merge && near.is_none_or(|(least, ..)| away < least) {
                    near = Some((away, [r, s], nearest(piece, spot)));
                }
            }
        }
        let Some((_, [r, s], share)) = near else {
            self.places.push(spot);
            return self.places.len() - 1;
        };
        let ends = self.rim[r][s].ends.map(|end| self.places[end]);
        let moved = between(ends[0], ends[1], share);
        if let Some(known) = self.known(moved) {
            return known;
        }
        self.places.push(moved);
        let number = self.places.len() - 1;
        let on = &mut self.rim[r][s].on;
        on.push((share, number));
        on.sort_by(|one, other| one.0.total_cmp(&other.0));
        number
    }

    /// The nearest place that is near.
    fn known(&self, spot: Spot) -> Option<usize> {
        let away = self.places.iter().map(|place| distance(*place, spot)).enumerate();
        let near = away.filter(|(_, away)| *away < SPACING * self.merge);
        near.min_by(|one, other| one.1.total_cmp(&other.1)).map(|(number, _)| number)
    }

    /// Lines drawn to the places near them and broken where they cross, until nothing changes.
    fn settle(&mut self, paths: &mut [Vec<usize>]) -> Result<(), MeshError> {
        let mut last = None;
        for _ in 0..ROUNDS {
            last = self.draw(paths).or_else(|| self.cross(paths));
            if last.is_none() {
                return Ok(());
            }
        }
        let place = last.map_or([0.0; 2], |number: usize| self.places[number]);
        Err(MeshError::Tangled { place: point(place) })
    }

    /// Lets every path run through the places that it passes; gives the last of them.
    fn draw(&self, paths: &mut [Vec<usize>]) -> Option<usize> {
        let mut last = None;
        for path in paths {
            let mut through = Vec::new();
            for pair in path.windows(2) {
                self.drawn([pair[0], pair[1]], &mut through, &mut last);
            }
            through.extend(path.last());
            *path = through;
        }
        last
    }

    /// The way from one place to another through those that it passes, the last left out. It ends: the two new pieces
    /// are shorter than the one that they replace. For the triangle of three places has no side below 1.2 `merge`; if
    /// it is acute, its height is below `merge` on its longest side only, and if not, only its longest side has the
    /// foot of a height inside.
    fn drawn(&self, ends: [usize; 2], through: &mut Vec<usize>, last: &mut Option<usize>) {
        let piece = ends.map(|end| self.places[end]);
        let mut passed: Option<(f64, usize)> = None;
        for (number, place) in self.places.iter().enumerate() {
            if ends.contains(&number) || !boxes_meet(piece, [*place; 2], self.merge) {
                continue;
            }
            let away = off(piece, *place);
            if away < self.merge && passed.is_none_or(|(least, _)| away < least) {
                passed = Some((away, number));
            }
        }
        match passed {
            Some((_, number)) => {
                *last = Some(number);
                self.drawn([ends[0], number], through, last);
                self.drawn([number, ends[1]], through, last);
            }
            None => through.push(ends[0]),
        }
    }

    /// Breaks the paths where they cross the rim, each other and themselves; gives the last place of crossing.
    fn cross(&mut self, paths: &mut [Vec<usize>]) -> Option<usize> {
        let pieces: Vec<([usize; 2], Option<[usize; 2]>)> = paths
            .iter()
            .enumerate()
            .flat_map(|(p, path)| path.windows(2).enumerate().map(move |(i, pair)| ([pair[0], pair[1]], Some([p, i]))))
            .chain(self.rim_pieces().into_iter().map(|piece| (piece, None)))
            .collect();
        let mut breaks: BTreeMap<[usize; 2], Vec<(f64, usize)>> = BTreeMap::new();
        let mut last = None;
        for (i, (one, path)) in pieces.iter().enumerate() {
            let Some(path) = path else { break };
            let spots = one.map(|end| self.places[end]);
            for (other, other_path) in &pieces[i + 1..] {
                let others = other.map(|end| self.places[end]);
                if one.iter().any(|end| other.contains(end)) || !boxes_meet(spots, others, 0.0) {
                    continue;
                }
                let Some(share) = crossing(spots, others) else { continue };
                let spot = between(spots[0], spots[1], share);
                let number = self.place(spot);
                last = Some(number);
                breaks.entry(*path).or_default().push((share, number));
                if let Some(other_path) = other_path {
                    breaks.entry(*other_path).or_default().push((nearest(others, spot), number));
                }
            }
        }
        for (p, path) in paths.iter_mut().enumerate() {
            let mut through: Vec<usize> = path.first().copied().into_iter().collect();
            for (i, pair) in path.windows(2).enumerate() {
                let mut here = breaks.remove(&[p, i]).unwrap_or_default();
                here.sort_by(|one, other| one.0.total_cmp(&other.0));
                through.extend(here.into_iter().map(|(_, number)| number));
                through.push(pair[1]);
            }
            through.dedup();
            *path = through;
        }
        last
    }

    /// One ring of the rim as places.
    fn ring(sides: &[Side]) -> Vec<usize> {
        let side = |side: &Side| {
            let on = side.on.iter().map(|(_, number)| *number);
            std::iter::once(side.ends[0]).chain(on).collect::<Vec<_>>()
        };
        sides.iter().flat_map(side).collect()
    }

    fn rim_pieces(&self) -> Vec<[usize; 2]> {
        self.rim.iter().flat_map(|sides| ring_joins(&Self::ring(sides)).collect::<Vec<_>>()).collect()
    }

    /// What of the paths lies on the panel; places that nothing joins are left out.
    fn on_panel(self, rings: &[Vec<Spot>], paths: &[Vec<usize>]) -> Arrangement {
        let rim: Vec<Vec<usize>> = self.rim.iter().map(|sides| Self::ring(sides)).collect();
        let mut joins: BTreeSet<Join> = rim.iter().flat_map(|ring| ring_joins(ring)).map(|[a, b]| join(a, b)).collect();
        let on_rim = joins.clone();
        let rim_places: BTreeSet<usize> = rim.iter().flatten().copied().collect();
        let inside = |spot: Spot| rings.iter().filter(|ring| within(ring, spot)).count() == 1;
        let mut lines = Vec::new();
        for path in paths {
            let mut chains: Vec<Vec<usize>> = Vec::new();
            if let [alone] = path[..]
                && (rim_places.contains(&alone) || inside(self.places[alone]))
            {
                chains.push(vec![alone]);
            }
            let mut open = false;
            for pair in path.windows(2) {
                let here = join(pair[0], pair[1]);
                let on = on_rim.contains(&here) || inside(between(self.places[pair[0]], self.places[pair[1]], 0.5));
                if on {
                    joins.insert(here);
                    match chains.last_mut() {
                        Some(chain) if open => chain.push(pair[1]),
                        _ => chains.push(pair.to_vec()),
                    }
                }
                open = on;
            }
            lines.push(chains);
        }
        renumbered(&self.places, rim, lines, &joins)
    }
}

/// The pairs of neighbours round a closed ring.
pub(super) fn ring_joins(ring: &[usize]) -> impl Iterator<Item = [usize; 2]> {
    ring.iter().zip(ring.iter().cycle().skip(1)).map(|(a, b)| [*a, *b])
}

/// Places in the order in which rim and chains come to them.
fn renumbered(
    places: &[Spot],
    mut rim: Vec<Vec<usize>>,
    mut lines: Vec<Vec<Vec<usize>>>,
    joins: &BTreeSet<Join>,
) -> Arrangement {
    let mut numbers: Vec<Option<usize>> = vec![None; places.len()];
    let mut kept = Vec::new();
    for number in rim.iter_mut().flatten().chain(lines.iter_mut().flatten().flatten()) {
        let old = *number;
        *number = *numbers[old].get_or_insert_with(|| {
            kept.push(places[old]);
            kept.len() - 1
        });
    }
    let joins = joins.iter().filter_map(|(a, b)| Some(join(numbers[*a]?, numbers[*b]?))).collect();
    Arrangement { places: kept, rim, lines, joins }
}
