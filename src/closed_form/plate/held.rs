use std::f64::consts::PI;

use super::{
    PlateFault, PlateLoad, PlateSeries,
    navier::Numbers,
    series::{self, Side, Stretch, Waves},
};
use crate::units::{Force, ForcePerWidth, Length, MomentPerWidth, si};

/// What keeps a plate from turning over an edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EdgeHold {
    /// It cannot turn, as over a support with the same plate and the same load on both sides.
    Clamped,
    /// A strip of the same plate, this wide, that hangs over the edge: it must twist before the edge can turn. Of no
    /// width, it holds nothing.
    Overhang(Length),
}

/// What a held edge bears more than a simply supported one, at one place.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct HeldEdge {
    /// Moment over the edge, hogging positive.
    pub hogging: MomentPerWidth,
    /// Shear at the edge that comes with it, on top of that of [`Plate::at`](super::Plate::at); as the plate bears down positive.
    pub added_shear: ForcePerWidth,
}

/// What the terms left out of a [`HeldEdge`] may amount to, without sign.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct HeldCutOff {
    /// Of the moment over the edge.
    pub hogging: MomentPerWidth,
    /// Of the shear that comes with it.
    pub added_shear: ForcePerWidth,
}

/// The edges `x = 0` and `y = 0` of a plate, each held on its own while the other three stay simply supported.
#[derive(Clone, Debug)]
pub struct HeldEdges<'a> {
    series: &'a PlateSeries,
    /// For each edge: moment per unit load, waves along it as columns.
    moments: [Vec<f64>; 2],
    /// For each edge, by wave along it.
    waves: [Vec<EdgeWave>; 2],
}

/// A moment `sin βy` along an edge.
#[derive(Clone, Copy, Debug, Default)]
struct EdgeWave {
    /// Moment for a unit turn of the loose edge.
    stiffness: f64,
    /// Shear per moment.
    shear: f64,
    /// Changes of both, the first as a share, by the last half of the waves across the plate.
    stiffness_cut_off: f64,
    shear_cut_off: f64,
}

impl PlateSeries {
    /// Holds the edge `x = 0`, and on its own the edge `y = 0`.
    ///
    /// ```text
    /// M_n = −Σ_m X_mn q_mn/(f_n + 1/k_n)       M(0, y) = Σ M_n sin βy       added Qx(0, y) = Σ s_n M_n sin βy
    /// f_n = 1/(a (Sx + D66 β²)) + (2/a) Σ_m C_mn           k_n = 4 D66 c β² + D22 c³ β⁴/3, clamped: without bound
    /// s_n = Sx/(a (Sx + D66 β²)) + (2/a) Σ_m Sx G_mn
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `X_mn` | amplitude of the rotation along `x` under unit load, see [`Plate::at`](super::Plate::at) |
    /// | `C_mn`, `G_mn` | rotation and shear angle along `x` under a unit moment in the second equation there |
    /// | `f_n` | turn of the edge under a unit moment `sin βy` along it |
    /// | `k_n` | moment that an overhang of width `c` sets against a unit turn |
    ///
    /// # Validity
    /// As [`Plate::at`](super::Plate::at). One edge held alone: the moment is an upper bound where opposite or neighbouring edges are held
    /// too, since they relieve it. A soft core with unequal shear
    /// stiffnesses may turn the moment round, to sagging. The overhang turns as a rigid strip across its width, which is stiffer than it is.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED): moments along the edge that undo its turn.
    ///
    /// # Examples
    /// A plate ten times as long as wide is in its middle a strip held at one end: `q L²/8` and `5 q L/8`, that is
    /// 125 N·m/m and `q L/8` = 125 N/m more than half the load.
    /// ```
    /// use skinspan::closed_form::plate::{EdgeHold, HalfWaves, Plate, PlateLoad, PlateStiffness};
    /// use skinspan::units::{Force, Length, Pressure, Ratio, per_width};
    /// use uom::si::{force::newton, length::meter, pressure::pascal, ratio::ratio};
    /// let m = Length::new::<meter>;
    /// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
    /// let s = per_width(Force::new::<newton>(1e9) / m(1.0));
    /// let plate = Plate::new(m(1.0), m(10.0), PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s))?;
    /// let series = plate.series([32, 256], HalfWaves::Odd);
    /// let held = series.held([EdgeHold::Clamped; 2]);
    /// let [edge, _] = held.at(&PlateLoad::Uniform(Pressure::new::<pascal>(1000.0)))?;
    /// assert!((edge.hogging.value - 125.0).abs() < 0.1);
    /// assert!((edge.added_shear.value - 125.0).abs() < 0.5);
    /// # Ok::<(), skinspan::closed_form::plate::PlateFault>(())
    /// ```
    #[must_use]
    pub fn held(&self, holds: [EdgeHold; 2]) -> HeldEdges<'_> {
        let edge = |k: &Numbers, waves: &[f64], hold: EdgeHold| -> Vec<EdgeWave> {
            waves.iter().map(|&be| EdgeWave::new(k, be, hold)).collect()
        };
        let waves = [edge(&self.k, &self.across.waves, holds[0]), edge(&self.k.turned(), &self.along.waves, holds[1])];
        let moments = [0, 1].map(|i| {
            let mut moments = Vec::with_capacity(self.rotations[i].len());
            for row in self.rotations[i].chunks_exact(waves[i].len()) {
                moments.extend(row.iter().zip(&waves[i]).map(|(turn, wave)| -turn * wave.stiffness));
            }
            moments
        });
        HeldEdges { series: self, moments, waves }
    }
}

/// Waves across the plate that the turn of an edge is summed over, at the least.
const LEAST_WAVES: f64 = 24.0;
/// Bound of `β a`: shorter waves die out within some hundredths of the span, and no load there turns the edge.
const SHORTEST_FELT: f64 = 150.0;

impl EdgeWave {
    /// On the edge `x = 0`, its hold in series with the plate.
    fn new(k: &Numbers, be: f64, hold: EdgeHold) -> Self {
        let give = match hold {
            EdgeHold::Clamped => 0.0,
            EdgeHold::Overhang(c) => {
                let c = c.value.max(0.0);
                1.0 / (4.0 * k.d66 * c * be * be + k.d22 * c.powi(3) / 3.0 * be.powi(4))
            }
        };
        if be * k.a > SHORTEST_FELT || give.is_infinite() {
            return Self::default();
        }
        // As many waves across the plate as along the edge, at the least.
        let last = LEAST_WAVES.max((be * k.a / PI).ceil());
        let middle = (last / 2.0).floor();
        let stiff = k.sx + k.d66 * be * be;
        let (mut turn, mut shear) = (1.0 / (k.a * stiff), 1.0 / (k.a * stiff));
        let mut left = PI * PI / 6.0;
        let mut halfway = (turn, shear);
        // The rest as of a beam, 1/(D11 α²).
        let with_rest = |turn: f64, left: f64| turn + 2.0 * k.a / (PI * PI * k.d11) * left;
        let mut m = 1.0;
        while m <= last {
            let (t, g) = k.under_moment(m * PI / k.a, be);
            turn += 2.0 / k.a * t;
            shear += 2.0 / k.a * g;
            left -= 1.0 / (m * m);
            if m <= middle {
                halfway = (with_rest(turn, left), shear);
            }
            m += 1.0;
        }
        let turn = with_rest(turn, left);
        Self {
            stiffness: 1.0 / (turn + give),
            shear: k.sx * shear,
            stiffness_cut_off: ((turn - halfway.0) / (turn + give)).abs(),
            shear_cut_off: k.sx * (shear - halfway.1).abs(),
        }
    }
}

impl HeldEdges<'_> {
    /// Moments over the two edges and the shears that they add, beside the middle of the load.
    ///
    /// # Errors
    /// [`PlateFault::Patch`] if the patch does not lie on the plate, or lies off the middle and the series has odd half
    /// waves alone.
    pub fn at(&self, load: &PlateLoad) -> Result<[HeldEdge; 2], PlateFault> {
        self.series.check(load)?;
        let ([on_x, on_y], pressure) = series::stretches(load, &self.series.k);
        Ok(self.grid([&[on_x], &[on_y]], pressure)[0])
    }

    /// [`HeldEdges::at`] for a patch at every pair of `xs` and `ys`, `ys` fastest.
    ///
    /// # Errors
    /// As [`HeldEdges::at`].
    pub fn under_patch(
        &self,
        force: Force,
        size: [Length; 2],
        xs: &[Length],
        ys: &[Length],
    ) -> Result<Vec<[HeldEdge; 2]>, PlateFault> {
        self.series.check_grid(size, xs, ys)?;
        let on = |at: &[Length], size: Length| -> Vec<Stretch> {
            at.iter().map(|at| Stretch { centre: at.value, size: size.value }).collect()
        };
        let pressure = force.value / (size[0].value * size[1].value);
        Ok(self.grid([&on(xs, size[0]), &on(ys, size[1])], pressure))
    }

    /// What the terms left out may amount to: what the last half of the waves along each edge that turn it changed, the
    /// last half of the waves across the plate in its load, and the last half of those in the turn of the edge, added up.
    ///
    /// # Errors
    /// As [`HeldEdges::at`].
    pub fn cut_off(&self, load: &PlateLoad) -> Result<[HeldCutOff; 2], PlateFault> {
        self.series.check(load)?;
        let ([on_x, on_y], pressure) = series::stretches(load, &self.series.k);
        let (along, across) = (&self.series.along, &self.series.across);
        // Of an edge: the load across it, and what the load is along it in the middle of itself.
        let edge = |i: usize, Waves { amplitudes: load, .. }: &Waves, Waves { own, .. }: &Waves| {
            let (moments, half, columns) = (&self.moments[i], load.len() / 2, own.len());
            let all = series::combine(moments, load, columns);
            let last = series::combine(&moments[half * columns..], &load[half..], columns);
            let waves = &self.waves[i];
            let turning = waves.iter().filter(|wave| wave.stiffness > 0.0).count();
            let (mut hogging, mut shear) = ([0.0; 3], [0.0; 3]);
            for (n, ((own, wave), (all, last))) in own.iter().zip(waves).zip(all.iter().zip(&last)).enumerate() {
                let whole = if n >= turning / 2 { all * own } else { 0.0 };
                let parts = [whole, last * own, all * own * wave.stiffness_cut_off];
                for (part, (hogging, shear)) in parts.iter().zip(hogging.iter_mut().zip(&mut shear)) {
                    *hogging += part;
                    *shear += part * wave.shear;
                }
                shear[2] += all * own * wave.shear_cut_off;
            }
            let sum = |parts: [f64; 3]| pressure.abs() * parts.iter().map(|part| part.abs()).sum::<f64>();
            HeldCutOff { hogging: si(sum(hogging)), added_shear: si(sum(shear)) }
        };
        let (on_x, on_y) = (on_x.waves(along), on_y.waves(across));
        Ok([edge(0, &on_x, &on_y), edge(1, &on_y, &on_x)])
    }

    fn grid(&self, [on_x, on_y]: [&[Stretch]; 2], pressure: f64) -> Vec<[HeldEdge; 2]> {
        let waves = |on: &[Stretch], side: &Side| -> Vec<Waves> { on.iter().map(|on| on.waves(side)).collect() };
        let (on_x, on_y) = (waves(on_x, &self.series.along), waves(on_y, &self.series.across));
        // Waves of the moment along an edge, by place of the load across it.
        let over = |i: usize, on: &[Waves]| -> Vec<Vec<f64>> {
            on.iter().map(|on| series::combine(&self.moments[i], &on.amplitudes, self.waves[i].len())).collect()
        };
        let (over_x, over_y) = (over(0, &on_x), over(1, &on_y));
        let edge = |moments: &[f64], own: &[f64], waves: &[EdgeWave]| {
            let (mut hogging, mut shear) = (0.0, 0.0);
            for ((moment, own), wave) in moments.iter().zip(own).zip(waves) {
                hogging += moment * own;
                shear += moment * own * wave.shear;
            }
            HeldEdge { hogging: si(pressure * hogging), added_shear: si(pressure * shear) }
        };
        let mut edges = Vec::with_capacity(on_x.len() * on_y.len());
        for (over_x, on_x) in over_x.iter().zip(&on_x) {
            for (over_y, on_y) in over_y.iter().zip(&on_y) {
                edges.push([edge(over_x, &on_y.own, &self.waves[0]), edge(over_y, &on_x.own, &self.waves[1])]);
            }
        }
        edges
    }
}
