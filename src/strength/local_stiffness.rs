//! How firm a top feels underfoot.

use crate::units::{Force, Length};

/// Force per deflection, N/m. (`uom` names its dimension after another quantity.)
pub type SpringStiffness = uom::si::f64::RadiantExposure;

/// Force on a foot over how far it sinks.
///
/// ```text
///   K = F / (w_panel + w_dent)
/// ```
///
/// | symbol    | meaning                                                      | argument           |
/// |-----------|--------------------------------------------------------------|--------------------|
/// | *F*       | force on the foot                                            | `force`            |
/// | `w_panel` | deflection of the panel under it                             | `panel_deflection` |
/// | `w_dent`  | dent of the skin, [`SkinOnCore::dent`](super::SkinOnCore::dent) | `dent`          |
///
/// # Validity
///
/// Both deflections at the force *F*, elastic.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): springs in series. Which stiffness feels firm is a matter of judgement.
///
/// # Examples
///
/// 800 N, 3 mm and 1 mm: 200 N/mm.
///
/// ```
/// use skinspan::{strength::local_stiffness, units::{Force, Length}};
/// use uom::si::{force::newton, length::millimeter};
/// let mm = Length::new::<millimeter>;
/// let k = local_stiffness(Force::new::<newton>(800.0), mm(3.0), mm(1.0));
/// assert!((k.value - 200e3).abs() < 1e-6); // N/m
/// ```
#[must_use]
pub fn local_stiffness(force: Force, panel_deflection: Length, dent: Length) -> SpringStiffness {
    force / (panel_deflection + dent)
}
