//! Changes to pipes that stand side by side.

use uom::si::length::millimeter;

use super::Change;
use crate::{
    geometry::{Axis, Point, Polyline},
    top::{Backing, Gear, Support, Top},
    units::Length,
};

/// Straight pipes side by side, square to the outline: what can be moved, filled up and trimmed without asking how.
#[derive(Clone, Copy, Debug)]
pub struct PipeRow {
    /// Direction in which the pipes follow one another.
    axis: Axis,
    first: Length,
    last: Length,
    pipes: usize,
    size: Length,
}

impl PipeRow {
    /// The row that a top stands on; none where it stands on anything else.
    #[must_use]
    pub fn of(top: &Top) -> Option<Self> {
        let run = top.supports.first()?.along.main_axis();
        let axis = run.other();
        let mut at = Vec::with_capacity(top.supports.len());
        for pipe in &top.supports {
            let (low, high) = pipe.along.extent(axis);
            // A wall or a pad stands where the boat has it.
            if pipe.pipe().is_none() || pipe.along.main_axis() != run || high - low > Length::new::<millimeter>(1.0) {
                return None;
            }
            at.push(low);
        }
        let first = at.iter().copied().reduce(Length::min)?;
        let last = at.iter().copied().reduce(Length::max)?;
        (at.len() >= 2 && last > first).then_some(Self {
            axis,
            first,
            last,
            pipes: at.len(),
            size: top.outline.size(axis),
        })
    }

    #[allow(clippy::cast_precision_loss, reason = "a handful of pipes")]
    pub(super) fn spacing(&self, outwards: Length) -> Length {
        (self.last - self.first + outwards * 2.0) / (self.pipes as f64 - 1.0)
    }

    pub(super) fn more_pipes(&self) -> Vec<Change> {
        (self.pipes + 1..=self.pipes + 4).filter_map(|pipes| self.with_pipes(pipes)).collect()
    }

    /// So many pipes between the outer two; none where those are that many, or fewer than two are asked for.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "a handful of pipes")]
    pub fn with_pipes(&self, pipes: usize) -> Option<Change> {
        let spacing = || (self.last - self.first) / (pipes as f64 - 1.0);
        (pipes >= 2 && pipes != self.pipes).then(|| Change::PipeCount { pipes, spacing: spacing() })
    }

    /// The outer pipes moved so that the top hangs over them by so much on both sides; none where it does.
    #[must_use]
    pub fn with_overhang(&self, overhang: Length) -> Option<Change> {
        let outwards = self.first - overhang;
        (outwards != Length::default()).then(|| Change::PipesMoved { outwards, spacing: self.spacing(outwards) })
    }

    /// How far the top hangs over beyond the first pipe and beyond the last.
    #[must_use]
    pub fn overhangs(&self) -> [Length; 2] {
        [self.first, self.size - self.last]
    }

    /// A pipe like another at another place.
    fn at(&self, pipe: &Support, place: Length) -> Option<Support> {
        let points = pipe.along.points().iter().map(|point| self.with(*point, place)).collect();
        Some(Support { along: Polyline::new(points).ok()?, ..pipe.clone() })
    }

    fn with(&self, point: Point, place: Length) -> Point {
        match self.axis {
            Axis::X => Point { x: place, ..point },
            Axis::Y => Point { y: place, ..point },
        }
    }

    /// Whether a backing serves the pipe at a place: it runs along it and over it.
    fn lies_over(&self, backing: &Backing, place: Length) -> bool {
        let (low, high) = backing.along.extent(self.axis);
        let at: Length = (low + high) / 2.0;
        backing.along.main_axis() != self.axis && (place - at).abs() < backing.width / 2.0
    }

    /// Whether a backing serves one of the pipes of a top and nothing else: it lies straight along and over it, and no gear stands on
    /// it.
    #[must_use]
    pub fn serves_pipe_alone(&self, top: &Top, backing: &Backing) -> bool {
        let (low, high) = backing.along.extent(self.axis);
        let over = |gear: &Gear| {
            let [length, width] = gear.foot.sizes();
            // As far as a corner of its footing reaches.
            backing.along.distance(gear.at) < backing.width / 2.0 + length.hypot(width) / 2.0
        };
        high - low <= Length::new::<millimeter>(1.0)
            && top.supports.iter().any(|pipe| self.lies_over(backing, self.place(pipe)))
            && !top.gear.iter().any(over)
    }

    fn place(&self, pipe: &Support) -> Length {
        pipe.along.extent(self.axis).0
    }

    #[allow(clippy::cast_precision_loss, reason = "a handful of pipes")]
    pub(super) fn fill(&self, top: &mut Top, pipes: usize) -> Option<()> {
        let step: Length = (self.last - self.first) / (pipes as f64 - 1.0);
        // The outer two stay as they are; those between are like the first.
        let outer = |at: Length| top.supports.iter().find(|pipe| self.place(pipe) == at).cloned();
        let (model, last) = (outer(self.first)?, outer(self.last)?);
        let inner = (0..pipes - 1).map(|index| self.at(&model, self.first + step * index as f64));
        top.supports = inner.chain([Some(last)]).collect::<Option<_>>()?;
        // A new pipe gets the backing that the first one has.
        let over_first = top.backings.iter().find(|backing| self.lies_over(backing, self.first)).cloned();
        if let Some(model) = over_first {
            for pipe in 0..pipes {
                let place = self.first + step * pipe as f64;
                if !top.backings.iter().any(|backing| self.lies_over(backing, place)) {
                    let along = model.along.points().iter().map(|point| self.with(*point, place)).collect();
                    let along = Polyline::new(along).ok()?;
                    top.backings.push(Backing { along, ..model.clone() });
                }
            }
        }
        Some(())
    }

    pub(super) fn shift(&self, top: &mut Top, outwards: Length) -> Option<()> {
        let (first, last) = (self.first - outwards, self.last + outwards);
        if first < Length::default() || last > self.size || last - first <= Length::new::<millimeter>(50.0) {
            return None;
        }
        let stretch = (last - first) / (self.last - self.first);
        let place = |pipe: &Support| -> Length { first + (self.place(pipe) - self.first) * stretch };
        // Backing lies over the pipe that it serves and goes with it; over a pipe between the outer two where it serves nothing else.
        let mut backings = top.backings.clone();
        for backing in &mut backings {
            let (over_first, over_last) = (self.lies_over(backing, self.first), self.lies_over(backing, self.last));
            let between = || {
                let alone = self.serves_pipe_alone(top, backing);
                let pipe = top.supports.iter().find(|pipe| alone && self.lies_over(backing, self.place(pipe)))?;
                Some(place(pipe) - self.place(pipe))
            };
            let by = match (over_first, over_last) {
                (true, _) => Some(-outwards),
                (false, true) => Some(outwards),
                (false, false) => between(),
            };
            if let Some(by) = by {
                let moved = backing.along.points().iter().map(|point| self.with(*point, point.along(self.axis) + by));
                backing.along = Polyline::new(moved.collect()).ok()?;
            }
        }
        top.supports = top.supports.iter().map(|pipe| self.at(pipe, place(pipe))).collect::<Option<_>>()?;
        top.backings = backings;
        Some(())
    }

    /// Makes every pipe reach farther at both ends, as far as the top does.
    pub(super) fn lengthen(&self, top: &mut Top, by: Length) -> Option<()> {
        let run = self.axis.other();
        let size = top.outline.size(run);
        let mut longer = false;
        let reach = |line: &Polyline| -> Option<(Polyline, bool)> {
            let (low, high) = line.extent(run);
            let (new_low, new_high) = ((low - by).max(Length::default()), (high + by).min(size));
            let place = line.extent(self.axis).0;
            let end = |along: Length| match run {
                Axis::X => Point { x: along, y: place },
                Axis::Y => Point { x: place, y: along },
            };
            let line = Polyline::new(vec![end(new_low), end(new_high)]).ok()?;
            Some((line, new_low < low || new_high > high))
        };
        let places: Vec<Length> = top.supports.iter().map(|pipe| self.place(pipe)).collect();
        for backing in &mut top.backings {
            // The backing over a pipe goes as far as the pipe.
            let level = backing.along.extent(self.axis);
            if level.0 == level.1 && places.iter().any(|place| self.lies_over(backing, *place)) {
                backing.along = reach(&backing.along)?.0;
            }
        }
        for pipe in &mut top.supports {
            let (line, farther) = reach(&pipe.along)?;
            longer |= farther;
            // Posts stay where they stand; the longer line runs from the low end to the high one.
            let start = line.points().first()?.along(run);
            let posts = pipe.posts().iter().map(|&post| pipe.along.at(post).along(run) - start).collect();
            pipe.along = line;
            pipe.pipe_mut()?.posts = posts;
        }
        longer.then_some(())
    }

    /// Takes a strip off the top on both sides beyond the outer pipes.
    pub(super) fn trim(&self, top: &mut Top, by: Length) -> Option<()> {
        let (near, far) = (by.min(self.first), by.min(self.size - self.last));
        if near < by && far < by {
            return None;
        }
        let outline = top.outline.trimmed(self.axis, near, far)?;
        let moved = |point: Point| {
            let point = self.with(point, point.along(self.axis) - near);
            outline.holds(point).then_some(point)
        };
        let line = |line: &Polyline| -> Option<Polyline> {
            Polyline::new(line.points().iter().map(|point| moved(*point)).collect::<Option<_>>()?).ok()
        };
        for pipe in &mut top.supports {
            pipe.along = line(&pipe.along)?;
        }
        for backing in &mut top.backings {
            backing.along = line(&backing.along)?;
        }
        for conduit in &mut top.conduits {
            conduit.along = line(&conduit.along)?;
        }
        for gear in &mut top.gear {
            gear.at = moved(gear.at)?;
        }
        top.outline = outline;
        Some(())
    }
}
