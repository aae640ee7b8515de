//! Bending of the plate of a foot.

use crate::units::{Length, Pressure};

/// Bending stress of a foot plate that stands out over the pressure below it.
///
/// ```text
///   σ = 3 p a²/t²
/// ```
///
/// | symbol | meaning                                               | argument    |
/// |--------|-------------------------------------------------------|-------------|
/// | *p*    | pressure under the plate, at its peak                 | `pressure`  |
/// | *a*    | length that stands out from the body of the gear      | `overhang`  |
/// | *t*    | thickness of the plate                                | `thickness` |
///
/// # Validity
///
/// Elastic cantilever, pressure taken even at its peak: high. Bolts beyond the body bend the plate too:
/// [`TeeStub`](super::TeeStub).
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): *p a*²/2 on *t*²/6, per width.
///
/// # Examples
///
/// 0.26 MPa, 30 mm, 4 mm: 3 × 0.26 × 900/16 = 43.9 MPa.
///
/// ```
/// use skinspan::{fastening::foot_plate_stress, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let sigma = foot_plate_stress(Pressure::new::<megapascal>(0.26), mm(30.0), mm(4.0));
/// assert!((sigma.get::<megapascal>() - 43.875).abs() < 1e-9);
/// ```
#[must_use]
pub fn foot_plate_stress(pressure: Pressure, overhang: Length, thickness: Length) -> Pressure {
    let slope = overhang / thickness;
    3.0 * pressure * slope * slope
}
