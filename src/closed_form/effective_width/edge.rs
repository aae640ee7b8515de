use super::{Spread, shear_at_support};
use crate::units::{Length, Ratio, si};

/// Which result a width near a free edge is for, and where the load stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NearEdge {
    /// Moments along the strip from a load in a bay.
    SpanMoment,
    /// Deflection under a load in a bay.
    SpanDeflection,
    /// Moment at the root of an overhang from a load on it.
    OverhangMoment,
    /// Deflection under a load on an overhang.
    OverhangDeflection,
}

/// Width of strip left to a load near a free edge that runs along the strip, for moments and deflections.
///
/// ```text
/// b' = min(b, f (b/2 + e))        in a bay: f = 0.8 for moments, 0.6 for the deflection
///                                 on an overhang: f = 0.9 for the root moment, 0.8 for the deflection
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `b` | width away from edges |
/// | `e` | distance of the middle of the patch from the free edge |
///
/// # Validity
/// Simple span: the plate's moment and deflection are at most 1.0 of the strip's. Overhang of 0.07 to 1 of the bay that
/// it runs on into, a load at its free corner included: the plate's root moment is between 0.40 and 1.01 of the strip's,
/// half of all cases above 0.65; its deflection under the load between 0.48 and 0.95, half above 0.67. The slab rule,
/// `f = 1`, is up to 18 % unsafe for moments.
///
/// # Source
/// [`IS_456_2000`](crate::source::IS_456_2000) cl. 24.3.2.1 for the form with `f = 1` (from memory); `f` is fitted to
/// plate solutions (our assumption).
///
/// # Examples
/// `b` = 0.6 m, 0.1 m from the edge: 0.8·0.4 = 0.32 m for moments in a bay; 0.9·0.4 = 0.36 m at a root.
/// ```
/// use skinspan::closed_form::effective_width::{NearEdge, near_free_edge};
/// use skinspan::units::Length;
/// use uom::si::length::meter;
/// let m = Length::new::<meter>;
/// assert!((near_free_edge(m(0.6), m(0.1), NearEdge::SpanMoment).value - 0.32).abs() < 1e-12);
/// assert!((near_free_edge(m(0.6), m(0.1), NearEdge::OverhangMoment).value - 0.36).abs() < 1e-12);
/// ```
#[must_use]
pub fn near_free_edge(width: Length, to_edge: Length, result: NearEdge) -> Length {
    let f = match result {
        NearEdge::SpanMoment | NearEdge::OverhangDeflection => 0.8,
        NearEdge::SpanDeflection => 0.6,
        NearEdge::OverhangMoment => 0.9,
    };
    width.min(f * (width / 2.0 + to_edge))
}

/// Width of strip for the shear at a support, and for its reaction, near a free edge that runs along the strip.
///
/// ```text
/// in a bay:        b' = min(b, (t + 0.3 g)/1.1)
/// on an overhang:  b' = min(b, t + 0.2 ρ (x − t/2) + 0.7 g)        g = e − t/2
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `b` | [`shear_at_support`] |
/// | `t` | patch across the strip; also along it |
/// | `x` | distance of its middle from the support |
/// | `e`, `g` | distance of its middle, and of its side, from the free edge |
/// | `ρ` | [`Spread::remote_moment`] |
///
/// On an overhang never less than `t`: at worst the load goes straight to the support. In a bay twist presses the corner
/// down beside the load, hence the 1.1.
///
/// # Validity
/// For the mean over a stretch of the support as long as the skins are apart: the first-order theory of plates has a
/// peak right at the free end of a support, but resolves nothing shorter than the plate is thick. Distances of the skins
/// of 30 and 50 mm, patches of 65 and 100 mm. Free corner of an overhang: that mean is between 0.53 and 1.0 of the
/// strip's shear, half of all cases above 0.75; the peak at most 1.3. Bay, patch right beside the free edge, pipe 15 mm
/// or more inside the edge of the top: at most 1.0; where the pipe lies nearer to that edge, times [`rim_twist`]. Over the
/// patch's own side the mean is at most 0.9. The push on the pipe, both its sides together, is up to 1.15 over the
/// distance of the skins and at most 0.8 over the patch's own side.
///
/// # Source
/// Fitted to plate solutions (our assumption).
///
/// # Examples
/// Patch of 100 mm flush with the free edge, 0.3 m out, alike in all directions: 0.1 + 0.2·0.25 = 0.15 m on an
/// overhang, 0.1/1.1 m in a bay.
/// ```
/// use skinspan::closed_form::{effective_width::{Spread, shear_near_free_edge}, plate::PlateStiffness};
/// use skinspan::units::{Force, Length, Ratio, per_width};
/// use uom::si::{force::newton, length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(1e5) / m(1.0));
/// let spread = Spread::new(&PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s));
/// assert!((shear_near_free_edge(m(0.1), m(0.3), m(0.05), true, &spread).value - 0.15).abs() < 1e-12);
/// assert!((shear_near_free_edge(m(0.1), m(0.3), m(0.05), false, &spread).value - 0.1 / 1.1).abs() < 1e-12);
/// ```
#[must_use]
pub fn shear_near_free_edge(across: Length, x: Length, to_edge: Length, on_overhang: bool, spread: &Spread) -> Length {
    let beyond_half = |distance: Length| (distance - across / 2.0).max(si(0.0));
    let gap = beyond_half(to_edge);
    let near = if on_overhang {
        across + 0.2 * spread.remote_moment * beyond_half(x) + 0.7 * gap
    } else {
        (across + 0.3 * gap) / 1.1
    };
    shear_at_support(across, x, on_overhang, spread).min(near)
}

/// What twist adds to the shear in a bay at a free corner of the top whose pipe lies at the rim, over the shear that
/// [`shear_near_free_edge`] gives.
///
/// ```text
/// j = 1 + 0.21 f(c) f(g),   f(x) = (d + w − x)/d, no less than 0 and no more than 1
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `c` | distance of the pipe from the edge of the top that runs along it |
/// | `g` | distance of the side of the load from the other edge at the corner |
/// | `d` | distance of the skins |
/// | `w` | width of the pipe's seat |
///
/// # Validity
/// As there; with it the mean of the plate's shear over the distance of the skins is at most 1.0 of the strip's with the
/// pipe right under the edge, where it would be 1.33/1.1 of it, and 8 mm inside it. A pipe 15 mm inside the edge needs no
/// more than 1, nor does a patch whose side lies `d` from the free end. That it goes on at its full height over the width
/// of the seat, on which the top may bear anywhere, and then falls off evenly over the distance of the skins is on the safe
/// side: no place asks for much less than the one beside it.
///
/// # Source
/// Fitted to plate solutions (our assumption).
///
/// # Examples
/// Skins 40 mm apart, seat of 20 mm, a load flush with the other edge: 1.21 for a pipe 20 mm inside the edge, 1.105 half way to
/// 60 mm, where it ends; of that a half for a load 40 mm from the other edge.
/// ```
/// use skinspan::closed_form::effective_width::rim_twist;
/// use skinspan::units::Length;
/// use uom::si::{length::meter, ratio::ratio};
/// let m = Length::new::<meter>;
/// let twist = |c, g| rim_twist(m(c), m(g), m(0.04), m(0.02)).get::<ratio>();
/// assert_eq!([twist(0.02, 0.0), twist(0.06, 0.0)], [1.21, 1.0]);
/// assert!((twist(0.04, 0.0) - 1.105).abs() < 1e-12 && (twist(0.04, 0.04) - 1.0525).abs() < 1e-12);
/// ```
#[must_use]
pub fn rim_twist(overhang: Length, gap: Length, skins: Length, seat: Length) -> Ratio {
    let left = |inside: Length| ((skins + seat - inside) / skins).value.clamp(0.0, 1.0);
    Ratio::from(1.0 + 0.21 * left(overhang) * left(gap))
}
