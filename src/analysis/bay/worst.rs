//! The worst place of a load that may stand anywhere.

use std::marker::PhantomData;

use uom::si::{Dimension, Quantity, SI, ratio::ratio};

use crate::{
    closed_form::plate::PlateFault,
    units::{Length, Ratio},
};

/// Steps from a pipe to the middle of the bay; the other half mirrors it.
const COARSE: u32 = 8;
/// Steps of the closer look, a coarse step on the whole.
const FINE: u32 = 4;

/// The largest value of a result, where it was found, and what a place between those tried may add.
#[derive(Clone, Copy, Debug)]
pub(super) struct Worst {
    value: f64,
    pub place: [Length; 2],
    pub missed: Ratio,
}

impl Worst {
    /// In the unit of the results.
    pub fn value<D: Dimension + ?Sized>(&self) -> Quantity<D, SI<f64>, f64> {
        Quantity { dimension: PhantomData, units: PhantomData, value: self.value }
    }
}

/// Looks at a grid of places, then more closely about the worst of them, for each of several results.
///
/// A smooth peak lies at most half a step from the nearest place tried. With a fall of `d` from there to the next place
/// it is then at most `d/4` higher, and that is the share said to be missed.
pub(super) fn worst_places<const N: usize>(
    range: [(Length, Length); 2],
    results: impl Fn(&[Length], &[Length]) -> Result<Vec<[f64; N]>, PlateFault>,
) -> Result<[Worst; N], PlateFault> {
    let steps = |from: Length, to: Length, count: u32| -> Vec<Length> {
        (0..=count).map(|step| from + (to - from) * (f64::from(step) / f64::from(count))).collect()
    };
    let [xs, ys] = range.map(|(from, to)| steps(from, to, COARSE));
    let coarse = results(&xs, &ys)?;
    let mut found = [Worst { value: 0.0, place: [xs[0], ys[0]], missed: Ratio::default() }; N];
    for (result, worst) in found.iter_mut().enumerate() {
        let (best, _) = largest(&coarse, result);
        let centre = [xs[best / ys.len()], ys[best % ys.len()]];
        let about = [0, 1].map(|i| {
            let (from, to) = range[i];
            let half: Length = (to - from) / (2.0 * f64::from(COARSE));
            steps((centre[i] - half).max(from), (centre[i] + half).min(to), FINE)
        });
        let fine = results(&about[0], &about[1])?;
        let (best, value) = largest(&fine, result);
        let (i, j, columns) = (best / about[1].len(), best % about[1].len(), about[1].len());
        let fall = |at: Option<usize>| at.map_or(0.0, |at| value - fine[at][result]);
        let next = |i: usize, last: usize| (i.checked_sub(1), (i < last).then_some(i + 1));
        let (left, right) = next(i, about[0].len() - 1);
        let (below, above) = next(j, columns - 1);
        let along = fall(left.map(|i| i * columns + j)).max(fall(right.map(|i| i * columns + j)));
        let across = fall(below.map(|j| i * columns + j)).max(fall(above.map(|j| i * columns + j)));
        let missed = if value > 0.0 { (along + across) / (4.0 * value) } else { 0.0 };
        *worst = Worst { value, place: [about[0][i], about[1][j]], missed: Ratio::new::<ratio>(missed) };
    }
    Ok(found)
}

fn largest<const N: usize>(values: &[[f64; N]], result: usize) -> (usize, f64) {
    values
        .iter()
        .enumerate()
        .map(|(at, values)| (at, values[result]))
        .fold((0, f64::NEG_INFINITY), |best, here| if here.1 > best.1 { here } else { best })
}
