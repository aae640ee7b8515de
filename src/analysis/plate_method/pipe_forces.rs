//! What a pipe bears, and the fixings along it.

use super::clamps::ClampMoment;
use crate::{
    geometry::Point,
    units::{Force, ForcePerWidth, Length, Ratio, Torque},
};

/// What a post bears, or another pipe at a joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PostForces {
    /// Where.
    pub at: Point,
    /// Most push, downwards.
    pub push: Force,
    /// Most pull, upwards, as a positive number.
    pub pull: Force,
}

/// A largest bending moment in a pipe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PipeMoment {
    /// Its size.
    pub moment: Torque,
    /// Where.
    pub at: Point,
    /// Where the person or the hand is that causes it.
    pub under: Option<Point>,
    /// What it may be off by, from the same mesh at two degrees.
    pub error: Ratio,
}

/// What a pipe bears.
#[derive(Clone, Debug, PartialEq)]
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
    /// Where the person or the hand is that causes it.
    pub pull_under: Option<Point>,
    /// What push and pull may be off by, from the same mesh at two degrees.
    pub along_error: [Ratio; 2],
    /// Most bending moment in the pipe.
    pub moment: Torque,
    /// The same with its place.
    pub bent: PipeMoment,
    /// The most that reaches into metal softened by a weld, of a post or of another pipe.
    pub bent_at_weld: PipeMoment,
    /// Most moment per length of the joint of a clamped wall; none of anything else.
    pub clamp: Option<ClampMoment>,
    /// Most force on a post, pressing positive.
    pub post: Force,
    /// By post; none of a rigid pipe.
    pub posts: Vec<PostForces>,
    /// By joint with another pipe where no post of its own stands: what it hands down there and draws up.
    pub joints: Vec<PostForces>,
    /// Most pull of each fixing, in the order of its row: all that lifts the length of pipe up to half way to its neighbours.
    pub fixings: Vec<Force>,
    /// Where the person or the hand is that pulls hardest on a fixing.
    pub fixings_under: Option<Point>,
    /// What the pulls may be off by, from the largest of them at two degrees.
    pub fixings_error: Ratio,
}

impl PipeForces {
    pub(super) fn none(pipe: usize) -> Self {
        let at = Point { x: Length::default(), y: Length::default() };
        let unbent = PipeMoment { moment: Torque::default(), at, under: None, error: Ratio::default() };
        Self {
            pipe,
            push: ForcePerWidth::default(),
            push_at: at,
            push_under: None,
            pull: ForcePerWidth::default(),
            pull_at: at,
            pull_under: None,
            along_error: [Ratio::default(); 2],
            moment: Torque::default(),
            bent: unbent,
            bent_at_weld: unbent,
            clamp: None,
            post: Force::default(),
            posts: Vec::new(),
            joints: Vec::new(),
            fixings: Vec::new(),
            fixings_under: None,
            fixings_error: Ratio::default(),
        }
    }

    /// The most pull of a fixing.
    pub(super) fn hardest(&self) -> Force {
        self.fixings.iter().copied().fold(Force::default(), Force::max)
    }

    /// Compares with the same at a lower degree, which saw loads at more places: what was worse there stands.
    pub(super) fn settle(&mut self, coarse: &Self) {
        let off = |coarse: f64, fine: f64| {
            if fine > 0.0 { Ratio::from((coarse / fine - 1.0).abs()) } else { Ratio::default() }
        };
        self.along_error = [off(coarse.push.value, self.push.value), off(coarse.pull.value, self.pull.value)];
        if let (Some(fine), Some(coarse)) = (&mut self.clamp, &coarse.clamp) {
            fine.error = off(coarse.moment.value, fine.moment.value);
        }
        self.bent.error = off(coarse.bent.moment.value, self.bent.moment.value);
        self.bent_at_weld.error = off(coarse.bent_at_weld.moment.value, self.bent_at_weld.moment.value);
        self.fixings_error = off(coarse.hardest().value, self.hardest().value);
        raise(&mut self.posts, &coarse.posts);
        raise(&mut self.joints, &coarse.joints);
        self.raise_fixings(&coarse.fixings);
    }

    pub(super) fn raise_fixings(&mut self, others: &[Force]) {
        if self.fixings.len() < others.len() {
            self.fixings.resize(others.len(), Force::default());
        }
        for (own, other) in self.fixings.iter_mut().zip(others) {
            *own = own.max(*other);
        }
    }
}

/// Takes in what others bear at the same places.
pub(super) fn raise(own: &mut Vec<PostForces>, others: &[PostForces]) {
    for other in others {
        match own.iter_mut().find(|known| known.at == other.at) {
            Some(known) => (known.push, known.pull) = (known.push.max(other.push), known.pull.max(other.pull)),
            None => own.push(*other),
        }
    }
}
