//! What the cut shows, by letters that stand beside it.

use maud::{Markup, html};
use uom::si::length::millimeter;

use super::{
    cut_drawn::{BESIDE, Layout},
    figure::{PAPER, mm},
};
use crate::{
    geometry::Axis,
    plan::{Cut, Filled, FixingMark},
    report::words,
    top::{Forward, Top},
    units::{Length, both, show},
};

/// Letters stand so far apart.
const APART: f64 = 5.0;

/// What is named in the drawing.
pub(super) struct Named {
    pub(super) letter: char,
    pub(super) words: String,
    at: Length,
    whose: Whose,
}

/// Where the line from a letter ends.
#[derive(Clone, Copy, PartialEq)]
enum Whose {
    /// In what lies between the skins, so far down in shares of its depth.
    Between,
    /// In a fixing.
    Fixing,
    /// In what stands below.
    Below,
}

pub(super) fn named(top: &Top, cut: &Cut, fixings: &[FixingMark], scale: f64) -> Vec<Named> {
    let system = top.report;
    let mut all: Vec<(Length, Whose, String)> = Vec::new();
    let mut known: Vec<Filled> = Vec::new();
    for run in &cut.runs {
        if known.contains(&run.filled) {
            continue;
        }
        known.push(run.filled);
        let at = telling(cut, fixings, [run.from, run.to], scale);
        let words = match run.filled {
            Filled::Core => {
                format!("core, {}, {}", words::within(&top.core.material.name), show(top.core.thickness, system))
            }
            Filled::Backing(index) => {
                let backing = &top.backings[index];
                format!(
                    "{} of {}, {} wide",
                    backing.name,
                    words::within(&backing.board.name),
                    show(backing.width, system)
                )
            }
            Filled::Edge => match &top.edge {
                Some(edge) => {
                    format!("edge of {}, {} wide", words::within(&edge.fill.name), show(edge.setback, system))
                }
                None => continue,
            },
            Filled::Nothing => "hole through the top".to_owned(),
        };
        all.push((at, Whose::Between, words));
    }
    for crossed in &cut.conduits {
        let conduit = &top.conduits[crossed.index];
        let words = format!("conduit {}, {} wide", conduit.name, show(conduit.diameter, system));
        all.push((crossed.at, Whose::Between, words));
    }
    let mut of: Vec<&str> = Vec::new();
    for (index, off) in &cut.fixings {
        let mark = &fixings[*index];
        if of.contains(&mark.held.as_str()) {
            continue;
        }
        of.push(&mark.held);
        let cut_beside = if *off > Length::new::<millimeter>(0.05) { ", its hole cut beside its middle" } else { "" };
        let words = format!("{} of {}, {}{cut_beside}", mark.fixing, mark.held, mark.size);
        all.push((mark.at.along(cut.axis), Whose::Fixing, words));
    }
    for crossed in &cut.supports {
        let support = &top.supports[crossed.index];
        let words = match support.pipe() {
            Some(pipe) => {
                format!("{}, {}, on a seat of {}", support.name, both(pipe.outside, system), show(support.seat, system))
            }
            None => format!("{}, a {} below; how high it is the file does not say", support.name, support.word()),
        };
        all.push((crossed.at, Whose::Below, words));
    }
    // Across, the drawing begins at port.
    let turned = cut.axis == Axis::Y && top.bow() == Forward::Right;
    all.sort_by(|a, b| if turned { b.0.value.total_cmp(&a.0.value) } else { a.0.value.total_cmp(&b.0.value) });
    let letters = ('A'..='Z').chain('a'..='z');
    all.into_iter().zip(letters).map(|((at, whose, words), letter)| Named { letter, words, at, whose }).collect()
}

/// A place of a stretch that is drawn and that nothing crosses: between its end and the break, one to `scale`.
fn telling(cut: &Cut, fixings: &[FixingMark], [from, to]: [Length; 2], scale: f64) -> Length {
    let holes = cut.fixings.iter().map(|(index, _)| fixings[*index].at.along(cut.axis));
    let others: Vec<Length> = cut.conduits.iter().map(|crossed| crossed.at).chain(holes).collect();
    let free = |at: &Length| {
        let off = |other: &Length| (*other - *at).abs();
        let middle = (from + to - 2.0 * *at).abs() / 2.0;
        others.iter().map(off).fold(Length::new::<millimeter>(60.0), Length::min) - middle * 0.1
    };
    // So much is drawn of it beside its ends in any case.
    let near = ((to - from) / 2.0).min(Length::new::<millimeter>(scale * BESIDE / 2.0));
    [from + near, to - near].into_iter().max_by(|a, b| free(a).value.total_cmp(&free(b).value)).unwrap_or(from)
}

/// Letters in a row above and one below, each with a line to what it names; none stands on the drawing.
pub(super) fn letters(named: &[Named], layout: &Layout, [sky, under, below]: [f64; 3]) -> Markup {
    let row = |is_below: bool| {
        let own: Vec<&Named> = named.iter().filter(|named| (named.whose == Whose::Below) == is_below).collect();
        let wanted: Vec<f64> = own.iter().map(|named| layout.x(named.at)).collect();
        own.into_iter().zip(spaced(&wanted)).collect::<Vec<_>>()
    };
    html! {
        @for (named, x) in row(false) {
            @let to = layout.x(named.at);
            @let down = match named.whose { Whose::Fixing => sky, _ => f64::midpoint(sky, under) };
            path class="thin" d={ "M" (mm(x)) " " (mm(sky - 5.0)) "L" (mm(to)) " " (mm(sky - 2.0)) "V" (mm(down)) } {}
            text class="t mid" x=(mm(x)) y=(mm(sky - 5.6)) { (named.letter) }
        }
        @for (named, x) in row(true) {
            @let to = layout.x(named.at);
            path class="thin" d={ "M" (mm(x)) " " (mm(below - 4.5)) "L" (mm(to)) " " (mm(below - 7.5)) } {}
            text class="t mid" x=(mm(x)) y=(mm(below - 1.6)) { (named.letter) }
        }
    }
}

/// Places that are near those that are wanted and stand apart, in order.
fn spaced(wanted: &[f64]) -> Vec<f64> {
    let mut at: Vec<f64> = wanted.to_vec();
    for k in 1..at.len() {
        at[k] = at[k].max(at[k - 1] + APART);
    }
    // What was pushed beyond the paper goes back.
    let mut end = PAPER - 3.0;
    for place in at.iter_mut().rev() {
        *place = place.min(end);
        end = *place - APART;
    }
    at
}

#[cfg(test)]
mod tests {
    use super::spaced;

    #[test]
    fn letters_stand_apart_and_on_the_paper() {
        assert_eq!(spaced(&[10.0, 11.0, 40.0]), [10.0, 15.0, 40.0]);
        let end = spaced(&[160.0, 171.0, 171.5]);
        assert_eq!(end, [159.0, 164.0, 169.0]);
        assert!(spaced(&[]).is_empty());
    }
}
