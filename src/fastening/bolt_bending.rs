//! Bending of a bolt across a gap.

use std::f64::consts::PI;

use crate::units::{Force, Length, Pressure};

/// How the far end of the bolt is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BoltEnd {
    /// The fixture turns, or the head lies loose: the bolt is a cantilever.
    Free,
    /// A stiff fixture that stands flat keeps the head from turning.
    Guided,
}

/// Bending stress of a bolt that carries a side force across a gap.
///
/// ```text
///   M = V g        free          σ = 32 M / (π d₃³)
///   M = V g/2      guided
/// ```
///
/// | symbol | meaning                                                                   | argument   |
/// |--------|---------------------------------------------------------------------------|------------|
/// | *V*    | side force                                                                | `shear`    |
/// | *g*    | height from the plane of the force to firm support: shim, gasket, sleeve with play, soft skin | `gap` |
/// | *d₃*   | [`ScrewThread::root_diameter`](super::ScrewThread::root_diameter); the shank where no thread lies in the gap | `diameter` |
///
/// # Validity
///
/// Elastic, both parts stiff against the bolt. Add σ over the strength to the pull's share in
/// [`Interaction`](super::Interaction).
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): beam theory.
///
/// # Examples
///
/// 200 N across 10 mm on an M6 thread, *d₃* = 4.773 mm: 2000 N·mm free, section modulus 10.676 mm³, 187.3 MPa.
///
/// ```
/// use skinspan::{fastening::{BoltEnd, bolt_bending_stress}, units::{Force, Length}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (v, mm) = (Force::new::<newton>(200.0), Length::new::<millimeter>);
/// let sigma = bolt_bending_stress(v, mm(10.0), mm(4.773), BoltEnd::Free);
/// assert!((sigma.get::<megapascal>() - 187.3).abs() < 0.1);
/// assert_eq!(sigma / 2.0, bolt_bending_stress(v, mm(10.0), mm(4.773), BoltEnd::Guided));
/// ```
#[must_use]
pub fn bolt_bending_stress(shear: Force, gap: Length, diameter: Length, end: BoltEnd) -> Pressure {
    let lever = match end {
        BoltEnd::Free => gap,
        BoltEnd::Guided => gap / 2.0,
    };
    32.0 * shear * lever / (PI * diameter * diameter * diameter)
}
