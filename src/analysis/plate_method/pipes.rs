//! What the pipes bear at most, and the fixings along them: the worst of many solutions.

pub use super::pipe_forces::{PipeForces, PipeMoment, PostForces};

use super::{layout::Net, pipe_forces::raise, row::Row};
use crate::{
    finite_element::{BeamForces, Push},
    geometry::{Point, Polyline},
    top::Top,
    units::{Force, ForcePerWidth, Length, Torque, per_width},
};

/// What a stretch of pipe bears under one solution: its bed node by node, and the beam.
pub(super) type OnBed = (Vec<Push>, BeamForces);

/// A pipe's worst so far, with the numbers of the loads that cause it.
struct Worst {
    forces: PipeForces,
    push: Option<usize>,
    pull: Option<usize>,
    bent: Option<usize>,
    bent_at_weld: Option<usize>,
    fixings: Option<usize>,
    /// How far a weld softens the pipe.
    weld_zone: Length,
    /// Where it is joined to other pipes.
    joints: Vec<Point>,
}

/// The worst so far.
pub(super) struct PipesWorst<'a> {
    top: &'a Top,
    worst: Vec<Worst>,
    /// By stretch: the fixings of its row, once its nodes are known.
    rows: Vec<Option<Row>>,
    /// By stretch: how far along its nodes other pipes are joined to it.
    joints: Vec<Option<Vec<Length>>>,
}

impl<'a> PipesWorst<'a> {
    pub(super) fn new(top: &'a Top) -> Self {
        let joints = top.joints();
        let worst = top.supports.iter().enumerate().map(|(pipe, given)| {
            let alloy = given.pipe().and_then(|pipe| pipe.alloy.as_ref());
            let zone = alloy.and_then(|alloy| alloy.weld_zone.as_ref()).map(|zone| zone.value);
            Worst {
                forces: PipeForces::none(pipe),
                push: None,
                pull: None,
                bent: None,
                bent_at_weld: None,
                fixings: None,
                weld_zone: zone.unwrap_or_default(),
                joints: joints.iter().filter(|joint| joint.pipes.contains(&pipe)).map(|joint| joint.at).collect(),
            }
        });
        Self { top, worst: worst.collect(), rows: Vec::new(), joints: Vec::new() }
    }

    /// What acts together, each so many times; pulls of fixings where these are known, else from what lifts their lengths of
    /// pipe.
    pub(super) fn take(
        &mut self,
        net: &Net,
        parts: &[(&[OnBed], f64)],
        pulls: Option<&[Vec<Force>]>,
        under: Option<usize>,
    ) {
        let Some(((first, _), _)) = parts.split_first() else { return };
        self.rows.resize_with(first.len(), || None);
        self.joints.resize_with(first.len(), || None);
        let mut fixings: Vec<Vec<Force>> = vec![Vec::new(); self.worst.len()];
        let mut along: Vec<Most> = vec![Most::default(); self.worst.len()];
        for (bed, stretch) in net.stretches.iter().enumerate() {
            let support = &self.top.supports[stretch.pipe];
            let worst = &mut self.worst[stretch.pipe];
            let (pushes, beam) = &first[bed];
            let force = |k: usize| parts.iter().map(|(beds, times)| beds[bed].0[k].force * *times).sum::<Force>();
            let most = Most::of(pushes, &force, net.disc * 2.0);
            // A line of a pad stands for a part of its seat.
            along[stretch.pipe].raise(&most, (support.seat / stretch.seat).value);
            let moment = |k: usize| parts.iter().map(|(beds, times)| beds[bed].1.moments[k].1 * *times).sum::<Torque>();
            let joints = self.joints[bed].get_or_insert_with(|| stations(&worst.joints, pushes));
            worst.take_moments(pushes, (beam, joints), (0..beam.moments.len()).map(moment), under);
            let borne = |of: fn(&BeamForces) -> &Vec<(Length, Force)>, k: usize| {
                parts.iter().map(|(beds, times)| of(&beds[bed].1)[k].1 * *times).sum::<Force>()
            };
            for (k, (along, _)) in beam.posts.iter().enumerate() {
                let force = borne(|beam| &beam.posts, k);
                if force.abs() > worst.forces.post.abs() {
                    worst.forces.post = force;
                }
                raise(&mut worst.forces.posts, at_node(pushes, *along, force).as_slice());
            }
            for (k, (along, _)) in beam.joints.iter().enumerate() {
                let force = borne(|beam| &beam.joints, k);
                raise(&mut worst.forces.joints, at_node(pushes, *along, force).as_slice());
            }
            let row = self.rows[bed].get_or_insert_with(|| Row::new(support, pushes));
            row.add_pulls(&force, &mut fixings[stretch.pipe]);
        }
        for (pipe, worst) in self.worst.iter_mut().enumerate() {
            worst.take_most(&along[pipe], under);
            let known = pulls.map(|pulls| &pulls[pipe]).filter(|pulls| !pulls.is_empty());
            let pulls = known.unwrap_or(&fixings[pipe]);
            if pulls.iter().copied().fold(Force::default(), Force::max) > worst.forces.hardest() {
                worst.fixings = under;
            }
            worst.forces.raise_fixings(pulls);
        }
    }

    /// Takes in what came later.
    pub(super) fn merge(&mut self, other: Self) {
        for (own, other) in self.worst.iter_mut().zip(other.worst) {
            own.merge(&other);
        }
    }

    pub(super) fn done(self, load_at: &dyn Fn(Option<usize>) -> Option<Point>) -> Vec<PipeForces> {
        let placed = self.worst.into_iter().map(|worst| PipeForces {
            push_under: load_at(worst.push),
            pull_under: load_at(worst.pull),
            moment: worst.forces.bent.moment,
            bent: PipeMoment { under: load_at(worst.bent), ..worst.forces.bent },
            bent_at_weld: PipeMoment { under: load_at(worst.bent_at_weld), ..worst.forces.bent_at_weld },
            fixings_under: load_at(worst.fixings),
            ..worst.forces
        });
        placed.collect()
    }
}

impl Worst {
    fn take_most(&mut self, most: &Most, under: Option<usize>) {
        if let Some((push, at)) = most.push.filter(|(push, _)| *push > self.forces.push) {
            (self.forces.push, self.forces.push_at, self.push) = (push, at, under);
        }
        if let Some((pull, at)) = most.pull.filter(|(pull, _)| *pull > self.forces.pull) {
            (self.forces.pull, self.forces.pull_at, self.pull) = (pull, at, under);
        }
    }

    /// Moments at both ends of every piece between two nodes.
    fn take_moments(
        &mut self,
        pushes: &[Push],
        (beam, joints): (&BeamForces, &[Length]),
        moments: impl Iterator<Item = Torque>,
        under: Option<usize>,
    ) {
        for (k, moment) in moments.map(Torque::abs).enumerate() {
            let at = || pushes[k.div_ceil(2)].place;
            if moment > self.forces.bent.moment {
                (self.forces.bent.moment, self.forces.bent.at, self.bent) = (moment, at(), under);
            }
            if moment > self.forces.bent_at_weld.moment {
                // A piece that reaches into the softened zone counts with both of its ends.
                let [from, to] = [k / 2, k / 2 + 1].map(|node| pushes[node].along);
                let zone = self.weld_zone;
                let mut welds = beam.posts.iter().map(|(post, _)| *post).chain(joints.iter().copied());
                if welds.any(|weld| weld - zone <= to && weld + zone >= from) {
                    let own = &mut self.forces.bent_at_weld;
                    (own.moment, own.at, self.bent_at_weld) = (moment, at(), under);
                }
            }
        }
    }

    fn merge(&mut self, other: &Self) {
        let (own, others) = (&mut self.forces, &other.forces);
        if others.push > own.push {
            (own.push, own.push_at, self.push) = (others.push, others.push_at, other.push);
        }
        if others.pull > own.pull {
            (own.pull, own.pull_at, self.pull) = (others.pull, others.pull_at, other.pull);
        }
        if others.bent.moment > own.bent.moment {
            (own.bent, self.bent) = (others.bent, other.bent);
        }
        if others.bent_at_weld.moment > own.bent_at_weld.moment {
            (own.bent_at_weld, self.bent_at_weld) = (others.bent_at_weld, other.bent_at_weld);
        }
        if others.post.abs() > own.post.abs() {
            own.post = others.post;
        }
        if others.hardest() > own.hardest() {
            self.fixings = other.fixings;
        }
        raise(&mut own.posts, &others.posts);
        raise(&mut own.joints, &others.joints);
        own.raise_fixings(&others.fixings);
    }
}

/// A force handed down at a node of a stretch.
fn at_node(pushes: &[Push], along: Length, force: Force) -> Option<PostForces> {
    let none = Force::default();
    let node = pushes.iter().find(|push| push.along >= along)?;
    Some(PostForces { at: node.place, push: force.max(none), pull: (-force).max(none) })
}

/// How far along the nodes of a stretch places lie that lie on it.
fn stations(places: &[Point], pushes: &[Push]) -> Vec<Length> {
    let Ok(line) = Polyline::new(pushes.iter().map(|push| push.place).collect()) else { return Vec::new() };
    let start = pushes.first().map_or_else(Length::default, |push| push.along);
    let on_it = places.iter().map(|place| line.place(*place).along);
    // A joint beyond the end of a stretch is at its end, or on another.
    let length = line.length();
    on_it
        .filter(|along| *along >= -length * ENDS && *along <= length * (1.0 + ENDS))
        .map(|along| start + along)
        .collect()
}

/// How far beyond the end of a stretch a joint still is on it, over its length.
const ENDS: f64 = 0.01;

/// The most push and pull per length along a line, and where.
#[derive(Clone, Copy, Debug, Default)]
struct Most {
    push: Option<(ForcePerWidth, Point)>,
    pull: Option<(ForcePerWidth, Point)>,
}

impl Most {
    /// The panel spreads a push over its own depth along the line, to one side at an end.
    fn of(pushes: &[Push], force: &dyn Fn(usize) -> Force, depth: Length) -> Self {
        let (mut ends, mut before) = (vec![Length::default()], vec![Force::default()]);
        for (k, push) in pushes.iter().enumerate() {
            ends.push(ends[k] + push.length);
            before.push(before[k] + force(k));
        }
        // Force on the line up to a distance along it: each node's is even over its own length.
        let up_to = |along: Length| {
            let k = ends.partition_point(|end| *end <= along).clamp(1, ends.len() - 1);
            let share = (along - ends[k - 1]) / (ends[k] - ends[k - 1]);
            before[k - 1] + (before[k] - before[k - 1]) * share
        };
        let end = ends[ends.len() - 1];
        let window = depth.min(end);
        let mut most = Self::default();
        for push in pushes {
            let from = (push.along - window / 2.0).min(end - window).max(Length::default());
            let mean: ForcePerWidth = per_width((up_to(from + window) - up_to(from)) / window);
            most.raise(&Self { push: Some((mean, push.place)), pull: Some((-mean, push.place)) }, 1.0);
        }
        most
    }

    /// The larger of both, the other so many times.
    fn raise(&mut self, other: &Self, times: f64) {
        for (own, other) in [(&mut self.push, other.push), (&mut self.pull, other.pull)] {
            let other = other.map(|(force, at)| (force * times, at));
            if let Some(other) = other.filter(|other| own.is_none_or(|own| other.0 > own.0)) {
                *own = Some(other);
            }
        }
    }
}
