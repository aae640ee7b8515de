//! Lines of a drawing in its own units, and how pieces become closed lines.

use kurbo::Point;

/// A line of a drawing, or a closed one.
#[derive(Clone, Debug)]
pub(super) struct Path {
    /// Where each piece begins, and its bulge: the tangent of a quarter of the angle of its arc, zero where straight.
    pub(super) pieces: Vec<(Point, f64)>,
    /// Where the last piece ends; where the first begins if nothing stands here.
    pub(super) end: Option<Point>,
}

/// Why pieces are no closed lines.
#[derive(Clone, Copy, Debug)]
pub(super) enum Loose {
    /// A line ends here, and the nearest other end is too far away.
    Open { from: Point, to: Point },
    /// More than two ends meet.
    Branch { at: Point },
}

impl Path {
    fn reversed(self, end: Point) -> Self {
        let bulges = self.pieces.iter().rev().map(|(_, bulge)| -bulge);
        let places = std::iter::once(end).chain(self.pieces.iter().rev().map(|(at, _)| *at));
        let start = self.pieces.first().map(|(at, _)| *at);
        Self { pieces: places.zip(bulges).collect(), end: start }
    }

    /// Both ends of an open line.
    fn ends(&self) -> Option<(Point, Point)> {
        Some((self.pieces.first()?.0, self.end?))
    }
}

/// Joins open lines end to end where their ends are no farther apart than `join`, in the order of the drawing.
pub(super) fn closed(paths: Vec<Path>, join: f64) -> Result<Vec<Vec<(Point, f64)>>, Loose> {
    let mut rings = Vec::new();
    let mut open: Vec<Path> = Vec::new();
    for path in paths {
        match path.ends() {
            Some((start, end)) if start.distance(end) > join => open.push(path),
            // A dot.
            Some(_) if path.pieces.len() == 1 && path.pieces[0].1 == 0.0 => {}
            // Closed, or drawn back to its start without being closed.
            _ => rings.push(path.pieces),
        }
    }
    let ends: Vec<Point> = open.iter().filter_map(Path::ends).flat_map(|(start, end)| [start, end]).collect();
    if let Some(&at) = ends.iter().find(|at| ends.iter().filter(|end| end.distance(**at) <= join).count() > 2) {
        return Err(Loose::Branch { at });
    }
    while !open.is_empty() {
        let mut chain = open.remove(0);
        while let Some((start, end)) = chain.ends() {
            let next = open.iter().position(|other| gap(other, end).is_some_and(|(gap, _)| gap <= join));
            match next.map(|next| open.remove(next)) {
                None if start.distance(end) <= join => chain.end = None,
                None => return Err(Loose::Open { from: end, to: nearest(&open, start, end) }),
                Some(next) => {
                    let Some((from, to)) = next.ends() else { continue };
                    let next = if from.distance(end) <= to.distance(end) { next } else { next.reversed(to) };
                    chain.pieces.extend(next.pieces);
                    chain.end = next.end;
                }
            }
        }
        rings.push(chain.pieces);
    }
    Ok(rings)
}

/// The distance of a place from the nearer end of an open line, and that end.
fn gap(path: &Path, place: Point) -> Option<(f64, Point)> {
    let (start, end) = path.ends()?;
    let nearer = if start.distance(place) <= end.distance(place) { start } else { end };
    Some((nearer.distance(place), nearer))
}

/// The free end nearest to a place: of another line, or the start of the line itself.
fn nearest(open: &[Path], start: Point, place: Point) -> Point {
    let own = (start.distance(place), start);
    let others = open.iter().filter_map(|path| gap(path, place));
    others.fold(own, |least, other| if other.0 < least.0 { other } else { least }).1
}
