//! Bond round a potted insert.

use std::f64::consts::PI;

use crate::units::{Force, Length, Pressure};

/// Pull that draws an insert out of its potting.
///
/// ```text
///   F = π d h τ
/// ```
///
/// | symbol | meaning                                              | argument         |
/// |--------|------------------------------------------------------|------------------|
/// | *d*    | diameter of the insert                               | `diameter`       |
/// | *h*    | height over which it is bonded                       | `height`         |
/// | *τ*    | shear strength of the potting or of its bond to the insert, the lower | `shear_strength` |
///
/// # Validity
///
/// Side alone: bond under the foot and grooves are left out, on the safe side. What the core round the potting bears
/// is a matter of its own.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equilibrium, shear spread evenly.
///
/// # Examples
///
/// 14 mm in diameter, 20 mm high, 12 MPa: π × 14 × 20 × 12 = 10.56 kN.
///
/// ```
/// use skinspan::{fastening::insert_bond_capacity, units::{Length, Pressure}};
/// use uom::si::{force::kilonewton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let f = insert_bond_capacity(mm(14.0), mm(20.0), Pressure::new::<megapascal>(12.0));
/// assert!((f.get::<kilonewton>() - 10.556).abs() < 1e-3);
/// ```
#[must_use]
pub fn insert_bond_capacity(diameter: Length, height: Length, shear_strength: Pressure) -> Force {
    shear_strength * (PI * diameter * height)
}
