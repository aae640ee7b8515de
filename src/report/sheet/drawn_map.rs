//! One map: bands, lines with their values, outline, what the top stands on, the load, a scale.

use maud::{Markup, html};

use super::{
    bands::{Surface, slimmed},
    figure::{Figure, OnPaper, PAPER, mm, path, scale, scale_bar},
    labels::Labels,
    levels::Levels,
    maps::Printed,
};
use crate::top::{Carrier, Top};

/// How far lines are smoothed, in millimetres of the paper: less than they are wide.
const SMOOTH: f64 = 0.06;
/// Round the top on the paper.
const BORDER: f64 = 5.0;

/// Highest the top is drawn: two maps to a page.
const HIGH: f64 = 72.0;

/// Room for the legend, at the right.
const LEGEND: f64 = 34.0;
/// Height of a tint in it.
const TINT: f64 = 6.0;

/// A map.
pub(super) struct Map<'a> {
    pub(super) top: &'a Top,
    pub(super) id: &'a str,
    pub(super) title: &'a str,
    pub(super) caption: &'a str,
    pub(super) shown: &'a Printed,
    /// The largest value that counts, where there are larger ones that do not.
    pub(super) most: Option<f64>,
}

/// A level with its bands and lines on the paper.
struct Drawn {
    value: f64,
    rings: String,
    lines: Vec<Vec<[f64; 2]>>,
}

pub(super) fn drawn(map: &Map<'_>) -> Markup {
    let (outline, system) = (&map.top.outline, map.top.report);
    let scale = scale(outline.length(), PAPER - 2.0 * BORDER - LEGEND).max(scale(outline.width(), HIGH));
    let high = outline.width().get::<uom::si::length::millimeter>() / scale;
    let on = OnPaper { scale, left: BORDER, bottom: BORDER + high };
    let beside = on.length(outline.length()) + 2.0 * BORDER;
    let levels_high = |levels: &Levels| {
        #[expect(clippy::cast_precision_loss, reason = "a dozen bands")]
        let bands = (levels.up_to.len() + 1) as f64;
        bands * TINT + 24.0
    };
    let values = &map.shown.spread.values;
    let largest = values.iter().copied().fold(0.0, f64::max);
    let levels = Levels::up_to(map.most.unwrap_or(largest).min(largest));
    let size = [beside + LEGEND, (high + 2.0 * BORDER).max(levels_high(&levels))];
    let places: Vec<[f64; 2]> = map.shown.spread.places.iter().map(|place| on.at(*place)).collect();
    let triangles = &map.shown.spread.triangles;
    let bands = cut(&Surface { places: &places, values, triangles }, &levels.up_to);
    let peak = map.shown.spread.largest().unwrap_or_default();
    let at_peak = map.most.is_none().then(|| (places[peak], values[peak]));
    // Its value stands clear of the cross.
    let off = |y: f64| if y > 14.0 { -4.0 } else { 6.4 };
    let taken = at_peak.iter().flat_map(|([x, y], _)| [[*x, *y], [*x, y + off(*y)]]).collect();
    let mut labels = Labels::on([beside, high + 2.0 * BORDER], taken);
    let mut texts: Vec<([f64; 2], String)> = Vec::new();
    for level in bands.iter().rev() {
        let mut lines: Vec<&Vec<[f64; 2]>> = level.lines.iter().collect();
        lines.sort_by_key(|line| std::cmp::Reverse(line.len()));
        for line in lines {
            texts.extend(labels.place(line).map(|at| (at, levels.words(level.value))));
        }
    }
    let body = html! {
        @for level in &bands { path class="down" d=(level.rings) {} }
        (supports(map.top, on))
        @for line in bands.iter().flat_map(|level| &level.lines) { path class="level" d=(path(line, false)) {} }
        (rims(map.top, on))
        @if let Some(([x, y], value)) = at_peak {
            path class="rim" d={ "M" (mm(x - 1.2)) " " (mm(y - 1.2)) "l2.4 2.4M" (mm(x - 1.2)) " " (mm(y + 1.2)) "l2.4 -2.4" } {}
            text class="on" x=(mm(x.clamp(10.0, beside - 10.0))) y=(mm(y + off(y))) { (largest_words(value, &levels)) }
        }
        @for ([x, y], text) in &texts { text class="on" x=(mm(*x)) y=(mm(y + 1.1)) { (text) } }
        (legend(&levels, [beside + 2.0, BORDER + 4.0], map))
        (scale_bar([beside + 2.0, size[1] - BORDER], scale, system))
    };
    let cross = if map.most.is_none() { " Cross: the largest." } else { "" };
    let description = format!(
        "{} Contour lines every {}{} up to {}{}.",
        map.caption,
        levels.words(levels.step),
        unit(map.shown.unit),
        levels.words(largest),
        unit(map.shown.unit)
    );
    Figure {
        id: &format!("map-{}", map.id),
        title: map.title,
        description: &description,
        size,
        body,
        caption: html! {
            strong { (map.title) ". " } (map.caption) (cross) " Scale 1:" (scale) "."
        },
    }
    .markup()
}

fn unit(unit: &str) -> String {
    format!(" {unit}")
}

/// The largest value, with a digit more than the lines have.
fn largest_words(value: f64, levels: &Levels) -> String {
    format!("{:.*}", levels.decimals + 1, value)
}

fn cut(surface: &Surface<'_>, levels: &[f64]) -> Vec<Drawn> {
    let each = levels.iter().map(|&value| {
        let above = surface.above(value);
        let rings: String = above.rings.iter().map(|ring| path(&slimmed(ring, SMOOTH), true)).collect();
        let lines = above.lines.iter().map(|line| slimmed(line, SMOOTH)).collect();
        Drawn { value, rings, lines }
    });
    each.collect()
}

/// Outline and holes.
fn rims(top: &Top, on: OnPaper) -> Markup {
    let tolerance = top.outline.length() / 2000.0;
    let contours = std::iter::once(top.outline.contour()).chain(top.outline.holes().iter().map(|hole| &hole.contour));
    html! { @for contour in contours { path class="rim" d=(on.path(&contour.flattened(tolerance), true)) {} } }
}

/// What the top stands on: pipes with their posts, walls, pads.
fn supports(top: &Top, on: OnPaper) -> Markup {
    html! {
        @for support in &top.supports {
            @match &support.carrier {
                Carrier::Pad(pad) => path class="support" d=(on.path(&pad.border(), true)) {},
                Carrier::Pipe(_) | Carrier::Wall(_) => path class="support" stroke-linecap="butt"
                    style={ "stroke-width:" (mm(on.length(support.thickness()))) "px;stroke-opacity:.22" }
                    d=(on.path(support.along.points(), false)) {},
            }
            @for &post in support.posts() {
                @let [x, y] = on.at(support.along.at(post));
                circle class="post" cx=(mm(x)) cy=(mm(y)) r="0.9" {}
            }
        }
    }
}

/// A column of tints, the largest on top, the value of each line between two.
fn legend(levels: &Levels, [x, y]: [f64; 2], map: &Map<'_>) -> Markup {
    #[expect(clippy::cast_precision_loss, reason = "a dozen bands")]
    let at = |k: usize| y + TINT * k as f64;
    html! {
        text class="t" x=(mm(x)) y=(mm(y - 2.5)) { (map.shown.unit) }
        @for band in 0..=levels.up_to.len() {
            // Each tint is laid over the one before, as on the map.
            @for _ in band..levels.up_to.len() { rect class="down" x=(mm(x)) y=(mm(at(band))) width="7" height=(mm(TINT)) {} }
            rect class="thin" x=(mm(x)) y=(mm(at(band))) width="7" height=(mm(TINT)) {}
        }
        @for (k, level) in levels.up_to.iter().rev().enumerate() {
            text class="t" x=(mm(x + 9.0)) y=(mm(at(k + 1) + 1.1)) { (levels.words(*level)) }
        }
    }
}
