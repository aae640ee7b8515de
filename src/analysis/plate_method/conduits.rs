//! Conduits: too narrow for triangles of their own, they soften those that they cross.

use crate::{
    analysis::sections::Sections,
    geometry::Point,
    top::Top,
    units::{Length, Ratio},
};

/// A conduit that fills the core leaves this much of its shear stiffness: the skins alone hold together there. Its own
/// check is open then.
const SKINS_ALONE: f64 = 0.05;

/// Points along each side of a triangle by which a conduit's share of it is counted.
const ACROSS: u32 = 24;

/// What conduits leave of the core's shear stiffness in a triangle. What they shear more by adds up, as it does where the
/// shear flows across them.
pub(super) fn core_left(top: &Top, sections: &Sections, corners: [Point; 3]) -> Ratio {
    let one = Ratio::from(1.0);
    let [a, b, c] = corners;
    let reach = a.distance(b).max(b.distance(c)).max(c.distance(a));
    let softer = top.conduits.iter().zip(&sections.conduits).map(|(conduit, section)| {
        let half = conduit.diameter / 2.0;
        if conduit.along.distance(a) > reach + half {
            return Ratio::default();
        }
        let mut within = 0_u32;
        for i in 0..ACROSS {
            for j in 0..ACROSS {
                // Shares of b and c; beyond the diagonal, those of the triangle that makes it a parallelogram.
                let [mut u, mut v] = [i, j].map(|k| (f64::from(k) + 0.5) / f64::from(ACROSS));
                if u + v > 1.0 {
                    (u, v) = (1.0 - u, 1.0 - v);
                }
                let place =
                    Point { x: a.x + (b.x - a.x) * u + (c.x - a.x) * v, y: a.y + (b.y - a.y) * u + (c.y - a.y) * v };
                within += u32::from(conduit.along.distance(place) < half);
            }
        }
        let share = f64::from(within) / f64::from(ACROSS * ACROSS);
        (one / section.core_left.max(SKINS_ALONE.into()) - one) * share
    });
    one / (one + softer.fold(Ratio::default(), |sum, own| sum + own))
}

/// The conduit that passes a place.
pub(super) fn conduit_at(top: &Top, place: Point) -> Option<usize> {
    top.conduits.iter().position(|conduit| conduit.along.distance(place) < conduit.diameter / 2.0)
}

/// Places along the conduits.
pub(super) fn in_conduits(top: &Top, apart: Length) -> Vec<Point> {
    let mut places = Vec::new();
    for conduit in &top.conduits {
        let length = conduit.along.length();
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "some hundreds")]
        let steps = (length / apart).value.ceil().max(1.0) as u32;
        places.extend((0..=steps).map(|k| conduit.along.at(length * (f64::from(k) / f64::from(steps)))));
    }
    places
}

#[cfg(test)]
mod tests;
