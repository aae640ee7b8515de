//! What the pipes bear at most.

use super::layout::Net;
use crate::{
    finite_element::{BeamForces, Push},
    geometry::Point,
    top::Top,
    units::{Force, ForcePerWidth, Length, Torque, per_width},
};

/// What a pipe bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PipeForces {
    /// The pipe, as its place in the list.
    pub pipe: usize,
    /// Most push per length, over the depth of the panel.
    pub push: ForcePerWidth,
    /// Where.
    pub push_at: Point,
    /// Where the person is that causes it.
    pub push_under: Option<Point>,
    /// Most pull per length, as a positive number.
    pub pull: ForcePerWidth,
    /// Where.
    pub pull_at: Point,
    /// Most bending moment in the pipe.
    pub moment: Torque,
    /// Most force on a post, pressing positive.
    pub post: Force,
}

/// What a stretch of pipe bears under one solution: its bed node by node, and the beam.
pub(super) type OnBed = (Vec<Push>, BeamForces);

/// The worst so far, with the number of the load that causes the push.
pub(super) struct PipesWorst {
    worst: Vec<(PipeForces, Option<usize>)>,
}

impl PipesWorst {
    pub(super) fn new(top: &Top) -> Self {
        let none = Point { x: Length::default(), y: Length::default() };
        let worst = (0..top.pipes.len())
            .map(|pipe| {
                let nothing = PipeForces {
                    pipe,
                    push: ForcePerWidth::default(),
                    push_at: none,
                    push_under: None,
                    pull: ForcePerWidth::default(),
                    pull_at: none,
                    moment: Torque::default(),
                    post: Force::default(),
                };
                (nothing, None)
            })
            .collect();
        Self { worst }
    }

    /// What is still, with one load that moves so many times.
    pub(super) fn take(&mut self, net: &Net, still: &[OnBed], moved: Option<(&[OnBed], f64)>, under: Option<usize>) {
        let none = Force::default();
        for (bed, stretch) in net.stretches.iter().enumerate() {
            let (worst, pushed_under) = &mut self.worst[stretch.pipe];
            let (pushes, beam) = &still[bed];
            let own = moved.map(|(beds, times)| (&beds[bed], times));
            // The panel spreads a push over its own depth along the pipe, to one side at an end.
            let depth = net.disc * 2.0;
            let force = |k: usize| pushes[k].force + own.map_or(none, |((own, _), times)| own[k].force * times);
            let (mut ends, mut before) = (vec![Length::default()], vec![none]);
            for (k, push) in pushes.iter().enumerate() {
                ends.push(ends[k] + push.length);
                before.push(before[k] + force(k));
            }
            let (ends, before) = (&ends, &before);
            // Force on the pipe up to a distance along it: each node's is even over its own length.
            let up_to = |along: Length| {
                let k = ends.partition_point(|end| *end <= along).clamp(1, ends.len() - 1);
                let share = (along - ends[k - 1]) / (ends[k] - ends[k - 1]);
                before[k - 1] + (before[k] - before[k - 1]) * share
            };
            let end = ends[ends.len() - 1];
            let window = depth.min(end);
            for push in pushes {
                let from = (push.along - window / 2.0).min(end - window).max(Length::default());
                let mean: ForcePerWidth = per_width((up_to(from + window) - up_to(from)) / window);
                if mean > worst.push {
                    (worst.push, worst.push_at) = (mean, push.place);
                    *pushed_under = under;
                }
                if -mean > worst.pull {
                    (worst.pull, worst.pull_at) = (-mean, push.place);
                }
            }
            for (k, (_, moment)) in beam.moments.iter().enumerate() {
                let sum = *moment + own.map_or_else(Torque::default, |((_, own), times)| own.moments[k].1 * times);
                worst.moment = worst.moment.max(sum.abs());
            }
            for (k, (_, post)) in beam.posts.iter().enumerate() {
                let sum = *post + own.map_or(none, |((_, own), times)| own.posts[k].1 * times);
                if sum.abs() > worst.post.abs() {
                    worst.post = sum;
                }
            }
        }
    }

    /// Takes in what came later.
    pub(super) fn merge(&mut self, other: Self) {
        for ((own, own_under), (other, other_under)) in self.worst.iter_mut().zip(other.worst) {
            if other.push > own.push {
                (own.push, own.push_at, *own_under) = (other.push, other.push_at, other_under);
            }
            if other.pull > own.pull {
                (own.pull, own.pull_at) = (other.pull, other.pull_at);
            }
            own.moment = own.moment.max(other.moment);
            if other.post.abs() > own.post.abs() {
                own.post = other.post;
            }
        }
    }

    pub(super) fn done(self, load_at: &dyn Fn(Option<usize>) -> Option<Point>) -> Vec<PipeForces> {
        let placed = self.worst.into_iter().map(|(forces, under)| PipeForces { push_under: load_at(under), ..forces });
        placed.collect()
    }
}
