//! What explains readings: a core or skins that give more than the table says, or supports that go down.

use nalgebra::{DMatrix, DVector};

use super::{
    Gauge,
    heaps::Heap,
    slip::plausible,
    solved::{Give, deflections, loaded},
};
use crate::{
    geometry::Point,
    top::Top,
    units::{Length, Mass, Ratio},
};

/// Something that moves readings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// The shear modulus of the core.
    Core,
    /// The moduli of the skins.
    Skins,
    /// Supports that go down, all by the same.
    Supports,
}

impl Cause {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Core, Self::Skins, Self::Supports];
}

/// What one or all causes would have to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Found {
    /// Shear modulus of the core over that of the table, less one.
    pub core: Ratio,
    /// Moduli of the skins over those of the table, less one.
    pub skins: Ratio,
    /// How far supports go down under all bags.
    pub supports: Length,
    /// What is left of the readings then: root of the mean square.
    pub left: Length,
}

impl Found {
    /// Whether core and skins could be that: a quarter to four times what the table says.
    #[must_use]
    pub fn plausible(&self) -> bool {
        plausible(self.core) && plausible(self.skins)
    }
}

/// What explains readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Causes {
    /// Each cause alone.
    pub alone: Vec<(Cause, Found)>,
    /// All three together; none where gauges are fewer than causes, or move alike under two of them.
    pub together: Option<Found>,
    /// How far each of the three may be off then by the error of gauges: core, skins as ratios, supports.
    pub off: Option<(Ratio, Ratio, Length)>,
    /// Whether the gauges can tell the three apart: core and skins to a tenth.
    pub told_apart: bool,
    /// The cause that leaves the least; none where two leave as little as gauges may be off.
    pub likely: Option<Cause>,
}

/// Rounds of Newton and Gauss.
const ROUNDS: usize = 5;

/// Step by which what materials give is changed to see how readings move.
const STEP: f64 = 0.1;

/// Core and skins are told apart where neither is off by more than this.
const APART: f64 = 0.1;

/// How a tried set of causes moves the readings.
struct Tried {
    give: Give,
    supports: f64,
}

/// Explains slopes: readings under all bags, gauge by gauge, in the order of the card.
///
/// ```text
/// Σ (r_i − w_i(κ_c, κ_s) − t)² = least,  G = G_0/(1 + κ_c)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `r_i`, `w_i` | reading and plate solution at gauge *i* |
/// | `κ_c`, `κ_s` | how much more core and skins give |
/// | *t* | how far supports go down |
///
/// By rounds of Newton and Gauss, each with solutions for a tenth more.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): least squares.
pub(super) fn causes(
    top: &Top,
    (heaps, bag): (&[Heap], Mass),
    gauges: &[&Gauge],
    slopes: &[Length],
) -> Result<Causes, String> {
    let under = loaded(top, heaps, bag);
    let places: Vec<Point> = gauges.iter().map(|gauge| gauge.at).collect();
    let read: Vec<f64> = slopes.iter().map(|slope| slope.value).collect();
    let noise = top.criteria.proof_gauge_noise.value.value;
    let fit = |active: &[Cause]| fit(&under, &places, &read, active);
    let mut alone = Vec::with_capacity(3);
    for cause in Cause::ALL {
        let found = fit(&[cause])?;
        alone.extend(found.map(|(found, _)| (cause, found)));
    }
    let all = if places.len() >= 3 { fit(&Cause::ALL)? } else { None };
    let together = all.as_ref().map(|(found, _)| *found);
    let off = all.as_ref().and_then(|(_, normal)| deviations(normal)).map(|off| off.map(|one| one * noise));
    let told_apart = off.is_some_and(|off| off[0] <= APART && off[1] <= APART);
    let off = off.map(|[core, skins, supports]| {
        (Ratio::from(core), Ratio::from(skins), Length::new::<uom::si::length::meter>(supports))
    });
    let mut order: Vec<(f64, Cause)> = alone.iter().map(|(cause, found)| (found.left.value, *cause)).collect();
    order.sort_by(|a, b| a.0.total_cmp(&b.0));
    let likely = match order[..] {
        [(least, cause), (next, _), ..] if least <= noise && next > noise => Some(cause),
        [(least, cause)] if least <= noise => Some(cause),
        _ => None,
    };
    Ok(Causes { alone, together, off, told_apart, likely })
}

/// The best of some causes, with the normal matrix of their slopes; none where two of them move the readings alike.
fn fit(under: &Top, places: &[Point], read: &[f64], active: &[Cause]) -> Result<Option<(Found, DMatrix<f64>)>, String> {
    let solved = |give: Give| -> Result<Vec<f64>, String> {
        Ok(deflections(under, give, places)?.iter().map(|deflection| deflection.value).collect())
    };
    let mut now = Tried { give: Give::default(), supports: 0.0 };
    let mut normal = DMatrix::zeros(active.len(), active.len());
    for _ in 0..ROUNDS {
        let base = solved(now.give)?;
        let mut slopes = DMatrix::zeros(places.len(), active.len());
        for (column, cause) in active.iter().enumerate() {
            let give = now.give;
            let (more, step) = match cause {
                Cause::Core => {
                    let step = STEP * (1.0 + give.core);
                    (Some(Give { core: give.core + step, ..give }), step)
                }
                Cause::Skins => {
                    let step = STEP * (1.0 + give.skin);
                    (Some(Give { skin: give.skin + step, ..give }), step)
                }
                Cause::Supports => (None, 1.0),
            };
            let moved = more.map(&solved).transpose()?;
            for row in 0..places.len() {
                slopes[(row, column)] = moved.as_ref().map_or(1.0, |moved| (moved[row] - base[row]) / step);
            }
        }
        let rest =
            DVector::from_iterator(places.len(), read.iter().zip(&base).map(|(read, base)| read - base - now.supports));
        normal = slopes.transpose() * &slopes;
        // Scaled, so that metres and shares weigh alike.
        let scale: Vec<f64> = (0..active.len()).map(|k| normal[(k, k)].sqrt().max(f64::MIN_POSITIVE)).collect();
        let scaled = DMatrix::from_fn(active.len(), active.len(), |i, j| normal[(i, j)] / (scale[i] * scale[j]));
        let right = slopes.transpose() * rest;
        let right = DVector::from_fn(active.len(), |i, _| right[i] / scale[i]);
        let Some(step) = scaled.cholesky().map(|factor| factor.solve(&right)) else { return Ok(None) };
        let mut largest: f64 = 0.0;
        for (column, cause) in active.iter().enumerate() {
            let step = step[column] / scale[column];
            match cause {
                // What gives less than nothing is nothing a material does.
                Cause::Core => now.give.core = (now.give.core + step).max(-0.9),
                Cause::Skins => now.give.skin = (now.give.skin + step).max(-0.9),
                Cause::Supports => now.supports += step,
            }
            largest = largest.max(if *cause == Cause::Supports { step.abs() * 1e3 } else { step.abs() });
        }
        if largest < 1e-4 {
            break;
        }
    }
    let base = solved(now.give)?;
    let squares: f64 = read.iter().zip(&base).map(|(read, base)| (read - base - now.supports).powi(2)).sum::<f64>();
    #[expect(clippy::cast_precision_loss, reason = "a handful of gauges")]
    let left = (squares / places.len() as f64).sqrt();
    let less = |give: f64| Ratio::from(1.0 / (1.0 + give) - 1.0);
    let metre = Length::new::<uom::si::length::meter>;
    let found = Found {
        core: less(now.give.core),
        skins: less(now.give.skin),
        supports: metre(now.supports),
        left: metre(left),
    };
    Ok(Some((found, normal)))
}

/// Standard deviations of core, skins and supports for gauges off by one metre.
fn deviations(normal: &DMatrix<f64>) -> Option<[f64; 3]> {
    let inverse = normal.clone().try_inverse()?;
    let one = |at: usize| inverse[(at, at)].max(0.0).sqrt();
    let all = [one(0), one(1), one(2)];
    all.iter().all(|one| one.is_finite()).then_some(all)
}
