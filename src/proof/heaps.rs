//! Where bags lie.

use uom::si::ratio::ratio;

use super::{
    Step,
    test_load::{Kind, TestLoad},
};
use crate::{
    geometry::{Foot, Point},
    top::{Gear, Top},
    units::{Area, Length, Mass, Ratio},
};

/// Steps of the test.
pub(super) const STEPS: usize = 4;

/// Bags upon each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heap {
    /// The middle of the bags.
    pub at: Point,
    /// How many, under all of the load.
    pub bags: usize,
}

/// A number as it counts.
pub(super) fn count(of: usize) -> f64 {
    f64::from(u32::try_from(of).unwrap_or(u32::MAX))
}

/// So many whole ones.
pub(super) fn whole(of: f64) -> usize {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "no more than some ten thousand bags")]
    let whole = (of + 1e-9).floor().clamp(0.0, 1e5) as usize;
    whole
}

/// Heaps of no more than so many bags.
///
/// Each heap takes one bag in each step, so that all steps lie alike and no heap grows into a tower. All over the top they are
/// spread; at one place they stand side by side about it.
pub(super) fn heaps(top: &Top, load: &TestLoad, bags: usize) -> Vec<Heap> {
    let places = (bags / STEPS).max(1);
    let each = bags.min(STEPS);
    let mut all = match load.kind {
        Kind::Place { at } => beside(top, at, places),
        Kind::Even { .. } => spread(top, places),
    };
    // From the rim inwards.
    all.sort_by(|a, b| {
        let within = |at: &Point| top.outline.within_by(*at).value;
        within(a).total_cmp(&within(b))
    });
    all.into_iter().map(|at| Heap { at, bags: each }).collect()
}

/// So many places side by side, the nearest to a place of the top first; fewer where no more lie on it.
fn beside(top: &Top, at: Point, places: usize) -> Vec<Point> {
    let Some(first) = onto(top, at) else { return Vec::new() };
    let [length, width] = [top.criteria.proof_bag_length.value, top.criteria.proof_bag_width.value];
    let reach = i32::try_from(places).unwrap_or(i32::MAX).min(BESIDE);
    let all = (-reach..=reach).flat_map(|i| (-reach..=reach).map(move |j| (f64::from(i), f64::from(j))));
    let mut all: Vec<Point> = all.map(|(i, j)| Point { x: first.x + length * i, y: first.y + width * j }).collect();
    all.retain(|place| lies(top, *place));
    // Those that lie equally near stay in the order of their columns.
    all.sort_by(|a, b| a.distance(first).value.total_cmp(&b.distance(first).value));
    all.truncate(places);
    all
}

/// Bags by step, each step once.
pub(super) fn steps(laid: usize, bag: Mass) -> Vec<Step> {
    let mut steps: Vec<Step> = Vec::with_capacity(STEPS);
    for step in 1..=STEPS {
        let bags = (laid * step).div_ceil(STEPS);
        if steps.last().is_none_or(|last| last.bags < bags) {
            steps.push(Step { bags, share: Ratio::from(count(bags) / count(laid)), mass: bag * count(bags) });
        }
    }
    steps
}

/// A bag, or a heap of them, as gear.
pub(super) fn as_gear(top: &Top, heap: &Heap, bag: Mass) -> Gear {
    let criteria = &top.criteria;
    Gear {
        name: "bags".to_owned(),
        mass: bag * count(heap.bags),
        cg_height: Length::default(),
        at: heap.at,
        foot: Foot::Rectangle { length: criteria.proof_bag_length.value, width: criteria.proof_bag_width.value },
        wind_area: Area::default(),
        wind_height: Length::default(),
        drag: Ratio::default(),
        lift: Ratio::default(),
        limber: false,
        grab_height: None,
        given: Vec::new(),
        fastened: None,
    }
}

fn lies(top: &Top, at: Point) -> bool {
    !as_gear(top, &Heap { at, bags: 1 }, Mass::default()).hangs_over(&top.outline)
}

/// Parts of the way to the middle at which a heap that hangs over is tried.
const INWARDS: u32 = 50;

/// The place, or the first on the way to the middle of the top where a bag lies on it.
fn onto(top: &Top, at: Point) -> Option<Point> {
    let middle = top.outline.centre();
    (0..=INWARDS).map(|part| f64::from(part) / f64::from(INWARDS)).find_map(|share| {
        let place = Point { x: at.x + (middle.x - at.x) * share, y: at.y + (middle.y - at.y) * share };
        lies(top, place).then_some(place)
    })
}

/// Most columns of heaps on either side of a place.
const BESIDE: i32 = 12;

/// Most rows and columns of heaps.
const MOST: u32 = 24;

/// So many places all over the top or as near to it from below as rows and columns make, in cells that are as square as can be.
fn spread(top: &Top, places: usize) -> Vec<Point> {
    let (length, width) = (top.outline.length(), top.outline.width());
    let bag = [top.criteria.proof_bag_length.value, top.criteria.proof_bag_width.value];
    let mut best: Option<((usize, f64), Vec<Point>)> = None;
    for columns in 1..=MOST {
        for rows in 1..=MOST {
            // Of more than twice as many no outline takes so many away.
            if count(places) * 2.0 + 4.0 < f64::from(columns * rows) {
                continue;
            }
            let (x, y) = (length / f64::from(columns), width / f64::from(rows));
            let at = |i: u32, j: u32| Point { x: x * (f64::from(i) + 0.5), y: y * (f64::from(j) + 0.5) };
            let all = (0..columns).flat_map(|i| (0..rows).map(move |j| (i, j)));
            // In cells whose middle lies off the top, or in a hole, nothing is laid; beside a rim a bag moves inwards.
            let on_top = all.map(|(i, j)| at(i, j)).filter(|place| top.outline.within_by(*place) > Length::default());
            let own: Vec<Point> = on_top.filter_map(|place| onto(top, place)).collect();
            if own.is_empty() || own.len() > places {
                continue;
            }
            // No two bags lie in one another.
            let apart = |a: &Point, b: &Point| (a.x - b.x).abs() >= bag[0] || (a.y - b.y).abs() >= bag[1];
            if own.iter().enumerate().any(|(k, a)| own[..k].iter().any(|b| !apart(a, b))) {
                continue;
            }
            // On a pipe it is the pipe that is tested.
            let on_pipe =
                own.iter().filter(|at| top.supports.iter().any(|on| on.distance(**at) < bag[1] / 2.0)).count();
            let oblong = (x / y).get::<ratio>().ln().abs();
            let score = (places - own.len() + on_pipe, oblong);
            let better = |known: &(usize, f64)| score.0 < known.0 || score.0 == known.0 && score.1 < known.1 - 1e-12;
            if best.as_ref().is_none_or(|(known, _)| better(known)) {
                best = Some((score, own));
            }
        }
    }
    best.map(|(_, own)| own).unwrap_or_default()
}
