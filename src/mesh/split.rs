//! Rim and lines divided to the size of the triangles.

use std::collections::{BTreeMap, BTreeSet};

use super::{
    MOST_NODES, Sizes,
    arrange::{Join, join},
    error::MeshError,
    plane::{Spot, between, boxes_meet, distance, off},
    point,
};

/// A piece is at most so many times as long as its way to the next line: a band between two lines gets triangles of
/// about that proportion. The right-angled triangle of that shape has 18.4°, atan(1/3).
const PROPORTION: f64 = 3.0;
/// A piece may be longer than asked by so much of itself, rather than be cut in two.
const OVER: f64 = 0.35;
/// Steps in which the size is read, as a share of the size itself.
const STEP: f64 = 0.125;

/// Which joins were cut, and where: the places between, from the end with the lower number.
pub(super) type Cuts = BTreeMap<Join, Vec<usize>>;

/// The places from one end of a join to the other, the last left out.
pub(super) fn along(cuts: &Cuts, [a, b]: [usize; 2], into: &mut Vec<usize>) {
    let Some(inner) = cuts.get(&join(a, b)) else {
        into.push(a);
        return;
    };
    let mut way: Vec<usize> = std::iter::once(a.min(b)).chain(inner.iter().copied()).chain([a.max(b)]).collect();
    if a > b {
        way.reverse();
    }
    for pair in way.windows(2) {
        along(cuts, [pair[0], pair[1]], into);
    }
}

/// Cuts every join to its size.
pub(super) fn split(places: &mut Vec<Spot>, joins: &BTreeSet<Join>, sizes: &Sizes<'_>) -> Result<Cuts, MeshError> {
    let pieces: Vec<[Spot; 2]> = joins.iter().map(|(a, b)| [places[*a], places[*b]]).collect();
    let mut cuts = Cuts::new();
    for (index, (a, b)) in joins.iter().enumerate() {
        let piece = pieces[index];
        // Joins that share an end with this one meet it: how near they come says nothing.
        let others: Vec<[Spot; 2]> = joins
            .iter()
            .zip(&pieces)
            .filter(|((c, d), _)| ![a, b].into_iter().any(|end| end == c || end == d))
            .map(|(_, piece)| *piece)
            .collect();
        let mut inner = Vec::new();
        for share in shares(piece, &others, sizes)? {
            inner.push(places.len());
            places.push(between(piece[0], piece[1], share));
        }
        if places.len() > MOST_NODES {
            return Err(MeshError::TooFine { place: point(piece[0]) });
        }
        if !inner.is_empty() {
            cuts.insert((*a, *b), inner);
        }
    }
    Ok(cuts)
}

/// Shares of the way along a piece at which it is cut: as many lengths of the asked size between two cuts as between
/// any other two.
fn shares(piece: [Spot; 2], others: &[[Spot; 2]], sizes: &Sizes<'_>) -> Result<Vec<f64>, MeshError> {
    let length = distance(piece[0], piece[1]);
    let asked = |at: f64| -> Result<f64, MeshError> {
        let spot = between(piece[0], piece[1], at / length);
        let size = sizes.at(spot)?;
        let near = others.iter().filter(|other| boxes_meet([spot; 2], **other, size / PROPORTION));
        Ok(near.map(|other| PROPORTION * off(*other, spot)).fold(size, f64::min))
    };
    // Way along the piece, and how many pieces of the asked size lie before it.
    let mut counted = vec![(0.0, 0.0)];
    let (mut at, mut count) = (0.0, 0.0);
    while at < length {
        let step = (STEP * asked(at)?).min(length - at);
        count += step / asked(at + 0.5 * step)?;
        at = if length - at - step < 1e-9 * length { length } else { at + step };
        counted.push((at, count));
        if counted.len() > MOST_NODES {
            return Err(MeshError::TooFine { place: point(piece[0]) });
        }
    }
    let parts = (count - OVER).ceil().max(1.0);
    let mut found = Vec::new();
    let mut steps = counted.windows(2).peekable();
    let mut next = 1.0;
    while next < parts - 0.5 {
        let goal = count * next / parts;
        while steps.peek().is_some_and(|step| step[1].1 < goal) {
            steps.next();
        }
        let Some(step) = steps.peek() else { break };
        let share = (goal - step[0].1) / (step[1].1 - step[0].1);
        found.push((step[0].0 + share * (step[1].0 - step[0].0)) / length);
        next += 1.0;
    }
    Ok(found)
}
