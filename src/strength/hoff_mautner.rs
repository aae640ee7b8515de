//! Wrinkling of a perfect skin by the energy method, with the depth to which the core takes part.

use std::f64::consts::PI;

use super::WrinklingModuli;
use crate::units::{Length, Pressure};

/// Which form of the energy method applied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Branch {
    /// The waves of the two skins do not reach each other.
    ThickCore,
    /// The disturbed zones meet at mid-core: both skins wrinkle as mirror images.
    ThinCore,
}

/// A wrinkle of a perfect skin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wrinkle {
    /// Compressive stress in the skin at which it forms.
    pub stress: Pressure,
    /// Depth of core that the wave disturbs.
    pub zone: Length,
    /// Length of half a wave.
    pub half_wave: Length,
    /// Which form applied.
    pub branch: Branch,
}

/// Wrinkling stress, disturbed depth and half wave length of a perfect skin.
///
/// The movement of the core is taken to die out linearly over the depth *W*. For a wave of half length *L*, *p* =
/// (π/*L*)², the energy balance gives the stress, whose minimum over *p* and *W* is the answer:
///
/// ```text
///        E_f t² p     E_c       G_c W
///   σ  = -------- + ------- + -------
///           12       W t p      3 t
///
///   W  = t (3/4 · E_f E_c / G_c²)^(1/3)          but at most c/2
///
///   W < c/2:   σ = (3/36^(1/3)) (E_f E_c G_c)^(1/3)
///   W = c/2:   σ = √(2/3) √(E_f E_c t/c) + G_c c/(6 t)
///
///   L  = π (E_f W t³ / (12 E_c))^(1/4)
/// ```
///
/// | symbol | meaning                                    | argument            |
/// |--------|--------------------------------------------|---------------------|
/// | `E_f`  | modulus of the skin along the compression  | `moduli.skin`       |
/// | `E_c`  | modulus of the core through its thickness  | `moduli.core`       |
/// | `G_c`  | shear modulus of the core                  | `moduli.core_shear` |
/// | *t*    | thickness of one skin                      | `skin_thickness`    |
/// | *c*    | thickness of the core                      | `core_thickness`    |
///
/// # Validity
///
/// Perfect, flat, equal skins, both compressed in the thin-core branch. That branch has mirror-image waves only;
/// waves in step, which a very thin core prefers, run over into shear crimping. An ideal value: compare it with
/// [`wrinkling_stress`](super::wrinkling_stress), never design with it.
///
/// # Source
///
/// [`HOFF_MAUTNER_1945`](crate::source::HOFF_MAUTNER_1945) (name from memory); derived as above and checked by
/// numerical minimisation.
///
/// # Examples
///
/// `E_f` = 12 GPa, `E_c` = 90 MPa, `G_c` = 27 MPa, *t* = 1.5 mm: *W* = 1.5 (0.75 × 12 000 × 90/27²)^(1/3) = 1.5 ×
/// 10.357 = 15.54 mm, which is more than half of a 20 mm core. Then σ = 0.8165 √(12 000 × 90 × 1.5/20) + 27 × 20/9 =
/// 232.4 + 60.0 = 292.4 MPa.
///
/// ```
/// use skinspan::{strength::{Branch, WrinklingModuli, hoff_mautner_wrinkle}, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let moduli = WrinklingModuli {
///     skin: Pressure::new::<megapascal>(12_000.0),
///     core: Pressure::new::<megapascal>(90.0),
///     core_shear: Pressure::new::<megapascal>(27.0),
/// };
/// let t = Length::new::<millimeter>(1.5);
/// let thin = hoff_mautner_wrinkle(moduli, t, Length::new::<millimeter>(20.0));
/// assert_eq!(thin.branch, Branch::ThinCore);
/// assert!((thin.stress.get::<megapascal>() - 292.4).abs() < 0.1);
///
/// let thick = hoff_mautner_wrinkle(moduli, t, Length::new::<millimeter>(40.0));
/// assert_eq!(thick.branch, Branch::ThickCore);
/// assert!((thick.zone.get::<millimeter>() - 15.54).abs() < 0.01);
/// assert!((thick.stress.get::<megapascal>() - 279.7).abs() < 0.1); // 0.9086 × 307.8
/// ```
#[must_use]
pub fn hoff_mautner_wrinkle(moduli: WrinklingModuli, skin_thickness: Length, core_thickness: Length) -> Wrinkle {
    let WrinklingModuli { skin: e_f, core: e_c, core_shear: g_c } = moduli;
    let (t, c) = (skin_thickness, core_thickness);

    let free_zone = t * (0.75 * (e_f / g_c) * (e_c / g_c)).cbrt();
    let (zone, branch) = if free_zone > c / 2.0 { (c / 2.0, Branch::ThinCore) } else { (free_zone, Branch::ThickCore) };
    let stress = 2.0 * (e_f * e_c * (t / zone) / 12.0).sqrt() + g_c * (zone / t) / 3.0;
    let half_wave = PI * t * ((e_f / e_c) * (zone / t) / 12.0).sqrt().sqrt();

    Wrinkle { stress, zone, half_wave, branch }
}
