//! Shear of the core in the field of the panel.

use crate::units::{ForcePerWidth, Length, Pressure, Ratio, plain};

/// Shear stress of a weak core between thin skins.
///
/// ```text
///   τ = V / d
/// ```
///
/// | symbol | meaning                                   | argument        |
/// |--------|-------------------------------------------|-----------------|
/// | *V*    | shear force per width                     | `shear_force`   |
/// | *d*    | distance between the middles of the skins | `skin_distance` |
///
/// # Validity
///
/// Core much softer than the skins, so that the stress is the same through its depth; see
/// [`core_shear_at_centre`](super::core_shear_at_centre) for the exact value. Close to a hard edge the skins carry
/// part of *V* and this is too high, on the safe side.
///
/// # Source
///
/// [`ALLEN_1969`](crate::source::ALLEN_1969), chapter 2 (from memory).
///
/// # Examples
///
/// 10 N/mm over 20 mm: 0.5 MPa.
///
/// ```
/// use skinspan::{strength::core_shear_stress, units::{Force, Length, per_width}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let v = per_width(Force::new::<newton>(10.0) / Length::new::<millimeter>(1.0));
/// assert!((core_shear_stress(v, Length::new::<millimeter>(20.0)).get::<megapascal>() - 0.5).abs() < 1e-12);
/// ```
#[must_use]
pub fn core_shear_stress(shear_force: ForcePerWidth, skin_distance: Length) -> Pressure {
    plain(shear_force) / skin_distance
}

/// Shear stress in the plane in which it is largest.
///
/// ```text
///   τ = √(τ_xz² + τ_yz²)
/// ```
///
/// | symbol | meaning                                          | argument |
/// |--------|--------------------------------------------------|----------|
/// | `τ_xz` | through-thickness shear stress along x           | `xz`     |
/// | `τ_yz` | through-thickness shear stress along y           | `yz`     |
///
/// # Validity
///
/// For a core of one strength in all directions, such as foam.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): the two are components of one traction.
///
/// # Examples
///
/// 0.3 and 0.4 MPa: 0.5 MPa.
///
/// ```
/// use skinspan::{strength::resultant_core_shear, units::Pressure};
/// use uom::si::pressure::megapascal;
/// let (xz, yz) = (Pressure::new::<megapascal>(0.3), Pressure::new::<megapascal>(-0.4));
/// assert!((resultant_core_shear(xz, yz).get::<megapascal>() - 0.5).abs() < 1e-12);
/// ```
#[must_use]
pub fn resultant_core_shear(xz: Pressure, yz: Pressure) -> Pressure {
    xz.hypot(yz)
}

/// Utilisation of a core in shear that is also crushed or pulled through its thickness.
///
/// ```text
///   (λ τ/τ_c)² + (λ σ/σ_c)² = 1,    utilisation 1/λ = √((τ/τ_c)² + (σ/σ_c)²)
/// ```
///
/// | symbol      | meaning                                                         | argument |
/// |-------------|-----------------------------------------------------------------|----------|
/// | *τ*/`τ_c`   | shear stress over its allowable                                 | `shear`  |
/// | *σ*/`σ_c`   | through-thickness stress over its allowable in the same sense   | `normal` |
/// | *λ*         | factor on the load at which the core fails                      |          |
///
/// # Validity
///
/// Foam and balsa. Never less than either ratio alone.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): an ellipse through the two strengths (our assumption).
///
/// # Examples
///
/// 0.6 and 0.8 together: 1.
///
/// ```
/// use skinspan::{strength::core_shear_with_crush, units::Ratio};
/// assert!((core_shear_with_crush(Ratio::from(0.6), Ratio::from(0.8)).value - 1.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn core_shear_with_crush(shear: Ratio, normal: Ratio) -> Ratio {
    shear.hypot(normal)
}
