//! The double series at points.

use super::{
    PlateError, PlateFault, PlateLoad, PlatePoint, PlateSeries,
    series::{Side, Stretch, combine, dot, stretches},
};
use crate::units::{Length, si};

/// Results: deflection, three moments, two shears.
const RESULTS: usize = 6;
/// Which of them go with the cosines along `x`, and along `y`: the twist with both, each shear with its own.
const COSINE: [[bool; RESULTS]; 2] =
    [[false, false, false, true, true, false], [false, false, false, true, false, true]];

/// A load on one side, seen from a place along it.
struct Seen {
    sines: Vec<f64>,
    cosines: Vec<f64>,
    /// On an edge, what goes with a sine is rounding.
    on_edge: bool,
    height: f64,
    /// Short waves are carried along their own side as by beams: `α Qx + β Qy = q_mn`, with `Qy` vanishing. What they bear
    /// beyond the waves summed, and beyond the first half of them.
    rest: [f64; 2],
}

impl Seen {
    fn new(side: &Side, on: Stretch, amplitudes: &[f64], at: f64) -> Self {
        let turns = side.turns(at);
        let times = |f: fn(&(f64, f64)) -> f64| amplitudes.iter().zip(&turns).map(|(q, turn)| q * f(turn)).collect();
        let (sines, cosines): (Vec<f64>, Vec<f64>) = (times(|turn| turn.0), times(|turn| turn.1));
        let sum = |count: usize| -> f64 { cosines[..count].iter().zip(&side.waves).map(|(q, wave)| q / wave).sum() };
        let beam = on.beam_shear(at, side.length);
        let rest = [beam - sum(cosines.len()), beam - sum(side.half)];
        let on_edge = at <= 0.0 || at >= side.length;
        Self { height: on.height(at, side.length), on_edge, rest, sines, cosines }
    }

    /// The factors of a result along one side, if it does not vanish there.
    fn factors(&self, result: usize, side: usize) -> Option<&[f64]> {
        if COSINE[side][result] { Some(&self.cosines) } else { (!self.on_edge).then_some(&self.sines) }
    }
}

/// The terms of each result summed over the waves of one side, those of its first half and the others; empty where it
/// vanishes.
type Summed = [[Vec<f64>; 2]; RESULTS];

impl PlateSeries {
    /// Deflection, moments and shears at a point, as [`Plate::at`](super::Plate::at) with the terms that the series has.
    ///
    /// # Errors
    /// [`PlateFault::Outside`] if the point is not on the plate, [`PlateFault::Patch`] if the patch is not, or if it
    /// lies off the middle and the series has odd half waves alone.
    pub fn at(&self, load: &PlateLoad, [x, y]: [Length; 2]) -> Result<PlatePoint, PlateFault> {
        Ok(self.at_grid(load, &[x], &[y])?[0])
    }

    /// [`PlateSeries::at`] for every pair of `xs` and `ys`, `ys` fastest.
    ///
    /// The sums along the side that has fewer places are shared by all places along the other.
    ///
    /// # Errors
    /// As [`PlateSeries::at`].
    pub fn at_grid(&self, load: &PlateLoad, xs: &[Length], ys: &[Length]) -> Result<Vec<PlatePoint>, PlateFault> {
        Ok(self.checked_sums(load, [xs, ys])?.into_iter().map(|(point, _)| point).collect())
    }

    /// Sums of the terms, and the largest relative change that the last half along each side made.
    pub(super) fn checked_sums(
        &self,
        load: &PlateLoad,
        places: [&[Length]; 2],
    ) -> Result<Vec<(PlatePoint, [f64; 2])>, PlateFault> {
        let sides = [&self.along, &self.across];
        if (0..2).any(|i| places[i].iter().any(|at| !(0.0..=sides[i].length).contains(&at.value))) {
            return Err(PlateFault::Outside);
        }
        self.check(load)?;
        let (on, pressure) = stretches(load, &self.k);
        let [seen_x, seen_y] = [0, 1].map(|i| -> Vec<Seen> {
            let amplitudes = on[i].waves(sides[i]).amplitudes;
            places[i].iter().map(|at| Seen::new(sides[i], on[i], &amplitudes, at.value)).collect()
        });
        let total = (pressure * on[0].size * on[1].size).abs();
        let mut points = Vec::with_capacity(seen_x.len() * seen_y.len());
        if seen_x.len() <= seen_y.len() {
            for x in &seen_x {
                let summed = self.summed_along(x);
                points.extend(seen_y.iter().map(|y| self.point(&summed, 0, [x, y], pressure, total)));
            }
        } else {
            let summed: Vec<Summed> = seen_y.iter().map(|y| self.summed_across(y)).collect();
            for x in &seen_x {
                points.extend(
                    summed.iter().zip(&seen_y).map(|(summed, y)| self.point(summed, 1, [x, y], pressure, total)),
                );
            }
        }
        Ok(points)
    }

    fn summed_along(&self, x: &Seen) -> Summed {
        let (half, count) = (self.along.half, self.across.waves.len());
        std::array::from_fn(|result| {
            let (table, Some(factors)) = (&self.tables[result], x.factors(result, 0)) else {
                return Default::default();
            };
            let (near, far) = factors.split_at(half);
            [combine(table, near, count), combine(&table[half * count..], far, count)]
        })
    }

    fn summed_across(&self, y: &Seen) -> Summed {
        let (half, count) = (self.across.half, self.across.waves.len());
        std::array::from_fn(|result| {
            let (table, Some(factors)) = (&self.tables[result], y.factors(result, 1)) else {
                return Default::default();
            };
            let (near, far) = factors.split_at(half);
            let rows = || table.chunks_exact(count).map(|row| row.split_at(half));
            [rows().map(|row| dot(row.0, near)).collect(), rows().map(|row| dot(row.1, far)).collect()]
        })
    }

    /// The point seen, from the sums over the waves of one of its sides.
    fn point(
        &self,
        summed: &Summed,
        over: usize,
        seen: [&Seen; 2],
        pressure: f64,
        total: f64,
    ) -> (PlatePoint, [f64; 2]) {
        let other = 1 - over;
        let half = [&self.along, &self.across][other].half;
        // All terms, and those of the first half along each side.
        let (mut all, mut first) = ([0.0; RESULTS], [[0.0; RESULTS]; 2]);
        for (result, [near, far]) in summed.iter().enumerate() {
            let Some(factors) = seen[other].factors(result, other).filter(|_| !near.is_empty()) else { continue };
            first[over][result] = dot(near, factors);
            all[result] = first[over][result] + dot(far, factors);
            first[other][result] = dot(&near[..half], &factors[..half]) + dot(&far[..half], &factors[..half]);
        }
        let rest = |side: usize, share: usize| seen[1 - side].height * seen[side].rest[share];
        let [first_x, first_y] = &mut first;
        for (part, [x, y]) in [
            (&mut all, [rest(0, 0), rest(1, 0)]),
            (first_x, [rest(0, 1), rest(1, 0)]),
            (first_y, [rest(0, 0), rest(1, 1)]),
        ] {
            part[4] += x;
            part[5] += y;
            for value in part {
                *value *= pressure;
            }
        }

        let share = |part: &[f64; RESULTS]| {
            let change = |v: usize| (all[v] - part[v]).abs();
            let size = |v: std::ops::Range<usize>| v.map(|v| all[v].abs()).fold(0.0, f64::max);
            let over = |c: f64, s: f64| if c > 0.0 { c / s } else { 0.0 };
            let moment = size(1..4).max(0.01 * total);
            let shear = size(4..6).max(total / (2.0 * (self.k.a + self.k.b)));
            [
                over(change(0), all[0].abs()),
                over(change(1).max(change(2)).max(change(3)), moment),
                over(change(4).max(change(5)), shear),
            ]
        };
        let [ex, ey] = first.each_ref().map(share);
        let error = |i: usize| si(ex[i] + ey[i]);
        let largest = |e: [f64; 3]| e.into_iter().fold(0.0, f64::max);
        let point = PlatePoint {
            deflection: si(all[0]),
            mx: si(all[1]),
            my: si(all[2]),
            mxy: si(all[3]),
            qx: si(all[4]),
            qy: si(all[5]),
            numerical_error: PlateError { deflection: error(0), moment: error(1), shear: error(2) },
        };
        (point, [largest(ex), largest(ey)])
    }
}
