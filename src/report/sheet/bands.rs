//! Bands and contour lines of a value that is known at the corners of triangles and straight between them.

use std::collections::BTreeMap;

/// Where a border runs: through a corner, or through a side between two corners.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Knot {
    Corner(usize),
    Side(usize, usize),
}

/// A value over triangles, in the plane of the paper.
pub(super) struct Surface<'a> {
    pub(super) places: &'a [[f64; 2]],
    pub(super) values: &'a [f64],
    pub(super) triangles: &'a [[usize; 3]],
}

/// All that lies at a level or above.
pub(super) struct Above {
    /// Closed borders of it.
    pub(super) rings: Vec<Vec<[f64; 2]>>,
    /// The lines on which the value is that of the level.
    pub(super) lines: Vec<Vec<[f64; 2]>>,
}

impl Surface<'_> {
    /// Cuts every triangle at the level and joins what is left: sides that two pieces share fall away.
    pub(super) fn above(&self, level: f64) -> Above {
        let mut sides: BTreeMap<(Knot, Knot), i32> = BTreeMap::new();
        let mut cuts: Vec<(Knot, Knot)> = Vec::new();
        for triangle in self.triangles {
            let (ring, cut) = self.cut(triangle, level);
            for (k, &from) in ring.iter().enumerate() {
                let to = ring[(k + 1) % ring.len()];
                let (key, way) = if from < to { ((from, to), 1) } else { ((to, from), -1) };
                *sides.entry(key).or_insert(0) += way;
            }
            cuts.extend(cut);
        }
        let borders = sides.into_iter().flat_map(|((from, to), ways)| {
            let side = if ways > 0 { (from, to) } else { (to, from) };
            (0..ways.abs()).map(move |_| side)
        });
        let place = |knot: Knot| self.place(knot, level);
        let drawn = |chains: Vec<Vec<Knot>>| chains.into_iter().map(|chain| chain.into_iter().map(place).collect());
        Above { rings: drawn(chains(borders.collect())).collect(), lines: drawn(chains(cuts)).collect() }
    }

    /// What of a triangle lies above, anticlockwise as it does, and the piece of the contour line through it.
    fn cut(&self, triangle: &[usize; 3], level: f64) -> (Vec<Knot>, Option<(Knot, Knot)>) {
        let above = |corner: usize| self.values[corner] >= level;
        let mut ring = Vec::with_capacity(4);
        let mut ends = [None; 2];
        for k in 0..3 {
            let (corner, next) = (triangle[k], triangle[(k + 1) % 3]);
            if above(corner) {
                ring.push(Knot::Corner(corner));
            }
            if above(corner) != above(next) {
                let knot = Knot::Side(corner.min(next), corner.max(next));
                ring.push(knot);
                // The line leaves the piece where it goes down and comes back where it goes up: what is above lies on its left.
                ends[usize::from(above(next))] = Some(knot);
            }
        }
        let [down, up] = ends;
        (ring, down.zip(up))
    }

    fn place(&self, knot: Knot, level: f64) -> [f64; 2] {
        match knot {
            Knot::Corner(corner) => self.places[corner],
            Knot::Side(low, high) => {
                let share = (level - self.values[low]) / (self.values[high] - self.values[low]);
                let ([x0, y0], [x1, y1]) = (self.places[low], self.places[high]);
                [x0 + share * (x1 - x0), y0 + share * (y1 - y0)]
            }
        }
    }
}

/// Joins pieces end to end, each chain begun where nothing leads to, then those that close.
fn chains(pieces: Vec<(Knot, Knot)>) -> Vec<Vec<Knot>> {
    let mut onwards: BTreeMap<Knot, Vec<Knot>> = BTreeMap::new();
    let mut balance: BTreeMap<Knot, i32> = BTreeMap::new();
    for (from, to) in pieces {
        onwards.entry(from).or_default().push(to);
        *balance.entry(from).or_insert(0) += 1;
        *balance.entry(to).or_insert(0) -= 1;
    }
    let starts: Vec<Knot> = balance.into_iter().filter(|(_, more)| *more > 0).map(|(knot, _)| knot).collect();
    let mut all = Vec::new();
    for start in starts {
        while let Some(chain) = chain(start, &mut onwards) {
            all.push(chain);
        }
    }
    while let Some(start) = onwards.iter().find(|(_, next)| !next.is_empty()).map(|(knot, _)| *knot) {
        all.extend(chain(start, &mut onwards));
    }
    all
}

fn chain(start: Knot, onwards: &mut BTreeMap<Knot, Vec<Knot>>) -> Option<Vec<Knot>> {
    let mut chain = vec![start];
    let mut here = start;
    while let Some(next) = onwards.get_mut(&here).and_then(Vec::pop) {
        chain.push(next);
        here = next;
        if here == start {
            break;
        }
    }
    onwards.retain(|_, next| !next.is_empty());
    (chain.len() > 1).then_some(chain)
}

/// A line without the points that it would pass within a distance of anyhow (after Douglas and Peucker).
pub(super) fn slimmed(line: &[[f64; 2]], within: f64) -> Vec<[f64; 2]> {
    let mut kept = vec![false; line.len()];
    let mut left = vec![(0, line.len().saturating_sub(1))];
    // A ring has its two ends in one place: its farthest corner parts it.
    while let Some((from, to)) = left.pop() {
        for end in [from, to] {
            if let Some(kept) = kept.get_mut(end) {
                *kept = true;
            }
        }
        let far = (from + 1..to)
            .map(|k| (k, off(line[k], line[from], line[to])))
            .max_by(|a, b| a.1.total_cmp(&b.1).then(b.0.cmp(&a.0)));
        if let Some((k, _)) = far.filter(|(_, off)| *off > within) {
            left.extend([(from, k), (k, to)]);
        }
    }
    line.iter().zip(kept).filter(|(_, kept)| *kept).map(|(point, _)| *point).collect()
}

/// Distance of a point from the straight piece between two.
fn off([x, y]: [f64; 2], [ax, ay]: [f64; 2], [bx, by]: [f64; 2]) -> f64 {
    let (dx, dy) = (bx - ax, by - ay);
    let square = dx * dx + dy * dy;
    let along = if square > 0.0 { (((x - ax) * dx + (y - ay) * dy) / square).clamp(0.0, 1.0) } else { 0.0 };
    (x - ax - along * dx).hypot(y - ay - along * dy)
}

#[cfg(test)]
mod tests;
