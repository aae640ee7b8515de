//! Running sizes: how far from the datum rows of fixings, pipes and posts lie, along the lower and the left side.

use maud::{Markup, html};
use uom::si::length::millimeter;

use super::{
    Template,
    drawing::{Frame, number},
    words,
};
use crate::{
    geometry::{Axis, Point},
    units::Length,
};

/// Two stations are one where nobody could set them apart.
const SAME: f64 = 0.05;
/// Words stand so far apart.
const APART: f64 = 4.4;
/// Where they begin, from the side of what is drawn, and the height of their letters.
const OFF: f64 = 9.0;
const SIZE: f64 = 3.2;

/// A station along an axis, with where its words stand.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Station {
    pub(super) axis: Axis,
    /// On the paper, along the axis.
    pub(super) at: f64,
    /// Where its words stand, along the axis.
    pub(super) words_at: f64,
    pub(super) words: String,
}

/// All stations, those along the length first.
pub(super) fn stations(template: &Template<'_>) -> Vec<Station> {
    let top = template.top;
    let mut places: Vec<(Axis, Length)> = Vec::new();
    for mark in &template.plan.fixings {
        places.extend(Axis::BOTH.map(|axis| (axis, mark.at.along(axis))));
    }
    for support in &top.supports {
        let main = support.along.main_axis();
        let (low, high) = support.along.extent(main.other());
        // The middle of what runs square; a bent pipe has no one place.
        if (high - low).get::<millimeter>() < SAME {
            places.push((main.other(), low));
        }
        places.extend(support.posts().iter().map(|post| (main, support.along.at(*post).along(main))));
    }
    Axis::BOTH.into_iter().flat_map(|axis| of_axis(template, axis, &places)).collect()
}

fn of_axis(template: &Template<'_>, axis: Axis, places: &[(Axis, Length)]) -> Vec<Station> {
    let on_paper = |at: Length| {
        let zero = Length::default();
        let place = template.view.place(match axis {
            Axis::X => Point { x: at, y: zero },
            Axis::Y => Point { x: zero, y: at },
        });
        match axis {
            Axis::X => place.u,
            Axis::Y => place.v,
        }
    };
    let own = places.iter().filter(|(of, _)| *of == axis).map(|(_, at)| (on_paper(*at), *at));
    let mut own: Vec<(f64, Length)> = own.collect();
    own.sort_by(|a, b| a.0.total_cmp(&b.0));
    own.dedup_by(|next, first| next.0 - first.0 < SAME);
    let words_at = spaced(&own.iter().map(|(at, _)| *at).collect::<Vec<_>>());
    let each = own.into_iter().zip(words_at);
    each.map(|((at, length), words_at)| Station {
        axis,
        at,
        words_at,
        words: words::place(length, template.top.report),
    })
    .collect()
}

/// Places no nearer to each other than words are high, as near to what is meant as that lets them.
fn spaced(wanted: &[f64]) -> Vec<f64> {
    let mut groups: Vec<(f64, Vec<usize>)> = Vec::new();
    let start = |middle: f64, count: usize| middle - APART * (to_f64(count) - 1.0) / 2.0;
    for (k, at) in wanted.iter().enumerate() {
        let mut next = (*at, vec![k]);
        // A group that would stand on the one before it joins it, about the middle of what both mean.
        while let Some((middle, members)) = groups.last() {
            if start(*middle, members.len()) + APART * to_f64(members.len()) <= start(next.0, next.1.len()) + 1e-9 {
                break;
            }
            let mut joined = members.clone();
            joined.append(&mut next.1);
            groups.pop();
            let middle = joined.iter().map(|member| wanted[*member]).sum::<f64>() / to_f64(joined.len());
            next = (middle, joined);
        }
        groups.push(next);
    }
    let of = |(middle, members): (f64, Vec<usize>)| {
        let first = start(middle, members.len());
        (0..members.len()).map(move |k| first + APART * to_f64(k))
    };
    groups.into_iter().flat_map(of).collect()
}

#[expect(clippy::cast_precision_loss, reason = "some hundreds of fixings")]
const fn to_f64(count: usize) -> f64 {
    count as f64
}

/// The stations beside the drawing, whose lower left corner is given on the paper.
pub(super) fn drawn(template: &Template<'_>, frame: Frame, [left, bottom]: [f64; 2]) -> Markup {
    let (left, below) = (frame.right + left, frame.down - bottom);
    html! {
        g id="running" fill="none" stroke="#000" stroke-width="0.15" font-family="sans-serif" font-size=(SIZE) {
            @for station in stations(template) {
                @match station.axis {
                    Axis::X => {
                        @let (x, to) = (frame.right + station.at, frame.right + station.words_at);
                        path d={ "M" (number(x)) " " (number(below + 2.0)) " v2 L" (number(to)) " " (number(below + OFF - 1.0)) } {}
                        text x=(number(to)) y=(number(below + OFF)) fill="#000" stroke="none" text-anchor="end" dy="1.1"
                            transform={ "rotate(-90 " (number(to)) " " (number(below + OFF)) ")" } { (station.words) }
                    },
                    Axis::Y => {
                        @let (y, to) = (frame.down - station.at, frame.down - station.words_at);
                        path d={ "M" (number(left - 2.0)) " " (number(y)) " h-2 L" (number(left - OFF + 1.0)) " " (number(to)) } {}
                        text x=(number(left - OFF)) y=(number(to + 1.1)) fill="#000" stroke="none" text-anchor="end" { (station.words) }
                    },
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::spaced;

    #[test]
    fn words_stand_apart_about_what_they_mean() {
        assert_eq!(spaced(&[0.0, 10.0, 20.0]), [0.0, 10.0, 20.0]);
        let close = spaced(&[10.0, 11.0]);
        assert!((close[0] - 8.3).abs() < 1e-9 && (close[1] - 12.7).abs() < 1e-9, "{close:?}");
        let three = spaced(&[10.0, 11.0, 14.0, 40.0]);
        assert!(three.windows(2).all(|pair| pair[1] - pair[0] > 4.4 - 1e-9), "{three:?}");
        assert!((three[..3].iter().sum::<f64>() / 3.0 - 35.0 / 3.0).abs() < 1e-9 && (three[3] - 40.0).abs() < 1e-9);
    }
}
