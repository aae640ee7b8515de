use std::f64::consts::PI;

use super::{Plate, PlateFault, PlateLoad};
use crate::{
    closed_form::quantity::si,
    units::{ForcePerWidth, Length, MomentPerWidth, Ratio},
};

/// Terms along a side to begin with; the same for both sides of a square.
const FIRST_TERMS: usize = 32;
/// Most terms altogether, some tenths of a second.
const MOST_TERMS: usize = 1 << 22;

/// Deflection, moments and shears at a point of a plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlatePoint {
    /// Deflection, down positive.
    pub deflection: Length,
    /// Moment that bends strips along `x`, sagging positive.
    pub mx: MomentPerWidth,
    /// Moment that bends strips along `y`, sagging positive.
    pub my: MomentPerWidth,
    /// Twisting moment.
    pub mxy: MomentPerWidth,
    /// Shear on sections across `x`.
    pub qx: ForcePerWidth,
    /// Shear on sections across `y`.
    pub qy: ForcePerWidth,
    /// What the terms left out may amount to.
    pub numerical_error: PlateError,
}

/// Estimated truncation error of a series: what the last half of the terms along each side changed, added up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateError {
    /// Of the deflection, as a share of itself.
    pub deflection: Ratio,
    /// Of the moments, as a share of the largest of the three, or of 1 % of the load if that is more.
    pub moment: Ratio,
    /// Of the shears, as a share of the larger, or of the mean reaction along the edges if that is more.
    pub shear: Ratio,
}

impl PlateError {
    fn largest(&self) -> f64 {
        self.deflection.value.max(self.moment.value).max(self.shear.value)
    }
}

/// Amplitudes of one term: deflection and the two shear angles, for unit load amplitude.
pub(super) struct Term {
    pub w: f64,
    pub gx: f64,
    pub gy: f64,
}

/// Stiffnesses in SI base units.
#[derive(Clone, Copy)]
pub(super) struct Numbers {
    pub a: f64,
    pub b: f64,
    pub d11: f64,
    pub d12: f64,
    pub d22: f64,
    pub d66: f64,
    pub sx: f64,
    pub sy: f64,
}

impl Numbers {
    pub fn new(p: &Plate) -> Self {
        let k = &p.stiffness;
        Self {
            a: p.a.value,
            b: p.b.value,
            d11: k.d11.value,
            d12: k.d12.value,
            d22: k.d22.value,
            d66: k.d66.value,
            sx: k.shear_x.value,
            sy: k.shear_y.value,
        }
    }

    /// The 3×3 system of the series, written in shear angles instead of rotations: all terms are then of one sign, and
    /// nothing cancels when the shear stiffness is large.
    #[inline]
    pub fn term(&self, al: f64, be: f64) -> Term {
        let m = self.d11 * al * al + self.d66 * be * be;
        let n = self.d66 * al * al + self.d22 * be * be;
        let c = (self.d12 + self.d66) * al * be;
        let (rx, ry) = (m * al + c * be, c * al + n * be);
        let det = (self.sx + m) * (self.sy + n) - c * c;
        let px = ((self.sy + n) * rx - c * ry) / det;
        let py = ((self.sx + m) * ry - c * rx) / det;
        let w = 1.0 / (self.sx * al * px + self.sy * be * py);
        Term { w, gx: px * w, gy: py * w }
    }
}

/// Load amplitude, sine and cosine at the point, and wave number of the terms along one side.
struct Side {
    waves: Vec<(f64, f64, f64, f64)>,
    half: usize,
}

impl Side {
    fn new(terms: usize, side: f64, at: f64, load: impl Fn(f64) -> f64) -> Self {
        let mut waves = Vec::with_capacity(terms);
        let mut half = 0;
        let mut m = 1.0;
        for i in 0..terms {
            let k = m * PI / side;
            let amplitude = load(k);
            // Pressure has no even terms; what is left of them is rounding.
            if amplitude.abs() > 1e-14 / m {
                waves.push((amplitude, (k * at).sin(), (k * at).cos(), k));
            }
            if i < terms / 2 {
                half = waves.len();
            }
            m += 1.0;
        }
        Self { waves, half }
    }
}

impl Plate {
    /// Deflection, moments and shears at a point under a load, by Navier's double series with shear.
    ///
    /// ```text
    /// ⎡ Sx α² + Sy β²   Sx α                    Sy β                  ⎤ ⎡W⎤   ⎡q_mn⎤
    /// ⎢ Sx α            D11 α² + D66 β² + Sx    (D12 + D66) α β       ⎥ ⎢X⎥ = ⎢ 0  ⎥     α = mπ/a,  β = nπ/b
    /// ⎣ Sy β            (D12 + D66) α β         D66 α² + D22 β² + Sy  ⎦ ⎣Y⎦   ⎣ 0  ⎦
    /// w  = Σ W sin αx sin βy               Mx = −Σ (D11 α X + D12 β Y) sin αx sin βy
    /// Qx = Σ Sx (α W + X) cos αx sin βy    Mxy = Σ D66 (β X + α Y) cos αx cos βy
    /// uniform: q_mn = 16 q/(π² m n), m and n odd
    /// patch:   q_mn = 16 P/(π² m n cx cy) sin αx0 sin(α cx/2) sin βy0 sin(β cy/2)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `W`, `X`, `Y` | amplitudes of the deflection and of the two rotations |
    /// | `D11`, `D12`, `D22`, `D66`, `Sx`, `Sy` | stiffnesses, see [`PlateStiffness`](super::PlateStiffness) |
    /// | `a`, `b` | sides |
    /// | `q`; `P`, `x0`, `y0`, `cx`, `cy` | pressure; patch: force, middle, sides |
    ///
    /// Terms are added, more along the side that needs them, until the estimated error of each result is below
    /// `tolerance` or 4 million terms are in; the estimate comes with the result either way. The edge shear under
    /// pressure converges slowest, its error falling only as one over the number of terms along `a`.
    ///
    /// # Validity
    /// Small deflections; skins thin enough that they do not carry shear by their own bending; edges that hold the
    /// deflection and the rotation along the edge.
    ///
    /// # Errors
    /// [`PlateFault::Outside`] if the point is not on the plate, [`PlateFault::Patch`] if the patch is not.
    ///
    /// # Source
    /// [`REDDY_2004`](crate::source::REDDY_2004), Navier solutions of the first-order theory (from memory); derived.
    ///
    /// # Examples
    /// A square of 1 m, isotropic, `D` = 1000 N·m²/m, ν = 0.3, `S` = 1e9 N/m (thin): under 1 kPa the centre sinks by
    /// 0.004062 q a⁴/D = 4.062 mm, and `Mx` = 0.0479 q a².
    /// ```
    /// use skinspan::closed_form::plate::{Plate, PlateLoad, PlateStiffness};
    /// use skinspan::units::{Force, Length, Pressure, Ratio, per_width};
    /// use uom::si::{force::newton, length::{meter, millimeter}, pressure::pascal, ratio::ratio};
    /// let m = Length::new::<meter>;
    /// let r = Ratio::new::<ratio>;
    /// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
    /// let s = per_width(Force::new::<newton>(1e9) / m(1.0));
    /// let plate = Plate::new(m(1.0), m(1.0), PlateStiffness::isotropic(d, r(0.3), s))?;
    /// let centre = plate.at(&PlateLoad::Uniform(Pressure::new::<pascal>(1000.0)), [m(0.5), m(0.5)], r(1e-4))?;
    /// assert!((centre.deflection.get::<millimeter>() - 4.062).abs() < 0.001);
    /// assert!((centre.mx.value - 47.9).abs() < 0.05);
    /// # Ok::<(), skinspan::closed_form::plate::PlateFault>(())
    /// ```
    pub fn at(&self, load: &PlateLoad, point: [Length; 2], tolerance: Ratio) -> Result<PlatePoint, PlateFault> {
        let k = Numbers::new(self);
        let [x, y] = point.map(|p| p.value);
        if !(0.0..=k.a).contains(&x) || !(0.0..=k.b).contains(&y) {
            return Err(PlateFault::Outside);
        }
        check(load, &k)?;
        // The longer side takes more terms from the start.
        let (mut m, mut n) = (FIRST_TERMS, FIRST_TERMS);
        while k.b > 2.0 * k.a * ratio(n, m) && n < 8 * FIRST_TERMS {
            n *= 2;
        }
        while k.a > 2.0 * k.b * ratio(m, n) && m < 8 * FIRST_TERMS {
            m *= 2;
        }
        loop {
            let (point, [along_x, along_y]) = sum(&k, load, [x, y], [m, n]);
            if point.numerical_error.largest() <= tolerance.value || m * n >= MOST_TERMS {
                return Ok(point);
            }
            if along_x >= along_y {
                m *= 2;
            } else {
                n *= 2;
            }
        }
    }

    /// Largest transverse shear along the edges under a load, with its error: at mid-sides under pressure, beside the
    /// patch under a patch.
    ///
    /// ```text
    /// max of |Qx(0, y0)|, |Qx(a, y0)|, |Qy(x0, 0)|, |Qy(x0, b)|
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `x0`, `y0` | middle of the plate, or of the patch |
    ///
    /// # Validity
    /// As [`Plate::at`]. For a patch nearer to an edge than its own size the largest shear may lie elsewhere.
    ///
    /// # Errors
    /// As [`Plate::at`].
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// A square of 1 m under 1 kPa: 0.338 q a.
    /// ```
    /// use skinspan::closed_form::plate::{Plate, PlateLoad, PlateStiffness};
    /// use skinspan::units::{Force, Length, Pressure, Ratio, per_width};
    /// use uom::si::{force::newton, length::meter, pressure::pascal, ratio::ratio};
    /// let m = Length::new::<meter>;
    /// let r = Ratio::new::<ratio>;
    /// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
    /// let s = per_width(Force::new::<newton>(1e5) / m(1.0));
    /// let plate = Plate::new(m(1.0), m(1.0), PlateStiffness::isotropic(d, r(0.3), s))?;
    /// let (shear, error) = plate.edge_shear(&PlateLoad::Uniform(Pressure::new::<pascal>(1000.0)), r(2e-3))?;
    /// assert!((shear.value - 338.0).abs() < 1.0 && error.value < 2e-3);
    /// # Ok::<(), skinspan::closed_form::plate::PlateFault>(())
    /// ```
    pub fn edge_shear(&self, load: &PlateLoad, tolerance: Ratio) -> Result<(ForcePerWidth, Ratio), PlateFault> {
        let (zero, [x, y]) = match *load {
            PlateLoad::Uniform(_) => (Length::default(), [self.a / 2.0, self.b / 2.0]),
            PlateLoad::Patch { centre, .. } => (Length::default(), centre),
        };
        let mut best = (ForcePerWidth::default(), Ratio::default());
        for point in [[zero, y], [self.a, y], [x, zero], [x, self.b]] {
            let p = self.at(load, point, tolerance)?;
            let shear = p.qx.abs().max(p.qy.abs());
            if shear >= best.0 {
                best = (shear, p.numerical_error.shear);
            }
        }
        Ok(best)
    }
}

fn ratio(n: usize, m: usize) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "counts of terms")]
    let r = n as f64 / m as f64;
    r
}

fn check(load: &PlateLoad, k: &Numbers) -> Result<(), PlateFault> {
    let PlateLoad::Patch { centre, size, .. } = load else { return Ok(()) };
    for ((c, s), side) in centre.iter().zip(size).zip([k.a, k.b]) {
        let half = s.value / 2.0;
        let slack = 1e-9 * side;
        if !(half > 0.0 && c.value - half >= -slack && c.value + half <= side + slack) {
            return Err(PlateFault::Patch);
        }
    }
    Ok(())
}

/// Sum of `terms`, and the largest relative change that the last half along each side made.
fn sum(k: &Numbers, load: &PlateLoad, at: [f64; 2], terms: [usize; 2]) -> (PlatePoint, [f64; 2]) {
    let total;
    let [xs, ys] = match *load {
        PlateLoad::Uniform(q) => {
            total = q.value * k.a * k.b;
            // (4/(m π)) for odd m only: 2 (1 − cos mπ)/(mπ).
            let along = |side: f64| move |wave: f64| 2.0 * (1.0 - (wave * side).cos()) / (wave * side);
            [Side::new(terms[0], k.a, at[0], along(k.a)), Side::new(terms[1], k.b, at[1], along(k.b))]
        }
        PlateLoad::Patch { force, centre, size } => {
            total = force.value;
            let along = |side: f64, i: usize| {
                let (c, s) = (centre[i].value, size[i].value);
                move |wave: f64| 4.0 / (wave * side) * (wave * c).sin() * (wave * s / 2.0).sin()
            };
            [Side::new(terms[0], k.a, at[0], along(k.a, 0)), Side::new(terms[1], k.b, at[1], along(k.b, 1))]
        }
    };
    let pressure = match *load {
        PlateLoad::Uniform(q) => q.value,
        PlateLoad::Patch { force, size, .. } => force.value / (size[0].value * size[1].value),
    };

    let mut all = [0.0; 6];
    // The first half along x, and along y.
    let (mut near_x, mut near_y) = ([0.0; 6], [0.0; 6]);
    for (i, &(qm, sx, cx, al)) in xs.waves.iter().enumerate() {
        let (mut row, mut half) = ([0.0; 6], [0.0; 6]);
        for (j, &(qn, sy, cy, be)) in ys.waves.iter().enumerate() {
            if j == ys.half {
                half = row;
            }
            let t = k.term(al, be);
            let (rx, ry) = (t.gx - al * t.w, t.gy - be * t.w);
            row[0] += qn * t.w * sy;
            row[1] -= qn * (k.d11 * al * rx + k.d12 * be * ry) * sy;
            row[2] -= qn * (k.d12 * al * rx + k.d22 * be * ry) * sy;
            row[3] += qn * k.d66 * (be * rx + al * ry) * cy;
            row[4] += qn * k.sx * t.gx * sy;
            row[5] += qn * k.sy * t.gy * cy;
        }
        let along = [sx, sx, sx, cx, cx, sx].map(|f| f * qm * pressure);
        for v in 0..6 {
            all[v] += along[v] * row[v];
            near_y[v] += along[v] * half[v];
        }
        if i + 1 == xs.half {
            near_x = all;
        }
    }

    let share = |part: &[f64; 6]| {
        let change = |v: usize| (all[v] - part[v]).abs();
        let size = |v: std::ops::Range<usize>| v.map(|v| all[v].abs()).fold(0.0, f64::max);
        let over = |c: f64, s: f64| if c > 0.0 { c / s } else { 0.0 };
        let moment = size(1..4).max(0.01 * total.abs());
        let shear = size(4..6).max(total.abs() / (2.0 * (k.a + k.b)));
        [
            // On an edge the deflection is rounding.
            if at[0] > 0.0 && at[0] < k.a && at[1] > 0.0 && at[1] < k.b { over(change(0), all[0].abs()) } else { 0.0 },
            over(change(1).max(change(2)).max(change(3)), moment),
            over(change(4).max(change(5)), shear),
        ]
    };
    let (ex, ey) = (share(&near_x), share(&near_y));
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
