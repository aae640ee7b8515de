use super::Spread;
use crate::{closed_form::quantity::si, units::Length};

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
    combine(across, &bending, &shear)
}

/// Width of strip for the deflection of an overhang under a load on it.
///
/// ```text
/// b = (w_b + w_s)/(w_b/b_b + w_s/b_s)
/// w_b = x³/(3 D)        b_b = 1.9 λ x
/// w_s = x/S             b_s = t + 0.6 σ x
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | patch across the strip |
/// | `x` | distance of its middle from the support |
/// | `w_b`, `w_s` | deflections of the clamped strip for a unit force per width |
/// | `λ`, `σ` | [`Spread::bending_deflection`], [`Spread::shear_deflection`] |
///
/// # Validity
/// Deflection under the load. The plate sinks at most 0.75 of the strip where the overhang runs on over its pipe into
/// a bay, and at most 1.0 where it is clamped.
///
/// # Source
/// [`DERIVED`](crate::source::DERIVED). [`JARAMILLO_1950`](crate::source::JARAMILLO_1950) gives 0.168 P a²/D for the tip of the long thin cantilever,
/// ν = 0.3 (from memory), that is 1.98 a, where this has 1.9 a. Factors fitted to the series (our assumption).
///
/// # Examples
/// 0.5 m out, patch 100 mm, alike in all directions, `D` = 1000 N·m²/m, `S` = 12 kN/m: `w_b` = `w_s` = 1/24000;
/// `b_b` = 0.95 m, `b_s` = 0.4 m, so `b` = 2/(1/0.95 + 1/0.4) = 0.563 m.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, tip_deflection}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(12e3) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((tip_deflection(m(0.1), m(0.5), &spread).value - 0.563).abs() < 1e-3);
/// ```
#[must_use]
pub fn tip_deflection(across: Length, x: Length, spread: &Spread) -> Length {
    let x = x.value;
    let bending = Part { w: x.powi(3) / (3.0 * spread.d.value), b: 1.9 * spread.bending_deflection.value * x };
    let shear = Part { w: x / spread.s.value, b: across.value + 0.6 * spread.shear_deflection.value * x };
    combine(across, &bending, &shear)
}

/// Deflection for a unit force per width, and its width.
struct Part {
    w: f64,
    b: f64,
}

fn combine(across: Length, bending: &Part, shear: &Part) -> Length {
    let whole = bending.w + shear.w;
    // Right on a support nothing deflects and nothing spreads.
    if whole > 0.0 { si(whole / (bending.w / bending.b + shear.w / shear.b)) } else { across }
}
