//! Shear of the core when the skins are thick or the core is stiff.

use crate::units::{FlexuralRigidity, ForcePerWidth, Length, Pressure, per_width, plain};

/// Section of two equal skins on a core.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EqualSkins {
    /// Modulus of the skins.
    pub skin_modulus: Pressure,
    /// In-plane modulus of the core.
    pub core_modulus: Pressure,
    /// Thickness of one skin.
    pub skin_thickness: Length,
    /// Thickness of the core.
    pub core_thickness: Length,
}

impl EqualSkins {
    fn rigidity(&self) -> FlexuralRigidity {
        let (t, c) = (self.skin_thickness, self.core_thickness);
        let (e_f, e_c) = (self.skin_modulus, self.core_modulus);
        let d = t + c;
        per_width(e_f * t * d * d / 2.0 + e_f * t * t * t / 6.0 + e_c * c * c * c / 12.0)
    }
}

/// Shear stress at mid-core, where it is largest.
///
/// ```text
///   τ = (V/D) (E_f t d/2 + E_c c²/8)        D = E_f t d²/2 + E_f t³/6 + E_c c³/12
/// ```
///
/// | symbol       | meaning                                      | argument or field                 |
/// |--------------|----------------------------------------------|-----------------------------------|
/// | *V*          | shear force per width                        | `shear_force`                     |
/// | `E_f`, `E_c` | moduli of the skins and of the core          | `skin_modulus`, `core_modulus`    |
/// | *t*, *c*     | thickness of one skin and of the core        | `skin_thickness`, `core_thickness` |
/// | *d*          | *t* + *c*                                    |                                   |
///
/// # Validity
///
/// Equal skins, linear elastic, away from loads and supports.
///
/// # Source
///
/// [`ALLEN_1969`](crate::source::ALLEN_1969), chapter 2 (from memory); [`DERIVED`](crate::source::DERIVED) as
/// *τ* = (*V*/*D*) Σ *E S*.
///
/// # Examples
///
/// With `E_c` = `E_f` it is a solid plate, whose peak is 1.5 *V*/*h*: for *h* = 10 mm and *V* = 10 N/mm, 1.5 MPa.
///
/// ```
/// use skinspan::{strength::{EqualSkins, core_shear_at_centre}, units::{Force, Length, Pressure, per_width}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let solid = EqualSkins {
///     skin_modulus: Pressure::new::<megapascal>(7000.0),
///     core_modulus: Pressure::new::<megapascal>(7000.0),
///     skin_thickness: Length::new::<millimeter>(1.0),
///     core_thickness: Length::new::<millimeter>(8.0),
/// };
/// let v = per_width(Force::new::<newton>(10.0) / Length::new::<millimeter>(1.0));
/// assert!((core_shear_at_centre(v, &solid).get::<megapascal>() - 1.5).abs() < 1e-12);
/// ```
#[must_use]
pub fn core_shear_at_centre(shear_force: ForcePerWidth, section: &EqualSkins) -> Pressure {
    let c = section.core_thickness;
    core_shear_at_skin(shear_force, section)
        + plain(shear_force) * section.core_modulus * c * c / 8.0 / plain(section.rigidity())
}

/// Shear stress between core and skin: what the bond carries.
///
/// ```text
///   τ = (V/D) E_f t d/2
/// ```
///
/// | symbol   | meaning                                  | argument or field                  |
/// |----------|------------------------------------------|------------------------------------|
/// | *V*      | shear force per width                    | `shear_force`                      |
/// | *D*      | as in [`core_shear_at_centre`]           |                                    |
/// | `E_f`    | modulus of the skins                     | `skin_modulus`                     |
/// | *t*, *d* | thickness of one skin; *t* + *c*         | `skin_thickness`, `core_thickness` |
///
/// # Validity
///
/// As [`core_shear_at_centre`].
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED), as [`core_shear_at_centre`].
///
/// # Examples
///
/// In the solid plate of [`core_shear_at_centre`] the layer 1 mm below the surface of 10 mm has 1 − 0.8² = 0.36 of
/// the peak.
///
/// ```
/// use skinspan::{strength::{EqualSkins, core_shear_at_skin}, units::{Force, Length, Pressure, per_width}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let solid = EqualSkins {
///     skin_modulus: Pressure::new::<megapascal>(7000.0),
///     core_modulus: Pressure::new::<megapascal>(7000.0),
///     skin_thickness: Length::new::<millimeter>(1.0),
///     core_thickness: Length::new::<millimeter>(8.0),
/// };
/// let v = per_width(Force::new::<newton>(10.0) / Length::new::<millimeter>(1.0));
/// assert!((core_shear_at_skin(v, &solid).get::<megapascal>() - 0.36 * 1.5).abs() < 1e-12);
/// ```
#[must_use]
pub fn core_shear_at_skin(shear_force: ForcePerWidth, section: &EqualSkins) -> Pressure {
    let (e_f, t) = (section.skin_modulus, section.skin_thickness);
    let d = t + section.core_thickness;
    plain(shear_force) * e_f * t * d / 2.0 / plain(section.rigidity())
}
