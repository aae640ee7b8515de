//! A head or a washer that punches through the skin.

use std::f64::consts::PI;

use crate::units::{Force, Length, Pressure};

/// Share of the ultimate stress that a metal sheet bears in punching.
const METAL_PUNCHING: f64 = 0.6;

/// Load at which a head or a washer punches through a backed laminate.
///
/// ```text
///   F = π d_w t τ_pt
/// ```
///
/// | symbol | meaning                                              | argument            |
/// |--------|------------------------------------------------------|---------------------|
/// | `d_w`  | diameter of the head or the washer                   | `head_diameter`     |
/// | *t*    | thickness of the laminate                            | `thickness`         |
/// | `τ_pt` | strength of the laminate in shear through its thickness | `punching_strength` |
///
/// # Validity
///
/// Laminate that stands on a backing or is solid, washer stiff enough to press along its whole rim. A thin skin over
/// foam bends and peels first, at a lower load.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equilibrium of the plug under the washer.
///
/// # Examples
///
/// Washer of 20 mm on 2 mm, 50 MPa: π × 20 × 2 × 50 = 6283 N.
///
/// ```
/// use skinspan::{fastening::pull_through_laminate, units::{Length, Pressure}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let f = pull_through_laminate(mm(20.0), mm(2.0), Pressure::new::<megapascal>(50.0));
/// assert!((f.get::<newton>() - 6283.2).abs() < 0.1);
/// ```
#[must_use]
pub fn pull_through_laminate(head_diameter: Length, thickness: Length, punching_strength: Pressure) -> Force {
    PI * head_diameter * thickness * punching_strength
}

/// Load at which a head or a nut punches through a metal plate.
///
/// ```text
///   F = 0.6 π d_m t f_u
/// ```
///
/// | symbol | meaning                                                       | argument        |
/// |--------|---------------------------------------------------------------|-----------------|
/// | `d_m`  | mean of the width across points and across flats of the head or nut, the smaller; or of the washer | `head_diameter` |
/// | *t*    | thickness of the plate                                        | `thickness`     |
/// | `f_u`  | ultimate stress of the plate                                  | `ultimate`      |
///
/// # Validity
///
/// Ductile metal. Before the partial factor, 1.25 in the source.
///
/// # Source
///
/// [`EN_1993_1_8`](crate::source::EN_1993_1_8), table 3.4, punching shear (quoted in a worked calculation).
///
/// # Examples
///
/// `d_m` = 10 mm, *t* = 3 mm, 215 MPa: 0.6 π × 10 × 3 × 215 = 12 158 N.
///
/// ```
/// use skinspan::{fastening::pull_through_metal, units::{Length, Pressure}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let f = pull_through_metal(mm(10.0), mm(3.0), Pressure::new::<megapascal>(215.0));
/// assert!((f.get::<newton>() - 12_158.0).abs() < 1.0);
/// ```
#[must_use]
pub fn pull_through_metal(head_diameter: Length, thickness: Length, ultimate: Pressure) -> Force {
    pull_through_laminate(head_diameter, thickness, METAL_PUNCHING * ultimate)
}
