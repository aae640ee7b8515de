//! Names on the plan: near their things, where they cover nothing; where that is not right at them, with a line to them.

use crate::report::crossing::crosses;

/// Size of a letter in millimetres of the paper: as wide and as high as on a narrow screen.
const LETTER: [f64; 2] = [2.1, 4.2];

/// Steps in which a name is moved along its thing and beside it, and how many to each side.
const ALONG: (f64, i32) = (4.0, 24);
const BESIDE: (f64, i32) = (1.5, 16);

/// A name that stands farther than this off its thing has a line to it.
const NEAR: f64 = 3.2;

/// So near a line to a thing passes what it crosses.
const CLEAR: f64 = 0.8;

/// What it costs that a name stands outside the top, and that it is moved by a millimetre along its thing: near to all that a millimetre
/// off its thing costs, which is one.
const OUTSIDE: f64 = 15.0;
const MOVED: f64 = 0.05;

/// A box: its middle and half of its sizes.
#[derive(Clone, Copy)]
struct Taken {
    at: [f64; 2],
    half: [f64; 2],
}

impl Taken {
    fn meets(&self, other: &Self) -> bool {
        (0..2).all(|k| (self.at[k] - other.at[k]).abs() < self.half[k] + other.half[k])
    }

    fn crossed(&self, line: [[f64; 2]; 2]) -> bool {
        crosses(line, [0, 1].map(|k| self.at[k] - self.half[k]), self.half.map(|half| 2.0 * half))
    }

    /// How far a place lies outside it.
    fn off(&self, place: [f64; 2]) -> f64 {
        let [x, y] = [0, 1].map(|k| ((place[k] - self.at[k]).abs() - self.half[k]).max(0.0));
        x.hypot(y)
    }
}

/// A name in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Placed {
    /// Its middle.
    pub(super) at: [f64; 2],
    /// A line to its thing, where it does not stand at it.
    pub(super) leader: Option<[[f64; 2]; 2]>,
}

/// What a name belongs to.
#[derive(Clone, Copy)]
pub(super) struct Thing<'a> {
    /// Where the name would stand first.
    pub(super) at: [f64; 2],
    /// How it runs: degrees, clockwise as on the paper.
    pub(super) turned: f64,
    /// Places on its lines.
    pub(super) places: &'a [[f64; 2]],
}

/// Names that stand on the plan, and what they keep off.
pub(super) struct Names {
    /// Left upper and right lower corner of the drawing.
    room: [[f64; 2]; 2],
    taken: Vec<Taken>,
    /// Places on lines, with what it costs to cover them.
    lines: Vec<([f64; 2], f64)>,
}

impl Names {
    pub(super) const fn new(room: [[f64; 2]; 2]) -> Self {
        Self { room, taken: Vec::new(), lines: Vec::new() }
    }

    /// Keeps names off a place, so far on each side.
    pub(super) fn keep_off(&mut self, at: [f64; 2], by: f64) {
        self.taken.push(Taken { at, half: [by, by] });
    }

    /// Keeps names off lines, the more the more it costs.
    pub(super) fn keep_off_lines(&mut self, places: &[[f64; 2]], cost: f64) {
        self.lines.extend(places.iter().map(|place| (*place, cost)));
    }

    /// The best place for a name in the drawing: near its thing, inside the top, over no lines; none where other names and holes
    /// leave none.
    pub(super) fn place(&mut self, text: &str, thing: Thing<'_>, inside: &dyn Fn([f64; 2]) -> bool) -> Option<Placed> {
        let Thing { at: [x, y], turned, places } = thing;
        #[expect(clippy::cast_precision_loss, reason = "a short name")]
        let [long, high] = [text.chars().count() as f64 * LETTER[0], LETTER[1]];
        let (sin, cos) = turned.to_radians().sin_cos();
        let half =
            [f64::midpoint(long * cos.abs(), high * sin.abs()), f64::midpoint(long * sin.abs(), high * cos.abs())];
        let mut best: Option<(f64, Taken)> = None;
        for beside in steps(BESIDE) {
            for along in steps(ALONG) {
                let at = [x + along * cos - beside * sin, y + along * sin + beside * cos];
                let own = Taken { at, half };
                let in_room = (0..2).all(|k| at[k] - half[k] >= self.room[0][k] && at[k] + half[k] <= self.room[1][k]);
                if !in_room || self.taken.iter().any(|other| own.meets(other)) {
                    continue;
                }
                let off = near(&own, thing).1;
                let outside = if inside(at) { 0.0 } else { OUTSIDE };
                let least = off + outside + MOVED * along.abs();
                if best.is_some_and(|(known, _)| known <= least) {
                    continue;
                }
                let covered: f64 =
                    self.lines.iter().filter(|(place, _)| own.off(*place) == 0.0).map(|(_, cost)| cost).sum();
                if best.is_some_and(|(known, _)| known <= least + covered) {
                    continue;
                }
                let crossed = leader(&own, thing).map_or(0.0, |line| self.crossed(line, places));
                if best.is_none_or(|(known, _)| least + covered + crossed < known) {
                    best = Some((least + covered + crossed, own));
                }
            }
        }
        let (_, own) = best?;
        self.taken.push(own);
        let leader = leader(&own, thing);
        if let Some(line) = leader {
            self.keep_off_lines(&along(line), OUTSIDE);
        }
        Some(Placed { at: own.at, leader })
    }

    /// What it costs that a line to a thing crosses others, holes and names; not the thing's own.
    fn crossed(&self, [from, to]: [[f64; 2]; 2], own: &[[f64; 2]]) -> f64 {
        let long = (to[0] - from[0]).hypot(to[1] - from[1]);
        let way = [0, 1].map(|k| (to[k] - from[k]) / long);
        let beside = |place: [f64; 2]| {
            let [dx, dy] = [place[0] - from[0], place[1] - from[1]];
            let along = dx * way[0] + dy * way[1];
            (0.0..long - CLEAR).contains(&along) && (dx * way[1] - dy * way[0]).abs() < CLEAR
        };
        let is_own = |place: [f64; 2]| own.contains(&place);
        let lines = self.lines.iter().filter(|(place, _)| beside(*place) && !is_own(*place));
        let short = (1.0 - CLEAR / long).max(0.0);
        let end = [0, 1].map(|k| from[k] + short * (to[k] - from[k]));
        let holes = self.taken.iter().filter(|taken| taken.crossed([from, end]));
        #[expect(clippy::cast_precision_loss, reason = "some dozens")]
        let holes = holes.count() as f64;
        lines.map(|(_, cost)| cost).sum::<f64>() + holes * OUTSIDE
    }
}

/// The line from a name to its thing, where it does not stand at it.
fn leader(own: &Taken, thing: Thing<'_>) -> Option<[[f64; 2]; 2]> {
    let (end, off) = near(own, thing);
    (off > NEAR && !thing.places.is_empty()).then(|| {
        let from = [0, 1].map(|k| end[k].clamp(own.at[k] - own.half[k], own.at[k] + own.half[k]));
        [from, end]
    })
}

/// Places along a line, no farther from each other than a letter is high.
fn along([from, to]: [[f64; 2]; 2]) -> Vec<[f64; 2]> {
    const STEPS: u8 = 20;
    (0..=STEPS).map(|step| [0, 1].map(|k| from[k] + (to[k] - from[k]) * f64::from(step) / f64::from(STEPS))).collect()
}

/// Steps to both sides, from none outwards.
fn steps((step, count): (f64, i32)) -> impl Iterator<Item = f64> {
    (0..=count).flat_map(move |k| if k == 0 { vec![0.0] } else { vec![f64::from(k) * step, f64::from(-k) * step] })
}

/// The place of a thing that is nearest to a box, and how far off it is.
fn near(own: &Taken, thing: Thing<'_>) -> ([f64; 2], f64) {
    let all = thing.places.iter().copied().chain([thing.at]);
    all.map(|place| (place, own.off(place))).min_by(|a, b| a.1.total_cmp(&b.1)).unwrap_or((thing.at, 0.0))
}

#[cfg(test)]
mod tests {
    use super::{Names, Placed, Thing};

    const ROOM: [[f64; 2]; 2] = [[0.0, 0.0], [172.0, 120.0]];

    fn thing(at: [f64; 2], turned: f64) -> Thing<'static> {
        Thing { at, turned, places: &[] }
    }

    fn line(y: f64) -> Vec<[f64; 2]> {
        (0..=172).map(|x| [f64::from(x), y]).collect()
    }

    #[test]
    fn a_name_keeps_off_holes_and_other_names() {
        let mut names = Names::new(ROOM);
        let first = names.place("port rail", thing([80.0, 40.0], 0.0), &|_| true).map(|placed| placed.at);
        assert_eq!(first, Some([80.0, 40.0]));
        let second = names.place("port strip", thing([80.0, 40.0], 0.0), &|_| true).map(|placed| placed.at);
        let [x, y] = second.unwrap_or_default();
        // Half of nineteen letters, or a line of letters.
        assert!((x - 80.0).abs() >= 19.9 || (y - 40.0).abs() >= 4.2, "{x} {y}");
        names.keep_off([20.0, 40.0], 1.5);
        let third = names.place("x", thing([20.0, 40.0], 0.0), &|_| true).map(|placed| placed.at);
        let [x, y] = third.unwrap_or_default();
        assert!((x - 20.0).abs() >= 2.55 || (y - 40.0).abs() >= 3.6, "{x} {y}");
    }

    #[test]
    fn a_name_stands_beside_its_line_and_in_the_drawing() {
        let mut names = Names::new(ROOM);
        let own = line(60.0);
        names.keep_off_lines(&own, 4.0);
        let at = |x: f64| Thing { at: [x, 60.0], turned: 0.0, places: &own };
        let placed = names.place("radar wiring", at(86.0), &|_| true);
        // Half of a letter's height, in steps of 1.5: the line stays whole.
        assert!(
            matches!(placed, Some(Placed { at: [86.0, y], leader: None }) if ((y - 60.0).abs() - 3.0).abs() < 1e-9),
            "{placed:?}"
        );
        // At the border the whole name is in the drawing: fourteen letters.
        let [x, _] = names.place("starboard rail", at(171.0), &|_| true).map(|placed| placed.at).unwrap_or_default();
        assert!(x + 14.7 <= 172.0 && x > 140.0, "{x}");
    }

    #[test]
    fn a_name_that_has_to_stand_off_has_a_line_to_its_thing() {
        let mut names = Names::new(ROOM);
        let own = line(60.0);
        // All round it is full, up to 12 mm off.
        for y in 48..=72 {
            names.keep_off_lines(&line(f64::from(y)), 4.0);
        }
        let placed = names.place("wall", Thing { at: [86.0, 60.0], turned: 0.0, places: &own }, &|_| true);
        let Some(Placed { at: [x, y], leader: Some([from, to]) }) = placed else { panic!("{placed:?}") };
        assert!((y - 60.0).abs() > 14.0 && (to[1] - 60.0).abs() < 1e-9, "{y} {to:?}");
        assert!((from[1] - y).abs() <= 2.1 + 1e-9 && (from[0] - x).abs() <= 4.2 + 1e-9, "{from:?}");
    }

    #[test]
    fn a_line_to_a_thing_crosses_no_footing() {
        let mut names = Names::new(ROOM);
        let own = line(60.0);
        // All round it is full, up to 12 mm off, and on one side a footing stands as well.
        for y in 48..=72 {
            names.keep_off_lines(&line(f64::from(y)), 4.0);
        }
        let around = |to: f64| {
            let mut full = Names { room: ROOM, taken: names.taken.clone(), lines: names.lines.clone() };
            full.keep_off_lines(&(70..=102).map(|x| [f64::from(x), to]).collect::<Vec<_>>(), 9.0);
            full.place("wall", Thing { at: [86.0, 60.0], turned: 0.0, places: &own }, &|_| true)
        };
        // It goes to the other side.
        for (footing, above) in [(54.0, false), (66.0, true)] {
            let Some(Placed { at: [_, y], leader: Some(_) }) = around(footing) else { panic!("no line") };
            assert_eq!(y < 60.0, above, "{footing} {y}");
        }
    }

    #[test]
    fn a_line_to_a_thing_runs_through_no_name_and_no_name_covers_it() {
        let own = line(60.0);
        let wall = Thing { at: [86.0, 60.0], turned: 0.0, places: &own };
        // All round it is full, up to 12 mm off.
        let full = || {
            let mut names = Names::new(ROOM);
            (48..=72).for_each(|y| names.keep_off_lines(&line(f64::from(y)), 4.0));
            names
        };
        // A long name stands above it: its middle lies far from the line that would run through it.
        for (y, above) in [(54.0, false), (66.0, true)] {
            let mut names = full();
            names.taken.push(super::Taken { at: [60.0, y], half: [40.0, 2.1] });
            let Some(Placed { at: [_, at], leader: Some(_) }) = names.place("wall", wall, &|_| true) else {
                panic!("no line")
            };
            assert_eq!(at < 60.0, above, "{y} {at}");
        }
        let mut names = full();
        let Some(Placed { leader: Some([from, to]), .. }) = names.place("wall", wall, &|_| true) else {
            panic!("no line")
        };
        // A name that would stand on that line stands beside it.
        let middle = [0, 1].map(|k| f64::midpoint(from[k], to[k]));
        let other = names.place("x", Thing { at: middle, turned: 0.0, places: &[] }, &|_| true);
        assert!(other.is_some_and(|other| (other.at[0] - middle[0]).abs() > 1.05), "{other:?} {middle:?}");
    }

    #[test]
    fn outside_the_top_is_the_last_resort() {
        let mut names = Names::new(ROOM);
        let placed = names.place("pad", thing([80.0, 40.0], 0.0), &|[_, y]| y > 50.0);
        assert!(placed.is_some_and(|placed| placed.at[1] > 50.0), "{placed:?}");
    }
}
