//! Labels in places where they cover neither each other nor a hole, and no line runs through them where there is room beside it.

use uom::si::length::millimeter;

use super::{Template, strokes, view::OnPaper, words};
use crate::{
    plan::{FixingMark, LayerKind, Shape},
    report::crossing::crosses,
};

/// Height of the letters of names.
pub(super) const NAME: f64 = 4.0;
/// Height of the letters beside holes.
pub(super) const SMALL: f64 = 2.8;
/// Width of a letter over its height, a wide one: nothing is measured here.
pub(super) const LETTER: f64 = 0.58;
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

    fn crossed(&self, stroke: [OnPaper; 2]) -> bool {
        let [wide, high] = self.half;
        crosses(stroke.map(OnPaper::pair), [self.at.u - wide, self.at.v - high], [2.0 * wide, 2.0 * high])
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

    /// Whether it lies on a rectangle about a place, with half of its sizes.
    pub(super) fn meets(&self, at: OnPaper, half: [f64; 2]) -> bool {
        self.taken().meets(&Taken { at, half })
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
    let mut paper = Paper { taken: holes.flatten().collect(), lines: strokes::of_lines(template), placed: Vec::new() };
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
        paper.settle(candidates.map(label));
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
            paper.settle(candidates.map(of));
        }
    }
    paper.placed
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

/// What labels keep off, and those that have their places.
struct Paper {
    /// Holes and labels.
    taken: Vec<Taken>,
    /// All other lines.
    lines: Vec<[OnPaper; 2]>,
    placed: Vec<Placed>,
}

impl Paper {
    /// Takes the first candidate that covers no hole and no label and that no line runs through; where there is none, the first that
    /// covers neither of the two, since labels stand on white; the first of all where each covers something.
    fn settle(&mut self, candidates: impl Iterator<Item = Placed>) {
        let candidates: Vec<Placed> = candidates.collect();
        let clear = |label: &&Placed| !self.taken.iter().any(|other| label.taken().meets(other));
        let whole = |label: &&Placed| !self.lines.iter().any(|line| label.taken().crossed(*line));
        let best = candidates.iter().filter(clear).find(whole).or_else(|| candidates.iter().find(clear));
        if let Some(label) = best.or(candidates.first()) {
            self.taken.push(label.taken());
            self.placed.push(label.clone());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Placed, strokes};
    use crate::{
        input::{NamedText, read_design, read_tables},
        report::template::{Face, Template},
        top::Top,
    };

    fn example(name: &str) -> Top {
        let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
        let text = std::fs::read_to_string(path).expect("an example");
        let table = read_tables(&[]).expect("the table");
        read_design(&NamedText { name: name.to_owned(), text }, &table, None).expect("an example without fault")
    }

    /// Where pipes lie over backings and rows of fixings on both there is room beside the lines too.
    #[test]
    fn no_label_lies_on_another_and_no_line_runs_through_one() {
        for name in ["whip-rail", "radar-pad", "survey-launch", "kelp-harvester", "pilot-skiff", "rail-row"] {
            let top = example(name);
            for face in [Face::Above, Face::Below] {
                let template = Template::new(&top, face);
                let (labels, lines) = (template.labels(), strokes::of_lines(&template));
                assert!(!labels.is_empty(), "{name}");
                let through = |label: &Placed| lines.iter().any(|line| label.taken().crossed(*line));
                for (k, label) in labels.iter().enumerate() {
                    assert!(!through(label), "{name}: a line runs through {label:?}");
                    let other = labels[..k].iter().find(|other| label.taken().meets(&other.taken()));
                    assert!(other.is_none(), "{name}: {label:?} lies on {other:?}");
                }
            }
        }
    }
}
