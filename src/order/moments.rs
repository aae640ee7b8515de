//! Moments of the weight about the frame.

use crate::{
    geometry::Point,
    load::weight::gravity,
    top::{Top, Weight},
    units::{Force, Length, Torque},
};

/// Moments of a weight about the middle of the frame, at the lower face of the inner skin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moments {
    /// The middle of the rectangle round all supports; of the outline where there are none.
    pub about: Point,
    /// Bare, then with gear.
    pub of: [Moment; 2],
}

/// Moments of one weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// The weight.
    pub weight: Force,
    /// About the axis across the top through the middle of the frame: above zero it tips towards greater *x*.
    pub across: Torque,
    /// About the axis along the top through the middle of the frame: above zero it tips towards greater *y*.
    pub along: Torque,
    /// About any axis in the plane of the frame, for each g from the side.
    pub sideways: Torque,
}

/// Moments of the weight, bare and with gear.
///
/// ```text
/// M_across = m g (x − x_f),  M_along = m g (y − y_f),  M_sideways = m g z
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *m* | mass |
/// | *x*, *y*, *z* | its centre; *z* above the lower face of the inner skin |
/// | `x_f`, `y_f` | middle of the frame |
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): statics.
pub(super) fn moments(top: &Top, weight: &Weight) -> Moments {
    let about = middle_of_frame(top);
    let of = |mass, centre: Point, height: Length| {
        let force: Force = mass * gravity();
        let torque = |arm: Length| Torque::new::<uom::si::torque::newton_meter>(force.value * arm.value);
        Moment {
            weight: force,
            across: torque(centre.x - about.x),
            along: torque(centre.y - about.y),
            sideways: torque(height),
        }
    };
    let bare = of(weight.bare, weight.bare_centre, weight.bare_height);
    Moments { about, of: [bare, of(weight.total, weight.centre, weight.height)] }
}

fn middle_of_frame(top: &Top) -> Point {
    let mut places = top.supports.iter().flat_map(|support| support.along.points().iter().copied());
    let Some(first) = places.next() else {
        return Point { x: 0.5 * top.outline.length(), y: 0.5 * top.outline.width() };
    };
    let [low, high] = places.fold([first; 2], |[low, high], place| {
        [
            Point { x: low.x.min(place.x), y: low.y.min(place.y) },
            Point { x: high.x.max(place.x), y: high.y.max(place.y) },
        ]
    });
    Point { x: 0.5 * (low.x + high.x), y: 0.5 * (low.y + high.y) }
}
