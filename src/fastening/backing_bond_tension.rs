//! Flatwise tension of the bond between a backing and the far skin.

use crate::units::{Force, Length, Pressure, Ratio};

/// Length of backing whose bond takes the pull of a foot.
///
/// ```text
///   L_b = min(l + 2 t, L)
/// ```
///
/// | symbol | meaning                                        | argument           |
/// |--------|------------------------------------------------|--------------------|
/// | *l*    | length of the foot along the backing           | `foot`             |
/// | *t*    | thickness of the backing                       | `backing_thickness` |
/// | *L*    | length of the backing                          | `backing_length`   |
///
/// # Validity
///
/// The pull spreads at 45° through the backing. Foot not closer than *t* to the end of the backing.
///
/// # Source
///
/// Spread at 45°: common practice of the trade, no source.
///
/// # Examples
///
/// Foot of 60 mm on a strip of 20 mm × 500 mm: 100 mm.
///
/// ```
/// use skinspan::{fastening::bond_length_under_foot, units::Length};
/// use uom::si::length::millimeter;
/// let mm = Length::new::<millimeter>;
/// assert!((bond_length_under_foot(mm(60.0), mm(20.0), mm(500.0)).get::<millimeter>() - 100.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn bond_length_under_foot(foot: Length, backing_thickness: Length, backing_length: Length) -> Length {
    (foot + 2.0 * backing_thickness).min(backing_length)
}

/// Flatwise tension of the bond by which a backing hangs on the far skin.
///
/// ```text
///   σ = s T/(w L_b)
/// ```
///
/// | symbol | meaning                                                            | argument |
/// |--------|--------------------------------------------------------------------|----------|
/// | *T*    | pull on the fixings of the foot                                    | `pull`   |
/// | *s*    | share of it that goes to the far skin: a half with both skins whole, all with the near skin cut | `share` |
/// | *w*    | width of the backing                                               | `width`  |
/// | `L_b`  | [`bond_length_under_foot`]                                         | `length` |
///
/// # Validity
///
/// Even over the bond: the peel at its edge is left out. Fixings that end in the backing; a bolt through both skins
/// presses on the far one instead.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equilibrium; the half by symmetry of the two skins.
///
/// # Examples
///
/// 2000 N, a half, on 100 mm × 100 mm: 0.1 MPa.
///
/// ```
/// use skinspan::{fastening::bond_tension, units::{Force, Length, Ratio}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let sigma = bond_tension(Force::new::<newton>(2000.0), Ratio::from(0.5), mm(100.0), mm(100.0));
/// assert!((sigma.get::<megapascal>() - 0.1).abs() < 1e-12);
/// ```
#[must_use]
pub fn bond_tension(pull: Force, share: Ratio, width: Length, length: Length) -> Pressure {
    share * pull / (width * length)
}
