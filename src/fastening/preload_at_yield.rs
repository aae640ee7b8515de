//! Preload at which tightening yields the bolt.

use std::f64::consts::PI;

use super::ScrewThread;
use crate::units::{Force, Length, Pressure, Ratio};

/// Preload at which pull and twist of tightening together reach a share of the yield stress.
///
/// ```text
///   F = ν R_p A_s / √(1 + 3 k²),    k = (3/2)(d₂/d_s)(p/(π d₂) + (2/√3) μ)
/// ```
///
/// | symbol | meaning                                                          | argument       |
/// |--------|------------------------------------------------------------------|----------------|
/// | `R_p`  | yield stress of the bolt                                         | `yield_stress` |
/// | *ν*    | share of it that tightening may use                              | `share`        |
/// | `A_s`, `d_s` | stress area of the thread and its diameter                 | `thread`       |
/// | *p*, *d₂* | pitch and pitch diameter                                      | `thread`       |
/// | *μ*    | friction in the thread                                           | `friction`     |
///
/// *k* is the shear stress over the tensile stress: the moment *F* *d₂*/2 (*p*/(π *d₂*) + (2/√3) *μ*) on the section
/// modulus π `d_s`³/12 of a bar that has yielded across.
///
/// # Validity
///
/// Metal under the head: boards, cores and laminate give way long before. More friction leaves less preload.
///
/// # Source
///
/// [`VDI_2230`](crate::source::VDI_2230), assembly preload (from memory); it reproduces a published table.
///
/// # Examples
///
/// M6 of 450 MPa, *ν* = 0.9, *μ* = 0.2: *k* = 1.5 × 1.0570 × (0.05949 + 0.23094) = 0.46050, √(1 + 3*k*²) = 1.2792,
/// 405 × 20.123/1.2792 = 6371 N.
///
/// ```
/// use skinspan::{fastening::{ScrewThread, ThreadForm, preload_at_yield}, units::{Length, Pressure, Ratio}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let m6 = ScrewThread { major: mm(6.0), pitch: mm(1.0), form: ThreadForm::Metric };
/// let f = preload_at_yield(&m6, Pressure::new::<megapascal>(450.0), Ratio::from(0.9), Ratio::from(0.2));
/// assert!((f.get::<newton>() - 6371.0).abs() < 1.0);
/// ```
#[must_use]
pub fn preload_at_yield(thread: &ScrewThread, yield_stress: Pressure, share: Ratio, friction: Ratio) -> Force {
    let pitch_diameter: Length = thread.pitch_diameter();
    let slope = thread.pitch / (PI * pitch_diameter) + 2.0 / 3f64.sqrt() * friction;
    let twist = 1.5 * (pitch_diameter / thread.stress_diameter()) * slope;
    share * yield_stress * thread.stress_area() / (Ratio::from(1.0) + 3.0 * twist * twist).sqrt()
}
