//! The cut on the paper: where its stretches lie, with breaks where one goes on alike, and what is drawn of them.

use maud::{Markup, html};
use uom::si::length::millimeter;

use super::figure::{PAPER, mm};
use crate::{
    geometry::Axis,
    plan::{Crossed, Cut, Filled, FixingMark},
    section::Skin,
    top::{Carrier, Forward, Support, Top},
    units::Length,
};

/// Round scales, one to so many; never larger than it is.
const SCALES: [f64; 12] = [1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 7.5, 10.0, 12.5, 15.0];
/// What is drawn on either side of what matters, in millimetres of the paper.
pub(super) const BESIDE: f64 = 2.5;
/// Room of a break on the paper.
const BREAK: f64 = 2.5;
/// Highest the top is drawn with what stands below it: a thin top on thick pipes would fill the page.
const HIGH: f64 = 60.0;
/// Left of the cut on the paper.
const LEFT: f64 = 2.0;

/// A piece of the line that is drawn, in millimetres of the top, and where it begins on the paper.
#[derive(Clone, Copy)]
struct Shown {
    from: f64,
    to: f64,
    at: f64,
}

/// Which pieces of the line are drawn, and where.
pub(super) struct Layout {
    pub(super) scale: f64,
    /// Whether anything is left out.
    pub(super) broken: bool,
    shown: Vec<Shown>,
    /// The size of the top in the direction of the line, where it is drawn from the far end.
    turned: Option<f64>,
}

impl Layout {
    pub(super) fn new(top: &Top, cut: &Cut, fixings: &[FixingMark]) -> Self {
        let size = top.outline.size(cut.axis).get::<millimeter>();
        // Across, port lies on the left.
        let turned = (cut.axis == Axis::Y && top.bow() == Forward::Right).then_some(size);
        let at = |along: Length| turned.map_or(along.get::<millimeter>(), |size| size - along.get::<millimeter>());
        let matters = |scale: f64| matters((top, fixings), cut, &at, BESIDE * scale);
        let room = PAPER - 2.0 * LEFT;
        let fits = |scale: &f64| {
            let pieces = matters(*scale);
            wide(&pieces, *scale) <= room && (top.thickness() + below(top, cut)).get::<millimeter>() <= HIGH * scale
        };
        let scale = SCALES.into_iter().find(fits).unwrap_or(20.0);
        let (mut shown, mut x) = (Vec::new(), LEFT);
        let pieces = matters(scale);
        for (k, (from, to)) in pieces.iter().enumerate() {
            x += if k > 0 { BREAK } else { 0.0 };
            shown.push(Shown { from: *from, to: *to, at: x });
            x += (to - from) / scale;
        }
        Self { scale, broken: shown.len() > 1, shown, turned }
    }

    /// Where the drawing ends on the right.
    pub(super) fn wide(&self) -> f64 {
        self.shown.last().map_or(LEFT, |last| last.at + (last.to - last.from) / self.scale)
    }

    fn along(&self, along: Length) -> f64 {
        let along = along.get::<millimeter>();
        self.turned.map_or(along, |size| size - along)
    }

    /// Where a place of the line lies on the paper; in a break, in its middle.
    pub(super) fn x(&self, along: Length) -> f64 {
        let along = self.along(along);
        let mut last = LEFT;
        for piece in &self.shown {
            if along < piece.from {
                return f64::midpoint(last, piece.at);
            }
            if along <= piece.to {
                return piece.at + (along - piece.from) / self.scale;
            }
            last = piece.at + (piece.to - piece.from) / self.scale;
        }
        last
    }

    /// What of a stretch is drawn: left and right edges on the paper.
    fn parts(&self, from: Length, to: Length) -> Vec<[f64; 2]> {
        let (a, b) = (self.along(from), self.along(to));
        let (a, b) = (a.min(b), a.max(b));
        let each = self.shown.iter().filter_map(|piece| {
            let (from, to) = (a.max(piece.from), b.min(piece.to));
            let on = |along: f64| piece.at + (along - piece.from) / self.scale;
            (from < to).then(|| [on(from), on(to)])
        });
        each.collect()
    }

    /// Middles of the breaks.
    fn breaks(&self) -> Vec<f64> {
        self.shown.iter().skip(1).map(|piece| piece.at - BREAK / 2.0).collect()
    }
}

/// Pieces of the line that matter: ends of stretches, and whatever is crossed, each with something on both sides.
fn matters(
    (top, fixings): (&Top, &[FixingMark]),
    cut: &Cut,
    at: &dyn Fn(Length) -> f64,
    beside: f64,
) -> Vec<(f64, f64)> {
    let mut all: Vec<(f64, f64)> = Vec::new();
    let mut add = |from: f64, to: f64| all.push((from.min(to) - beside, from.max(to) + beside));
    for run in &cut.runs {
        add(at(run.from), at(run.from));
        add(at(run.to), at(run.to));
        if run.filled == Filled::Edge {
            add(at(run.from), at(run.to));
        }
    }
    let mut about = |place: Length, size: Length| {
        let half = size.get::<millimeter>() / 2.0;
        add(at(place) - half, at(place) + half);
    };
    cut.conduits.iter().for_each(|own| about(own.at, top.conduits[own.index].diameter * own.wider));
    cut.supports.iter().for_each(|own| about(own.at, wide_below(&top.supports[own.index], cut.axis) * own.wider));
    for (index, _) in &cut.fixings {
        let mark = &fixings[*index];
        about(mark.at.along(cut.axis), mark.widest().unwrap_or_default());
    }
    let ends = cut.runs.iter().flat_map(|run| [at(run.from), at(run.to)]);
    let (low, high) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), end| (a.min(end), b.max(end)));
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut joined: Vec<(f64, f64)> = Vec::new();
    for (from, to) in all {
        let (from, to) = (from.max(low), to.min(high));
        match joined.last_mut() {
            // A break that saves less than it takes is none.
            Some((_, end)) if from - *end < 2.0 * beside => *end = end.max(to),
            _ => joined.push((from, to)),
        }
    }
    joined
}

fn wide(pieces: &[(f64, f64)], scale: f64) -> f64 {
    let own: f64 = pieces.iter().map(|(from, to)| to - from).sum();
    #[expect(clippy::cast_precision_loss, reason = "a dozen pieces")]
    let breaks = pieces.len().saturating_sub(1) as f64 * BREAK;
    own / scale + breaks
}

/// How wide a support is drawn.
fn wide_below(support: &Support, axis: Axis) -> Length {
    let seat = support.seat_along(axis);
    support.pipe().map_or(seat, |pipe| pipe.outside.max(seat))
}

/// How far what stands below reaches down, as drawn.
pub(super) fn below(top: &Top, cut: &Cut) -> Length {
    let each = cut.supports.iter().map(|crossed| high_below(&top.supports[crossed.index]));
    each.fold(Length::default(), Length::max)
}

/// A pipe by its size; of a wall or a pad a piece as high as a thumb is wide.
fn high_below(support: &Support) -> Length {
    support.pipe().map_or_else(|| Length::new::<millimeter>(25.0), |pipe| pipe.outside)
}

pub(super) fn drawn(top: &Top, cut: &Cut, fixings: &[FixingMark], layout: &Layout, sky: f64) -> Markup {
    let size = |length: Length| length.get::<millimeter>() / layout.scale;
    let [outer, core, inner] =
        [top.outer.laminate().thickness(), top.core.thickness, top.inner.laminate().thickness()].map(size);
    let (upper, lower, under) = (sky + outer, sky + outer + core, sky + outer + core + inner);
    let class = |filled: Filled| match filled {
        Filled::Core => "core",
        Filled::Backing(_) => "board",
        Filled::Edge => "fill",
        Filled::Nothing => "none",
    };
    html! {
        @for run in cut.runs.iter().filter(|run| run.filled != Filled::Nothing) {
            @for [from, to] in layout.parts(run.from, run.to) {
                rect class=(class(run.filled)) x=(mm(from)) y=(mm(upper)) width=(mm(to - from)) height=(mm(lower - upper)) {}
                rect class="skin" x=(mm(from)) y=(mm(sky)) width=(mm(to - from)) height=(mm(outer)) {}
                rect class="skin" x=(mm(from)) y=(mm(lower)) width=(mm(to - from)) height=(mm(inner)) {}
            }
            path class="thin" d={ "M" (mm(layout.x(run.from))) " " (mm(sky)) "V" (mm(under)) "M" (mm(layout.x(run.to))) " " (mm(sky)) "V" (mm(under)) } {}
        }
        @for crossed in &cut.conduits {
            @let half = size(top.conduits[crossed.index].diameter) / 2.0;
            ellipse class="hole" cx=(mm(layout.x(crossed.at))) cy=(mm(f64::midpoint(upper, lower))) rx=(mm(half * crossed.wider.value)) ry=(mm(half)) {}
        }
        @for crossed in &cut.supports { (stands(&top.supports[crossed.index], crossed, cut.axis, [layout.x(crossed.at), under], layout.scale)) }
        @for (index, off) in &cut.fixings { (fixing(&fixings[*index], *off, layout, [sky, under], cut.axis)) }
        @for x in layout.breaks() {
            @let high = (under - sky + 3.0) / 4.0;
            @for off in [-BREAK / 2.0, BREAK / 2.0] {
                path class="line" d={ "M" (mm(x + off)) " " (mm(sky - 1.5)) "v" (mm(high)) "l0.9 " (mm(high / 2.0)) "l-1.8 " (mm(high)) "l0.9 " (mm(high / 2.0)) "v" (mm(high)) } {}
            }
        }
    }
}

/// A pipe below the top with its seat; a wall or a pad as wide as its seat.
fn stands(support: &Support, crossed: &Crossed, axis: Axis, [x, under]: [f64; 2], scale: f64) -> Markup {
    let size = |length: Length| length.get::<millimeter>() / scale;
    let times = crossed.wider.value;
    let seat = size(support.seat_along(axis)) * times;
    html! {
        @match &support.carrier {
            Carrier::Pipe(pipe) => {
                @let radius = size(pipe.outside) / 2.0;
                ellipse class="line" cx=(mm(x)) cy=(mm(under + radius)) rx=(mm(radius * times)) ry=(mm(radius)) {}
                @if let Some(wall) = pipe.wall {
                    @let inside = radius - size(wall);
                    ellipse class="thin" cx=(mm(x)) cy=(mm(under + radius)) rx=(mm(inside * times)) ry=(mm(inside)) {}
                }
            },
            Carrier::Wall(_) | Carrier::Pad(_) => {
                @let high = size(high_below(support));
                path class="line" d={ "M" (mm(x - seat / 2.0)) " " (mm(under + high)) "V" (mm(under)) "h" (mm(seat)) "v" (mm(high)) } {}
            },
        }
        path class="rim" d={ "M" (mm(x - seat / 2.0)) " " (mm(under + 0.3)) "h" (mm(seat)) } {}
    }
}

/// The hole of a fixing, as wide as the cut meets it, down to its stop, with its middle.
fn fixing(mark: &FixingMark, off: Length, layout: &Layout, [sky, under]: [f64; 2], axis: Axis) -> Markup {
    let x = layout.x(mark.at.along(axis));
    let way = |depth: f64| match mark.near {
        Skin::Outer => [sky, sky + depth],
        Skin::Inner => [under - depth, under],
    };
    html! {
        @for drill in &mark.drills {
            @let half = (drill.diameter / 2.0).get::<millimeter>();
            @let beside = off.get::<millimeter>();
            @if half > beside {
                @let wide = (half * half - beside * beside).sqrt() * 2.0 / layout.scale;
                @let [from, to] = way(drill.depth.map_or(under - sky, |depth| (depth.get::<millimeter>() / layout.scale).min(under - sky)));
                rect class="hole" x=(mm(x - wide / 2.0)) y=(mm(from)) width=(mm(wide)) height=(mm(to - from)) {}
            }
        }
        path class="dash" d={ "M" (mm(x)) " " (mm(sky - 1.5)) "V" (mm(under + 1.5)) } {}
    }
}

#[cfg(test)]
mod tests;
