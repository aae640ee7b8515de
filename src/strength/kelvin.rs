//! Modified Bessel functions, for real arguments and of the second kind on the ray of Kelvin's functions.
//!
//! Two methods: a power series near zero, and the integral `K_n`(z) = ∫₀^∞ e^(−z cosh t) cosh nt dt by the
//! trapezoidal rule, whose error falls as e^(−const/h). Bare numbers in and out.

use std::f64::consts::{FRAC_PI_4, PI};

use nalgebra::Complex;

/// Largest |z| for the series: 18 terms are enough, and their cancelling costs less than two digits.
const SERIES_LIMIT: f64 = 4.0;

/// Steps enough for any number that is not beside infinity.
const MOST_STEPS: f64 = 1e5;

/// Euler's constant.
const EULER: f64 = 0.577_215_664_901_532_9;

/// e^x *K₀*(x) and e^x *K₁*(x), for x > 0.
pub(super) fn scaled_k0_k1(x: f64) -> (f64, f64) {
    let (k0, k1) = scaled_integrals(Complex::new(x, 0.0));
    (k0.re, k1.re)
}

/// e^(−x) *I₁*(x) for x ≥ 0, as the mean of e^(x cos t) cos t round a circle: equal steps leave out only functions of
/// the order of their number, which vanish.
pub(super) fn scaled_i1(x: f64) -> f64 {
    let half = (12.0 + (20.0 * x).sqrt()).ceil().min(MOST_STEPS);
    let (mut sum, mut step) = (0.0, 0.5);
    while step < half {
        let cos = (PI * step / half).cos();
        sum += (x * (cos - 1.0)).exp() * cos;
        step += 1.0;
    }
    sum / half
}

/// *K₁* at a distance from zero on the ray of a given angle, at most π/4 either way; good to 16 decimals of 1/z.
#[cfg(test)]
pub(super) fn k1_on_ray(distance: f64, angle: f64) -> Complex<f64> {
    let z = Complex::from_polar(distance, angle);
    (1.0 - one_minus_z_k1(z)) / z
}

/// 1 + x ker′ x and x kei′ x, for x ≥ 0: both vanish at zero without loss of digits.
pub(super) fn disc_functions(x: f64) -> (f64, f64) {
    let value = one_minus_z_k1(Complex::from_polar(x, FRAC_PI_4));
    (value.re, value.im)
}

/// 1 − z *K₁*(z) for |arg z| ≤ π/4; on the ray π/4 it is 1 + x ker′ x + i x kei′ x.
fn one_minus_z_k1(z: Complex<f64>) -> Complex<f64> {
    if z.norm() > SERIES_LIMIT {
        return 1.0 - z * (-z).exp() * scaled_integrals(z).1;
    }
    if z.norm() < f64::MIN_POSITIVE {
        return Complex::new(0.0, 0.0);
    }
    // 1 − z K₁(z) = −2q Σ qᵏ/(k!(k+1)!) [ln(z/2) − (ψ(k+1) + ψ(k+2))/2],  q = z²/4
    let q = z * z / 4.0;
    let log = (z / 2.0).ln() + EULER;
    let mut factor = -2.0 * q;
    let mut sum = factor * (log - 0.5);
    let mut harmonic = 0.0;
    for k in 1..=18 {
        let k = f64::from(k);
        factor *= q / (k * (k + 1.0));
        harmonic += 1.0 / k;
        sum += factor * (log - harmonic - 0.5 / (k + 1.0));
    }
    sum
}

/// e^z *K₀*(z) and e^z *K₁*(z).
fn scaled_integrals(z: Complex<f64>) -> (Complex<f64>, Complex<f64>) {
    // The integrand is analytic in a strip of width π/4 on the ray and becomes a Gauss curve of width 1/√|z| for
    // large z: the step must resolve both. Beyond an exponent of 37 nothing is left of it.
    let step = (0.14_f64).min(0.55 / z.norm().sqrt());
    let growth = 2.0 * (step / 2.0).sinh().powi(2);
    // cosh t − 1 by recurrence, which keeps the digits that a subtraction would lose for a small step.
    let (mut before, mut rise) = (0.0, growth);
    let half = Complex::new(0.5, 0.0) + z * 0.0; // not a number if z is not
    let (mut k0, mut k1) = (half, half);
    while z.re * rise <= 37.0 {
        let term = (-z * rise).exp();
        k0 += term;
        k1 += term * (1.0 + rise);
        (before, rise) = (rise, 2.0 * (rise + growth * (1.0 + rise)) - before);
    }
    (k0 * step, k1 * step)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The methods meet at |z| = 4, where the terms of the series cancel by up to two digits.
    const WHERE_METHODS_MEET: f64 = 1e-13;

    #[test]
    fn series_and_integral_agree_where_they_meet() {
        for angle in [0.0, 0.3, -0.5, FRAC_PI_4] {
            let z = Complex::from_polar(SERIES_LIMIT, angle);
            let series = one_minus_z_k1(z);
            let integral = 1.0 - z * (-z).exp() * scaled_integrals(z).1;
            assert!((series - integral).norm() < WHERE_METHODS_MEET, "{angle}: {series} {integral}");
        }
    }

    #[test]
    fn wronskian_with_the_first_kind() {
        // I₀ K₁ + I₁ K₀ = 1/z, with I from its power series.
        for (distance, angle) in [(0.1, 0.0), (1.0, FRAC_PI_4), (3.0, 0.2), (6.0, -FRAC_PI_4), (9.0, 0.0)] {
            let z = Complex::from_polar(distance, angle);
            let q = z * z / 4.0;
            let (mut term, mut i0, mut i1) = (Complex::new(1.0, 0.0), Complex::new(0.0, 0.0), Complex::new(0.0, 0.0));
            for k in 1..60 {
                let k = f64::from(k);
                i0 += term;
                i1 += term * z / 2.0 / k;
                term *= q / (k * k);
            }
            let (k0, k1) = scaled_integrals(z);
            let wronskian = (i0 * k1 + i1 * k0) * (-z).exp() * z;
            assert!((wronskian - 1.0).norm() < 1e-12, "{z}: {wronskian}");
            if angle == 0.0 {
                approx::assert_relative_eq!(scaled_i1(distance), i1.re * (-distance).exp(), max_relative = 1e-12);
            }
        }
    }

    #[test]
    fn large_and_small_arguments() {
        // √(π/2x) (1 + 3/8x − 15/128x²) and 1/x
        let x = 1e4;
        let leading = (std::f64::consts::PI / (2.0 * x)).sqrt();
        approx::assert_relative_eq!(
            scaled_k0_k1(x).1 / leading,
            1.0 + 3.0 / (8.0 * x) - 15.0 / (128.0 * x * x),
            max_relative = 1e-12
        );
        approx::assert_relative_eq!(scaled_k0_k1(1e-6).1 * 1e-6, 1.0, max_relative = 2e-6);
        let (pressure, moment) = disc_functions(500.0);
        assert!((pressure - 1.0).abs() < 1e-100 && moment.abs() < 1e-100);
        assert_eq!(disc_functions(0.0), (0.0, 0.0));
        assert!(disc_functions(f64::NAN).0.is_nan());
        assert!(scaled_k0_k1(f64::NAN).0.is_nan());
        // 1/√(2πx) (1 − 3/8x − 15/128x²), and x/2
        approx::assert_relative_eq!(
            scaled_i1(x) * (2.0 * std::f64::consts::PI * x).sqrt(),
            1.0 - 3.0 / (8.0 * x) - 15.0 / (128.0 * x * x),
            max_relative = 1e-12
        );
        approx::assert_relative_eq!(scaled_i1(1e-6), 0.5e-6, max_relative = 2e-6);
        assert!(scaled_i1(f64::NAN).is_nan() && scaled_i1(f64::INFINITY).is_finite());
        let (k0, k1) = scaled_k0_k1(0.0); // both infinite; their ratio vanishes
        assert!(k0 / k1 < 1e-100);
    }
}
