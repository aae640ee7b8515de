//! How wide a strip carries a concentrated load: on a top that runs far to both sides of it, over line supports.
//!
//! A strip knows only loads per width. A load `P` on a patch goes on it as `P/b`, with `b` from here; each result needs
//! its own `b`, since the deflection spreads widest and the shear least. All widths are smaller than those of the plate
//! theory, so the results are on the safe side; how far stands with each function. They were measured against series
//! solutions of the shear-flexible plate (`tests/validation/effective_width.rs`) for
//!
//! - square patches between 0.04 and 0.3 of the span, and patches of sides 1 : 3 either way,
//! - `D22/D11` from 0.3 to 3, `(D12 + 2 D66)/√(D11 D22)` from 0.4 to 1.5, `Sy/Sx` from 0.5 to 2,
//! - `D/(S L²)` from 0 to 0.5,
//!
//! where `x`, index 1, runs along the strip. The form, patch plus a multiple of the distance to the support, is that
//! of concrete slabs: `DAfStb` Heft 240 gives `t + 2.5 x (1 − x/l)` in a simple span, `t + 0.5 x (2 − x/l)` at a clamp,
//! `t + 1.5 x` at the root of a cantilever, `t + 0.5 x` and `t + 0.3 x` for shear there (read in a reprinted table);
//! [`IS_456_2000`](crate::source::IS_456_2000) cl. 24.3.2.1 the like (from memory). For an isotropic plate the 2.5 is
//! 10 % unsafe under a patch of 0.04 of the span, hence the 2.1 here.
//!
//! Not in here: the shear beside the patch on its other sides, the moment across the strip under the load, and corners
//! where a free edge meets a support.

use super::{plate::PlateStiffness, quantity::si};
use crate::units::{FlexuralRigidity, Length, Ratio, ShearStiffness};

/// How far a plate spreads loads across the strip, against one that is alike in all directions: 1 for that one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Of moments under the load: from bending, twist and shear stiffness.
    pub moment: Ratio,
    /// Of moments away from the load, over supports.
    pub remote_moment: Ratio,
    /// Of shear forces.
    pub shear: Ratio,
    /// Of deflections from bending.
    pub bending_deflection: Ratio,
    /// Of deflections from shear.
    pub shear_deflection: Ratio,
    d: FlexuralRigidity,
    s: ShearStiffness,
}

impl Spread {
    /// Spread of a plate for strips along its `x`.
    ///
    /// ```text
    /// δ = (D22/D11)^¼,  η = (D12 + 2 D66)/√(D11 D22),  σ = √(Sy/Sx)
    /// bending deflection: δ √((1 + η)/2)       shear deflection: σ
    /// moment: min(δ, √δ)·min(1, (1 + η)/2)·min(1, σ)
    /// moment away from the load: min(δ, √δ)·min(1, σ)        shear: min(1, σ)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `D11`, `D22`, `D12`, `D66` | bending along and across the strip, coupling, twist |
    /// | `Sx`, `Sy` | shear stiffness along and across the strip |
    ///
    /// # Validity
    /// The factor of the bending deflection is exact for each sine wave along a thin simple span: the strip that
    /// deflects like the plate is `4 L/(π m)` wide times it. The others are cut off on the safe side.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED) for the deflections; fitted to series for the others (our assumption).
    ///
    /// # Examples
    /// Half as stiff across in shear, alike otherwise: `σ = √½` = 0.7071.
    /// ```
    /// use skinspan::closed_form::{effective_width::Spread, plate::PlateStiffness};
    /// use skinspan::units::{Force, Length, Ratio, per_width};
    /// use uom::si::{force::newton, length::meter, ratio::ratio};
    /// let m = Length::new::<meter>(1.0);
    /// let d = per_width(Force::new::<newton>(1000.0) * m);
    /// let s = per_width(Force::new::<newton>(1e5) / m);
    /// let mut plate = PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s);
    /// plate.shear_y = s / 2.0;
    /// let spread = Spread::new(&plate);
    /// assert!((spread.shear.value - 0.7071).abs() < 1e-4 && (spread.bending_deflection.value - 1.0).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn new(plate: &PlateStiffness) -> Self {
        let delta = (plate.d22 / plate.d11).value.sqrt().sqrt();
        let eta = (plate.d12.value + 2.0 * plate.d66.value) / (plate.d11.value * plate.d22.value).sqrt();
        let sigma = (plate.shear_y / plate.shear_x).value.sqrt();
        let twist = f64::midpoint(1.0, eta);
        let remote = delta.min(delta.sqrt()) * sigma.min(1.0);
        Self {
            moment: si(remote * twist.min(1.0)),
            remote_moment: si(remote),
            shear: si(sigma.min(1.0)),
            bending_deflection: si(delta * twist.sqrt()),
            shear_deflection: si(sigma),
            d: plate.d11,
            s: plate.shear_x,
        }
    }
}

/// Width of strip for the sagging moment under a load in a bay.
///
/// ```text
/// b = t + 2.1 ρ x (1 − x/L)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | patch across the strip |
/// | `x`, `L` | distance of its middle from a support; bay |
/// | `ρ` | [`Spread::moment`] |
///
/// # Validity
/// Simple span, patch between 0.04 and 0.3 of it: the plate's moment is between 0.5 and 1.0 of the strip's. In a
/// continuous strip the load sees a shorter span, and with the whole bay for `L` the width is up to 6 % unsafe: take
/// 0.9 of an end bay, from its outer support (measured), and 0.8 of an inner bay, from where the moment is near 0 (our
/// assumption).
///
/// # Source
/// [`IS_456_2000`](crate::source::IS_456_2000) cl. 24.3.2.1 for the form (from memory); the factor is fitted to the
/// plate series (our assumption).
///
/// # Examples
/// Middle of a 1 m bay, patch 100 mm, alike in all directions: 0.1 + 2.1·0.25 = 0.625 m.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, sagging}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(1e5) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((sagging(m(0.1), m(0.5), m(1.0), &spread).value - 0.625).abs() < 1e-12);
/// ```
#[must_use]
pub fn sagging(across: Length, x: Length, bay: Length, spread: &Spread) -> Length {
    across + 2.1 * spread.moment * x * (1.0 - (x / bay).value)
}

/// Width of strip for the hogging moment over a support from a load in the bay beside it.
///
/// ```text
/// b = t + 0.5 ρ x (2 − x/L)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | patch across the strip |
/// | `x`, `L` | distance of its middle from that support; bay |
/// | `ρ` | [`Spread::remote_moment`] |
///
/// # Validity
/// Two equal bays, patch between 0.05 and 0.3 of a bay: the plate's moment is at most 0.92 of the strip's, and often
/// half of it.
///
/// # Source
/// `DAfStb` Heft 240, widths at a clamped end (read in a reprinted table); factor from
/// [`DERIVED`](crate::source::DERIVED).
///
/// # Examples
/// Middle of a 1 m bay, patch 100 mm, alike in all directions: 0.1 + 0.5·0.5·1.5 = 0.475 m.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, hogging}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(1e5) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((hogging(m(0.1), m(0.5), m(1.0), &spread).value - 0.475).abs() < 1e-12);
/// ```
#[must_use]
pub fn hogging(across: Length, x: Length, bay: Length, spread: &Spread) -> Length {
    across + 0.5 * spread.remote_moment * x * (2.0 - (x / bay).value)
}

/// Width of strip for the hogging moment at the root of an overhang from a load on it.
///
/// ```text
/// b = t + 1.5 ρ x
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | patch across the strip |
/// | `x` | distance of its middle from the support |
/// | `ρ` | [`Spread::remote_moment`] |
///
/// # Validity
/// Overhang that runs on over its pipe into a bay: the plate's moment is at most 0.75 of the strip's; clamped overhang:
/// at most 0.95.
///
/// # Source
/// `DAfStb` Heft 240, cantilever (read in a reprinted table); factor from [`DERIVED`](crate::source::DERIVED).
///
/// # Examples
/// 0.4 m out, patch 100 mm, alike in all directions: 0.7 m.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, overhang}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(1e5) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((overhang(m(0.1), m(0.4), &spread).value - 0.7).abs() < 1e-12);
/// ```
#[must_use]
pub fn overhang(across: Length, x: Length, spread: &Spread) -> Length {
    across + 1.5 * spread.remote_moment * x
}

/// Width of strip for the shear at a support and for its reaction.
///
/// ```text
/// b = t + k σ x        k = 0.5 in a bay, 0.3 on an overhang
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | patch across the strip |
/// | `x` | distance of its middle from the support |
/// | `σ` | [`Spread::shear`] |
///
/// # Validity
/// The plate's shear at the support is at most 0.9 of the strip's. Beside the patch it is larger than here: see
/// [`shear_beside_patch`].
///
/// # Source
/// `DAfStb` Heft 240 (read in a reprinted table).
///
/// # Examples
/// 0.2 m from the pipe, patch 100 mm: 0.2 m in a bay, 0.16 m on an overhang.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, shear_at_support}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(1e5) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((shear_at_support(m(0.1), m(0.2), false, &spread).value - 0.2).abs() < 1e-12);
/// assert!((shear_at_support(m(0.1), m(0.2), true, &spread).value - 0.16).abs() < 1e-12);
/// ```
#[must_use]
pub fn shear_at_support(across: Length, x: Length, on_overhang: bool, spread: &Spread) -> Length {
    across + if on_overhang { 0.3 } else { 0.5 } * spread.shear * x
}

/// Width of strip for the shear right beside the patch, where it is largest. Also safe everywhere else.
///
/// ```text
/// b = t + 0.3 c
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t`, `c` | patch across and along the strip |
///
/// # Validity
/// The plate's shear at the edge of the patch is at most 1.0 of the strip's, for a stiffness along the strip of up to
/// three times that across it, and twice in shear.
///
/// # Source
/// Fitted to the plate series (our assumption).
///
/// # Examples
/// Patch of 100 mm by 100 mm: 0.13 m.
/// ```
/// use skinspan::closed_form::effective_width::shear_beside_patch;
/// use skinspan::units::Length;
/// use uom::si::length::meter;
/// let side = Length::new::<meter>(0.1);
/// assert!((shear_beside_patch(side, side).value - 0.13).abs() < 1e-12);
/// ```
#[must_use]
pub fn shear_beside_patch(across: Length, along: Length) -> Length {
    across + 0.3 * along
}

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
/// [`DERIVED`](crate::source::DERIVED). Jaramillo 1950 gives 0.168 P a²/D for the tip of the long thin cantilever,
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

/// Which result a width near a free edge is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NearEdge {
    /// Moments along the strip.
    Moment,
    /// Deflection, and shear at the support.
    DeflectionOrShear,
}

/// Width of strip left to a load near a free edge that runs along the strip.
///
/// ```text
/// b' = min(b, f (b/2 + e))        f = 0.8 for moments, 0.6 for deflection and shear
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `b` | width away from edges |
/// | `e` | distance of the middle of the patch from the free edge |
///
/// # Validity
/// Simple span. Moments: the plate's is at most 1.0 of the strip's. Deflection: at most 1.0. Shear at the support: at
/// most 1.0 for `D/(S L²)` of 0.05 and above; with stiffer cores the twist gathers at the corner as a point force, which no strip has.
/// The slab rule, `f = 1`, is up to 18 % unsafe for moments.
///
/// # Source
/// [`IS_456_2000`](crate::source::IS_456_2000) cl. 24.3.2.1 for the form with `f = 1` (from memory); `f` is fitted to
/// the plate series (our assumption).
///
/// # Examples
/// `b` = 0.6 m, 0.1 m from the edge: 0.8·0.4 = 0.32 m for moments; 0.6·0.4 = 0.24 m for the deflection.
/// ```
/// use skinspan::closed_form::effective_width::{NearEdge, near_free_edge};
/// use skinspan::units::Length;
/// use uom::si::length::meter;
/// let m = Length::new::<meter>;
/// assert!((near_free_edge(m(0.6), m(0.1), NearEdge::Moment).value - 0.32).abs() < 1e-12);
/// assert!((near_free_edge(m(0.6), m(0.1), NearEdge::DeflectionOrShear).value - 0.24).abs() < 1e-12);
/// ```
#[must_use]
pub fn near_free_edge(width: Length, to_edge: Length, result: NearEdge) -> Length {
    let f = match result {
        NearEdge::Moment => 0.8,
        NearEdge::DeflectionOrShear => 0.6,
    };
    width.min(f * (width / 2.0 + to_edge))
}
