//! What the top does to the pipes that it lies on.

use uom::si::ratio::ratio;

use super::Analysis;
use crate::{
    load::weight::gravity,
    load_case::ZonePressure,
    units::{Force, ForcePerWidth, Ratio},
};

/// Largest loads per length of one pipe under one case.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct LineLoad {
    /// Push of the top on the pipe.
    pub push: ForcePerWidth,
    /// Pull at the fixings, as a positive number.
    pub pull: ForcePerWidth,
}

impl Analysis<'_> {
    /// Largest loads per length of a pipe over all strips and bays under a case; none where the hand method does not
    /// count on the pipe, so that nothing is known of what it carries.
    #[must_use]
    pub fn line_load(&self, pipe: usize, case: usize) -> Option<LineLoad> {
        let mut load: Option<LineLoad> = None;
        let mut raise = |push: ForcePerWidth, pull: ForcePerWidth| {
            let known = load.get_or_insert_default();
            *known = LineLoad { push: known.push.max(push), pull: known.pull.max(pull) };
        };
        for forces in self.strips.iter().filter(|forces| forces.case == case) {
            let line = &self.lines[forces.line];
            for (seat, own) in line.seats.iter().zip(&forces.seats).filter(|(seat, _)| seat.pipe == Some(pipe)) {
                // A strip that meets a pipe at an angle rests on more of its length than the strip is wide.
                let along = seat.obliqueness.get::<ratio>();
                raise(own.push.value / along, own.pull.value / along);
            }
        }
        for own in self.pipe_loads.iter().filter(|own| own.pipe == pipe && own.case == case) {
            raise(own.push, own.pull);
        }
        load
    }

    /// The most that people or a hand can pull a pipe's fixings by, all of them together; none where something else
    /// lifts the top as well.
    ///
    /// ```text
    /// R ≤ (F + W)(1 + j c/L)(1 + j e/B)       j = 1 over two pipes, 1.5 over more
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | *F*, *W* | all people, or the hand; all gear |
    /// | *c*, *L* | overhang of a strip over the pipe, and the bay behind it, where they are worst |
    /// | *e*, *B* | overhang beyond the ends of the pipes that the strip carries, and the span behind it |
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): moments about the next pipe; a span beyond that does not
    /// turn there at all adds half as much again.
    #[must_use]
    pub fn most_pull_by_hand(&self, pipe: usize, case: usize) -> Option<Force> {
        let case = &self.cases[case];
        if case.wind != ZonePressure::default() || case.gravity < Ratio::default() {
            return None;
        }
        let force = match (case.hand, case.people) {
            (Some(hand), _) => hand.abs(),
            (None, Some(people)) => people.each * f64::from(u32::try_from(people.count).unwrap_or(u32::MAX)),
            (None, None) => return None,
        };
        let gear: Force = self.top.gear.iter().map(|gear| gear.mass * gravity()).sum();
        let force = force + gear;
        let one = Ratio::from(1.0);
        let over = self.lines.iter().filter(|line| line.seats.iter().any(|seat| seat.pipe == Some(pipe)));
        let reach = over.filter_map(|line| {
            let [first, second, ..] = line.seats.as_slice() else { return None };
            let [.., last_but_one, last] = line.seats.as_slice() else { return None };
            let held = if line.seats.len() > 2 { 1.5 } else { 1.0 };
            let near = first.at / (second.at - first.at);
            let far = (line.length() - last.at) / (last.at - last_but_one.at);
            let carried = line.carries.map_or(one, |overhang| one + overhang.length / overhang.back_span * held);
            Some((one + near.max(far) * held) * carried)
        });
        reach.reduce(Ratio::max).map(|reach| force * reach)
    }
}
