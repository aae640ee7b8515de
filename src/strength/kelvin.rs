//! Modified Bessel functions of the second kind, for real arguments and on the ray of Kelvin's functions.
//!
//! Two methods: a power series near zero, and the integral `K_n`(z) = ∫₀^∞ e^(−z cosh t) cosh nt dt by the trapezoidal
//! rule, whose error falls as e^(−const/h). Bare numbers in and out.

use std::f64::consts::FRAC_PI_4;

use nalgebra::Complex;

/// Largest |z| for the series: it needs no more than twelve terms there.
const SERIES_LIMIT: f64 = 2.0;

/// Euler's constant.
const EULER: f64 = 0.577_215_664_901_532_9;

/// e^x *K₀*(x) and e^x *K₁*(x), for x > 0.
pub(super) fn scaled_k0_k1(x: f64) -> (f64, f64) {
    let (k0, k1) = scaled_integrals(Complex::new(x, 0.0));
    (k0.re, k1.re)
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
    for k in 1..14 {
        let k = f64::from(k);
        factor *= q / (k * (k + 1.0));
        harmonic += 1.0 / k;
        sum += factor * (log - harmonic - 0.5 / (k + 1.0));
    }
    sum
}

/// e^z *K₀*(z) and e^z *K₁*(z).
fn scaled_integrals(z: Complex<f64>) -> (Complex<f64>, Complex<f64>) {
    // The integrand is analytic in a strip of width π/4 on the ray and becomes a Gauss curve of width 1/√|z| for large z:
    // the step must resolve both. Beyond an exponent of 40 nothing is left of it.
    let step = (0.14_f64).min(0.55 / z.norm().sqrt());
    let growth = step.cosh();
    let (mut before, mut cosh) = (growth, 1.0);
    let (mut k0, mut k1) = (Complex::new(0.5, 0.0), Complex::new(0.5, 0.0));
    loop {
        (before, cosh) = (cosh, 2.0 * growth * cosh - before);
        if z.re * (cosh - 1.0) > 40.0 || !z.is_finite() {
            return (k0 * step, k1 * step);
        }
        let term = (-z * (cosh - 1.0)).exp();
        k0 += term;
        k1 += term * cosh;
    }
}
