use crate::units::Length;

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
