//! What the top asks of what it stands on: push and pull along each pipe, wall and pad, bending of the pipe, forces on its posts.

use super::Report;
use crate::{
    analysis::{Analysis, PipeForces, PipeModel, PostForces},
    check::Method,
    geometry::Point,
    top::Joint,
    units::{Force, ForcePerWidth, Length, MomentPerWidth, Torque},
};

/// The largest of a quantity, with the case that makes it; none where nothing acts.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Largest<Q> {
    /// The quantity.
    pub value: Q,
    /// The case, as its place in the list.
    pub case: Option<usize>,
}

impl<Q: Copy + PartialOrd> Largest<Q> {
    fn raise(&mut self, value: Q, case: usize) {
        if value > self.value {
            *self = Self { value, case: Some(case) };
        }
    }
}

/// Largest line loads on a pipe by one method.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct AlongPipe {
    /// Push of the top on the pipe.
    pub push: Largest<ForcePerWidth>,
    /// Pull at the fixings.
    pub pull: Largest<ForcePerWidth>,
}

/// Largest forces on a post, or on another pipe at a joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PostLoad {
    /// Where, along its pipe.
    pub along: Length,
    /// Push, downwards.
    pub push: Largest<Force>,
    /// Pull, upwards.
    pub pull: Largest<Force>,
}

/// Largest loads on one support.
#[derive(Clone, Debug, PartialEq)]
pub struct FrameLoad {
    /// The support, as its place in the list.
    pub pipe: usize,
    /// By the hand method; none where it does not count on the pipe.
    pub hand: Option<AlongPipe>,
    /// By the plate method, the error that it says of them added; none where there is no solution.
    pub plate: Option<AlongPipe>,
    /// Largest bending moment, by the plate method; none of what is rigid.
    pub moment: Option<Largest<Torque>>,
    /// Largest moment per length of the joint of a clamped wall, by the plate method, the error that it says of it added;
    /// no check says whether the joint bears it.
    pub clamp: Option<Largest<MomentPerWidth>>,
    /// By post, along the pipe, by the plate method, the error of push and pull along the pipe added; empty where the pipe
    /// is rigid.
    pub posts: Vec<PostLoad>,
    /// By joint at which another pipe carries it: what it hands to that, as of posts; no check says whether the weld bears it.
    pub joints: Vec<PostLoad>,
}

impl FrameLoad {
    /// The larger push of the two methods.
    #[must_use]
    pub fn push(&self) -> (Largest<ForcePerWidth>, Method) {
        self.larger(|along| along.push)
    }

    /// The larger pull of the two methods.
    #[must_use]
    pub fn pull(&self) -> (Largest<ForcePerWidth>, Method) {
        self.larger(|along| along.pull)
    }

    /// Whether either method counts on the pipe; if not, nothing is known of what it carries.
    #[must_use]
    pub const fn known(&self) -> bool {
        self.hand.is_some() || self.plate.is_some()
    }

    fn larger(&self, of: impl Fn(AlongPipe) -> Largest<ForcePerWidth>) -> (Largest<ForcePerWidth>, Method) {
        let (hand, plate) = (self.hand.map(&of), self.plate.map(&of));
        match (hand, plate) {
            (Some(hand), Some(plate)) if hand.value >= plate.value => (hand, Method::Hand),
            (_, Some(plate)) => (plate, Method::Plate),
            (hand, None) => (hand.unwrap_or_default(), Method::Hand),
        }
    }
}

/// Largest loads on each pipe over all cases, by both methods.
#[must_use]
pub fn frame_loads(report: &Report<'_>) -> Vec<FrameLoad> {
    let nothing = |pipe| FrameLoad {
        pipe,
        hand: None,
        plate: None,
        moment: None,
        clamp: None,
        posts: Vec::new(),
        joints: Vec::new(),
    };
    let mut loads: Vec<FrameLoad> = (0..report.top.supports.len()).map(nothing).collect();
    let Ok(analysis) = &report.analysis else { return loads };
    for load in &mut loads {
        load.by_hand(analysis);
        for forces in analysis.fields() {
            let own = forces.pipes.iter().find(|pipe| pipe.pipe == load.pipe);
            if let Some(pipe) = own {
                load.on_plate(analysis, pipe, forces.case);
            }
        }
        for borne in [&mut load.posts, &mut load.joints] {
            borne.sort_by(|a, b| a.along.value.total_cmp(&b.along.value));
        }
    }
    loads
}

impl FrameLoad {
    fn by_hand(&mut self, analysis: &Analysis<'_>) {
        for case in 0..analysis.cases.len() {
            let Some(under) = analysis.line_load(self.pipe, case) else { continue };
            let hand = self.hand.get_or_insert_default();
            hand.push.raise(under.push, case);
            hand.pull.raise(under.pull, case);
        }
    }

    fn on_plate(&mut self, analysis: &Analysis<'_>, pipe: &PipeForces, case: usize) {
        let plate = self.plate.get_or_insert_default();
        let [push_error, pull_error] = pipe.along_error.map(|error| 1.0 + error.value);
        plate.push.raise(pipe.push * push_error, case);
        plate.pull.raise(pipe.pull * pull_error, case);
        if let Some(clamp) = &pipe.clamp {
            self.clamp.get_or_insert_default().raise(clamp.moment * (1.0 + clamp.error.value), case);
        }
        if !matches!(&analysis.whole, Some(Ok(method)) if method.pipes[pipe.pipe] == PipeModel::Beam) {
            return;
        }
        self.moment.get_or_insert_default().raise(pipe.bent.moment * (1.0 + pipe.bent.error.value), case);
        let support = &analysis.top.supports[pipe.pipe];
        let raise = |borne: &mut Vec<PostLoad>, at: Point, PostForces { push, pull, .. }: &PostForces| {
            let along = support.along.place(at).along;
            let place = borne.iter().position(|known| known.along == along).unwrap_or_else(|| {
                borne.push(PostLoad { along, push: Largest::default(), pull: Largest::default() });
                borne.len() - 1
            });
            // A post gathers what acts along its pipe: it is as sure as that.
            borne[place].push.raise(*push * push_error, case);
            borne[place].pull.raise(*pull * pull_error, case);
        };
        pipe.posts.iter().for_each(|post| raise(&mut self.posts, post.at, post));
        // Either pipe of a joint knows what passes it: it stands with the one that is carried.
        let joints = analysis.top.joints();
        let own: Vec<&Joint> = joints.iter().filter(|joint| joint.carried(analysis.top) == pipe.pipe).collect();
        for forces in &pipe.joints {
            if let Some(joint) = own.iter().find(|joint| joint.at.distance(forces.at) <= support.thickness()) {
                raise(&mut self.joints, joint.at, forces);
            }
        }
    }
}
