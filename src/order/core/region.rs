//! What of a top is core: within the edge filling, round the backing.

use super::NoPlan;
use crate::{
    geometry::{Contour, Cut, InvalidContour, Point, Ring, Vertex},
    top::Top,
    units::{Area, Length, Ratio},
};

/// Millimetres by which chords lie beside their arcs, with a margin.
const CHORDS: f64 = 0.1;

/// Square millimetres below which something is no piece of core, but rounding.
const NOTHING: f64 = 1.0;

/// Where core lies.
#[derive(Clone, Debug)]
pub(super) struct Region {
    /// The rim of the core.
    rim: Ring,
    /// Rims of holes by name, the edge filling round them with them.
    pub(super) holes: Vec<(String, Ring)>,
    /// Backings by name, as rectangles.
    pub(super) backings: Vec<(String, Vec<Ring>)>,
    pub(super) bounds: [Point; 2],
}

impl Region {
    pub(super) fn of(top: &Top) -> Result<Self, NoPlan> {
        let setback = top.edge.as_ref().map_or_else(Length::default, |edge| edge.setback);
        let contour = top.outline.contour();
        let rim = Ring::of(contour).set_in(setback);
        // Where a neck is narrower than its two edges the set-in rim crosses itself.
        let straight = |at: &Point| Vertex { at: *at, bulge: Ratio::default() };
        Contour::new(rim.places().iter().map(straight).collect()).map_err(|invalid| match invalid {
            InvalidContour::Crosses { at } => NoPlan::Parts { at: Some(at) },
            _ => NoPlan::Parts { at: None },
        })?;
        let near = Length::new::<uom::si::length::millimeter>(CHORDS);
        let out = |place: &&Point| contour.within_by(**place) < setback - near;
        if let Some(at) = rim.places().iter().find(out) {
            return Err(NoPlan::Parts { at: Some(*at) });
        }
        let Some(bounds) = rim.bounds() else { return Err(NoPlan::Parts { at: None }) };
        let grown =
            top.outline.holes().iter().map(|hole| (hole.name.clone(), Ring::of(&hole.contour).set_in(-setback)));
        let holes: Vec<(String, Ring)> = grown.collect();
        // The edge filling of a hole must not reach that of the rim or of another hole.
        let reaches = |(number, (_, hole)): (usize, &(String, Ring))| {
            hole.places().iter().copied().find(|place| {
                let others = top.outline.holes().iter().enumerate().filter(|(other, _)| *other != number);
                contour.within_by(*place) < setback
                    || others.into_iter().any(|(_, other)| -other.contour.within_by(*place) < setback)
            })
        };
        if let Some(at) = holes.iter().enumerate().find_map(reaches) {
            return Err(NoPlan::Parts { at: Some(at) });
        }
        let backings =
            top.backings.iter().map(|backing| (backing.name.clone(), backing.along.rectangles(backing.width)));
        Ok(Self { rim, holes, backings: backings.collect(), bounds })
    }

    /// The area of all core.
    pub(super) fn area(&self) -> Area {
        self.parts(&self.rim).0
    }

    /// What of the core lies in a rectangle: its area, and the rectangle round that; none where there is nothing.
    pub(super) fn within(&self, rectangle: &Ring) -> Option<(Area, [Point; 2])> {
        let (area, bounds) = self.parts(&self.rim.within(rectangle));
        let nothing = Area::new::<uom::si::area::square_millimeter>(NOTHING);
        bounds.filter(|_| area > nothing).map(|bounds| (area, bounds))
    }

    /// Area of core in a part of what lies in the rim, and the rectangle round it.
    fn parts(&self, ring: &Ring) -> (Area, Option<[Point; 2]>) {
        let solid = self.without_backings(ring.clone());
        let area: Area = solid.iter().map(Ring::area).sum();
        let bounds = solid.iter().filter_map(Ring::bounds).reduce(around);
        // Holes are no convex rings: what of them lies here is taken off.
        let Some([low, high]) = bounds else { return (area, None) };
        let corners = [low, Point { x: high.x, ..low }, high, Point { x: low.x, ..high }];
        let rectangle = Ring::new(corners.to_vec());
        let hollow = self.holes.iter().flat_map(|(_, hole)| self.without_backings(hole.within(&rectangle)));
        let hollow: Area = hollow.map(|part| part.area()).sum();
        (area - hollow, bounds)
    }

    fn without_backings(&self, ring: Ring) -> Vec<Ring> {
        let all = self.backings.iter().flat_map(|(_, rectangles)| rectangles);
        all.fold(vec![ring], |parts, backing| parts.iter().flat_map(|part| part.without(backing)).collect())
    }

    /// Whether a place lies in core.
    pub(super) fn holds(&self, place: Point) -> bool {
        let backed = self.backings.iter().flat_map(|(_, rectangles)| rectangles).any(|backing| holds(backing, place));
        !backed && inside(&self.rim, place) && !self.holes.iter().any(|(_, hole)| inside(hole, place))
    }
}

/// The rectangle round two.
pub(super) fn around([a, b]: [Point; 2], [c, d]: [Point; 2]) -> [Point; 2] {
    [Point { x: a.x.min(c.x), y: a.y.min(c.y) }, Point { x: b.x.max(d.x), y: b.y.max(d.y) }]
}

/// Whether a convex ring holds a place.
pub(super) fn holds(convex: &Ring, place: Point) -> bool {
    let places = convex.places();
    let ahead = places.iter().cycle().skip(1);
    places.iter().zip(ahead).all(|(from, to)| Cut { from: *from, to: *to }.left(place) > Length::default())
}

/// Whether any ring holds a place.
fn inside(ring: &Ring, place: Point) -> bool {
    let places = ring.places();
    let crosses = |(from, to): (&Point, &Point)| {
        (from.y > place.y) != (to.y > place.y)
            && place.x < from.x + (to.x - from.x) * ((place.y - from.y) / (to.y - from.y))
    };
    places.iter().zip(places.iter().cycle().skip(1)).filter(|side| crosses(*side)).count() % 2 == 1
}
