//! Where pipes of the frame cross or touch in plan: below one top they lie at one height, so there they are joined.

use super::Top;
use crate::{geometry::Point, units::Length};

/// A place where two pipes cross or touch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// The two, as their places in the list of supports, the first one first.
    pub pipes: [usize; 2],
    /// Where.
    pub at: Point,
}

impl Top {
    /// Every place where two pipes cross, or where one ends nearer to another than both are thick: for each pair in the order
    /// of the file, places that nearly coincide once.
    #[must_use]
    pub fn joints(&self) -> Vec<Joint> {
        let mut joints: Vec<Joint> = Vec::new();
        for (second, other) in self.supports.iter().enumerate() {
            for (first, one) in self.supports[..second].iter().enumerate() {
                if one.pipe().is_none() || other.pipe().is_none() {
                    continue;
                }
                let near: Length = (one.thickness() + other.thickness()) / 2.0;
                let touching = |end: Point, line: &super::Support| (line.along.distance(end) <= near).then_some(end);
                let ends = one.along.ends().into_iter().filter_map(|end| touching(end, other));
                let other_ends = other.along.ends().into_iter().filter_map(|end| touching(end, one));
                for at in one.along.meets(&other.along).into_iter().chain(ends).chain(other_ends) {
                    let pipes = [first, second];
                    let known = |joint: &Joint| joint.pipes == pipes && joint.at.distance(at) <= near * 2.0;
                    if !joints.iter().any(known) {
                        joints.push(Joint { pipes, at });
                    }
                }
            }
        }
        joints
    }
}
