//! Where pipes of the frame cross or touch in plan, and what that holds: below one top they lie at one height, so there they are
//! joined.

use super::{BedLine, Top};
use crate::{geometry::Point, units::Length};

/// A place where two pipes cross or touch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// The two, as their places in the list of supports, the first one first.
    pub pipes: [usize; 2],
    /// Where.
    pub at: Point,
}

impl Joint {
    /// The one of the two that hands its load to the other: that without posts that hold it, else the second.
    #[must_use]
    pub fn carried(&self, top: &Top) -> usize {
        let stands = |pipe: usize| top.supports[pipe].pipe().is_some_and(super::Pipe::posts_hold);
        let [first, second] = self.pipes;
        if stands(second) && !stands(first) { first } else { second }
    }
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

    /// By support, whether it is known as a beam: a pipe of which wall and alloy are given and which two places or more hold, well
    /// apart: posts of its own, or other such pipes that it is joined to and that are held without it.
    #[must_use]
    pub fn beams(&self) -> Vec<bool> {
        let joints = self.joints();
        let mut held = vec![false; self.supports.len()];
        loop {
            let before = held.clone();
            for (number, support) in self.supports.iter().enumerate().filter(|(number, _)| !before[*number]) {
                let Some(pipe) = support.pipe() else { continue };
                let carried = joints.iter().filter_map(|joint| {
                    let own = joint.pipes.iter().position(|pipe| *pipe == number)?;
                    before[joint.pipes[1 - own]].then(|| support.along.place(joint.at).along)
                });
                let places: Vec<Length> = pipe.posts.iter().copied().chain(carried).collect();
                held[number] = pipe.wall.is_some() && pipe.alloy.is_some() && pipe.is_held_at(&places);
            }
            if held == before {
                return held;
            }
        }
    }

    /// Lines on which the top is bedded, each with its support. A pipe that ends beside another it is joined to is led on to the
    /// middle of that.
    #[must_use]
    pub fn bed_lines(&self) -> Vec<(usize, BedLine)> {
        let joints = self.joints();
        let all = self.supports.iter().enumerate();
        let lines = all.flat_map(|(number, support)| {
            let own: Vec<&Joint> = joints.iter().filter(|joint| joint.pipes.contains(&number)).collect();
            let led = |end: Point| {
                let beside = own.iter().filter(|joint| joint.at == end);
                let other = beside.flat_map(|joint| joint.pipes).find(|pipe| *pipe != number)?;
                let line = &self.supports[other].along;
                Some(line.at(line.place(end).along.max(Length::default()).min(line.length())))
            };
            let along = |line: &BedLine| line.along.with_ends(line.along.ends().map(led));
            let lines = support.bed_lines().into_iter();
            lines.map(|line| (number, BedLine { along: along(&line), ..line })).collect::<Vec<_>>()
        });
        lines.collect()
    }
}
