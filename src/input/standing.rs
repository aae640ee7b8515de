//! What a top stands on: pipes, walls and pads that hold it, none upon another, posts that hold a pipe.

use std::ops::Range;

use uom::si::ratio::ratio;

use super::{outline::words, problem::Problem, reader::Room};
use crate::{
    geometry::{Point, Polyline},
    top::{Carrier, Conduit, Pipe, Support},
    units::Length,
};

/// Pieces of pipe whose directions differ by less than this, as a sine, run side by side.
const SIDE_BY_SIDE: f64 = 0.05;

/// Reports supports on which no top stands; each comes with the place of its line in the file.
pub(super) fn read_standing(root: &Room<'_>, supports: &[(Support, Range<usize>)]) {
    for (index, (support, range)) in supports.iter().enumerate() {
        for (other, _) in &supports[..index] {
            if let Some(at) = lies_on(support, other) {
                root.report(
                    Problem::at(range.clone(), format!("{} lies on {} at {}", support.name, other.name, words(root, at)))
                        .help(if support.pipe().and(other.pipe()).is_some() {
                            "is one a copy of the other? Lead it where it runs: pipes side by side stand apart by their diameter"
                        } else {
                            "is one a copy of the other? Each place of the top is carried once: end one before the other begins"
                        }),
                );
                return;
            }
        }
    }
    let Some((first, range)) = supports.first() else { return };
    let all: Vec<Point> = supports.iter().flat_map(|(support, _)| held_at(support)).collect();
    let thickest = supports.iter().map(|(support, _)| support.thickness()).fold(first.thickness(), Length::max);
    // A clamped edge keeps the top from tipping over it.
    if off_one_line(&all) > thickest || supports.iter().any(|(support, _)| support.clamps()) {
        return;
    }
    let help = "add a `[[pipe]]` beside it, as far off as the top allows, for example with \
                `along = [[\"12 in\", \"60 in\"], [\"98 in\", \"60 in\"]]`";
    let message = match supports {
        [_] if first.is_pad() => format!("the top stands on {} alone: it tips over it", first.name),
        [_] => format!("the top stands on {} alone, which is straight: it tips over it", first.name),
        _ if supports.iter().all(|(support, _)| support.pipe().is_some()) => {
            "all pipes lie on one straight line: the top tips over it".to_owned()
        }
        _ => "all that the top stands on lies on one straight line: it tips over it".to_owned(),
    };
    root.report(Problem::at(range.clone(), message).help(help));
}

/// Places that say where a support holds: a pad hardly keeps the top from tipping over it.
fn held_at(support: &Support) -> Vec<Point> {
    match &support.carrier {
        Carrier::Pad(pad) => vec![pad.at],
        Carrier::Pipe(_) | Carrier::Wall(_) => support.along.points().to_vec(),
    }
}

/// A pipe on a few posts bends between them; on posts that stand together it turns about them.
pub(super) fn stand_apart(room: &Room<'_>, support: &Support) {
    let Some(pipe) = support.pipe() else { return };
    let mut stations = pipe.posts.clone();
    stations.sort_by(|a, b| a.value.total_cmp(&b.value));
    let least = pipe.outside * Pipe::POSTS_APART;
    let Some(close) = stations.windows(2).find(|pair| pair[1] - pair[0] < least) else { return };
    let range = room.value("posts").map_or(0..0, toml::Spanned::span);
    room.report(
        Problem::at(
            range,
            format!(
                "two posts of {} stand {} apart and hold it like one",
                support.name,
                room.both(close[1] - close[0])
            ),
        )
        .help(format!(
            "neighbours stand {} apart or more, {:.0} times the diameter; places are measured along the pipe \
             from its first point",
            room.both(least),
            Pipe::POSTS_APART
        )),
    );
}

/// How far the points lie off the straight line through the two that are farthest apart.
fn off_one_line(all: &[Point]) -> Length {
    let pairs = all.iter().flat_map(|&a| all.iter().map(move |&b| (a, b)));
    let farthest = pairs.max_by(|one, other| one.0.distance(one.1).value.total_cmp(&other.0.distance(other.1).value));
    let Some(line) = farthest else { return Length::default() };
    all.iter().map(|&point| Piece(line.0, line.1).beside(point).1.abs()).fold(Length::default(), Length::max)
}

/// A place where a support runs along another nearer than both are thick, or stands on it.
fn lies_on(pipe: &Support, other: &Support) -> Option<Point> {
    for (one, below) in [(pipe, other), (other, pipe)] {
        if let Carrier::Pad(pad) = &one.carrier {
            let border = pad.border().into_iter().map(|place| below.distance(place));
            let near = border.fold(below.distance(pad.at), Length::min);
            let within = |end: &Point| pad.foot.holds(Point { x: end.x - pad.at.x, y: end.y - pad.at.y });
            let on_it = near < below.thickness() * 0.5 || below.along.points().iter().any(within);
            return on_it.then_some(pad.at);
        }
    }
    runs_along(&pipe.along, &other.along, (pipe.thickness() + other.thickness()) * 0.5)
}

/// A place where a line runs along another nearer than this.
fn runs_along(line: &Polyline, other: &Polyline, near: Length) -> Option<Point> {
    let pieces =
        |line: &Polyline| -> Vec<Piece> { line.points().windows(2).map(|pair| Piece(pair[0], pair[1])).collect() };
    pieces(other).into_iter().find_map(|below| {
        pieces(line).into_iter().find_map(|above| {
            let [from, to] = [above.0, above.1].map(|end| below.beside(end));
            let turned = ((to.1 - from.1) / above.length()).get::<ratio>().abs();
            let (low, high) = (from.0.min(to.0).max(Length::default()), from.0.max(to.0).min(below.length()));
            let off = from.1.abs().min(to.1.abs());
            // Pipes that are joined end to end overlap by their thickness.
            (turned < SIDE_BY_SIDE && off < near * (1.0 - 1e-6) && high - low > near)
                .then(|| below.at((low + high) * 0.5))
        })
    })
}

/// Reports conduits that run along one another in the core; each comes with the place of its line in the file. Those that meet or
/// cross are let through: one may branch off the other.
pub(super) fn conduits_apart(root: &Room<'_>, conduits: &[(Conduit, Range<usize>)]) {
    for (index, (conduit, range)) in conduits.iter().enumerate() {
        for (other, _) in &conduits[..index] {
            let near = (conduit.diameter + other.diameter) * 0.5;
            let Some(at) = runs_along(&conduit.along, &other.along, near) else { continue };
            let message = format!("{} lies on {} at {}", conduit.name, other.name, words(root, at));
            root.report(Problem::at(range.clone(), message).help(format!(
                "is one a copy of the other? Conduits side by side lie {} apart or more, middle to middle; where both shall lie in one \
                 slot, write one conduit as wide and as deep as that",
                root.both(near)
            )));
            return;
        }
    }
}

/// A straight piece of pipe.
struct Piece(Point, Point);

impl Piece {
    fn length(&self) -> Length {
        self.0.distance(self.1)
    }

    fn at(&self, along: Length) -> Point {
        let share = along / self.length();
        Point { x: self.0.x + (self.1.x - self.0.x) * share, y: self.0.y + (self.1.y - self.0.y) * share }
    }

    /// How far along it a place lies, and how far to its left.
    fn beside(&self, place: Point) -> (Length, Length) {
        let length = self.length();
        let [x, y] = [(self.1.x - self.0.x) / length, (self.1.y - self.0.y) / length];
        let [dx, dy] = [place.x - self.0.x, place.y - self.0.y];
        (dx * x + dy * y, dy * x - dx * y)
    }
}
