//! Labels in places where they cover neither each other nor a hole.

use uom::si::length::millimeter;

use super::{Template, view::OnPaper, words};
use crate::plan::{FixingMark, LayerKind, Shape};

/// Height of the letters of names.
pub(super) const NAME: f64 = 4.0;
/// Height of the letters beside holes.
pub(super) const SMALL: f64 = 2.8;
/// Width of a letter over its height, a wide one: nothing is measured here.
const LETTER: f64 = 0.58;
/// From line to line, in heights.
pub(super) const LEADING: f64 = 1.25;

/// A text in its place.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Placed {
    /// The layer that its thing is on.
    pub(super) layer: LayerKind,
    /// Its lines, from the top.
    pub(super) lines: Vec<String>,
    /// The middle of all of it.
    pub(super) at: OnPaper,
    /// Degrees, anticlockwise.
    pub(super) degrees: f64,
    /// Height of its letters.
    pub(super) size: f64,
}

/// A rectangle square to the paper.
#[derive(Clone, Copy)]
struct Taken {
    at: OnPaper,
    half: [f64; 2],
}

impl Taken {
    fn meets(&self, other: &Self) -> bool {
        (self.at.u - other.at.u).abs() < self.half[0] + other.half[0]
            && (self.at.v - other.at.v).abs() < self.half[1] + other.half[1]
    }
}

impl Placed {
    /// Half of its width and of its height before it is turned.
    pub(super) fn half(&self) -> [f64; 2] {
        let longest = self.lines.iter().map(|line| line.chars().count()).max().unwrap_or(0);
        #[allow(clippy::cast_precision_loss, reason = "letters of a label")]
        let (letters, lines) = (longest as f64, self.lines.len() as f64);
        [letters * LETTER * self.size / 2.0, lines * LEADING * self.size / 2.0]
    }

    fn taken(&self) -> Taken {
        let ([width, height], (sin, cos)) = (self.half(), self.degrees.to_radians().sin_cos());
        let half = [width * cos.abs() + height * sin.abs(), width * sin.abs() + height * cos.abs()];
        Taken { at: self.at, half }
    }
}

/// Every label: those of holes first, which have the fewest places to go to.
pub(super) fn place(template: &Template<'_>) -> Vec<Placed> {
    let view = template.view;
    let holes = template.plan.fixings.iter().map(|mark| {
        let half = super::style::cross(LayerKind::Fixings);
        // The strokes of its cross, and its circle.
        let (at, circle) = (view.place(mark.at), mark.widest().map_or(0.0, |hole| hole.get::<millimeter>() / 2.0));
        [[half, 0.8], [0.8, half], [circle + 0.8; 2]].map(|half| Taken { at, half })
    });
    let mut taken: Vec<Taken> = holes.flatten().collect();
    let mut placed: Vec<Placed> = Vec::new();
    for mark in &template.plan.fixings {
        let at = view.place(mark.at);
        let label =
            |at| Placed { layer: LayerKind::Fixings, lines: words::beside(mark), at, degrees: 0.0, size: SMALL };
        let half = label(at).half();
        let circle = mark.widest().map_or(0.0, |hole| hole.get::<millimeter>() / 2.0);
        let clear = (super::style::cross(LayerKind::Fixings) / 2.0).max(circle + 1.0);
        let inwards = if middle_of(template, mark) < at.u { -1.0 } else { 1.0 };
        let candidates = [1.0, 2.2, 3.4, 5.0].into_iter().flat_map(|out| {
            let (right, up) = (inwards * (clear * out + half[0]), clear * out + half[1]);
            let beside =
                [(1.0, 1.0), (1.0, -1.0), (-1.0, 1.0), (-1.0, -1.0), (0.0, 2.0), (0.0, -2.0), (2.0, 0.0), (-2.0, 0.0)];
            beside.map(|(x, y)| OnPaper { u: at.u + x * right, v: at.v + y * up })
        });
        settle(candidates.map(label), &mut taken, &mut placed);
    }
    for layer in &template.plan.layers {
        for label in layer.items.iter().flat_map(|item| &item.shapes) {
            let Shape::Label(label) = label else { continue };
            let (at, degrees) = (view.place(label.at), view.degrees(label.along));
            let (sin, cos) = degrees.to_radians().sin_cos();
            let of = |at| Placed { layer: layer.kind, lines: vec![label.text.clone()], at, degrees, size: NAME };
            let half = of(at).half()[0];
            // On its middle line first, then farther off.
            let steps = [0.0, 1.2, -1.2, 2.4, -2.4, 3.6, -3.6].map(|step| step * 2.0 * half);
            let candidates = [0.8, -0.8, 2.2, -2.2, 4.0, -4.0, 6.0, -6.0].into_iter().flat_map(|off| {
                steps.map(|along| OnPaper {
                    u: at.u + along * cos - off * NAME * sin,
                    v: at.v + along * sin + off * NAME * cos,
                })
            });
            settle(candidates.map(of), &mut taken, &mut placed);
        }
    }
    placed
}

/// The middle of the fixings that hold the same, from the datum to the right: labels stand on that side of their holes, so
/// that a page with the holes shows them too.
fn middle_of(template: &Template<'_>, mark: &FixingMark) -> f64 {
    let same = || template.plan.fixings.iter().filter(|other| other.on == mark.on);
    let places = same().map(|other| template.view.place(other.at).u);
    #[allow(clippy::cast_precision_loss, reason = "fixings of a mount")]
    let count = same().count() as f64;
    places.sum::<f64>() / count
}

/// Takes the first candidate that covers nothing; the first of all where each covers something.
fn settle(candidates: impl Iterator<Item = Placed>, taken: &mut Vec<Taken>, placed: &mut Vec<Placed>) {
    let candidates: Vec<Placed> = candidates.collect();
    let free = candidates.iter().find(|label| !taken.iter().any(|other| label.taken().meets(other)));
    if let Some(label) = free.or(candidates.first()) {
        taken.push(label.taken());
        placed.push(label.clone());
    }
}
