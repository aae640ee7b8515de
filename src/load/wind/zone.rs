//! Parts of a free roof: edges and corners lift harder than the middle.

use crate::units::{Length, Ratio};

/// Part of a roof that one coefficient holds for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Zone {
    /// Farther than the zone width from every edge.
    Interior,
    /// Within the zone width of one edge.
    Edge,
    /// Within the zone width of two edges.
    Corner,
}

impl Zone {
    /// Zone of a point.
    ///
    /// ```text
    ///   interior   a ≤ e₁        edge   e₁ < a ≤ e₂        corner   e₂ < a
    /// ```
    ///
    /// | symbol | meaning                                          | argument        |
    /// |--------|--------------------------------------------------|-----------------|
    /// | *e₁*   | distance to the nearest edge                     | `to_edge`       |
    /// | *e₂*   | distance to the nearest edge that runs across it | `to_cross_edge` |
    /// | *a*    | width of the zones, see [`zone_width`]           | `width`         |
    ///
    /// # Validity
    ///
    /// A roof near a rectangle. On a rounded or slanted corner `to_cross_edge` is measured to the edges of the rectangle round
    /// the roof, which finds no corner that lies off that rectangle's own.
    ///
    /// # Source
    ///
    /// [`ASCE_7`](crate::source::ASCE_7), figure of free roofs for components and cladding (from memory).
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::load::wind::Zone;
    /// use uom::si::{f64::Length, length::meter};
    /// let m = |x| Length::new::<meter>(x);
    /// assert_eq!(Zone::of(m(0.1), m(1.2), m(0.3)), Zone::Edge);
    /// assert_eq!(Zone::of(m(0.1), m(0.2), m(0.3)), Zone::Corner);
    /// ```
    #[must_use]
    pub fn of(to_edge: Length, to_cross_edge: Length, width: Length) -> Self {
        match (to_edge < width, to_cross_edge < width) {
            (true, true) => Self::Corner,
            (false, false) => Self::Interior,
            _ => Self::Edge,
        }
    }
}

/// Width of the edge and corner zones.
///
/// ```text
///   a = max(f B, a_min)
/// ```
///
/// | symbol    | meaning                        | argument   |
/// |-----------|--------------------------------|------------|
/// | *B*       | least width of the top in plan | `least`    |
/// | *f*       | fraction of it, 0.1            | `fraction` |
/// | *`a_min`* | least width of a zone          | `minimum`  |
///
/// # Validity
///
/// The 3 ft that the building code sets as minimum would make a small top all corner; a smaller minimum is a decision
/// of this program and stands among the criteria.
///
/// # Source
///
/// [`BNBC_2020`](crate::source::BNBC_2020), Part 6 Fig. 6.2.19(a) note 6 (read): 10 % of the least horizontal dimension,
/// not below 4 % of it or 0.9 m.
///
/// # Examples
///
/// ```
/// use skinspan::load::wind::zone_width;
/// use uom::si::{f64::{Length, Ratio}, length::meter, ratio::ratio};
/// let m = |x| Length::new::<meter>(x);
/// let tenth = Ratio::new::<ratio>(0.1);
/// assert_eq!(zone_width(m(2.5), tenth, m(0.3)), m(0.3));
/// assert_eq!(zone_width(m(4.0), tenth, m(0.3)), m(0.4));
/// ```
#[must_use]
pub fn zone_width(least: Length, fraction: Ratio, minimum: Length) -> Length {
    (least * fraction).max(minimum)
}
