//! Splines: rational B-splines by their knots and control points.

use kurbo::Point;

use super::{super::problem::Problem, dxf::Entity, path::Path};

/// Halvings of a stretch between knots: 4096 chords are more than a top needs.
const DEEPEST: u32 = 12;

struct Spline {
    degree: usize,
    knots: Vec<f64>,
    /// Places times weights, and the weights.
    poles: Vec<[f64; 3]>,
}

/// A spline as chords within `tolerance`.
pub(super) fn path(entity: &Entity<'_>, tolerance: f64) -> Result<Path, Problem> {
    let spline = read(entity)?;
    let last = spline.poles.len();
    let mut places = Vec::new();
    for knot in spline.degree..last {
        let (from, to) = (spline.knots[knot], spline.knots[knot + 1]);
        if to > from {
            let (start, end) = (spline.at(knot, from), spline.at(knot, to));
            if places.is_empty() {
                places.push(start);
            }
            spline.chords(knot, (from, start), (to, end), tolerance, DEEPEST, &mut places);
        }
    }
    if !places.iter().all(|place| place.is_finite()) {
        return Err(Problem::at(entity.range.clone(), "this SPLINE runs to infinity: its weights cannot be right"));
    }
    // A closed one comes back to its start, and is closed as every line that does.
    let end = places.pop();
    if places.is_empty() {
        return Err(Problem::at(entity.range.clone(), "this SPLINE has no length"));
    }
    Ok(Path { pieces: places.into_iter().map(|place| (place, 0.0)).collect(), end })
}

fn read(entity: &Entity<'_>) -> Result<Spline, Problem> {
    let problem = |message: &str| Problem::at(entity.range.clone(), format!("this SPLINE {message}"));
    let numbers = |code: i32| -> Result<Vec<f64>, Problem> {
        entity.groups.iter().filter(|group| group.code == code).map(super::dxf::Group::number).collect()
    };
    let (x, y, weights) = (numbers(10)?, numbers(20)?, numbers(41)?);
    let knots = numbers(40)?;
    if x.is_empty() {
        return Err(problem("is given by places that it passes, not by control points")
            .help("convert it to control points, or to a polyline"));
    }
    let degree = entity.group(71).map_or(Ok(3), super::dxf::Group::whole)?;
    // A degree above ten is nothing that anyone draws.
    let degree = usize::try_from(degree).ok().filter(|degree| (1..=10).contains(degree));
    let Some(degree) = degree else { return Err(problem("has a degree that no outline has")) };
    let fits = x.len() == y.len()
        && x.len() > degree
        && knots.len() == x.len() + degree + 1
        && (weights.is_empty() || weights.len() == x.len());
    if !fits {
        return Err(problem("has knots, weights and control points that do not fit together"));
    }
    if knots.windows(2).any(|pair| pair[1] < pair[0]) {
        return Err(problem("has knots that go back"));
    }
    if weights.iter().any(|weight| *weight <= 0.0) {
        return Err(problem("has a weight that is not above zero"));
    }
    let weight = |index: usize| weights.get(index).copied().unwrap_or(1.0);
    let poles =
        x.iter().zip(&y).enumerate().map(|(index, (x, y))| [x * weight(index), y * weight(index), weight(index)]);
    Ok(Spline { degree, knots, poles: poles.collect() })
}

impl Spline {
    /// The place at a parameter between a knot and the next, by the algorithm of de Boor.
    fn at(&self, knot: usize, parameter: f64) -> Point {
        let first = knot - self.degree;
        let mut poles = self.poles[first..=knot].to_vec();
        for round in 1..=self.degree {
            for index in (round..=self.degree).rev() {
                let (low, high) = (self.knots[first + index], self.knots[knot + 1 + index - round]);
                let share = if high > low { (parameter - low) / (high - low) } else { 0.0 };
                let before = poles[index - 1];
                for (value, before) in poles[index].iter_mut().zip(before) {
                    *value = before + (*value - before) * share;
                }
            }
        }
        let [x, y, weight] = poles[self.degree];
        Point::new(x / weight, y / weight)
    }

    /// Halves a stretch until its quarters lie on the chord.
    fn chords(
        &self,
        knot: usize,
        (from, start): (f64, Point),
        (to, end): (f64, Point),
        tolerance: f64,
        depth: u32,
        places: &mut Vec<Point>,
    ) {
        let middle = 0.5 * (from + to);
        let at = self.at(knot, middle);
        let quarters = [self.at(knot, 0.5 * (from + middle)), at, self.at(knot, 0.5 * (middle + to))];
        let flat = quarters.iter().all(|place| kurbo::Line::new(start, end).distance(*place) <= tolerance);
        if depth == 0 || flat {
            places.push(end);
            return;
        }
        self.chords(knot, (from, start), (middle, at), tolerance, depth - 1, places);
        self.chords(knot, (middle, at), (to, end), tolerance, depth - 1, places);
    }
}

trait Distance {
    fn distance(self, place: Point) -> f64;
}

impl Distance for kurbo::Line {
    fn distance(self, place: Point) -> f64 {
        use kurbo::ParamCurveNearest;
        self.nearest(place, 1e-9).distance_sq.sqrt()
    }
}
