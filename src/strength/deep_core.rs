//! Pressure under a foot when the core is deep: an elastic body, not a bed of springs.

use std::f64::consts::{FRAC_PI_3, PI};

use super::{DiscLoad, StripLoad};
use crate::units::{FlexuralRigidity, Length, Pressure, Ratio, plain};

/// A skin on a core without a bottom.
///
/// Springs that do not feel each other spread a small load too far: the pressure peaks higher on a real core, because
/// only the part near the skin gives way. Take the greater of this pressure and that of
/// [`SkinOnCore`](super::SkinOnCore); a core of finite depth lies close to it. Under a washer of 12 mm on 19 mm of
/// foam the bed of springs alone is 28 % low.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeepCore {
    /// Rigidity of the skin about its own middle.
    pub skin_rigidity: FlexuralRigidity,
    /// Modulus with which the core meets the skin, [`bonded_core_modulus`].
    pub core_modulus: Pressure,
}

/// Modulus with which a deep core meets a skin that is bonded to it.
///
/// ```text
///   E = 4 (1 − ν) E_c / ((1 + ν)(3 − 4 ν))
/// ```
///
/// The skin, stiff in its own plane, keeps the surface of the core from stretching; a wave of wave number α then meets the
/// stiffness *E* α/2. A skin that slid would meet `E_c`/(1 − *ν*²), which is less.
///
/// | symbol | meaning                                   | argument       |
/// |--------|-------------------------------------------|----------------|
/// | `E_c`  | modulus of the core                       | `core_modulus` |
/// | *ν*    | Poisson's ratio of the core               | `core_poisson` |
///
/// # Validity
///
/// Isotropic core, *ν* from 0 to 0.4, deeper than the wave is long. Without a measured value 0.3 is usual for foam (from
/// memory).
///
/// # Source
///
/// [`ALLEN_1969`](crate::source::ALLEN_1969), wrinkling on an elastic half-space (from memory), checked against its
/// coefficient *B₁*.
///
/// # Examples
///
/// 75 MPa, *ν* = 0.3: 4 × 0.7 × 75/(1.3 × 1.8) = 89.7 MPa.
///
/// ```
/// use skinspan::{strength::bonded_core_modulus, units::{Pressure, Ratio}};
/// use uom::si::pressure::megapascal;
/// let e = bonded_core_modulus(Pressure::new::<megapascal>(75.0), Ratio::from(0.3));
/// assert!((e.get::<megapascal>() - 89.7).abs() < 0.05);
/// ```
#[must_use]
pub fn bonded_core_modulus(core_modulus: Pressure, core_poisson: Ratio) -> Pressure {
    let nu = core_poisson.value;
    core_modulus * (4.0 * (1.0 - nu) / ((1.0 + nu) * (3.0 - 4.0 * nu)))
}

impl DeepCore {
    /// Length that measures how far a load spreads under the skin.
    ///
    /// ```text
    ///   ℓ₀ = (2 D_f/E_c)^(1/3)
    /// ```
    ///
    /// | symbol | meaning                                      | field           |
    /// |--------|----------------------------------------------|-----------------|
    /// | `D_f`  | rigidity of the skin about its own middle    | `skin_rigidity` |
    /// | `E_c`  | modulus with which the core meets the skin   | `core_modulus`  |
    ///
    /// # Validity
    ///
    /// Core at least twice as deep as ℓ₀.
    ///
    /// # Source
    ///
    /// [`TIMOSHENKO_1959`](crate::source::TIMOSHENKO_1959), chapter on plates on elastic foundation (from memory).
    ///
    /// # Examples
    ///
    /// `D_f` = 4 N·m on 64 MPa: (8/64 × 10⁻⁶)^(1/3) = 5 mm.
    ///
    /// ```
    /// # use skinspan::{strength::DeepCore, units::{Length, Pressure, per_width}};
    /// # use uom::si::{length::{meter, millimeter}, pressure::{megapascal, pascal}};
    /// # let m = Length::new::<meter>(1.0);
    /// let core = DeepCore {
    ///     skin_rigidity: per_width(Pressure::new::<pascal>(4.0) * m * m * m),
    ///     core_modulus: Pressure::new::<megapascal>(64.0),
    /// };
    /// assert!((core.spread_length().get::<millimeter>() - 5.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn spread_length(&self) -> Length {
        (2.0 * plain(self.skin_rigidity) / self.core_modulus).cbrt()
    }

    /// Pressure on the core under the middle of a disc load.
    ///
    /// ```text
    ///   σ = F/(π a²) · y ∫₀^∞ J₁(ys)/(1 + s³) ds        y = a/ℓ₀
    ///   σ → F/(3√3 ℓ₀²)                                  for a small disc
    /// ```
    ///
    /// | symbol | meaning                                             | field or argument |
    /// |--------|-----------------------------------------------------|-------------------|
    /// | *F*    | load                                                | `load.force`      |
    /// | *a*    | radius over which it is spread                      | `load.radius`     |
    /// | ℓ₀     | [`spread_length`](Self::spread_length)              |                   |
    /// | *J₁*   | Bessel function of the first kind                   |                   |
    ///
    /// # Validity
    ///
    /// As [`spread_length`](Self::spread_length); core elastic, even pressure under the foot.
    ///
    /// # Source
    ///
    /// [`TIMOSHENKO_1959`](crate::source::TIMOSHENKO_1959), chapter on plates on elastic foundation, for the small
    /// disc (from memory); [`DERIVED`](crate::source::DERIVED) with Hankel's transform, the integral turned on to the
    /// imaginary axis.
    ///
    /// # Examples
    ///
    /// Almost a point, 1000 N, ℓ₀ = 5 mm: 1000/(5.196 × 25) = 7.698 MPa.
    ///
    /// ```
    /// # use skinspan::{strength::{DeepCore, DiscLoad}, units::{Force, Length, Pressure, per_width}};
    /// # use uom::si::{force::newton, length::{meter, millimeter}, pressure::{megapascal, pascal}};
    /// # let m = Length::new::<meter>(1.0);
    /// let core = DeepCore {
    ///     skin_rigidity: per_width(Pressure::new::<pascal>(4.0) * m * m * m),
    ///     core_modulus: Pressure::new::<megapascal>(64.0),
    /// };
    /// let load = DiscLoad { force: Force::new::<newton>(1000.0), radius: Length::new::<millimeter>(0.01) };
    /// assert!((core.pressure_under_disc(load).get::<megapascal>() - 7.698).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn pressure_under_disc(&self, load: DiscLoad) -> Pressure {
        load.pressure() * disc_shape((load.radius / self.spread_length()).value)
    }

    /// Pressure on the core under the middle of a seat along a line.
    ///
    /// ```text
    ///   σ = (P/s) · (2/π) ∫₀^∞ sin(yr)/(r (1 + r³)) dr      y = s/(2 ℓ₀)
    ///   σ → 2 P/(3√3 ℓ₀)                                     for a knife edge
    /// ```
    ///
    /// | symbol | meaning                                             | field or argument |
    /// |--------|-----------------------------------------------------|-------------------|
    /// | *P*    | load per length of the line                         | `load.force`      |
    /// | *s*    | width of the seat                                   | `load.seat_width` |
    /// | ℓ₀     | [`spread_length`](Self::spread_length)              |                   |
    ///
    /// # Validity
    ///
    /// As [`pressure_under_disc`](Self::pressure_under_disc).
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED) with Fourier's transform, the integral turned on to the imaginary axis.
    ///
    /// # Examples
    ///
    /// A knife edge with 10 N/mm, ℓ₀ = 5 mm: 20/(5.196 × 5) = 0.7698 MPa.
    ///
    /// ```
    /// # use skinspan::{strength::{DeepCore, StripLoad}, units::{Force, Length, Pressure, per_width}};
    /// # use uom::si::{force::newton, length::meter, pressure::{megapascal, pascal}};
    /// # let m = Length::new::<meter>(1.0);
    /// let core = DeepCore {
    ///     skin_rigidity: per_width(Pressure::new::<pascal>(4.0) * m * m * m),
    ///     core_modulus: Pressure::new::<megapascal>(64.0),
    /// };
    /// let pipe = StripLoad { force: per_width(Force::new::<newton>(10e3) / m), seat_width: 0.0 * m };
    /// assert!((core.pressure_under_strip(pipe).get::<megapascal>() - 0.7698).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn pressure_under_strip(&self, load: StripLoad) -> Pressure {
        let l = self.spread_length();
        plain(load.force) / (2.0 * l) * strip_shape((load.seat_width / (2.0 * l)).value)
    }
}

/// Chebyshev coefficients of (1 + y⁻²) y ∫ J₁(ys)/(1 + s³) ds in (y − 2)/(y + 2), from the integral on the imaginary
/// axis that the test below takes by quadrature. The factor leaves a function that is near one for every *y*.
const DISC: [f64; 48] = [
    0.834032537,
    0.268851989,
    -0.071126206,
    -0.094468150,
    0.050261351,
    0.035004702,
    -0.010789247,
    -0.016372133,
    -0.002521532,
    0.005299388,
    0.003906890,
    0.000085493,
    -0.001643553,
    -0.001166737,
    -0.000097769,
    0.000467886,
    0.000417195,
    0.000117777,
    -0.000103982,
    -0.000149424,
    -0.000081968,
    0.000000645,
    0.000042845,
    0.000040823,
    0.000017405,
    -0.000004362,
    -0.000013756,
    -0.000011778,
    -0.000004775,
    0.000001434,
    0.000004179,
    0.000003726,
    0.000001729,
    -0.000000193,
    -0.000001201,
    -0.000001244,
    -0.000000725,
    -0.000000112,
    0.000000292,
    0.000000407,
    0.000000306,
    0.000000123,
    -0.000000036,
    -0.000000116,
    -0.000000119,
    -0.000000075,
    -0.000000020,
    0.000000022,
];

/// y ∫ J₁(ys)/(1 + s³) ds, within 10⁻⁶ of the value: a fit, since a moving foot asks for it thousands of times.
fn disc_shape(y: f64) -> f64 {
    let x = (y - 2.0) / (y + 2.0);
    // Clenshaw's sum.
    let (sum, before) = DISC.iter().skip(1).rev().fold((0.0, 0.0), |(one, two), c| (c + 2.0 * x * one - two, one));
    (DISC[0] + x * sum - before) / (1.0 + 1.0 / (y * y))
}

/// (2/π)/y ∫ sin(ys)/(s (1 + s³)) ds.
fn strip_shape(y: f64) -> f64 {
    // Likewise; the next term is of the order y² ln y.
    if y < 1e-3 {
        return 4.0 / 27f64.sqrt();
    }
    let pole = (-y * FRAC_PI_3.sin()).exp() * (y * FRAC_PI_3.cos()).cos() * 2.0 / 3.0 * PI;
    let axis = log_trapezoid(y, |t| (-y * t).exp() * t * t / (1.0 + t.powi(6)));
    2.0 / PI * (PI / 2.0 - pole + axis) / y
}

/// ∫₀^∞ *f*(*t*) d*t* by the trapezoidal rule in ln *t*, for *f* that falls as *t*² at zero, as *t*⁻³ at infinity and
/// as e^(−yt).
fn log_trapezoid(y: f64, f: impl Fn(f64) -> f64) -> f64 {
    const STEP: f64 = 0.125;
    (-68..=84).map(|i| (STEP * f64::from(i)).exp()).take_while(|t| y * t < 37.0).map(|t| t * f(t)).sum::<f64>() * STEP
}

#[cfg(test)]
mod tests {
    use std::f64::consts::FRAC_PI_6;

    use nalgebra::Complex;

    use super::*;
    use crate::strength::kelvin::k1_on_ray;

    /// What the fit promises.
    const FIT: f64 = 1e-6;

    /// y ∫ J₁(ys)/(1 + s³) ds.
    fn by_quadrature(y: f64) -> f64 {
        // Near zero the terms below cancel; the power series of the integral has a logarithm from y⁶ on.
        if y < 0.01 {
            return y * y * (PI / 27f64.sqrt() - y / 3.0 + PI / (24.0 * 3f64.sqrt()) * y * y);
        }
        // The contour meets the pole e^(iπ/3) and ends on the imaginary axis, where J₁ becomes K₁.
        let pole = Complex::from_polar(4.0 / 3.0 * y, 5.0 * FRAC_PI_6) * k1_on_ray(y, -FRAC_PI_6);
        let axis = log_trapezoid(y, |t| k1_on_ray(y * t, 0.0).re * t.powi(3) / (1.0 + t.powi(6)));
        1.0 + pole.re + 2.0 / PI * y * axis
    }

    #[test]
    fn fit_of_the_disc_keeps_its_promise() {
        for i in 0..400 {
            let y = 1e-4 * 10f64.powf(f64::from(i) * 0.02);
            approx::assert_relative_eq!(disc_shape(y), by_quadrature(y), max_relative = FIT);
        }
    }

    #[test]
    fn disc_is_right_at_both_ends() {
        assert!(disc_shape(0.0).abs() < f64::MIN_POSITIVE && disc_shape(f64::NAN).is_nan());
        approx::assert_relative_eq!(disc_shape(1e-6) * 1e12, PI / 27f64.sqrt(), max_relative = FIT);
        approx::assert_relative_eq!(disc_shape(1e6), 1.0, max_relative = FIT);
    }
}
