//! One map: bands, lines with their values, outline, what the top stands on, the load, a scale.

use maud::{Markup, html};

use super::{
    bands::{Surface, slimmed},
    figure::{Figure, OnPaper, PAPER, mm, path, scale, scale_bar},
    labels::Labels,
    levels::Levels,
    maps::Printed,
};
use crate::{
    geometry::Point,
    top::{Carrier, Top},
};

/// How far lines are smoothed, in millimetres of the paper: less than they are wide.
const SMOOTH: f64 = 0.06;
/// Round the top on the paper.
const BORDER: f64 = 5.0;

/// Highest the top is drawn: two maps to a page.
const HIGH: f64 = 78.0;

/// A map.
pub(super) struct Map<'a> {
    pub(super) top: &'a Top,
    pub(super) id: &'a str,
    pub(super) title: &'a str,
    pub(super) caption: &'a str,
    pub(super) shown: &'a Printed,
    /// The largest value that counts, where there are larger ones that do not.
    pub(super) most: Option<f64>,
    pub(super) load_at: Option<Point>,
}

/// A level with its bands and lines on the paper.
struct Drawn {
    value: f64,
    rings: String,
    lines: Vec<Vec<[f64; 2]>>,
}

pub(super) fn drawn(map: &Map<'_>) -> Markup {
    let (outline, system) = (&map.top.outline, map.top.report);
    let scale = scale(outline.length(), PAPER - 2.0 * BORDER).max(scale(outline.width(), HIGH));
    let high = outline.width().get::<uom::si::length::millimeter>() / scale;
    let on = OnPaper { scale, left: BORDER, bottom: BORDER + high };
    let wide = (on.length(outline.length()) + 2.0 * BORDER).max(130.0);
    let size = [wide, high + 2.0 * BORDER + 17.0];
    let values: Vec<f64> = map.shown.spread.values.iter().map(|value| value.value).collect();
    let (least, largest) = values.iter().fold((0.0_f64, 0.0_f64), |(a, b), value| (a.min(*value), b.max(*value)));
    let levels = Levels::over(least, map.most.unwrap_or(largest).min(largest));
    let places: Vec<[f64; 2]> = map.shown.spread.places.iter().map(|place| on.at(*place)).collect();
    let triangles = &map.shown.spread.triangles;
    let down = cut(&Surface { places: &places, values: &values, triangles }, &levels.up_to);
    let against: Vec<f64> = values.iter().map(|value| -value).collect();
    let sizes: Vec<f64> = levels.down_to.iter().map(|level| -level).collect();
    let up = cut(&Surface { places: &places, values: &against, triangles }, &sizes);
    let peak = values.iter().enumerate().max_by(|a, b| a.1.abs().total_cmp(&b.1.abs())).map_or(0, |(k, _)| k);
    let at_peak = map.most.is_none().then(|| (places[peak], values[peak]));
    let taken = at_peak.iter().map(|(at, _)| *at).chain(map.load_at.map(|at| on.at(at))).collect();
    let mut labels = Labels::on([size[0], high + 2.0 * BORDER], taken);
    let mut texts: Vec<([f64; 2], String)> = Vec::new();
    for (level, sign) in down.iter().map(|level| (level, 1.0)).chain(up.iter().map(|level| (level, -1.0))).rev() {
        let mut lines: Vec<&Vec<[f64; 2]>> = level.lines.iter().collect();
        lines.sort_by_key(|line| std::cmp::Reverse(line.len()));
        for line in lines {
            texts.extend(labels.place(line).map(|at| (at, levels.words(sign * level.value))));
        }
    }
    let body = html! {
        @for level in &down { path class="down" d=(level.rings) {} }
        @for level in &up { path class="up" d=(level.rings) {} }
        (supports(map.top, on))
        @for line in down.iter().flat_map(|level| &level.lines) { path class="level" d=(path(line, false)) {} }
        @for line in up.iter().flat_map(|level| &level.lines) { path class="level-up" d=(path(line, false)) {} }
        (rims(map.top, on))
        @if let Some(at) = map.load_at {
            @let [x, y] = on.at(at);
            circle class="rim" cx=(mm(x)) cy=(mm(y)) r="1.6" {}
            circle class="post" cx=(mm(x)) cy=(mm(y)) r="0.5" {}
        }
        @if let Some(([x, y], value)) = at_peak {
            path class="rim" d={ "M" (mm(x - 1.2)) " " (mm(y - 1.2)) "l2.4 2.4M" (mm(x - 1.2)) " " (mm(y + 1.2)) "l2.4 -2.4" } {}
            text class="on" x=(mm(x.clamp(10.0, size[0] - 10.0))) y=(mm(if y > 12.0 { y - 2.4 } else { y + 5.2 })) { (largest_words(value, &levels)) }
        }
        @for ([x, y], text) in &texts { text class="on" x=(mm(*x)) y=(mm(y + 1.1)) { (text) } }
        (legend(&levels, [BORDER, high + 2.0 * BORDER + 3.0], map))
        (scale_bar([size[0] - 40.0, high + 2.0 * BORDER + 12.5], scale, system))
    };
    let mark = if map.load_at.is_some() { " Ringed dot: the load." } else { "" };
    let cross = if map.most.is_none() { " Cross: the largest." } else { "" };
    let description = format!(
        "{} Contour lines every {}{} from {} to {}{}.",
        map.caption,
        levels.words(levels.step),
        unit(map.shown.unit),
        levels.words(least),
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
            strong { (map.title) ". " } (map.caption) (cross) (mark) " Scale 1:" (scale) "."
        },
    }
    .markup()
}

fn unit(unit: &str) -> String {
    format!(" {unit}")
}

/// The largest value, with a digit more than the lines have.
fn largest_words(value: f64, levels: &Levels) -> String {
    let text = format!("{:.*}", levels.decimals + 1, value.abs());
    if value < 0.0 { format!("−{text}") } else { text }
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

/// A row of tints, the value of each line between two.
fn legend(levels: &Levels, [x, y]: [f64; 2], map: &Map<'_>) -> Markup {
    let all: Vec<f64> = levels.down_to.iter().rev().chain(&levels.up_to).copied().collect();
    let bands = all.len() + 1;
    #[expect(clippy::cast_precision_loss, reason = "a dozen bands")]
    let (wide, at) = ((110.0 / bands as f64).min(13.0), |k: usize| x + (110.0 / bands as f64).min(13.0) * k as f64);
    let ups = levels.down_to.len();
    html! {
        @for band in 0..bands {
            // Each tint is laid over the one before, as on the map.
            @let (class, times) = if band < ups { ("up", ups - band) } else { ("down", band - ups) };
            @for _ in 0..times { rect class=(class) x=(mm(at(band))) y=(mm(y)) width=(mm(wide)) height="4" {} }
            rect class="thin" x=(mm(at(band))) y=(mm(y)) width=(mm(wide)) height="4" {}
        }
        @for (k, level) in all.iter().enumerate() {
            text class="t mid" x=(mm(at(k + 1))) y=(mm(y + 9.0)) { (levels.words(*level)) }
        }
        text class="t" x=(mm(at(bands) + 2.0)) y=(mm(y + 3.2)) { (map.shown.unit) }
    }
}
