//! What a top stands on: pipes that hold it, none upon another, posts that hold a pipe.

use std::ops::Range;

use uom::si::ratio::ratio;

use super::{outline::words, problem::Problem, reader::Room};
use crate::{geometry::Point, top::Pipe, units::Length};

/// Pieces of pipe whose directions differ by less than this, as a sine, run side by side.
const SIDE_BY_SIDE: f64 = 0.05;

/// Reports pipes on which no top stands; each comes with the place of its line in the file.
pub(super) fn read_standing(root: &Room<'_>, pipes: &[(Pipe, Range<usize>)]) {
    for (index, (pipe, range)) in pipes.iter().enumerate() {
        for (other, _) in &pipes[..index] {
            if let Some(at) = lies_on(pipe, other) {
                root.report(
                    Problem::at(range.clone(), format!("{} lies on {} at {}", pipe.name, other.name, words(root, at))).help(
                        "is one a copy of the other? Lead it where it runs: pipes side by side stand apart by their diameter",
                    ),
                );
                return;
            }
        }
    }
    let Some((first, range)) = pipes.first() else { return };
    let all: Vec<Point> = pipes.iter().flat_map(|(pipe, _)| pipe.along.points().iter().copied()).collect();
    let thickest = pipes.iter().map(|(pipe, _)| pipe.outside).fold(first.outside, Length::max);
    if off_one_line(&all) > thickest {
        return;
    }
    let help = "add a `[[pipe]]` beside it, as far off as the top allows, for example with \
                `along = [[\"12 in\", \"60 in\"], [\"98 in\", \"60 in\"]]`";
    let message = match pipes {
        [_] => format!("the top stands on {} alone, which is straight: it tips over it", first.name),
        _ => "all pipes lie on one straight line: the top tips over it".to_owned(),
    };
    root.report(Problem::at(range.clone(), message).help(help));
}

/// A pipe on a few posts bends between them; on posts that stand together it turns about them.
pub(super) fn stand_apart(room: &Room<'_>, pipe: &Pipe) {
    let mut stations = pipe.posts.clone();
    stations.sort_by(|a, b| a.value.total_cmp(&b.value));
    let least = pipe.outside * Pipe::POSTS_APART;
    let Some(close) = stations.windows(2).find(|pair| pair[1] - pair[0] < least) else { return };
    let range = room.value("posts").map_or(0..0, toml::Spanned::span);
    room.report(
        Problem::at(
            range,
            format!("two posts of {} stand {} apart and hold it like one", pipe.name, room.both(close[1] - close[0])),
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

/// A place where a pipe runs along another nearer than both are thick.
fn lies_on(pipe: &Pipe, other: &Pipe) -> Option<Point> {
    let near = (pipe.outside + other.outside) * 0.5;
    let pieces =
        |pipe: &Pipe| -> Vec<Piece> { pipe.along.points().windows(2).map(|pair| Piece(pair[0], pair[1])).collect() };
    pieces(other).into_iter().find_map(|below| {
        pieces(pipe).into_iter().find_map(|above| {
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
