//! Lines that run beside a contour, everywhere as far off.
//!
//! Bare numbers in here are metres.

mod cut;

use uom::si::{length::meter, ratio::ratio};

use self::cut::{Bounds, MEETS, Raw, pieces_of, point, xy};
use super::{Contour, Vertex, piece::Piece};
use crate::{
    geometry::Point,
    units::{Length, Ratio},
};

/// How much nearer to the contour a piece may run and still counts as one beside it; above the rounding of its middle.
const NEARER: f64 = 1e-8;

impl Contour {
    /// The lines that run beside it at a distance, outside of it where that is above zero, inside where below: none where
    /// nothing is left within, more than one where a neck closes. Arcs stay arcs; round an outer corner the line is an arc.
    ///
    /// ```
    /// use skinspan::{geometry::Contour, units::Length};
    /// use uom::si::{area::square_meter, length::meter};
    /// let m = Length::new::<meter>;
    /// let rectangle = Contour::rectangle(m(3.0), m(2.0), [m(0.5); 4]).expect("corners that fit");
    /// let area = |by: f64| rectangle.beside(m(by)).iter().map(|line| line.area().get::<square_meter>()).sum::<f64>();
    /// // Outside, corners of 0.6 m: 3.2 · 2.2 − (4 − π) 0.36; inside, of 0.2 m: 2.4 · 1.4 − (4 − π) 0.04.
    /// assert!((area(0.1) - 6.730_973).abs() < 1e-6);
    /// assert!((area(-0.3) - 3.325_664).abs() < 1e-6);
    /// // Farther in than the corners are round they are sharp: 1.8 · 0.8.
    /// assert!((area(-0.6) - 1.44).abs() < 1e-9);
    /// assert_eq!(area(-1.1), 0.0);
    /// ```
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): the pieces moved square to themselves and arcs about the corners, cut where they
    /// meet each other; what comes nearer to the contour than the distance falls away.
    #[must_use]
    pub fn beside(&self, by: Length) -> Vec<Self> {
        let off = by.get::<meter>();
        if off == 0.0 {
            return vec![self.clone()];
        }
        let raw = self.moved_out(off);
        let boxes: Vec<Bounds> = raw.iter().map(Bounds::of).collect();
        let (pieces, around) = (&raw, &boxes);
        let near = |k: usize| {
            let beside = pieces.iter().zip(around).filter(move |(_, other)| around[k].meets(other));
            beside.map(|(piece, _)| piece)
        };
        let cut = raw.iter().enumerate().flat_map(|(k, piece)| pieces_of(piece, near(k)));
        let kept: Vec<Raw> = cut.filter(|piece| self.runs_beside(piece, off)).collect();
        rings(kept)
    }

    /// Every piece moved to the right of its way, with arcs about the corners that open.
    fn moved_out(&self, off: f64) -> Vec<Raw> {
        let pieces: Vec<Piece> = self.pieces().collect();
        let mut all = Vec::with_capacity(2 * pieces.len());
        for (index, piece) in pieces.iter().enumerate() {
            all.extend(moved(piece, off));
            let next = &pieces[(index + 1) % pieces.len()];
            let (from, to) = (piece.way(1.0), next.way(0.0));
            let turn = (from[0] * to[1] - from[1] * to[0]).atan2(from[0] * to[0] + from[1] * to[1]);
            // The corner opens on the side that the line goes to.
            if turn * off > 0.0 && off.abs() * turn.abs() > MEETS {
                let corner = xy(piece.to);
                let end = |way: [f64; 2]| [corner[0] + off * way[1], corner[1] - off * way[0]];
                all.push(Raw { from: end(from), to: end(to), bulge: (turn / 4.0).tan() });
            }
        }
        all
    }

    fn runs_beside(&self, piece: &Raw, off: f64) -> bool {
        let within = self.within_by(piece.at(0.5)).get::<meter>();
        -within * off.signum() >= off.abs() - NEARER
    }
}

/// A piece that is moved square to itself; none of an arc that the distance is beyond the centre of.
fn moved(piece: &Piece, off: f64) -> Option<Raw> {
    let (start, end) = (piece.way(0.0), piece.way(1.0));
    if !piece.is_straight() && piece.radius().get::<meter>() + off * piece.bulge.signum() <= MEETS {
        return None;
    }
    let out = |at: Point, way: [f64; 2]| [xy(at)[0] + off * way[1], xy(at)[1] - off * way[0]];
    let bulge = if piece.is_straight() { 0.0 } else { piece.bulge };
    Some(Raw { from: out(piece.from, start), to: out(piece.to, end), bulge })
}

impl Piece {
    /// Its direction at its start or its end.
    fn way(self, end: f64) -> [f64; 2] {
        let ([x0, y0], [x1, y1]) = (xy(self.from), xy(self.to));
        // From the direction of its chord an arc turns by half its angle to either side.
        let angle = (y1 - y0).atan2(x1 - x0)
            + if self.is_straight() { 0.0 } else { (2.0 * end - 1.0) * 2.0 * self.bulge.atan() };
        [angle.cos(), angle.sin()]
    }
}

fn apart(one: [f64; 2], other: [f64; 2]) -> f64 {
    (one[0] - other[0]).hypot(one[1] - other[1])
}

/// Ends of cut pieces are where two computed meetings are.
const JOINS: f64 = 10.0 * MEETS;

/// Pieces end to end as contours.
fn rings(mut pieces: Vec<Raw>) -> Vec<Contour> {
    leave_loose_ends(&mut pieces);
    let mut rings = Vec::new();
    while !pieces.is_empty() {
        let mut ring = vec![pieces.remove(0)];
        let (first, mut end) = (ring[0].from, ring[0].to);
        while apart(first, end) > JOINS {
            let Some(next) = pieces.iter().position(|piece| apart(piece.from, end) <= JOINS) else { break };
            let next = pieces.remove(next);
            end = next.to;
            ring.push(next);
        }
        let vertex = |piece: &Raw| Vertex { at: point(piece.from), bulge: Ratio::new::<ratio>(piece.bulge) };
        if apart(first, end) <= JOINS {
            rings.extend(Contour::new(ring.iter().map(vertex).collect()));
        }
    }
    rings
}

/// Where two pieces cross at a hair's breadth of an angle, what is past the crossing comes hardly nearer than it may, and
/// leads nowhere.
fn leave_loose_ends(pieces: &mut Vec<Raw>) {
    loop {
        let goes_on = |piece: &Raw| {
            pieces.iter().any(|next| apart(piece.to, next.from) <= JOINS)
                && pieces.iter().any(|before| apart(before.to, piece.from) <= JOINS)
        };
        let kept: Vec<Raw> = pieces.iter().filter(|piece| goes_on(piece)).copied().collect();
        if kept.len() == pieces.len() {
            return;
        }
        *pieces = kept;
    }
}
