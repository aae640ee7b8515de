use super::{HalfWaves, Plate, PlateFault, PlateLoad};
use crate::units::{ForcePerWidth, Length, MomentPerWidth, Ratio};

/// Terms along a side to begin with; the same for both sides of a square.
const FIRST_TERMS: usize = 32;
/// Most terms altogether, some hundredths of a second.
const MOST_TERMS: usize = 1 << 18;

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
#[derive(Clone, Copy, Debug, PartialEq)]
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
        let inverse = 1.0 / ((self.sx + m) * (self.sy + n) - c * c);
        let px = ((self.sy + n) * rx - c * ry) * inverse;
        let py = ((self.sx + m) * ry - c * rx) * inverse;
        let w = 1.0 / (self.sx * al * px + self.sy * be * py);
        Term { w, gx: px * w, gy: py * w }
    }

    /// Rotation and shear angle along `x` for unit amplitude of a moment in the equation of the rotation along `x`; of
    /// one sign term by term as well.
    pub fn under_moment(&self, al: f64, be: f64) -> (f64, f64) {
        let m = self.d11 * al * al + self.d66 * be * be;
        let n = self.d66 * al * al + self.d22 * be * be;
        let c = (self.d12 + self.d66) * al * be;
        let det = ((self.sx + m) * (self.sy + n) - c * c) / self.term(al, be).w;
        let turn = self.sx * al * al * (self.sy + n) + self.sy * be * be * n;
        (turn / det, self.sy * be * (al * c + be * n) / det)
    }

    /// The plate with its axes exchanged.
    pub fn turned(&self) -> Self {
        Self { a: self.b, b: self.a, d11: self.d22, d22: self.d11, sx: self.sy, sy: self.sx, ..*self }
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
    /// Half waves shorter than those summed are carried along their own side as by beams, since `α Qx + β Qy = q_mn`
    /// and `Qy` vanishes with growing `α`: the shears take what the beam bears beyond the terms summed, so that they
    /// converge as the moments do, everywhere but on the outline of a patch.
    ///
    /// Terms are added, more along the side that needs them, until the estimated error of each result is below
    /// `tolerance` or a quarter of a million terms are in; the estimate comes with the result either way.
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
        Ok(self.at_points(load, &[point], tolerance)?[0])
    }

    /// Results at points, with one series for all of them.
    fn at_points(
        &self,
        load: &PlateLoad,
        points: &[[Length; 2]],
        tolerance: Ratio,
    ) -> Result<Vec<PlatePoint>, PlateFault> {
        let half_waves = match load {
            PlateLoad::Uniform(_) => HalfWaves::Odd,
            PlateLoad::Patch { .. } => HalfWaves::All,
        };
        // The longer side takes more terms from the start.
        let [a, b] = [self.a.value, self.b.value];
        let (mut m, mut n) = (FIRST_TERMS, FIRST_TERMS);
        while b > 2.0 * a * ratio(n, m) && n < 8 * FIRST_TERMS {
            n *= 2;
        }
        while a > 2.0 * b * ratio(m, n) && m < 8 * FIRST_TERMS {
            m *= 2;
        }
        loop {
            let series = self.series([m, n], half_waves);
            let mut found = Vec::with_capacity(points.len());
            let (mut error, mut along_x, mut along_y) = (0.0_f64, 0.0_f64, 0.0_f64);
            for [x, y] in points {
                let (here, [x, y]) = series.checked_sums(load, [&[*x], &[*y]])?[0];
                (along_x, along_y) = (along_x.max(x), along_y.max(y));
                error = error.max(here.numerical_error.largest());
                found.push(here);
            }
            if error <= tolerance.value || m * n >= MOST_TERMS {
                return Ok(found);
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
        let zero = Length::default();
        let points = match *load {
            // Opposite sides bear the same.
            PlateLoad::Uniform(_) => vec![[zero, self.b / 2.0], [self.a / 2.0, zero]],
            PlateLoad::Patch { centre: [x, y], .. } => vec![[zero, y], [self.a, y], [x, zero], [x, self.b]],
        };
        let mut best = (ForcePerWidth::default(), Ratio::default());
        for point in self.at_points(load, &points, tolerance)? {
            let shear = point.qx.abs().max(point.qy.abs());
            if shear >= best.0 {
                best = (shear, point.numerical_error.shear);
            }
        }
        Ok(best)
    }
}

/// One count over another.
fn ratio(n: usize, m: usize) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "counts of terms")]
    let r = n as f64 / m as f64;
    r
}
