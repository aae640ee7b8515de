//! People and hands anywhere on the top.

use super::{
    layout::Net,
    loads::{count, square},
};
use crate::{
    finite_element::{Load, Plate, Sharp},
    geometry::{Axis, Point, Polyline},
    load_case::LoadCase,
    top::Top,
    units::{Force, Length},
};

/// A load at one of the places where it is tried.
pub(super) struct Placed {
    /// Middle of the load.
    pub(super) at: Point,
    /// Where each person stands, or the hand holds on, with the distance within which its punching rules.
    pub(super) beside: Vec<Sharp>,
    /// Points on the top, each in its triangle, that bear the same force each.
    points: Vec<(Point, usize)>,
    each: Force,
    /// Of strength; sag is judged by people at rest.
    pub(super) at_rest: f64,
}

impl Placed {
    pub(super) fn load(&self, plate: &Plate) -> Load {
        let forces = self.points.iter();
        forces.fold(Load::none(plate), |load, &(place, triangle)| load.with_force(plate, triangle, place, self.each))
    }
}

/// Cases on which the same moves, and where it is tried: all degrees and states of the top look at the same.
pub(super) struct Moving {
    /// The cases, with how many times it acts in each.
    pub(super) cases: Vec<(usize, f64)>,
    /// None where nothing moves.
    pub(super) placed: Vec<Placed>,
}

/// What moves in cases. Those with the same people on them share what these do; a hand up does what a hand down does, the
/// other way.
pub(super) fn moving(top: &Top, net: &Net, cases: &[LoadCase], numbers: &[usize]) -> Vec<Moving> {
    let mut groups: Vec<Vec<(usize, f64)>> = Vec::new();
    for &number in numbers {
        let case = &cases[number];
        let over = |known: &LoadCase| {
            let hands = known.hand.zip(case.hand).filter(|(known, _)| *known != Force::default());
            match hands {
                Some((known_hand, hand)) => Some((hand / known_hand).value),
                None => (known.hand == case.hand).then_some(1.0),
            }
            .filter(|_| known.people == case.people)
        };
        match groups.iter_mut().find_map(|group| over(&cases[group[0].0]).map(|times| (times, group))) {
            Some((times, group)) => group.push((number, times)),
            None => groups.push(vec![(number, 1.0)]),
        }
    }
    groups.into_iter().map(|group| Moving { placed: placed(top, net, &cases[group[0].0]), cases: group }).collect()
}

/// What moves in a case, at every place where it is tried: people in rows of one up to all, or a hand at the rim.
pub(super) fn placed(top: &Top, net: &Net, case: &LoadCase) -> Vec<Placed> {
    let criteria = &top.criteria;
    if let Some(people) = case.people {
        // From the outer skin a load spreads at 45 degrees to the mid-plane.
        let side = criteria.standing_footprint.value + net.disc * 2.0;
        let at_rest = (people.at_rest / people.each).value;
        let mut all = Vec::new();
        for at in places(top, side) {
            for many in 1..=people.count {
                for axis in if many == 1 { &Axis::BOTH[..1] } else { &Axis::BOTH[..] } {
                    let row = row(at, *axis, many, criteria.people_spacing.value);
                    let feet: Vec<Point> = row.iter().flat_map(|&middle| square(middle, side, side)).collect();
                    let force = people.each * f64::from(u32::try_from(many).unwrap_or(1));
                    let beside: Vec<Sharp> =
                        row.iter().map(|&at| Sharp { at, radius: side / 2.0 + net.disc * 2.0 }).collect();
                    all.extend(spread(net, &feet, force).map(|(points, each)| Placed {
                        at,
                        beside: beside.clone(),
                        points,
                        each,
                        at_rest,
                    }));
                }
            }
        }
        return all;
    }
    if let Some(hand) = case.hand {
        // The palm reaches in from the rim: its middle acts half of it inside, as by hand. Spread to the mid-plane it would
        // reach over the rim or act farther in.
        let side = criteria.hand_length.value;
        return rim_places(net, side / 2.0)
            .into_iter()
            .filter_map(|at| {
                let beside = vec![Sharp { at, radius: side / 2.0 + net.disc * 3.0 }];
                // A grab is over at once: it is judged by strength alone.
                let held = spread(net, &square(at, side, side), hand);
                held.map(|(points, each)| Placed { at, beside, points, each, at_rest: 0.0 })
            })
            .collect();
    }
    Vec::new()
}

/// A force spread over points, those off the top left out and their share given to the others.
fn spread(net: &Net, points: &[Point], force: Force) -> Option<(Vec<(Point, usize)>, Force)> {
    let on_top = points.iter().filter_map(|&place| net.mesh.holding(place).map(|triangle| (place, triangle)));
    let points: Vec<(Point, usize)> = on_top.collect();
    let each = force / count(&points);
    (!points.is_empty()).then_some((points, each))
}

/// Places a twelfth of the smaller side apart, up to half a footprint from the rim.
fn places(top: &Top, side: Length) -> Vec<Point> {
    let apart = top.outline.length().min(top.outline.width()) / 12.0;
    let stations = |size: Length| {
        let room = size - side;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few dozen")]
        let steps = (room / apart).value.ceil().max(1.0) as u32;
        (0..=steps).map(move |k| side / 2.0 + room * (f64::from(k) / f64::from(steps)))
    };
    let outline = &top.outline;
    stations(outline.length())
        .flat_map(|x| stations(outline.width()).map(move |y| Point { x, y }))
        // At a rounded corner, beside a hole, one stands as far out as the middle of the footprint has the top below it.
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

/// Places along the rim, some way inside it, where a hand takes hold: each as far from the next as it reaches in, twice.
fn rim_places(net: &Net, inside: Length) -> Vec<Point> {
    let mut all: Vec<Point> = Vec::new();
    for ring in net.mesh.rim() {
        let corners: Vec<Point> = ring.iter().chain(ring.first()).map(|corner| net.mesh.nodes()[*corner]).collect();
        let Ok(rim) = Polyline::new(corners) else { continue };
        let (length, apart) = (rim.length(), inside * 2.0);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few hundred")]
        let many = (length / apart).value.ceil().max(1.0) as u32;
        let step = length / f64::from(many);
        let hair = step * 1e-3;
        for k in 0..many {
            let along = step * (f64::from(k) + 0.5);
            let [at, before, behind] = [along, along - hair, along + hair].map(|along| rim.at(along));
            // The top lies on the left of its rim.
            let side = before.distance(behind);
            let inwards = [(before.y - behind.y) / side, (behind.x - before.x) / side];
            let at = Point { x: at.x + inside * inwards[0], y: at.y + inside * inwards[1] };
            if net.mesh.holding(at).is_some() {
                all.push(at);
            }
        }
    }
    all
}
