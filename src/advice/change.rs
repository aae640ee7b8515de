//! Single changes to a top, each kind in steps from small to large.

use uom::si::length::{inch, millimeter};

use crate::{
    geometry::{Axis, Point, Polyline},
    top::{Backing, CoreSheet, Pipe, Schedule, Top},
    units::{Length, MassDensity, System},
};

/// One change to a top.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// Another thickness of core.
    CoreThickness(Length),
    /// Another density of core, of the same family.
    CoreDensity(MassDensity),
    /// More layers in the outer skin.
    OuterPlies {
        /// The layer that is laid again, as the design file writes it.
        layer: String,
        /// Its place in the skin.
        index: usize,
        /// How many more of it.
        more: usize,
    },
    /// More layers in the inner skin.
    InnerPlies {
        /// The layer that is laid again, as the design file writes it.
        layer: String,
        /// Its place in the skin.
        index: usize,
        /// How many more of it.
        more: usize,
    },
    /// More pipes, evenly spaced between the outer two.
    MorePipes {
        /// How many pipes there are then.
        pipes: usize,
        /// How far apart.
        spacing: Length,
    },
    /// The outer pipes moved, and those between them with them.
    PipesMoved {
        /// How far each outer pipe goes; outwards positive.
        outwards: Length,
        /// How far apart neighbours are then.
        spacing: Length,
    },
    /// Pipes made longer at both ends.
    PipesLonger(Length),
    /// The overhang beyond the outer pipes trimmed off the top on both sides.
    OverhangTrimmed(Length),
}

/// Most steps that are tried of one kind.
const STEPS: u32 = 12;

/// All changes worth trying on a top: by kind, each from small to large.
#[must_use]
pub fn changes(top: &Top) -> Vec<Vec<Change>> {
    let mut kinds = vec![
        above(&top.core.material.sold_thicknesses.values, top.core.thickness).map(Change::CoreThickness).collect(),
        above(&top.core.family.sold_densities.values, top.core.material.density).map(Change::CoreDensity).collect(),
        repeats(&top.outer, |layer, index, more| Change::OuterPlies { layer, index, more }),
        repeats(&top.inner, |layer, index, more| Change::InnerPlies { layer, index, more }),
    ];
    if let Some(row) = Row::of(top) {
        kinds.push(row.more_pipes());
        let moved = |sign: f64| {
            move |step: Length| Change::PipesMoved { outwards: step * sign, spacing: row.spacing(step * sign) }
        };
        kinds.push(steps(top).map(moved(1.0)).collect());
        kinds.push(steps(top).map(moved(-1.0)).collect());
        kinds.push(steps(top).map(Change::PipesLonger).collect());
        kinds.push(steps(top).map(Change::OverhangTrimmed).collect());
    }
    kinds.into_iter().map(|kind: Vec<Change>| kind.into_iter().take(STEPS as usize).collect()).collect()
}

/// The top with a change made; none where the change cannot be made.
#[must_use]
pub fn changed(top: &Top, change: &Change) -> Option<Top> {
    let mut other = top.clone();
    match change {
        Change::CoreThickness(thickness) => other.core.thickness = *thickness,
        Change::CoreDensity(density) => {
            other.core = CoreSheet { material: top.core.family.at(*density).ok()?, ..top.core.clone() };
        }
        Change::OuterPlies { index, more, .. } => other.outer = repeated(&top.outer, *index, *more)?,
        Change::InnerPlies { index, more, .. } => other.inner = repeated(&top.inner, *index, *more)?,
        Change::MorePipes { pipes, .. } => Row::of(top)?.fill(&mut other, *pipes)?,
        Change::PipesMoved { outwards, .. } => Row::of(top)?.shift(&mut other, *outwards)?,
        Change::PipesLonger(by) => Row::of(top)?.lengthen(&mut other, *by)?,
        Change::OverhangTrimmed(by) => Row::of(top)?.trim(&mut other, *by)?,
    }
    Some(other)
}

/// What is sold above a value, smallest first.
fn above<Q: Copy + PartialOrd>(sold: &[Q], now: Q) -> impl Iterator<Item = Q> + '_ {
    sold.iter().copied().filter(move |&value| value > now)
}

/// The heaviest layer laid once more, twice more, three times more.
fn repeats(skin: &Schedule, change: impl Fn(String, usize, usize) -> Change) -> Vec<Change> {
    let carrying = skin.layers().iter().enumerate().filter(|(_, layer)| layer.carries());
    let heaviest = carrying.max_by(|a, b| a.1.fibre.value.total_cmp(&b.1.fibre.value));
    heaviest
        .map_or_else(Vec::new, |(index, layer)| (1..=3).map(|more| change(layer.text.clone(), index, more)).collect())
}

fn repeated(skin: &Schedule, index: usize, more: usize) -> Option<Schedule> {
    (0..more).try_fold(skin.clone(), |skin, _| skin.with_repeated(index).ok())
}

/// Steps of an inch, or of 25 mm.
fn steps(top: &Top) -> impl Iterator<Item = Length> {
    let step = match top.report {
        System::Us => Length::new::<inch>(1.0),
        System::Si => Length::new::<millimeter>(25.0),
    };
    (1..=STEPS).map(move |count| step * f64::from(count))
}

/// Straight pipes side by side, square to the outline: what can be moved, filled up and trimmed without asking how.
#[derive(Clone, Copy)]
struct Row {
    /// Direction in which the pipes follow one another.
    axis: Axis,
    first: Length,
    last: Length,
    pipes: usize,
    size: Length,
}

impl Row {
    fn of(top: &Top) -> Option<Self> {
        let run = top.pipes.first()?.along.main_axis();
        let axis = run.other();
        let mut at = Vec::with_capacity(top.pipes.len());
        for pipe in &top.pipes {
            let (low, high) = pipe.along.extent(axis);
            if pipe.along.main_axis() != run || high - low > Length::new::<millimeter>(1.0) {
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
    fn spacing(&self, outwards: Length) -> Length {
        (self.last - self.first + outwards * 2.0) / (self.pipes as f64 - 1.0)
    }

    #[allow(clippy::cast_precision_loss, reason = "a handful of pipes")]
    fn more_pipes(&self) -> Vec<Change> {
        (self.pipes + 1..=self.pipes + 4)
            .map(|pipes| Change::MorePipes { pipes, spacing: (self.last - self.first) / (pipes as f64 - 1.0) })
            .collect()
    }

    /// A pipe like another at another place.
    fn at(&self, pipe: &Pipe, place: Length) -> Option<Pipe> {
        let points = pipe.along.points().iter().map(|point| self.with(*point, place)).collect();
        Some(Pipe { along: Polyline::new(points).ok()?, ..pipe.clone() })
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

    fn place(&self, pipe: &Pipe) -> Length {
        pipe.along.extent(self.axis).0
    }

    #[allow(clippy::cast_precision_loss, reason = "a handful of pipes")]
    fn fill(&self, top: &mut Top, pipes: usize) -> Option<()> {
        let step: Length = (self.last - self.first) / (pipes as f64 - 1.0);
        let model = top.pipes.first()?.clone();
        top.pipes = (0..pipes).map(|index| self.at(&model, self.first + step * index as f64)).collect::<Option<_>>()?;
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

    fn shift(&self, top: &mut Top, outwards: Length) -> Option<()> {
        let (first, last) = (self.first - outwards, self.last + outwards);
        if first < Length::default() || last > self.size || last - first <= Length::new::<millimeter>(50.0) {
            return None;
        }
        let stretch = (last - first) / (self.last - self.first);
        top.pipes = top
            .pipes
            .iter()
            .map(|pipe| {
                let along: Length = (self.place(pipe) - self.first) * stretch;
                self.at(pipe, first + along)
            })
            .collect::<Option<_>>()?;
        // Backing lies over the pipe that it serves and goes with it.
        for backing in &mut top.backings {
            let (over_first, over_last) = (self.lies_over(backing, self.first), self.lies_over(backing, self.last));
            if over_first || over_last {
                let by = if over_first { -outwards } else { outwards };
                let moved = backing.along.points().iter().map(|point| self.with(*point, point.along(self.axis) + by));
                backing.along = Polyline::new(moved.collect()).ok()?;
            }
        }
        Some(())
    }

    /// Makes every pipe reach farther at both ends, as far as the top does.
    fn lengthen(&self, top: &mut Top, by: Length) -> Option<()> {
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
        let places: Vec<Length> = top.pipes.iter().map(|pipe| self.place(pipe)).collect();
        for backing in &mut top.backings {
            // The backing over a pipe goes as far as the pipe.
            let level = backing.along.extent(self.axis);
            if level.0 == level.1 && places.iter().any(|place| self.lies_over(backing, *place)) {
                backing.along = reach(&backing.along)?.0;
            }
        }
        for pipe in &mut top.pipes {
            let (line, farther) = reach(&pipe.along)?;
            longer |= farther;
            pipe.along = line;
        }
        longer.then_some(())
    }

    /// Takes a strip off the top on both sides beyond the outer pipes.
    fn trim(&self, top: &mut Top, by: Length) -> Option<()> {
        let (near, far) = (by.min(self.first), by.min(self.size - self.last));
        if near < by && far < by {
            return None;
        }
        match self.axis {
            Axis::X => top.outline.length -= near + far,
            Axis::Y => top.outline.width -= near + far,
        }
        let size = top.outline.size(self.axis);
        let moved = |point: Point| {
            let at: Length = point.along(self.axis) - near;
            (at >= Length::default() && at <= size).then(|| self.with(point, at))
        };
        let line = |line: &Polyline| -> Option<Polyline> {
            Polyline::new(line.points().iter().map(|point| moved(*point)).collect::<Option<_>>()?).ok()
        };
        for pipe in &mut top.pipes {
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
        Some(())
    }
}
