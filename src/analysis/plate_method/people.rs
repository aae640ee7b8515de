//! People and hands anywhere on the top.

use super::{
    layout::Net,
    loads::{count, square},
};
use crate::{
    finite_element::{Load, Plate},
    geometry::{Axis, Point},
    load_case::LoadCase,
    top::Top,
    units::{Force, Length},
};

/// A load at one of the places where it is tried.
pub(super) struct Placed {
    /// Middle of the load.
    pub(super) at: Point,
    pub(super) load: Load,
    /// Of strength; sag is judged by people at rest.
    pub(super) at_rest: f64,
}

/// What moves in a case, at every place where it is tried: people in rows of one up to all, or a hand at the rim.
pub(super) fn placed(top: &Top, net: &Net, plate: &Plate, case: &LoadCase) -> Vec<Placed> {
    let criteria = &top.criteria;
    if let Some(people) = case.people {
        let side = criteria.standing_footprint.value;
        let at_rest = (people.at_rest / people.each).value;
        let mut all = Vec::new();
        for at in places(top, side) {
            for many in 1..=people.count {
                for axis in if many == 1 { &Axis::BOTH[..1] } else { &Axis::BOTH[..] } {
                    let feet: Vec<Point> = row(at, *axis, many, criteria.people_spacing.value)
                        .into_iter()
                        .flat_map(|middle| square(middle, side, side))
                        .collect();
                    all.extend(spread(net, plate, &feet, people.each * f64::from(u32::try_from(many).unwrap_or(1)))
                        .map(|load| Placed { at, load, at_rest }));
                }
            }
        }
        return all;
    }
    if let Some(hand) = case.hand {
        let length = criteria.hand_length.value;
        return rim_places(net, length)
            .into_iter()
            .filter_map(|(at, points)| {
                // A grab is over at once: it is judged by strength alone.
                spread(net, plate, &points, hand).map(|load| Placed { at, load, at_rest: 0.0 })
            })
            .collect();
    }
    Vec::new()
}

/// A force spread over points, those off the top left out and their share given to the others.
fn spread(net: &Net, plate: &Plate, points: &[Point], force: Force) -> Option<Load> {
    let held: Vec<(Point, usize)> =
        points.iter().filter_map(|&place| net.mesh.holding(place).map(|triangle| (place, triangle))).collect();
    if held.is_empty() {
        return None;
    }
    let kept: Vec<Point> = held.iter().map(|(place, _)| *place).collect();
    let each = force / count(&kept);
    Some(held.iter().fold(Load::none(plate), |load, &(place, triangle)| load.with_force(plate, triangle, place, each)))
}

/// Places half a footprint apart, up to half a footprint from the rim.
fn places(top: &Top, side: Length) -> Vec<Point> {
    let stations = |size: Length| {
        let room = size - side;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few dozen")]
        let steps = (room / (side * 0.5)).value.ceil().max(1.0) as u32;
        (0..=steps).map(move |k| side / 2.0 + room * (f64::from(k) / f64::from(steps)))
    };
    let outline = &top.outline;
    stations(outline.length)
        .flat_map(|x| stations(outline.width).map(move |y| Point { x, y }))
        // At a rounded corner one stands as far out as the footprint's middle has the top below it.
        .filter(|place| outline.within_by(*place) > side * 0.25)
        .collect()
}

/// The middles of a row of people.
fn row(at: Point, axis: Axis, many: usize, spacing: Length) -> Vec<Point> {
    let many = u32::try_from(many).unwrap_or(1);
    (0..many)
        .map(|k| {
            let off = spacing * (f64::from(k) - 0.5 * f64::from(many - 1));
            match axis {
                Axis::X => Point { x: at.x + off, ..at },
                Axis::Y => Point { y: at.y + off, ..at },
            }
        })
        .collect()
}

/// Stretches of the rim that a hand takes hold of, one after another, each as points just within the rim.
fn rim_places(net: &Net, length: Length) -> Vec<(Point, Vec<Point>)> {
    let mut all = Vec::new();
    for ring in net.mesh.rim() {
        let mut points: Vec<(Length, Point)> = Vec::new();
        let mut along = Length::default();
        for (k, &from) in ring.iter().enumerate() {
            let [a, b] = [from, ring[(k + 1) % ring.len()]].map(|corner| net.mesh.nodes()[corner]);
            let side = a.distance(b);
            for share in [0.125, 0.375, 0.625, 0.875] {
                points.push((along + side * share, Point { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }));
            }
            along += side;
        }
        for (k, &(from, at)) in points.iter().enumerate().step_by(2) {
            let held: Vec<Point> = (0..points.len())
                .map(|j| points[(k + j) % points.len()])
                .take_while(|(to, _)| {
                    let run = *to - from;
                    (if run < Length::default() { run + along } else { run }) <= length
                })
                .map(|(_, place)| place)
                .collect();
            all.push((held.get(held.len() / 2).copied().unwrap_or(at), held));
        }
    }
    all
}
