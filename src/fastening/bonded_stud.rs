//! Studs on a round base that is glued to the skin.

use std::f64::consts::PI;

use super::round_area;
use crate::units::{Force, Length, Pressure, Torque};

/// Largest tension across the glue under the base of a stud.
///
/// ```text
///   σ = P/A + M/W = 4 P/(π D²) + 32 M/(π D³)
/// ```
///
/// | symbol | meaning                                                                        | argument   |
/// |--------|--------------------------------------------------------------------------------|------------|
/// | *P*    | pull; a push is below zero                                                     | `pull`     |
/// | *M*    | moment at the glue, by size: side force times its height, pull times its eccentricity | `moment` |
/// | *D*    | diameter of the base                                                           | `diameter` |
///
/// # Validity
///
/// A stiff base on even glue, all of it bonded. A pull that is off the middle by *e* is worth 1 + 8 *e*/*D* of a
/// central one. A thin base bends, and the skin under it too: then the rim peels and the stress there is higher; that
/// reduction is the caller's.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): a round section under force and moment.
///
/// # Examples
///
/// 300 N on a base of 38 mm, 5 mm off the middle: 0.2645 (1 + 40/38) = 0.5430 MPa.
///
/// ```
/// use skinspan::{fastening::stud_bond_tension, units::{Force, Length, Torque}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal, torque::newton_meter};
/// let (pull, moment) = (Force::new::<newton>(300.0), Torque::new::<newton_meter>(1.5));
/// let sigma = stud_bond_tension(pull, moment, Length::new::<millimeter>(38.0));
/// assert!((sigma.get::<megapascal>() - 0.5430).abs() < 1e-4);
/// ```
#[must_use]
pub fn stud_bond_tension(pull: Force, moment: Torque, diameter: Length) -> Pressure {
    let cube = diameter * diameter * diameter;
    pull / round_area(diameter) + 32.0 * moment / (PI * cube)
}

/// Shear stress of the glue under the base of a stud.
///
/// ```text
///   τ = 4 V/(π D²)
/// ```
///
/// | symbol | meaning              | argument   |
/// |--------|----------------------|------------|
/// | *V*    | side force           | `shear`    |
/// | *D*    | diameter of the base | `diameter` |
///
/// # Validity
///
/// Mean stress: a base this short against the shear lag of its glue is evenly sheared. With tension take
/// [`Interaction::Linear`](super::Interaction::Linear).
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equilibrium.
///
/// # Examples
///
/// 300 N on 38 mm: 300/1134.1 = 0.2645 MPa.
///
/// ```
/// use skinspan::{fastening::stud_bond_shear, units::{Force, Length}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let tau = stud_bond_shear(Force::new::<newton>(300.0), Length::new::<millimeter>(38.0));
/// assert!((tau.get::<megapascal>() - 0.2645).abs() < 1e-4);
/// ```
#[must_use]
pub fn stud_bond_shear(shear: Force, diameter: Length) -> Pressure {
    shear / round_area(diameter)
}

/// Torque on a stud at which the glue under its base shears.
///
/// ```text
///   M = τ π D³/16
/// ```
///
/// | symbol | meaning                    | argument         |
/// |--------|----------------------------|------------------|
/// | *τ*    | shear strength of the glue | `shear_strength` |
/// | *D*    | diameter of the base       | `diameter`       |
///
/// # Validity
///
/// Stiff base, elastic glue, all of it bonded: its rim shears first. Glue that yields bears a third more.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): torsion of a round section.
///
/// # Examples
///
/// 8 MPa under a base of 38 mm: 8 × π × 54 872/16 = 86 193 N·mm.
///
/// ```
/// use skinspan::{fastening::stud_bond_torque, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal, torque::newton_meter};
/// let m = stud_bond_torque(Pressure::new::<megapascal>(8.0), Length::new::<millimeter>(38.0));
/// assert!((m.get::<newton_meter>() - 86.193).abs() < 0.001);
/// ```
#[must_use]
pub fn stud_bond_torque(shear_strength: Pressure, diameter: Length) -> Torque {
    (shear_strength * (PI / 16.0 * diameter * diameter * diameter)).into()
}
