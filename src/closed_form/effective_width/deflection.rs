use super::Spread;
use crate::units::{Length, si};

/// Width of strip for the deflection under a load in a bay.
///
/// ```text
/// b = (w_b + w_s)/(w_b/b_b + w_s/b_s)
/// w_b = x² (L − x)²/(3 D L)        b_b = 4.7 λ x (1 − x/L)
/// w_s = x (L − x)/(S L)            b_s = t + 1.35 σ x (1 − x/L)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | patch across the strip |
/// | `x`, `L` | distance of its middle from a support; bay |
/// | `w_b`, `w_s` | deflections from bending and from shear for a unit force per width |
/// | `λ`, `σ` | [`Spread::bending_deflection`], [`Spread::shear_deflection`] |
///
/// # Validity
/// Simple span, patch between 0.04 and 0.3 of it: the plate sinks between 0.6 and 1.0 of the strip.
///
/// # Source
/// [`DERIVED`](crate::source::DERIVED); [`TIMOSHENKO_1959`](crate::source::TIMOSHENKO_1959) gives 0.01695 P L²/D for
/// the long thin plate (from memory), that is 1.229 L, where this has 1.175 L. Factors fitted to the series (our
/// assumption).
///
/// # Examples
/// Middle of a 1 m bay, patch 100 mm, `D` = 1000 N·m²/m, `S` = 12 kN/m: `w_b` = `w_s` = 1/48000; `b_b` = 1.175 m,
/// `b_s` = 0.4375 m, so `b` = 2/(1/1.175 + 1/0.4375) = 0.6376 m.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, deflection}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(12e3) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((deflection(m(0.1), m(0.5), m(1.0), &spread).value - 0.6376).abs() < 1e-4);
/// ```
#[must_use]
pub fn deflection(across: Length, x: Length, bay: Length, spread: &Spread) -> Length {
    let (x, l) = (x.value, bay.value);
    let reach = x * (1.0 - x / l);
    let bending =
        Part { w: reach * reach * l / (3.0 * spread.d.value), b: 4.7 * spread.bending_deflection.value * reach };
    let shear = Part { w: reach / spread.s.value, b: across.value + 1.35 * spread.shear_deflection.value * reach };
    combine(across, &[bending, shear])
}

/// Width of strip for the deflection of an overhang under a load on it.
///
/// ```text
/// b = Σ wᵢ / Σ (wᵢ/bᵢ)
/// w₁ = x³/(3 D)          b₁ = 1.9 λ x                   overhang, bending
/// w₂ = x/S               b₂ = t + 0.6 σ x               overhang, shear
/// w₃ = x² L/(3 D)        b₃ = λ (1.9 x + 0.5 L)         bay behind, bending
/// w₄ = x²/(L S)          b₄ = t + σ (0.6 x + 0.5 L)     bay behind, shear
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | patch across the strip |
/// | `x` | distance of its middle from the support |
/// | `L` | bay behind the support: whole where it ends at a simple support, ¾ of it where the strip runs on, 0 for a clamp |
/// | `wᵢ` | deflections of the strip for a unit force per width |
/// | `λ`, `σ` | [`Spread::bending_deflection`], [`Spread::shear_deflection`] |
///
/// # Validity
/// Deflection under the load, away from free ends. The plate sinks between 0.48 and 0.91 of the strip, half of all cases
/// above 0.65, where the overhang runs on over its pipe into a bay; at most 1.0 where it is clamped.
///
/// # Source
/// [`DERIVED`](crate::source::DERIVED). [`JARAMILLO_1950`](crate::source::JARAMILLO_1950) gives 0.168 P a²/D for the
/// tip of the long thin cantilever, ν = 0.3 (from memory), that is 1.98 a, where this has 1.9 a. ¾: the far end of the
/// bay is held at most like a clamp, `L/(4 D)` for `L/(3 D)`. Factors fitted to plate solutions (our assumption).
///
/// # Examples
/// 0.5 m out, patch 100 mm, alike in all directions, `D` = 1000 N·m²/m, `S` = 12 kN/m, clamped: `w₁` = `w₂` = 1/24000;
/// `b₁` = 0.95 m, `b₂` = 0.4 m, so `b` = 2/(1/0.95 + 1/0.4) = 0.563 m. With a bay of 0.5 m behind `w₃` = `w₄` = `w₁`,
/// `b₃` = 1.2 m, `b₄` = 0.65 m, so `b` = 4/(1/0.95 + 1/0.4 + 1/1.2 + 1/0.65) = 0.6752 m.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, tip_deflection}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(12e3) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((tip_deflection(m(0.1), m(0.5), m(0.0), &spread).value - 0.563).abs() < 1e-3);
/// assert!((tip_deflection(m(0.1), m(0.5), m(0.5), &spread).value - 0.6752).abs() < 1e-4);
/// ```
#[must_use]
pub fn tip_deflection(across: Length, x: Length, back: Length, spread: &Spread) -> Length {
    let (t, x, l) = (across.value, x.value, back.value);
    let (lambda, sigma) = (spread.bending_deflection.value, spread.shear_deflection.value);
    let bending = Part { w: x.powi(3) / (3.0 * spread.d.value), b: 1.9 * lambda * x };
    let shear = Part { w: x / spread.s.value, b: t + 0.6 * sigma * x };
    if l > 0.0 {
        let behind = Part { w: x * x * l / (3.0 * spread.d.value), b: lambda * (1.9 * x + 0.5 * l) };
        let shear_behind = Part { w: x * x / (l * spread.s.value), b: t + sigma * (0.6 * x + 0.5 * l) };
        combine(across, &[bending, shear, behind, shear_behind])
    } else {
        combine(across, &[bending, shear])
    }
}

/// Deflection for a unit force per width, and its width.
struct Part {
    w: f64,
    b: f64,
}

fn combine(across: Length, parts: &[Part]) -> Length {
    let whole: f64 = parts.iter().map(|part| part.w).sum();
    // Right on a support nothing deflects and nothing spreads.
    if whole > 0.0 { si(whole / parts.iter().map(|part| part.w / part.b).sum::<f64>()) } else { across }
}
