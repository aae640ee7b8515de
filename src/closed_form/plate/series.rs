use std::f64::consts::PI;

use super::{Plate, PlateFault, PlateLoad, navier::Numbers};
use crate::units::{Force, Length, MomentPerWidth, si};

/// Which half waves a series has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HalfWaves {
    /// All of them, for any load.
    All,
    /// The odd ones, for loads that lie symmetrically about both middle lines.
    Odd,
}

/// Half waves along one side.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Side {
    pub length: f64,
    /// Wave numbers.
    pub waves: Vec<f64>,
    /// How many of them make the first half.
    pub half: usize,
    /// Half waves from one wave number to the next.
    step: f64,
}

impl Side {
    fn new(length: f64, terms: usize, half_waves: HalfWaves) -> Self {
        let (count, step) = match half_waves {
            HalfWaves::All => (terms, 1.0),
            HalfWaves::Odd => (terms.div_ceil(2), 2.0),
        };
        let mut waves = Vec::with_capacity(count);
        let mut m = 1.0;
        for _ in 0..count {
            waves.push(m * PI / length);
            m += step;
        }
        Self { length, waves, half: count / 2, step }
    }

    /// Sines and cosines of all waves at a place, by turning on from wave to wave.
    pub fn turns(&self, at: f64) -> Vec<(f64, f64)> {
        let angle = PI * at / self.length;
        let (mut s, mut c) = angle.sin_cos();
        let (ds, dc) = (self.step * angle).sin_cos();
        let mut turns = Vec::with_capacity(self.waves.len());
        for _ in &self.waves {
            turns.push((s, c));
            (s, c) = (s * dc + c * ds, c * dc - s * ds);
        }
        turns
    }
}

/// A stretch of one side that bears unit pressure.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stretch {
    pub centre: f64,
    pub size: f64,
}

impl Stretch {
    /// Its half waves along the side.
    pub fn waves(self, side: &Side) -> Waves {
        let (middle, end) = (side.turns(self.centre), side.turns(self.size / 2.0));
        let turns = middle.iter().zip(&end);
        let amplitudes: Vec<f64> = (side.waves.iter().zip(turns))
            .map(|(wave, ((centre, _), (half, _)))| 4.0 / (wave * side.length) * centre * half)
            .collect();
        let own = amplitudes.iter().zip(&middle).map(|(q, (sine, _))| q * sine).collect();
        Waves { amplitudes, own }
    }

    /// Pressure at a place: none at the ends of the side, half of it where the stretch ends, as a sine series has it.
    pub fn height(self, at: f64, side: f64) -> f64 {
        let inside = self.size / 2.0 - (at - self.centre).abs();
        let hair = 1e-9 * side;
        if at < hair || at > side - hair || inside < -hair {
            0.0
        } else if inside < hair {
            0.5
        } else {
            1.0
        }
    }

    /// Shear of a beam as long as the side.
    pub fn beam_shear(self, at: f64, side: f64) -> f64 {
        self.size * (1.0 - self.centre / side) - (at - self.centre + self.size / 2.0).clamp(0.0, self.size)
    }
}

/// Half waves of a stretch.
pub(super) struct Waves {
    pub amplitudes: Vec<f64>,
    /// Each amplitude times its sine in the middle of the stretch.
    pub own: Vec<f64>,
}

/// A load as pressure on a stretch along each side.
pub(super) fn stretches(load: &PlateLoad, k: &Numbers) -> ([Stretch; 2], f64) {
    match *load {
        PlateLoad::Uniform(q) => ([k.a, k.b].map(|side| Stretch { centre: side / 2.0, size: side }), q.value),
        PlateLoad::Patch { force, centre, size } => (
            [0, 1].map(|i| Stretch { centre: centre[i].value, size: size[i].value }),
            force.value / (size[0].value * size[1].value),
        ),
    }
}

/// The double series of a simply supported plate, its terms per unit load worked out once.
///
/// Each load and each point then costs one sum of products; see [`Plate::at`] for the series.
#[derive(Clone, Debug)]
pub struct PlateSeries {
    pub(super) k: Numbers,
    pub(super) along: Side,
    pub(super) across: Side,
    half_waves: HalfWaves,
    /// Deflection, three moments, two shears; waves along `x` are rows.
    pub(super) tables: [Vec<f64>; 6],
    /// Amplitudes of the two rotations; waves across the rotation are columns.
    pub(super) rotations: [Vec<f64>; 2],
}

impl Plate {
    /// The series with half waves up to a number along each side.
    ///
    /// # Examples
    /// A square of 1 m, isotropic, `D` = 1000 N·m²/m, thin, under 1 kPa: 0.004062 q a⁴/D = 4.062 mm.
    /// ```
    /// use skinspan::closed_form::plate::{HalfWaves, Plate, PlateLoad, PlateStiffness};
    /// use skinspan::units::{Force, Length, Pressure, Ratio, per_width};
    /// use uom::si::{force::newton, length::{meter, millimeter}, pressure::pascal, ratio::ratio};
    /// let m = Length::new::<meter>;
    /// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
    /// let s = per_width(Force::new::<newton>(1e9) / m(1.0));
    /// let plate = Plate::new(m(1.0), m(1.0), PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s))?;
    /// let series = plate.series([16, 16], HalfWaves::Odd);
    /// let centre = series.at(&PlateLoad::Uniform(Pressure::new::<pascal>(1000.0)), [m(0.5), m(0.5)])?;
    /// assert!((centre.deflection.get::<millimeter>() - 4.062).abs() < 0.001);
    /// # Ok::<(), skinspan::closed_form::plate::PlateFault>(())
    /// ```
    #[must_use]
    pub fn series(&self, terms: [usize; 2], half_waves: HalfWaves) -> PlateSeries {
        let k = Numbers::new(self);
        let along = Side::new(k.a, terms[0].max(2), half_waves);
        let across = Side::new(k.b, terms[1].max(2), half_waves);
        let (rows, columns) = (along.waves.len(), across.waves.len());
        let mut tables: [Vec<f64>; 6] = std::array::from_fn(|_| vec![0.0; rows * columns]);
        let mut rotations: [Vec<f64>; 2] = std::array::from_fn(|_| vec![0.0; rows * columns]);
        for (m, &al) in along.waves.iter().enumerate() {
            let row = m * columns..(m + 1) * columns;
            let [w, mx, my, mxy, qx, qy] = tables.each_mut().map(|table| &mut table[row.clone()]);
            let [along_x, along_y] = &mut rotations;
            let along_x = &mut along_x[row.clone()];
            let column = along_y[m..].iter_mut().step_by(rows);
            for ((n, &be), along_y) in across.waves.iter().enumerate().zip(column) {
                let t = k.term(al, be);
                let (rx, ry) = (t.gx - al * t.w, t.gy - be * t.w);
                w[n] = t.w;
                mx[n] = -(k.d11 * al * rx + k.d12 * be * ry);
                my[n] = -(k.d12 * al * rx + k.d22 * be * ry);
                mxy[n] = k.d66 * (be * rx + al * ry);
                (qx[n], qy[n]) = (k.sx * t.gx, k.sy * t.gy);
                (along_x[n], *along_y) = (rx, ry);
            }
        }
        PlateSeries { k, along, across, half_waves, tables, rotations }
    }
}

/// Deflection and moments under the middle of a patch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnderPatch {
    /// Deflection, down positive.
    pub deflection: Length,
    /// Moment that bends strips along `x`, sagging positive.
    pub mx: MomentPerWidth,
    /// Moment that bends strips along `y`, sagging positive.
    pub my: MomentPerWidth,
}

impl PlateSeries {
    /// The sides of the plate.
    #[must_use]
    pub fn sides(&self) -> [Length; 2] {
        [si(self.k.a), si(self.k.b)]
    }

    /// Deflection and moments under the middle of a patch, for the patch at every pair of `xs` and `ys`, `ys` fastest.
    ///
    /// The sums along `x` are shared by all `ys`.
    ///
    /// # Errors
    /// As [`PlateSeries::at`].
    pub fn under_patch(
        &self,
        force: Force,
        size: [Length; 2],
        xs: &[Length],
        ys: &[Length],
    ) -> Result<Vec<UnderPatch>, PlateFault> {
        self.check_grid(size, xs, ys)?;
        let pressure = force.value / (size[0].value * size[1].value);
        let own =
            |side: &Side, at: Length, size: Length| Stretch { centre: at.value, size: size.value }.waves(side).own;
        let across: Vec<Vec<f64>> = ys.iter().map(|&y| own(&self.across, y, size[1])).collect();
        let mut under = Vec::with_capacity(xs.len() * ys.len());
        for &x in xs {
            let along: Vec<f64> = own(&self.along, x, size[0]).iter().map(|q| q * pressure).collect();
            let rows = [0, 1, 2].map(|v| combine(&self.tables[v], &along, self.across.waves.len()));
            under.extend(across.iter().map(|across| {
                let [w, mx, my] = [0, 1, 2].map(|v| dot(&rows[v], across));
                UnderPatch { deflection: si(w), mx: si(mx), my: si(my) }
            }));
        }
        Ok(under)
    }

    pub(super) fn check_grid(&self, size: [Length; 2], xs: &[Length], ys: &[Length]) -> Result<(), PlateFault> {
        // Whether a patch lies on the plate is settled along each side alone.
        let middle = [self.k.a / 2.0, self.k.b / 2.0].map(si::<uom::si::length::Dimension>);
        let centres = xs.iter().map(|&x| [x, middle[1]]).chain(ys.iter().map(|&y| [middle[0], y]));
        for centre in centres {
            self.check(&PlateLoad::Patch { force: Force::default(), centre, size })?;
        }
        Ok(())
    }

    pub(super) fn check(&self, load: &PlateLoad) -> Result<(), PlateFault> {
        let PlateLoad::Patch { centre, size, .. } = load else { return Ok(()) };
        for ((c, s), side) in centre.iter().zip(size).zip([self.k.a, self.k.b]) {
            let half = s.value / 2.0;
            let slack = 1e-9 * side;
            let on_plate = half > 0.0 && c.value - half >= -slack && c.value + half <= side + slack;
            let known = self.half_waves == HalfWaves::All || (c.value - side / 2.0).abs() <= slack;
            if !(on_plate && known) {
                return Err(PlateFault::Patch);
            }
        }
        Ok(())
    }
}

/// Rows of a table times a factor each, added up. Four rows at a time: the sum is fetched and put back once for them.
pub(super) fn combine(table: &[f64], factors: &[f64], count: usize) -> Vec<f64> {
    let mut sum = vec![0.0; count];
    let mut fours = factors.chunks_exact(4);
    for (rows, f) in table.chunks_exact(4 * count).zip(&mut fours) {
        let (ab, cd) = rows.split_at(2 * count);
        let ((a, b), (c, d)) = (ab.split_at(count), cd.split_at(count));
        for ((((sum, a), b), c), d) in sum.iter_mut().zip(a).zip(b).zip(c).zip(d) {
            *sum += (f[0] * a + f[1] * b) + (f[2] * c + f[3] * d);
        }
    }
    let rest = fours.remainder();
    for (row, &factor) in table[(factors.len() - rest.len()) * count..].chunks_exact(count).zip(rest) {
        for (sum, value) in sum.iter_mut().zip(row) {
            *sum += factor * value;
        }
    }
    sum
}

/// Sum of products, in four sums side by side that need not wait for one another.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sum = [0.0; 4];
    let (mut fours_a, mut fours_b) = (a.chunks_exact(4), b.chunks_exact(4));
    for (a, b) in (&mut fours_a).zip(&mut fours_b) {
        for i in 0..4 {
            sum[i] += a[i] * b[i];
        }
    }
    let rest: f64 = fours_a.remainder().iter().zip(fours_b.remainder()).map(|(a, b)| a * b).sum();
    (sum[0] + sum[1]) + (sum[2] + sum[3]) + rest
}
